"""What trips share: the larder's shelf, the dryers' time and the days at home, from which one takes after another."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from datetime import date, datetime, timedelta
from functools import cached_property
from typing import NamedTuple

from packlarder.book.book import Book
from packlarder.figures.before_a_trip import PACKED_BEFORE
from packlarder.figures.keeping import Kept
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.away import Absence, absence_of, day_at_home
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.reckon.trip.shelf import Shelf
from packlarder.reckon.use_by import ROOM_C, KeepingTimes, limits_of


class Busy(NamedTuple):
    """When a dryer is taken: from loading until it has rested."""

    since: datetime
    until: datetime


class Pantry:
    """What is left of the larder, of the dryers' time and of days at home, while one trip after another takes of it."""

    def __init__(self, book: Book, components: Mapping[str, ComponentSums], larder: LarderSums, on: date) -> None:
        """Take stock; nothing is taken yet."""
        self.book = book
        self.components = components
        self.larder = larder
        self.on = on
        self.shelf = Shelf(larder, KeepingTimes(book.household))
        self.busy: dict[str, list[Busy]] = defaultdict(list)
        self.away: list[Absence] = []
        self._keeps: dict[tuple[str, Kept, date], date | None] = {}

    def keeps_until(self, component: ComponentSums, kept: Kept, filled_on: date) -> date | None:
        """Give until when food keeps that is filled for a trip; None where no rule and no figure speaks of it."""
        asked = component.id, kept, filled_on
        if asked not in self._keeps:
            limits = limits_of(component, self.book.household.larder.keeping, kept, ROOM_C)
            self._keeps[asked] = min([limit.span.after(filled_on) for limit in limits], default=None)
        return self._keeps[asked]

    def leave(self, trip: PlannedTrip) -> None:
        """Let people be away on a trip, or have been: what is done for later trips is done before it or after it."""
        self.away.append(absence_of(trip))

    def at_home(self, day: date) -> date:
        """Give a day if people are at home on it, or else the last one before it on which they are."""
        return day_at_home(day, self.away)

    def packed_on(self, trip: PlannedTrip) -> date:
        """Give the day on which the packs of a trip are filled."""
        return self.at_home(trip.model.starts - timedelta(days=PACKED_BEFORE.value))

    def batches_of(self, component: ComponentSums) -> Sequence[BatchSums]:
        """Give the batches of a component that were ever put into containers, oldest first."""
        return self._batches.get(component.id, ())

    @cached_property
    def _batches(self) -> Mapping[str, Sequence[BatchSums]]:
        batches = {(one.batch.run, one.batch.index): one.batch for one in self.larder.by_mark.values()}
        found: dict[str, list[BatchSums]] = defaultdict(list)
        for batch in sorted(batches.values(), key=lambda batch: (batch.loaded, batch.run, batch.index)):
            found[batch.component.id].append(batch)
        return found
