"""The water of a trip's opening: as much as its steps pour, and when what soaks gets its water.

How long a dish takes is told by when it is begun and eaten.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime

from packlarder.book.step import Verb
from packlarder.reckon.records import PlannedStep
from packlarder.sheets import field_words, series
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.field_sheet import FieldFigure
from packlarder.sheets.printed import System
from packlarder.sheets.trip_field_clock import StepMoments
from packlarder.sheets.trip_field_packs import wetted
from packlarder.sheets.trip_names import clock

WATER, HOT, MINUTES = field_words.FIELD["water"], field_words.FIELD["hot"], field_words.FIELD["minutes"]


def trip_figures(
    dish: DishSeries, plain: Sequence[FieldFigure], moments: Sequence[StepMoments] | None, system: System
) -> tuple[FieldFigure, ...]:
    """Set the figures of an opening; `plain` are those of the field booklet, `moments` None where times differ.

    Those of the field booklet are rounded up, and a cook who pours by them and by the steps would wonder; a mug of the
    household's own is what they are counted in all the same.
    """
    return (*_waters(dish, plain, system), *_soaks(dish, moments))


def _waters(dish: DishSeries, plain: Sequence[FieldFigure], system: System) -> Iterator[FieldFigure]:
    sums = dish.sums[dish.usual].water
    own_mug = dish.household.booklet_measure in dish.household.measures
    exact = {
        WATER: _water(sums.carry_ml, dish.ounces.carry[dish.usual], system),
        HOT: _water(sums.hot_ml, dish.ounces.heated[dish.usual], system),
    }
    all_hot = sums.hot_ml == sums.carry_ml
    for one in plain[: next(at for at, one in enumerate(plain) if one.label == MINUTES)]:
        if one.label == HOT and all_hot:
            continue
        label = trip_words.WATER_ALL_HEATED if one.label == WATER and all_hot and sums.hot_ml else one.label
        figure = one.figure if own_mug else exact.get(one.label, one.figure)
        yield FieldFigure(label=label, figure=figure, part_of=one.part_of)


def _water(millilitres: int, ounces: int, system: System) -> str:
    if millilitres <= 0:
        return field_words.NO_WATER
    return series.whole_ounces(ounces) if system is System.US else series.whole_ml(millilitres)


def _soaks(dish: DishSeries, moments: Sequence[StepMoments] | None) -> Iterator[FieldFigure]:
    for step in dish.plan.steps:
        if step.verb is Verb.SOAK:
            at = None if moments is None else moments[step.index].poured_at
            minutes = dish.sums[dish.usual].steps[step.index].wait_min
            yield FieldFigure(label=_soak(dish, step, at), figure=series.bare_minutes_up(minutes), part_of=True)


def _soak(dish: DishSeries, step: PlannedStep, at: datetime | None) -> str:
    if at is None:
        return trip_words.SOAK
    return trip_words.SOAK_FROM.format(what=wetted(dish, step), clock=clock(at, at.date()))
