"""From keys to lines and columns."""

import pytest

from packlarder.book.places import Layout, locate
from packlarder.faults import KeyPath, Place, Spot

TEXT = """\
# a remark
name: Leek rings
loaded:
  fresh: 1 kg     # weighed
  dry:
parts:
  - leek: 60 g
    more: 2
  - {egg: 30 g, oil: [1, 2]}
  - just a text
"nötes é": 'in quotes'
long: >
  Folded
  text
empty: {}
two: first line
  second line
"""


@pytest.mark.parametrize(
    ("path", "spot", "marked"),
    [
        (("name",), Spot.KEY, (2, "name")),
        (("name",), Spot.VALUE, (2, "Leek rings")),
        (("loaded", "fresh"), Spot.VALUE, (4, "1 kg")),
        (("loaded", "dry"), Spot.VALUE, (5, "dry")),  # nothing stands there: its key
        (("loaded",), Spot.VALUE, (3, "loaded")),  # lines of keys: the key above them
        (("loaded", "lost"), Spot.KEY, (3, "loaded")),  # a key that is missing: the key of its mapping
        (("loaded", "lost", "deeper", 3), Spot.VALUE, (3, "loaded")),
        (("parts",), Spot.VALUE, (6, "parts")),
        (("parts", 0), Spot.VALUE, (7, "leek")),  # an item without a key: its first key
        (("parts", 0, "lost"), Spot.KEY, (7, "leek")),
        (("parts", 0, "more"), Spot.VALUE, (8, "2")),
        (("parts", 1), Spot.VALUE, (9, "{egg: 30 g, oil: [1, 2]}")),
        (("parts", 1, "lost"), Spot.KEY, (9, "{egg: 30 g, oil: [1, 2]}")),
        (("parts", 1, "oil"), Spot.VALUE, (9, "[1, 2]")),
        (("parts", 1, "oil", 1), Spot.VALUE, (9, "2")),
        (("parts", 2), Spot.VALUE, (10, "just a text")),
        (("parts", 2, "take"), Spot.VALUE, (10, "just a text")),  # a text that stands for a mapping
        (("parts", 9), Spot.VALUE, (6, "parts")),
        (("parts", "holds", 1), Spot.VALUE, (9, "{egg: 30 g, oil: [1, 2]}")),  # a list that stands for a mapping
        (("name", 0), Spot.VALUE, (2, "Leek rings")),  # a text that stands for a list of one
        (("nötes é",), Spot.KEY, (11, '"nötes é"')),
        (("nötes é",), Spot.VALUE, (11, "'in quotes'")),
        (("long",), Spot.VALUE, (12, ">")),
        (("empty", "lost"), Spot.KEY, (15, "empty")),
        (("two",), Spot.VALUE, (16, "first line")),
        (("lost",), Spot.KEY, (2, "name")),  # a key of the whole file: its first line
        ((), Spot.VALUE, (2, "name")),
    ],
)
def test_a_place_is_found_or_the_nearest_thing_around_it(path: KeyPath, spot: Spot, marked: tuple[int, str]) -> None:
    """Keys lead to the words to mark; keys that are not there, to what they are missing from."""
    found = locate(TEXT.encode(), Place(file="jar.yaml", path=path, spot=spot))
    line = TEXT.splitlines()[found.line - 1]
    assert found.line_text == line
    assert (found.line, line[found.column - 1 : found.column - 1 + found.length]) == marked


@pytest.mark.parametrize(
    "data", [b"", b"\n", b"a: [", b"a: \xff", b"- a", b"text", b"? [a]\n: b", b"a: *b", b"\xef\xbb\xbfa: b"]
)
def test_a_place_in_any_file_is_inside_it(data: bytes) -> None:
    """A place is never outside its file, even where the file holds nothing of the kind."""
    layout = Layout(data)
    for path in ((), ("a",), ("a", "b"), (0,), ("a", 0), ("lost",)):
        found = layout.locate(Place(file="jar.yaml", path=path))
        assert found.line == 1
        assert 1 <= found.column <= len(found.line_text) + 1


def test_a_byte_order_mark_does_not_shift_columns() -> None:
    """Columns count letters from the first one that can be seen."""
    assert locate(b"\xef\xbb\xbfname: x", Place(file="jar.yaml", path=("name",))).column == 7


def test_lines_and_columns_outside_the_file_are_brought_back() -> None:
    """A place given as line and column is kept inside the file, its mark inside the line."""
    found = locate(b"ab\ncd", Place(file="jar.yaml", line=7, column=9, length=5))
    assert (found.line, found.column, found.length, found.line_text) == (2, 3, 1, "cd")
    found = locate(b"ab\ncd", Place(file="jar.yaml", line=1, column=2, length=5))
    assert (found.line, found.column, found.length, found.line_text) == (1, 2, 1, "ab")
