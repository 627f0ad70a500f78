"""Whether the food of a trip keeps until it is eaten: in its pack, and before that in its jar."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from packlarder.faults import Fault, Place
from packlarder.figures.keeping import Kept
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.records import MoveRation, PlannedTrip, TripItem, TripMeal, TripPack
from packlarder.reckon.trip.store_slips import jar_expires, pack_expires
from packlarder.reckon.trip.wants import Taken


def too_late_for_packs(trip: PlannedTrip, packs: Iterable[TripPack], pantry: Pantry) -> Iterator[Fault]:
    """Find what is eaten after the day until which it keeps as it travels; one fault for each line of the trip.

    A pack keeps as a trip pack does from the day on which it is filled, a tub as an opened jar.
    """
    late: dict[Place, list[tuple[date, TripPack, TripItem, date]]] = defaultdict(list)
    for pack in packs:
        kept = Kept.OPENED if _is_tub(pack) else Kept.TRIP_PACK
        for item in pack.items if pack.bought_at is None else ():
            until = pantry.keeps_until(item.component, kept, pantry.packed_on(trip))
            for eaten in _eaten(trip, pack, item) if until is not None else ():
                if until is not None and eaten.on > until:
                    late[eaten.line].append((until, pack, item, eaten.on))
    for line, found in late.items():
        until, _, item, on = min(found, key=lambda one: (one[3], one[0]))
        marks = dict.fromkeys(pack.mark for _, pack, other, _ in found if other.component.id == item.component.id)
        yield pack_expires(item.component, tuple(marks), until, on, line)


def too_late_for_jars(taken: Iterable[Taken], pantry: Pantry) -> Iterator[Fault]:
    """Find what is short though the larder has some, which expires before it is eaten; one fault for each component."""
    short: dict[str, list[Taken]] = defaultdict(list)
    for one in taken:
        if one.short_g > 0:
            short[one.want.component.id].append(one)
    for found in short.values():
        fault = _expired(found, pantry)
        if fault is not None:
            yield fault


def _expired(short: Sequence[Taken], pantry: Pantry) -> Fault | None:
    for one in short:
        want = one.want
        jar = pantry.shelf.last_to_expire(want.component.id, want.on)
        if jar is not None:
            short_g = sum(other.short_g for other in short)
            return jar_expires(want.component, *jar, want.on, short_g, want.line)
    return None


def _is_tub(pack: TripPack) -> bool:
    return pack.mark.startswith("T")


def _eaten(trip: PlannedTrip, pack: TripPack, item: TripItem) -> Sequence[TripMeal | MoveRation]:
    """Give what an item of a pack is eaten in: its meal, or what of it is eaten on the move."""
    if item.number:
        return (trip.by_number[item.number],)
    rations = [one for one in trip.on_the_move if one.component.id == item.component.id]
    return rations if _is_tub(pack) else [one for one in rations if one.day == pack.day]
