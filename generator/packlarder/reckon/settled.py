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
    """What a dish feeds: one serving of what grows with the servings, and all its fixed parts, None if it has none.

    `steady` is in the order of the nutrients' fields. A nutrient is None in `growing` where no part's figure is known,
    and in `incomplete` where some part's is not.
    """

    growing: Nutrients
    steady: tuple[float, ...] | None
    incomplete: frozenset[str]

    def per_serving(self, servings: float) -> Nutrients:
        """Give what one serving feeds of what is known."""
        if self.steady is None:
            return self.growing
        return Nutrients(
            *[
                None if growing is None else growing + steady / servings
                for growing, steady in zip(self.growing, self.steady, strict=True)
            ]
        )


class Settled(NamedTuple):
    """A plan under given conditions; `steps[i]` and `waters[i]` are of step i.

    `gaps` are there whatever the servings: those of the components, which come first, and of parts that get no water.
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
    gaps: tuple[Gap, ...]


def settle(plan: DishPlan, conditions: Conditions) -> Settled:
    """Work out once what every number of servings shares."""
    factors = [time_factor(plan, step, conditions) for step in plan.steps]
    steps = _step_facts(plan, conditions, factors)
    boiling_c = boiling_point_c(conditions.height_m)
    component_gaps = tuple([gap for part in plan.parts for gap in part.component.gaps])
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
        feeds=_feeds(plan.parts, plan.model.serves),
        component_gaps=component_gaps,
        gaps=tuple(dict.fromkeys((*component_gaps, *_dry_gaps(plan)))),
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


def _feeds(parts: Sequence[PlannedPart], serves: int) -> Feeds:
    eaten = [part for part in parts if not part.fixed]
    fixed = [part for part in parts if part.fixed]
    columns = zip(nutrients.NAMES, zip(*[part.component.nutrients for part in parts], strict=True), strict=True)
    missing = {name: column.count(None) for name, column in columns if None in column}
    growing = [
        None if missing.get(name) == len(parts) else fed / serves
        for name, fed in zip(nutrients.NAMES, _fed(eaten), strict=True)
    ]
    return Feeds(growing=Nutrients(*growing), steady=_fed(fixed) if fixed else None, incomplete=frozenset(missing))


def _fed(parts: Sequence[PlannedPart]) -> tuple[float, ...]:
    """Give what parts feed as the dish is written, of what is known, in the order of the nutrients' fields."""
    if not parts:
        return (0.0,) * len(nutrients.NAMES)
    eaten = [(part.dry_g, part.eaten_share) for part in parts]
    columns = zip(*[part.component.nutrients for part in parts], strict=True)
    return tuple([_total(column, eaten) for column in columns])


def _total(column: Sequence[float | None], eaten: Sequence[tuple[float, float]]) -> float:
    known = [value * dry_g * share for value, (dry_g, share) in zip(column, eaten, strict=True) if value is not None]
    return sum(known, 0.0)


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
