"""The clock of a dish: when each step starts, what waits by itself, and the minutes from the first move to the plate.

One cook, one flame. While food soaks by itself the cook goes on with whatever needs no part of it; a step that needs
soaking food waits for it; what is stirred in, and a plain sentence, which may speak of anything, wait for all before.
"""

import math
from collections.abc import Iterable, Sequence

from packlarder.book.step import Verb
from packlarder.reckon.records import ClockSums, DishPlan, PlannedStep, StepSums

_WAITS_FOR_ALL = frozenset({None, Verb.WAIT, Verb.STIR_IN})
"""A sentence, a wait, and what is stirred into whatever is there."""
_ALMOST = 1e-6
"""Keeps a whole minute from becoming the next one by a rounding error."""


def waits_for(plan: DishPlan, wait_min: Sequence[float]) -> tuple[tuple[int, ...], ...]:
    """Give for each step the steps before it that must be ready; `wait_min[i]` is how long step i waits by itself.

    Only those that wait by themselves are named: what the cook stood by is ready when the cook is free.
    """
    ready_in: dict[int, int] = {}
    soaking: set[int] = set()
    needed: list[tuple[int, ...]] = []
    for step in plan.steps:
        needs = _needs(step, ready_in, soaking)
        needed.append(tuple([at for at in needs if wait_min[at] and plan.steps[at].verb is not Verb.WAIT]))
        for part in step.parts:
            ready_in[part] = step.index
        if step.verb is Verb.SOAK:
            soaking.update(step.parts)
        elif step.verb is Verb.DRAIN:
            soaking.clear()
    return tuple(needed)


def _needs(step: PlannedStep, ready_in: dict[int, int], soaking: set[int]) -> Iterable[int]:
    """Give the steps that make what a step needs; `ready_in` is the last step that each part was in."""
    if step.verb is Verb.DRAIN and soaking:
        return {ready_in[part] for part in soaking}
    if step.verb is Verb.DRAIN or step.verb in _WAITS_FOR_ALL:
        return range(step.index)
    return {ready_in[part] for part in step.parts if part in ready_in}


def clock_sums(steps: Sequence[StepSums]) -> ClockSums:
    """Add up: minutes in all, minutes in which something soaks or waits, minutes of flame; each rounded up."""
    return ClockSums(
        minutes=whole_minutes(max([step.end_min for step in steps], default=0.0)),
        soak_minutes=whole_minutes(
            _covered([(step.end_min - step.wait_min, step.end_min) for step in steps if step.wait_min])
        ),
        heat_minutes=whole_minutes(sum([step.boil_up_min + step.cook_min for step in steps])),
    )


def whole_minutes(minutes: float) -> int:
    """Round up to a whole minute: food that is given longer is not undone."""
    return math.ceil(minutes - _ALMOST)


def _covered(spans: Iterable[tuple[float, float]]) -> float:
    """Give how much time the spans cover, overlaps counted once."""
    total, reached = 0.0, 0.0
    for start, end in sorted(spans):
        if end > reached:
            total += end - max(start, reached)
            reached = end
    return total
