"""What keeps on a trip: food that wants cold, and cooked food that waits because dishes share a flame."""

from collections.abc import Callable, Iterator
from datetime import datetime, timedelta

from packlarder.book.book import spoken
from packlarder.faults import Severity
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Group, Kind
from packlarder.reckon.records import ComponentSums, PlannedPart
from packlarder.reckon.trip.records import StopSums, TripMeal
from packlarder.safety.beans_and_grains import grain_stands
from packlarder.safety.case import DishCase
from packlarder.safety.case import spoken as in_a_sentence
from packlarder.safety.food import WET_ABOVE
from packlarder.safety.heat import groups_of, raw_kinds
from packlarder.safety.hit import Hit
from packlarder.safety.limits import RICE_TIME
from packlarder.safety.rule import Rule, TripRule
from packlarder.safety.trip_case import Eaten, TripCase
from packlarder.safety.water import ON_STOVE, stands_min, wet_limit_min

WITHOUT_COOLER = "without a cooler"
AFTER_THE_COOLER = "and the cooler keeps cold for {days} d"


def raw_without_cold(case: TripCase) -> Iterator[Hit]:
    """Find raw meat, fish or milk, not dried, that is eaten after its cold has gone: once for each component."""
    yield from _warm(case, _raw_and_fresh)


def perishable_without_cold(case: TripCase) -> Iterator[Hit]:
    """Find other perishable food, not dried, that is eaten after its cold has gone: once for each component."""
    yield from _warm(case, lambda one: not _raw_and_fresh(one) and bool(spoils(one) - _KEEPS_LONGER))


def cheese_without_cold(case: TripCase) -> Iterator[Hit]:
    """Find cheese and cured meat that is eaten after its cold has gone: once for each component."""
    yield from _warm(case, lambda one: bool(spoils(one)) and spoils(one) <= _KEEPS_LONGER)


_WORST = frozenset({Group.MEAT, Group.FISH, Group.MILK})
_KEEPS_LONGER = frozenset({Kind.CHEESE, Kind.CURED_MEAT})
_FRESH_PLANTS = frozenset({Group.VEGETABLE, Group.NUT})
"""Whole and uncut they keep for days; the two-hour limit is for what was wetted or cooked."""


def spoils(component: ComponentSums) -> frozenset[Kind]:
    """Give the kinds for which a component that is carried with its water wants cold; unknown water counts as much."""
    water = None if component.yielded is None else component.yielded.dry_water
    if component.model.dried is not Drying.NOT_DRIED or (water is not None and water <= WET_ABOVE):
        return frozenset()
    kinds = component.kinds
    return frozenset(kind for kind in kinds if kind.rules.perishable and kind.rules.group not in _FRESH_PLANTS)


def _raw_and_fresh(component: ComponentSums) -> bool:
    return bool(_WORST & groups_of(raw_kinds(component) & spoils(component)))


def _warm(case: TripCase, wanted: Callable[[ComponentSums], bool]) -> Iterator[Hit]:
    """Make a hit for each component of a sort that is eaten after its cold has gone, at all its lines."""
    late: dict[str, list[Eaten]] = {}
    for one in case.eaten:
        if wanted(one.component) and _has_gone_warm(case, one):
            late.setdefault(one.component.id, []).append(one)
    cooler = case.sums.model.cooler
    cold = WITHOUT_COOLER if cooler is None else AFTER_THE_COOLER.format(days=cooler.keeps_cold)
    for eaten in late.values():
        first = eaten[0]
        words = {"component": first.component.model.name, "dish": first.dish, "day": str(first.day)}
        yield case.at_lines((one.line for one in eaten), cold=cold, **words)


def _has_gone_warm(case: TripCase, one: Eaten) -> bool:
    """Tell whether a food is out of the cold for longer than it may be when it is eaten.

    The clock runs from the first meal of the trip, for then people have surely left home, or from where it was bought.
    Out of the bag it is eaten at any hour: there only whole days count.
    """
    cooler, meal = case.sums.model.cooler, one.meal
    if cooler is not None and one.day <= cooler.keeps_cold:
        return False
    shop = _bought_at(case, one)
    if shop is not None and meal is not None and shop.index == meal.stop:
        return False
    since = _carried_since(case, shop)
    if meal is None or since is None:
        return one.on > (case.sums.model.starts if shop is None else shop.on)
    return meal.eat_at - since > timedelta(minutes=wet_limit_min(meal.sums.conditions.air_c))


def _bought_at(case: TripCase, one: Eaten) -> StopSums | None:
    """Give the last stop on the way to where a food is eaten that sells it, as the packing list has it.

    What is eaten on the move is bought the day before at the latest; what is in reserve comes from home.
    """
    if one.day > case.sums.last_day:
        return None
    last = None if one.meal is None else one.meal.stop
    model = one.component.model
    names = set(map(spoken, (model.name, one.component.id, *model.formerly)))
    shops = [
        stop
        for stop in case.sums.stops
        if names.intersection(map(spoken, stop.model.to_buy))
        and (stop.on < one.on if last is None else stop.index <= last)
    ]
    return shops[-1] if shops else None


def _carried_since(case: TripCase, shop: StopSums | None) -> datetime | None:
    """Give the first meal of the trip, or at the stop where something is bought; None if nothing is eaten there."""
    meals = [meal for meal in case.sums.meals if shop is None or meal.stop == shop.index]
    return min([meal.eat_at for meal in meals], default=None)


def waits_too_long(case: TripCase) -> Iterator[Hit]:
    """Find cooked food that stands ready for too long because another dish of its meal has the flame after it."""
    for clock in case.sums.journey.clock:
        if clock.waits_min > 0:
            yield from _waiting(case, case.sums.by_number[clock.number], clock.waits_min)


def _waiting(case: TripCase, meal: TripMeal, waits_min: float) -> Iterator[Hit]:
    """Find the first part of a dish that stands wet and warm for longer than it may."""
    dish = case.dish_case(meal)
    limit_min = wet_limit_min(dish.air_c)
    stands = [(part, _stands_min(dish, part) + waits_min, limit_min) for part in dish.perishable if _is_wet(dish, part)]
    stands += [(part, minutes + waits_min, RICE_TIME.value) for part, minutes in grain_stands(dish)]
    for part, minutes, most_min in sorted(stands, key=lambda one: one[2]):
        if minutes > most_min:
            words = {"part": in_a_sentence(part), "minutes": f"{minutes:.0f}", "limit": f"{most_min:g}"}
            yield case.at_meal(meal, **words)
            return


def _is_wet(dish: DishCase, part: PlannedPart) -> bool:
    return dish.journey(part).wet_at is not None


def _stands_min(dish: DishCase, part: PlannedPart) -> float:
    """Give for how long a part stands wet before its dish is ready; the stove's heat starts the count anew."""
    if dish.sums is None or any(dish.steps_with(part.index, *ON_STOVE)):
        return 0.0
    return stands_min(dish, part, dish.sums)


RULES: tuple[Rule, ...] = (
    TripRule(
        id="raw-without-cold",
        severity=Severity.ERROR,
        facts=("T2-02", "T2-03"),
        check=raw_without_cold,
    ),
    TripRule(
        id="perishable-without-cold",
        severity=Severity.WARNING,
        facts=("T2-02", "T2-14"),
        check=perishable_without_cold,
    ),
    TripRule(id="waits-too-long", severity=Severity.WARNING, facts=("T2-18", "T7-08"), check=waits_too_long),
    TripRule(id="cheese-without-cold", severity=Severity.NOTE, facts=("T5-27", "T2-02"), check=cheese_without_cold),
)
