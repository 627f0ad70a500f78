"""What fits in a pot, and in how many rounds a dish that outgrows it is cooked."""

import math

from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import DishPlan, PlannedStep

_JUST_OVER = 1e-9
"""Keeps a pot that is exactly full from needing a second round by a rounding error."""


def rounds_of(plan: DishPlan, step: PlannedStep, food_ml: float, water_ml: float) -> int:
    """Give the rounds in which a step is cooked: all that is in its pot, by the share of the brim that its verb fills.

    `water_ml` stands free in the pot; `food_ml` is the food with the water in it, a dry gram taken as a millilitre.
    """
    fill = None if step.verb is None else VERBS[step.verb].fill
    if fill is None or step.heater:
        return 1
    room_ml = plan.pots[step.pot].holds.base * fill.value
    return max(1, math.ceil((water_ml + food_ml) / room_ml - _JUST_OVER))
