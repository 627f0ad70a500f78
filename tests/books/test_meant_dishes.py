"""The files of dishes that trips can mean: those that are left out are never missed."""

import pytest

from packlarder.book.meant_dishes import without_dishes_not_meant

RICE = b"name: Red rice\nmeal: supper\n"
OTHERS = {"book.yaml": b"x", "components/red-rice.yaml": b"name: Red rice\n", "pages/a.md": b"a"}


@pytest.mark.parametrize(
    ("trip", "dish"),
    [
        (b"meals: [supper: red-rice-2]", RICE),
        (b"meals: [supper: Red   RICE]", RICE),
        (b'meals:\n  - supper: "red\n      rice"', RICE),
        (b"drinks: red-rice", b"name: 'Red rice'  # ours\n"),
        (b"meals: [supper: old rice]", b"name: Barley\nformerly: old rice\n"),
        (b"meals: [supper: x]", b"meal: supper\n"),
        (b"meals: [supper: x]", b"name: A\nname: B\n"),
    ],
)
def test_what_may_be_meant_stays(trip: bytes, dish: bytes) -> None:
    """A dish that a trip names by id or name, written as YAML likes; one with former ids; one with no or two names."""
    files = {**OTHERS, "dishes/red-rice-2.yaml": dish, "trips/lake.yaml": trip}
    assert without_dishes_not_meant(files) == files


def test_other_dishes_are_left_out_and_nothing_else() -> None:
    """A dish that no trip names goes; components, pages and the rest stay. Without trips, no dish is meant."""
    files = {**OTHERS, "dishes/soup.yaml": b"name: Red soup\n"}
    assert without_dishes_not_meant({**files, "trips/lake.yaml": b"meals: [supper: red rice]"}).keys() == {
        *OTHERS,
        "trips/lake.yaml",
    }
    assert without_dishes_not_meant(files) == OTHERS


def test_a_name_that_is_no_text_stays() -> None:
    """Beside a trip that is no text either it may be meant; that they are none is told when they are read."""
    files = {"dishes/soup.yaml": b"name: \xff\n", "trips/lake.yaml": b"\xfe"}
    assert without_dishes_not_meant(files) == files
