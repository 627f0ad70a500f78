"""`new trip`, and the trip in the book that `start` makes, through the real command line."""

import json
from datetime import date
from pathlib import Path

import pytest
from tests.house.small_store import Shell, make_book

from packlarder.cli import main, texts
from packlarder.cli.new_trip import saturday_after


@pytest.fixture
def shell(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    """Give a shell that speaks to a small book of its own."""
    return Shell(make_book(tmp_path / "book"), capsys)


def test_a_new_trip_asks_for_people_places_and_meals_alone(shell: Shell) -> None:
    """Stoves, pots and a start are filled in; what nobody can know is asked for, and with it the trip is sound."""
    assert shell("new trip Round the cape: again")[0] == 0
    path = shell.book / "trips/round-the-cape-again.yaml"
    text = path.read_text("utf-8")
    for line in (
        'name: "Round the cape: again"',
        "starts: 2027-06-05        # Saturday, the day of departure",  # the book's day, 1 June 2027, is a Tuesday
        "stoves: [gas stove]  ",
        "pots: [pot]  ",
        "    # height: 100 m  ",
        "      # - supper: beans and rice",
        "#   snack: crackers and apple",
    ):
        assert line in text, line
    ended, out, _ = shell("check")
    assert (ended, out.count("error["), out.count("error[empty-value]")) == (1, 3, 3)
    filled = text.replace("people:  ", "people: [Ada]  ").replace("place:", "place: the cape").replace("# - ", "- ")
    path.write_text(filled, "utf-8")
    assert json.loads(shell("check --json")[1])["errors"] == 0
    assert max(map(len, text.splitlines())) <= 120


def test_a_trip_is_not_written_over(shell: Shell) -> None:
    """A name that is taken is refused, by name or by file, even where the file could not be read."""
    shell("new trip Round the cape")
    before = shell.files()
    ended, out, err = shell("new trip round-the-cape")
    assert (ended, out) == (2, "")
    assert err.startswith('packlarder: "round-the-cape" is there already: ')
    assert shell("new trip ?!")[0] == 2
    says = texts.SEE_HELP.format(program=f"{texts.PROGRAM} new")
    assert shell("new trip") == (2, "", f"packlarder: NAME is missing. {says}\n")
    assert shell.files() == before


def test_names_with_signs_stay_names(shell: Shell) -> None:
    """A stove whose name has a comma stays one stove; the usual one comes first; a book without dishes has no list."""
    kitchen = shell.book / "book.yaml"
    text = kitchen.read_text("utf-8")
    stove = '  "ring, old": {fuel: gas mix, kind: gas burner}\n'
    kitchen.write_text(text.replace("stoves:\n", f"stoves:\n{stove}", 1), "utf-8")
    for path in (shell.book / "dishes").iterdir():
        path.unlink()
    shell("new trip Cape --on 2027-06-05")
    made = (shell.book / "trips/cape.yaml").read_text("utf-8")
    assert 'stoves: [gas stove, "ring, old"]' in made
    assert "starts: 2027-06-12" in made  # the day after a Saturday's own
    assert made.endswith("# notes: ...\n\n# Your dishes, by meal:\n\n")
    assert shell("check")[1].count("error[empty-value]") == 3


@pytest.mark.parametrize(
    ("day", "saturday"),
    [
        ("2027-06-01", "2027-06-05"),
        ("2027-06-04", "2027-06-05"),
        ("2027-06-05", "2027-06-12"),
        ("2027-12-26", "2028-01-01"),
    ],
)
def test_the_next_saturday(day: str, saturday: str) -> None:
    """It lies one to seven days ahead."""
    assert saturday_after(date.fromisoformat(day)) == date.fromisoformat(saturday)


def test_the_trip_of_a_new_book_can_be_planned(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It lies behind, so that no day makes it wrong; with the lines away that say so it is planned, and sound."""
    book = tmp_path / "book"
    assert main(["start", str(book)]) == 0
    capsys.readouterr()
    for day in ("2026-10-05", "2027-06-01", "2040-01-01"):
        assert main(["check", "--book", str(book), "--on", day]) == 0
        assert capsys.readouterr().out.endswith("nothing wrong.\n")
    path = book / "trips/weekend-at-the-lake.yaml"
    lines = path.read_text("utf-8").partition("came home:")[0].splitlines(keepends=True)
    path.write_text("".join(line for line in lines if not line.startswith("stands:")), "utf-8")
    assert main(["check", "--book", str(book), "--on", "2026-09-15"]) == 0
