"""The packs of a trip: those of each meal, tubs that serve the whole of it, food on the move, each with its bearer.

Weights are the printed ones, so that all packs together weigh what all meals and all food on the move weigh.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from string import ascii_lowercase

from packlarder.figures.allergens import Allergen
from packlarder.reckon.dish import printed_g
from packlarder.reckon.records import ComponentSums, PlannedPack
from packlarder.reckon.trip.bearers import with_bearers
from packlarder.reckon.trip.records import Eater, MoveRation, PlannedTrip, TripItem, TripMeal, TripPack
from packlarder.reckon.trip.shares import is_for_each, one_for_each
from packlarder.reckon.trip.shops import Shops

BOUGHT = ascii_lowercase[1:]
"""What is bought for a pack on the way has its mark with a letter more: `4.1b`."""


def trip_packs(trip: PlannedTrip, shops: Shops) -> tuple[TripPack, ...]:
    """Give the packs of a trip in the order in which they are opened."""
    packs = [pack for meal in trip.meals for pack in _of_meal(meal, shops, trip.eaters)]
    packs += _on_the_move(trip, shops)
    packs += _tubs(trip, shops)
    return with_bearers(sorted(packs, key=_opened), trip.eaters)


def _opened(pack: TripPack) -> tuple[int, int, bool]:
    """Order packs: food on the move first on its day, a tub before the packs of the first meal that it serves."""
    return pack.day, min([item.number for item in pack.items], default=pack.meal or 0), pack.meal is not None


def _of_meal(meal: TripMeal, shops: Shops, eaters: Sequence[Eater]) -> Iterator[TripPack]:
    for pack in meal.plan.packs:
        filled = list(_planned(meal, pack, shops, inside=""))
        if len(filled) == 1 and filled[0].bought_at is None and is_for_each(meal, pack):
            yield from one_for_each(meal, pack, filled[0], eaters)
            continue
        yield from filled
        for inner in pack.inside:
            yield from _planned(meal, inner, shops, inside=f"{meal.number}.{pack.number}")


def _planned(meal: TripMeal, pack: PlannedPack, shops: Shops, inside: str) -> Iterator[TripPack]:
    """Give a pack of a dish: what comes from home, and apart from it what is bought at each stop."""
    by_stop: dict[int | None, list[int]] = defaultdict(list)
    for part in pack.parts:
        by_stop[shops.for_meal(meal.plan.parts[part].component, meal)].append(part)
    from_home = by_stop.pop(None, [])
    mark = f"{meal.number}.{pack.number}"
    if from_home or pack.inside:
        held = [meal.plan.parts[index].component for index in pack.all_parts]
        yield _of_parts(meal, pack, mark, from_home, held, inside=inside)
    letters = iter(BOUGHT) if from_home or pack.inside else iter(("", *BOUGHT))
    for stop, parts in sorted((stop, parts) for stop, parts in by_stop.items() if stop is not None):
        held = [meal.plan.parts[index].component for index in parts]
        yield _of_parts(meal, pack, f"{mark}{next(letters)}", parts, held, bought_at=stop)


def _of_parts(
    meal: TripMeal,
    pack: PlannedPack,
    mark: str,
    parts: Sequence[int],
    held: Iterable[ComponentSums],
    *,
    inside: str = "",
    bought_at: int | None = None,
) -> TripPack:
    return TripPack(
        mark=mark,
        meal=meal.number,
        day=meal.day,
        on=meal.on,
        called=pack.called or meal.plan.model.name,
        items=tuple([_item(meal, part) for part in parts]),
        bearer="",
        raw=any(component.raw for component in held),
        sachet=pack.sachet and bought_at is None,
        spare=meal.spare,
        bought_at=bought_at,
        inside=inside,
    )


def _item(meal: TripMeal, index: int) -> TripItem:
    """Give a part of a meal; another form that stands in is called by its own name, for that is what is packed."""
    part = meal.plan.parts[index]
    called = meal.instead[index].model.name if index in meal.instead else part.called
    grams = printed_g(meal.sums.parts[index].dry_g)
    return TripItem(component=part.component, called=called, grams=grams, number=meal.number)


def _on_the_move(trip: PlannedTrip, shops: Shops) -> Iterator[TripPack]:
    """Give a pack for each day; what somebody avoids lies apart, so that they can eat the rest."""
    avoided = frozenset(one for eater in trip.eaters for one in eater.model.avoided)
    by_day: dict[int, dict[tuple[int, tuple[Allergen, ...]], list[MoveRation]]] = defaultdict(lambda: defaultdict(list))
    for ration in trip.on_the_move:
        component = ration.component
        if not component.model.carried_in:
            stop = shops.for_ration(component, ration)
            apart = tuple(sorted(avoided & (component.allergens | component.traces)))
            by_day[ration.day][-1 if stop is None else stop, apart].append(ration)
    for day, groups in by_day.items():
        for nth, ((stop, _), rations) in enumerate(sorted(groups.items(), key=lambda group: group[0]), 1):
            mark = f"M{day}" if len(groups) == 1 else f"M{day}.{nth}"
            yield _bag(mark, rations, None if stop < 0 else stop)


def _bag(mark: str, rations: Sequence[MoveRation], bought_at: int | None) -> TripPack:
    first = rations[0]
    return TripPack(
        mark=mark,
        meal=None,
        day=first.day,
        on=first.on,
        called="",
        items=tuple([_ration_item(ration) for ration in rations]),
        bearer="",
        raw=False,
        sachet=False,
        spare=first.spare,
        bought_at=bought_at,
    )


def _ration_item(ration: MoveRation) -> TripItem:
    component = ration.component
    return TripItem(component=component, called=component.model.name, grams=ration.dry_g, number=0)


def _tubs(trip: PlannedTrip, shops: Shops) -> Iterator[TripPack]:
    """Give one tub for each component that travels in one, with what of it all meals and all days on the move want."""
    wanted: dict[tuple[str, int], list[tuple[TripMeal | MoveRation, TripItem]]] = defaultdict(list)
    for ration in trip.on_the_move:
        if ration.component.model.carried_in:
            stop = shops.for_ration(ration.component, ration)
            wanted[ration.component.id, -1 if stop is None else stop].append((ration, _ration_item(ration)))
    for meal in trip.meals:
        for index in meal.plan.loose:
            component = meal.plan.parts[index].component
            stop = shops.for_meal(component, meal)
            wanted[component.id, -1 if stop is None else stop].append((meal, _item(meal, index)))
    first_wanted = sorted(wanted.items(), key=lambda tub: (min((one.day, item.number) for one, item in tub[1]), tub[0]))
    for nth, ((_, stop), eaten) in enumerate(first_wanted, 1):
        first = min([one for one, _ in eaten], key=lambda one: one.day)
        component = eaten[0][1].component
        yield TripPack(
            mark=f"T{nth}",
            meal=None,
            day=first.day,
            on=first.on,
            called=component.model.carried_in,
            items=tuple([item for _, item in eaten]),
            bearer="",
            raw=component.raw,
            sachet=False,
            spare=all(one.spare for one, _ in eaten),
            bought_at=None if stop < 0 else stop,
        )
