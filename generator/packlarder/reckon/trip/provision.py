"""What a trip takes from the larder and what must still be got: other forms, packs, fills, shortfalls, the plan.

reserve (stand_in, shelf) -> packing (bearers) -> fills -> keeps -> shortfall (chain_back, loads, schedule, tasks)
"""

from dataclasses import replace

from packlarder.faults import Fault
from packlarder.reckon.trip.fills import fills_of
from packlarder.reckon.trip.keeps import too_late_for_jars, too_late_for_packs
from packlarder.reckon.trip.overdue import is_it_over
from packlarder.reckon.trip.packing import trip_packs
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.records import PlannedTrip, TripPack
from packlarder.reckon.trip.reserve import reserve
from packlarder.reckon.trip.shops import Shops
from packlarder.reckon.trip.shortfall import work_for
from packlarder.reckon.trip.stores import Stores


def provide(
    planned: PlannedTrip, pantry: Pantry
) -> tuple[PlannedTrip, tuple[TripPack, ...], Stores, tuple[Fault, ...]]:
    """Provide for a trip; give it in the forms that its dishes are cooked in, its packs, its stores, what is wrong.

    What a trip that is gone took was drawn from the larder long ago: it takes nothing any more, and has its packs.
    """
    shops = Shops(planned, pantry.book)
    if planned.gone:
        return planned, trip_packs(planned, shops), Stores(), ()
    trip, taken = reserve(planned, shops, pantry)
    expired = too_late_for_jars(taken, pantry)
    packs = trip_packs(trip, shops)
    faults = [*is_it_over(trip, pantry.on), *too_late_for_packs(trip, packs, pantry), *expired]
    pantry.shelf.open(pantry.packed_on(trip))
    fills = fills_of(taken, packs)
    work = work_for(trip, fills, taken, pantry)
    stores = Stores(fills=fills, shortfalls=work.shortfalls, loads=work.loads, tasks=work.tasks)
    trip = replace(trip, gaps=(*trip.gaps, *work.gaps))
    return trip, packs, stores, (*faults, *work.faults)
