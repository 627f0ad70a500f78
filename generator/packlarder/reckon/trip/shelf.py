"""The shelf: what is left in each container while trips take from it, and until when it may be eaten."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date

from packlarder.book.draw import Mark
from packlarder.reckon.larder import NOT_FOR_STORE
from packlarder.reckon.larder_records import LarderSums, Standing
from packlarder.reckon.trip.stores import Drawn
from packlarder.reckon.use_by import KeepingTimes

SCALE_DIGITS = 3
"""Weights are kept to the milligram, so that tenths of a gram add up to what is printed."""


def tidy(grams: float) -> float:
    """Take the errors of the arithmetic out of a sum of printed weights."""
    return round(grams, SCALE_DIGITS)


class _Jar:
    """A container with what is left in it; `use_by` is None where no rule and no figure speaks of its food."""

    __slots__ = ("left_g", "opened", "standing", "use_by")

    def __init__(self, standing: Standing) -> None:
        self.standing = standing
        self.left_g = standing.left_g
        self.opened = standing.opened_on is not None
        self.use_by = None if standing.use_by is None else standing.use_by.day

    @property
    def mark(self) -> Mark:
        return self.standing.mark

    def good_on(self, day: date) -> bool:
        return self.left_g > 0 and (self.use_by is None or self.use_by >= day)

    def order(self) -> tuple[date, bool, Mark]:
        """Order as the larder does: first to expire first, of those the opened one first."""
        return self.use_by or date.max, not self.opened, self.mark


class Shelf:
    """Gives out what stands in the larder, but for what its weights show to be wet or wrong."""

    def __init__(self, larder: LarderSums, keeping: KeepingTimes) -> None:
        """Put up every container that holds something."""
        self._keeping = keeping
        self._touched: dict[Mark, _Jar] = {}
        self._jars: dict[str, list[_Jar]] = defaultdict(list)
        for one in larder.standing:
            if one.batch.verdict not in NOT_FOR_STORE:
                self._jars[one.batch.component.id].append(_Jar(one))

    def holds_g(self, component: str, day: date) -> float:
        """Give what there is of a component that can still be eaten on a day."""
        return tidy(sum(jar.left_g for jar in self._good(component, day)))

    def take(self, component: str, grams: float, day: date) -> tuple[Drawn, ...]:
        """Take what is eaten on a day, or as much of it as there is: first to expire first, nothing past its day."""
        drawn: list[Drawn] = []
        wanted_g = grams
        for jar in self._good(component, day):
            taken_g = tidy(min(jar.left_g, wanted_g))
            jar.left_g = tidy(jar.left_g - taken_g)
            wanted_g = tidy(wanted_g - taken_g)
            self._touched[jar.mark] = jar
            drawn.append(Drawn(mark=jar.mark, grams=taken_g, use_by=jar.use_by))
            if wanted_g <= 0:
                break
        return tuple(drawn)

    def past(self, component: str, day: date) -> tuple[Drawn, ...]:
        """Give what is left in containers that are past their day on a day, the one that keeps longest last."""
        past = [jar for jar in self._jars[component] if jar.left_g > 0 and not jar.good_on(day)]
        return tuple(
            [Drawn(mark=jar.mark, grams=jar.left_g, use_by=jar.use_by) for jar in sorted(past, key=_Jar.order)]
        )

    def open(self, day: date) -> None:
        """Open on a day what was taken from since the last time: what is left in it keeps as an opened jar does."""
        for jar in self._touched.values():
            batch, filled = jar.standing.batch, jar.standing.container.filled
            span = None if jar.opened else self._keeping.once_opened(batch.component, filled)
            if span is not None:
                jar.use_by = min(jar.use_by or date.max, span.after(day))
            jar.opened = True
        for component in {jar.standing.batch.component.id for jar in self._touched.values()}:
            self._jars[component].sort(key=_Jar.order)
        self._touched.clear()

    def _good(self, component: str, day: date) -> Iterator[_Jar]:
        return (jar for jar in self._jars[component] if jar.good_on(day))
