"""The lists of a trip's booklet: the packs by day and bearer, what is filled from which jar, the kit."""

from collections.abc import Iterator, Sequence

from packlarder.reckon.trip.records import TripPack, TripSums
from packlarder.reckon.trip.stores import Fill
from packlarder.safety.trip_keeping import spoils
from packlarder.sheets import field_words, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import weight
from packlarder.sheets.trip_dish import is_tub
from packlarder.sheets.trip_field_menu import day_heading
from packlarder.sheets.trip_field_sheet import (
    Amount,
    BearerLine,
    FillLine,
    JarLine,
    KitLine,
    PackDay,
    PackLine,
)
from packlarder.sheets.trip_figures import heavy
from packlarder.sheets.trip_names import ON_THE_MOVE, pack_for, stop_called, use_by
from packlarder.sheets.words import opened


def packing(trip: TripSums, system: System) -> tuple[PackDay, ...]:
    """Give the packs by day, in the order in which they are opened; what serves the whole trip comes first."""
    tubs = [pack for pack in trip.packs if is_tub(pack)]
    days = [(trip_words.FOR_THE_WHOLE_TRIP, tubs)] if tubs else []
    days += [
        (day_heading(trip, day), [pack for pack in trip.packs if pack.day == day and not is_tub(pack)])
        for day in sorted({pack.day for pack in trip.packs})
    ]
    return tuple(
        PackDay(
            heading=heading,
            weight=trip_words.PACKS_WEIGH.format(weight=weight(sum(pack.grams for pack in packs), system)),
            packs=tuple(_pack(trip, pack, system) for pack in packs),
        )
        for heading, packs in days
        if packs
    )


def _pack(trip: TripSums, pack: TripPack, system: System) -> PackLine:
    place = "" if pack.bought_at is None else stop_called(trip, pack.bought_at)
    called = pack_called(pack, trip)
    holds = "" if is_tub(pack) else _holds(pack, system)
    return PackLine(
        mark=pack.mark,
        called=called,
        holds="" if holds.casefold() == called.casefold() else holds,
        weight=_weighs(pack, trip, system),
        bearer=pack.bearer,
        raw=pack.raw,
        sachet=pack.sachet,
        is_inside=bool(pack.inside),
        notes=tuple(_notes(pack, trip, place)),
    )


def _notes(pack: TripPack, trip: TripSums, place: str) -> Iterator[str]:
    if place:
        yield trip_words.BOUGHT.format(place=place)
    if in_the_cooler(pack, trip):
        yield trip_words.INTO_THE_COOLER


def in_the_cooler(pack: TripPack, trip: TripSums) -> bool:
    """Tell whether a pack goes into the cooler, if one comes along: it holds what is not dried and spoils."""
    return trip.model.cooler is not None and any(spoils(item.component) for item in pack.items)


def _weighs(pack: TripPack, trip: TripSums, system: System) -> str:
    """Print what a pack weighs; of one with others inside what all of it weighs together."""
    inner = [one for one in trip.packs if one.inside == pack.mark]
    grams = weight(sum(one.grams for one in (pack, *inner)), system)
    return trip_words.WITH_INNER.format(weight=grams) if inner else grams


def pack_called(pack: TripPack, trip: TripSums) -> str:
    """Name a pack: by its dish and its own name in it, and for whom; a tub by what is in it; else by what it is for."""
    if is_tub(pack):
        name = pack.items[0].component.model.name
        return field_words.FROM.format(name=name, where=pack.called) if pack.called else name
    if pack.meal is None:
        return opened(ON_THE_MOVE)
    called = named_in(trip.by_number[pack.meal].plan.model.name, pack.called)
    return pack_for(called, pack.for_) if pack.for_ else called


def named_in(dish: str, called: str) -> str:
    """Give the name of a pack on list and label: its dish, and its own name if it has one."""
    if called.casefold() in ("", dish.casefold()):
        return dish
    return field_words.CALLED.format(called=dish, holds=called)


def _holds(pack: TripPack, system: System) -> str:
    if len(pack.items) == 1:
        return pack.items[0].called
    parts = [trip_words.PART.format(name=item.called, weight=weight(item.grams, system)) for item in pack.items]
    return words.COMMA.join(parts)


def cooled(trip: TripSums) -> str:
    """List the packs that go into the cooler, and for how many days it keeps cold; "" where there is nothing to."""
    marks = [pack.mark for pack in trip.packs if in_the_cooler(pack, trip)]
    if trip.model.cooler is None or not marks:
        return ""
    days = trip.model.cooler.keeps_cold
    return trip_words.COOLED[days != 1].format(marks=words.COMMA.join(marks), days=days)


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
