"""The menu of a trip: which dish is eaten at which stop, on which day and when; days are told by the order of meals."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import time
from typing import NamedTuple

from packlarder.book.dish import Meal
from packlarder.book.stop import MealDetail, MealLine
from packlarder.book.trip import Trip
from packlarder.faults import Fault, Place
from packlarder.reckon.trip import slips
from packlarder.reckon.trip.records import StopSums

OF_THE_DAY = {Meal.BREAKFAST: 0, Meal.LUNCH: 1, Meal.SUPPER: 2}
"""The meals by which days are told; the others go with the meal before them."""
MEALTIMES = {Meal.BREAKFAST: time(7, 30), Meal.LUNCH: time(12, 30), Meal.SUPPER: time(18, 30)}
"""When people eat who do not say (common practice)."""
OTHERWISE = time(15, 0)
"""When something is eaten that goes with no meal."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuLine:
    """A dish of a trip before it is worked out. `stop` is None in reserve; `detail` says who eats it, and on what."""

    stop: int | None
    day: int
    eat_at: time
    meal: Meal
    detail: MealDetail
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Menu:
    """All dishes of a trip in the order in which they are eaten, those in reserve last; and meals out of order.

    `last_day` is the last on which something is eaten or a stop is reached, the spare day left out.
    """

    lines: tuple[MenuLine, ...]
    last_day: int
    faults: tuple[Fault, ...]


class _Left(NamedTuple):
    """The last meal of the stops so far: its day, and where in the day it lies."""

    day: int
    rank: int


def menu_of(trip: Trip, stops: Sequence[StopSums], place: Place) -> Menu:
    """Count the days of a trip's meals; `place` is that of its file."""
    faults: list[Fault] = []
    lines = list(_at_stops(trip, stops, faults))
    last_day = max([stop.model.day for stop in stops] + [line.day for line in lines])
    lines += [drink for day in range(1, last_day + 1) for drink in _drinks(trip, place, _on(lines, stops, day), day)]
    lines.sort(key=lambda line: (line.day, line.eat_at))
    lines += sorted(_in_reserve(trip, place, last_day + 1), key=lambda line: line.eat_at)
    return Menu(lines=tuple(lines), last_day=last_day, faults=tuple(faults))


def _at_stops(trip: Trip, stops: Sequence[StopSums], faults: list[Fault]) -> Iterator[MenuLine]:
    left = _Left(day=0, rank=-1)
    for stop in stops:
        lines = list(_at_stop(trip, stop))
        yield from lines
        left = _check_order(stops, stop, lines, left, faults)


def _at_stop(trip: Trip, stop: StopSums) -> Iterator[MenuLine]:
    """Give the dishes of a stop: a meal of earlier in the day than the one before it is the next day's."""
    day, before, eat_at = stop.model.day, -1, OTHERWISE
    for index, line in enumerate(stop.model.meals):
        rank = OF_THE_DAY.get(line.meal, before)
        day, before = day + (rank < before), rank
        eat_at = _eat_at(trip, line, eat_at)
        place = stop.place.at("meals", index, line.meal.value)
        yield MenuLine(stop=stop.index, day=day, eat_at=eat_at, meal=line.meal, detail=line.detail, place=place)


def _check_order(
    stops: Sequence[StopSums], stop: StopSums, lines: Sequence[MenuLine], left: _Left, faults: list[Fault]
) -> _Left:
    """Tell of meals that lie before those of the stops above, or after the day on which the next is reached.

    `left` is the last meal of the stops above; the last so far is handed back, one that is told of already left out.
    """
    told = [line for line in lines if line.meal in OF_THE_DAY]
    if told and _told_by(told[0]) < left:
        faults.append(slips.comes_before(told[0].place, told[0].meal, left.day, stops[stop.index - 1].model.place))
    later = stops[stop.index + 1 :]
    if lines and later and later[0].model.day < lines[-1].day:
        after = later[0].model
        faults.append(slips.comes_after(lines[-1].place, lines[-1].day, after.place, after.day))
        return left
    return _told_by(told[-1]) if told else left


def _told_by(line: MenuLine) -> _Left:
    return _Left(line.day, OF_THE_DAY[line.meal])


def _eat_at(trip: Trip, line: MealLine, before: time) -> time:
    """Give when a dish is eaten: as its line says, as the trip says of its meal, as is common, or with the last one."""
    if line.detail.at is not None:
        return line.detail.at
    said: time | None = trip.mealtimes.get(line.meal)
    return MEALTIMES.get(line.meal, before) if said is None else said


def _on(lines: Sequence[MenuLine], stops: Sequence[StopSums], day: int) -> tuple[int, time]:
    """Give where and when a day begins: with its first meal, or else in the morning where people last came to."""
    first = min([line for line in lines if line.day == day], key=lambda line: line.eat_at, default=None)
    if first is not None and first.stop is not None:
        return first.stop, first.eat_at
    reached = [stop.index for stop in stops if stop.model.day <= day]
    return (reached[-1] if reached else 0), MEALTIMES[Meal.BREAKFAST]


def _drinks(trip: Trip, place: Place, begins: tuple[int | None, time], day: int) -> Iterator[MenuLine]:
    stop, eat_at = begins
    for index, name in enumerate(trip.drinks):
        yield MenuLine(
            stop=stop,
            day=day,
            eat_at=eat_at,
            meal=Meal.DRINK,
            detail=MealDetail(dish=name),
            place=place.at("drinks", index),
        )


def _in_reserve(trip: Trip, place: Place, day: int) -> Iterator[MenuLine]:
    """Give the meals of the spare day, and its drinks."""
    eat_at, first = OTHERWISE, None
    for index, line in enumerate(trip.spare_day):
        eat_at = _eat_at(trip, line, eat_at)
        first = eat_at if first is None else min(first, eat_at)
        at = place.at("spare day", index, line.meal.value)
        yield MenuLine(stop=None, day=day, eat_at=eat_at, meal=line.meal, detail=line.detail, place=at)
    if first is not None:
        yield from _drinks(trip, place, (None, first), day)
