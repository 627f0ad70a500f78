"""The spare day's water, and the fuel that makes it fit to drink: nobody knows where the weather will hold them."""

from collections.abc import Sequence
from typing import NamedTuple

from packlarder.book.household import Household
from packlarder.reckon.trip.burner import Burner, boiling_safe_kj, first_burner, melting_kj
from packlarder.reckon.trip.journey import Leg
from packlarder.reckon.trip.plain_water import drinking_ml, washing_ml
from packlarder.reckon.trip.records import PlannedTrip, StopSums
from packlarder.reckon.trip.treating import is_boiled, is_melted, wait_min, wants_flame


class SpareFuel(NamedTuple):
    """What is burnt for the spare day's water, in g without margin: to boil it safe, and to melt it of snow."""

    fuel: str
    treating_g: float
    melting_g: float

    @property
    def grams(self) -> float:
        """Give all of it."""
        return self.treating_g + self.melting_g


def spare_day_ml(planned: PlannedTrip, *, washing: bool) -> int:
    """Give a day's water in reserve: its dishes, drinking and, unless lake or sea is near, washing; 0 without one."""
    if not planned.model.spare_day:
        return 0
    meals = sum(meal.sums.water.carry_ml for meal in planned.meals if meal.spare)
    return meals + drinking_ml(planned, planned.last_day + 1) + (washing_ml(planned) if washing else 0)


def spare_fuel(planned: PlannedTrip, household: Household, legs: Sequence[Leg]) -> SpareFuel | None:
    """Give the fuel for the spare day's water at the fill point where that takes the most; None where none takes any.

    A leg that carries the spare day's water has the fuel for it already, at the fill point where it begins.
    """
    if not planned.model.spare_day:
        return None
    carried_from = {leg.from_stop for leg in legs if leg.water.spare_day_ml}
    stops = [stop for stop in filter(wants_flame, planned.stops) if stop.index not in carried_from]
    found = [_at(planned, household, stop) for stop in stops]
    return max([one for one in found if one.grams], key=lambda one: one.grams, default=None)


def _at(planned: PlannedTrip, household: Household, stop: StopSums) -> SpareFuel:
    burner = first_burner(planned.model, household, windy=stop.model.windy)
    used_ml = spare_day_ml(planned, washing=stop.model.other_water is None)
    treating_g = burner.grams(_boiled_kj(planned, stop, burner, used_ml)) if is_boiled(stop) else 0.0
    melting_g = burner.grams(melting_kj(used_ml, stop.conditions)) if is_melted(stop) else 0.0
    return SpareFuel(burner.fuel, treating_g, melting_g)


def _boiled_kj(planned: PlannedTrip, stop: StopSums, burner: Burner, used_ml: int) -> float:
    """Leave out what heaters take, and what the day's dishes boil anyway."""
    waters = [meal.sums.water for meal in planned.meals if meal.spare]
    boil_ml = max(0, used_ml - sum(water.heater_ml + water.hot_ml for water in waters))
    return boiling_safe_kj(boil_ml, stop.conditions, burner.pot, wait_min(stop))
