"""Figures of trips: who carries, what is drunk in heat, how long water stands, what a day of food should come to."""

from dataclasses import dataclass

from packlarder.figures.facts import FACTS, from_fact
from packlarder.figures.figure import Figure, Standing


def _day(name: str, value: float, unit: str, source: str, standing: Standing) -> Figure:
    return Figure(name=name, value=value, unit=unit, source=source, standing=standing)


CARRIES_FROM = Figure(
    name="age from which somebody carries as much as others, unless the trip says",
    value=12,
    unit="years",
    source="our choice; a child carries what it likes to",
    standing=Standing.COMMON_PRACTICE,
)

HEAT_DRINKING = Figure(
    name="drinking at hard work in heat, beyond the day's",
    value=0.95,
    unit="L per hour and person",
    source=f"{FACTS['T8-22'].source}; never above 1.4 L in an hour",
    standing=FACTS["T8-22"].standing,
    low=0.7,
    high=0.95,
)
ROLLING_BOIL = from_fact("rolling boil that makes water safe", 1, "min", "T8-01")
ROLLING_BOIL_HIGH = from_fact("rolling boil that makes water safe high up", 3, "min", "T8-03")
BOIL_LONGER_ABOVE = from_fact("height above which water is boiled for 3 min", 1500, "m", "T8-03")
CHLORINE_WAIT = from_fact("time that water stands with chlorine", 30, "min", "T8-08")
CHLORINE_WAIT_COLD = Figure(
    name="time that very cold water stands with chlorine",
    value=60,
    unit="min",
    source=f"{FACTS['T8-08'].source} doubles what is put in; we double the time as well",
    standing=Standing.COMMON_PRACTICE,
)
VERY_COLD = Figure(
    name="temperature up to which water counts as very cold for chlorine",
    value=5,
    unit="°C",
    source="no body says how cold very cold is; our choice",
    standing=Standing.COMMON_PRACTICE,
)
CHLORINE_DIOXIDE_WAIT = Figure(
    name="time that water stands with chlorine dioxide",
    value=240,
    unit="min",
    source="four hours, as packs of tablets commonly say; the line on the pack rules",
    standing=Standing.FROM_MEMORY,
)

_REFERENCE_INTAKES = (
    "National Academies: Dietary Reference Intakes for Energy, Carbohydrate, ... Protein (2002), adults"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DayRange:
    """What a day of one person should come to; None where nothing is said of an end."""

    least: Figure | None
    most: Figure


LEAST_ENERGY = from_fact("least energy to plan for a day", 2250, "kcal per person", "T15-01")
DAY_ENERGY = DayRange(
    least=LEAST_ENERGY,
    most=from_fact("most energy to plan for a day", 4500, "kcal per person", "T15-01"),
)
DAY_FOOD = DayRange(
    least=from_fact("least food to plan for a day", 500, "g per person", "T15-01"),
    most=from_fact("most food to plan for a day", 1100, "g per person", "T15-01"),
)
PROTEIN_SHARE = DayRange(
    least=_day("least share of protein", 0.10, "of the energy", _REFERENCE_INTAKES, Standing.PUBLISHED),
    most=_day("most share of protein", 0.35, "of the energy", _REFERENCE_INTAKES, Standing.PUBLISHED),
)
DAY_SALT = DayRange(
    least=None,
    most=_day(
        "most salt in a day",
        5,
        "g per adult",
        "WHO: Sodium intake for adults and children (2012); whoever sweats all day loses salt too",
        Standing.COPY,
    ),
)
PROTEIN_ENERGY = Figure(
    name="energy of protein",
    value=4,
    unit="kcal per g",
    source="general factor of food labels, 21 CFR 101.9(c)(1)(i)",
    standing=Standing.FROM_MEMORY,
)
LIGHTERS = Figure(
    name="lighters to take along",
    value=2,
    unit="in two dry places",
    source="one gets wet; our choice",
    standing=Standing.COMMON_PRACTICE,
)
WATER_FILL = Figure(
    name="how full a pot is made of water that is only brought to the boil",
    value=0.9,
    unit="of what it holds to the brim",
    source="kitchen practice; our choice",
    standing=Standing.COMMON_PRACTICE,
)
