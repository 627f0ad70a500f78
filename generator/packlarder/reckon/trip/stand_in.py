"""Another form of a food takes the place of what the larder lacks, where the dish allows it, by fresh equivalent."""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import replace
from types import MappingProxyType

from packlarder.book.defaults import known
from packlarder.book.part import Part, Take
from packlarder.faults import has_errors
from packlarder.figures.kinds import Cooking
from packlarder.measure import Quantity
from packlarder.reckon.dish import printed_g, work_out_each
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import ComponentSums, DishPlan, PlannedPart
from packlarder.reckon.trip.camp import settled_at, wants_stove
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.records import PlannedTrip, TripMeal
from packlarder.reckon.trip.shops import Shops

GRAM = known("1 g").unit
ALMOST_ALL = 0.99
"""A form that holds less than this of what a part would want of it is not even tried."""


def with_stand_ins(meal: TripMeal, trip: PlannedTrip, shops: Shops, pantry: Pantry) -> TripMeal:
    """Give a meal with another form for each part that the larder can not cover, where one covers the whole of it."""
    if not any(part.instead for part in meal.plan.parts):
        return meal
    claims_g = _claims(meal, shops)
    for part in meal.plan.parts:
        own = part.component.id
        if not part.instead or shops.for_meal(part.component, meal) is not None:
            continue
        if pantry.shelf.holds_g(own, meal.on) >= claims_g[own]:
            continue
        wanted_g = printed_g(meal.sums.parts[part.index].dry_g)
        for other in part.instead:
            free_g = pantry.shelf.holds_g(other.id, meal.on) - claims_g[other.id]
            changed = _in_another_form(meal, part, other, free_g, trip, pantry)
            if changed is not None:
                meal = changed
                claims_g[own] -= wanted_g
                claims_g[other.id] += printed_g(meal.sums.parts[part.index].dry_g)
                break
    return meal


def _claims(meal: TripMeal, shops: Shops) -> dict[str, float]:
    """Give what the parts of a meal want from the larder, by component."""
    claims_g: dict[str, float] = defaultdict(float)
    for part in meal.plan.parts:
        if shops.for_meal(part.component, meal) is None:
            claims_g[part.component.id] += printed_g(meal.sums.parts[part.index].dry_g)
    return claims_g


def _in_another_form(
    meal: TripMeal, part: PlannedPart, other: ComponentSums, free_g: float, trip: PlannedTrip, pantry: Pantry
) -> TripMeal | None:
    """Give a meal with another form for one part; None where there is too little of it, or the dish would not do."""
    ratio = _dry_per_dry(part.component, other)
    if ratio is None or not _fits(part.component, other, trip):
        return None
    if free_g < meal.sums.parts[part.index].dry_g * ratio * ALMOST_ALL:
        return None
    can_heat = bool(trip.model.stoves and trip.model.pots)
    for plan in _variants(meal, part, other, ratio, pantry):
        if wants_stove(plan) and not can_heat:
            continue
        windy = any(stop.model.windy for stop in trip.stops if meal.stop in (None, stop.index))
        settled = settled_at(_at_camp(plan, meal.plan), meal.settled.conditions, windy=windy)
        (sums,) = work_out_each(settled, (meal.sums.servings,), trip.fuel_margin)
        if printed_g(sums.parts[part.index].dry_g) > free_g:
            return None
        instead = MappingProxyType({**meal.instead, part.index: other})
        return replace(meal, plan=settled.plan, settled=settled, sums=sums, instead=instead)
    return None


def _dry_per_dry(main: ComponentSums, other: ComponentSums) -> float | None:
    """Give the dry grams of another form that stand for as much fresh food as one gram of the main one."""
    if main.yielded is None or other.yielded is None:
        return None
    return main.yielded.fresh_g / other.yielded.fresh_g


def _fits(main: ComponentSums, other: ComponentSums, trip: PlannedTrip) -> bool:
    """Tell whether a form may stand in unasked: it asks for no more cooking, and brings nothing that anybody avoids.

    What is RAW never does: somebody has to look at the dish first.
    """
    if other.raw or other.must_be_cooked not in (Cooking.NO, main.must_be_cooked):
        return False
    avoided = {allergen for eater in trip.eaters for allergen in eater.model.avoided}
    brought = (other.allergens | other.traces) - (main.allergens | main.traces)
    return not avoided & brought


def _variants(
    meal: TripMeal, part: PlannedPart, other: ComponentSums, ratio: float, pantry: Pantry
) -> Iterator[DishPlan]:
    """Give the plan of a dish with another form for one part, called as before so that steps and packs find it."""
    model = meal.plan.model
    written = model.parts[part.index]
    for called in dict.fromkeys((part.called, written.called)):
        changed = written.detail.model_copy(
            update={
                "take": Take(Quantity(number=part.dry_g * ratio, unit=GRAM)),
                "stays_in": _stays_in(part, ratio) if written.detail.stays_in is not None else None,
                "called": called,
            }
        )
        parts = (*model.parts[: part.index], Part(other.model.name, changed), *model.parts[part.index + 1 :])
        dish = model.model_copy(update={"parts": parts})
        plan, wrong = plan_dish(replace(pantry.book, dishes={meal.dish: dish}), pantry.components, meal.dish)
        if plan is not None and not has_errors(wrong):
            yield plan


def _stays_in(part: PlannedPart, ratio: float) -> Quantity:
    return Quantity(number=part.dry_g * ratio * part.eaten_share, unit=GRAM)


def _at_camp(plan: DishPlan, before: DishPlan) -> DishPlan:
    """Give a plan on the stove and in the pots in which the dish was to be cooked before."""
    steps = tuple(
        [replace(step, pot=same.pot) for step, same in zip(plan.steps, before.steps, strict=True)],
    )
    return replace(
        plan,
        stove_name=before.stove_name,
        stove=before.stove,
        pot_name=before.pot_name,
        pots=before.pots,
        steps=steps,
    )
