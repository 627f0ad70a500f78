"""Slips in waters that only the sums show: a component given too much, a pot with too little, a soak not drained."""

import math
from collections.abc import Iterator

from packlarder.book.book import component_place, dish_place
from packlarder.book.bring_back import Way
from packlarder.book.step import Verb
from packlarder.faults import Fault, Place, Severity, Spot
from packlarder.reckon.plan_waters import IN_WATER, must_have_water
from packlarder.reckon.records import ComponentSums, DishPlan, DishSums, PlannedStep

MOST_GIVEN_BACK = 1.3
"""Food takes up hardly more water than it lost: beyond this share an amount was mistyped, or a broth is meant."""
_TAKES_IN_POT = frozenset({*IN_WATER, Verb.STIR_IN, Verb.WARM})
_ALMOST_ML = 0.5
"""Less than this is nothing that a cook could pour."""
_OFFERED_STEP_ML = 50


def component_slips(sums: ComponentSums) -> Iterator[Fault]:
    """Hold the water that a component is given against what it lost; a powder may be thinned as one likes."""
    water, made = sums.water, sums.yielded
    if water is None or water.takes_ml is None or water.assumed or water.way is Way.MIX:
        return
    if made is not None and made.lost_ml and water.takes_ml > made.lost_ml * MOST_GIVEN_BACK:
        share, lost = water.takes_ml / made.lost_ml, 10 * made.lost_ml
        yield _warning(
            component_place(sums.id).at("bring back", spot=Spot.KEY),
            "more-water-than-lost",
            f"this gives back {share:.0%} of the water that was lost in drying: 10 g dry lost {lost:.0f} mL",
            "weigh it again; water for a broth belongs into the dish: `in: 600 mL`, or `with: 300 mL boiling water`",
        )


def water_slips(plan: DishPlan, sums: DishSums) -> Iterator[Fault]:
    """Find what is most likely a slip in the waters of a dish, each at its step."""
    for step in plan.steps:
        yield from _too_dry(plan, sums, step)
        yield from _not_drained(plan, sums, step)
        yield from _overflows(plan, sums, step)


def _too_dry(plan: DishPlan, sums: DishSums, step: PlannedStep) -> Iterator[Fault]:
    """Find parts that first meet water in this step's pot and want more than it holds."""
    missing = {index: ml for index in step.parts if (ml := _missing_ml(plan, sums, step, index)) > _ALMOST_ML}
    if missing:
        names = " and ".join(plan.parts[index].called.lower() for index in missing)
        takes = "take" if len(missing) > 1 else "takes"
        yield _warning(
            _at(plan, step),
            "pot-too-dry",
            f"the pot holds about {sum(missing.values()):.0f} mL less than {names} {takes} up",
            _more_water(plan, sums, step, sum(missing.values())),
        )


def _missing_ml(plan: DishPlan, sums: DishSums, step: PlannedStep, index: int) -> float:
    worked, water = sums.parts[index], plan.parts[index].component.water
    if worked.way is not Way.IN_THE_POT or _first_in_pot(plan, index) != step.index:
        return 0.0
    if water is None or water.takes_ml is None or worked.absorbed_ml is None or not must_have_water(water):
        return 0.0
    return 0.0 if water.assumed else water.takes_ml * worked.dry_g - worked.absorbed_ml


def _first_in_pot(plan: DishPlan, index: int) -> int | None:
    return next((step.index for step in plan.steps if step.verb in _TAKES_IN_POT and index in step.parts), None)


def _more_water(plan: DishPlan, sums: DishSums, step: PlannedStep, missing_ml: float) -> str:
    if step.verb not in IN_WATER:
        return "let more water stand in the pot before this step"
    worked = sums.steps[step.index]
    whole = worked.water_ml + worked.from_drain_ml + worked.standing_ml + missing_ml + worked.boiled_off_ml
    written = whole * plan.model.serves / sums.servings
    return f"say more water: `in: {math.ceil(written / _OFFERED_STEP_ML) * _OFFERED_STEP_ML} mL`, or less food"


def _not_drained(plan: DishPlan, sums: DishSums, step: PlannedStep) -> Iterator[Fault]:
    """Find a soak around which water is left that no `drain` pours off before its food is used."""
    if step.verb is not Verb.SOAK:
        return
    left = {index: sums.parts[index].drained_ml for index in step.parts if plan.wetted_in[index] == step.index}
    left_ml = sum(left.values())
    for later in plan.steps[step.index + 1 :]:
        if later.verb is Verb.DRAIN:
            return
        if not left.keys().isdisjoint(later.parts):
            break
    if left_ml > _ALMOST_ML:
        yield _warning(
            _at(plan, step),
            "not-drained",
            f"about {left_ml:.0f} mL of this soak stays around the food, and no step says what becomes of it",
            "add `drain: into the pot`, `drain: away` or `drain: drunk` after it",
        )


def _overflows(plan: DishPlan, sums: DishSums, step: PlannedStep) -> Iterator[Fault]:
    """Find what is wetted without a flame in a bowl or pack that would be larger than any pot of the household."""
    if sums.steps[step.index].vessels > 1:
        filled_ml = sums.steps[step.index].water_ml + sum(sums.parts[index].dry_g for index in step.parts)
        holds_ml = max(pot.holds.base for pot in plan.pots.values())
        yield _warning(
            _at(plan, step),
            "bowl-too-small",
            f"food and water fill {filled_ml / 1000:.1f} L, and the largest of the pots holds {holds_ml / 1000:.1f} L",
            "wet it in two steps; or add the bowl that you use to the `pots` in book.yaml",
        )


def _at(plan: DishPlan, step: PlannedStep) -> Place:
    return dish_place(plan.id).at("steps", step.index, step.verb or "", spot=Spot.KEY)


def _warning(place: Place, code: str, message: str, help: str) -> Fault:
    return Fault(place=place, code=code, message=message, help=help, severity=Severity.WARNING)
