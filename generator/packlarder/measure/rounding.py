"""Rounding for a kitchen: to the steps that people can weigh and pour, and never to nothing."""

import math
from enum import Enum
from typing import TypeAlias


class Rounding(Enum):
    """Which way to round. UP and DOWN are for the safe side: water to carry up, a temperature reached down."""

    NEAREST = "nearest"
    UP = "up"
    DOWN = "down"


Ladder: TypeAlias = tuple[tuple[float, float], ...]
"""Steps that grow with what is rounded: (below, step), finest first, the last below infinity."""

UP = Rounding.UP
DOWN = Rounding.DOWN
NEAREST = Rounding.NEAREST

NOISE = 1e-9
"""Less than this share of a step is taken for an error of the arithmetic, not for more or less."""

_LIFT_UP = 1.0 - NOISE


def steps(value: float, step: float, rounding: Rounding = NEAREST) -> int:
    """Count the whole steps in a value; halves go up."""
    if rounding is NEAREST:
        return math.floor(value / step + 0.5)
    return math.floor(value / step + (_LIFT_UP if rounding is UP else NOISE))


def rounded(value: float, step: float, rounding: Rounding = NEAREST) -> float:
    """Round a value to a multiple of the step; the result has no error of the arithmetic where the step is whole."""
    return steps(value, step, rounding) * step


def on_ladder(value: float, ladder: Ladder, rounding: Rounding = NEAREST) -> tuple[int, float]:
    """Round by a ladder: (how many steps, step). What is above zero is never nothing.

    ValueError for what no kitchen measures: below zero, not a number, endless.
    """
    if not 0 <= value < math.inf:
        raise ValueError(f"{value} is no amount")
    for below, step in ladder:
        if value < below:
            return (steps(value, step, rounding) or (1 if value else 0)), step
    raise ValueError(f"{value} is above the last rung of {ladder}")
