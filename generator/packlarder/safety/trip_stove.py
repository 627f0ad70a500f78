"""Stove and plan of a trip: gas in the cold, a stove without fuel, dishes nobody tried, no day in reserve."""

from collections.abc import Iterator

from packlarder.book.book import dish_place
from packlarder.book.dish import Meal
from packlarder.faults import Severity
from packlarder.figures.fuels import COLD_CARTRIDGE, FUELS
from packlarder.measure import DOWN, UP, Rounding, in_celsius, in_fahrenheit
from packlarder.reckon.heat import gas_boils_at_c
from packlarder.reckon.records import Conditions
from packlarder.reckon.trip.camp import wants_stove
from packlarder.reckon.trip.records import StopSums, TripMeal
from packlarder.reckon.trip.treating import wants_flame
from packlarder.safety.case import listed
from packlarder.safety.hit import Hit
from packlarder.safety.limits import SPARE_DAY_ABOVE
from packlarder.safety.rule import Rule, Shows, TripRule
from packlarder.safety.trip_case import TripCase, as_cooked
from packlarder.safety.wording import THE_WATER


def gas_too_cold(case: TripCase) -> Iterator[Hit]:
    """Find meals cooked on a gas that stays liquid in the cold of their stop: told once for each stop and fuel.

    Water that is boiled or melted to be drunk wants it too, and only ever comes from the first stove along.
    """
    for meals in _by_place([meal for meal in case.sums.meals if _margin_k(meal) < 0]):
        yield _about_gas(case, meals)
    for stop in filter(wants_flame, case.sums.stops):
        yield from _about_water(case, stop)


def cold_gas(case: TripCase) -> Iterator[Hit]:
    """Find meals on gas that will give little: told once, for the coldest against what its gas bears."""
    cold = [meal for meal in case.sums.meals if meal.sums.conditions.air_c < COLD_CARTRIDGE.value]
    weak = [meal for meal in cold if 0 <= _margin_k(meal) < _NO_GAS]
    if weak:
        worst = min(weak, key=_margin_k)
        yield _about_gas(case, [worst, *(meal for meal in weak if meal is not worst)])


_NO_GAS = 1000.0
"""Stands for a meal that wants no gas: no cold is so far away."""


def _margin_k(meal: TripMeal) -> float:
    """Give by how much the air is warmer than the point below which a meal's gas stays liquid."""
    limit_c = _limit_c(meal.plan.stove.fuel, meal.sums.conditions)
    if limit_c is None or not wants_stove(as_cooked(meal)):
        return _NO_GAS
    return meal.sums.conditions.air_c - limit_c


def _limit_c(fuel: str, conditions: Conditions) -> float | None:
    boils_at = FUELS[fuel].boils_at
    return None if boils_at is None else gas_boils_at_c(boils_at.value, conditions.height_m)


def _by_place(meals: list[TripMeal]) -> list[list[TripMeal]]:
    groups: dict[tuple[int | None, str], list[TripMeal]] = {}
    for meal in meals:
        groups.setdefault((meal.stop, meal.plan.stove.fuel), []).append(meal)
    return list(groups.values())


def _about_gas(case: TripCase, meals: list[TripMeal]) -> Hit:
    """Make a hit about the gas of some meals, with the figures of the first."""
    first = meals[0]
    fuel, conditions = first.plan.stove.fuel, first.sums.conditions
    dishes = listed(meal.plan.model.name for meal in meals)
    words = _gas_words(fuel, _limit_c(fuel, conditions), conditions)
    return case.at_lines((meal.line for meal in meals), place=case.where(first), dishes=dishes, **words)


def _about_water(case: TripCase, stop: StopSums) -> Iterator[Hit]:
    """Make a hit about the water of a stop if no gas heats it there."""
    fuel = case.household.stoves[case.sums.model.stoves[0]].fuel
    limit_c = _limit_c(fuel, stop.conditions)
    if limit_c is not None and stop.conditions.air_c < limit_c:
        words = _gas_words(fuel, limit_c, stop.conditions)
        yield case.hit("stops", stop.index, "fills", place=stop.model.place, dishes=THE_WATER, **words)


def _gas_words(fuel: str, limit_c: float | None, conditions: Conditions) -> dict[str, str]:
    limit = "" if limit_c is None else _degrees(limit_c, UP)
    return {"fuel": fuel, "limit": limit, "air": _degrees(conditions.air_c, DOWN)}


def _degrees(celsius: float, rounding: Rounding) -> str:
    return f"{in_celsius(celsius, rounding)} ({in_fahrenheit(celsius, rounding)})"


def no_fuel_counted(case: TripCase) -> Iterator[Hit]:
    """Find stoves along for which no fuel is counted, because nothing is cooked on them: told once for each."""
    counted = {fuel.fuel for fuel in case.sums.journey.fuels}
    for index, name in enumerate(case.sums.model.stoves):
        fuel = case.household.stoves[name].fuel
        if fuel not in counted:
            yield case.hit("stoves", index, stove=name, fuel=fuel)


def never_tried(case: TripCase) -> Iterator[Hit]:
    """Find dishes that nobody has cooked yet, neither at home nor on a trip: told once for each."""
    untried: dict[str, list[TripMeal]] = {}
    for meal in case.sums.meals:
        if not meal.plan.model.tried and meal.dish not in case.eaten_before:
            untried.setdefault(meal.plan.id, []).append(meal)
    for id, meals in untried.items():
        yield case.at_meal(meals[0], *[meal.line for meal in meals[1:]], dish_place(id))


def no_cold_meal(case: TripCase) -> Iterator[Hit]:
    """Find a trip on which every dish that is eaten wants a stove."""
    eaten = [meal for meal in case.sums.meals if meal.meal is not Meal.DRINK]
    if eaten and all(wants_stove(as_cooked(meal)) for meal in eaten):
        yield case.hit("stops")


def no_spare_day(case: TripCase) -> Iterator[Hit]:
    """Find a trip of some length without a day in reserve and without anything to buy on the way."""
    trip = case.sums.model
    buys = any(stop.to_buy for stop in trip.stops)
    if case.sums.last_day > SPARE_DAY_ABOVE.value and not trip.spare_day and not buys:
        yield case.hit("stops", days=str(case.sums.last_day))


RULES: tuple[Rule, ...] = (
    TripRule(id="gas-too-cold", severity=Severity.ERROR, facts=("T9-15",), check=gas_too_cold),
    TripRule(id="cold-gas", severity=Severity.NOTE, facts=("T9-12", "T9-15"), shows=Shows.FIELD, check=cold_gas),
    TripRule(id="no-fuel-counted", severity=Severity.NOTE, facts=("T15-03",), check=no_fuel_counted),
    TripRule(id="never-tried", severity=Severity.WARNING, facts=("T15-04",), check=never_tried),
    TripRule(id="no-cold-meal", severity=Severity.NOTE, facts=("T15-03",), check=no_cold_meal),
    TripRule(id="no-spare-day", severity=Severity.NOTE, facts=("T15-05",), check=no_spare_day),
)
