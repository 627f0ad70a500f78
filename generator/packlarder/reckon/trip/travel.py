"""The journey of a trip: water by leg, fuel, clock, what is carried, what it feeds, kit and rubbish."""

from collections.abc import Sequence

from packlarder.book.household import Household
from packlarder.reckon.trip.boiling import with_boiling
from packlarder.reckon.trip.clock import clocks
from packlarder.reckon.trip.feeds import fed
from packlarder.reckon.trip.fuel import fuels_of
from packlarder.reckon.trip.journey import Journey
from packlarder.reckon.trip.kit import kit_of, rubbish_of
from packlarder.reckon.trip.load import bearings, day_loads
from packlarder.reckon.trip.records import PlannedTrip, TripPack
from packlarder.reckon.trip.water import leg_waters, stop_waters


def travel(planned: PlannedTrip, packs: Sequence[TripPack], household: Household) -> Journey:
    """Work out the journey of a trip whose packs are known."""
    stops = stop_waters(planned)
    stops, legs = with_boiling(planned, household, stops, leg_waters(planned, stops))
    fuels = fuels_of(planned, household, stops, legs)
    return Journey(
        legs=legs,
        stops=stops,
        fuels=fuels,
        clock=clocks(planned),
        days=day_loads(planned, packs),
        bearing=bearings(planned, packs),
        fed=fed(planned),
        kit=kit_of(planned, packs, fuels, household),
        rubbish=rubbish_of(planned, packs, fuels),
    )
