"""The water of a dish, step by step: what is poured, what the pot gets back, what boils off, where each drop ends."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from packlarder.book.bring_back import Warmth, Way
from packlarder.book.step import Fate, Verb
from packlarder.figures.hands import HEATER_WATER
from packlarder.figures.verbs import VERBS
from packlarder.reckon.part_waters import poured_ml
from packlarder.reckon.pots import largest_ml, rounds_of, vessels_of
from packlarder.reckon.records import DishPlan, PartSums, PlannedStep

GIVES_WATER = frozenset({Verb.SOAK, Verb.MIX, Verb.MOISTEN, Verb.POUR_OVER})
"""Verbs that give a part water of its own."""
_WARMER = tuple(Warmth)
"""From cold to boiling."""


class StepWater(NamedTuple):
    """The water of one step, its rounds, and the vessels it takes without a flame.

    `from_drain_ml` was drained for its pot before, `standing_ml` stands in it from the steps before. `hot_ml` is heated
    for this step; `heated_ml` counts what is heated in a later one as well.
    """

    fresh_ml: float = 0.0
    from_drain_ml: float = 0.0
    standing_ml: float = 0.0
    boiled_off_ml: float = 0.0
    drained_ml: float = 0.0
    hot_ml: float = 0.0
    heated_ml: float = 0.0
    heater_ml: float = 0.0
    rounds: int = 1
    vessels: int = 1


_NONE = StepWater()


@dataclass(frozen=True, slots=True, kw_only=True)
class Steady:
    """What of a step's water does not hang on servings: the parts it wets first, whether hot, one round's boil-off.

    `heats_food` and `heats_drained` say whether water given cold is heated later: with the food, or drained for a pot.
    `bowl_ml` is the size of the bowls there are.
    """

    wets: tuple[int, ...]
    hot: bool
    boil_off_ml: float
    heats_food: bool
    heats_drained: bool
    bowl_ml: float


class Ledger(NamedTuple):
    """Where all water of a dish ends: in the food, poured away, drunk, in the pot, boiled off, in heaters.

    `absorbed_ml[i]` is what part i took up; None where nobody has measured it. `short` are parts that wanted more than
    the pot held.
    """

    steps: tuple[StepWater, ...]
    absorbed_ml: tuple[float | None, ...]
    in_food_ml: float
    away_ml: float
    drunk_ml: float
    pot_ml: float
    boiled_off_ml: float
    heater_ml: float
    short: tuple[int, ...]


def keep_ledger(plan: DishPlan, parts: Sequence[PartSums], servings: int, steady: Sequence[Steady]) -> Ledger:
    """Follow the water through the steps; `steady[i]` is of step i."""
    desk = _Desk(plan, parts, servings, steady)
    steps = tuple(desk.entered(step) for step in plan.steps)
    return Ledger(
        steps=steps,
        absorbed_ml=tuple(desk.absorbed),
        in_food_ml=desk.in_food + sum(desk.soaking.values()),
        away_ml=desk.away,
        drunk_ml=desk.drunk,
        pot_ml=sum(desk.pots.values()) + desk.to_pot,
        boiled_off_ml=sum(step.boiled_off_ml for step in steps),
        heater_ml=sum(step.heater_ml for step in steps),
        short=tuple(desk.short),
    )


class _Desk:
    """The state of all water between two steps.

    `soaking` lies around a soaked part, `pots` stands free in each pot, `held` are the parts in each, `to_pot` was
    drained for the next pot to be used.
    """

    def __init__(self, plan: DishPlan, parts: Sequence[PartSums], servings: int, steady: Sequence[Steady]) -> None:
        self.plan = plan
        self.parts = parts
        self.servings = servings
        self.scale = servings / plan.model.serves
        self.steady = steady
        self.absorbed = [part.absorbed_ml if part.way is not Way.IN_THE_POT else None for part in parts]
        self.soaking: dict[int, float] = {}
        self.pots: dict[str, float] = {}
        self.held: dict[str, set[int]] = {}
        self.last_pot = ""
        self.in_food = self.away = self.drunk = self.to_pot = 0.0
        self.short: list[int] = []

    def entered(self, step: PlannedStep) -> StepWater:
        """Enter one step in the books."""
        if step.verb is None or step.verb is Verb.WAIT:
            return _NONE
        if step.verb is Verb.DRAIN:
            return self._drained(step.fate or Fate.AWAY)
        if step.heater:
            return StepWater(heater_ml=HEATER_WATER.value * self.servings)
        if step.verb in GIVES_WATER:
            return self._given(step, self.steady[step.index])
        return self._in_the_pot(step)

    def _given(self, step: PlannedStep, steady: Steady) -> StepWater:
        fresh = drained = 0.0
        for index in steady.wets:
            part = self.parts[index]
            fresh += part.offered_ml
            drained += part.drained_ml
            if part.drained_ml:
                self.soaking[index] = part.drained_ml
        if not steady.wets and step.given_ml is not None:  # more water for what was wetted before: it stays in
            fresh = poured_ml(step.given_ml * self.scale)
        self.in_food += fresh - drained
        vessels = vessels_of(fresh + sum([self.parts[index].dry_g for index in step.parts]), steady.bowl_ml)
        if steady.hot:
            return StepWater(fresh_ml=fresh, hot_ml=fresh, heated_ml=fresh, vessels=vessels)
        later = (fresh - drained) * steady.heats_food + drained * steady.heats_drained
        return StepWater(fresh_ml=fresh, heated_ml=later, vessels=vessels)

    def _drained(self, fate: Fate) -> StepWater:
        """Pour off what lies around soaked parts, or else what is in the pot that was used last."""
        amount = sum(self.soaking.values())
        self.soaking.clear()
        if not amount:
            amount = self.pots.pop(self.last_pot, 0.0)
            self.held.pop(self.last_pot, None)
        if fate is Fate.INTO_THE_POT:
            self.to_pot += amount
        elif fate is Fate.DRUNK:
            self.drunk += amount
        else:
            self.away += amount
        return StepWater(drained_ml=amount)

    def _in_the_pot(self, step: PlannedStep) -> StepWater:
        drained = sum([self.soaking.pop(index, 0.0) for index in step.parts]) + self._from_drain(step)
        standing = self.pots.get(step.pot, 0.0)
        before = standing + drained
        self._put_in(step)
        per_round = self.steady[step.index].boil_off_ml
        rounds, wanted = self._wanted(step, before, per_round)
        fresh = poured_ml(max(0.0, wanted - before) / rounds) * rounds if wanted is not None else 0.0
        self.pots[step.pot] = before + fresh
        for index in step.parts:
            self._taken_up(index, step.pot)
        boiled = min(self.pots[step.pot], per_round * rounds)
        self.pots[step.pot] -= boiled
        return StepWater(
            fresh_ml=fresh,
            from_drain_ml=drained,
            standing_ml=standing,
            boiled_off_ml=boiled,
            hot_ml=fresh,
            heated_ml=fresh,
            rounds=rounds,
        )

    def _put_in(self, step: PlannedStep) -> None:
        """Keep in mind which pot the parts are in."""
        self.last_pot = step.pot
        for held in self.held.values():
            held.difference_update(step.parts)
        self.held.setdefault(step.pot, set()).update(step.parts)

    def _from_drain(self, step: PlannedStep) -> float:
        """Give what was drained for the pot; a dry pan is not the pot that is meant."""
        if step.verb is None or VERBS[step.verb].dry_heat:
            return 0.0
        drained, self.to_pot = self.to_pot, 0.0
        return drained

    def _wanted(self, step: PlannedStep, before: float, per_round: float) -> tuple[int, float | None]:
        """Give rounds and the water a pot starts with: it grows with servings, but for what boils off."""
        if step.pot_ml is None:
            return rounds_of(self.plan, step, self._food_ml(step.pot), before), None
        kept = max(0.0, step.pot_ml - per_round) * self.scale
        rounds = rounds_of(self.plan, step, self._food_ml(step.pot), max(before, kept + per_round))
        return rounds, kept + min(per_round, step.pot_ml) * rounds

    def _food_ml(self, pot: str) -> float:
        """Give what the food in a pot fills with the water that it took up so far."""
        return sum([self.parts[index].dry_g + (self.absorbed[index] or 0.0) for index in self.held[pot]])

    def _must_have_it(self, index: int) -> bool:
        """Tell whether less water spoils a part: not so a powder, nor what only our rule of thumb is known for."""
        water = self.plan.parts[index].component.water
        return water is not None and water.way in (Way.IN_THE_POT, Way.SOAK) and not water.assumed

    def _taken_up(self, index: int, pot: str) -> None:
        part = self.parts[index]
        if part.way is not Way.IN_THE_POT or part.absorbed_ml is None or self.absorbed[index] is not None:
            return
        taken = min(part.absorbed_ml, self.pots[pot])
        if taken < part.absorbed_ml and self._must_have_it(index):
            self.short.append(index)
        self.absorbed[index] = taken
        self.in_food += taken
        self.pots[pot] -= taken


def steady_of(plan: DishPlan, step: PlannedStep, boil_off_ml: float) -> Steady:
    """Work out once what of a step's water every number of servings shares."""
    hot = bowl_warmth(plan, step) is not Warmth.COLD
    cold = step.verb in GIVES_WATER and not hot
    later = plan.steps[step.index + 1 :]
    return Steady(
        wets=tuple([index for index in step.parts if plan.wetted_in[index] == step.index]),
        hot=hot,
        boil_off_ml=boil_off_ml,
        heats_food=cold and _cooks_later(step.parts, later),
        heats_drained=cold and _drained_to_cook(later),
        bowl_ml=largest_ml(plan),
    )


def _cooks_later(parts: Sequence[int], later: Sequence[PlannedStep]) -> bool:
    """Tell whether one of the parts is heated in its water later on, by itself or with what it was stirred into."""
    stirred_into: set[str] = set()
    for step in later:
        shared = not set(parts).isdisjoint(step.parts)
        if step.verb is Verb.STIR_IN and shared:
            stirred_into.add(step.pot)
        elif _heats_water(step) and (shared or step.pot in stirred_into):
            return True
    return False


def _drained_to_cook(later: Sequence[PlannedStep]) -> bool:
    """Tell whether the next drain goes into a pot that is heated after it."""
    at = next((place for place, step in enumerate(later) if step.verb is Verb.DRAIN), None)
    if at is None or later[at].fate is not Fate.INTO_THE_POT:
        return False
    return any(_heats_water(step) for step in later[at:])


def _heats_water(step: PlannedStep) -> bool:
    if step.verb is None or step.heater:
        return False
    row = VERBS[step.verb]
    return row.on_stove and not row.dry_heat


def warmth_of(plan: DishPlan, step: PlannedStep, part: int) -> Warmth:
    """Give how warm the water is that a step or else the component asks for a part."""
    water = plan.parts[part].component.water
    if step.verb is Verb.POUR_OVER:
        return Warmth.BOILING
    return step.warmth or (water.warmth if water is not None else Warmth.COLD)


def bowl_warmth(plan: DishPlan, step: PlannedStep) -> Warmth:
    """Give how warm the water of a step is: parts that lie in one bowl get the warmest that one of them asks for."""
    wetted = [index for index in step.parts if plan.wetted_in[index] == step.index] or step.parts
    return max((warmth_of(plan, step, index) for index in wetted), key=_WARMER.index, default=Warmth.COLD)
