"""Water that is boiled to be safe: where, how much, in how many potfuls, for how many minutes of flame."""

from collections.abc import Sequence
from dataclasses import replace

from packlarder.book.household import Household
from packlarder.book.stop import Fills, WaterTreatment
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.trip.burner import boiling_safe_kj, first_burner, melting_kj, potfuls
from packlarder.reckon.trip.journey import Leg, StopWater
from packlarder.reckon.trip.records import PlannedTrip, StopSums
from packlarder.reckon.trip.treating import is_boiled


def with_boiling(
    planned: PlannedTrip, household: Household, stops: Sequence[StopWater], legs: Sequence[Leg]
) -> tuple[tuple[StopWater, ...], tuple[Leg, ...]]:
    """Give stops and legs with what is boiled at each to be safe."""
    return (
        tuple([_stop(planned, household, stop, legs) for stop in stops]),
        tuple([_leg(planned, household, leg, stops) for leg in legs]),
    )


def _stop(planned: PlannedTrip, household: Household, used: StopWater, legs: Sequence[Leg]) -> StopWater:
    """Add what is used there, but for what dishes boil anyway, to what the leg carries on."""
    stop = planned.stops[used.stop]
    if not is_boiled(stop):
        return used
    heated_ml = sum(meal.sums.water.hot_ml for meal in planned.meals if meal.stop == stop.index)
    onward_ml = sum(leg.treated_ml for leg in legs if leg.from_stop == stop.index)
    boil_ml = max(0, used.treated_ml - heated_ml) + onward_ml
    pots, minutes = _on_the_flame(planned, household, stop, boil_ml, used.wait_min)
    return replace(used, boil_ml=boil_ml, potfuls=pots, boil_min=minutes)


def _leg(planned: PlannedTrip, household: Household, leg: Leg, stops: Sequence[StopWater]) -> Leg:
    if leg.from_stop is None or leg.treated_by is not WaterTreatment.BOILING:
        return leg
    stop, wait_min = planned.stops[leg.from_stop], stops[leg.from_stop].wait_min
    pots, minutes = _on_the_flame(planned, household, stop, leg.treated_ml, wait_min)
    return replace(leg, potfuls=pots, boil_min=minutes)


def _on_the_flame(
    planned: PlannedTrip, household: Household, stop: StopSums, water_ml: float, wait_min: int
) -> tuple[int, int]:
    """Give potfuls, and minutes in all: snow is melted, water brought to the boil and kept there."""
    burner = first_burner(planned.model, household, windy=stop.model.windy)
    count = potfuls(water_ml, burner.pot)
    heat_kj = boiling_safe_kj(water_ml, stop.conditions, burner.pot, 0)
    if stop.model.fills is Fills.SNOW:
        heat_kj += melting_kj(water_ml, stop.conditions)
    return count, whole_minutes(burner.minutes(heat_kj) + count * wait_min)
