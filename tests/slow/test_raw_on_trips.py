"""RAW, the word, on trips: wherever one packs or cooks by them, in every output, and on nothing else.

Held against site_demo/, which another test proves to be what a build writes; labels and the terminal are made here.
"""

import csv
import json
import re
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from itertools import pairwise
from pathlib import Path

import pytest
from icalendar import Calendar
from pypdf import PdfReader
from tests.paper.reading import outline, rows, words
from tests.sheets.demo import FOLDERS, RECIPES
from tests.site.page import Element, read_page
from tests.slow.test_raw_everywhere import says_raw

from packlarder.book.read import read_book
from packlarder.cli.plain_trip import plain_trip
from packlarder.cli.sheet_words import RAW
from packlarder.publish.label_stock import Purpose
from packlarder.publish.labels import LabelJob, build_labels
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.reckon.trip.stores import TaskKind
from packlarder.safety.whole import CheckedBook, CheckedTrip, check_book
from packlarder.sheets.trip_field import trip_book
from packlarder.sheets.trip_field_sheet import TripBook
from packlarder.sheets.trip_labels import trip_labels
from packlarder.sheets.words import COMMA

COMPONENT = re.compile(r"(?:^|/)components/([a-z0-9-]+)\.html$")
NUMBER = re.compile(r"no\. (\d+)")
ROWS = ("li", "th", "dt", "dd")
"""What a component is named in on a page of a trip."""


@cache
def checked() -> CheckedBook:
    """Read and check the demo book with its trips."""
    paths = [path for folder in (*FOLDERS, "trips/") for path in RECIPES.glob(f"{folder}*.yaml")]
    read = read_book({path.relative_to(RECIPES).as_posix(): path.read_bytes() for path in paths})
    assert read.book is not None
    assert read.book.household.on is not None
    return check_book(read.book, read.book.household.on)


TRIPS: Mapping[str, CheckedTrip] = checked().trips
PLANNED = [id for id, trip in TRIPS.items() if not trip.sums.gone]
COMPONENTS: Mapping[str, bool] = {id: sums.raw for id, sums in checked().components.items()}


def meal_is_raw(meal: TripMeal) -> bool:
    """Tell whether a dish is cooked of something that must be cooked to be safe, as it is made on this trip."""
    taken = {**dict(enumerate(part.component for part in meal.plan.parts)), **meal.instead}
    return any(component.raw for component in taken.values())


def raw_items(pack: TripPack) -> int:
    """Count the components in a pack that are raw; a pack that only holds raw packs bears one word itself."""
    return len({item.component.id for item in pack.items if item.component.raw}) or int(pack.raw)


def raws(element: Element) -> int:
    """Count the boxed words in an element."""
    return len(element.all("b", class_="raw"))


def test_the_trips_show_what_is_held_here() -> None:
    """Some dish and some pack of the planned trips is raw, and some is not: else nothing would be proved."""
    trips = [TRIPS[id].sums for id in PLANNED]
    assert {meal_is_raw(meal) for trip in trips for meal in trip.meals} == {True, False}
    assert {pack.raw for trip in trips for pack in trip.packs} == {True, False}
    for trip in trips:
        for pack in trip.packs:
            assert pack.raw is any(item.component.raw for item in pack.items)


@pytest.mark.parametrize("id", TRIPS)
def test_the_page_of_a_trip_bears_it(site: Path, id: str) -> None:
    """Each dish of the menu, each item of a pack, each component of fills, shortfall, loads and plan; nothing else."""
    page, trip = read_page(site / "trips" / f"{id}.html"), TRIPS[id].sums
    meals = [row for menu in page.all("ol", class_="menu") for row in menu.all("li") if NUMBER.search(row.text)]
    assert [raws(row) for row in meals] == [int(meal_is_raw(meal)) for meal in trip.meals]
    packs = [row for packs in page.all("ol", class_="packs") for row in packs.all("li")]
    by_mark = {row.all("span", class_="number")[0].text: raws(row) for row in packs}
    assert by_mark == {pack.mark: raw_items(pack) for pack in trip.packs}
    named = [(row, led) for row in _leaves(page) if (led := list(_components(row)))]
    assert [row.text for row, led in named if raws(row) != sum(COMPONENTS[one] for one in led)] == []
    assert raws(page) == sum(raws(row) for row in (*meals, *packs, *(row for row, _ in named)))
    if not trip.gone:
        assert {one for _, led in named for one in led} >= {fill.component.id for fill in trip.stores.fills}


def _leaves(page: Element) -> Iterator[Element]:
    """Give the rows that hold no rows."""
    return (row for tag in ROWS for row in page.all(tag) if not row.all("li"))


def _components(row: Element) -> Iterator[str]:
    for link in row.all("a"):
        found = COMPONENT.search(link.attributes.get("href", ""))
        if found:
            yield found[1]


@pytest.mark.parametrize("id", PLANNED)
@pytest.mark.parametrize("file", ["pocket.html", "book.epub"])
def test_pocket_file_and_e_book_bear_it(site: Path, file: str, id: str) -> None:
    """Each dish of a trip's menu and each item of its packs, and nothing else."""
    html, trip = _told(site / file, id), TRIPS[id].sums
    found = re.findall(r"(?s)<tr>(.*?)</tr>", html)
    meals = [_boxed(row) for row in found if NUMBER.search(row)]
    assert meals == [int(meal_is_raw(meal)) for meal in trip.meals]
    marked = [(re.match(r'<th scope="row">([^<]+)</th>', row), row) for row in found]
    marks = {pack.mark for pack in trip.packs}
    packs = {head[1]: _boxed(row) for head, row in marked if head and head[1] in marks}
    assert packs == {pack.mark: raw_items(pack) for pack in trip.packs}
    assert _boxed(html) == sum(meals) + sum(packs.values())


def _told(file: Path, id: str) -> str:
    """Give what the pocket file or the e-book tells of a trip."""
    if file.suffix == ".epub":
        with zipfile.ZipFile(file) as held:
            return held.read(f"book/trip-{id}.xhtml").decode()
    found = re.search(rf'(?s)<article id="trip-{id}">.*?</article>', file.read_text("utf-8"))
    assert found
    return found[0]


def _boxed(html: str) -> int:
    return html.count('<b class="raw">RAW</b>')


@pytest.mark.parametrize("id", PLANNED)
def test_the_tables_of_a_trip_bear_it(site: Path, id: str) -> None:
    """Each line of the packing list has a column for it; in the plan it stands behind each name."""
    trip = TRIPS[id].sums
    packed = _lines(site / "trips" / f"{id}-packing.csv")
    items = [(pack.mark, item.component) for pack in trip.packs for item in pack.items]
    assert [(line["pack"], line["RAW"]) for line in packed] == [(mark, "RAW" if one.raw else "") for mark, one in items]
    planned = _lines(site / "trips" / f"{id}-plan.csv")
    told = [[says_raw(name) for name in line["components"].split(COMMA) if name] for line in planned]
    assert told == [[one.raw for one in task.components] for task in trip.stores.tasks]


def _lines(table: Path) -> list[dict[str, str]]:
    return list(csv.DictReader(table.read_text("utf-8-sig").splitlines()))


@pytest.mark.parametrize("id", PLANNED)
def test_the_calendar_of_a_trip_bears_it(site: Path, id: str) -> None:
    """The title of each task or errand says it if something in it is raw; the last event is the trip itself."""
    calendar = Calendar.from_ical((site / "trips" / f"{id}-plan.ics").read_bytes())
    *tasks, _ = (str(event["summary"]) for event in calendar.walk("VEVENT"))
    raw: dict[tuple[object, ...], bool] = {}
    for number, task in enumerate(TRIPS[id].sums.stores.tasks):
        errand = task.kind is TaskKind.SHOP and task.whole_day
        key = (task.starts,) if errand else (task.starts, number)
        raw[key] = raw.get(key, False) or any(one.raw for one in task.components)
    assert [says_raw(one) for one in tasks] == list(raw.values())


@pytest.mark.parametrize("id", PLANNED)
def test_the_data_of_a_trip_say_so(site: Path, id: str) -> None:
    """Whatever record names a component to pack, fill, dry or cook tells it, and so does each pack and load."""
    data = json.loads((site / "data" / "trips" / f"{id}.json").read_text("utf-8"))
    records = [one for one in _records(data) if "component" in one]
    assert {one["component"] for one in records} >= {fill.component.id for fill in TRIPS[id].sums.stores.fills}
    assert [one for one in records if one.get("raw") is not COMPONENTS[one["component"]]] == []
    assert [one["raw"] for one in data["packs"]] == [pack.raw for pack in TRIPS[id].sums.packs]
    for load in data["loads"]:
        assert load["raw"] is any(COMPONENTS[one["component"]] for one in load["on_the_trays"])


def _records(data: object) -> Iterator[dict]:  # type: ignore[type-arg]  # as JSON gives it
    if isinstance(data, dict):
        yield data
    for one in data.values() if isinstance(data, dict) else data if isinstance(data, list) else ():
        yield from _records(one)


@pytest.mark.parametrize("size", ["a6", "quarter-letter"])
@pytest.mark.parametrize("id", PLANNED)
def test_the_booklet_of_a_trip_bears_it(site: Path, id: str, size: str) -> None:
    """Each pack of its list, each component to fill, each opening of a dish; the safety page names those dishes."""
    trip, pdf = TRIPS[id].sums, site / "print" / f"trip-{id}-{size}.pdf"
    book = _booklet(id)
    chapters = _chapters(pdf)
    packs = _segments(chapters["Packing list"], [line.mark for day in book.packing for line in day.packs])
    assert {mark: says_raw(text) for mark, text in packs.items()} == {pack.mark: pack.raw for pack in trip.packs}
    boxed = [row for row in chapters["Filling the packs"] if says_raw(row)]
    names = sorted(fill.component.model.name for fill in trip.stores.fills if fill.component.raw)
    assert len(boxed) == len(names)
    assert all(row.startswith(name) for row, name in zip(sorted(boxed), names, strict=True))
    led = {line.opening: line.number for day in book.menu for there in day.places for line in there.lines}
    meals = {str(meal.number): meal_is_raw(meal) for meal in trip.meals}
    for opening in book.openings:
        assert says_raw(" ".join(chapters[opening.name])) is meals[led[opening.id]], opening.name
    cooked = {opening.name for opening in book.openings if meals[led[opening.id]]}
    assert {one for one in cooked if one not in " ".join(chapters["Safety"])} == set()


def _booklet(id: str) -> TripBook:
    book = checked().book
    assert book.household.on is not None
    return trip_book(TRIPS[id], book.household, edition="0", on=book.household.on)


def _chapters(pdf: Path) -> Mapping[str, list[str]]:
    """Give the rows of each chapter and opening by its title in the outline."""
    pages = words(pdf)
    starts = [*outline(PdfReader(pdf)), ("", len(pages) + 1)]
    return {
        title: [row for page in pages[start - 1 : end - 1] for row in rows(page)]
        for (title, start), (_, end) in pairwise(starts)
    }


def _segments(chapter: Sequence[str], marks: Sequence[str]) -> Mapping[str, str]:
    """Give what stands below each mark until the next one, which begins a row."""
    found: dict[str, str] = {}
    waiting = [*marks]
    for row in chapter:
        if waiting and row.split(" ")[0] == waiting[0]:
            found[waiting.pop(0)] = row
        elif found:
            found[next(reversed(found))] += f" {row}"
    assert waiting == []
    return found


@pytest.mark.parametrize("id", PLANNED)
def test_labels_of_a_trip_bear_it(checkout: Path, tmp_path: Path, id: str) -> None:
    """A box on the label of each raw pack, and on no other; one label, one box."""
    trip = TRIPS[id].sums
    labels = trip_labels(TRIPS[id].sums, checked().book.household, edition="0", title="")
    packs = [pack for pack in trip.packs if pack.bought_at is None]
    assert [label.raw for label in labels.packs] == [pack.raw for pack in packs]
    job = LabelJob(purpose=Purpose.PACK, stock="one-4x6")
    (sheets,) = build_labels(labels, [job], theme=checkout / "theme", out=tmp_path)
    assert sheets.printed == len(packs)
    printed = [word.text for page in words(tmp_path / sheets.job.file) for word in page]
    assert printed.count("RAW") == sum(pack.raw for pack in packs)


@pytest.mark.parametrize("id", TRIPS)
def test_the_terminal_bears_it(id: str) -> None:
    """What `show trip` prints: each dish of the menu, and each component to get, if it is raw."""
    trip = TRIPS[id]
    text = plain_trip(trip.sums, trip.findings, checked().book.household, "")
    flat = re.sub(r"\s+", " ", text)
    for name, raw in _dishes(trip.sums).items():
        assert (f"{name} {RAW};" in flat) is raw, name
    for short in trip.sums.stores.shortfalls:
        assert (f"{short.component.model.name} {RAW}" in flat) is short.component.raw


def _dishes(trip: TripSums) -> Mapping[str, bool]:
    """Tell of each dish of a trip whether it is raw however it is made."""
    return {meal.plan.model.name: meal_is_raw(meal) for meal in trip.meals}


@pytest.fixture(scope="module")
def site(checkout: Path) -> Path:
    """Give the demo as built."""
    return checkout / "site_demo"
