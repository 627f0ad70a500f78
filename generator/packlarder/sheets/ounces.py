"""The fluid ounces to carry for a dish.

In US units a cook pours cups and spoons, which may be a little more than the millilitres meant. So what is to be
carried is what the steps print, in fluid ounces (a cup is 8, a tablespoon ½), rounded up; what that adds is spare.
"""

import math
from collections.abc import Iterable
from typing import NamedTuple

from packlarder.measure.units import FLUID_OUNCE
from packlarder.reckon.kitchen import as_poured_ml
from packlarder.sheets.columns import StepColumns, WaterColumns

OUNCE_ML = FLUID_OUNCE.size
_ALMOST = 1e-6

Row = tuple[float, ...]


def in_whole_ounces(millilitres: float) -> int:
    """Give a water to carry in whole fluid ounces, rounded up."""
    return math.ceil(millilitres / OUNCE_ML - _ALMOST)


class Ounces(NamedTuple):
    """What to carry, what of it is heated, in whole fluid ounces for every number of servings."""

    carry: tuple[int, ...]
    heated: tuple[int, ...]


def ounces_of(steps: Iterable[StepColumns], water: WaterColumns, *, heaters: bool) -> Ounces:
    """Work out the fluid ounces to carry: as much as the millilitres, and as much as the steps say to pour.

    `heaters` says that the water of ration heaters is carried too.
    """
    carry: list[Row] = []
    heated: list[Row] = []
    for step in steps:
        if any(step.water_ml):
            poured = _poured(step)
            carry.append(poured)
            heated.append(_heated(step, poured))
        if heaters and any(step.heater_ml):
            carry.append(tuple(map(as_poured_ml, step.heater_ml)))
    return Ounces(carry=_in_ounces(carry, water.carry_ml), heated=_in_ounces(heated, water.hot_ml))


def _poured(step: StepColumns) -> Row:
    """Give the water of a step as its words have it, in all rounds."""
    return tuple(
        [as_poured_ml(water / rounds) * rounds for water, rounds in zip(step.water_ml, step.rounds, strict=True)]
    )


def _heated(step: StepColumns, poured: Row) -> Row:
    """Give what is heated of the water that a step pours."""
    waters = zip(poured, step.heated_ml, step.water_ml, strict=True)
    return tuple([all_ml * heated / water if water else 0.0 for all_ml, heated, water in waters])


def _in_ounces(poured: Iterable[Row], least_ml: Row) -> tuple[int, ...]:
    """Add up what is poured, and round it up, or else the millilitres meant where they are more."""
    return tuple([_up(max(least, sum(rest))) for least, *rest in zip(least_ml, *poured, strict=True)])


def _up(millilitres: float) -> int:
    return math.ceil(millilitres / OUNCE_ML - _ALMOST)
