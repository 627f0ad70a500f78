"""RAW, the word: on everything that names food which must be cooked to be safe, and on nothing else, in every output.

Held against site_demo/, which another test proves to be what a build writes; labels and the terminal are made here.
"""

import json
import re
import zipfile
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.paper.reading import words
from tests.sheets.demo import checked, demo
from tests.site.page import Element, read_page

from packlarder.book.book import dish_place
from packlarder.cli.plain_sheet import plain_sheet
from packlarder.cli.plain_store import plain_larder, plain_run
from packlarder.publish.label_stock import Purpose
from packlarder.publish.labels import LabelJob, build_labels
from packlarder.sheets.data_records import Packed
from packlarder.sheets.jar_labels import jar_labels
from packlarder.sheets.label_sheet import LabelSet
from packlarder.sheets.larder import larder_sheet
from packlarder.sheets.pack_labels import pack_labels
from packlarder.sheets.printed import System
from packlarder.sheets.run import run_sheet

BOOK = checked()
COMPONENTS: Mapping[str, bool] = {id: sums.raw for id, sums in BOOK.components.items()}
DISHES: Mapping[str, bool] = {id: any(part.component.raw for part in one.plan.parts) for id, one in BOOK.dishes.items()}
RUNS: Mapping[str, bool] = {
    id: any(batch.component.raw for batch in run.batches) for id, run in BOOK.store.runs.items()
}
NAMES: Mapping[str, bool] = {
    sums.model.name: sums.raw for sums in sorted(BOOK.components.values(), key=lambda one: len(one.model.name))
}
"""Components by their names, the shorter ones first."""
KINDS: Mapping[str, Mapping[str, bool]] = {"components": COMPONENTS, "dishes": DISHES, "batches": RUNS}
LINK = re.compile(r"(?:^|/)(components|dishes|batches)/([a-z0-9-]+)\.html$")
PAGES_OF_ONE = [(kind, id) for kind, all_of_them in KINDS.items() for id in all_of_them]
LISTS = ("index.html", "components.html", "larder.html", "batches.html")


def says_raw(text: str) -> bool:
    """Tell whether the word stands in a text."""
    return bool(re.search(r"(?<![A-Z])RAW(?![A-Z])", text))


def visible(page: Element) -> str:
    """Give the text of a page's main part, without scripts."""
    (main,) = page.all("main")
    hidden = "".join(script.text for script in main.all("script"))
    return main.text.replace(hidden, "") if hidden else main.text


@pytest.mark.parametrize(("kind", "id"), PAGES_OF_ONE)
def test_a_page_bears_it_if_what_it_is_about_is_raw(site: Path, kind: str, id: str) -> None:
    """The page of a dish, a component or a drying run says RAW exactly if something in it is."""
    assert says_raw(visible(read_page(site / kind / f"{id}.html"))) is KINDS[kind][id]


@pytest.mark.parametrize("name", [*LISTS, "lists/components.html", "lists/meals.html", "lists/water.html"])
def test_every_row_that_leads_to_something_raw_bears_it(site: Path, name: str) -> None:
    """In lists and tables the word stands in the row, so that nobody has to look elsewhere."""
    page = read_page(site / name)
    rows = [row for tag in ("tr", "li") for row in page.all(tag) if not row.all("li")]
    led = [(row, meant) for row in rows if (meant := _meant(row))]
    assert led, "no row leads anywhere"
    wrong = [row.text for row, meant in led if says_raw(row.text) is not any(meant)]
    assert wrong == []


def _meant(row: Element) -> list[bool]:
    """Tell of each thing that a row is about whether it is raw: a row about a component may lead to its run as well."""
    named = [raw for name, raw in NAMES.items() if row.text.strip().startswith(name)]
    if named:
        return named[-1:]
    led = [found.groups() for link in row.all("a") if (found := LINK.search(link.attributes.get("href", "")))]
    for kind in KINDS:
        told = [KINDS[kind][id] for which, id in led if which == kind]
        if told:
            return told
    return []


def test_the_pocket_file_bears_it(site: Path) -> None:
    """Each dish and component in the one file says it for itself."""
    articles = {one.attributes["id"]: one.text for one in read_page(site / "pocket.html").all("article")}
    for id, raw in DISHES.items():
        assert says_raw(articles[f"dish-{id}"]) is raw


def test_the_e_book_bears_it(site: Path) -> None:
    """Each dish in the e-book says it for itself."""
    with zipfile.ZipFile(site / "book.epub") as held:
        for id, raw in DISHES.items():
            text = re.sub(r"<[^>]+>", " ", held.read(f"book/dish-{id}.xhtml").decode())
            assert says_raw(text) is raw, id


@pytest.mark.parametrize("size", ["a6", "quarter-letter"])
def test_the_booklet_bears_it(site: Path, size: str) -> None:
    """The opening of a dish, as the outline finds it, says RAW exactly if a part of it is."""
    pdf = site / "print" / f"field-{size}.pdf"
    pages = [" ".join(word.text for word in page) for page in words(pdf)]
    reader = PdfReader(pdf)
    starts = {str(one["/Title"]): reader.get_destination_page_number(one) for one in _flat(reader.outline)}
    for id, raw in DISHES.items():
        first = starts[BOOK.dishes[id].plan.model.name]
        assert first is not None
        assert says_raw(" ".join(pages[first : first + 2])) is raw, id


def _flat(outline: list) -> Iterator:  # type: ignore[type-arg]  # as pypdf gives it
    for one in outline:
        if isinstance(one, list):
            yield from _flat(one)
        else:
            yield one


def test_the_data_say_so(site: Path) -> None:
    """Other programs get it with each part of a dish, and with each container and component of the larder."""
    for id in DISHES:
        dish = json.loads((site / "data" / "dishes" / f"{id}.json").read_text("utf-8"))
        for part in dish["parts"]:
            assert part["raw"] is COMPONENTS[part["component"]]
    larder = json.loads((site / "data" / "larder.json").read_text("utf-8"))
    for container in larder["containers"]:
        assert container["raw"] is COMPONENTS[container["component"]]
    for component in larder["components"]:
        assert (component["must_be_cooked"] == "to be safe") is COMPONENTS[component["component"]]


@pytest.mark.parametrize("id", DISHES)
def test_show_says_so(id: str) -> None:
    """What `show dish --json` prints has it with each part and each pack."""
    data = demo(id).data(0)
    for part in data["parts"]:
        assert (part["must_be_cooked"] == "to be safe") is COMPONENTS[part["component"]]
    for pack in data["packs"]:
        assert pack["raw"] is any(COMPONENTS[held] for held in _held(pack))


def _held(pack: Packed) -> list[str]:
    return [*pack["parts"], *(held for inner in pack["inside"] for held in _held(inner))]


def test_labels_bear_it(checkout: Path, tmp_path: Path) -> None:
    """As many boxes with the word are on the sheets as there are labels of raw jars, lids and packs."""
    standing = BOOK.store.larder.standing
    jars = jar_labels(standing, BOOK.book.household, "0", "Larder")
    raw = sum(one.batch.component.raw for one in standing)
    assert 0 < raw < len(standing)
    jobs = [LabelJob(purpose=Purpose.JAR, stock="letter-6"), LabelJob(purpose=Purpose.LID, stock="letter-round-12")]
    for sheets in build_labels(jars, jobs, theme=checkout / "theme", out=tmp_path):
        assert sheets.printed == len(standing)
        assert _times(tmp_path / sheets.job.file) == raw
    made = [
        label for id in DISHES for label in pack_labels(demo(id).series, demo(id).sheet, System.METRIC, dish_place(id))
    ]
    packs = LabelSet(title="Packs", language="en", edition="0", packs=made, with_code=False)
    job = LabelJob(purpose=Purpose.PACK, stock="one-4x6")
    (sheets,) = build_labels(packs, [job], theme=checkout / "theme", out=tmp_path)
    assert sheets.printed == len(made)
    assert _times(tmp_path / sheets.job.file) == sum(label.raw for label in made)


def _times(pdf: Path) -> int:
    return sum(word.text == "RAW" for page in words(pdf) for word in page)


def test_the_terminal_bears_it() -> None:
    """What `show` prints of a dish, a run or the larder says it too."""
    for id, raw in DISHES.items():
        assert says_raw(plain_sheet(demo(id).sheet, System.METRIC, "")) is raw
    store = BOOK.store
    for id, raw in RUNS.items():
        sheet = run_sheet(store.runs[id], store.run_findings[id], store.larder.by_mark, store.larder.on)
        assert says_raw(plain_run(sheet, System.METRIC, "")) is raw
    text = plain_larder(larder_sheet(store.larder, store.larder_findings), System.METRIC, "")
    for line in text.splitlines():
        named = [name for name in NAMES if re.search(rf"\b{re.escape(name)}\b", line)]
        if named:
            assert says_raw(line) is NAMES[named[-1]], line
    assert says_raw(text)


@pytest.fixture(scope="module")
def site(checkout: Path) -> Path:
    """Give the demo as built."""
    return checkout / "site_demo"
