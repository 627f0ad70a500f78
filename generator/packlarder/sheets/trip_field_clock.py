"""The moments of a meal's steps: when each begins, when its water boils or is poured, when it ends.

All of them are rounded up to whole minutes from the first move, so that head and steps of an opening never disagree.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta

from packlarder.book.step import Verb
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.ledger import GIVES_WATER
from packlarder.reckon.records import PlannedStep, StepSums
from packlarder.reckon.trip.journey import MealClock
from packlarder.reckon.trip.records import TripMeal, TripSums

BOILS = frozenset({Verb.BOIL, Verb.SIMMER})
"""Verbs that bring what is in their pot to the boil."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StepMoments:
    """When a step begins and ends; `boils_at` is when its pot first boils, `poured_at` when its water goes onto food.

    Where water must be heated before it is poured, the step begins with that.
    """

    begins: datetime
    boils_at: datetime | None
    poured_at: datetime | None
    ends: datetime


def clock_of(meal: TripMeal, trip: TripSums) -> MealClock | None:
    """Give when a meal is begun and eaten; None where that could not be worked out."""
    return next((one for one in trip.journey.clock if one.number == meal.number), None)


def first_move(meal: TripMeal, trip: TripSums) -> datetime:
    """Give when a meal is begun; without a clock of the trip as if it had the flame to itself."""
    known = clock_of(meal, trip)
    return meal.eat_at - timedelta(minutes=meal.sums.clock.minutes) if known is None else known.start_at


def step_moments(meal: TripMeal, trip: TripSums) -> tuple[StepMoments, ...]:
    """Give the moments of each step, in the order of steps."""
    start = first_move(meal, trip)
    return tuple(_moments(start, step, sums) for step, sums in zip(meal.plan.steps, meal.sums.steps, strict=True))


def _moments(start: datetime, step: PlannedStep, sums: StepSums) -> StepMoments:
    def at(minutes: float) -> datetime:
        return start + timedelta(minutes=whole_minutes(minutes))

    boils = step.verb in BOILS and sums.boil_up_min > 0
    return StepMoments(
        begins=at(sums.start_min),
        boils_at=at(sums.start_min + sums.boil_up_min / max(1, sums.rounds)) if boils else None,
        poured_at=at(sums.start_min + sums.boil_up_min) if step.verb in GIVES_WATER else None,
        ends=at(sums.end_min),
    )
