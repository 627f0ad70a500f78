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


def room_ml(plan: DishPlan, step: PlannedStep) -> float | None:
    """Give what one round of a step may fill of its pot, by the share of the brim that its verb fills."""
    fill = None if step.verb is None else VERBS[step.verb].fill
    return None if fill is None or step.heater else plan.pots[step.pot].holds.base * fill.value


def rounds_of(room_ml: float, food_ml: float, water_ml: float) -> int:
    """Give the rounds in which all that is in a pot is cooked.

    `water_ml` stands free in the pot; `food_ml` is the food with the water in it, a dry gram taken as a millilitre.
    """
    fill_ml = water_ml + food_ml
    return 1 if fill_ml <= room_ml else math.ceil(fill_ml / room_ml - _JUST_OVER)
