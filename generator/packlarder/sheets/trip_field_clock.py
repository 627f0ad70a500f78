"""The moments of a meal's steps as its opening tells them: when each begins, boils, is poured, and ends."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from packlarder.book.step import Verb
from packlarder.reckon.ledger import GIVES_WATER
from packlarder.reckon.records import PlannedStep
from packlarder.reckon.trip.clock import step_times
from packlarder.reckon.trip.journey import MealClock, StepTime
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
    times = step_times(meal, first_move(meal, trip))
    return tuple(_moments(step, time) for step, time in zip(meal.plan.steps, times, strict=True))


def _moments(step: PlannedStep, time: StepTime) -> StepMoments:
    return StepMoments(
        begins=time.begins,
        boils_at=time.boils_at if step.verb in BOILS else None,
        poured_at=time.poured_at if step.verb in GIVES_WATER else None,
        ends=time.ends,
    )
