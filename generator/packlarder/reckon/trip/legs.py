"""The legs of a trip: from fill point to fill point, before anybody knows how much water they take."""

from collections.abc import Iterable
from typing import NamedTuple

from packlarder.reckon.trip.journey import NO_WATER, LegWater
from packlarder.reckon.trip.records import PlannedTrip


class Stretch(NamedTuple):
    """A leg without its water. `between` are the stops strictly between its ends, which None stands for as in `Leg`."""

    number: int
    from_stop: int | None
    to_stop: int | None
    between: tuple[int, ...]

    @property
    def reached(self) -> tuple[int, ...]:
        """Give the stops that are reached on it: those between its ends, and the fill point at its end."""
        return self.between if self.to_stop is None else (*self.between, self.to_stop)


def stretches(planned: PlannedTrip) -> tuple[Stretch, ...]:
    """Give the legs in order: from home, where there is always a tap, to the end.

    None follows a fill point that is reached on the last day.
    """
    stops = planned.stops
    fills = [stop.index for stop in stops if stop.model.fills is not None]
    found: list[Stretch] = []
    for number, (start, goal) in enumerate(zip([None, *fills], [*fills, None], strict=True), 1):
        first = 0 if start is None else start + 1
        if first < len(stops) or (goal is None and sets_out_from_water(planned)):
            between = tuple(range(first, len(stops) if goal is None else goal))
            found.append(Stretch(number=number, from_stop=start, to_stop=goal, between=between))
    return tuple(found)


def sets_out_from_water(planned: PlannedTrip) -> bool:
    """Tell whether the last day leads home from a fill point that was reached before it."""
    last = planned.stops[-1].model
    return last.fills is not None and last.day < planned.last_day


def together(waters: Iterable[LegWater]) -> LegWater:
    """Add waters up, field by field."""
    return LegWater(*map(sum, zip(NO_WATER, *waters, strict=True)))
