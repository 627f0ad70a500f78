"""Packs and stores of the sample trip: a shortfall with two loads, and a plan across a month's end; made by hand."""

from collections import defaultdict
from collections.abc import Sequence
from datetime import date, datetime, time
from itertools import cycle

from packlarder.reckon.dish import printed_g
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import PlannedTrip, TripItem, TripMeal, TripPack
from packlarder.reckon.trip.stores import (
    Drawn,
    DryingLoad,
    Fill,
    OnTrays,
    Shortfall,
    Source,
    Stores,
    Task,
    TaskKind,
)
from packlarder.safety.whole import CheckedBook

BEARERS = ("Runa", "Eskil", "Tove")
LACKED = {"chicken-dice": Source.DRY, "raisins": Source.BUY, "peas": Source.DRY, "cocoa-mix": Source.MIX}
"""Of these the larder has half of what is wanted."""
ON_THE_WAY = "honey"


def packs_of(trip: PlannedTrip) -> tuple[TripPack, ...]:
    """Pack each meal as its dish packs it, what is loose in a pack of its own, and the food on the move."""
    bearer = cycle(BEARERS)
    packs = [
        TripPack(
            mark=f"{meal.number}.{nth}",
            meal=meal.number,
            day=meal.day,
            on=meal.on,
            called=meal.plan.model.name,
            items=items,
            bearer=next(bearer),
            raw=any(item.component.raw for item in items),
            sachet=any(item.component.model.sachet for item in items),
            spare=meal.spare,
            bought_at=2 if any(item.component.id == ON_THE_WAY for item in items) else None,
        )
        for meal in trip.meals
        for nth, items in enumerate(_items(meal), 1)
    ]
    packs += [
        TripPack(
            mark=f"M{ration.day}",
            meal=None,
            day=ration.day,
            on=ration.on,
            called=ration.component.model.name,
            items=(TripItem(component=ration.component, called="Raisins", grams=ration.dry_g, number=0),),
            bearer="Runa",
            raw=False,
            sachet=False,
            spare=ration.spare,
        )
        for ration in trip.on_the_move
    ]
    return tuple(sorted(packs, key=lambda pack: pack.day))


def _items(meal: TripMeal) -> list[tuple[TripItem, ...]]:
    groups = [pack.all_parts for pack in meal.plan.packs] + [(index,) for index in meal.plan.loose]
    return [
        tuple(
            TripItem(
                component=meal.plan.parts[index].component,
                called=meal.plan.parts[index].called,
                grams=printed_g(meal.sums.parts[index].dry_g),
                number=meal.number,
            )
            for index in group
        )
        for group in groups
    ]


def stores_of(trip: PlannedTrip, packs: Sequence[TripPack], book: CheckedBook) -> Stores:
    """Fill the packs from the larder as far as it goes; half of some is lacking."""
    into: dict[str, list[tuple[str, float]]] = defaultdict(list)
    for pack in packs:
        for item in pack.items:
            into[item.component.id].append((pack.mark, item.grams))
    one = book.components
    chicken, peas, raisins, cocoa = (one[id] for id in ("chicken-dice", "peas", "raisins", "cocoa-mix"))
    return Stores(
        fills=tuple(
            _fill(trip, one[id], told, book)
            for id, told in sorted(into.items(), key=lambda pair: one[pair[0]].model.name)
        ),
        shortfalls=(
            _short(chicken, Source.DRY, 121.0, 480.0, 660.0, "raw, without bone: 73 % is left when it is cooked"),
            _short(cocoa, Source.MIX, 60.0, None, None, ""),
            _short(peas, Source.DRY, 150.0, 610.0, 640.0, "as it is bought frozen", trays=1, loads=(2,)),
            _short(raisins, Source.BUY, 152.0, None, 152.0, ""),
        ),
        loads=(
            DryingLoad(
                number=1,
                dryer="freeze-dryer",
                on_the_trays=(OnTrays(component=chicken, trays=2, fresh_g=480, dry_g=121),),
                starts=_june(26, 18),
                ends=_june(28, 6),
            ),
            DryingLoad(
                number=2,
                dryer="freeze-dryer",
                on_the_trays=(
                    OnTrays(component=peas, trays=1, fresh_g=610, dry_g=150),
                    OnTrays(component=one["egg-powder"], trays=1, fresh_g=500, dry_g=122),
                ),
                starts=_june(28, 12),
                ends=_june(30, 0),
            ),
        ),
        tasks=_tasks(chicken, peas, raisins, cocoa),
    )


def _fill(trip: PlannedTrip, component: ComponentSums, into: list[tuple[str, float]], book: CheckedBook) -> Fill:
    need_g = sum(grams for _, grams in into)
    short_g = need_g / 2 if component.id in LACKED else 0.0
    held = book.store.larder.in_store.get(component.id)
    jars = [] if held is None else held.standing[:2]
    wanted_g = need_g - short_g
    drawn: list[Drawn] = []
    for jar in jars:
        grams = min(jar.left_g, wanted_g)
        wanted_g -= grams
        if grams:
            use_by = None if jar.use_by is None else jar.use_by.day
            drawn.append(Drawn(mark=jar.mark, grams=grams, use_by=use_by))
    on_the_way_g = wanted_g if component.id == ON_THE_WAY else 0.0
    return Fill(
        component=component,
        need_g=need_g,
        drawn=tuple(drawn),
        bought_on_the_way_g=on_the_way_g,
        short_g=short_g + wanted_g - on_the_way_g,
        into=tuple(into),
        first_on=trip.model.starts,
        last_on=trip.ends,
    )


def _june(day: int, hour: int) -> datetime:
    return datetime.combine(date(2027, 6, day), time(hour))


def _short(
    component: ComponentSums,
    source: Source,
    short_g: float,
    fresh_g: float | None,
    bought_g: float | None,
    bought_as: str,
    *,
    trays: int | None = None,
    loads: tuple[int, ...] = (),
) -> Shortfall:
    dries = source is Source.DRY
    return Shortfall(
        component=component,
        source=source,
        short_g=short_g,
        for_mixes_g=20.0 if component.id in ("peas", "raisins") else 0.0,
        fresh_g=fresh_g,
        bought_g=bought_g,
        bought_as=bought_as,
        trays=trays or (2 if dries else None),
        loads=loads or ((1,) if dries else ()),
        start_by=None if source is Source.BUY else date(2027, 6, 25),
    )


def _tasks(
    chicken: ComponentSums, peas: ComponentSums, raisins: ComponentSums, cocoa: ComponentSums
) -> tuple[Task, ...]:
    def day(
        kind: TaskKind, first: date, last: date, *what: ComponentSums, grams: float | None = None, load: int = 0
    ) -> Task:
        start, end = (datetime.combine(one, time()) for one in (first, last))
        return Task(kind=kind, starts=start, ends=end, whole_day=True, components=what, grams=grams, load=load)

    def hours(kind: TaskKind, start: datetime, end: datetime, *what: ComponentSums, load: int) -> Task:
        return Task(kind=kind, starts=start, ends=end, whole_day=False, components=what, grams=None, load=load)

    june = [date(2027, 6, number) for number in range(1, 31)]
    july = date(2027, 7, 1), date(2027, 7, 2)
    return (
        day(TaskKind.SHOP, june[24], june[24], chicken, peas, raisins),
        day(TaskKind.COOK, june[24], june[24], chicken, grams=660.0, load=1),
        day(TaskKind.FREEZE, june[25], june[25], chicken, grams=480.0, load=1),
        hours(TaskKind.DRY, _june(26, 18), _june(28, 6), chicken, load=1),
        hours(TaskKind.WEIGH_AGAIN, _june(28, 6), _june(28, 8), chicken, load=1),
        hours(TaskKind.DEFROST, _june(28, 8), _june(28, 12), load=1),
        hours(TaskKind.DRY, _june(28, 12), _june(30, 0), peas, load=2),
        hours(TaskKind.WEIGH_AGAIN, _june(30, 0), _june(30, 2), peas, load=2),
        day(TaskKind.CONDITION, june[29], july[1], peas, load=2),
        day(TaskKind.MIX, july[0], july[0], cocoa, grams=60.0),
        day(TaskKind.PACK, july[1], july[1]),
    )
