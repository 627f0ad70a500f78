"""A dish worked out for one number of servings: parts, water, clock, heat, weight and what it feeds."""

import math
from collections.abc import Sequence
from functools import lru_cache

from packlarder.book.dish import Meal
from packlarder.book.household import Household
from packlarder.faults import Gap
from packlarder.measure import kitchen_grams
from packlarder.reckon import flame
from packlarder.reckon.clock import clock_sums
from packlarder.reckon.heat import fuel_g, minutes_to_heat
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.ledger import Ledger, keep_ledger
from packlarder.reckon.part_waters import PartWaters, part_sums, part_waters
from packlarder.reckon.records import (
    Conditions,
    DishPlan,
    DishSums,
    HeatSums,
    StepSums,
    WaterSums,
)
from packlarder.reckon.settled import Settled, settle

printed_g = lru_cache(maxsize=16_384)(kitchen_grams)
"""Many parts of a book weigh the same: so many grams of salt, of oil, of cheese for so many people."""
ALMOST = 1e-6
"""Keeps a whole millilitre from becoming the next one by a rounding error."""
CARRIED_STEP_ML = 10
"""Water to carry is printed in steps of this, rounded up; what the rounding adds is its own piece."""


def usual_conditions(household: Household) -> Conditions:
    """Give the conditions under which the household's dish pages are worked out."""
    usual = household.usual_conditions
    return Conditions(
        height_m=usual.height.base,
        air_c=usual.air.base,
        water_c=usual.water.base,
        heater_water_carried=usual.heater_water.value == "carried",
    )


def work_out(plan: DishPlan, servings: float, conditions: Conditions, fuel_margin: float) -> DishSums:
    """Work out a dish for a number of servings. Food grows with servings; minutes, boil-off and fixed parts do not."""
    return _for_servings(settle(plan, conditions), servings, fuel_margin)


def work_out_each(kept: Settled, servings: Sequence[float], fuel_margin: float) -> tuple[DishSums, ...]:
    """Work out a dish for each of several numbers of servings; what does not hang on them was settled before."""
    return tuple([_for_servings(kept, number, fuel_margin) for number in servings])


def _for_servings(kept: Settled, servings: float, fuel_margin: float) -> DishSums:
    plan = kept.plan
    scale = servings / plan.model.serves
    waters = part_waters(kept.parts, scale)
    ledger = keep_ledger(waters, servings, scale, kept.waters)
    steps = _step_sums(kept, waters, ledger, servings)
    energy_kj = sum([step.heat_kj for step in steps])
    return DishSums(
        servings=servings,
        conditions=kept.conditions,
        parts=part_sums(kept.parts, waters, ledger.absorbed_ml),
        steps=steps,
        water=_water_sums(plan, ledger, kept.conditions),
        clock=clock_sums(steps),
        heat=HeatSums(
            boiling_point_c=kept.boiling_c,
            fuel=plan.stove.fuel,
            fuel_g=math.ceil(fuel_g(energy_kj, kept.fuel_mj_per_kg, kept.efficiency, fuel_margin)),
            energy_kj=energy_kj,
            time_factor=kept.time_factor,
        ),
        weight_g=sum(map(printed_g, waters.dry_g)),
        per_serving=kept.feeds.per_serving(servings),
        incomplete=kept.feeds.incomplete,
        gaps=_gaps(kept, ledger.short),
    )


def _step_sums(kept: Settled, waters: PartWaters, ledger: Ledger, servings: float) -> tuple[StepSums, ...]:
    """Go through the steps with the clock in hand; what food does by itself leaves the cook free for the next."""
    free_min = 0.0
    steps: list[StepSums] = []
    plan, conditions = kept.plan, kept.conditions
    to_boil = kept.water_to_boil_k, kept.air_to_boil_k
    for facts, steady, water in zip(kept.steps, kept.waters, ledger.steps, strict=True):
        step, cook_min, hand_min, wait_min, cooking_kw, cold_parts, waits_for, keeps_cook, steeps = facts
        hot_ml, from_drain_ml = water.fresh_ml if steady.hot else 0.0, water.from_drain_ml
        heat_kj = boil_up_min = 0.0
        if hot_ml or from_drain_ml or cold_parts:
            heat_kj = flame.heat_up_kj(cold_parts, waters, hot_ml, from_drain_ml, *to_boil)
            boil_up_min = minutes_to_heat(heat_kj, kept.power_kw, kept.efficiency)
        if cook_min:
            cook_min *= water.rounds
            heat_kj += cooking_kw * cook_min * 60
        start_min = max([free_min, *[steps[at].end_min for at in waits_for]]) if waits_for else free_min
        done_min = start_min + (boil_up_min + hand_min + cook_min)
        end_min = done_min + wait_min
        free_min = end_min if keeps_cook else done_min
        steeped_c = flame.steeped_c(plan, step, waters, wait_min, conditions, math.ceil(servings)) if steeps else None
        steps.append(StepSums(start_min, end_min, boil_up_min, cook_min, wait_min, *water, heat_kj, steeped_c))
    return tuple(steps)


def _water_sums(plan: DishPlan, ledger: Ledger, conditions: Conditions) -> WaterSums:
    """Round the pieces so that they add up to the total, and the total up to what people measure out."""
    drink = plan.model.meal is Meal.DRINK
    eaten = ledger.in_food_ml + ledger.pot_ml
    pieces = (
        0.0 if drink else ledger.in_food_ml,
        ledger.away_ml,
        0.0 if drink else ledger.pot_ml,
        ledger.boiled_off_ml,
        ledger.drunk_ml + (eaten if drink else 0.0),
        ledger.heater_ml if conditions.heater_water_carried else 0.0,
    )
    total = math.ceil(math.fsum(pieces) - ALMOST)
    carry = math.ceil(total / CARRIED_STEP_ML) * CARRIED_STEP_ML
    in_food, away, pot, boiled, drunk, heater = share_out(total, pieces)
    return WaterSums(
        in_food_ml=in_food,
        drained_away_ml=away,
        pot_ml=pot,
        boiled_off_ml=boiled,
        drink_ml=drunk,
        heater_ml=heater,
        spare_ml=carry - total,
        carry_ml=carry,
        hot_ml=round(sum([step.heated_ml for step in ledger.steps])),
    )


def _gaps(kept: Settled, short: Sequence[int]) -> tuple[Gap, ...]:
    """Say which sums could not be made, and what is missing for them."""
    if not short:
        return kept.gaps
    thirsty = [
        Gap(
            what=f"all the water that {kept.plan.parts[index].called.lower()} takes up",
            missing="the pot holds less than it would take; say more water in the step",
        )
        for index in short
    ]
    return tuple(dict.fromkeys((*kept.component_gaps, *thirsty, *kept.gaps)))
