"""Following the food: each part of a dish from its pack to the plate, through the steps.

What is followed: whether a part is wetted right through, whether a heat that cooks has reached it while it was wet, and
what raw food has touched. Only verbs count: a plain sentence neither wets nor cooks.

A step heats what it names, what was mixed into that, and what already lies in its pot if it names some of it. So a part
that is stirred into the pot is cooked by the next boil only if that boil names it, or something that lay in the pot
with it. Where the steps leave it open, a part counts as not cooked.
"""

from dataclasses import dataclass, field

from packlarder.book.step import Fate, Step, Verb
from packlarder.figures.kinds import Cooking, Group, Kind
from packlarder.figures.temperatures import Authority
from packlarder.figures.verbs import VERBS, Heats, VerbFigures, Wets
from packlarder.reckon.records import ComponentSums, DishPlan, PlannedPart, PlannedStep
from packlarder.safety.heat import groups_of, raw_kinds, temperature_of
from packlarder.safety.journey import Journey, RawWater, Trail, Why
from packlarder.safety.limits import MEASURED_SHARE, PIECES_LEAST

WET_ABOVE = 0.25
"""A food that holds more water than this needs none before it is heated: it is not dry."""


def follow(plan: DishPlan, authority: Authority) -> Trail:
    """Follow every part of a dish through its steps; `authority` is whose cooking temperatures count."""
    parts = [_Part.of(part) for part in plan.parts]
    walk = _Walk(plan=plan, authority=authority, parts=parts, germs=any(part.raw for part in parts))
    for step in plan.steps:
        if step.verb is not None:
            walk.take(step, step.verb)
    return walk.trail()


def wet_from_the_start(sums: ComponentSums) -> bool:
    """Tell whether a component is not dry at all: fresh, or carried with its own water."""
    water = None if sums.yielded is None else sums.yielded.dry_water
    return water is not None and water > WET_ABOVE


@dataclass(slots=True, kw_only=True)
class _Part:
    """A part on its way.

    `uncooked` says that it must be cooked, to be safe or to be edible: then heat counts only once it is wet.
    `unsafe_by` is the raw part whose germs it carries: itself, another, or None.
    """

    raw: bool
    uncooked: bool
    wet: bool
    unsafe_by: int | None = None
    touched_at: int | None = None
    wet_at: int | None = None
    cooked_at: int | None = None
    last: int | None = None
    why: Why = Why.NOT_HEATED
    why_at: int | None = None

    @classmethod
    def of(cls, part: PlannedPart) -> "_Part":
        component, raw = part.component, part.component.raw
        return cls(
            raw=raw,
            uncooked=component.must_be_cooked is not Cooking.NO,
            wet=wet_from_the_start(component),
            unsafe_by=part.index if raw else None,
        )

    def missed(self, why: Why, at: int) -> None:
        """Note why it is not cooked, unless a more telling reason stands already."""
        if _RANK[why] <= _RANK[self.why]:
            self.why, self.why_at = why, at


_RANK = {why: rank for rank, why in enumerate(Why)}


@dataclass(slots=True, kw_only=True)
class _Pot:
    """A pot or pan on its way: what lies in it, whether it holds water, and the raw water that it must still boil."""

    holds: set[int] = field(default_factory=set)
    water: bool = False
    raw_water: RawWater | None = None


@dataclass(slots=True, kw_only=True)
class _Walk:
    """All food on its way; `germs` says that some of it came raw."""

    plan: DishPlan
    authority: Authority
    parts: list[_Part]
    germs: bool
    pots: dict[str, _Pot] = field(default_factory=dict)
    mixed: dict[int, set[int]] = field(default_factory=dict)
    bowl: tuple[int, ...] = ()
    soaking: set[int] = field(default_factory=set)
    last_pot: _Pot | None = None
    bowl_open: bool = False
    bad_waters: list[RawWater] = field(default_factory=list)

    def take(self, step: PlannedStep, verb: Verb) -> None:
        """Follow one step."""
        does = VERBS[verb]
        for index in step.parts:
            self.parts[index].last = step.index
        if does.on_stove or verb is Verb.STIR_IN:
            self.soaking.difference_update(step.parts)
        if verb is Verb.DRAIN:
            self.drain(step)
        elif verb is Verb.STIR_IN:
            self.stir_in(step)
        elif does.on_stove and not step.heater:
            self.heat(step, does)
        elif step.parts:
            self.wet(step, verb, does)

    def wet(self, step: PlannedStep, verb: Verb, does: VerbFigures) -> None:
        """Wet the parts of a step in a bowl or pack, or warm them on a heater."""
        together = self.with_mixed(step.parts)
        if does.wets is Wets.YES:
            self.wetted(step.parts, step.index)
            self.bowl = step.parts
        if verb is Verb.SOAK:
            self.soaking.update(step.parts)
        elif verb is Verb.MIX:
            self.join(together)
            self.bowl_open = True
        self.touch(together, step.index)
        why = Why.ON_HEATER if step.heater else Why.STEEPED if does.heats is Heats.WARMS else Why.NOT_HEATED
        for index in together:
            self.parts[index].missed(why, step.index)

    def stir_in(self, step: PlannedStep) -> None:
        """Add parts to what is in the pot, or to what was mixed last."""
        pot = self.pot_of(step)
        if pot is None or (self.bowl_open and self.mixed.keys().isdisjoint(step.parts)):
            together = self.with_mixed((*step.parts, *self.bowl))
            self.join(together)
        else:
            pot.holds.update(step.parts)
            together = set(pot.holds)
            if pot.water:
                self.wetted(step.parts, step.index)
        self.touch(together, step.index)
        late = any(part.cooked_at is not None for part in self.parts)
        for index in step.parts:
            self.parts[index].missed(Why.STIRRED_IN_LATE if late else Why.NOT_HEATED, step.index)

    def heat(self, step: PlannedStep, does: VerbFigures) -> None:
        """Heat parts in a pot or pan."""
        pot = self.pots.setdefault(step.pot, _Pot())
        named = self.with_mixed(step.parts)
        pot.holds = named | pot.holds if named & pot.holds else named
        if does.wets is Wets.IN_THE_POT:
            pot.water = True
            self.wetted(tuple(pot.holds), step.index)
        elif does.dry_heat:
            pot.water = False
        self.last_pot, self.bowl_open = pot, False
        if does.cooks:
            self.cook(pot, step, does)
        else:
            for index in pot.holds:
                self.parts[index].missed(Why.NOT_HEATED, step.index)
        self.touch(pot.holds, step.index)

    def cook(self, pot: _Pot, step: PlannedStep, does: VerbFigures) -> None:
        """Make safe what lies in a pot, each part if the heat is enough for it."""
        for index in pot.holds:
            part = self.parts[index]
            why = self.not_cooked(index, step, does)
            if why is None:
                part.cooked_at, part.unsafe_by, part.touched_at = step.index, None, None
            else:
                part.missed(why, step.index)
        if does.wets is Wets.IN_THE_POT and not _too_short(step, does, frozenset()):
            pot.raw_water = None

    def not_cooked(self, index: int, step: PlannedStep, does: VerbFigures) -> Why | None:
        """Say why a cooking step does not cook a part; None if it does."""
        if self.parts[index].uncooked and not self.parts[index].wet:
            return Why.HEATED_DRY
        if _too_short(step, does, raw_kinds(self.plan.parts[index].component)):
            return Why.TOO_SHORT
        needed = None if step.to_c is None else self.needed_c(index)
        return Why.TOO_COOL if needed is not None and (step.to_c or 0.0) < needed - _ROUNDED_BY else None

    def drain(self, step: PlannedStep) -> None:
        """Pour off the water of the step that gave it, with what raw food left in it."""
        pot = self.pots.setdefault(step.pot, _Pot())
        if step.fate is Fate.INTO_THE_POT:
            pot.water = True
            self.last_pot = self.last_pot or pot
        source = self.soaking or (self.last_pot.holds if self.last_pot else set())
        raw = self.germs_in(source)
        self.soaking = set()
        if raw is None or step.fate is None:
            return
        water = RawWater(step=step.index, part=raw, fate=step.fate)
        if step.fate is Fate.DRUNK:
            self.bad_waters.append(water)
        elif step.fate is Fate.INTO_THE_POT:
            pot.raw_water = water
            self.touch(pot.holds, step.index, raw)

    def pot_of(self, step: PlannedStep) -> _Pot | None:
        """Give the pot that a step adds to: the one it names, otherwise the one used last."""
        written = self.plan.model.steps[step.index]
        names_one = isinstance(written, Step) and written.pot
        return self.pots.get(step.pot) if names_one else self.last_pot

    def needed_c(self, index: int) -> float | None:
        """Give how hot a part must get for the germs it carries; None if it carries none, or no figure is published."""
        germs_of = self.parts[index].unsafe_by
        asked = None if germs_of is None else temperature_of(self.plan.parts[germs_of].component, self.authority)
        return None if asked is None else asked.temp_c

    def wetted(self, parts: tuple[int, ...], step: int) -> None:
        """Note that parts are wetted right through."""
        for index in parts:
            part = self.parts[index]
            part.wet = True
            if part.wet_at is None:
                part.wet_at = step

    def touch(self, together: set[int], step: int, raw: int | None = None) -> None:
        """Spread the germs of raw food to all that lies together with it."""
        if not self.germs:
            return
        if raw is None:
            raw = self.germs_in(together)
        if raw is None:
            return
        for index in together:
            part = self.parts[index]
            if part.unsafe_by is None:
                part.unsafe_by, part.touched_at = raw, step

    def germs_in(self, together: set[int]) -> int | None:
        """Give the raw part whose germs are in food that lies together; the first of several, None if there is none."""
        return min((by for index in together if (by := self.parts[index].unsafe_by) is not None), default=None)

    def join(self, together: set[int]) -> None:
        """Note that parts are one mass from here on."""
        for index in together:
            self.mixed[index] = together

    def with_mixed(self, parts: tuple[int, ...]) -> set[int]:
        """Give parts with all that was mixed into them."""
        if not self.mixed:
            return set(parts)
        return {one for index in parts for one in self.mixed.get(index, (index,))}

    def trail(self) -> Trail:
        """Give what was found, once all steps are followed."""
        left = [pot.raw_water for pot in self.pots.values() if pot.raw_water is not None]
        return Trail(
            journeys=tuple(_journey(index, part) for index, part in enumerate(self.parts)),
            bad_waters=(*self.bad_waters, *left),
        )


_IN_PIECES = frozenset({Group.MEAT, Group.FISH})
_ROUNDED_BY = 0.6
"""Half a degree Fahrenheit and half a degree Celsius: authorities round 145 °F to 62.8 or to 63 °C."""


def least_minutes(step: PlannedStep, does: VerbFigures, raw: frozenset[Kind]) -> float:
    """Give the shortest time that a cooking step is believed for raw food of some kinds; none for water alone.

    Meat and fish come in pieces that heat must get into. Who measures the temperature may be quicker.
    """
    least = 0.0 if does.least is None else does.least.value
    if not _IN_PIECES.isdisjoint(groups_of(raw)):
        least = max(least, PIECES_LEAST.value)
    return least if step.to_c is None else least * MEASURED_SHARE.value


def _too_short(step: PlannedStep, does: VerbFigures, raw: frozenset[Kind]) -> bool:
    return step.minutes is not None and step.minutes < least_minutes(step, does, raw)


def _journey(index: int, part: _Part) -> Journey:
    if part.unsafe_by is None:
        return Journey(part.wet_at, part.cooked_at, part.last)
    uncooked = part.raw and part.unsafe_by == index and part.touched_at is None
    return Journey(
        wet_at=part.wet_at,
        cooked_at=part.cooked_at,
        last=part.last,
        why=part.why if uncooked else None,
        why_at=part.why_at if uncooked else None,
        touched_by=None if uncooked else part.unsafe_by,
        touched_at=None if uncooked else part.touched_at,
    )
