"""The journey of a trip: water by leg, fuel, clock, what is carried, what it feeds, kit and rubbish."""

from collections.abc import Sequence
from types import MappingProxyType

from packlarder.book.household import Household
from packlarder.reckon.trip.journey import Journey, Rubbish
from packlarder.reckon.trip.records import PlannedTrip, TripPack


def travel(planned: PlannedTrip, packs: Sequence[TripPack], household: Household) -> Journey:
    """Work out the journey of a trip whose packs are known."""
    return Journey(
        legs=(),
        stops=(),
        fuels=(),
        clock=(),
        days=(),
        bearing=(),
        fed=(),
        kit=(),
        rubbish=Rubbish(packs=0, heaters=0, cartridges=0, by_day=MappingProxyType({})),
    )
