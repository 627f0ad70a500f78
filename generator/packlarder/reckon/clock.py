"""The clock of a dish: when each step starts, what waits by itself, and the minutes from the first move to the plate.

One cook, one flame. While food soaks by itself the cook goes on with whatever needs no part of it; a step that needs
soaking food waits for it; what is stirred in, and a plain sentence, which may speak of anything, wait for all before.
"""

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from packlarder.book.step import Verb
from packlarder.reckon.records import ClockSums, DishPlan, PlannedStep

_WAITS_FOR_ALL = frozenset({None, Verb.WAIT, Verb.STIR_IN})
"""A sentence, a wait, and what is stirred into whatever is there."""
_ALMOST = 1e-6
"""Keeps a whole minute from becoming the next one by a rounding error."""


class Spell(NamedTuple):
    """What a step takes: minutes to heat its water, in hand, on the flame (all rounds), then waiting by itself."""

    boil_up_min: float = 0.0
    hand_min: float = 0.0
    cook_min: float = 0.0
    wait_min: float = 0.0

    @property
    def busy_min(self) -> float:
        """Give the minutes that the cook can do nothing else."""
        return self.boil_up_min + self.hand_min + self.cook_min


class Slot(NamedTuple):
    """When a step starts and when what it makes is ready, in minutes from the first move."""

    start_min: float
    end_min: float


def schedule(plan: DishPlan, spells: Sequence[Spell]) -> tuple[Slot, ...]:
    """Set every step against the clock."""
    free = latest = 0.0
    ready: dict[int, float] = {}
    soaking: set[int] = set()
    slots: list[Slot] = []
    for step, spell in zip(plan.steps, spells, strict=True):
        start = max(free, _needed(step, ready, soaking, latest))
        end = start + spell.busy_min + spell.wait_min
        free = end if step.verb is Verb.WAIT else start + spell.busy_min
        latest = max(latest, end)
        for part in step.parts:
            ready[part] = end
        if step.verb is Verb.SOAK:
            soaking.update(step.parts)
        elif step.verb is Verb.DRAIN:
            soaking.clear()
        slots.append(Slot(start_min=start, end_min=end))
    return tuple(slots)


def _needed(step: PlannedStep, ready: dict[int, float], soaking: set[int], latest: float) -> float:
    """Give the minute from which what a step needs is there."""
    if step.verb is Verb.DRAIN:
        return max((ready[part] for part in soaking), default=latest)
    if step.verb in _WAITS_FOR_ALL:
        return latest
    return max((ready[part] for part in step.parts if part in ready), default=0.0)


def clock_sums(slots: Sequence[Slot], spells: Sequence[Spell]) -> ClockSums:
    """Add up: minutes in all, minutes in which something soaks or waits, minutes of flame; each rounded up."""
    waits = [
        (slot.start_min + spell.busy_min, slot.end_min)
        for slot, spell in zip(slots, spells, strict=True)
        if spell.wait_min
    ]
    return ClockSums(
        minutes=whole_minutes(max((slot.end_min for slot in slots), default=0.0)),
        soak_minutes=whole_minutes(_covered(waits)),
        heat_minutes=whole_minutes(sum(spell.boil_up_min + spell.cook_min for spell in spells)),
    )


def whole_minutes(minutes: float) -> int:
    """Round up to a whole minute: food that is given longer is not undone."""
    return math.ceil(minutes - _ALMOST)


def _covered(spans: Iterable[tuple[float, float]]) -> float:
    """Give how much time the spans cover, overlaps counted once."""
    total, reached = 0.0, 0.0
    for start, end in sorted(spans):
        total += max(0.0, end - max(start, reached))
        reached = max(reached, end)
    return total
