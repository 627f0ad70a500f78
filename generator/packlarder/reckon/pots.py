"""What fits in a pot, and in how many rounds a dish that outgrows it is cooked."""

import math

from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import DishPlan, PlannedStep

_JUST_OVER = 1e-9
"""Keeps a pot that is exactly full from needing a second round by a rounding error."""


def largest_ml(plan: DishPlan) -> float:
    """Give what the household's largest pot holds, which stands for its largest bowl as well."""
    return max([pot.holds.base for pot in plan.pots.values()])


def vessels_of(fill_ml: float, bowl_ml: float) -> int:
    """Give the bowls or packs of a size that food takes with the water that it is wetted with, without a flame."""
    return 1 if fill_ml <= bowl_ml else math.ceil(fill_ml / bowl_ml - _JUST_OVER)


def rounds_of(plan: DishPlan, step: PlannedStep, food_ml: float, water_ml: float) -> int:
    """Give the rounds in which a step is cooked: all that is in its pot, by the share of the brim that its verb fills.

    `water_ml` stands free in the pot; `food_ml` is the food with the water in it, a dry gram taken as a millilitre.
    """
    fill = None if step.verb is None else VERBS[step.verb].fill
    if fill is None or step.heater:
        return 1
    room_ml = plan.pots[step.pot].holds.base * fill.value
    return max(1, math.ceil((water_ml + food_ml) / room_ml - _JUST_OVER))
