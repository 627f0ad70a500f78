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
HELD_BACK = Figure(
    name="share of the water held back when mixing, to top up with",
    value=0.10,
    unit="of the water",
    source="top up by the look of it; our choice",
    standing=Standing.COMMON_PRACTICE,
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
