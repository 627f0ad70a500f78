"""Water that is boiled to be safe: where, how much, in how many potfuls, for how many minutes of flame."""

from collections.abc import Sequence
from dataclasses import replace

from packlarder.book.household import Household
from packlarder.book.stop import WaterTreatment
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.trip.burner import boiling_safe_kj, first_burner, melting_kj, potfuls
from packlarder.reckon.trip.journey import Leg, StopWater
from packlarder.reckon.trip.records import PlannedTrip, StopSums
from packlarder.reckon.trip.treating import is_boiled, is_melted, wait_min


def with_boiling(
    planned: PlannedTrip, household: Household, stops: Sequence[StopWater], legs: Sequence[Leg]
) -> tuple[tuple[StopWater, ...], tuple[Leg, ...]]:
    """Give stops and legs with what is boiled at each to be safe."""
    return (
        tuple([_stop(planned, household, stop, legs) for stop in stops]),
        tuple([_leg(planned, household, leg) for leg in legs]),
    )


def _stop(planned: PlannedTrip, household: Household, used: StopWater, legs: Sequence[Leg]) -> StopWater:
    """Add what is used there, but for what dishes boil anyway, to what the leg carries on.

    Snow for dishes and heaters is melted with it: their own minutes begin with water.
    """
    stop = planned.stops[used.stop]
    if not is_boiled(stop):
        return used
    heated_ml = sum(meal.sums.water.hot_ml for meal in planned.meals if meal.stop == stop.index)
    onward_ml = sum(leg.carry_ml for leg in legs if leg.from_stop == stop.index)
    boil_ml = max(0, used.treated_ml - heated_ml) + onward_ml
    fresh_ml = used.meals.carry_ml + onward_ml
    pots, minutes = _on_the_flame(planned, household, stop, boil_ml, fresh_ml)
    return replace(used, boil_ml=boil_ml, potfuls=pots, boil_min=minutes)


def _leg(planned: PlannedTrip, household: Household, leg: Leg) -> Leg:
    if leg.from_stop is None or leg.treated_by is not WaterTreatment.BOILING:
        return leg
    pots, minutes = _on_the_flame(planned, household, planned.stops[leg.from_stop], leg.treated_ml, leg.carry_ml)
    return replace(leg, potfuls=pots, boil_min=minutes)


def _on_the_flame(
    planned: PlannedTrip, household: Household, stop: StopSums, boil_ml: int, fresh_ml: int
) -> tuple[int, int]:
    """Give potfuls, and minutes in all: snow is melted, water brought to the boil and kept there."""
    burner = first_burner(planned.model, household, windy=stop.model.windy)
    count = potfuls(boil_ml, burner.pot)
    heat_kj = boiling_safe_kj(boil_ml, stop.conditions, burner.pot, 0)
    if is_melted(stop):
        heat_kj += melting_kj(fresh_ml, stop.conditions)
    return count, whole_minutes(burner.minutes(heat_kj) + count * wait_min(stop))
