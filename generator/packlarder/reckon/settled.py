"""What of a dish does not hang on the number of servings, once it is known where it is cooked."""

from collections.abc import Sequence
from typing import NamedTuple

from packlarder.book.bring_back import Way
from packlarder.book.step import Verb
from packlarder.faults import Gap
from packlarder.reckon import flame, nutrients
from packlarder.reckon.clock import waits_for
from packlarder.reckon.heat import boiling_point_c
from packlarder.reckon.ledger import Steady
from packlarder.reckon.part_waters import PartRates, part_rates
from packlarder.reckon.records import Conditions, DishPlan, Nutrients, PlannedPart, PlannedStep
from packlarder.reckon.steady import steady_of
from packlarder.reckon.step_minutes import cook_minutes, hand_minutes, time_factor, wait_minutes


class StepFacts(NamedTuple):
    """A step's minutes: on the flame for one round, in hand, waiting by itself; the heat that keeps it cooking.

    `cold_parts` come cold onto its flame, `waits_for` are the steps that must be ready before it; `keeps_cook` says
    that the cook waits too, `steeps` that its food steeps or is warmed in a heater.
    """

    step: PlannedStep
    cook_min: float
    hand_min: float
    wait_min: float
    cooking_kw: float
    cold_parts: tuple[int, ...]
    waits_for: tuple[int, ...]
    keeps_cook: bool
    steeps: bool


class Feeds(NamedTuple):
    """What a dish feeds: `growing` is for the servings it is written for, `steady` is of its fixed parts.

    Both in the order of the nutrients' fields. A nutrient is None in `growing` where no part's figure is known, and in
    `incomplete` where some part's is not.
    """

    growing: tuple[float | None, ...]
    steady: tuple[float, ...]
    incomplete: frozenset[str]

    def per_serving(self, scale: float, servings: int) -> Nutrients:
        """Give what one serving feeds of what is known, at `scale` times the servings the dish is written for."""
        return Nutrients(
            *[
                None if growing is None else (growing * scale + steady) / servings
                for growing, steady in zip(self.growing, self.steady, strict=True)
            ]
        )


class Settled(NamedTuple):
    """A plan under given conditions; `steps[i]` and `waters[i]` are of step i.

    Whatever the servings, `component_gaps` are there, and `dry_gaps` of parts that get no water.
    """

    plan: DishPlan
    conditions: Conditions
    parts: PartRates
    steps: tuple[StepFacts, ...]
    waters: tuple[Steady, ...]
    boiling_c: float
    water_to_boil_k: float
    air_to_boil_k: float
    time_factor: float
    power_kw: float
    efficiency: float
    fuel_mj_per_kg: float
    feeds: Feeds
    component_gaps: tuple[Gap, ...]
    dry_gaps: tuple[Gap, ...]


def settle(plan: DishPlan, conditions: Conditions) -> Settled:
    """Work out once what every number of servings shares."""
    factors = [time_factor(plan, step, conditions) for step in plan.steps]
    steps = _step_facts(plan, conditions, factors)
    boiling_c = boiling_point_c(conditions.height_m)
    return Settled(
        plan=plan,
        conditions=conditions,
        parts=part_rates(plan),
        steps=steps,
        waters=steady_of(plan, [flame.boil_off_ml(plan, one.step, one.cook_min) for one in steps]),
        boiling_c=boiling_c,
        water_to_boil_k=max(0.0, boiling_c - conditions.water_c),
        air_to_boil_k=max(0.0, boiling_c - conditions.air_c),
        time_factor=max(factors, default=1.0),
        power_kw=flame.stove_power_kw(plan),
        efficiency=flame.stove_efficiency(plan),
        fuel_mj_per_kg=flame.stove_fuel_mj_per_kg(plan),
        feeds=_feeds(plan.parts),
        component_gaps=tuple([gap for part in plan.parts for gap in part.component.gaps]),
        dry_gaps=_dry_gaps(plan),
    )


def _step_facts(plan: DishPlan, conditions: Conditions, factors: Sequence[float]) -> tuple[StepFacts, ...]:
    waits = [wait_minutes(plan, step, conditions) for step in plan.steps]
    columns = zip(plan.steps, factors, waits, flame.cold_parts(plan), waits_for(plan, waits), strict=True)
    return tuple(
        [
            StepFacts(
                step=step,
                cook_min=cook_minutes(step, factor),
                hand_min=hand_minutes(step),
                wait_min=wait_min,
                cooking_kw=flame.cooking_kw(plan, step),
                cold_parts=cold_parts,
                waits_for=needed,
                keeps_cook=step.verb is Verb.WAIT,
                steeps=flame.steeps(step),
            )
            for step, factor, wait_min, cold_parts, needed in columns
        ]
    )


def _feeds(parts: Sequence[PlannedPart]) -> Feeds:
    growing: list[float | None] = []
    steady: list[float] = []
    incomplete: set[str] = set()
    eaten = [(part.fixed, part.dry_g, part.eaten_share) for part in parts]
    columns = zip(*[part.component.nutrients for part in parts], strict=True)
    for name, column in zip(nutrients.NAMES, columns, strict=True):
        sums = {True: 0.0, False: 0.0}
        for value, (fixed, dry_g, share) in zip(column, eaten, strict=True):
            if value is not None:
                sums[fixed] += value * dry_g * share
        missing = column.count(None)
        if missing:
            incomplete.add(name)
        growing.append(sums[False] if missing < len(parts) else None)
        steady.append(sums[True])
    return Feeds(growing=tuple(growing), steady=tuple(steady), incomplete=frozenset(incomplete))


def _dry_gaps(plan: DishPlan) -> tuple[Gap, ...]:
    return tuple(
        Gap(
            what=f"the water of {part.called.lower()}",
            missing=f"say how it comes back (`bring back`) in components/{part.component.id}.yaml",
        )
        for part in plan.parts
        if part.component.water is None and not part.component.gaps and _waits_for_water(plan, part.index)
    )


def _waits_for_water(plan: DishPlan, index: int) -> bool:
    """Tell whether a step gives water to a part and does not say how much."""
    wetted_in = plan.wetted_in[index]
    named = wetted_in is not None and plan.steps[wetted_in].given_ml is not None
    return plan.way_of[index] not in (None, Way.IN_THE_POT) and not named
