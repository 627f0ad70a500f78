"""Where the numbers of a dish come from, and under which conditions they hold."""

from packlarder.book.household import Household
from packlarder.figures.margins import WATER_DEPARTS
from packlarder.measure import (
    in_celsius,
    in_fahrenheit,
    in_feet,
    in_grams,
    in_metres,
    in_percent,
)
from packlarder.reckon.records import ComponentSums, DishPlan, WaterPerGram, Yielded, YieldFrom
from packlarder.sheets import words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.printed import kept
from packlarder.sheets.series import whole_ml
from packlarder.sheets.vessels import is_heated

SAMPLE_G = 10
"""Waters are told for a small heap of dry food that people can picture."""


def condition_lines(dish: DishSeries) -> tuple[str, ...]:
    """Say where, in what weather and on what the dish was worked out, in both systems."""
    conditions = dish.sums[0].conditions
    lines = [_place(conditions.height_m, conditions.air_c, conditions.water_c)]
    if is_heated(dish):
        pots = words.COMMA.join(dish.pots)
        lines = [words.ON_FIRE.format(usual=lines[0], stove=dish.plan.stove_name, pots=pots)]
    if any(sums.water_ml for sums in dish.sums[0].steps):
        lines.append(words.WARMTHS)
    if not conditions.heater_water_carried and any(step.heater for step in dish.plan.steps):
        lines.append(words.HEATER_WATER.format(where=dish.household.usual_conditions.heater_water.value))
    return tuple(lines)


def usual_line(household: Household) -> str:
    """Say the conditions that every opening of the booklet shares."""
    usual = household.usual_conditions
    return _place(usual.height.base, usual.air.base, usual.water.base)


def _place(height_m: float, air_c: float, water_c: float) -> str:
    height = f"{in_metres(height_m)} ({in_feet(height_m)})"
    return words.USUAL.format(height=height, air=_degrees(air_c), water=_degrees(water_c))


def _degrees(celsius: float) -> str:
    return f"{in_celsius(celsius)} ({in_fahrenheit(celsius)})"


def origin_lines(plan: DishPlan) -> tuple[str, ...]:
    """Say of every part whose yield or water is worked out where that comes from."""
    components = {part.component.id: part.component for part in plan.parts}
    return tuple([line for component in components.values() for line in component_origins(component)])


def component_origins(component: ComponentSums) -> tuple[str, ...]:
    """Say where a component's yield and waters come from, and by how much its water departs from what it lost."""
    made = component.yielded
    if made is None or made.origin is YieldFrom.AS_IT_IS:
        return ()
    return _origins(component.model.name, made, component.water)


@kept
def _origins(name: str, made: Yielded, water: WaterPerGram | None) -> tuple[str, ...]:
    """Say it once for all the dishes that a component is in."""
    line = words.ORIGINS[made.origin.value].format(
        name=name, batches=yield_from(made), dry=_dry_per_kg(made.fresh_g), apart=_apart(made), table=_table(made)
    )
    return (line, *_gives_back(name, made, water))


def yield_from(made: Yielded) -> str:
    """Say where a yield comes from, in the same words on pages and in data: `3 of our batches`, `food table`."""
    if made.origin is not YieldFrom.BATCHES:
        return made.origin.value
    return words.FROM_A_BATCH if made.batches == 1 else words.FROM_BATCHES.format(count=made.batches)


def _apart(made: Yielded) -> str:
    """Say how far several batches lie apart: the most fresh food for a gram is the least that a kilogram gives."""
    if made.learnt is None:
        return ""
    least, most = _dry_per_kg(made.learnt.most), _dry_per_kg(made.learnt.least)
    return "" if least == most else words.APART.format(least=least, most=most)


def _dry_per_kg(fresh_g: float) -> str:
    return in_grams(1000 / fresh_g)


def _table(made: Yielded) -> str:
    if made.table_fresh_g is None or made.origin is YieldFrom.TABLE:
        return ""
    return words.TABLE_SAYS.format(dry=_dry_per_kg(made.table_fresh_g))


def _gives_back(name: str, made: Yielded, water: WaterPerGram | None) -> list[str]:
    """Note where the water the household gives departs from the mass balance by more than the figure allows."""
    if water is None or water.takes_ml is None or made.lost_ml == 0:
        return []
    if water.assumed:
        return [words.ASSUMED.format(name=name, water=whole_ml(water.offered_ml * SAMPLE_G))]
    share = water.takes_ml / made.lost_ml
    if abs(share - 1) <= WATER_DEPARTS.value:
        return []
    given, lost = whole_ml(water.takes_ml * SAMPLE_G), whole_ml(made.lost_ml * SAMPLE_G)
    return [words.GIVES_BACK.format(name=name, share=in_percent(share), given=given, lost=lost)]
