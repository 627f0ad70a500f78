"""What a trip takes from the larder and what must still be got: other forms, packs, fills, shortfalls, the plan."""

from collections.abc import Mapping
from datetime import date

from packlarder.book.book import Book
from packlarder.faults import Fault
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import PlannedTrip, TripPack
from packlarder.reckon.trip.stores import Stores


class Pantry:
    """What is left of the larder, and of the dryers' time, while trips take from both one after another."""

    def __init__(self, book: Book, components: Mapping[str, ComponentSums], larder: LarderSums, on: date) -> None:
        """Take stock; nothing is taken yet."""
        self.book = book
        self.components = components
        self.larder = larder
        self.on = on


def provide(
    planned: PlannedTrip, pantry: Pantry
) -> tuple[PlannedTrip, tuple[TripPack, ...], Stores, tuple[Fault, ...]]:
    """Provide for a trip; give it in the forms that its dishes are cooked in, its packs, its stores, what is wrong."""
    return planned, (), Stores(), ()
