"""The large book of the bench is a sound one, and its Markdown says what its pages say."""

import re
from pathlib import Path

import pytest
from tests.bench.as_markdown import as_markdown
from tests.bench.large_book import PARTS, files
from tests.bench.large_trip import DAYS, ID, MEALS_A_DAY, PEOPLE
from tests.bench.run import write_book, write_larder, write_trip

from packlarder.cli import main, stages
from packlarder.cli.trip_stage import TripsOpened, open_trips
from packlarder.faults import has_errors
from packlarder.reckon.drying import Verdict

DISHES = 120


BATCHES = 60


@pytest.fixture(scope="module")
def larder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write a book with some batches."""
    folder = tmp_path_factory.mktemp("bench")
    write_larder(folder, BATCHES)
    return folder / "larder"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write a book of some dishes."""
    folder = tmp_path_factory.mktemp("bench")
    write_book(folder, DISHES)
    return folder / "book"


def test_it_is_a_sound_book(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A check finds nothing, not even a warning."""
    assert main(["check", "--book", str(book)]) == 0
    assert capsys.readouterr().out == f"{DISHES} dishes, 45 components: nothing wrong.\n"


def test_every_dish_has_ten_parts_and_a_name_of_its_own(book: Path) -> None:
    """No part comes twice in a dish, and no two dishes are called alike."""
    read = stages.read(book).book
    assert read is not None
    assert {len({part.name for part in dish.parts}) for dish in read.dishes.values()} == {PARTS}
    assert len({dish.name for dish in read.dishes.values()}) == DISHES


def test_it_is_the_same_each_time() -> None:
    """Nothing in it hangs on chance, and a larger one begins like a smaller."""
    small, large = files(10), files(1010)
    assert dict(files(10)) == dict(small)
    assert small.items() <= large.items()
    assert sum(name.startswith("dishes/") for name in large) == 1010


def test_the_larder_is_sound_and_as_large_as_it_says(larder: Path) -> None:
    """Its check finds nothing; every batch is dry, and of three runs one has a jar opened, and one a jar emptied."""
    worked = stages.work_out(larder)
    assert worked.faults == ()
    assert worked.checked is not None
    store = worked.checked.store
    batches = [batch for run in store.runs.values() for batch in run.batches]
    assert len(batches) == BATCHES
    assert {batch.verdict for batch in batches} == {Verdict.DRY}
    # 30 runs: a third of them emptied, a third opened, two jars of each of two batches in all
    assert len(store.larder.emptied) == 10
    assert sum(one.opened_on is not None for one in store.larder.standing) == 10
    assert len(store.larder.standing) == 30 * 4 - 10


def test_the_long_trip_is_worked_out_and_no_dish_besides(tmp_path: Path) -> None:
    """14 days with 4 meals each for 12 people: 56 meals of 28 dishes, each twice; the other 92 dishes are not read."""
    write_trip(tmp_path, DISHES)
    opened = open_trips(tmp_path / "trip", None)
    assert isinstance(opened, TripsOpened)
    assert not has_errors(opened.faults)
    trip = opened.trips.trips[ID].sums
    assert (trip.last_day, len(trip.eaters), len(trip.meals)) == (DAYS, PEOPLE, DAYS * MEALS_A_DAY)
    assert {meal.dish for meal in trip.meals} == opened.book.dishes.keys()
    assert len(opened.book.dishes) == DAYS * MEALS_A_DAY // 2 < DISHES
    assert len(opened.read.files.texts) > DISHES


def test_markdown_says_what_the_page_says() -> None:
    """Every visible word stands in the Markdown, in the page's order; what is hidden or for other servings does not."""
    page = """<html><head><title>no</title></head><body><header>no</header><main><h1>Pan <b>RAW</b></h1>
    <dl><div><dt>Water</dt><dd>270&nbsp;mL</dd></div></dl><script>no</script>
    <table><thead><tr><th>Part</th><th>Dry</th></tr></thead><tbody><tr><th>Egg</th><td>25 g</td></tr></tbody></table>
    <ol><li>Soak <em>it</em>.</li></ol><section class="every"><p>no</p><section>no</section></section>
    <section><p>1 * 2 | 3</p></section></main><footer>no</footer></body></html>"""
    assert as_markdown(page).split("\n") == [
        "",
        "# Pan RAW",
        "",
        "Water",
        "",
        "270 mL",
        "",
        "| Part | Dry |",
        "| --- | --- |",
        "| Egg | 25 g |",
        "",
        "- Soak it.",
        "",
        r"1 \* 2 \| 3",
        "",
    ]
    assert re.findall(r"\bno\b", as_markdown(page)) == []
