"""`home` through the real command line: shown first, then written whole or not at all, and never twice."""

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from shutil import copytree
from types import MappingProxyType

import pytest
from tests.house.small_store import Shell, make_book, write

from packlarder.book.book import Book
from packlarder.book.draw import read_mark
from packlarder.book.read import read_book
from packlarder.cli import home as command
from packlarder.cli import texts
from packlarder.disk import together
from packlarder.disk.together import FileChange, write_together
from packlarder.disk.writing import NotWritten
from packlarder.reckon.trip.stores import Drawn, Fill, Stores
from packlarder.safety.whole import CheckedBook, check_book

TRIP = """\
# our first
name: Egg trip   # a name
starts: 2027-05-22

people: [Ada]
stoves: gas stove
pots: pot
stops:
  - place: the cape
    day: 1
    meals:
      - supper: scrambled eggs
# until here
"""
DISH = """\
name: Scrambled eggs
meal: supper
serves: 1
parts:
  - egg powder: "60 g"   # for one
  - olive oil: {take: 1 tbsp, called: oil}
steps:
  - mix: egg powder
  - fry: [egg powder, oil]
    for: 5 min
    to: 74 °C
    until: it is firm
"""
FROM = (("2027-04-10-eggs/a1", 50.0), ("2027-04-10-eggs/a3", 73.7))
"""What the packs took: a part of the first jar, and all of the third, which holds 2.6 oz = 73.7 g."""
OIL_G = 13.8
DRAWS = """\
# yaml-language-server: $schema=../.schema/draws.json
date: 2027-05-22
for: Egg trip
drawn:
  - {from: 2027-04-10-eggs/a1, took: 50 g}  # Egg powder
  - {from: 2027-04-10-eggs/a3, took: all}   # Egg powder
"""
NOTED = Path("draws/2027-05-22-egg-trip.yaml")


def _provided(book: Book, on: date) -> CheckedBook:
    """Check a book, and let each planned trip take what the sums below it would take."""
    checked = check_book(book, on)
    trips = {}
    for id, one in checked.trips.items():
        parts = [part.component for part in one.sums.meals[0].plan.parts]
        fills = () if one.sums.gone else (_fill(parts[0], FROM, 0.0), _fill(parts[1], (), OIL_G))
        trips[id] = replace(one, sums=replace(one.sums, stores=Stores(fills=fills)))
    return replace(checked, trips=MappingProxyType(trips))


def _fill(component: object, drawn: Sequence[tuple[str, float]], short_g: float) -> Fill:
    return Fill(
        component=component,  # type: ignore[arg-type]  # a component's sums, out of a plan
        need_g=sum(grams for _, grams in drawn) + short_g,
        drawn=tuple(Drawn(mark=read_mark(mark), grams=grams, use_by=None) for mark, grams in drawn),
        bought_on_the_way_g=0.0,
        short_g=short_g,
        into=(),
        first_on=date(2027, 5, 22),
        last_on=date(2027, 5, 22),
    )


@pytest.fixture
def shell(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Shell:
    """Give a shell that speaks to a small book with a trip in it, whose packs were filled as FROM says."""
    monkeypatch.setattr(command, "check_book", _provided)
    book = make_book(tmp_path / "book")
    write(book, "trips/egg-trip.yaml", TRIP)
    write(book, "dishes/scrambled-eggs.yaml", DISH)
    return Shell(book, capsys)


def test_it_is_only_shown_at_first(shell: Shell) -> None:
    """The text tells jars, what came home, the lesson and the lines that change; no file is touched."""
    before = shell.files()
    ended, out, err = shell(
        "home Egg trip",
        *("--left", "egg powder: 20 g, salty"),
        *("--learnt", "scrambled eggs: egg powder: 60 g -> 50 g, too much, we say"),
    )
    assert (ended, err) == (0, "")
    assert shell.files() == before
    head, _, diff = out.partition("\nFILES\n")
    assert head == (
        "Egg trip, from 22 May 2027\n\n"
        "TAKEN OUT OF THE LARDER\n"
        "Egg powder [RAW]  2027-04-10-eggs/a1  50 g\n"
        "Egg powder [RAW]  2027-04-10-eggs/a3  74 g  emptied\n"
        "\nNot out of the larder, and so not booked: 14 g Olive oil.\n\n"
        "CAME HOME UNEATEN\n"
        "Egg powder [RAW]  20 g\n"
        "- Egg powder: salty\n\n"
        "It lay open in a trip pack, so it is not put back into a jar: it keeps for days,\n"
        "not for months. Eat it soon, or throw it away.\n\n"
        "LEARNT\n"
        "- Scrambled eggs: egg powder 60 g -> 50 g, too much, we say\n"
    )
    assert diff == (
        "new: draws/2027-05-22-egg-trip.yaml\n"
        "--- trips/egg-trip.yaml\n"
        "+++ trips/egg-trip.yaml\n"
        "@@ -3,2 +3,3 @@\n"
        " starts: 2027-05-22\n"
        "+stands: gone\n"
        "\n"
        "@@ -12,2 +13,6 @@\n"
        "       - supper: scrambled eggs\n"
        "+came home:\n"
        "+  date: 2027-06-01\n"
        "+  left:\n"
        "+    - egg powder: {weight: 20 g, why: salty}\n"
        " # until here\n"
        "--- dishes/scrambled-eggs.yaml\n"
        "+++ dishes/scrambled-eggs.yaml\n"
        "@@ -4,3 +4,3 @@\n"
        " parts:\n"
        '-  - egg powder: "60 g"   # for one\n'
        '+  - egg powder: "50 g"   # for one\n'
        "   - olive oil: {take: 1 tbsp, called: oil}\n"
        "@@ -12 +12,3 @@\n"
        "     until: it is firm\n"
        "+learnt:\n"
        '+  - {date: 2027-06-01, change: egg powder 60 g -> 50 g, why: "too much, we say"}\n'
        "\nNothing was written yet; say the same again with --write.\n"
    )


def test_it_is_written_once(shell: Shell) -> None:
    """The larder lacks what was taken, trip and dish are changed as shown, all is sound; a second run is refused."""
    before = shell.files()
    assert shell.left() == {f"2027-04-10-eggs/a{number}": (g, None) for number, g in ((1, 75), (2, 75), (3, 74))}
    words = ("home egg-trip --write", "--learnt", "Scrambled eggs: oil: 1 tbsp -> 2 tsp", "--left", "oil: 3 g")
    ended, out, err = shell(*words[:3], "--left", "olive oil: 3 g")
    assert (ended, err) == (0, "")
    assert out.endswith("Written. The trip is gone.\n")
    assert (shell.book / NOTED).read_text("utf-8") == DRAWS
    assert shell.left() == {  # 75 - 50 = 25 g, open since the day of departure; the third jar is empty
        "2027-04-10-eggs/a1": (25, "2027-05-22"),
        "2027-04-10-eggs/a2": (75, None),
    }
    trip = (shell.book / "trips/egg-trip.yaml").read_text("utf-8")
    home = "came home:\n  date: 2027-06-01\n  left:\n    - olive oil: 3 g\n"
    assert trip == TRIP.replace("05-22\n", "05-22\nstands: gone\n").replace("# until", f"{home}# until")
    dish = (shell.book / "dishes/scrambled-eggs.yaml").read_text("utf-8")
    lesson = "learnt:\n  - {date: 2027-06-01, change: oil 1 tbsp -> 2 tsp}\n"
    assert dish == DISH.replace("take: 1 tbsp", "take: 2 tsp") + lesson
    assert shell("check")[0] == 0
    after = shell.files()
    assert after.keys() - before.keys() == {shell.book / NOTED}
    assert shell(*words[:3]) == (2, "", "packlarder: Egg trip came home on 2027-06-01 already; nothing was changed.\n")
    assert shell.files() == after


def test_what_stayed_shut_is_not_booked(shell: Shell) -> None:
    """A jar that is named is left out; with all of them left out no file of draws is written."""
    out = shell("home egg-trip --write --not-taken 2027-04-10-eggs/a1")[1]
    assert "Stayed shut, and so not booked: 50 g Egg powder [RAW] (2027-04-10-eggs/a1).\n" in out
    assert "a1" not in (shell.book / NOTED).read_text("utf-8")
    write(shell.book, "trips/egg-trip.yaml", TRIP)
    (shell.book / NOTED).unlink()
    marks = [word for mark, _ in FROM for word in ("--not-taken", mark)]
    out = shell("home egg-trip --write", *marks)[1]
    assert "Nothing: every jar stayed shut.\n" in out
    assert "Stayed shut, and so not booked: 50 g Egg powder [RAW] (2027-04-10-eggs/a1)," in out
    assert "74 g Egg powder [RAW] (2027-04-10-eggs/a3)." in " ".join(out.split())
    assert not (shell.book / NOTED).exists()
    assert "stands: gone" in (shell.book / "trips/egg-trip.yaml").read_text("utf-8")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("home egg-trap",), 'no trip is called "egg-trap"; did you mean "egg-trip"?'),
        (("home",), f"TRIP is missing. `{texts.PROGRAM} home --help` says what it takes."),
        (
            ("home egg-trip --on 2027-05-21",),
            "Egg trip starts on 2027-05-22, and this is 2027-05-21; name the day with",
        ),
        (("home egg-trip --not-taken", "2027-04-10-eggs/a2"), "nothing was to be taken from 2027-04-10-eggs/a2."),
        (("home egg-trip --not-taken", "a2"), '"a2" is not the mark of a container.'),
        (("home egg-trip --left", "egg powder"), '"egg powder" can not be understood; write it like '),
        (("home egg-trip --left", "leeks: 3 g"), 'nothing on this trip is called "leeks"; known are: '),
        (("home egg-trip --left", "egg powder: 3 mL"), "a weight is wanted here, mL is a volume; "),
        (("home egg-trip --left", "egg powder: 1 kg"), "1000 g of Egg powder came home, and only 124 g came along."),
        (("home egg-trip --left", "egg powder: 1 g, \x07"), '"egg powder: 1 g, \\x07" holds characters that '),
        (("home egg-trip --learnt", "egg powder: 60 g -> 50 g"), '"egg powder: 60 g -> 50 g" can not be understood'),
        (
            ("home egg-trip --learnt", "scrambled egg: oil: 1 g -> 2 g"),
            'no dish is called "scrambled egg"; did you mean',
        ),
        (
            ("home egg-trip --learnt", "scrambled eggs: eggs: 60 g -> 50 g"),
            'the dish has no part that is called "eggs"',
        ),
        (
            ("home egg-trip --learnt", "scrambled eggs: oil: 60 g -> 50 g"),
            "in this dish oil is 1 tbsp, not 60 g; write it",
        ),
        (("home egg-trip --learnt", "scrambled eggs: oil: 1 tbsp -> 50"), '"50" has a number without a unit; '),
    ],
)
def test_what_can_not_be_is_refused(shell: Shell, words: tuple[str, ...], says: str) -> None:
    """It is said in a sentence, and nothing is written."""
    before = shell.files()
    ended, out, err = shell(*words, "--write")
    assert (ended, out) == (2, "")
    assert err.startswith(f"packlarder: {says}")
    assert shell.files() == before


def test_a_gone_trip_is_told(shell: Shell) -> None:
    """So is one that was marked by hand."""
    write(shell.book, "trips/egg-trip.yaml", TRIP.replace("people", "stands: gone\npeople"))
    assert shell("home egg-trip --write") == (2, "", "packlarder: Egg trip is gone already; nothing was changed.\n")


@pytest.mark.parametrize(("right", "slip"), [("stops:", "stps:"), ("gas stove", "grill")])
def test_a_trip_with_faults_tells_them(shell: Shell, right: str, slip: str) -> None:
    """Its faults are shown with their lines, whether in reading or in what it names; nothing is written."""
    write(shell.book, "trips/egg-trip.yaml", TRIP.replace(right, slip))
    before = shell.files()
    ended, out, err = shell("home egg-trip --write")
    assert (ended, out) == (1, "")
    assert "trips/egg-trip.yaml:" in err
    assert "error[" in err
    assert shell.files() == before


def test_a_lesson_that_makes_a_dish_wrong_is_refused(shell: Shell) -> None:
    """More oil may not stay in than is taken: the changed dish is read and checked before it is written."""
    write(shell.book, "dishes/scrambled-eggs.yaml", DISH.replace("called: oil", "called: oil, stays in: 1 tbsp"))
    before = shell.files()
    ended, out, err = shell("home egg-trip --write", "--learnt", "scrambled eggs: oil: 1 tbsp -> 1 tsp")
    assert (ended, out) == (1, "")
    assert err.startswith("packlarder: the book would be wrong after it; nothing was written:\n")
    assert "dishes/scrambled-eggs.yaml:6:" in err
    assert shell.files() == before


def test_what_was_drawn_since_is_not_drawn_again(shell: Shell) -> None:
    """Who took from the jar after the departure has not enough left for what the trip is to have taken: refused."""
    shell("draw 2027-04-10-eggs/a1 took 60 g --on 2027-05-30")
    before = shell.files()
    ended, out, err = shell("home egg-trip --write")
    assert (ended, out) == (1, "")
    assert "and only 25 g were left" in err
    assert shell.files() == before


def test_an_old_error_of_another_trip_keeps_nobody_from_booking(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A later trip lacks egg powder and nobody has the time to dry it: the lesson changes how much, and is booked."""
    book = make_book(tmp_path / "book")
    write(book, "dishes/scrambled-eggs.yaml", DISH)
    write(book, "trips/egg-trip.yaml", TRIP)
    later = TRIP.replace("Egg trip", "Later").replace("05-22", "06-03").replace("[Ada]", "[Ada, Bo, Cai, Dee]")
    write(book, "trips/later.yaml", later)
    shell = Shell(book, capsys)
    assert re.findall("([0-9]+) g of egg powder lack", shell("check")[1]) == ["76"]
    lesson = ("--learnt", "scrambled eggs: egg powder: 60 g -> 70 g")
    ended, out, err = shell("home egg-trip --write", *lesson)
    assert (ended, err) == (0, "")
    assert out.endswith("Written. The trip is gone.\n")
    assert re.findall("([0-9]+) g of egg powder lack", shell("check")[1]) == ["115"]


def test_what_was_noted_before_is_mentioned(shell: Shell) -> None:
    """A draw that somebody noted for the trip may be counted twice."""
    shell("draw 2027-04-10-eggs/a2 took 5 g --for", "egg trip", "--on", "2027-05-21")
    err = shell("home egg-trip")[2]
    assert err.startswith("packlarder: draws/2027-05-21-egg-trip.yaml notes something for this trip too")


def test_files_are_written_together(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One that changed meanwhile, or can not be written, leaves all as they were."""
    old, new = tmp_path / "old.yaml", tmp_path / "new.yaml"
    old.write_bytes(b"a")
    changes = [FileChange(path=old, before=b"a", after=b"b"), FileChange(path=new, before=None, after=b"c")]
    stale = replace(changes[0], before=b"other")
    with pytest.raises(NotWritten, match=r"old.yaml was changed meanwhile"):
        write_together([changes[1], stale])

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(together, "create_file", full)
        with pytest.raises(NotWritten, match=r"nothing was written: no space left on device"):
            write_together(changes)
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"old.yaml": b"a"}
    write_together(changes)
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"old.yaml": b"b", "new.yaml": b"c"}
    with pytest.raises(NotWritten, match=r"new.yaml was changed meanwhile"):
        write_together(changes[1:])


def test_the_demo_comes_home(tmp_path: Path, checkout: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """With nothing made by hand: each jar lacks just what was noted, and nothing else in the book is touched."""
    book = tmp_path / "book"
    copytree(checkout / "recipes", book)
    shell = Shell(book, capsys)
    words = "home skerries --on 2027-07-10"
    before, jars = shell.files(), shell.left("--on 2027-07-10")
    shown = shell(words)[1]
    assert shell.files() == before
    assert shell(f"{words} --write")[1].partition("\nFILES\n")[0] == shown.partition("\nFILES\n")[0]
    [noted] = shell.files().keys() - before.keys()
    assert [path.name for path, data in before.items() if path.read_bytes() != data] == ["skerries.yaml"]
    drawn = read_book({"book.yaml": (book / "book.yaml").read_bytes(), "draws/it.yaml": noted.read_bytes()}).book
    assert drawn is not None
    took = {str(one.from_): one.took.weight for one in drawn.draws["it"].drawn if one.took is not None}
    assert len(took) > 15
    after = shell.left("--on 2027-07-10")
    for mark, (left_g, _) in jars.items():
        weight = took.get(mark)
        went_g = 0.0 if mark not in took else left_g if weight is None else weight.base
        assert after.get(mark, (0.0, None))[0] == pytest.approx(left_g - went_g, abs=1), mark  # printed to 1 g
    assert shell(f"{words} --write")[0] == 2
