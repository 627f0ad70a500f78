"""The openings of a trip's booklet: each dish for those who eat it, where they eat it, with its times of day."""

from collections.abc import Sequence
from dataclasses import replace

from packlarder.book.household import Household
from packlarder.measure import in_celsius, in_fahrenheit, in_feet, in_metres
from packlarder.reckon.records import PlannedStep
from packlarder.reckon.trip.journey import MealClock
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.field import field_opening
from packlarder.sheets.field_sheet import FieldMeal, FieldOpening
from packlarder.sheets.printed import System
from packlarder.sheets.trip_dish import at_its_stop, check_meals, opening_id
from packlarder.sheets.trip_field_clock import clock_of, first_move, step_moments
from packlarder.sheets.trip_field_figures import trip_figures
from packlarder.sheets.trip_field_packs import marks_of, trip_field_packs, wetted
from packlarder.sheets.trip_field_people import components_of, not_for
from packlarder.sheets.trip_field_shares import shares_told
from packlarder.sheets.trip_field_steps import trip_steps
from packlarder.sheets.trip_names import (
    WEEKDAYS,
    clock,
    day_called,
    portions_called,
    portions_counted,
    sharing,
    short_date,
    stand_ins,
    stop_called,
)
from packlarder.sheets.words import ended, opened

MOST_ON_A_PAGE = 4
"""Meals of a short dish whose times one page holds."""


def trip_opening(group: Sequence[TripMeal], trip: TripSums, household: Household, system: System) -> FieldOpening:
    """Give the opening that serves some meals of a trip, which are alike in all but day and place."""
    return _Opener(group, trip, household, system).opening()


def meal_day(meal: TripMeal, trip: TripSums) -> str:
    """Name the day of a meal: `Day 2, Sunday 27 June`; what is in reserve has no date."""
    day = day_called(trip, meal.day)
    return day if meal.spare else trip_words.DAY_AND_DATE.format(day=day, date=short_date(meal.on))


def eaters_told(meal: TripMeal, trip: TripSums) -> str:
    """Say how many portions there are, and for whom, with the share of those who eat more or less than one."""
    shares = {one.name: one.portion for one in trip.eaters}
    names = [
        name if shares[name] == 1 else trip_words.SHARE.format(name=name, share=portions_counted(shares[name]))
        for name in meal.eaters
    ]
    return trip_words.EATERS.format(portions=portions_called(meal.portions), names=words.COMMA.join(names))


class _Opener:
    """Sets one opening; with several meals the marks of all their packs stand in it."""

    def __init__(self, group: Sequence[TripMeal], trip: TripSums, household: Household, system: System) -> None:
        self.group = group
        self.first = group[0]
        self.trip = trip
        self.system = system
        self.single = len(group) == 1
        self.dish = at_its_stop(group, trip, household)
        self.soaking = self._soaking()

    def opening(self) -> FieldOpening:
        """Take the opening as the field booklet has it, and add what only a trip knows."""
        findings = check_meals(self.group, self.dish.household)
        plain = field_opening(self.dish, dish_sheet(self.dish, findings), findings, self.system)
        moments = step_moments(self.first, self.trip) if self.single else None
        return replace(
            plain,
            id=opening_id(self.group),
            heading=self._heading(),
            packs=tuple(trip_field_packs(self.group, self.trip, self.dish, plain.packs, self.system)),
            figures=() if self.short else trip_figures(self.dish, plain.figures, moments, self.system),
            steps=trip_steps(self.group, self.trip, self.dish, plain.steps, self.system),
            conditions=self._conditions(plain.conditions),
            for_whom=eaters_told(self.first, self.trip),
            meals=tuple(self._meal(meal) for meal in self.group),
            soaks=tuple(self._poured_on(step) for step in self.soaking),
            not_for=not_for(components_of(self.first), self.trip),
            shares=shares_told(self.first, self.trip, self.system),
            short=self.short,
            notes=tuple(ended(opened(note)) for note in stand_ins(self.first)),
        )

    @property
    def short(self) -> bool:
        """Tell whether one page is enough: a single step that says its own water, for a few meals."""
        (step, *more) = self.first.plan.steps
        raw = any(part.component.raw for part in self.first.plan.parts)
        return not (more or step.heater or raw) and len(self.group) <= MOST_ON_A_PAGE

    def _heading(self) -> str:
        if self.single:
            return trip_words.MEAL_OF_DAY.format(day=meal_day(self.first, self.trip), meal=self.first.meal.value)
        kinds = dict.fromkeys(meal.meal.value for meal in self.group)
        return trip_words.COOKED_AGAIN.format(meal=words.COMMA.join(kinds), count=len(self.group))

    def _meal(self, meal: TripMeal) -> FieldMeal:
        known, moments = clock_of(meal, self.trip), step_moments(meal, self.trip)
        poured = [moments[step.index].poured_at for step in self.soaking]
        return FieldMeal(
            called=meal_day(meal, self.trip) if self.single else self._weekday(meal),
            where="" if meal.stop is None else opened(stop_called(self.trip, meal.stop)),
            begins=clock(first_move(meal, self.trip), meal.on),
            soaks=tuple("" if at is None else clock(at, meal.on) for at in poured),
            ready=clock(known.ready_at, meal.on) if known is not None and known.waits_min > 0 else "",
            eaten=clock(meal.eat_at if known is None else known.eat_at, meal.on),
            note="" if known is None or (self.short and not self.single) else self._sharing(known),
            marks="" if self.single else marks_of(meal),
        )

    def _sharing(self, known: MealClock) -> str:
        return " ".join(ended(opened(note)) for note in sharing(known, self.trip))

    def _weekday(self, meal: TripMeal) -> str:
        """Name the day of a meal in short, beside those of others."""
        day = day_called(self.trip, meal.day)
        return day if meal.spare else trip_words.DAY_AND_DATE.format(day=day, date=WEEKDAYS[meal.on.weekday()])

    def _soaking(self) -> list[PlannedStep]:
        """Give the steps in which food soaks or steeps by itself: the head says when their water goes in."""
        told = zip(self.dish.plan.steps, self.first.sums.steps, step_moments(self.first, self.trip), strict=True)
        return [step for step, sums, at in told if sums.wait_min and at.poured_at is not None]

    def _poured_on(self, step: PlannedStep) -> str:
        what = wetted(self.dish, step) if self.single else trip_words.THE_PACK
        return trip_words.POURED_ON.format(what=what)

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
