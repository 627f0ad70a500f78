"""The waters of a dish as printed: what to carry, what of it is heated, its pieces; in each system they add up."""

from typing import NamedTuple

from packlarder.reckon.kitchen import share_out
from packlarder.sheets import series, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import Reading, WaterRow
from packlarder.sheets.ounces import OUNCE_ML
from packlarder.sheets.printed import Printed

PIECES = tuple(words.WATERS)
SPARE = PIECES[-1]
IN_LITRES_ML, LITRE_STEP_ML = 1000, 10
"""From here on a water is told in litres, its pieces to this step."""


class Carried(NamedTuple):
    """What to carry, and what of it is heated."""

    carry: Printed
    heated: Printed


def carried(dish: DishSeries) -> Carried:
    """Set what to carry, and what of it is heated."""
    carry = Printed(
        tuple(map(series.whole_ml, dish.water.carry_ml)),
        tuple(map(series.whole_ounces, dish.ounces.carry)),
    )
    return Carried(carry, series.carried(dish.water.hot_ml, dish.ounces.heated))


def water_rows(dish: DishSeries) -> tuple[WaterRow, ...]:
    """Set the pieces of what to carry, which add up to it as printed."""
    water = dish.water._asdict()
    keys = [key for key in PIECES if key == SPARE or any(water[key])]
    each = list(zip(*[water[key] for key in keys], strict=True))
    metric = map(_pieces_ml, each, dish.water.carry_ml)
    us = map(_pieces_oz, each, dish.ounces.carry)
    rows = zip(keys, zip(*metric, strict=True), zip(*us, strict=True), strict=True)
    return tuple(
        [
            WaterRow(key=key, label=words.WATERS[key], figure=series.carried(pieces_ml, pieces_oz))
            for key, pieces_ml, pieces_oz in rows
            if any(pieces_ml) or any(pieces_oz)
        ]
    )


def heater_reading(dish: DishSeries) -> tuple[Reading, ...]:
    """Set the water of ration heaters where it comes from lake or sea and so is not carried."""
    if all(sums.conditions.heater_water_carried for sums in dish.sums):
        return ()
    waters = tuple([sum([step.heater_ml for step in sums.steps]) for sums in dish.sums])
    if not any(waters):
        return ()
    where = dish.household.usual_conditions.heater_water.value
    figure = series.each_in(series.pours(waters), words.NOT_CARRIED)
    return (Reading(key="heater", label=words.HEATER_FROM.format(where=where), figure=figure),)


def _pieces_ml(pieces: tuple[int, ...], carry_ml: int) -> tuple[int, ...]:
    """Give the pieces as printed: to the millilitre, or to 10 mL once they are told in litres."""
    return pieces if carry_ml < IN_LITRES_ML else share_out(carry_ml, pieces, LITRE_STEP_ML)


def _pieces_oz(pieces: tuple[int, ...], carry_oz: int) -> tuple[int, ...]:
    """Give the pieces in whole fluid ounces; spare, the last, is what they leave of what is carried."""
    *needed, _ = pieces
    shared = share_out(sum(needed) / OUNCE_ML, needed)
    return (*shared, carry_oz - sum(shared))
