"""The rules about dishes, held against the meals of a trip: what is new there beside what the dish's own page says.

A page is worked out for the usual servings under the usual conditions. On a trip a dish is cooked higher up, in other
air and water, on another stove, for more people, or with another form of a food.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from packlarder.reckon.records import DishPlan, DishSums
from packlarder.reckon.trip.records import TripMeal
from packlarder.safety import people
from packlarder.safety.case import DishCase
from packlarder.safety.rule import Finding, Shows
from packlarder.safety.trip_case import SPARE_DAY, TripCase
from packlarder.safety.wording import days


@dataclass(frozen=True, slots=True, kw_only=True)
class AtHome:
    """What a dish's own page says: its plan, sums and findings under the usual conditions."""

    plan: DishPlan
    sums: DishSums
    findings: tuple[Finding, ...]


AtHomeOf = Callable[[str], AtHome]
"""Gives what the page of a dish says, by the dish's id."""
CheckDish = Callable[[DishCase], tuple[Finding, ...]]


def new_at_meals(case: TripCase, at_home_of: AtHomeOf, check: CheckDish) -> tuple[Finding, ...]:
    """Give what dishes do on a trip that their pages do not say; the same of several meals is told once for all."""
    checked: dict[DishCase, tuple[Finding, ...]] = {}
    told: dict[tuple[object, ...], list[tuple[Finding, TripMeal]]] = {}
    for meal in case.sums.meals:
        at_home = at_home_of(meal.dish)
        if _as_at_home(meal, at_home):
            continue
        dish = case.dish_case(meal)
        if dish not in checked:
            checked[dish] = tuple(_new(check(dish), meal, at_home))
        for finding in checked[dish]:
            same = finding.rule.id, tuple(finding.words.items()), finding.facts
            told.setdefault(same, []).append((finding, meal))
    return tuple([_of_meals(*zip(*alike, strict=True)) for alike in told.values()])


def _as_at_home(meal: TripMeal, at_home: AtHome) -> bool:
    """Tell whether a meal is cooked as its dish's page says: its steps differ in wind, or in other pots."""
    usual = at_home.sums
    alike = meal.sums.conditions == usual.conditions and meal.portions == usual.servings
    alike = alike and meal.sums.steps == usual.steps and _pots(meal.plan) == _pots(at_home.plan)
    return alike and meal.plan.stove_name == at_home.plan.stove_name and not meal.instead


def _pots(plan: DishPlan) -> list[str]:
    return [step.pot for step in plan.steps]


def _new(findings: tuple[Finding, ...], meal: TripMeal, at_home: AtHome) -> Iterator[Finding]:
    """Leave out what the dish's page says too, what stands at the front, and what a rule about trips says better.

    How warm a meal ends is told again where that is cooler than the page says.
    """
    known = {_about(finding) for finding in at_home.findings}
    cooler = _coolest_c(meal.sums) < _coolest_c(at_home.sums)
    for finding in findings:
        rule = finding.rule
        if rule.shows is Shows.FRONT or rule.id in _TOLD_BY_TRIPS:
            continue
        if _about(finding) not in known or (cooler and rule.id in _ENDS_AT):
            yield finding


def _about(finding: Finding) -> tuple[object, ...]:
    return finding.rule.id, finding.places


def _coolest_c(sums: DishSums) -> int:
    """Give the coolest end of what only warms, in whole degrees as they are told; what has none counts as hot."""
    return min([round(step.steeped_c) for step in sums.steps if step.steeped_c is not None], default=1000)


def _of_meals(findings: Sequence[Finding], meals: Sequence[TripMeal]) -> Finding:
    """Set what is found alike at several meals at all their lines; their dishes and days lead what it says."""
    dishes: dict[str, list[TripMeal]] = {}
    for meal in meals:
        dishes.setdefault(meal.plan.model.name, []).append(meal)
    lines, sources = [meal.line for meal in meals], [place for finding in findings for place in finding.places]
    return replace(
        findings[0],
        places=tuple(dict.fromkeys((*lines, *sources))),
        about=", ".join(f"{dish} ({_days(of_dish)})" for dish, of_dish in dishes.items()),
    )


def _days(meals: list[TripMeal]) -> str:
    on_the_way = [meal.day for meal in meals if not meal.spare]
    spare = [SPARE_DAY] if len(on_the_way) < len(meals) else []
    return ", ".join([*([days(on_the_way)] if on_the_way else []), *spare])


_TOLD_BY_TRIPS = frozenset({rule.id for rule in people.RULES} | {"cold-cartridge", "boil-longer-up-high"})
"""Rules about trips say the same by person, by fuel, by stop."""
_ENDS_AT = frozenset({"steeping-only-warms", "heater-only-warms", "reheat-falls-short"})
"""Rules that say at how many degrees something ends."""
