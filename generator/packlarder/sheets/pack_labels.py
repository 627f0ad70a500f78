"""The labels of the packs of a dish: when each is opened, its water, its minutes, and what is in it."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from packlarder.book.step import Verb
from packlarder.faults import Place
from packlarder.figures.hands import DRY_FOOD_ROOM
from packlarder.figures.kinds import Cooking
from packlarder.measure import NEAREST, UP, as_typed, in_celsius, in_fluid_ounces, rounded
from packlarder.reckon.ledger import GIVES_WATER, bowl_warmth
from packlarder.reckon.records import ComponentSums, PlannedPack, PlannedStep, StepSums
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.dish import raw_done
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet, PackRow
from packlarder.sheets.label_sheet import TripPackLabel
from packlarder.sheets.printed import System, plain
from packlarder.sheets.series import minutes_up, whole_ml

ROUND_ML = 10
IN_ITS_PACK = frozenset({Verb.SOAK, Verb.MIX, Verb.MOISTEN, Verb.POUR_OVER})
"""Verbs whose water can be given in the pack itself, where a line on it can show how high it stands."""


def pack_labels(dish: DishSeries, sheet: DishSheet, system: System, place: Place) -> tuple[TripPackLabel, ...]:
    """Build the labels of a dish's packs for its usual servings, those inside others too, in the order of opening."""
    return tuple(PackSetter(dish, sheet, system, place).labels())


class PackSetter:
    """Sets the packs of one dish for one number of servings in one system of units."""

    def __init__(self, dish: DishSeries, sheet: DishSheet, system: System, place: Place) -> None:
        """Take the dish, its sheet, and the file that faults of its labels are told of."""
        self.dish = dish
        self.sheet = sheet
        self.system = system
        self.file = place.file
        self.sums = dish.sums[dish.usual]

    def labels(self) -> Iterator[TripPackLabel]:
        """Give a label for each pack that has a number."""
        rows = {row.number: row for row in self.sheet.packs}
        for pack in self.dish.plan.packs:
            row = rows[pack.number]
            yield self._label(pack, row, self.numbered(pack))
            for inner, inner_row in zip(pack.inside, row.inside, strict=True):
                yield self._label(inner, inner_row, self.numbered_inside(inner, pack))

    def numbered(self, pack: PlannedPack) -> str:
        """Say which pack it is, of how many."""
        return words.PACK_NUMBER.format(nth=pack.number, count=len(self.dish.plan.packs))

    def numbered_inside(self, inner: PlannedPack, outer: PlannedPack) -> str:
        """Say which pack it is, and inside which."""
        return words.INSIDE.format(nth=inner.number, outer=outer.number)

    def opened_at(self, step: PlannedStep) -> str:
        """Say when a pack is opened for a step: against the clock."""
        return words.OPENED_AT.format(clock=self.sheet.steps[step.index].clock.text(self.system, self.dish.usual))

    def held(self, pack: PlannedPack) -> Sequence[ComponentSums]:
        """Give what is in a pack, in packs inside it too."""
        return [self.dish.plan.parts[index].component for index in pack.all_parts]

    def framed(self, label: TripPackLabel, pack: PlannedPack) -> TripPackLabel:  # noqa: ARG002 - a trip needs it
        """Say of a label what only a trip knows."""
        return label

    def _label(self, pack: PlannedPack, row: PackRow, number: str) -> TripPackLabel:
        step = self._first_step(pack)
        held = self.held(pack)
        label = TripPackLabel(
            file=self.file,
            dish=self.sheet.name,
            servings=words.SERVINGS.format(count=self.sums.servings),
            when="",
            number=number,
            order="" if step is None else self.opened_at(step),
            holds=tuple(self._holds(row)),
            net=row.weight.text(self.system, self.dish.usual),
            raw=row.raw,
            take_out=common.SACHET if row.sachet else "",
            water="" if step is None else self._water(pack, step),
            minutes="" if step is None else self._minutes(step),
            done=self._done(pack, step),
            fill_mark="" if step is None else self._fill_mark(pack, step),
            contains=contained(held),
            may_contain=traced(held),
            caution=words.RAW_PACK if row.raw else "",
            code_text="",
        )
        framed = self.framed(label, pack)
        return replace(framed, code_text=code_text(framed))

    def _first_step(self, pack: PlannedPack) -> PlannedStep | None:
        """Give the first step that wets or cooks something from a pack, else the first that names it."""
        named = [step for step in self.dish.plan.steps if set(step.parts) & set(pack.all_parts)]
        wets = [step for step in named if step.verb in GIVES_WATER or self._sums(step).water_ml > 0]
        return next(iter(wets or named), None)

    def _sums(self, step: PlannedStep) -> StepSums:
        return self.sums.steps[step.index]

    def _holds(self, row: PackRow) -> Iterator[str]:
        for item in row.items:
            yield words.PART.format(weight=item.weight.text(self.system, self.dish.usual), name=item.name.lower())
        for inner in row.inside:
            yield words.PACK_INSIDE.format(nth=inner.number)

    def _water(self, pack: PlannedPack, step: PlannedStep) -> str:
        """Say how much of which water goes in; where several packs share it, with which."""
        water_ml = self._sums(step).water_ml
        if water_ml <= 0:
            return ""
        water = self._poured(step, water_ml)
        sharing = [one for one in self.dish.plan.packs if set(one.all_parts) & set(step.parts)]
        others = [one.number for one in sharing if pack not in (one, *one.inside)]
        return words.TOGETHER.format(water=water, others=common.COMMA.join(others)) if others else water

    def _poured(self, step: PlannedStep, water_ml: float) -> str:
        phrase = words.PACK_WATER if step.verb in GIVES_WATER else words.POT_WATER
        return phrase.format(water=self._volume(water_ml), warmth=bowl_warmth(self.dish.plan, step).value)

    def _minutes(self, step: PlannedStep) -> str:
        sums = self._sums(step)
        minutes = sums.wait_min if step.verb in GIVES_WATER else sums.cook_min / max(1, sums.rounds)
        told = minutes_up(minutes) if minutes > 0 else ""
        return words.EACH_ROUND.format(minutes=told, rounds=sums.rounds) if told and sums.rounds > 1 else told

    def _done(self, pack: PlannedPack, step: PlannedStep | None) -> str:
        """Say how to tell: of RAW its sign and how hot inside, of what is cooked to be edible the dish's own sign."""
        parts = [self.dish.plan.parts[index] for index in pack.all_parts]
        raw = [part for part in parts if part.component.raw]
        if raw:
            return plain(raw_done(self.dish, raw), self.system, self.dish.usual)
        if any(part.component.uncooked for part in parts):
            return self.sheet.done_when
        if step is None:
            return ""
        to = "" if step.to_c is None else words.INSIDE_TO.format(degrees=in_celsius(step.to_c))
        return common.COMMA.join(filter(None, (step.until, to)))

    def _fill_mark(self, pack: PlannedPack, step: PlannedStep) -> str:
        """Say how high water and food stand together in a pack that gets all the water of a step."""
        alone = set(step.parts) <= set(pack.all_parts)
        if step.verb not in IN_ITS_PACK or not alone:
            return ""
        dry_g = sum(self.sums.parts[index].dry_g for index in step.parts)
        return self._filled_to(self._sums(step).water_ml, dry_g)

    def _filled_to(self, water_ml: float, dry_g: float) -> str:
        in_all_ml = water_ml + dry_g * DRY_FOOD_ROOM.value
        return words.FILL_MARK.format(water=self._volume(rounded(in_all_ml, ROUND_ML, NEAREST)))

    def _volume(self, water_ml: float) -> str:
        return whole_ml(water_ml) if self.system is System.METRIC else in_fluid_ounces(water_ml, UP)


def contained(components: Iterable[ComponentSums]) -> str:
    """Name the allergens of some components."""
    return common.COMMA.join(sorted({one.value for component in components for one in component.allergens}))


def traced(components: Iterable[ComponentSums]) -> str:
    """Name what some components may hold traces of and do not hold anyway."""
    held = tuple(components)
    contains = {one for component in held for one in component.allergens}
    return common.COMMA.join(sorted({one.value for component in held for one in component.traces - contains}))


def code_text(label: TripPackLabel) -> str:
    """Write what a QR code says in plain text: what matters most to a cook first, a line each."""
    told = (
        common.COMMA.join(filter(None, (label.dish, label.servings, label.number))),
        label.when,
        common.STATES[Cooking.TO_BE_SAFE.value] if label.raw else "",
        *(one.name for one in label.not_for),
        label.take_out,
        common.COMMA.join(filter(None, (label.water, label.minutes))),
        label.done,
        common.COMMA.join(label.holds),
        words.CONTAINS.format(allergens=label.contains) if label.contains else "",
        words.MAY_CONTAIN.format(allergens=label.may_contain) if label.may_contain else "",
        label.caution,
    )
    return as_typed("\n".join(line for line in told if line))
