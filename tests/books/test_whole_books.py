"""Every small book gives exactly the faults, or is read exactly as, the text that lies beside it says."""

import pytest
from tests.books.cases import BASE, FAULTS, FOLDER, READ, Case, as_read, cases, checked, files_in, shown

VALID, INVALID = cases("valid"), cases("invalid")
GOLDENS = {"invalid": FAULTS, "valid": READ}


@pytest.mark.parametrize("case", INVALID, ids=lambda case: case.name)
def test_a_book_with_a_slip_gives_the_faults_that_lie_beside_it(case: Case, *, update_goldens: bool) -> None:
    """The faults of a book, as `check` prints them, are those expected, and there is at least one."""
    actual = shown(case.files())
    assert actual
    _compare(case, FAULTS, actual, update=update_goldens)


@pytest.mark.parametrize("case", VALID, ids=lambda case: case.name)
def test_a_sound_book_is_read_as_it_was_meant(case: Case, *, update_goldens: bool) -> None:
    """A sound book has no faults at all, and what was read of it is what is expected."""
    worked, faults = checked(case.files())
    assert faults == ()
    assert worked is not None
    _compare(case, READ, as_read(worked), update=update_goldens)


def test_the_base_of_all_books_is_sound() -> None:
    """A fault in a case is the fault of what the case changes."""
    assert checked(files_in(BASE))[1] == ()


def test_every_expected_text_belongs_to_a_book_that_changes_something() -> None:
    """No expected text is left behind when its book goes, and the walk finds books at all."""
    assert len(VALID) > 15
    assert len(INVALID) > 150
    for kind, golden in GOLDENS.items():
        named = {case.folder / golden for case in cases(kind) if case.files() != files_in(BASE)}
        found = {path for name in GOLDENS.values() for path in (FOLDER / kind).rglob(name)}
        assert found == named


def _compare(case: Case, golden: str, actual: str, *, update: bool) -> None:
    path = case.folder / golden
    if update:
        path.write_text(actual, encoding="utf-8", newline="\n")
    assert path.exists(), f"no {golden}: run pytest tests/books --update-goldens, and read what it writes"
    assert actual == path.read_text(encoding="utf-8")
