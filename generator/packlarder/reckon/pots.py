"""What fits in a pot, and in how many rounds a dish that outgrows it is cooked."""

import math
from collections.abc import Sequence

from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import DishPlan, PartSums, PlannedStep

_JUST_OVER = 1e-9
"""Keeps a pot that is exactly full from needing a second round by a rounding error."""


def rounds_of(plan: DishPlan, step: PlannedStep, parts: Sequence[PartSums], pot_ml: float) -> int:
    """Give the rounds in which a step is cooked; `pot_ml` is the water in the pot, a gram of food fills a millilitre."""
    fill = None if step.verb is None else VERBS[step.verb].fill
    if fill is None or step.heater:
        return 1
    food_ml = sum([parts[index].dry_g + _own_water(parts[index]) for index in step.parts])
    room_ml = plan.pots[step.pot].holds.base * fill.value
    return max(1, math.ceil((pot_ml + food_ml) / room_ml - _JUST_OVER))


def _own_water(part: PartSums) -> float:
    """Give the water that a part brings along; what it takes in the pot is counted with the pot."""
    return (part.absorbed_ml or 0.0) if part.offered_ml else 0.0
