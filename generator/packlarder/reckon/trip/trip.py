"""All trips of a book: those that are planned take from the larder one after another, in the order of their start."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from datetime import date
from types import MappingProxyType

from packlarder.book.book import Book
from packlarder.faults import Fault
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.away import on_two_trips
from packlarder.reckon.trip.meals import PlanOf, plan_trip
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.provision import provide
from packlarder.reckon.trip.records import PlannedTrip, TripSums
from packlarder.reckon.trip.travel import travel


@dataclass(frozen=True, slots=True, kw_only=True)
class TripsSums:
    """Every trip that could be worked out, by id, and what is wrong with all of them."""

    trips: Mapping[str, TripSums]
    faults: tuple[Fault, ...]


def reckon_trips(
    book: Book, components: Mapping[str, ComponentSums], plan_of: PlanOf, larder: LarderSums, on: date
) -> TripsSums:
    """Work out all trips of a book on a day."""
    pantry = Pantry(book, components, larder, on)
    trips: dict[str, TripSums] = {}
    faults: list[Fault] = []
    for id in sorted(book.trips, key=lambda id: (book.trips[id].starts, id)):
        planned, wrong = plan_trip(book, components, plan_of, id)
        faults += wrong
        if planned is not None:
            faults += on_two_trips(planned, pantry.away)
            trips[id], wrong = _worked_out(planned, pantry)
            faults += wrong
            pantry.leave(planned)
    return TripsSums(trips=MappingProxyType(trips), faults=tuple(faults))


def _worked_out(planned: PlannedTrip, pantry: Pantry) -> tuple[TripSums, tuple[Fault, ...]]:
    planned, packs, stores, faults = provide(planned, pantry)
    known = {field.name: getattr(planned, field.name) for field in fields(PlannedTrip)}
    return TripSums(**known, packs=packs, stores=stores, journey=travel(planned, packs, pantry.book.household)), faults
