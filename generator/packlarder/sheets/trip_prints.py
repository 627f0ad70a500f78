"""What is printed for the trips of a book that are planned, each made when somebody asks for it."""

from collections.abc import Mapping
from datetime import date

from packlarder.lazily import Kept
from packlarder.safety.whole import CheckedBook
from packlarder.sheets.label_sheet import LabelSet
from packlarder.sheets.trip_field import trip_book
from packlarder.sheets.trip_field_sheet import TripBook
from packlarder.sheets.trip_labels import trip_labels


def trip_books(checked: CheckedBook, *, edition: str, on: date) -> Mapping[str, TripBook]:
    """Give the booklets of the planned trips, by id."""
    household = checked.book.household
    return Kept(_planned(checked), lambda id: trip_book(checked.trips[id], household, edition=edition, on=on))


def trip_label_sets(checked: CheckedBook, *, edition: str) -> Mapping[str, LabelSet]:
    """Give the labels of all packs of the planned trips, by id."""
    household = checked.book.household

    def labels(id: str) -> LabelSet:
        trip = checked.trips[id].sums
        return trip_labels(trip, household, edition=edition, title=trip.model.name)

    return Kept(_planned(checked), labels)


def _planned(checked: CheckedBook) -> tuple[str, ...]:
    return tuple(id for id, trip in checked.trips.items() if not trip.sums.gone)
