"""A planned trip that is over is told of, and nothing is planned before today."""

from datetime import date

import pytest
from tests.sums.trip_of import one_stop, trip_of

from packlarder.faults import Severity
from packlarder.sheets.trip_plan import plan_days

STEW = one_stop("supper: stew")
TWO_DAYS = one_stop("supper: rice", "lunch: rice")
STARTS = "2027-06-26"


@pytest.mark.parametrize(
    ("on", "more", "told"),
    [
        (date(2027, 6, 27), "", []),  # the lunch of the second day
        (date(2027, 6, 28), "", ["is-it-over"]),
        (date(2027, 6, 28), "spare day: [lunch: rice]", []),
        (date(2027, 6, 29), "spare day: [lunch: rice]", ["is-it-over"]),
        (date(2027, 6, 28), "stands: gone", []),
    ],
)
def test_a_trip_whose_last_day_lies_behind(on: date, more: str, told: list[str]) -> None:
    """Two days from 26 June: over on the 28th, with a spare day on the 29th, unless it is gone."""
    assert trip_of(TWO_DAYS, on=on, more=more, fails=None).codes == told


def test_it_points_to_the_way_out() -> None:
    """A warning, at `stands` where that is written, and no word of what should have been dried."""
    found = trip_of(STEW, on=date(2027, 7, 3), fails=True)
    (fault,) = found.faults
    assert (fault.code, fault.severity, fault.marked) == ("is-it-over", Severity.WARNING, STARTS)
    assert fault.message == "the last day of this trip was 2027-06-26, and it still stands as planned"
    assert fault.help == (
        "if you are back, `home trip` books what it took and marks it gone; if it is still to come, move `starts`"
    )
    stores = found.trip.stores
    assert stores.fills
    assert (stores.tasks, stores.loads, stores.shortfalls) == ((), (), ())
    written = trip_of(STEW, on=date(2027, 7, 3), more="stands: planned", fails=True)
    assert written.faults[0].marked == "planned"


@pytest.mark.parametrize("on", [date(2027, 6, 25), date(2027, 6, 26)])
def test_what_should_be_done_already_is_done_now(on: date) -> None:
    """A start tomorrow and today: salt is bought and all is packed on that day, and nothing has an earlier date."""
    found = trip_of(STEW, on=on, fails=True)
    assert "starts-in-the-past" in found.codes
    tasks = found.trip.stores.tasks
    assert tasks
    assert {task.starts.date() for task in tasks} == {on}
    assert min(task.ends.date() for task in tasks) == on
    late = {(task.kind.value, *[one.id for one in task.components]) for task in tasks if task.overdue}
    assert {("buy", "beef"), ("cook", "beef"), ("dry", "beef"), ("condition", "onion")} <= late
    assert (("pack",) in late) is (on == date(2027, 6, 26))
    assert plan_days(found.trip)[0].on == "Now"


def test_nothing_is_planned_while_people_are_away() -> None:
    """On the second day of the trip nobody buys for it at home, and that is no fault."""
    found = trip_of(one_stop("supper: stew", "lunch: rice"), on=date(2027, 6, 27))
    assert found.trip.stores.tasks == ()
