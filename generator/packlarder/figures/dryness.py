"""How much water dried food still holds, by its group and the way it was dried."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.figure import Figure, Standing
from packlarder.figures.kinds import Group
from packlarder.figures.rows import read_rows

_ANYTHING = "anything"


class Drying(StrEnum):
    """How a component came to be dry."""

    FREEZE_DRIED = "freeze-dried"
    AIR_DRIED = "air-dried"
    BOUGHT_DRY = "bought dry"
    NOT_DRIED = "not dried"


@dataclass(frozen=True, slots=True, kw_only=True)
class Dryness:
    """Water left in one group of food, in per cent of its weight.

    `water` is the usual figure with its spread. Above `limit_percent` the food is not dry yet; at or below it only the
    household's own test can tell. `group` is None where one figure serves every group.
    """

    group: Group | None
    drying: Drying
    water: Figure
    limit_percent: float


def dryness_of(group: Group, drying: Drying) -> Dryness | None:
    """Give what is usual for a group of food, None where it is not dried that way at home or was bought dry."""
    return DRYNESSES.get((group, drying)) or DRYNESSES.get((None, drying))


def _dryness(row: Mapping[str, str]) -> Dryness:
    return Dryness(
        group=None if row["group"] == _ANYTHING else Group(row["group"]),
        drying=Drying(row["drying"]),
        water=Figure(
            name=f"water left in {row['group']}, {row['drying']}",
            value=float(row["water_percent"]),
            unit="% of weight",
            source=row["source"],
            standing=Standing(row["standing"]),
            low=float(row["low"]),
            high=float(row["high"]),
        ),
        limit_percent=float(row["limit_percent"]),
    )


DRYNESSES: Mapping[tuple[Group | None, Drying], Dryness] = MappingProxyType(
    {(one.group, one.drying): one for one in map(_dryness, read_rows("dryness.csv"))}
)
