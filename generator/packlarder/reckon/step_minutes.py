"""How long a step lasts: what the author or the component says, longer at height and in cooler water."""

from functools import cache

from packlarder.book.bring_back import Warmth
from packlarder.book.step import Verb
from packlarder.figures.cooking import SOAK_ENERGIES, Z_VALUES, Soaks, Softens
from packlarder.figures.dryness import Drying
from packlarder.figures.hands import HAND_MINUTES, HEATER_MINUTES, LONGER_TELLS
from packlarder.figures.kinds import Group, Kind
from packlarder.figures.verbs import VERBS
from packlarder.reckon.heat import longer_at_height, longer_soak_at_height, longer_soak_in
from packlarder.reckon.ledger import GIVES_WATER, bowl_warmth
from packlarder.reckon.records import ComponentSums, Conditions, DishPlan, PlannedStep

_longer_in, _longer_at_height = cache(longer_soak_in), cache(longer_soak_at_height)
"""A book asks for the same few heights and waters, part by part."""
IN_WATER = frozenset({Verb.BOIL, Verb.SIMMER})


def cook_minutes(step: PlannedStep, factor: float) -> float:
    """Give the minutes on the flame of one round, `factor` times as long at height for what is not yet cooked."""
    if step.verb is None or not VERBS[step.verb].on_stove or step.heater:
        return 0.0
    return (step.minutes or 0.0) * factor


def time_factor(plan: DishPlan, step: PlannedStep, conditions: Conditions) -> float:
    """Give by how much a step in boiling water takes longer than at sea level; its slowest part governs.

    So little that no cook would tell is left out: at 100 m a boil of 5 min is not made one of 6.
    """
    if step.verb not in IN_WATER:
        return 1.0
    classes = frozenset().union(*[softens_of(plan.parts[index].component) for index in step.parts])
    longer = max((longer_at_height(conditions.height_m, Z_VALUES[softens].value) for softens in classes), default=1.0)
    return longer if longer >= LONGER_TELLS.value else 1.0


def softens_of(component: ComponentSums) -> frozenset[Softens]:
    """Give the classes by which what is not yet cooked softens; none for what was cooked before it was dried."""
    return _softens(component.uncooked)


@cache
def _softens(kinds: frozenset[Kind]) -> frozenset[Softens]:
    rules = [kind.rules.softens for kind in kinds]
    return frozenset([softens for softens in rules if softens is not None])


def wait_minutes(plan: DishPlan, step: PlannedStep, conditions: Conditions) -> float:
    """Give the minutes in which food soaks or a pot is left alone."""
    if step.verb is Verb.WAIT:
        return step.minutes or 0.0
    if step.heater:
        return step.minutes or HEATER_MINUTES.value
    if step.verb not in GIVES_WATER:
        return 0.0
    if step.minutes is not None:
        return step.minutes
    given = bowl_warmth(plan, step)
    return max([_soak_minutes(plan.parts[index].component, given, conditions) for index in step.parts], default=0.0)


def hand_minutes(step: PlannedStep) -> float:
    """Give the minutes that a step keeps the cook's hands; a plain sentence takes none that we know of."""
    if step.verb is None or step.verb is Verb.WAIT or VERBS[step.verb].on_stove:
        return 0.0
    return HAND_MINUTES.value


def _soak_minutes(component: ComponentSums, given: Warmth, conditions: Conditions) -> float:
    """Take the component's own minutes; they hold for its own warmth of water, so cooler water takes longer."""
    if component.water is None:
        return 0.0
    meant = component.water.warmth
    if meant in (Warmth.HOT, Warmth.BOILING):
        energy = SOAK_ENERGIES[soaks_of(component)].value
        if given in (Warmth.COLD, Warmth.WARM):
            return component.water.wait_min * _longer_in(conditions.water_c, energy)
        return component.water.wait_min * _longer_at_height(conditions.height_m, energy)
    return component.water.wait_min


def soaks_of(component: ComponentSums) -> Soaks:
    """Give the class by which a cooler soak slows a component."""
    if _any_legume(component.kinds):
        return Soaks.LEGUMES
    return Soaks.FREEZE_DRIED if component.model.dried is Drying.FREEZE_DRIED else Soaks.AIR_DRIED


@cache
def _any_legume(kinds: frozenset[Kind]) -> bool:
    return any(kind.rules.group is Group.LEGUME for kind in kinds)
