"""The lists of a trip's booklet: the menu, the packs by day and bearer, what is filled from which jar, the kit."""

from collections.abc import Iterator, Sequence

from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.reckon.trip.stores import Fill
from packlarder.sheets import field_words, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import weight
from packlarder.sheets.trip_dish import is_tub
from packlarder.sheets.trip_field_clock import clock_of
from packlarder.sheets.trip_field_sheet import (
    Amount,
    BearerLine,
    FillLine,
    JarLine,
    KitLine,
    MenuDay,
    MenuLine,
    PackDay,
    PackLine,
)
from packlarder.sheets.trip_figures import heavy
from packlarder.sheets.trip_names import FOR, ON_THE_MOVE, clock, day_called, pack_for, short_date, stop_called, use_by
from packlarder.sheets.words import lowered, opened


def menu(trip: TripSums, ids: dict[int, str]) -> tuple[MenuDay, ...]:
    """Give the menu day by day, the spare day last; `ids` are those of the openings by the number of a meal."""
    days = dict.fromkeys((*range(1, trip.last_day + 1), *(meal.day for meal in trip.meals)))
    made = (MenuDay(heading=_day(trip, day), lines=tuple(_lines(trip, day, ids))) for day in days)
    return tuple(day for day in made if day.lines)


def _day(trip: TripSums, day: int) -> str:
    called = day_called(trip, day)
    if day > trip.last_day:
        return called
    on = trip.model.starts.fromordinal(trip.model.starts.toordinal() + day - 1)
    return trip_words.MENU_OF_DAY.format(day=called, date=short_date(on))


def _lines(trip: TripSums, day: int, ids: dict[int, str]) -> Iterator[MenuLine]:
    for meal in trip.meals:
        if meal.day == day:
            yield _line(trip, meal, ids[meal.number])
    for pack in trip.packs:
        if pack.meal is None and pack.day == day and not is_tub(pack):
            holds = opened(words.COMMA.join(lowered(item.called) for item in pack.items))
            dish = trip_words.MOVE_PACK.format(holds=holds, mark=pack.mark)
            yield MenuLine(number="", meal=ON_THE_MOVE, dish=dish, opening="", begins="", eaten="", who="")


def _line(trip: TripSums, meal: TripMeal, opening: str) -> MenuLine:
    known = clock_of(meal, trip)
    everybody = len(meal.eaters) == len(trip.eaters)
    return MenuLine(
        number=str(meal.number),
        meal=meal.meal.value,
        dish=meal.plan.model.name,
        opening=opening,
        begins="" if known is None else clock(known.start_at, meal.on),
        eaten=clock(meal.eat_at if known is None else known.eat_at, meal.on),
        who="" if everybody else FOR.format(names=words.COMMA.join(meal.eaters)),
    )


def packing(trip: TripSums, system: System) -> tuple[PackDay, ...]:
    """Give the packs by day, in the order in which they are opened; what serves the whole trip comes first."""
    tubs = [pack for pack in trip.packs if is_tub(pack)]
    days = [(trip_words.FOR_THE_WHOLE_TRIP, tubs)] if tubs else []
    days += [
        (_day(trip, day), [pack for pack in trip.packs if pack.day == day and not is_tub(pack)])
        for day in sorted({pack.day for pack in trip.packs})
    ]
    return tuple(
        PackDay(
            heading=heading,
            weight=weight(sum(pack.grams for pack in packs), system),
            packs=tuple(_pack(trip, pack, system) for pack in packs),
        )
        for heading, packs in days
        if packs
    )


def _pack(trip: TripSums, pack: TripPack, system: System) -> PackLine:
    place = "" if pack.bought_at is None else stop_called(trip, pack.bought_at)
    called = pack_called(pack)
    holds = "" if is_tub(pack) else _holds(pack, system)
    return PackLine(
        mark=pack.mark,
        called=called,
        holds="" if holds.casefold() == pack.called.casefold() else holds,
        weight=weight(pack.grams, system) if pack.items else "",
        bearer=pack.bearer,
        raw=pack.raw,
        sachet=pack.sachet,
        is_inside=bool(pack.inside),
        notes=(trip_words.BOUGHT.format(place=place),) if place else (),
    )


def pack_called(pack: TripPack) -> str:
    """Name a pack: by what it is called and for whom, a tub by what is in it, a bag by what it is for."""
    if is_tub(pack):
        name = pack.items[0].component.model.name
        return field_words.FROM.format(name=name, where=pack.called) if pack.called else name
    if pack.for_:
        return pack_for(pack.called, pack.for_)
    return pack.called or opened(ON_THE_MOVE)


def _holds(pack: TripPack, system: System) -> str:
    if len(pack.items) == 1:
        return pack.items[0].called
    parts = [trip_words.PART.format(name=item.called, weight=weight(item.grams, system)) for item in pack.items]
    return words.COMMA.join(parts)


def packed(trip: TripSums, system: System) -> str:
    """Say how many packs there are and what they weigh together."""
    return trip_words.IN_ALL.format(count=len(trip.packs), weight=heavy(trip.grams).text(system, 0))


def bearers(trip: TripSums, system: System) -> tuple[BearerLine, ...]:
    """Give what each person carries on the first morning."""
    return tuple(
        BearerLine(name=one.name, weight=weight(one.grams, system), packs=words.COMMA.join(one.packs))
        for one in trip.journey.bearing
        if one.packs
    )


def fills(trip: TripSums, system: System) -> tuple[FillLine, ...]:
    """Give each component once, with the jars it is filled from and the packs that it goes into."""
    return tuple(_fill(one, system) for one in trip.stores.fills)


def _fill(fill: Fill, system: System) -> FillLine:
    return FillLine(
        component=fill.component.model.name,
        raw=fill.component.raw,
        need=weight(fill.need_g, system),
        jars=tuple(_jars(fill, system)),
        into=tuple(_into(fill, system)),
    )


def _into(fill: Fill, system: System) -> Iterator[Amount]:
    """Give what goes into which pack; what is left of it is for mixes that are made for the trip."""
    for mark, grams in fill.into:
        yield Amount(label=mark, figure=weight(grams, system))
    if fill.for_mixes_g:
        yield Amount(label=trip_words.FOR_MIXES, figure=weight(fill.for_mixes_g, system))


def _jars(fill: Fill, system: System) -> Iterator[JarLine]:
    for drawn in fill.drawn:
        yield JarLine(mark=str(drawn.mark), weight=weight(drawn.grams, system), use_by=use_by(drawn.use_by))
    others = (
        (trip_words.BUY_ON_THE_WAY, fill.bought_on_the_way_g),
        (trip_words.STILL_TO_GET, fill.short_g),
    )
    for called, grams in others:
        if grams:
            yield JarLine(mark=called, weight=weight(grams, system), use_by="")


def kit(trip: TripSums) -> tuple[KitLine, ...]:
    """Give what is taken along to cook and eat with."""
    return tuple(
        KitLine(
            count=trip_words.KIT_COUNT.format(count=item.count) if item.count > 1 else "",
            what=opened(str(item.what)),
            why=str(item.why),
        )
        for item in trip.journey.kit
    )


def rubbish(trip: TripSums) -> str:
    """Say what is carried out empty; "" for nothing."""
    there = trip.journey.rubbish
    counted: Sequence[tuple[tuple[str, str], int]] = (
        (trip_words.EMPTY_PACKS, there.packs),
        (trip_words.HEATERS, there.heaters),
        (trip_words.CARTRIDGES, there.cartridges),
    )
    told = [phrase[count != 1].format(count=count) for phrase, count in counted if count]
    return trip_words.RUBBISH.format(what=words.COMMA.join(told)) if told else ""
