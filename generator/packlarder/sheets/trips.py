"""The trips of a book as a whole: their list, what is eaten on which, and what they take from the larder."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from packlarder.book.book import Book, spoken
from packlarder.book.household import Household
from packlarder.book.trip import Stands, Trip
from packlarder.lazily import Kept
from packlarder.reckon.trip.records import TripSums
from packlarder.safety.whole import CheckedBook
from packlarder.sheets.book_sheet import BookTrips
from packlarder.sheets.facts import Link
from packlarder.sheets.label_sheet import LabelSet
from packlarder.sheets.trip import dates, strip_of, trip_sheet
from packlarder.sheets.trip_data import trip_data
from packlarder.sheets.trip_field import trip_book
from packlarder.sheets.trip_figures import weight
from packlarder.sheets.trip_labels import trip_labels
from packlarder.sheets.trip_menu import named
from packlarder.sheets.trip_sheet import TripEntry, TripIndex
from packlarder.sheets.trip_stores_sheet import Reserved


@dataclass(frozen=True, slots=True, kw_only=True)
class TripsTaking:
    """What trips take of dishes and components, by id, for the pages of those.

    `eaten_on` are the planned trips of each dish, made of the files alone, so that it is the same in each process;
    `reserved` is what planned trips take of each component, and `reserved_g` all of it, empty in a process that has no
    sums of trips.
    """

    eaten_on: Mapping[str, tuple[Link, ...]]
    reserved: Mapping[str, tuple[Reserved, ...]]
    reserved_g: Mapping[str, float]


def trips_taking(checked: CheckedBook) -> TripsTaking:
    """Tell of each dish and component what trips take of it."""
    reserved, reserved_g = _reserved(checked)
    return TripsTaking(eaten_on=_eaten_on(checked.book), reserved=reserved, reserved_g=reserved_g)


def book_trips(checked: CheckedBook, *, edition: str, on: date) -> BookTrips:
    """Build what is published of a book's trips, for a day."""
    household, trips = checked.book.household, checked.trips
    planned = tuple(id for id, trip in trips.items() if not trip.sums.gone)
    day = on.isoformat()
    return BookTrips(
        index=_index(checked, on),
        sheets=Kept(trips, lambda id: trip_sheet(trips[id].sums, trips[id].findings, household)),
        data=Kept(planned, lambda id: trip_data(trips[id].sums, trips[id].findings, edition=edition, day=day)),
        booklets=Kept(planned, lambda id: trip_book(trips[id], household, edition=edition, on=on)),
        labels=Kept(planned, lambda id: _labels(trips[id].sums, household, edition)),
    )


def _labels(trip: TripSums, household: Household, edition: str) -> LabelSet:
    return trip_labels(trip, household, edition=edition, title=trip.model.name)


def trip_link(id: str, trip: Trip) -> Link:
    """Give the link to a trip."""
    return Link(kind="trip", id=id, name=trip.name)


def _index(checked: CheckedBook, on: date) -> TripIndex:
    book = checked.book
    ids = sorted(book.trips, key=lambda id: (book.trips[id].starts, id))
    entries = {id: _entry(checked, id) for id in ids}
    planned = [id for id in ids if not entries[id].gone]
    ahead = (id for id in planned if _ends(checked, id) >= on)
    following = next(ahead, None)
    return TripIndex(
        planned=tuple(entries[id] for id in planned),
        gone=tuple(entries[id] for id in reversed(ids) if entries[id].gone),
        next=None if following is None else entries[following],
    )


def _entry(checked: CheckedBook, id: str) -> TripEntry:
    trip = checked.book.trips[id]
    found = checked.trips.get(id)
    return TripEntry(
        link=trip_link(id, trip),
        dates=dates(trip.starts, _ends(checked, id)),
        people=named([person.name for person in trip.people]),
        gone=trip.stands is Stands.GONE,
        figures=() if found is None else tuple(strip_of(found.sums, checked.book.household)),
    )


def _ends(checked: CheckedBook, id: str) -> date:
    """Give the last day of a trip; by its stops where it was not worked out."""
    found = checked.trips.get(id)
    trip = checked.book.trips[id]
    return trip.starts + timedelta(days=trip.stops[-1].day - 1) if found is None else found.sums.ends


def _eaten_on(book: Book) -> Mapping[str, tuple[Link, ...]]:
    """Tell of each dish on which planned trips it is eaten, the first to start first."""
    found: dict[str, dict[str, Link]] = defaultdict(dict)
    for id, trip in sorted(book.trips.items(), key=lambda pair: (pair[1].starts, pair[0])):
        lines = (*trip.spare_day, *(line for stop in trip.stops for line in stop.meals))
        for name in (*trip.drinks, *(line.detail.dish for line in lines)) if trip.stands is Stands.PLANNED else ():
            dish = book.dish_ids.get(spoken(name))
            if dish is not None:
                found[dish][id] = trip_link(id, trip)
    return {dish: tuple(links.values()) for dish, links in found.items()}


def _reserved(checked: CheckedBook) -> tuple[Mapping[str, tuple[Reserved, ...]], Mapping[str, float]]:
    """Tell of each component what planned trips draw from the larder."""
    rows: dict[str, list[Reserved]] = defaultdict(list)
    grams: dict[str, float] = defaultdict(float)
    for id, trip in checked.trips.items():
        for fill in trip.sums.stores.fills:
            drawn_g = sum(one.grams for one in fill.drawn)
            if drawn_g:
                link = trip_link(id, trip.sums.model)
                rows[fill.component.id].append(
                    Reserved(trip=link, on=dates(trip.sums.model.starts, trip.sums.ends), weight=weight(drawn_g))
                )
                grams[fill.component.id] += drawn_g
    return {id: tuple(told) for id, told in rows.items()}, dict(grams)
