"""The waters of a dish as printed: what to carry, what of it is heated, its pieces; in each system they add up."""

from collections.abc import Sequence
from operator import attrgetter
from typing import NamedTuple

from packlarder.measure.units import FLUID_OUNCE
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import DishSums
from packlarder.sheets import series, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import Reading, WaterRow
from packlarder.sheets.printed import NOTHING, Printed

PIECES = tuple(words.WATERS)
_PIECES_OF = attrgetter(*PIECES)
IN_LITRES_ML, LITRE_STEP_ML = 1000, 10
"""From here on a water is told in litres, its pieces to this step."""


class Carried(NamedTuple):
    """What to carry, and what of it is heated."""

    carry: Printed
    heated: Printed


def carried(dish: DishSeries) -> Carried:
    """Set what to carry, and what of it is heated."""
    carry = Printed(
        tuple([series.whole_ml(sums.water.carry_ml) for sums in dish.sums]),
        tuple([series.whole_ounces(one.carry) for one in dish.ounces]),
    )
    heated = Printed(
        tuple([series.whole_ml(sums.water.hot_ml) if sums.water.hot_ml else NOTHING for sums in dish.sums]),
        tuple([series.whole_ounces(one.heated) if one.heated else NOTHING for one in dish.ounces]),
    )
    return Carried(carry, heated)


def water_rows(dish: DishSeries) -> tuple[WaterRow, ...]:
    """Set the pieces of what to carry, which add up to it as printed."""
    metric = [_pieces_ml(sums) for sums in dish.sums]
    us = [_pieces_oz(sums, ounces.carry) for sums, ounces in zip(dish.sums, dish.ounces, strict=True)]
    rows = [
        WaterRow(
            key=key,
            label=words.WATERS[key],
            figure=Printed(
                tuple([series.whole_ml(piece) if piece else NOTHING for piece in pieces_ml]),
                tuple([series.whole_ounces(piece) if piece else NOTHING for piece in pieces_oz]),
            ),
        )
        for key, pieces_ml, pieces_oz in zip(PIECES, zip(*metric, strict=True), zip(*us, strict=True), strict=True)
        if any(pieces_ml) or any(pieces_oz)
    ]
    return tuple(rows)


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


def _pieces_ml(sums: DishSums) -> tuple[int, ...]:
    """Give the pieces as printed: to the millilitre, or to 10 mL once they are told in litres."""
    pieces: tuple[int, ...] = _PIECES_OF(sums.water)
    if sums.water.carry_ml < IN_LITRES_ML:
        return pieces
    return _shared(sums.water.carry_ml, pieces, LITRE_STEP_ML)


def _pieces_oz(sums: DishSums, carry_oz: int) -> tuple[int, ...]:
    """Give the pieces in whole fluid ounces; spare is what they leave of what is carried."""
    *pieces, _ = _PIECES_OF(sums.water)
    shared = _shared(sum(pieces) / FLUID_OUNCE.size, pieces, 1)
    return (*shared, carry_oz - sum(shared))


def _shared(total: float, pieces: Sequence[int], step: int) -> tuple[int, ...]:
    """Share out among the pieces that there are: most dishes have three or four of the seven."""
    shares = iter(share_out(total, [piece for piece in pieces if piece], step))
    return tuple([next(shares) if piece else 0 for piece in pieces])
