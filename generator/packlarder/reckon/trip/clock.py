"""The clock of a trip: when each dish and each of its steps begins and ends, and which dish has the flame first."""

import math
from collections.abc import Sequence
from datetime import datetime, timedelta
from itertools import groupby

from packlarder.book.dish import Meal
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.dish import ALMOST
from packlarder.reckon.ledger import GIVES_WATER
from packlarder.reckon.records import StepSums
from packlarder.reckon.trip.flame_share import Burning, Turn, flame_minutes, turns
from packlarder.reckon.trip.full_pots import with_full_pots
from packlarder.reckon.trip.journey import MealClock, SoakStart, StepTime
from packlarder.reckon.trip.records import PlannedTrip, TripMeal


def clocks(planned: PlannedTrip) -> tuple[MealClock, ...]:
    """Give the clock of every meal, in the order of meals."""
    found: list[MealClock] = []
    for _, group in groupby(sorted(planned.meals, key=lambda meal: meal.sitting), key=lambda meal: meal.sitting):
        dishes = list(group)
        found += _served_together(dishes, turns([burning(dish) for dish in dishes], planned.model.burners))
    return tuple(sorted(found, key=lambda clock: clock.number))


def burning(meal: TripMeal) -> Burning:
    """Give a dish as the flame sees it; a minute that is begun counts as a whole one."""
    minutes = meal.sums.clock.minutes
    spans = [_on_the_flame(step) for step in meal.sums.steps if _has_flame(step)]
    return Burning(
        minutes=minutes,
        soak_min=meal.sums.clock.soak_minutes,
        flame=flame_minutes(minutes, spans),
        drink=meal.meal is Meal.DRINK,
    )


def step_times(meal: TripMeal, start_at: datetime) -> tuple[StepTime, ...]:
    """Give the times of all steps of a dish that is begun at some moment."""
    return tuple([_step_time(index, step, start_at) for index, step in enumerate(meal.sums.steps)])


def _step_time(index: int, step: StepSums, start_at: datetime) -> StepTime:
    boils_min = step.start_min + step.boil_up_min / step.rounds
    return StepTime(
        step=index,
        begins=_moment(start_at, step.start_min),
        boils_at=_moment(start_at, boils_min) if step.boil_up_min else None,
        ends=_moment(start_at, step.end_min),
    )


def _moment(start_at: datetime, minutes: float) -> datetime:
    """Round up: by then water boils, and food that is given longer is not undone."""
    return start_at + timedelta(minutes=whole_minutes(minutes))


def _served_together(dishes: Sequence[TripMeal], flame: Sequence[Turn]) -> Sequence[MealClock]:
    told = [
        _clock(dish, turn, None if turn.after is None else dishes[turn.after].number)
        for dish, turn in zip(dishes, flame, strict=True)
    ]
    return with_full_pots(dishes, told)


def _clock(meal: TripMeal, turn: Turn, after: int | None) -> MealClock:
    ready_at = meal.eat_at - timedelta(minutes=turn.waits_min)
    start_at = ready_at - timedelta(minutes=meal.sums.clock.minutes)
    steps = step_times(meal, start_at)
    soaks = [
        SoakStart(step=at.step, at=at.poured_at, minutes=max(1, round(step.wait_min)))
        for at, step in zip(steps, meal.sums.steps, strict=True)
        if step.wait_min and meal.plan.steps[at.step].verb in GIVES_WATER
    ]
    flames = [at.begins for at, step in zip(steps, meal.sums.steps, strict=True) if _has_flame(step)]
    return MealClock(
        number=meal.number,
        start_at=start_at,
        ready_at=ready_at,
        eat_at=meal.eat_at,
        waits_min=turn.waits_min,
        soaks=tuple(soaks),
        after=after,
        flame_at=min(flames, default=None),
        steps=steps,
    )


def _has_flame(step: StepSums) -> bool:
    return bool(step.boil_up_min or step.cook_min)


def _on_the_flame(step: StepSums) -> tuple[int, int]:
    """Give from when to when the flame is kept for a step, in whole minutes from the start of its dish.

    Water is heated before hands do anything with it, so hands come last.
    """
    return math.floor(step.start_min + ALMOST), whole_minutes(step.start_min + step.boil_up_min + step.cook_min)
