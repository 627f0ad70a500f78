"""Pages of what is dried and stored: the larder, drying runs, and what there is of a component."""

import json
from dataclasses import replace
from pathlib import Path

from tests.site.conftest import THEME
from tests.site.page import Element, read_page, read_picks
from tests.site.sample_store import EGG_STORED, LARDER, MONTHS, RUN, RUN_SHEET
from tests.site.samples import BOOK, EGG_COMPONENT

from packlarder.publish.data import build_data
from packlarder.publish.ebook import build_ebook
from packlarder.publish.single import build_single
from packlarder.publish.site import build_site
from packlarder.publish.site_pages import changed_pages
from packlarder.publish.words import read_words

WORDS = read_words(THEME / "site" / "words", "en")
RUN_PAGE = f"batches/{RUN}.html"
RAW_NAME = "Egg powder"


def rows_of(page: Element) -> list[Element]:
    """Give the rows of all tables, without heads."""
    return [row for body in page.all("tbody") for row in body.all("tr")]


def test_a_book_without_runs_has_no_larder(tmp_path: Path) -> None:
    """Neither page nor navigation speaks of a larder that there is not, nor do the pocket file and the data."""
    components = tuple(replace(one, stored=None) for one in BOOK.components)
    book = replace(BOOK, larder=None, run_index=None, runs={}, components=components)
    build_site(book, theme=THEME, out=tmp_path)
    build_single(book, theme=THEME, out=tmp_path)
    build_ebook(book, theme=THEME, out=tmp_path)
    build_data(book, out=tmp_path)
    assert not [path for path in tmp_path.rglob("*") if path.stem in ("larder", "batches")]
    for page in tmp_path.rglob("*.html"):
        assert not [link for link in read_page(page).all("a") if "larder" in link.attributes.get("href", "")]


def test_the_larder_stands_at_the_head(site: Path) -> None:
    """The navigation leads to it from every page; its own page and those of runs are marked as being there."""
    [way] = [one for one in read_page(site / "components/noodles.html").all("a") if one.text == "Larder"]
    assert way.attributes["href"] == "../larder.html"
    marks = {
        kind: [one.attributes.get("aria-current") for one in read_page(site / kind).all("a") if one.text == "Larder"]
        for kind in ("larder.html", RUN_PAGE)
    }
    assert marks == {"larder.html": ["page"], RUN_PAGE: ["true"]}


def test_what_to_eat_first_comes_first(site: Path) -> None:
    """Past their day, then open, then what runs short, then all there is; what has time comes later, folded away."""
    page = read_page(site / "larder.html")
    headings = [heading.text for heading in page.all("h2")]
    assert headings == ["Eat first", "Runs short", "What there is", "Later", "Cautions", "Drying runs", "Emptied"]
    groups = [heading.text for heading in page.all("th", scope="rowgroup")]
    assert [text.partition(" 1 container")[0] for text in groups] == ["Past its day", "Open"]
    folded = page.all("details", class_="month")
    assert len(folded) == 1 + len(MONTHS) + 1  # October 2027, the months of 2028, and what is empty
    assert all("open" not in one.attributes for one in folded)


def test_few_containers_are_not_folded_away(tmp_path: Path) -> None:
    """What a glance takes in stands open, its months as headings within one table."""
    book = replace(BOOK, larder=replace(LARDER, later=LARDER.later[:2]))
    build_site(book, theme=THEME, out=tmp_path, only=frozenset({"larder.html"}))
    page = read_page(tmp_path / "larder.html")
    assert [one.text.partition(" 20")[0] for one in page.all("th", scope="rowgroup")][2:] == ["October", "January"]
    assert len(page.all("details", class_="month")) == 1


def test_each_strip_says_what_it_shows(site: Path) -> None:
    """A strip has a point for each day, a ring for what is open, a cross for what is past; its name says so too."""
    page = read_page(site / "larder.html")
    eggs, leeks = (strip for strip in page.all("svg", role="img"))
    assert eggs.attributes["aria-label"] == LARDER.levels[0].says
    assert [one.text for one in eggs.all("text", class_="mark")] == ["×"]
    assert [one.text for one in eggs.all("text", class_="mark count")] == ["3"]
    assert len(eggs.all("circle", class_="shut")) == 1
    assert len(leeks.all("circle", class_="open")) == 1
    # from 26 April 2027 to 10 December 2028 are 594 days; 1 June is the 36th: 6.06 %, 20 June the 55th: 9.26 %
    assert leeks.all("line", class_="today")[0].attributes["x1"] == "6.06%"
    assert leeks.all("circle", class_="open")[0].attributes["cx"] == "9.26%"


def test_past_is_said_in_words(site: Path) -> None:
    """A day that is over has the word beside it wherever it stands, not only a heavier type."""
    for kind in ("larder.html", RUN_PAGE, "components/egg-powder.html"):
        found = [strong.text for strong in read_page(site / kind).all("strong") if "10 May 2027" in strong.text]
        assert found, kind
        assert set(found) == {"10 May 2027, past"}


def test_every_row_that_names_raw_food_bears_raw_and_no_other(site: Path, tmp_path: Path) -> None:
    """On larder, list of runs, a run and a component, in the pocket file and the e-book: RAW by RAW food alone."""
    build_single(BOOK, theme=THEME, out=tmp_path)
    kinds = [site / kind for kind in ("larder.html", "batches.html", RUN_PAGE, "components/egg-powder.html")]
    pocket = read_page(tmp_path / "pocket.html").all("section", id="larder")
    assert rows_of(pocket[0])
    for page in (*map(read_page, kinds), *pocket):
        rows = [row for row in rows_of(page) if RAW_NAME in row.text or "Leek rings" in row.text]
        for row in rows:
            assert bool(row.all("b", class_="raw")) == (RAW_NAME in row.text), row.text
    page = read_page(site / RUN_PAGE)
    assert [bool(one.all("b", class_="raw")) for one in page.all("h2")[1:3]] == [True, False]
    assert page.all("h1")[0].text.strip() == "Egg powder RAW, Leek rings"
    listed = read_page(site / "batches.html").all("th", scope="row")
    assert [row.text.strip() for row in listed] == ["Egg powder RAW, Leek rings"]
    emptied = read_page(site / "larder.html").all("ul", class_="links")[0]
    assert [bool(one.all("b", class_="raw")) for one in emptied.all("li")] == [True]


def test_a_batch_says_what_lay_beside_it(site: Path) -> None:
    """Leeks that shared a run with raw egg say so, and the egg bears RAW there."""
    eggs, leeks = read_page(site / RUN_PAGE).all("section", class_="batch")
    said = [line for line in leeks.all("p") if "beside food that must be cooked to be safe" in line.text]
    assert [line.text.endswith(": Egg powder RAW.") for line in said] == [True]
    assert not [line for line in eggs.all("p") if "beside food" in line.text]


def test_weights_can_be_switched(site: Path) -> None:
    """Every weight of the new pages stands beside the page in both systems, in sentences, tables and the strip."""
    for kind in ("larder.html", "batches.html", RUN_PAGE, "components/egg-powder.html"):
        page = read_page(site / kind)
        picks = read_picks(page)
        pairs = list(zip(picks.metric, picks.us, strict=True))
        shown = [one for one in page.walk() if "data-f" in one.attributes]
        assert shown, kind
        assert all(one.text == pairs[int(one.attributes["data-f"])][0][0] for one in shown)
        switch = page.all("div", class_="units")[0]
        assert [one.attributes["data-in"] for one in switch.all("button")] == ["metric", "us"]
    sentence = read_page(site / RUN_PAGE).all("p", class_="verdict")[0]
    assert [one.text for one in sentence.all("span") if "data-f" in one.attributes] == ["94\u00a0g"]


def test_a_component_tells_of_its_batches(site: Path) -> None:
    """What is in the larder, the card for next time, and each batch with a point of the plot and a row of the table."""
    page = read_page(site / "components/egg-powder.html")
    headings = [heading.text for heading in page.all("h2")]
    assert {"In the larder", "For next time", "Our batches"} <= set(headings)
    [plot] = page.all("svg", role="img")
    assert [len(plot.all("circle", class_=kind)) for kind in ("counted", "open")] == [2, 1]
    [table] = page.all("table", class_="fold yields")
    days = [row.all("th")[0].text for row in table.all("tr")[1:]]
    assert days == ["10 April 2027", "30 January 2027", "17 October 2026"]
    assert "can not tell, not counted" in table.text
    assert "Sieve the eggs." in page.text


def test_one_batch_needs_no_plot(tmp_path: Path) -> None:
    """A single point is a figure in the table and no picture; without a batch there is neither."""
    assert EGG_STORED.history is not None
    for count in (1, 0):
        history = replace(EGG_STORED.history, points=EGG_STORED.history.points[:count])
        component = replace(EGG_COMPONENT, stored=replace(EGG_STORED, history=history))
        build_site(replace(BOOK, components=(component,)), theme=THEME, out=tmp_path)
        page = read_page(tmp_path / "components/egg-powder.html")
        assert page.all("svg") == []
        assert len(page.all("table", class_="fold yields")) == count


def test_an_edit_of_a_run_is_a_few_pages() -> None:
    """A new note on a run changes its page; a jar that was opened changes the larder; other pages stay."""
    noted = replace(BOOK, runs={RUN: replace(RUN_SHEET, notes=("Good.",))})
    assert changed_pages(BOOK, noted, WORDS) == {RUN_PAGE}
    opened = replace(BOOK, larder=replace(LARDER, first=()))
    assert "larder.html" in changed_pages(BOOK, opened, WORDS)
    assert RUN_PAGE not in changed_pages(BOOK, opened, WORDS)


def test_pocket_file_and_ebook_have_the_larder_at_a_glance(tmp_path: Path) -> None:
    """What there is of each component, what runs short and what is past, as a table."""
    build_single(BOOK, theme=THEME, out=tmp_path)
    [section] = read_page(tmp_path / "pocket.html").all("section", id="larder")
    rows = [[cell.text for cell in (*row.all("th"), *row.all("td"))] for row in rows_of(section)]
    assert rows == [
        ["Egg powder RAW runs short", "148\u00a0g", "300\u00a0g", "10 May 2027, past"],
        ["Leek rings", "148\u00a0g", "", "10 May 2027"],
    ]


def test_data_holds_larder_and_runs_as_the_commands_show_them(tmp_path: Path) -> None:
    """`data/larder.json` and `data/batches/<id>.json` hold the records of `show`, field by field."""
    records = {"larder": {"day": "2027-06-01", "containers": []}, f"batches/{RUN}": {"batch": RUN, "components": []}}
    build_data(replace(BOOK, records=records), out=tmp_path)  # type: ignore[arg-type]  # short ones do
    for name, record in records.items():
        assert json.loads((tmp_path / "data" / f"{name}.json").read_text(encoding="utf-8")) == record
    assert "larder" not in json.loads((tmp_path / "data" / "book.json").read_text(encoding="utf-8"))
