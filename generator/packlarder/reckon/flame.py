"""The heat that each step takes into pot or pan, the minutes of flame that gives it, and the temperature of a steep."""

from collections.abc import Sequence
from functools import cache

from packlarder.book.household import Stove
from packlarder.book.step import Verb
from packlarder.figures.cooking import Shelter
from packlarder.figures.fuels import FUELS
from packlarder.figures.hands import PAN_FLAME
from packlarder.figures.stoves import STOVES
from packlarder.figures.verbs import VERBS
from packlarder.reckon import heat
from packlarder.reckon.part_waters import PartWaters
from packlarder.reckon.records import Conditions, DishPlan, PlannedStep

boil_off_ml_per_min = cache(heat.boil_off_g_per_min)
"""Grams of water are mL here; the same few pots are asked for again and again."""


def stove_power_kw(plan: DishPlan) -> float:
    """Give the power of a dish's stove: the household's own figure, or that of its type."""
    return power_of(plan.stove)


def power_of(stove: Stove) -> float:
    """Give the power of a stove: the household's own figure, or that of its type."""
    return stove.power.base if stove.power else STOVES[stove.kind].power.value


def stove_efficiency(plan: DishPlan) -> float:
    """Give the share of the heat of a dish's stove that reaches the pot."""
    return efficiency_of(plan.stove)


def efficiency_of(stove: Stove) -> float:
    """Give the share of a stove's heat that reaches the pot: the household's own figure, or that of its type."""
    return stove.efficiency.base if stove.efficiency else STOVES[stove.kind].efficiency.value


def stove_fuel_mj_per_kg(plan: DishPlan) -> float:
    """Give the heat of a dish's fuel."""
    return FUELS[plan.stove.fuel].heat.value


def pot_across_cm(plan: DishPlan, step: PlannedStep) -> float:
    """Give the diameter of a step's pot in cm."""
    return plan.pots[step.pot].across.base * 100


def boil_off_ml(plan: DishPlan, step: PlannedStep, cook_min: float) -> float:
    """Give what one round of a step boils off; it does not grow with servings."""
    if step.verb is None or not VERBS[step.verb].boils_off:
        return 0.0
    return boil_off_ml_per_min(pot_across_cm(plan, step), lid=step.lid_on) * cook_min


def cold_parts(plan: DishPlan) -> tuple[tuple[int, ...], ...]:
    """Give for each step the parts that come cold onto the flame in it: its own, and what was stirred in before it."""
    hot: set[int] = set()
    stirred_in: list[int] = []
    cold: list[tuple[int, ...]] = []
    for step in plan.steps:
        if step.verb is Verb.STIR_IN:
            stirred_in += step.parts
        if not _on_flame(step):
            cold.append(())
            continue
        cold.append(tuple(dict.fromkeys(part for part in (*step.parts, *stirred_in) if part not in hot)))
        hot.update(cold[-1])
        stirred_in.clear()
    return tuple(cold)


def _on_flame(step: PlannedStep) -> bool:
    return step.verb is not None and VERBS[step.verb].on_stove and not step.heater


def heat_up_kj(
    cold: Sequence[int],
    waters: PartWaters,
    hot_ml: float,
    from_drain_ml: float,
    water_to_boil_k: float,
    air_to_boil_k: float,
) -> float:
    """Give the heat that brings a step's hot fresh water, and what comes cold into its pot, to the boil.

    Hot water for a soak is brought to the boil as well: that is how it is known to be hot. What a part takes up in the
    pot was poured there and is counted with it; drained water and soaked food are taken to be as warm as the air.
    """
    poured = heat.heat_capacity_kj_per_k(hot_ml) * water_to_boil_k if hot_ml else 0.0
    if not cold and not from_drain_ml:
        return poured
    dry, offered, absorbed = waters.dry_g, waters.offered_ml, waters.absorbed_ml
    cool_ml = from_drain_ml
    for index in cold:
        if offered[index]:
            cool_ml += absorbed[index] or 0.0
    food_g = sum([dry[index] for index in cold])
    return poured + heat.heat_capacity_kj_per_k(cool_ml, food_g) * air_to_boil_k


def cooking_kw(plan: DishPlan, step: PlannedStep) -> float:
    """Give the heat that keeps a step on the flame cooking: a simmer, or a pan held hot."""
    if step.verb is None or not _on_flame(step):
        return 0.0
    if VERBS[step.verb].dry_heat:
        return PAN_FLAME.value * stove_power_kw(plan) * stove_efficiency(plan)
    return heat.simmer_kw(pot_across_cm(plan, step), lid=step.lid_on)


def steeps(step: PlannedStep) -> bool:
    """Tell whether a step leaves food to steep, or warms it in a heater."""
    return step.heater or step.verb is Verb.POUR_OVER


def steeped_c(
    plan: DishPlan, step: PlannedStep, waters: PartWaters, wait_min: float, conditions: Conditions, heaters: int
) -> float | None:
    """Give the temperature that a steeped or heater-warmed food ends at, None where no water is known.

    A pack without a cosy is taken to stand in the open but out of the wind.
    """
    food_g = sum([waters.dry_g[index] for index in step.parts])
    water_ml = sum([waters.wanted_ml[index] or 0.0 for index in step.parts])
    if step.heater:
        return heat.heater_end_c(water_ml, food_g, conditions.air_c, conditions.height_m, heaters)
    if water_ml == 0:
        return None
    own = [plan.parts[index].component.water for index in step.parts]
    cosy = step.cosy or any(water is not None and water.cosy for water in own)
    start_c = heat.steep_start_c(water_ml, food_g, conditions.air_c, conditions.height_m)
    shelter = Shelter.COSY if cosy else Shelter.STILL
    return heat.steep_end_c(start_c, conditions.air_c, wait_min, water_ml, food_g, shelter)
