"""Faults as text and as data."""

import json
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.book.show_faults import IN_FULL, PAGE_COLUMNS, as_records, render, sum_up
from packlarder.faults import Fault, Place, Severity


def fault(
    line: int | None = 1, column: int | None = 1, length: int = 1, *, file: str = "a.yaml", message: str = "wrong"
) -> Fault:
    """Make a fault at a line and column."""
    return Fault(
        place=Place(file=file, line=line, column=column, length=length), code="wrong", message=message, help="mend it"
    )


def columns(text: str) -> int:
    """Count the columns of a terminal that a text takes; the standard's own widths."""
    return sum(
        0 if unicodedata.combining(one) else 2 if unicodedata.east_asian_width(one) in "WF" else 1 for one in text
    )


def test_nothing_is_said_of_nothing() -> None:
    """Without faults there is no text."""
    assert render([], {}) == ""
    assert as_records([], {}) == []


def test_faults_are_sorted_by_place_and_told_once() -> None:
    """Files come by name, lines by number; the same fault twice is one."""
    faults = [fault(2, file="b.yaml"), fault(10), fault(2), fault(2)]
    texts = {"a.yaml": b"x\n" * 20, "b.yaml": b"x\n" * 20}
    records = as_records(faults, texts)
    assert [(record["file"], record["line"]) for record in records] == [("a.yaml", 2), ("a.yaml", 10), ("b.yaml", 2)]


@pytest.mark.parametrize(
    ("book", "path"), [("", "a.yaml"), ("recipes", "recipes/a.yaml"), ("../mine/", "../mine/a.yaml"), (".", "./a.yaml")]
)
def test_the_books_folder_stands_before_the_path(book: str, path: str) -> None:
    """A path is shown as seen from where the command was given, so that an editor can follow it."""
    assert render([fault()], {"a.yaml": b"x"}, book).startswith(
        f"{path}:1:1: error[wrong]: wrong\n  1 | x\n    | ^\n  help: mend it\n"
    )


def test_a_file_that_is_not_there_is_named_without_a_line() -> None:
    """A fault in a file that does not exist shows its path alone."""
    assert (
        render([fault(None, None)], {}, "recipes")
        == "recipes/a.yaml: error[wrong]: wrong\n  help: mend it\n\n1 error in 1 file\n"
    )
    assert as_records([fault(None, None)], {})[0]["line"] is None


def test_an_empty_line_is_not_shown() -> None:
    """Where there is nothing to see, nothing is shown."""
    assert (
        render([fault()], {"a.yaml": b""}) == "a.yaml:1:1: error[wrong]: wrong\n  help: mend it\n\n1 error in 1 file\n"
    )


def test_the_first_fifty_are_shown_in_full() -> None:
    """Of many faults the first fifty are shown, then how many more there are; all are counted."""
    texts = {"a.yaml": b"x\n" * 60}
    text = render([fault(line) for line in range(1, 61)], texts)
    assert text.count("error[wrong]") == IN_FULL == 50
    assert text.endswith("and 10 more, not shown here\n\n60 errors in 1 file\n")  # 60 - 50
    assert "more" not in render([fault(line) for line in range(1, 51)], texts)


def test_other_places_are_listed() -> None:
    """The other places of a fault follow its lines, each as an address."""
    two = Fault(
        place=Place(file="a.yaml", path=("a",)),
        code="twice",
        message="the same",
        also=(Place(file="b.yaml", path=("c",)), Place(file="lost.yaml")),
    )
    text = render([two], {"a.yaml": b"a: b", "b.yaml": b"\nc: d"}, "mine")
    assert "  also: mine/b.yaml:2:4\n  also: mine/lost.yaml\n" in text
    records = as_records([two], {"a.yaml": b"a: b", "b.yaml": b"\nc: d"}, "mine")
    assert records[0]["also"][0] == {"file": "mine/b.yaml", "line": 2, "column": 4}
    assert json.loads(json.dumps(records)) == records


def test_the_sum_counts_each_severity() -> None:
    """Errors, warnings and notes are counted apart, and the files they are in."""
    kinds = [Severity.NOTE, Severity.ERROR, Severity.WARNING, Severity.ERROR]
    faults = [
        Fault(place=Place(file=f"{number % 2}.yaml"), code="x", message=str(number), severity=kind)
        for number, kind in enumerate(kinds)
    ]
    assert sum_up(faults) == "2 errors, 1 warning, 1 note in 2 files"


@pytest.mark.parametrize(
    ("line", "marked"),
    [
        ("name: Leek", "Leek"),
        ("名前: 葱の輪", "葱の輪"),  # wide signs take two columns
        ("pâté: e\u0301te\u0301", "e\u0301te\u0301"),  # marks that stand on a letter take none
        ("\tname:\tLeek", "Leek"),
        ("bell\x07: Leek", "Leek"),
        ("zero\u200bwidth: Leek", "Leek"),
        ("x" * 300 + " Leek " + "y" * 300, "Leek"),
        ("葱" * 200 + " Leek " + "葱" * 200, "Leek"),
        ("Leek " + "y" * 300, "Leek"),
        ("y" * 300 + " Leek", "Leek"),
    ],
)
def test_the_mark_stands_under_its_words(line: str, marked: str) -> None:
    """The carets stand exactly under what is meant, whatever stands before it, and all fits on the page."""
    start = line.index(marked)
    shown = render([fault(1, start + 1, len(marked))], {"a.yaml": line.encode()}).splitlines()
    words, carets = shown[1], shown[2]
    before, after = words[: words.index(marked)], carets[: carets.index("^")]
    assert columns(before) == columns(after)
    assert carets.count("^") == columns(marked)
    assert columns(words) <= PAGE_COLUMNS


def test_what_a_message_repeats_can_not_upset_the_terminal() -> None:
    """A value with control characters or of great length is shown tame and short, in text and data."""
    wild = fault(message="no \x1b[31m\nfood " + "x" * 5_000)
    line = render([wild], {"a.yaml": b"x"}).splitlines()[0]
    assert "\x1b" not in line
    assert len(line) < 500
    assert as_records([wild], {"a.yaml": b"x"})[0]["message"].startswith("no ·[31m food xxx")


@given(st.text(max_size=300), st.integers(1, 300), st.integers(1, 300))
def test_any_line_can_be_shown(line: str, column: int, length: int) -> None:
    """No line, however odd, breaks the showing or overflows the page."""
    text = render([fault(1, column, length)], {"a.yaml": line.encode(errors="replace")})
    for shown in text.splitlines()[1:3]:
        assert columns(shown) <= PAGE_COLUMNS
