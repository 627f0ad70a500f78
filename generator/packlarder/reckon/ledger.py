"""The water of a dish, step by step: what is poured, what the pot gets back, what boils off, where each drop ends."""

import math
from collections.abc import Sequence
from enum import Enum
from typing import NamedTuple

from packlarder.book.bring_back import Warmth
from packlarder.book.step import Fate, Verb
from packlarder.figures.hands import HEATER_WATER
from packlarder.reckon.part_waters import PartWaters, poured_ml
from packlarder.reckon.pots import rounds_of, vessels_of
from packlarder.reckon.records import DishPlan, PlannedStep

GIVES_WATER = frozenset({Verb.SOAK, Verb.MIX, Verb.MOISTEN, Verb.POUR_OVER})
"""Verbs that give a part water of its own."""
_WARMER = tuple(Warmth)
"""From cold to boiling."""


class StepWater(NamedTuple):
    """The water of one step, its rounds, and the vessels it takes without a flame: fields and order of `StepSums`."""

    fresh_ml: float = 0.0
    from_drain_ml: float = 0.0
    standing_ml: float = 0.0
    drained_ml: float = 0.0
    heater_ml: float = 0.0
    heated_ml: float = 0.0
    boiled_off_ml: float = 0.0
    rounds: int = 1
    vessels: int = 1


_NONE = StepWater()


class Entry(Enum):
    """How a step is entered in the books."""

    NONE = "no water"
    DRAIN = "pours off"
    HEATER = "into a ration heater"
    GIVES = "to its parts"
    IN_THE_POT = "in the pot"


_NO_ENTRY, _DRAINS, _GIVES, _IN_THE_POT = Entry.NONE, Entry.DRAIN, Entry.GIVES, Entry.IN_THE_POT
"""By name once: Python 3.11 is slow to find a member in its class, and every step at every servings asks."""


class Steady(NamedTuple):
    """What of a step's water does not hang on servings: the parts it wets first, whether hot, one round's boil-off.

    `hot` is true of all that goes into a pot as well. `heats_food` and `heats_drained` say whether water given cold is
    heated later: with the food, or drained for a pot. `bowl_ml` is the size of the bowls there are, `room_ml` what one
    round may fill of its pot, None without one. `takes_up` are the parts that take up water in a pot for the first
    time, and whether they must have it.
    """

    entry: Entry
    step: PlannedStep
    wets: tuple[int, ...]
    hot: bool
    boil_off_ml: float
    heats_food: bool
    heats_drained: bool
    bowl_ml: float
    room_ml: float | None
    dry_heat: bool
    takes_up: tuple[tuple[int, bool], ...]


class Ledger(NamedTuple):
    """Where all water of a dish ends: in the food, poured away, drunk, in the pot, boiled off, in heaters.

    `absorbed_ml[i]` is what part i took up; None where nobody has measured it. `short` are parts that wanted more than
    the pot held.
    """

    steps: tuple[StepWater, ...]
    absorbed_ml: Sequence[float | None]
    in_food_ml: float
    away_ml: float
    drunk_ml: float
    pot_ml: float
    boiled_off_ml: float
    heater_ml: float
    short: Sequence[int]


def keep_ledger(waters: PartWaters, servings: float, scale: float, steady: Sequence[Steady]) -> Ledger:
    """Follow the water through the steps; `steady[i]` is of step i, servings are `scale` times the written ones."""
    desk = _Desk(waters, servings, scale)
    steps = tuple(map(desk.entered, steady))
    return Ledger(
        steps=steps,
        absorbed_ml=desk.absorbed,
        in_food_ml=desk.in_food + sum(desk.soaking.values()),
        away_ml=desk.away,
        drunk_ml=desk.drunk,
        pot_ml=sum(desk.pots.values()) + desk.to_pot,
        boiled_off_ml=desk.boiled_off,
        heater_ml=desk.in_heaters,
        short=desk.short,
    )


class _Desk:
    """The state of all water between two steps.

    `soaking` lies around a soaked part, `pots` stands free in each pot, `pot_of` is the pot that a part is in, `to_pot`
    was drained for the next pot to be used.
    """

    def __init__(self, waters: PartWaters, servings: float, scale: float) -> None:
        self.waters = waters
        self.heaters = math.ceil(servings)
        self.scale = scale
        self.absorbed = waters.absorbed_ml.copy()
        self.soaking: dict[int, float] = {}
        self.pots: dict[str, float] = {}
        self.pot_of: dict[int, str] = {}
        self.last_pot = ""
        self.in_food = self.away = self.drunk = self.to_pot = self.boiled_off = self.in_heaters = 0.0
        self.short: list[int] = []

    def entered(self, steady: Steady) -> StepWater:
        """Enter one step in the books."""
        entry = steady.entry
        if entry is _IN_THE_POT:
            return self._in_the_pot(steady)
        if entry is _NO_ENTRY:
            return _NONE
        if entry is _GIVES:
            return self._given(steady)
        if entry is _DRAINS:
            return self._drained(steady.step.fate or Fate.AWAY)
        into_heaters = HEATER_WATER.value * self.heaters
        self.in_heaters += into_heaters
        return StepWater(heater_ml=into_heaters)

    def _given(self, steady: Steady) -> StepWater:
        step, (dry, offered, _, _, left_over_of) = steady.step, self.waters
        fresh = drained = 0.0
        for index in steady.wets:
            fresh += offered[index]
            left_over = left_over_of[index]
            if left_over:
                drained += left_over
                self.soaking[index] = left_over
        if not steady.wets and step.given_ml is not None:  # more water for what was wetted before: it stays in
            fresh = poured_ml(step.given_ml * self.scale)
        self.in_food += fresh - drained
        vessels = vessels_of(fresh + sum([dry[index] for index in step.parts]), steady.bowl_ml)
        later = (fresh - drained) * steady.heats_food + drained * steady.heats_drained
        return StepWater(fresh_ml=fresh, heated_ml=fresh if steady.hot else later, vessels=vessels)

    def _drained(self, fate: Fate) -> StepWater:
        """Pour off what lies around soaked parts, or else what is in the pot that was used last."""
        amount = sum(self.soaking.values())
        self.soaking.clear()
        if not amount:
            amount = self.pots.pop(self.last_pot, 0.0)
            self.pot_of = {part: pot for part, pot in self.pot_of.items() if pot != self.last_pot}
        if fate is Fate.INTO_THE_POT:
            self.to_pot += amount
        elif fate is Fate.DRUNK:
            self.drunk += amount
        else:
            self.away += amount
        return StepWater(drained_ml=amount)

    def _in_the_pot(self, steady: Steady) -> StepWater:
        pot = self.last_pot = steady.step.pot
        drained = self._from_drain(steady)
        standing = self.pots.get(pot, 0.0)
        before = standing + drained
        self.pot_of.update(dict.fromkeys(steady.step.parts, pot))
        rounds, wanted = self._wanted(steady, before)
        fresh = poured_ml(max(0.0, wanted - before) / rounds) * rounds if wanted is not None else 0.0
        free = self._taken_up(steady, before + fresh)
        boiled = min(free, steady.boil_off_ml * rounds)
        self.boiled_off += boiled
        self.pots[pot] = free - boiled
        return StepWater(fresh, drained, standing, 0.0, 0.0, fresh, boiled, rounds)

    def _from_drain(self, steady: Steady) -> float:
        """Give what lies around the step's parts, and what was drained for the pot; that is never a dry pan."""
        soaked = sum([self.soaking.pop(index, 0.0) for index in steady.step.parts]) if self.soaking else 0.0
        drained = 0.0
        if not steady.dry_heat:
            drained, self.to_pot = self.to_pot, 0.0
        return soaked + drained

    def _wanted(self, steady: Steady, before: float) -> tuple[int, float | None]:
        """Give rounds and the water a pot starts with: it grows with servings, but for what boils off."""
        pot_ml, per_round = steady.step.pot_ml, steady.boil_off_ml
        if pot_ml is None:
            return self._rounds(steady, before), None
        kept = max(0.0, pot_ml - per_round) * self.scale
        rounds = self._rounds(steady, max(before, kept + per_round))
        return rounds, kept + min(per_round, pot_ml) * rounds

    def _rounds(self, steady: Steady, water_ml: float) -> int:
        """Give the rounds that a pot takes for its water, and for its food with the water that it took up so far."""
        if steady.room_ml is None:
            return 1
        dry, absorbed, here = self.waters.dry_g, self.absorbed, steady.step.pot
        food_ml = sum([dry[index] + (absorbed[index] or 0.0) for index, pot in self.pot_of.items() if pot == here])
        return rounds_of(steady.room_ml, food_ml, water_ml)

    def _taken_up(self, steady: Steady, free: float) -> float:
        """Let the parts take up what they want of the water that stands free in their pot; give what is left of it."""
        for index, must_have_it in steady.takes_up:
            wanted = self.waters.wanted_ml[index] or 0.0
            taken = min(wanted, free)
            if must_have_it and taken < wanted:
                self.short.append(index)
            self.absorbed[index] = taken
            self.in_food += taken
            free -= taken
        return free


def warmth_of(plan: DishPlan, step: PlannedStep, part: int) -> Warmth:
    """Give how warm the water is that a step or else the component asks for a part."""
    water = plan.parts[part].component.water
    if step.verb is Verb.POUR_OVER:
        return Warmth.BOILING
    return step.warmth or (water.warmth if water is not None else Warmth.COLD)


def bowl_warmth(plan: DishPlan, step: PlannedStep) -> Warmth:
    """Give how warm the water of a step is: parts that lie in one bowl get the warmest that one of them asks for."""
    wetted = plan.wetted_by(step) or step.parts
    return max({warmth_of(plan, step, index) for index in wetted}, key=_WARMER.index, default=Warmth.COLD)
