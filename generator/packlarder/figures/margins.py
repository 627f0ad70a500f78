"""Margins of the kitchen: what is added, held back or let pass."""

from packlarder.figures.figure import Figure, Standing

FUEL_MARGIN = Figure(
    name="fuel carried beyond what is worked out",
    value=0.20,
    unit="of the fuel",
    source="wind, cold and spilt water; our choice",
    standing=Standing.COMMON_PRACTICE,
    low=0.10,
    high=0.50,
)
WATER_DEPARTS = Figure(
    name="difference between a household's water and the mass balance that is worth a note",
    value=0.15,
    unit="of the mass balance",
    source="our choice, as far as household rules commonly depart",
    standing=Standing.COMMON_PRACTICE,
)
COOKED_AT_HOME = Figure(
    name="cooked weight of meat without bone",
    value=0.725,
    unit="of the raw weight",
    source="70 to 75 %, boned meat roasted or boiled",
    standing=Standing.COMMON_PRACTICE,
    low=0.70,
    high=0.75,
)
FOOD_WATER = Figure(
    name="how far the water of one piece of food may lie from the food table's",
    value=0.01,
    unit="of the fresh weight, either way",
    source="our choice; the table's own rows for one food differ by as much and more",
    standing=Standing.COMMON_PRACTICE,
)
WEIGHED_FULL = Figure(
    name="by how much jars may hold more than came out of the dryer, before it is called a slip",
    value=0.02,
    unit="of the dry weight",
    source="a kitchen scale rounds each jar to 1 or 2 g; our choice",
    standing=Standing.COMMON_PRACTICE,
)
DRY_WITHOUT_OXYGEN = Figure(
    name="water above which food does not go into a pack without oxygen",
    value=0.10,
    unit="of the dry weight",
    source="about 10 % or less (T5-08), in wide circulation",
    standing=Standing.COPY,
)
