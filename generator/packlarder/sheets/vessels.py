"""Where a step is done: in which pot or pan, in a bowl or the pack, and what lies in a pot already."""

import re

from packlarder.book.step import Fate, Verb
from packlarder.figures.verbs import VERBS
from packlarder.reckon.ledger import GIVES_WATER
from packlarder.reckon.records import DishPlan, PlannedStep
from packlarder.sheets import words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.pots import on_flame
from packlarder.sheets.printed import Printed, Run, kept

_SAYS_WHERE = re.compile(words.VESSEL)
"""An author who names a vessel knows where: then nothing is added of ours."""
_PUTS_IN = frozenset({Verb.BOIL, Verb.SIMMER, Verb.FRY, Verb.BAKE, Verb.WARM, Verb.STIR_IN})


def head_of(dish: DishSeries, step: PlannedStep) -> str | Printed:
    """Give what a step's line begins with: the pot where more than one is used, always the pan; a bowl; several."""
    if step.verb in GIVES_WATER:
        return _bowls(dish, step)
    if not _is_named(dish, step):
        return ""
    return (words.INTO_POT if step.verb is Verb.STIR_IN else words.IN_POT).format(pot=step.pot)


def _is_named(dish: DishSeries, step: PlannedStep) -> bool:
    if step.heater or step.verb not in _PUTS_IN:
        return False
    return step.pot in dish.pots and (VERBS[step.verb].dry_heat or len(dish.pots) > 1)


def _bowls(dish: DishSeries, step: PlannedStep) -> str | Printed:
    number = dish.steps[step.index].vessels
    told = _SAYS_WHERE.search(step.say) is not None
    alone = words.IN_BOWL if not told and _pot_is_taken(dish.plan, step) else ""
    if max(number) == 1:
        return alone
    several = words.IN_PARTS if told else words.IN_BOWLS
    texts = tuple([several.format(number=many) if many > 1 else alone for many in number])
    return Printed(texts, texts)


def _pot_is_taken(plan: DishPlan, step: PlannedStep) -> bool:
    """Tell whether the pot is no place to wet something: it is in use, or will be before, or gets what is drained.

    What is poured over is in its pack anyway.
    """
    if step.verb is Verb.POUR_OVER:
        return False
    if any(on_flame(earlier) for earlier in plan.steps[: step.index]):
        return True
    later = plan.steps[step.index + 1 :]
    after = next((one for one in later if on_flame(one) or one.fate is Fate.INTO_THE_POT), None)
    return after is not None and (after.verb is Verb.DRAIN or not set(step.parts) <= set(after.parts))


def drained_into(dish: DishSeries, step: PlannedStep) -> str:
    """Give the pot that gets what a step drains: the next one in which something is not fried, by name if need be."""
    for later in dish.plan.steps[step.index + 1 :]:
        if later.verb in _PUTS_IN and not later.heater and not VERBS[later.verb].dry_heat:
            return later.pot if _is_named(dish, later) else words.A_POT
    return words.A_POT


def holds_all(plan: DishPlan, step: PlannedStep) -> bool:
    """Tell whether all parts of a step on the flame lie in its pot already, so that the pot is what is meant."""
    return on_flame(step) and bool(step.parts) and set(step.parts) <= _held(plan, step)


def _held(plan: DishPlan, step: PlannedStep) -> set[int]:
    """Give the parts in the pot of a step before it; what is drained out of its pot is out of it."""
    held: dict[str, set[int]] = {}
    last, soaking = "", False
    for earlier in plan.steps[: step.index]:
        if earlier.verb is Verb.SOAK:
            soaking = True
        elif earlier.verb is Verb.DRAIN:
            if not soaking:
                held.pop(last, None)
            soaking = False
        elif earlier.verb in _PUTS_IN and not earlier.heater:
            last = earlier.pot
            for others in held.values():
                others.difference_update(earlier.parts)
            held.setdefault(last, set()).update(earlier.parts)
    return held.get(step.pot, set())


def rounds_shared(dish: DishSeries, step: PlannedStep) -> Run:
    """Say over how many rounds that which is stirred in is shared out: those of its pot's last step on the flame."""
    before = [one for one in dish.plan.steps[: step.index] if on_flame(one) and one.pot == step.pot]
    return in_rounds(dish, before[-1], words.SHARED) if before else ""


def in_rounds(dish: DishSeries, step: PlannedStep, phrase: str) -> Run:
    """Set in how many rounds a step is done, and nothing where it takes one."""
    return _rounds_told(dish.steps[step.index].rounds, phrase)


@kept
def _rounds_told(rounds: tuple[int, ...], phrase: str) -> Run:
    if max(rounds) == 1:
        return ""
    texts = tuple([phrase.format(rounds=one, share=_share(one)) if one > 1 else "" for one in rounds])
    return Printed(texts, texts)


def _share(rounds: int) -> str:
    return words.SHARES[rounds - 1] if rounds <= len(words.SHARES) else words.SMALL_SHARE.format(rounds=rounds)


def is_heated(dish: DishSeries) -> bool:
    """Tell whether a dish wants a flame at all."""
    return any(sums.heat.energy_kj for sums in dish.sums)
