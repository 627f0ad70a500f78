"""How long dried food keeps: the published figures, and starting points where none is published.

The household's own rule, where it has one, comes before all of these. A row whose standing is "common practice" is such
a starting point, taken from the published figure of the nearest food. Long commercial figures are not used.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

from packlarder.figures.dryness import Drying
from packlarder.figures.figure import Standing
from packlarder.figures.kinds import Group
from packlarder.figures.rows import number_or_unknown, read_rows

_ANYTHING = "anything"


class Kept(StrEnum):
    """How a dried food is kept."""

    SEALED = "sealed"
    """A jar or pouch that is airtight and moisture-proof, not opened since it was filled."""
    OPENED = "opened"
    """A jar or pouch that is opened and closed again at home."""
    TRIP_PACK = "trip pack"
    """A bag filled for a trip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeping:
    """One figure for keeping: days from drying (opened: from opening; trip pack: from packing).

    `group` is None where the row serves every group; `at_c` is the temperature of the store, None for an ordinary room.
    `says` is the figure in words; `fact` is an id of `facts.csv`.
    """

    group: Group | None
    drying: Drying
    kept: Kept
    days: int
    at_c: float | None
    says: str
    fact: str
    standing: Standing


def keeping_of(group: Group, drying: Drying, kept: Kept) -> tuple[Keeping, ...]:
    """Give the figures for a group of food, the longest first.

    A figure for the group comes before one for food in general. There is none for what was bought dry: its pack has its
    own date.
    """
    fitting = [one for one in KEEPINGS if one.drying is drying and one.kept is kept]
    own = [one for one in fitting if one.group is group]
    found = own or [one for one in fitting if one.group is None]
    return tuple(sorted(found, key=lambda one: one.days, reverse=True))


def _keeping(row: Mapping[str, str]) -> Keeping:
    return Keeping(
        group=None if row["group"] == _ANYTHING else Group(row["group"]),
        drying=Drying(row["drying"]),
        kept=Kept(row["kept"]),
        days=int(row["days"]),
        at_c=number_or_unknown(row["at_c"]),
        says=row["says"],
        fact=row["fact"],
        standing=Standing(row["standing"]),
    )


KEEPINGS: tuple[Keeping, ...] = tuple(map(_keeping, read_rows("keeping.csv")))
