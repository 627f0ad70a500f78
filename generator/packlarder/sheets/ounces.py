"""The fluid ounces to carry for a dish.

In US units a cook pours cups and spoons, which may be a little more than the millilitres meant. So what is to be
carried is what the steps print, in fluid ounces (a cup is 8, a tablespoon ½), rounded up; what that adds is spare.
"""

import math
from dataclasses import dataclass

from packlarder.measure.units import FLUID_OUNCE
from packlarder.reckon.kitchen import as_poured_ml
from packlarder.reckon.records import DishSums

_ALMOST = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Ounces:
    """What to carry, what of it is heated, in whole fluid ounces."""

    carry: int
    heated: int


def ounces_of(sums: DishSums) -> Ounces:
    """Work out the fluid ounces to carry: as much as the millilitres, and as much as the steps say to pour."""
    all_ml = heated_ml = 0.0
    for step in sums.steps:
        if step.water_ml:
            poured_ml = as_poured_ml(step.water_ml / step.rounds) * step.rounds
            all_ml += poured_ml
            heated_ml += poured_ml * step.heated_ml / step.water_ml
        if step.heater_ml and sums.conditions.heater_water_carried:
            all_ml += as_poured_ml(step.heater_ml)
    return Ounces(
        carry=_up(max(all_ml, sums.water.carry_ml)),
        heated=_up(max(heated_ml, sums.water.hot_ml)),
    )


def _up(millilitres: float) -> int:
    return math.ceil(millilitres / FLUID_OUNCE.size - _ALMOST)
