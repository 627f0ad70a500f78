"""`show trip` through the real command line: the demo, and a small book that is spoilt in places."""

import json
import re
import shutil
from pathlib import Path

import pytest
from tests.house.small_store import RUN, Shell, make_book, write

from packlarder.cli import main, texts

TRIP = """name: The lake
starts: {starts}
people: [Ada, Bo: {{appetite: 150 %}}]
stoves: [{stove}]
pots: [{pot}]
stops:
  - place: the hut
    day: 1
    fills: tap
    meals:
      - supper: {dish}
"""


@pytest.fixture
def shell(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    """Give a shell that speaks to a small book of its own with one trip, `lake`."""
    shell = Shell(make_book(tmp_path / "book"), capsys)
    for path in (shell.book / "trips").glob("*"):
        path.unlink()
    add_trip(shell)
    return shell


@pytest.fixture
def demo(tmp_path: Path, checkout: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    """Give a shell that speaks to a copy of the demo book."""
    return Shell(Path(shutil.copytree(checkout / "recipes", tmp_path / "demo")), capsys)


def add_trip(shell: Shell, id: str = "lake", dish: str = "beans and rice", starts: str = "2027-07-02") -> None:
    """Write a trip of one supper into a book, on the first stove and in the first pot that its book.yaml names."""
    household = (shell.book / "book.yaml").read_text("utf-8")
    stove, pot = (
        re.findall(rf"^{key}:\n(?: *#.*\n)* +([^:\n]+):", household, re.MULTILINE)[0] for key in ("stoves", "pots")
    )
    write(shell.book, f"trips/{id}.yaml", TRIP.format(dish=dish, starts=starts, stove=stove, pot=pot))


def test_every_planned_trip_of_the_demo_is_shown(demo: Shell) -> None:
    """By id, by name, as text of 80 columns and as data, which says what design and page say."""
    ids = sorted(path.stem for path in (demo.book / "trips").glob("*.yaml"))
    assert ids
    for id in ids:
        ended, out, err = demo(f"show trip {id}")
        assert (ended, err) == (0, ""), id
        assert max(map(len, out.splitlines())) <= 80
        data = demo.data(f"show trip {id}")
        assert out.startswith(f"{data['name']}\n")
        assert {"trip", "edition", "day", "starts", "people", "stops", "legs", "packs", "fills"} <= data.keys()
        assert {"shortfall", "loads", "plan", "fuel", "days", "fed", "kit", "safety", "missing"} <= data.keys()
        assert demo(f"show trip {id}")[1] == demo("show trip", data["name"].upper())[1]
        for stop in data["stops"]:
            assert stop["place"] in out or not stop["meals"]
            assert all(meal["name"] in " ".join(out.split()) for meal in stop["meals"])
        for leg in data["legs"]:
            assert sum(leg["water_ml"].values()) == leg["carry_ml"]


def test_a_meal_is_for_those_who_eat_it(shell: Shell) -> None:
    """Two people, the second with appetite for 1½: 2½ portions on the evening of 2 July."""
    data = shell.data("show trip lake")
    [meal] = data["stops"][0]["meals"]
    assert (meal["dish"], meal["people"], meal["portions"]) == ("beans-and-rice", ["Ada", "Bo"], 2.5)
    assert (meal["date"], meal["eat_at"]) == ("2027-07-02", "2027-07-02T18:30")


@pytest.mark.parametrize(
    ("asked", "says"),
    [("lak", 'did you mean "lake"?'), ("over the mountains", "known are: lake.")],
)
def test_an_unknown_trip_is_misuse(shell: Shell, asked: str, says: str) -> None:
    """It ends with 2 and names the closest, or those that there are."""
    ended, out, err = shell("show trip", asked)
    assert (ended, out) == (2, "")
    assert err == f'packlarder: no trip is called "{asked}"; {says}\n'


def test_a_book_without_trips_says_so(shell: Shell) -> None:
    """Nothing is suggested where there is nothing."""
    (shell.book / "trips/lake.yaml").unlink()
    assert shell("show trip lake") == (2, "", f"packlarder: {texts.NO_TRIPS}\n")
    assert shell("show trip")[2].startswith("packlarder: ID is missing.")
    assert shell("show trip lake --servings 4")[2].startswith("packlarder: --servings does not go with trip.")


@pytest.mark.parametrize(
    ("file", "old", "new", "says"),
    [
        ("trips/lake.yaml", "supper: beans", "suppper: beans", "trips/lake.yaml:11:9: error["),
        ("trips/lake.yaml", "beans and rice", "beans and rise", 'no dish is called "beans and rise"'),
        ("trips/lake.yaml", "starts: 2027-07-02", "starts: some day", "trips/lake.yaml:2:9: error["),
        ("dishes/beans-and-rice.yaml", "serves:", "srves:", "dishes/beans-and-rice.yaml:8:1: error[unknown-key]"),
        ("components/black-beans.yaml", "was:", "ws:", "components/black-beans.yaml:"),
        ("batches/2027-04-10-eggs.yaml", "dryer:", "dyer:", "batches/2027-04-10-eggs.yaml:2:1: error[unknown-key]"),
        ("book.yaml", "packlarder: 1", "packlarder: 9", "book.yaml:"),
    ],
)
def test_what_it_uses_and_is_wrong_stops_it(shell: Shell, file: str, old: str, new: str, says: str) -> None:
    """Its file, its dish, a component of that, the larder, the household: 1, nothing printed, the place named."""
    text = (shell.book / file).read_text("utf-8")
    assert old in text
    write(shell.book, file, text.replace(old, new, 1))
    ended, out, err = shell("show trip lake")
    assert (ended, out) == (1, "")
    assert says in err


def test_a_plan_that_does_not_hold_is_shown_after_what_is_wrong(shell: Shell) -> None:
    """Containers too small for the way: the water by leg is what they are chosen by. No data, no labels."""
    path = shell.book / "trips/lake.yaml"
    path.write_text(f"{path.read_text('utf-8')}water containers: {{bottle: {{holds: 1 L, count: 1}}}}\n", "utf-8")
    ended, out, err = shell("show trip lake")
    assert ended == 1
    assert "WATER TO CARRY, LEG BY LEG" in out
    assert "error[" in err
    assert out.startswith(f"{texts.NOT_FIT}\n\n")
    assert out.endswith(f"\n{texts.NOT_FIT}\n")
    assert shell("show trip lake --json")[:2] == (1, "")
    assert shell("labels trip lake")[0] == 1


def test_what_it_does_not_use_does_not_stop_it(shell: Shell) -> None:
    """A dish that no trip names may be wrong; a component may be, and that is mentioned."""
    write(shell.book, "dishes/soup.yaml", "nam: Soup\n")
    assert shell("show trip lake")[0] == 0
    write(shell.book, "components/stray.yaml", "nam: Stray\n")
    ended, _, err = shell("show trip lake")
    assert (ended, err) == (0, f"packlarder: {texts.OTHER_FAULTS}\n")


@pytest.mark.parametrize(("starts", "told"), [("2027-06-20", True), ("2027-07-20", False)])
def test_an_earlier_trip_that_is_wrong_is_named(shell: Shell, starts: str, *, told: bool) -> None:
    """It might have taken food from the larder before; a later one might not."""
    add_trip(shell, "hut", "no such dish", starts)
    ended, _, err = shell("show trip lake")
    says = texts.TOOK_NOTHING.format(trips="hut") if told else texts.OTHER_FAULTS
    assert (ended, err) == (0, f"packlarder: {says}\n")


def test_a_trip_that_is_gone_takes_nothing_and_is_shown(shell: Shell) -> None:
    """What other trips take does not matter to it."""
    add_trip(shell, "hut", "no such dish", "2027-05-20")
    text = (shell.book / "trips/lake.yaml").read_text("utf-8")
    write(shell.book, "trips/lake.yaml", f"{text}stands: gone\n")
    ended, out, err = shell("show trip lake")
    assert (ended, err) == (0, f"packlarder: {texts.OTHER_FAULTS}\n")
    assert " · gone\n" in out


def test_a_build_writes_the_trips(shell: Shell, tmp_path: Path) -> None:
    """Its data are those of the command; tables and calendar lie beside, and the front page names them."""
    ended, _, err = shell("build --out", str(tmp_path / "out"))
    assert ended == 0
    assert set(re.findall(r"[a-z]+\[([a-z-]+)\]", err)) == {"no-dryer"}  # its only dryer dries no beans in air
    written = json.loads((tmp_path / "out/data/trips/lake.json").read_text("utf-8"))
    assert written == shell.data("show trip lake")
    front = (tmp_path / "out/index.html").read_text("utf-8")
    printed = ("print/trip-lake-a6.pdf", "print/trip-lake-a6-imposed-a4.pdf", "print/trip-lake-labels-a4-8.pdf")
    for name in (*printed, "trips/lake-packing.csv", "trips/lake-plan.csv", "trips/lake-plan.ics"):
        assert (tmp_path / "out" / name).stat().st_size > 0
        assert f'href="{name}"' in front


def test_another_day_is_another_stamp(shell: Shell) -> None:
    """The day that it is worked out for stands in the data."""
    assert shell.data("show trip lake --on 2027-06-03")["day"] == "2027-06-03"
    assert main(["show", "trip", "lake", "--book", str(shell.book), "--on", "2027-02-30"]) == 2


def test_a_wrong_run_matters_to_a_trip(shell: Shell) -> None:
    """It draws on the whole larder: weights that can not be right stop it as they stop the larder."""
    write(shell.book, "batches/2027-04-10-eggs.yaml", RUN.replace("dry: 225 g", "dry: 180 g"))
    ended, _, err = shell("show trip lake")
    assert ended == 1
    assert "error[batch-can-not-be-right]" in err


def test_a_dish_that_is_named_in_an_odd_way_is_found_all_the_same(shell: Shell) -> None:
    """Escaped letters hide a name from a quick look; the whole book is read then."""
    text = (shell.book / "trips/lake.yaml").read_text("utf-8")
    write(shell.book, "trips/lake.yaml", text.replace("beans and rice", '"\\x62eans and rice"'))
    assert shell.data("show trip lake")["stops"][0]["meals"][0]["dish"] == "beans-and-rice"


def test_a_mistyped_dish_gets_the_closest_of_all(shell: Shell) -> None:
    """Dishes that no trip names are suggested too."""
    add_trip(shell, dish="crackers and aple")
    assert 'did you mean "crackers and apple"?' in shell("show trip lake")[2]
