"""The waters of a dish as printed: what to carry, what of it is heated, its pieces; in each system they add up."""

from dataclasses import dataclass

from packlarder.measure.units import FLUID_OUNCE
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import DishSums
from packlarder.sheets import series, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import Reading, WaterRow
from packlarder.sheets.printed import NOTHING, Printed

PIECES = tuple(words.WATERS)
SPARE = "spare_ml"
"""The last of the pieces."""
IN_LITRES_ML, LITRE_STEP_ML = 1000, 10
"""From here on a water is told in litres, its pieces to this step."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedWaters:
    """What to carry, what of it is heated, the pieces of what to carry."""

    carry: Printed
    heated: Printed
    rows: tuple[WaterRow, ...]


def carried(dish: DishSeries) -> tuple[Printed, Printed]:
    """Set what to carry, and what of it is heated."""
    carry = Printed(
        tuple([series.whole_ml(sums.water.carry_ml) for sums in dish.sums]),
        tuple([series.whole_ounces(one.carry) for one in dish.ounces]),
    )
    heated = Printed(
        tuple([series.whole_ml(sums.water.hot_ml) if sums.water.hot_ml else NOTHING for sums in dish.sums]),
        tuple([series.whole_ounces(one.heated) if one.heated else NOTHING for one in dish.ounces]),
    )
    return carry, heated


def printed_waters(dish: DishSeries) -> PrintedWaters:
    """Set what to carry with its pieces, which add up to it as printed."""
    carry, heated = carried(dish)
    metric = [_pieces_ml(sums) for sums in dish.sums]
    us = [_pieces_oz(sums, ounces.carry) for sums, ounces in zip(dish.sums, dish.ounces, strict=True)]
    rows = [
        WaterRow(
            key=key,
            label=words.WATERS[key],
            figure=Printed(
                tuple([series.whole_ml(row[at]) if row[at] else NOTHING for row in metric]),
                tuple([series.whole_ounces(row[at]) if row[at] else NOTHING for row in us]),
            ),
        )
        for at, key in enumerate(PIECES)
    ]
    return PrintedWaters(carry=carry, heated=heated, rows=tuple(row for row in rows if not row.figure.empty))


def heater_reading(dish: DishSeries) -> tuple[Reading, ...]:
    """Set the water of ration heaters where it comes from lake or sea and so is not carried."""
    if all(sums.conditions.heater_water_carried for sums in dish.sums):
        return ()
    waters = [sum([step.heater_ml for step in sums.steps]) for sums in dish.sums]
    if not any(waters):
        return ()
    where = dish.household.usual_conditions.heater_water.value
    figure = series.each_in(series.pours(waters), words.NOT_CARRIED)
    return (Reading(key="heater", label=words.HEATER_FROM.format(where=where), figure=figure),)


def _pieces(sums: DishSums) -> list[int]:
    return [getattr(sums.water, key) for key in PIECES]


def _pieces_ml(sums: DishSums) -> tuple[int, ...]:
    """Give the pieces as printed: to the millilitre, or to 10 mL once they are told in litres."""
    pieces = _pieces(sums)
    if sums.water.carry_ml < IN_LITRES_ML:
        return tuple(pieces)
    return share_out(sums.water.carry_ml, pieces, LITRE_STEP_ML)


def _pieces_oz(sums: DishSums, carry_oz: int) -> tuple[int, ...]:
    """Give the pieces in whole fluid ounces; spare is what they leave of what is carried."""
    *pieces, _ = _pieces(sums)
    shared = share_out(sum(pieces) / FLUID_OUNCE.size, pieces)
    return (*shared, carry_oz - sum(shared))
