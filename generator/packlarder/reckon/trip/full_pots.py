"""Pots that are full: where dishes of one sitting had to share one, which must be emptied before the next has it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime
from typing import NamedTuple

from packlarder.reckon.trip.camp import heats_water, on_flame
from packlarder.reckon.trip.journey import MealClock
from packlarder.reckon.trip.records import TripMeal


class _Held(NamedTuple):
    """From when a dish has a pot: until it is eaten, or its water is poured out."""

    pot: str
    since: datetime
    number: int
    until: datetime


def with_full_pots(dishes: Sequence[TripMeal], clocks: Sequence[MealClock]) -> tuple[MealClock, ...]:
    """Give the clocks of one sitting with the dishes that must leave a pot."""
    held = [one for dish, clock in zip(dishes, clocks, strict=True) for one in _held(dish, clock)]
    return tuple([replace(clock, pot_after=_pot_after(clock.number, held)) for clock in clocks])


def _held(dish: TripMeal, clock: MealClock) -> Iterator[_Held]:
    for step, time in zip(dish.plan.steps, clock.steps, strict=True):
        if on_flame(step):
            yield _Held(step.pot, time.begins, dish.number, clock.eat_at)
        elif heats_water(dish.plan, step):
            yield _Held(step.pot, time.begins, dish.number, time.poured_at)


def _pot_after(number: int, held: Sequence[_Held]) -> int | None:
    """Give the last dish that has a pot of this one when this one wants it."""
    found = [
        other
        for mine in held
        for other in held
        if mine.number == number != other.number and mine.pot == other.pot
        if (other.since, other.number) < (mine.since, number) and other.until > mine.since
    ]
    return max(found, key=lambda other: other.since).number if found else None
