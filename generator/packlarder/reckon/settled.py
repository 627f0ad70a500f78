"""What of a dish does not hang on the number of servings, once it is known where it is cooked."""

from collections.abc import Sequence
from dataclasses import dataclass

from packlarder.reckon import flame, nutrients
from packlarder.reckon.heat import boiling_point_c
from packlarder.reckon.ledger import Steady, steady_of
from packlarder.reckon.records import Conditions, DishPlan, Nutrients, PlannedPart
from packlarder.reckon.step_minutes import cook_minutes, hand_minutes, time_factor, wait_minutes


@dataclass(frozen=True, slots=True, kw_only=True)
class StepMinutes:
    """The minutes of a step: on the flame for one round, in hand, waiting by itself; the heat that keeps it cooking."""

    cook: float
    hand: float
    wait: float
    cooking_kw: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Feeds:
    """What a dish feeds: `growing` is for the servings it is written for, `steady` is of its fixed parts.

    A nutrient is missing from both where no part's figure is known, and in `incomplete` where some part's is not.
    """

    growing: tuple[tuple[str, float], ...]
    steady: tuple[float, ...]
    incomplete: frozenset[str]

    def per_serving(self, scale: float, servings: int) -> Nutrients:
        """Give what one serving feeds of what is known, at `scale` times the servings the dish is written for."""
        known = {
            name: (growing * scale + steady) / servings
            for (name, growing), steady in zip(self.growing, self.steady, strict=True)
        }
        return Nutrients(**{**dict.fromkeys(nutrients.NAMES), **known})


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """A plan under given conditions; `minutes[i]`, `waters[i]` and `cold_parts[i]` are of step i."""

    plan: DishPlan
    conditions: Conditions
    minutes: tuple[StepMinutes, ...]
    waters: tuple[Steady, ...]
    cold_parts: tuple[tuple[int, ...], ...]
    boiling_c: float
    water_to_boil_k: float
    air_to_boil_k: float
    time_factor: float
    power_kw: float
    efficiency: float
    feeds: Feeds


def settle(plan: DishPlan, conditions: Conditions) -> Settled:
    """Work out once what every number of servings shares."""
    minutes = tuple(
        StepMinutes(
            cook=cook_minutes(plan, step, conditions),
            hand=hand_minutes(step),
            wait=wait_minutes(plan, step, conditions),
            cooking_kw=flame.cooking_kw(plan, step),
        )
        for step in plan.steps
    )
    boiling_c = boiling_point_c(conditions.height_m)
    return Settled(
        plan=plan,
        conditions=conditions,
        minutes=minutes,
        waters=tuple(
            steady_of(plan, step, flame.boil_off_ml(plan, step, one.cook))
            for step, one in zip(plan.steps, minutes, strict=True)
        ),
        cold_parts=flame.cold_parts(plan),
        boiling_c=boiling_c,
        water_to_boil_k=max(0.0, boiling_c - conditions.water_c),
        air_to_boil_k=max(0.0, boiling_c - conditions.air_c),
        time_factor=max((time_factor(plan, step, conditions) for step in plan.steps), default=1.0),
        power_kw=flame.stove_power_kw(plan),
        efficiency=flame.stove_efficiency(plan),
        feeds=_feeds(plan.parts),
    )


def _feeds(parts: Sequence[PlannedPart]) -> Feeds:
    growing: list[tuple[str, float]] = []
    steady: list[float] = []
    incomplete: set[str] = set()
    for name in nutrients.NAMES:
        sums = {True: 0.0, False: 0.0}
        known = False
        for part in parts:
            value: float | None = getattr(part.component.nutrients, name)
            if value is None:
                incomplete.add(name)
                continue
            known = True
            sums[part.fixed] += value * part.dry_g * part.eaten_share
        if known:
            growing.append((name, sums[False]))
            steady.append(sums[True])
    return Feeds(growing=tuple(growing), steady=tuple(steady), incomplete=frozenset(incomplete))
