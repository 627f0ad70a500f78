"""What lies behind: a planned trip that is over, and work that would have had to be done before today."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date, datetime, time

from packlarder.faults import Fault, Severity
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.reckon.trip.stores import Task


def under_way(trip: PlannedTrip, on: date) -> bool:
    """Tell whether people have left: then nothing is bought or dried for it any more."""
    return trip.model.starts < on


def is_it_over(trip: PlannedTrip, on: date) -> Iterator[Fault]:
    """Say of a planned trip whose last day lies before today that it is to be brought home, or that its day is wrong.

    The spare day is waited for: people may still be out.
    """
    days = trip.last_day + (1 if trip.model.spare_day else 0)
    if trip.gone or (on - trip.model.starts).days < days:
        return
    key = "stands" if "stands" in trip.model.model_fields_set else "starts"
    yield Fault(
        place=trip.place.at(key),
        code="is-it-over",
        message=f"the last day of this trip was {trip.ends.isoformat()}, and it still stands as planned",
        help=(
            f"if you are back, `home {trip.id}` books what it took and marks it gone;"
            " if it is still to come, move `starts`"
        ),
        severity=Severity.WARNING,
    )


def done_now(tasks: Iterable[Task], on: date) -> Iterator[Task]:
    """Put off to today what would have had to be done before: the hours that were meant say nothing any more."""
    today = datetime.combine(on, time())
    for task in tasks:
        late = task.starts < today
        yield replace(task, starts=today, ends=max(today, _day(task)), whole_day=True, overdue=True) if late else task


def _day(task: Task) -> datetime:
    return datetime.combine(task.ends.date(), time())
