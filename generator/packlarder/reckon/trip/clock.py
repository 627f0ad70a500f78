"""The clock of a trip: when each dish is begun, when its soaks get their water, and which dish has the flame first."""

import math
from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import groupby

from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.dish import ALMOST
from packlarder.reckon.ledger import GIVES_WATER
from packlarder.reckon.records import StepSums
from packlarder.reckon.trip.flame_share import Burning, Turn, flame_minutes, turns
from packlarder.reckon.trip.journey import MealClock, SoakStart
from packlarder.reckon.trip.records import PlannedTrip, TripMeal


def clocks(planned: PlannedTrip) -> tuple[MealClock, ...]:
    """Give the clock of every meal, in the order of meals."""
    found: list[MealClock] = []
    for _, group in groupby(sorted(planned.meals, key=_sitting), key=_sitting):
        dishes = list(group)
        found += _served_together(dishes, turns([burning(dish) for dish in dishes], planned.model.burners))
    return tuple(sorted(found, key=lambda clock: clock.number))


def burning(meal: TripMeal) -> Burning:
    """Give a dish as the flame sees it; a minute that is begun counts as a whole one."""
    minutes = meal.sums.clock.minutes
    spans = [_on_the_flame(step) for step in meal.sums.steps if step.boil_up_min or step.cook_min]
    return Burning(minutes=minutes, soak_min=meal.sums.clock.soak_minutes, flame=flame_minutes(minutes, spans))


def _sitting(meal: TripMeal) -> tuple[int, datetime]:
    """Give what dishes share that are eaten together: where and when."""
    return -1 if meal.stop is None else meal.stop, meal.eat_at


def _served_together(dishes: Sequence[TripMeal], flame: Sequence[Turn]) -> list[MealClock]:
    return [
        _clock(dish, turn, None if turn.after is None else dishes[turn.after].number)
        for dish, turn in zip(dishes, flame, strict=True)
    ]


def _clock(meal: TripMeal, turn: Turn, after: int | None) -> MealClock:
    ready_at = meal.eat_at - timedelta(minutes=turn.waits_min)
    start_at = ready_at - timedelta(minutes=meal.sums.clock.minutes)
    soaks = [
        SoakStart(step=index, at=start_at + timedelta(minutes=_begun(water_min)), minutes=whole_minutes(step.wait_min))
        for index, step in enumerate(meal.sums.steps)
        if step.wait_min and meal.plan.steps[index].verb in GIVES_WATER
        for water_min in (step.start_min + step.boil_up_min,)
    ]
    return MealClock(
        number=meal.number,
        start_at=start_at,
        ready_at=ready_at,
        eat_at=meal.eat_at,
        waits_min=turn.waits_min,
        soaks=tuple(soaks),
        after=after,
    )


def _on_the_flame(step: StepSums) -> tuple[int, int]:
    """Give when a step gets the flame and gives it back, in whole minutes from the start of its dish.

    Water is heated before hands do anything with it, so hands come last.
    """
    return _begun(step.start_min), whole_minutes(step.start_min + step.boil_up_min + step.cook_min)


def _begun(minutes: float) -> int:
    """Round down to a whole minute: what is begun earlier is not late."""
    return math.floor(minutes + ALMOST)
