"""The steps of a trip's opening against the clock of the day: water is put on, poured, comes to the boil."""

from collections.abc import Iterator, Sequence
from datetime import datetime

from packlarder.book.step import Verb
from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import PlannedStep
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.sheets import series
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.field_sheet import FieldStep, Span
from packlarder.sheets.printed import System
from packlarder.sheets.trip_field_clock import StepMoments, clock_of, first_move, step_moments
from packlarder.sheets.trip_names import clock

MINUTE_S = 60


def trip_steps(
    group: Sequence[TripMeal], trip: TripSums, dish: DishSeries, plain: Sequence[FieldStep], system: System
) -> tuple[FieldStep, ...]:
    """Set the steps of an opening that serves some meals; `plain` are those of the field booklet, one for each step.

    Times are those of the day where all meals are begun at the same time of it, else minutes from the first move.
    """
    return tuple(_Setter(group, trip, dish, system).steps(plain))


class _Setter:
    """Sets the steps of one opening."""

    def __init__(self, group: Sequence[TripMeal], trip: TripSums, dish: DishSeries, system: System) -> None:
        self.dish = dish
        self.system = system
        self.moments = step_moments(group[0], trip)
        self.start = first_move(group[0], trip)
        self.of_the_day = all(clock_of(meal, trip) for meal in group) and (
            len({first_move(meal, trip).time() for meal in group}) == 1
        )
        self.raw = {part.index for part in dish.plan.parts if part.component.raw}

    def steps(self, plain: Sequence[FieldStep]) -> Iterator[FieldStep]:
        """Give a step of its own to water that must be hot before it is poured, then each step."""
        for step, told, at in zip(self.dish.plan.steps, plain, self.moments, strict=True):
            if at.poured_at is not None and at.poured_at > at.begins:
                yield self._put_on(step, at)
            yield self._step(step, told, at)
            if step.verb is not None and VERBS[step.verb].cooks:
                self.raw -= set(step.parts)

    def _put_on(self, step: PlannedStep, at: StepMoments) -> FieldStep:
        water = series.pours(self.dish.steps[step.index].water_ml).text(self.system, self.dish.usual)
        line = (Span(trip_words.ON_THE_FLAME.format(water=water, pot=step.pot)),)
        return self._timed(at.begins, FieldStep(minute="", verb=trip_words.PUT, line=line))

    def _step(self, step: PlannedStep, told: FieldStep, at: StepMoments) -> FieldStep:
        verb = trip_words.POUR if step.verb is Verb.POUR_OVER else told.verb
        boils_at = at.boils_at if at.boils_at and at.boils_at > at.begins else None
        line = (*told.line, Span(self._boils(step, boils_at), strong=True)) if boils_at else told.line
        raw = not self.raw.isdisjoint(step.parts)
        begins = at.poured_at or at.begins
        return self._timed(begins, FieldStep(minute="", verb=verb, line=line, raw=raw))

    def _boils(self, step: PlannedStep, at: datetime) -> str:
        rounds = self.dish.sums[self.dish.usual].steps[step.index].rounds
        if not self.of_the_day:
            return trip_words.BOILS_AFTER.format(minutes=series.to_the_minute(self._minutes(at)))
        phrase = trip_words.BOILS_FIRST_AT if rounds > 1 else trip_words.BOILS_AT
        return phrase.format(clock=clock(at, at.date()))

    def _timed(self, at: datetime, step: FieldStep) -> FieldStep:
        minute, told = ("", clock(at, at.date())) if self.of_the_day else (str(self._minutes(at)), "")
        return FieldStep(minute=minute, verb=step.verb, line=step.line, at=told, raw=step.raw)

    def _minutes(self, at: datetime) -> int:
        return int((at - self.start).total_seconds()) // MINUTE_S
