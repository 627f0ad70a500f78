"""Days on which the household is away on a trip, and nothing is done at home."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from packlarder.faults import Fault
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.reckon.trip.slips import overlaps

A_DAY = timedelta(days=1)


class Absence(NamedTuple):
    """The days of a trip, from that of departure to the last; a spare day may be needed, and is one of them."""

    trip: PlannedTrip
    first: date
    last: date

    @property
    def since(self) -> datetime:
        """Give when it begins: with the day of departure."""
        return datetime.combine(self.first, time())

    @property
    def until(self) -> datetime:
        """Give when it is over: with the last day."""
        return datetime.combine(self.last + A_DAY, time())


def absence_of(trip: PlannedTrip) -> Absence:
    """Give the days on which people are away on a trip."""
    return Absence(trip, trip.model.starts, trip.ends + A_DAY if trip.model.spare_day else trip.ends)


def day_at_home(day: date, absences: Iterable[Absence]) -> date:
    """Give a day if people are at home on it, or else the last one before it on which they are."""
    known = list(absences)
    while any(one.first <= day <= one.last for one in known):
        day -= A_DAY
    return day


def on_two_trips(trip: PlannedTrip, others: Iterable[Absence]) -> Iterator[Fault]:
    """Find who is on another trip while this one lasts, by name; one fault for each other trip that is planned."""
    own = absence_of(trip)
    named = {eater.name.casefold(): eater.name for eater in trip.eaters}
    for other in () if trip.gone else [one for one in others if not one.trip.gone]:
        both = [named[name] for one in other.trip.eaters if (name := one.name.casefold()) in named]
        if both and own.first <= other.last and other.first <= own.last:
            yield overlaps(trip.place, other.trip.model, other.trip.place, both, other.last)
