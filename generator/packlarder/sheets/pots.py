"""Which pots and pans a dish uses."""

from packlarder.book.bring_back import Warmth
from packlarder.figures.verbs import VERBS
from packlarder.reckon.ledger import GIVES_WATER, bowl_warmth
from packlarder.reckon.records import DishPlan, PlannedStep


def on_flame(step: PlannedStep) -> bool:
    """Tell whether a step takes stove and pot."""
    return step.verb is not None and VERBS[step.verb].on_stove and not step.heater


def pots_used(plan: DishPlan) -> tuple[str, ...]:
    """Name the pots and pans of a dish in order of use, that in which its water gets hot among them."""
    used = [step.pot for step in plan.steps if on_flame(step) or _wants_hot_water(plan, step)]
    return tuple(dict.fromkeys(used))


def _wants_hot_water(plan: DishPlan, step: PlannedStep) -> bool:
    return step.verb in GIVES_WATER and bowl_warmth(plan, step) is not Warmth.COLD
