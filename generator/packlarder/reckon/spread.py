"""Several weighings of one thing: their median, and how far they lie apart."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """The median of several weighings, the least and the most of them, and how many there are."""

    median: float
    least: float
    most: float
    count: int


def spread_of(found: Sequence[float]) -> Spread | None:
    """Give the spread of some numbers, None of none."""
    if not found:
        return None
    return Spread(median=median(found), least=min(found), most=max(found), count=len(found))
