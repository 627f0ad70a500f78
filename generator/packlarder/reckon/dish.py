"""A dish worked out for one number of servings: parts, water, clock, heat, weight and what it feeds."""

import math
from collections.abc import Sequence

from packlarder.book.bring_back import Way
from packlarder.book.dish import Meal
from packlarder.book.household import Household
from packlarder.faults import Gap
from packlarder.measure import kitchen_grams
from packlarder.reckon import flame
from packlarder.reckon.clock import Slot, Spell, clock_sums, schedule
from packlarder.reckon.heat import minutes_to_heat
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.ledger import Ledger, keep_ledger
from packlarder.reckon.part_waters import part_sums
from packlarder.reckon.records import (
    Conditions,
    DishPlan,
    DishSums,
    HeatSums,
    PartSums,
    StepSums,
    WaterSums,
)
from packlarder.reckon.settled import Settled, settle

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


def work_out(plan: DishPlan, servings: int, conditions: Conditions, fuel_margin: float) -> DishSums:
    """Work out a dish for a number of servings. Food grows with servings; minutes, boil-off and fixed parts do not."""
    return work_out_each(plan, (servings,), conditions, fuel_margin)[0]


def work_out_each(
    plan: DishPlan, servings: Sequence[int], conditions: Conditions, fuel_margin: float
) -> tuple[DishSums, ...]:
    """Work out a dish for each of several numbers of servings; what does not hang on them is worked out once."""
    kept = settle(plan, conditions)
    return tuple([_for_servings(kept, number, fuel_margin) for number in servings])


def _for_servings(kept: Settled, servings: int, fuel_margin: float) -> DishSums:
    plan, conditions = kept.plan, kept.conditions
    parts = part_sums(plan, servings / plan.model.serves)
    ledger = keep_ledger(plan, parts, servings, kept.waters)
    spells, heats = _spells(kept, parts, ledger)
    slots = schedule(plan, spells)
    energy_kj = sum(heats)
    return DishSums(
        servings=servings,
        conditions=conditions,
        parts=_as_absorbed(parts, ledger),
        steps=_step_sums(kept, parts, ledger, spells, slots, heats, servings),
        water=_water_sums(plan, ledger, conditions),
        clock=clock_sums(slots, spells),
        heat=HeatSums(
            boiling_point_c=kept.boiling_c,
            fuel=plan.stove.fuel,
            fuel_g=math.ceil(flame.fuel_grams(plan, energy_kj, fuel_margin)),
            energy_kj=energy_kj,
            time_factor=kept.time_factor,
        ),
        weight_g=sum([kitchen_grams(part.dry_g) for part in parts]),
        per_serving=kept.feeds.per_serving(servings / plan.model.serves, servings),
        incomplete=kept.feeds.incomplete,
        gaps=_gaps(plan, parts, ledger),
    )


def _as_absorbed(parts: Sequence[PartSums], ledger: Ledger) -> tuple[PartSums, ...]:
    """Set what each part really took up: in the pot that is known only when the water was followed."""
    return tuple(
        [
            part if part.absorbed_ml == taken else part._replace(absorbed_ml=taken)
            for part, taken in zip(parts, ledger.absorbed_ml, strict=True)
        ]
    )


def _spells(kept: Settled, parts: Sequence[PartSums], ledger: Ledger) -> tuple[list[Spell], list[float]]:
    """Give what each step takes of the clock, and the heat in kJ that it takes into the pot."""
    spells: list[Spell] = []
    heats: list[float] = []
    for water, minutes, cold in zip(ledger.steps, kept.minutes, kept.cold_parts, strict=True):
        heat_up_kj = flame.heat_up_kj(cold, parts, water, kept.water_to_boil_k, kept.air_to_boil_k)
        cook_min = minutes.cook * water.rounds
        heats.append(heat_up_kj + minutes.cooking_kw * cook_min * 60)
        spells.append(
            Spell(
                boil_up_min=minutes_to_heat(heat_up_kj, kept.power_kw, kept.efficiency) if heat_up_kj else 0.0,
                hand_min=minutes.hand,
                cook_min=cook_min,
                wait_min=minutes.wait,
            )
        )
    return spells, heats


def _step_sums(
    kept: Settled,
    parts: Sequence[PartSums],
    ledger: Ledger,
    spells: Sequence[Spell],
    slots: Sequence[Slot],
    heats: Sequence[float],
    servings: int,
) -> tuple[StepSums, ...]:
    plan, conditions = kept.plan, kept.conditions
    return tuple(
        [
            StepSums(
                start_min=slot.start_min,
                end_min=slot.end_min,
                boil_up_min=spell.boil_up_min,
                cook_min=spell.cook_min,
                wait_min=spell.wait_min,
                water_ml=water.fresh_ml,
                from_drain_ml=water.from_drain_ml,
                standing_ml=water.standing_ml,
                drained_ml=water.drained_ml,
                heater_ml=water.heater_ml,
                heated_ml=water.heated_ml,
                boiled_off_ml=water.boiled_off_ml,
                rounds=water.rounds,
                vessels=water.vessels,
                heat_kj=heat_kj,
                steeped_c=flame.steeped_c(plan, step, parts, spell.wait_min, conditions, servings),
            )
            for step, spell, slot, water, heat_kj in zip(plan.steps, spells, slots, ledger.steps, heats, strict=True)
        ]
    )


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


def _gaps(plan: DishPlan, parts: Sequence[PartSums], ledger: Ledger) -> tuple[Gap, ...]:
    """Say which sums could not be made, and what is missing for them."""
    own = [gap for part in plan.parts for gap in part.component.gaps]
    short = [
        Gap(
            what=f"all the water that {plan.parts[index].called.lower()} takes up",
            missing="the pot holds less than it would take; say more water in the step",
        )
        for index in ledger.short
    ]
    dry = [
        Gap(
            what=f"the water of {part.called.lower()}",
            missing=f"say how it comes back (`bring back`) in components/{part.component.id}.yaml",
        )
        for part, sums in zip(plan.parts, parts, strict=True)
        if part.component.water is None and not part.component.gaps and _waits_for_water(plan, part.index, sums)
    ]
    return tuple(dict.fromkeys((*own, *short, *dry)))


def _waits_for_water(plan: DishPlan, index: int, sums: PartSums) -> bool:
    """Tell whether a step gives water to a part of which neither the step nor its component says how much."""
    wetted_in = plan.wetted_in[index]
    named = wetted_in is not None and plan.steps[wetted_in].given_ml is not None
    return sums.way is not None and sums.way is not Way.IN_THE_POT and sums.offered_ml == 0 and not named
