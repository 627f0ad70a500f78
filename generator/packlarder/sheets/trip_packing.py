"""What is packed for a trip: packs by day and by bearer, and the fill list by component."""

from collections import defaultdict
from collections.abc import Iterator

from packlarder.reckon.trip.records import TripItem, TripPack, TripSums
from packlarder.reckon.trip.stores import Fill
from packlarder.sheets import trip_names as names
from packlarder.sheets.trip_figures import weight, weights
from packlarder.sheets.trip_menu import component_link, date_of
from packlarder.sheets.trip_sheet import BearerRow, PackDay, PackedItem, TripPackRow
from packlarder.sheets.trip_stores_sheet import FillRow, FromJar, IntoPack


def packing_list(trip: TripSums) -> tuple[PackDay, ...]:
    """Set the packs by the day on which they are opened; the rows of a day add up to it, and days to the whole."""
    by_day: dict[int, list[TripPack]] = defaultdict(list)
    for pack in trip.packs:
        by_day[pack.day].append(pack)
    return tuple(
        PackDay(
            day=names.day_called(trip, number),
            on=date_of(trip, number),
            packs=tuple(_pack(trip, pack) for pack in packs),
            weight=weight(sum(pack.grams for pack in packs)),
        )
        for number, packs in sorted(by_day.items())
    )


def _pack(trip: TripSums, pack: TripPack) -> TripPackRow:
    return TripPackRow(
        mark=pack.mark,
        called=names.pack_for(pack.called, pack.for_) if pack.for_ else pack.called,
        items=tuple(_items(pack)),
        weight=weight(pack.grams),
        raw=pack.raw,
        sachet=pack.sachet,
        bearer=pack.bearer,
        bought_at="" if pack.bought_at is None else names.stop_called(trip, pack.bought_at),
        inside=pack.inside,
    )


def _items(pack: TripPack) -> Iterator[PackedItem]:
    """Set what is in a pack; what several meals take from one tub is one item."""
    together: dict[str, list[TripItem]] = defaultdict(list)
    for item in pack.items:
        together[item.component.id].append(item)
    for items in together.values():
        component = items[0].component
        yield PackedItem(
            component=component_link(component.id, component.model.name),
            called=items[0].called,
            raw=component.raw,
            weight=weight(sum(item.grams for item in items)),
        )


def bearer_rows(trip: TripSums) -> tuple[BearerRow, ...]:
    """Set what each person carries on the first morning."""
    return tuple(
        BearerRow(name=one.name, weight=weight(one.grams), packs=one.packs)
        for one in trip.journey.bearing
        if one.packs or one.grams
    )


def fill_list(trip: TripSums) -> tuple[FillRow, ...]:
    """Set what is filled, component by component, so that each jar is opened once."""
    return tuple(_fill(fill) for fill in trip.stores.fills)


def _fill(fill: Fill) -> FillRow:
    """Set a fill; both what it comes from and what it goes into add up to what is needed, as printed."""
    component = fill.component
    drawn = [one.grams for one in fill.drawn]
    *jars, on_the_way, short = weights(fill.need_g, [*drawn, fill.bought_on_the_way_g, fill.short_g])
    *into, for_mixes = weights(fill.need_g, [*(grams for _, grams in fill.into), fill.for_mixes_g])
    return FillRow(
        component=component_link(component.id, component.model.name),
        raw=component.raw,
        need=weight(fill.need_g),
        jars=tuple(
            FromJar(
                mark=str(one.mark),
                run=one.mark.run,
                weight=figure,
                use_by=names.use_by(one.use_by),
            )
            for one, figure in zip(fill.drawn, jars, strict=True)
        ),
        on_the_way=on_the_way,
        short=short,
        for_mixes=for_mixes,
        packs=tuple(IntoPack(mark=mark, weight=figure) for (mark, _), figure in zip(fill.into, into, strict=True)),
    )
