"""The stage of trips: their sums on a day, with those of the dishes that they name alone. Prints nothing."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from packlarder.book.book import (
    BATCHES_FOLDER,
    DRAWS_FOLDER,
    HOUSEHOLD_FILE,
    TRIPS_FOLDER,
    Book,
    component_place,
    dish_place,
    spoken,
    trip_place,
)
from packlarder.book.meant_dishes import without_dishes_not_meant
from packlarder.book.trip import Stands, Trip
from packlarder.cli.stages import BookRead, read
from packlarder.faults import Fault, has_errors
from packlarder.reckon.trip.records import TripSums
from packlarder.safety import faults_of
from packlarder.safety.whole import CheckedTrips, check_components, check_dishes, check_trips


@dataclass(frozen=True, slots=True, kw_only=True)
class TripsOpened:
    """A book that was read, with its trips worked out; `faults` are those of all that they use, and of reading."""

    folder: Path
    read: BookRead
    book: Book
    trips: CheckedTrips
    faults: tuple[Fault, ...]

    @property
    def day(self) -> date:
        """Give the day they were worked out for."""
        return self.read.day

    def about_trip(self, id: str) -> tuple[Fault, ...]:
        """Give the faults that concern a trip: in its file, its dishes' and their components', and in the larder's."""
        files = {HOUSEHOLD_FILE, trip_place(id).file, *self._used(id)}
        larder = (f"{BATCHES_FOLDER}/", f"{DRAWS_FOLDER}/")
        return tuple(
            fault
            for fault in self.faults
            for touched in [{fault.place.file, *(one.file for one in fault.also)}]
            if touched & files or fault.place.file.startswith(larder)
        )

    def not_reckoned_before(self, trip: TripSums) -> list[str]:
        """Give the ids of the trips that may take from the larder before one, and could not be worked out or read."""
        unsound = self.book.trips.keys() - self.trips.trips.keys()
        before = {id for id in unsound if self._may_take_before(self.book.trips[id], trip)}
        folder = f"{TRIPS_FOLDER}/"
        unread = {file.removeprefix(folder).partition(".")[0] for file in self.book.unread if file.startswith(folder)}
        return sorted(before | (unread - self.book.trips.keys()))

    @staticmethod
    def _may_take_before(other: Trip, trip: TripSums) -> bool:
        return other.stands is Stands.PLANNED and other.starts <= trip.model.starts

    def _used(self, id: str) -> Iterator[str]:
        """Give the files of the dishes that a trip names, and of the components that it and they name."""
        trip = self.book.trips.get(id)
        if trip is None:
            return
        names = {ration.name for ration in trip.on_the_move}
        for dish in dish_names(trip):
            known = self.book.dish_ids.get(spoken(dish))
            yield dish_place(known or spoken(dish).replace(" ", "-")).file
            if known:
                names |= {part.name for part in self.book.dishes[known].parts}
        for name in names:
            component = self.book.component_id(name)
            yield component_place(component).file if component else self.book.unread_components.get(spoken(name), "")


def open_trips(folder: Path, on: date | None) -> TripsOpened | BookRead:
    """Read a book and work out its trips, and of its dishes those that some trip names; what was read without a book.

    Dishes that no trip can mean are not even read, unless there is an error: then they are, so that it is told in full.
    """
    found = read(folder, on, without_dishes_not_meant)
    opened = _opened(folder, found)
    if not has_errors(opened.faults):
        return opened
    return _opened(folder, read(folder, on))


def _opened(folder: Path, found: BookRead) -> TripsOpened | BookRead:
    if found.book is None:
        return found
    components = check_components(found.book, found.day)
    dishes = check_dishes(components, _wanted(found.book))
    trips = check_trips(components, dishes.dishes, found.day)
    of_dishes = (fault for told in dishes.faults.values() for fault in (*told.slips, *told.against_rules))
    of_components = (fault for findings in components.findings.values() for fault in faults_of(findings))
    faults = (
        *found.faults,
        *components.slips,
        *of_dishes,
        *of_components,
        *components.store.faults,
        *trips.faults,
    )
    return TripsOpened(folder=folder, read=found, book=found.book, trips=trips, faults=faults)


def dish_names(trip: Trip) -> Iterator[str]:
    """Give the dishes that a trip names, as it names them."""
    for stop in trip.stops:
        yield from (line.detail.dish for line in stop.meals)
    yield from (line.detail.dish for line in trip.spare_day)
    yield from trip.drinks


def _wanted(book: Book) -> Iterable[str]:
    """Give the ids of the dishes that some trip names, once each."""
    named = (book.dish_ids.get(spoken(name)) for trip in book.trips.values() for name in dish_names(trip))
    return dict.fromkeys(id for id in named if id is not None)
