"""Containers that were filled, later, from another container of their batch."""

from datetime import date, timedelta

import pytest
from tests.sums.store_of import EGG, drawn_on, only, run_of, store_of

APRIL = date(2027, 4, 1)
FILLED = date(2027, 3, 13)
MOVED = EGG.replace("111 g}", "111 g}, {in: bag, holds: 60 g, from: run/a1, on: 2027-04-10}")
"""The two jars of egg, and a bag that was filled with 60 g of the first on 10 April."""


def test_filled_from_another_container() -> None:
    """Before 10 April 221 g stand in two jars; from then on 50 + 111 + 60 g in three containers."""
    before, after = (store_of(run_of(MOVED), on=date(2027, 4, day)) for day in (9, 10))
    assert {str(one.mark): one.left_g for one in before.larder.standing} == {"run/a1": 110, "run/a2": 111}
    assert {str(one.mark): one.left_g for one in after.larder.standing} == {"run/a1": 50, "run/a2": 111, "run/a3": 60}
    (moved,) = after.jar(1).drawn
    assert (moved.day, moved.went_g, moved.reason) == (date(2027, 4, 10), 60, "put into run/a3")


def test_what_was_filled_from_another_container_keeps_as_an_opened_one() -> None:
    """Both stood open on 10 April: two weeks from then (common practice); the other jar its four months."""
    found = store_of(run_of(MOVED.replace("in: bag", "in: jar")), on=date(2027, 4, 10))
    days = [one.use_by.day for one in (found.jar(1), found.jar(2), found.jar(3)) if one.use_by]
    assert days == [date(2027, 4, 24), FILLED + timedelta(days=121), date(2027, 4, 24)]


def test_filled_with_more_than_was_left() -> None:
    """Of 110 g 60 were eaten on the 9th: 60 can not go into the bag on the 10th; and nothing comes of it before."""
    eaten = drawn_on("2027-04-09", "from: run/a1, took: 60 g")
    found = store_of(run_of(MOVED), draws=(eaten,), fails=True)
    assert only(found)[::2] == ("more-than-left", "60 g of run/a1, and only 50 g were left")
    early = drawn_on("2027-04-09", "from: run/a3, took: 10 g")
    found = store_of(run_of(MOVED), draws=(early,), fails=True)
    assert only(found) == ("drawn-before-filled", "run/a3", "run/a3 was filled on 2027-04-10, after this")
    assert store_of(run_of(MOVED), draws=(early.replace("04-09", "04-10"),)).faults == ()


@pytest.mark.parametrize("source", ["run/a3", "run/b1", "other/a1"])
def test_filled_from_no_earlier_container_of_the_batch(source: str) -> None:
    """Not from itself, from another batch or another run: what is mixed is a batch of its own."""
    found = store_of(run_of(MOVED.replace("from: run/a1", f"from: {source}")), fails=True)
    assert found.codes == ["filled-from-elsewhere"]


def test_every_container_by_its_mark() -> None:
    """Full or empty, each is found by its mark once it is filled, and not before."""
    found = store_of(run_of(MOVED), draws=(drawn_on("2027-04-01", "from: run/a2, took: all"),), on=APRIL).larder
    assert {str(mark): one.left_g for mark, one in found.by_mark.items()} == {"run/a1": 110, "run/a2": 0}
    assert all(one.mark == mark for mark, one in found.by_mark.items())
