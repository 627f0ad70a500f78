"""Cooking temperatures in the middle of a food, as the authorities publish them; height does not change them."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.facts import FACTS
from packlarder.figures.figure import Standing
from packlarder.figures.kinds import Doneness
from packlarder.figures.rows import read_rows

_ANYTHING = "anything"


class Authority(StrEnum):
    """Whose table of cooking temperatures a household follows."""

    USDA_FSIS = "USDA FSIS"
    HEALTH_CANADA = "Health Canada"
    UK_FSA = "UK FSA"
    WHO = "WHO"


DEFAULT_AUTHORITY = Authority.USDA_FSIS


@dataclass(frozen=True, slots=True, kw_only=True)
class CookingTemperature:
    """A published temperature: `hold` is what must follow ("" if it need only be reached), `fact` an id of `facts.csv`.

    `doneness` is None where the authority gives one temperature for everything.
    """

    authority: Authority
    doneness: Doneness | None
    temp_c: float
    temp_f: float
    hold: str
    note: str
    fact: str
    standing: Standing


def cooking_temperature(authority: Authority, doneness: Doneness) -> CookingTemperature:
    """Give what an authority publishes for a class of food."""
    return TEMPERATURES.get((authority, doneness)) or TEMPERATURES[authority, None]


def _temperature(row: Mapping[str, str]) -> CookingTemperature:
    return CookingTemperature(
        authority=Authority(row["authority"]),
        doneness=None if row["doneness"] == _ANYTHING else Doneness(row["doneness"]),
        temp_c=float(row["temp_c"]),
        temp_f=float(row["temp_f"]),
        hold=row["hold"],
        note=row["note"],
        fact=row["fact"],
        standing=FACTS[row["fact"]].standing,
    )


TEMPERATURES: Mapping[tuple[Authority, Doneness | None], CookingTemperature] = MappingProxyType(
    {(one.authority, one.doneness): one for one in map(_temperature, read_rows("temperatures.csv"))}
)
