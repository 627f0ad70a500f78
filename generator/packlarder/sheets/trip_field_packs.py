"""The packs of a trip's opening, with the marks that they bear; what is bought on the way stands apart."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from packlarder.reckon.records import PlannedPack, PlannedStep
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.field_sheet import FieldPack
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import volume, weight
from packlarder.sheets.trip_dish import bought_besides, mark, one_for_each, tub_of
from packlarder.sheets.trip_names import pack_for, stop_called


def trip_field_packs(
    group: Sequence[TripMeal], trip: TripSums, dish: DishSeries, plain: Sequence[FieldPack], system: System
) -> Iterator[FieldPack]:
    """Give the packs of an opening, tubs too; `plain` are those of the field booklet.

    A pack that stands for those of several meals has no number but the marks of each.
    """
    first = group[0]
    loose = iter(dish.plan.loose)
    known = {pack.mark: pack for pack in trip.packs}
    numbers = iter([one.number for pack in first.plan.packs for one in (pack, *pack.inside)])
    for pack in plain:
        if not pack.number:
            yield _tub(pack, tub_of(first, dish.plan.parts[next(loose)].component.id, trip), trip)
        elif len(group) == 1:
            own = one_for_each(first, next(numbers), trip)
            yield from _of_each(pack, own, system) if own else _with_bought(pack, known.get(pack.number), trip, system)
        else:
            number = next(numbers)
            yield replace(pack, number="", marks=tuple(_marks(meal, number, trip) for meal in group))


def wetted(dish: DishSeries, step: PlannedStep) -> str:
    """Name what gets the water of a step: the packs that it lies in, and what comes from a tub."""
    packs = [one for outer in dish.plan.packs for one in (outer, *outer.inside)]
    named = [_holder(dish, index, packs) for index in step.parts]
    return words.COMMA.join(dict.fromkeys(named))


def marks_of(meal: TripMeal) -> str:
    """List the marks of the packs of a meal, without those inside others."""
    return words.COMMA.join(mark(meal, pack.number) for pack in meal.plan.packs)


def bought_told(pack: TripPack, trip: TripSums) -> str:
    """Say what of a dish is bought on the way, and where: `butter, bought at the harbour`."""
    holds = words.COMMA.join(words.lowered(item.called) for item in pack.items)
    return trip_words.BOUGHT_AT.format(holds=holds, place=stop_called(trip, pack.bought_at))


def _holder(dish: DishSeries, index: int, packs: Sequence[PlannedPack]) -> str:
    number = next((pack.number for pack in packs if index in pack.parts), "")
    return number or dish.names[index]


def _tub(pack: FieldPack, tub: TripPack | None, trip: TripSums) -> FieldPack:
    return pack if tub is None else replace(pack, number=tub.mark, holds=_where_bought(pack.holds, tub, trip))


def _of_each(pack: FieldPack, own: Sequence[TripPack], system: System) -> Iterator[FieldPack]:
    """Give the pack of each eater, with their water."""
    for one in own:
        holds = pack_for(_names(one), one.for_)
        if one.water_ml:
            holds = trip_words.FOR_ONE_WITH.format(pack=holds, water=volume(one.water_ml, system))
        yield replace(pack, number=one.mark, holds=holds, weight=weight(one.grams, system))


def _marks(meal: TripMeal, number: str, trip: TripSums) -> str:
    """Give the mark that a pack bears for a meal: where each eater has one, the first and the last."""
    own = one_for_each(meal, number, trip)
    if len(own) < 2:
        return mark(meal, number)
    return trip_words.MARKS_OF_EACH.format(first=own[0].mark, last=own[-1].mark)


def _with_bought(pack: FieldPack, known: TripPack | None, trip: TripSums, system: System) -> Iterator[FieldPack]:
    """Give a pack as it comes from home, then what is bought for it on the way."""
    if known is None:
        yield pack
        return
    besides = bought_besides(known.mark, trip)
    if besides:
        yield replace(pack, holds=_names(known), weight=weight(known.grams, system))
    else:
        yield replace(pack, holds=_where_bought(pack.holds, known, trip))
    for one in besides:
        yield FieldPack(
            number=one.mark,
            holds=_where_bought(_names(one), one, trip),
            weight=weight(one.grams, system),
            raw=one.raw,
            sachet=one.sachet,
        )


def _where_bought(holds: str, pack: TripPack, trip: TripSums) -> str:
    if pack.bought_at is None:
        return holds
    return trip_words.BOUGHT_AT.format(holds=holds, place=stop_called(trip, pack.bought_at))


def _names(pack: TripPack) -> str:
    return words.COMMA.join(item.called for item in pack.items)
