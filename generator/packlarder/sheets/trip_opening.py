"""The openings of a trip's booklet: each dish for those who eat it, where they eat it, with its times of day."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from packlarder.book.household import Household
from packlarder.measure import in_celsius, in_fahrenheit, in_feet, in_metres
from packlarder.reckon.records import PlannedPack, PlannedStep
from packlarder.reckon.trip.journey import MealClock
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.field import field_opening
from packlarder.sheets.field_sheet import FieldMeal, FieldOpening, FieldPack
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import volume, weight
from packlarder.sheets.trip_dish import (
    at_its_stop,
    bought_besides,
    check_meal,
    clock_of,
    mark,
    moments,
    one_for_each,
    opening_id,
    tub_of,
)
from packlarder.sheets.trip_names import WEEKDAYS, clock, day_called, portions_called, short_date, stop_called
from packlarder.sheets.words import lowered, opened


def trip_opening(group: Sequence[TripMeal], trip: TripSums, household: Household, system: System) -> FieldOpening:
    """Give the opening that serves some meals of a trip, which are alike in all but day and place."""
    return _Opener(group, trip, household, system).opening()


def meal_day(meal: TripMeal, trip: TripSums) -> str:
    """Name the day of a meal: `Day 2, Sunday 27 June`; what is in reserve has no date."""
    day = day_called(trip, meal.day)
    return day if meal.spare else trip_words.DAY_AND_DATE.format(day=day, date=short_date(meal.on))


def portions_told(portions: float) -> str:
    """Say for how many portions: `3.8 portions`."""
    phrase = trip_words.PORTION if portions == 1 else trip_words.PORTIONS
    return phrase.format(count=portions_called(portions))


def eaters_told(meal: TripMeal, trip: TripSums) -> str:
    """Say how many portions there are, and for whom, with the share of those who eat more or less than one."""
    shares = {one.name: one.portion for one in trip.eaters}
    names = [
        name if shares[name] == 1 else trip_words.SHARE.format(name=name, share=portions_called(shares[name]))
        for name in meal.eaters
    ]
    return trip_words.EATERS.format(portions=portions_told(meal.portions), names=words.COMMA.join(names))


def bought_told(pack: TripPack, trip: TripSums) -> str:
    """Say what of a dish is bought on the way, and where: `butter, bought at the harbour`."""
    holds = words.COMMA.join(lowered(item.called) for item in pack.items)
    return trip_words.BOUGHT_AT.format(holds=holds, place=stop_called(trip, pack.bought_at))


class _Opener:
    """Sets one opening; with a single meal its packs are called by their marks, else by their numbers."""

    def __init__(self, group: Sequence[TripMeal], trip: TripSums, household: Household, system: System) -> None:
        self.group = group
        self.first = group[0]
        self.trip = trip
        self.household = household
        self.system = system
        self.single = len(group) == 1
        self.dish: DishSeries = at_its_stop(self.first, trip, household, marked=self.single)
        self.clocks = [clock_of(meal, trip) for meal in group]

    def opening(self) -> FieldOpening:
        """Take the opening as the field booklet has it, and add what only a trip knows."""
        findings = check_meal(self.first, self.dish.household, marked=self.single)
        plain = field_opening(self.dish, dish_sheet(self.dish, findings), findings, self.system)
        soaking = self._soaking()
        return replace(
            plain,
            id=opening_id(self.group),
            heading=self._heading(),
            packs=tuple(self._packs(plain.packs)),
            steps=tuple(replace(step, at=at) for step, at in zip(plain.steps, self._moments(), strict=True)),
            conditions=self._conditions(plain.conditions),
            for_whom=eaters_told(self.first, self.trip),
            meals=tuple(self._meal(meal, known, soaking) for meal, known in zip(self.group, self.clocks, strict=True)),
            soaks=tuple(trip_words.WATER_ON.format(what=self._wetted(step)) for step in soaking),
            notes=tuple(self._stand_ins()),
        )

    def _heading(self) -> str:
        if self.single:
            return trip_words.MEAL_OF_DAY.format(day=meal_day(self.first, self.trip), meal=self.first.meal.value)
        kinds = dict.fromkeys(meal.meal.value for meal in self.group)
        return trip_words.COOKED_AGAIN.format(meal=words.COMMA.join(kinds), count=len(self.group))

    def _meal(self, meal: TripMeal, known: MealClock | None, soaking: Sequence[PlannedStep]) -> FieldMeal:
        soaks = {} if known is None else {soak.step: clock(soak.at, meal.on) for soak in known.soaks}
        after = None if known is None or known.after is None else self.trip.by_number[known.after]
        return FieldMeal(
            called=meal_day(meal, self.trip) if self.single else self._weekday(meal),
            where="" if meal.stop is None else opened(stop_called(self.trip, meal.stop)),
            begins="" if known is None else clock(known.start_at, meal.on),
            soaks=tuple(soaks.get(step.index, "") for step in soaking),
            ready=clock(known.ready_at, meal.on) if known is not None and known.waits_min > 0 else "",
            eaten=clock(meal.eat_at if known is None else known.eat_at, meal.on),
            note="" if after is None else trip_words.AFTER.format(dish=lowered(after.plan.model.name)),
        )

    def _weekday(self, meal: TripMeal) -> str:
        """Name the day of a meal in short, beside those of others."""
        day = day_called(self.trip, meal.day)
        return day if meal.spare else trip_words.DAY_AND_DATE.format(day=day, date=WEEKDAYS[meal.on.weekday()])

    def _soaking(self) -> list[PlannedStep]:
        """Give the steps of which some meal says when their water goes in."""
        told = {soak.step for known in self.clocks if known is not None for soak in known.soaks}
        return [step for step in self.dish.plan.steps if step.index in told]

    def _wetted(self, step: PlannedStep) -> str:
        """Name what gets the water of a step: the packs that it lies in, and what comes from a tub."""
        packs = [one for outer in self.dish.plan.packs for one in (outer, *outer.inside)]
        named = [self._holder(index, packs) for index in step.parts]
        return words.COMMA.join(dict.fromkeys(named))

    def _holder(self, index: int, packs: Sequence[PlannedPack]) -> str:
        number = next((pack.number for pack in packs if index in pack.parts), "")
        return number or self.dish.names[index]

    def _moments(self) -> Iterator[str]:
        """Give the time of day of each step where all meals have the same, else "" for each."""
        each = [tuple(None if at is None else (at.hour, at.minute) for at in moments(m, self.trip)) for m in self.group]
        alike = len(set(each)) == 1
        for at in moments(self.first, self.trip):
            yield clock(at, at.date()) if alike and at is not None else ""

    def _packs(self, packs: Sequence[FieldPack]) -> Iterator[FieldPack]:
        """Give the packs with the marks that they bear, tubs too; what is bought on the way stands apart."""
        loose = iter(self.dish.plan.loose)
        known = {pack.mark: pack for pack in self.trip.packs}
        for pack in packs:
            if not pack.number:
                yield self._tub(pack, self.dish.plan.parts[next(loose)].component.id)
            elif self.single:
                own = one_for_each(self.first, pack.number.partition(".")[2], self.trip)
                yield from self._of_each(pack, own) if own else self._with_bought(pack, known.get(pack.number))
            else:
                yield replace(pack, marks=tuple(self._marks(meal, pack.number) for meal in self.group))

    def _tub(self, pack: FieldPack, component: str) -> FieldPack:
        tub = tub_of(self.first, component, self.trip)
        return pack if tub is None else replace(pack, number=tub.mark, holds=self._where_bought(pack.holds, tub))

    def _of_each(self, pack: FieldPack, own: Sequence[TripPack]) -> Iterator[FieldPack]:
        """Give the pack of each eater, with their water."""
        for one in own:
            phrase = trip_words.FOR_ONE_WITH if one.water_ml else trip_words.FOR_ONE
            holds = phrase.format(holds=_names(one), name=one.for_, water=volume(one.water_ml, self.system))
            yield replace(pack, number=one.mark, holds=holds, weight=weight(one.grams, self.system))

    def _marks(self, meal: TripMeal, number: str) -> str:
        """Give the mark that a pack bears for a meal: where each eater has one, the first and the last."""
        own = one_for_each(meal, number, self.trip)
        if len(own) < 2:
            return mark(meal, number)
        return trip_words.MARKS_OF_EACH.format(first=own[0].mark, last=own[-1].mark)

    def _with_bought(self, pack: FieldPack, known: TripPack | None) -> Iterator[FieldPack]:
        """Give a pack as it comes from home, then what is bought for it on the way."""
        if known is None:
            yield pack
            return
        besides = bought_besides(known.mark, self.trip)
        if besides:
            yield replace(pack, holds=_names(known), weight=weight(known.grams, self.system))
        else:
            yield replace(pack, holds=self._where_bought(pack.holds, known))
        for one in besides:
            yield FieldPack(
                number=one.mark,
                holds=self._where_bought(_names(one), one),
                weight=weight(one.grams, self.system),
                raw=one.raw,
                sachet=one.sachet,
            )

    def _where_bought(self, holds: str, pack: TripPack) -> str:
        if pack.bought_at is None:
            return holds
        return trip_words.BOUGHT_AT.format(holds=holds, place=stop_called(self.trip, pack.bought_at))

    def _conditions(self, stove: str) -> str:
        there = self.first.sums.conditions
        phrase = trip_words.AT_PLACE if stove else trip_words.AT_PLACE_ALONE
        us = self.system is System.US
        degrees = in_fahrenheit if us else in_celsius
        return phrase.format(
            conditions=stove,
            height=in_feet(there.height_m) if us else in_metres(there.height_m),
            air=degrees(there.air_c),
            water=degrees(there.water_c),
        )

    def _stand_ins(self) -> Iterator[str]:
        for index, component in self.first.instead.items():
            part = self.first.plan.model.parts[index].name
            if component.model.name.casefold() != part.casefold():
                yield trip_words.STANDS_IN.format(other=component.model.name, part=lowered(part))


def _names(pack: TripPack) -> str:
    return words.COMMA.join(item.called for item in pack.items)
