"""Pages of trips: the list, a trip with its pictures, and what other pages say of trips."""

import re
from dataclasses import replace
from pathlib import Path

import pytest
from tests.site.conftest import THEME
from tests.site.nu import nu_messages
from tests.site.page import Element, read_page, read_picks
from tests.site.sample_trip import ID, sums, trip, with_sheets
from tests.site.sample_trip import tripped as book
from tests.site.samples import BOOK

from packlarder.publish.site import build_site
from packlarder.publish.site_pages import changed_pages, main_ways, pages_of
from packlarder.publish.trip_pictures import energy_columns, water_bars, weight_columns
from packlarder.publish.words import read_words
from packlarder.sheets.facts import Link

WORDS = read_words(THEME / "site" / "words", "en")
PAGE = f"trips/{ID}.html"
MOST_BYTES = 120 * 1024
EVIL = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>"


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write the pages that speak of the trip."""
    out = tmp_path_factory.mktemp("trips")
    build_site(book(), theme=THEME, out=out)
    return out


@pytest.fixture(scope="module")
def page(site: Path) -> Element:
    """Read the page of the trip."""
    return read_page(site / PAGE)


def test_the_checker_of_web_pages_has_nothing_to_say(site: Path) -> None:
    """The Nu HTML Checker gives no error and no warning for the pages of trips and those that name one."""
    kinds = (PAGE, "trips.html", "index.html", "larder.html", "dishes/eggs-and-ham.html", "components/peas.html")
    assert nu_messages(site / kind for kind in kinds) == []


def test_a_trip_page_stays_small(site: Path) -> None:
    """Four days of 16 dishes in 41 packs keep within 120 KiB."""
    assert (site / PAGE).stat().st_size <= MOST_BYTES


def test_a_trip_is_told_in_order(page: Element) -> None:
    """What it needs of people and water first, then what is done before, packed, burnt, carried."""
    assert [heading.text for heading in page.all("h2")] == [
        "Cautions",
        "Who goes",
        "Menu",
        "Water",
        "Used at each stop",
        "Still to get",
        "Before you go",
        "Packs",
        "What to fill",
        "Fuel",
        "Weight and energy",
        "What each eats a day",
        "Stops",
        "Kit",
        "Carried out",
        "Notes",
    ]
    [ways] = page.all("nav", class_="orders")
    ids = {heading.attributes.get("id") for heading in page.all("h2")}
    assert all(link.attributes["href"][1:] in ids for link in ways.all("a"))


def test_the_menu_says_when_to_begin_and_when_each_soak_starts(page: Element) -> None:
    """Supper takes 39 min and leaves the flame at 18:24 to another, so 17:45; its water boils by 17:51."""
    supper = page.all("ol", class_="menu")[0].all("li")[0]
    assert "17:45 first move, 39\u00a0min to the plate" in supper.text
    assert "17:51 soak In a bowl or the pack: beef crumbles" in supper.text
    assert "Gull skerry · all, 3.8\u00a0portions" in supper.text
    assert "all but Pim, 3.2\u00a0portions" in page.text


def test_raw_bears_raw_wherever_the_trip_names_it(page: Element) -> None:
    """The egg of the breakfast: in the menu, the pack, the fill list and the load; no other pack of that day."""
    packs = [row for row in page.all("ol", class_="packs")[1].all("li") if row.all("span", class_="number")]
    assert [bool(row.all("b", class_="raw")) for row in packs[:3]] == ["Egg powder" in row.text for row in packs[:3]]
    for name in ("packs", "menu"):
        assert page.all("ol", class_=name)[1].all("b", class_="raw")
    for table in (page.all("table", class_="fold fills")[0], page.all("dl", class_="loads")[0]):
        assert len(table.all("b", class_="raw")) == 1


def test_what_is_lacking_stands_by_how_it_is_come_by(page: Element) -> None:
    """What is dried says how much is bought and loaded; what is bought is a list; of both what is for mixes."""
    [section] = [one for one in page.all("section") if one.all("h2", id="short")]
    assert [heading.text for heading in section.all("h3")] == ["To dry at home", "To mix", "To buy as it is carried"]
    apples = "Buy 770\u00a0g (one of our batches: 1.35 g bought for 1 g loaded), load 570\u00a0g, 2 trays"
    assert apples in section.text
    [bought] = section.all("dl", class_="ledger")
    assert "Raisins 105 g of it for mixes580 g" in " ".join(bought.text.split())


def test_tasks_of_a_kind_stand_on_one_line(page: Element) -> None:
    """Two things that are bought or cooked on one day are one line, which names their load."""
    [day] = [one for one in page.all("ol", class_="plan")[0].inside if one.text.strip().startswith("Tuesday 29 June")]
    assert [" ".join(task.text.split()) for task in day.all("li")][:2] == [
        "Buy Cheddar crumbs 155 g, Spinach crumble 145 g load 3",
        "Cook Lentil rice 1130 g, Sweet corn 245 g load 3",
    ]


def test_pictures_say_what_they_show(page: Element) -> None:
    """Each has a title and a description that it is labelled by, and no style of its own."""
    ids = {element.attributes["id"]: element for element in page.walk() if "id" in element.attributes}
    pictures = page.all("svg", role="img")
    assert len(pictures) == 3 + 2  # three legs, weight, energy
    for picture in pictures:
        title, says = (ids[id] for id in picture.attributes["aria-labelledby"].split())
        assert (title.tag, says.tag) == ("title", "desc")
        assert says.text
    assert not [element for element in page.walk() if "style" in element.attributes]
    last = sums().journey.legs[2]
    told = f"{last.carry_ml / 1000:.2f}\u00a0L in all: {last.water.drinking_ml / 1000:.2f}\u00a0L to drink"
    assert page.all("desc", id="leg-3-says")[0].text.startswith(told)


def test_a_kind_of_water_is_told_by_its_hatching() -> None:
    """The bars stand to one scale: the heaviest leg fills the width, the containers hold 24 L; kinds keep order."""
    bars = water_bars(trip())
    assert bars is not None
    carried_ml = [leg.carry_ml for leg in sums().journey.legs]
    widths = [100 * one / max(carried_ml) for one in carried_ml]
    assert [bar[-1].x + bar[-1].width for bar in bars.bars] == pytest.approx(widths, abs=0.1)
    assert bars.holds == pytest.approx(100 * 24_000 / max(carried_ml), abs=0.01)
    assert [kind for kind, _ in bars.kinds] == ["dishes", "drinking", "washing", "reserve", "margin"]


def test_patterns_that_are_named_are_there(page: Element) -> None:
    """Every fill leads to a pattern of the page."""
    patterns = {f"url(#{one.attributes['id']})" for one in page.all("pattern")}
    fills = {one.attributes["fill"] for one in page.all("rect") if "fill" in one.attributes}
    assert fills
    assert fills <= patterns


def test_columns_stand_as_high_as_what_they_show() -> None:
    """The last day's column is as much lower as less is carried on its morning; the range's lines lie apart."""
    weights, energies = weight_columns(trip().days), energy_columns(trip())
    assert weights is not None
    assert energies is not None
    days = sums().journey.days[: sums().last_day]
    heights = [sum(box.height for box in column.boxes) for column in weights.columns]
    assert heights[-1] / heights[0] == pytest.approx(days[-1].carried_g / days[0].carried_g, abs=0.01)
    least, most = energies.lines
    assert (energies.foot - least.y) / (energies.foot - most.y) == pytest.approx(0.5, abs=0.01)


def test_many_days_do_not_all_bear_figures() -> None:
    """Of 20 days, every third has its figure, so that none runs into the next on a phone."""
    [day] = trip().days[:1]
    columns = weight_columns([day] * 20)
    assert columns is not None
    assert [at for at, column in enumerate(columns.columns) if column.named] == [0, 3, 6, 9, 12, 15, 18]


def test_weights_can_be_switched(page: Element) -> None:
    """Every figure stands beside the page in both systems, in sentences, tables, pictures and what they say."""
    picks = read_picks(page)
    pairs = list(zip(picks.metric, picks.us, strict=True))
    shown = [one for one in page.walk() if "data-f" in one.attributes]
    assert {one.tag for one in shown} == {"span", "tspan", "desc"}
    assert all(one.text == pairs[int(one.attributes["data-f"])][0][0] for one in shown)


def test_the_list_has_planned_trips_first(tmp_path: Path) -> None:
    """Planned ones stand above those that are gone; each leads to its page."""
    trips = book().trips
    assert trips is not None
    [entry] = trips.index.planned
    gone = replace(entry, link=Link(kind="trip", id="old", name="Last year"), gone=True)
    both = replace(trips, index=replace(trips.index, gone=(gone,)), sheets={ID: trip(), "old": trip()})
    sheet = replace(book(), trips=both)
    build_site(sheet, theme=THEME, out=tmp_path, only=frozenset({"trips.html"}))
    page = read_page(tmp_path / "trips.html")
    assert [heading.text for heading in page.all("h2")] == ["Planned", "Gone"]
    assert [link.attributes["href"] for link in page.all("main")[0].all("a")] == [PAGE, "trips/old.html"]


def test_a_trip_that_is_gone_has_nothing_to_fill(tmp_path: Path) -> None:
    """It says that it is gone, and leaves out what empty stores do not have."""
    gone = replace(trip(), gone=True, fills=(), shortfall=(), loads=(), plan=())
    build_site(with_sheets(book(), {ID: gone}), theme=THEME, out=tmp_path, only=frozenset({PAGE}))
    page = read_page(tmp_path / PAGE)
    assert "Trip that is gone" in page.text
    assert not {"What to fill", "Still to get", "Before you go"} & {heading.text for heading in page.all("h2")}


def test_other_pages_name_the_trip(site: Path) -> None:
    """The front names the next one; dishes say where they are eaten; component and larder what is reserved."""
    [following] = read_page(site / "index.html").all("p", class_="next")
    assert "Over the sound, 3 July to 6 July 2027" in following.text
    assert following.all("a")[0].attributes["href"] == PAGE
    assert f"../{PAGE}" in [
        one.attributes.get("href") for one in read_page(site / "dishes/apple-porridge.html").all("a")
    ]
    assert "Over the sound" not in read_page(site / "dishes/potato-hash.html").text
    peas = read_page(site / "components/peas.html").text
    assert re.search(r"Trips take 60\u00a0g: Over the sound, 3 July to 6 July 2027", peas)
    # 205 g of peas are held and 60 g reserved
    [row] = [
        row for row in read_page(site / "larder.html").all("tr") if row.text.startswith("Peas") and "free" in row.text
    ]
    assert "205\u00a0g free 145\u00a0g" in row.text


def test_a_book_without_trips_does_not_speak_of_them() -> None:
    """Neither navigation nor pages."""
    assert "trips" not in [way.section for way in main_ways(BOOK, WORDS)]
    assert not [page for page in pages_of(BOOK, WORDS) if page.section == "trips"]


def test_a_mate_has_the_same_frame_and_dishes() -> None:
    """A process without sums of trips lists the same pages and ways, and says the same of each dish."""
    leader, mate = book(), book(leads=False)
    assert main_ways(leader, WORDS) == main_ways(mate, WORDS)
    assert {page.address for page in pages_of(leader, WORDS)} == {page.address for page in pages_of(mate, WORDS)}
    assert leader.spread["apple-porridge"] == mate.spread["apple-porridge"]
    assert [link.id for link in mate.spread["apple-porridge"].eaten_on] == [ID]


def test_an_edit_of_a_trip_is_its_page() -> None:
    """What changes on a trip changes its page and no other trip's or dish's; an untouched book changes nothing."""
    noted = with_sheets(book(), {ID: replace(trip(), notes=("Take the long way.",))})
    assert changed_pages(book(), noted, WORDS) == {PAGE}
    assert changed_pages(book(), replace(book()), WORDS) == frozenset()


def test_markup_in_a_trip_stays_text(tmp_path: Path) -> None:
    """Names that hold tags or quotes are shown as typed, in pictures too."""
    known = trip()
    leg = replace(known.legs[0], title=EVIL, fills=EVIL)
    person = replace(known.people[0], name=EVIL, avoids=(EVIL,), says=(EVIL,))
    pack = replace(known.packing[0].packs[0], mark=EVIL, called=EVIL, bearer=EVIL, bought_at=EVIL)
    evil = replace(
        known,
        name=EVIL,
        about=EVIL,
        legs=(leg, *known.legs[1:]),
        people=(person,),
        packing=(replace(known.packing[0], packs=(pack,)),),
        notes=(EVIL,),
        stops=(replace(known.stops[0], place=EVIL),),
    )
    build_site(with_sheets(book(), {ID: evil}), theme=THEME, out=tmp_path, only=frozenset({PAGE}))
    page = read_page(tmp_path / PAGE)
    assert page.text.count(EVIL) >= 9
    assert len(page.all("script")) == 2
    assert not any("onerror" in element.attributes for element in page.walk())
