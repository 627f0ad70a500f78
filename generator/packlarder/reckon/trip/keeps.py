"""Whether the food of a trip keeps until it is eaten: in its pack, and before that in its jar."""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from packlarder.faults import Fault
from packlarder.figures.keeping import Kept
from packlarder.reckon.trip.chain_back import made_at_home
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.records import MoveRation, PlannedTrip, TripItem, TripMeal, TripPack
from packlarder.reckon.trip.store_slips import Late, jar_expires, pack_expires
from packlarder.reckon.trip.wants import Taken
from packlarder.reckon.use_by import ROOM_C, Limit, limits_of


def too_late_for_packs(trip: PlannedTrip, packs: Iterable[TripPack], pantry: Pantry) -> Iterator[Fault]:
    """Find what is eaten after the day until which it keeps as it travels; one fault for all that keeps as long.

    A pack keeps as a trip pack does from the day on which it is filled, a tub as an opened jar.
    """
    late: dict[tuple[object, ...], list[Late]] = defaultdict(list)
    for pack in packs:
        kept = Kept.OPENED if _is_tub(pack) else Kept.TRIP_PACK
        for item in pack.items if pack.bought_at is None else ():
            until = pantry.keeps_until(item.component, kept, pantry.packed_on(trip))
            for eaten in _eaten(trip, pack, item) if until is not None else ():
                if until is not None and eaten.on > until:
                    one = Late(item.component, pack.mark, kept, until, eaten.on, eaten.line)
                    late[until, kept, made_at_home(item.component)].append(one)
    for found in late.values():
        yield pack_expires(sorted(found, key=lambda one: one.eaten_on), _limit(found[0], pantry))


def _limit(one: Late, pantry: Pantry) -> Limit:
    """Give what says how long something keeps as it travels."""
    limits = limits_of(one.component, pantry.book.household.larder.keeping, one.kept, ROOM_C)
    return min(limits, key=lambda limit: limit.span.length_days)


def too_late_for_jars(taken: Iterable[Taken], pantry: Pantry) -> Iterator[Fault]:
    """Find what is short though the larder has some, which expires before it is eaten; one fault for each component."""
    short: dict[str, list[Taken]] = defaultdict(list)
    for one in taken:
        if one.short_g > 0:
            short[one.want.component.id].append(one)
    for found in short.values():
        late = [one for one in found if pantry.shelf.past(one.want.component.id, one.want.on)]
        if late:
            jars = pantry.shelf.past(late[0].want.component.id, late[0].want.on)
            yield jar_expires([one.want for one in late], jars, sum(one.short_g for one in found), pantry.on)


def _is_tub(pack: TripPack) -> bool:
    return pack.mark.startswith("T")


def _eaten(trip: PlannedTrip, pack: TripPack, item: TripItem) -> Sequence[TripMeal | MoveRation]:
    """Give what an item of a pack is eaten in: its meal, or what of it is eaten on the move."""
    if item.number:
        return (trip.by_number[item.number],)
    rations = [one for one in trip.on_the_move if one.component.id == item.component.id]
    return rations if _is_tub(pack) else [one for one in rations if one.day == pack.day]
