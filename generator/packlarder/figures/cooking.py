"""What happens to food and water in a pot, a cosy and a heater: boil-off, softening, soaking, cooling."""

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.figure import Figure, Standing

# Open water near the boil

_OPEN_WATER = "Engineering ToolBox, Heat Loss from Open Water Tanks, 210 °F (98.9 °C) in still air of 60 °F; rough"

EVAPORATION = Figure(
    name="boil-off of an open pot at a gentle simmer",
    value=16.29,
    unit="kg/(h m²)",
    source=_OPEN_WATER,
    standing=Standing.PUBLISHED,
    low=8.0,
    high=32.0,
)
SURFACE_LOSS = Figure(
    name="heat lost by an open surface of simmering water besides boil-off",
    value=1.15,
    unit="kW/m²",
    source=f"{_OPEN_WATER}: 11.36 in all, less 16.29 / 3600 x 2256.5 = 10.21 of boil-off",
    standing=Standing.COMPUTED,
)
LID = Figure(
    name="boil-off left with the lid on",
    value=0.25,
    unit="of the open pot's",
    source="about a quarter; the fit of lids differs",
    standing=Standing.COMMON_PRACTICE,
)
FILLED_TO = Figure(
    name="depth to which a pot is taken as filled, for what its wall loses",
    value=0.5,
    unit="of its diameter",
    source="our choice: half as deep as it is wide",
    standing=Standing.COMMON_PRACTICE,
)


# Cooking at height: how many degrees less make the time ten times as long


class Softens(StrEnum):
    """Classes of food that cook more slowly at height, each in its own measure."""

    DRY_LEGUMES = "dry legumes"
    DENSE_VEGETABLES = "dense vegetables"
    RICE_AND_PASTA = "rice and pasta"
    BRAISED_MEAT = "braised meat"


Z_VALUES: Mapping[Softens, Figure] = MappingProxyType(
    {
        Softens.DRY_LEGUMES: Figure(
            name="z value, dry legumes",
            value=19.0,
            unit="K",
            source="Quast and da Silva, J. Food Sci. 1977: black beans 19, brown beans 18, soybeans and dried peas 16",
            standing=Standing.PUBLISHED,
            low=16.0,
            high=21.3,
        ),
        Softens.DENSE_VEGETABLES: Figure(
            name="z value, dense vegetables",
            value=24.0,
            unit="K",
            source="between white beans 21.3 and green peas 28.5 (Van Loey et al., J. Food Eng. 24, 1995); our choice",
            standing=Standing.COMMON_PRACTICE,
            low=21.3,
            high=28.5,
        ),
        Softens.RICE_AND_PASTA: Figure(
            name="z value, rice and pasta",
            value=36.0,
            unit="K",
            source="2.303 R T² / Ea = 36.5 at 95 °C, Ea 71.1 kJ/mol (Kinetic Studies on Cooking of Rice); pasta: ours",
            standing=Standing.COMPUTED,
            low=28.5,
            high=36.5,
        ),
        Softens.BRAISED_MEAT: Figure(
            name="z value, braised meat",
            value=52.0,
            unit="K",
            source="a quarter longer at 5,000 ft (Colorado State University Extension), worked back",
            standing=Standing.COMPUTED,
        ),
    }
)


# Soaking in cooler water


class Soaks(StrEnum):
    """Classes of dried food by how much a cooler soak slows them."""

    FREEZE_DRIED = "freeze-dried"
    AIR_DRIED = "air-dried"
    LEGUMES = "legumes"


SOAK_REFERENCE = Figure(
    name="temperature of the hot soak that soaking times are given for",
    value=95.0,
    unit="°C",
    source="boiling water poured on, as it stands",
    standing=Standing.COMMON_PRACTICE,
)
SOAK_ENERGIES: Mapping[Soaks, Figure] = MappingProxyType(
    {
        Soaks.FREEZE_DRIED: Figure(
            name="activation energy of soaking, freeze-dried food",
            value=9.0,
            unit="kJ/mol",
            source="far less than air-dried, no published figure found; our choice",
            standing=Standing.COMMON_PRACTICE,
            low=0.0,
            high=19.2,
        ),
        Soaks.AIR_DRIED: Figure(
            name="activation energy of soaking, air-dried pieces",
            value=19.2,
            unit="kJ/mol",
            source="Garcia-Pascual et al., J. Sci. Food Agric. 85 (2005): air-dried mushroom, 25 to 70 °C",
            standing=Standing.PUBLISHED,
            low=16.3,
            high=29.0,
        ),
        Soaks.LEGUMES: Figure(
            name="activation energy of soaking, beans and peas",
            value=36.0,
            unit="kJ/mol",
            source="Cimini et al., Chem. Eng. Trans. 87 (2021): chickpea; Kwofie et al. 2019: beans",
            standing=Standing.PUBLISHED,
            low=29.0,
            high=42.0,
        ),
    }
)

# Steeping: a meal of 300 mL on 110 g, stood in air of 10 °C at sea level, is meant to start at about 85 °C and to be at
# about 77 °C in a cosy, 62 °C bare and still and 42 °C bare in wind after 15 min. The losses below give that.

_GUESS = "guessed so that 300 mL on 110 g in air of 10 °C is at about {end} °C after 15 min; measure your own"

POURING_LOSS = Figure(
    name="water cools between the boil and the food by",
    value=4.0,
    unit="K",
    source="guessed so that 300 mL poured on 110 g at 10 °C starts at about 85 °C at sea level and 76 °C at 3000 m",
    standing=Standing.COMMON_PRACTICE,
)


class Shelter(StrEnum):
    """Where a steeping meal stands."""

    COSY = "in a cosy"
    STILL = "bare, no wind"
    WIND = "bare, in wind"


STEEP_LOSSES: Mapping[Shelter, Figure] = MappingProxyType(
    {
        shelter: Figure(
            name=f"heat lost by a steeping meal of 410 g, {shelter}",
            value=loss,
            unit="W/K",
            source=_GUESS.format(end=end),
            standing=Standing.COMMON_PRACTICE,
        )
        for shelter, loss, end in (
            (Shelter.COSY, 0.18, 77),
            (Shelter.STILL, 0.59, 62),
            (Shelter.WIND, 1.37, 42),
        )
    }
)
STEEP_WEIGHT = Figure(
    name="weight of the meal for which steeping losses are given",
    value=410.0,
    unit="g",
    source="300 mL of water on 110 g",
    standing=Standing.COMMON_PRACTICE,
)

RATION_HEATER = Figure(
    name="heat that one ration heater brings into the food",
    value=45.0,
    unit="kJ",
    source="8 oz (230 g) raised by 100 °F (56 K), US military requirement, with 3.5 kJ/(kg K)",
    standing=Standing.COPY,
)
