"""Sheets of runs, larder and history: every figure here is worked out by hand beside it."""

from collections.abc import Mapping
from datetime import date
from functools import cache

import pytest

from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.safety.whole import CheckedBook, check_book
from packlarder.sheets.book import book_sheet, dish_series
from packlarder.sheets.book_sheet import BookSheet
from packlarder.sheets.data import dish_data
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.origins import component_origins
from packlarder.sheets.printed import System, plain
from packlarder.sheets.shelf import in_spans
from packlarder.sheets.store_sheet import LarderSheet, RunSheet, ShelfGroup, Stay

BOOK = """\
packlarder: 1
title: A shelf
servings: 2
stoves: {gas stove: {fuel: gas mix, kind: gas burner}}
pots: {big pot: {holds: 3 L, across: 20 cm}}
dryers:
  freeze-dryer: {dries: freeze-dried, trays: 5, a tray: 900 g, deep: 10 mm, takes: 36 h}
containers:
  small jar: {kind: jar, holds: 500 mL}
  large jar: {kind: jar, holds: 3 L}
larder:
  stores: {cellar: 15 °C}
  keeping:
    - {dried: freeze-dried, for: 6 months, why: we eat it in winter}
    - {what: vegetable, dried: freeze-dried, for: 24 months, why: it stays green}
    - {kept: opened, for: 4 weeks, why: it takes up damp}
  at least: {egg powder: 300 g, leek rings: 50 g}
usual conditions: {height: 500 m, air: 12 °C, water: 10 °C, stove: gas stove, pot: big pot}
"""
EGG = """\
name: Egg powder
was: egg, whole, raw
went in: raw
contains: [egg]
dried: freeze-dried
form: powder
counts: {1 egg: 50 g}
weighs: {1 tbsp: 6.1 g}
bring back: {mix: 1 tbsp, with: 1 tbsp cold water, wait: 5 min}
"""
LEEK = """\
name: Leek rings
was: leek, boiled
went in: blanched
contains: []
dried: freeze-dried
form: rings
weighs: {1 cup: 8 g}
bring back: {soak: 1 cup, with: 1/2 cup hot water, takes: 60 mL, wait: 5 min}
"""
DISH = """\
name: Egg and leek pan
meal: breakfast
serves: 2
parts:
  - egg powder: 50 g
  - leek rings: worth 100 g fresh
steps:
  - soak: leek rings
  - drain: away
  - mix: egg powder
  - fry: [egg powder, leek rings]
    for: 6 min
    to: 71 °C
    until: no liquid egg is left
"""
# 900 g gave 216, 225 and 234 g: 240, 250 and 260 g of a kilogram. SR28: 23.85 % of an egg is no water, 214.7 g of 900.
EGGS = """\
loaded: {day}
dryer: freeze-dryer
took: {hours} h
on the trays:
  - egg powder:
      bought: 1 kg
      fresh: 900 g
      trays: 2
      deep: 10 mm
      dry: {dry} g
{tested}      put in:
        - {{in: small jar, holds: 72 g, stands: cellar}}
        - {{in: small jar, holds: 72 g, stands: cellar}}
        - {{in: small jar, holds: 72 g, stands: cellar}}
"""
TESTED = "      tested: no lighter\n"
MIXED_RUN = """\
loaded: 2027-05-01
dryer: freeze-dryer
took: 48 h
on the trays:
  - leek rings:
      fresh: 1 kg
      trays: 2
      dry: 130 g
  - egg powder:
      fresh: 900 g
      trays: 2
      dry: 234 g
      tested: no lighter
      put in: [{in: large jar, holds: 234 g, stands: cellar}]
"""
RUNNING = """\
loaded: 2027-05-31 20:00
dryer: freeze-dryer
on the trays:
  - leek rings: {fresh: 1 kg, trays: 2}
"""
DRAWS = """\
date: 2027-05-20
drawn:
  - {from: 2026-11-01-eggs/a1, took: all}
  - {from: 2027-01-10-eggs/a2, took: 22 g}
"""
FILES: Mapping[str, str] = {
    "book.yaml": BOOK,
    "components/egg-powder.yaml": EGG,
    "components/leek-rings.yaml": LEEK,
    "dishes/egg-and-leek-pan.yaml": DISH,
    "batches/2026-11-01-eggs.yaml": EGGS.format(day="2026-11-01", hours=36, dry=216, tested=TESTED),
    "batches/2027-01-10-eggs.yaml": EGGS.format(day="2027-01-10", hours=40, dry=225, tested=TESTED),
    "batches/2027-05-01-leeks-and-eggs.yaml": MIXED_RUN,
    "batches/2027-05-31-leeks.yaml": RUNNING,
    "draws/2027-05-20.yaml": DRAWS,
}
ON = date(2027, 6, 1)


@cache
def checked(*without: str) -> CheckedBook:
    """Read and check the book, but for some files."""
    read = read_book({path: text.encode() for path, text in FILES.items() if path not in without})
    assert read.book is not None
    assert not has_errors(read.faults), read.faults
    return check_book(read.book, ON)


@cache
def sheet() -> BookSheet:
    """Build the sheet of the book."""
    return book_sheet(checked(), edition="0", on=ON)


def larder() -> LarderSheet:
    """Give the larder."""
    found = sheet().larder
    assert found is not None
    return found


def run(id: str) -> RunSheet:
    """Give a run."""
    return sheet().runs[id]


def test_numbers_are_written_as_spans() -> None:
    """Neighbours become a span, what stands alone stays alone."""
    assert in_spans("b", [1, 2, 3, 5, 7, 8]) == "b1 to b3, b5, b7 to b8"
    assert in_spans("a", [4]) == "a4"


def test_the_strip_tells_what_is_looked_for_first() -> None:
    """Six jars hold something: of 72 g two, two and one of 50 g, and one of 234 g."""
    told = {fact.label: (fact.metric, fact.us) for fact in larder().strip}
    # 2 x 72 + (2 x 72 + 72 - 22) + 234 = 144 + 194 + 234 = 572 g, as its rows say; 572 / 28.35 = 20.2 oz -> 1 lb 4 oz
    assert told["Containers"] == ("6", "6")
    assert told["Dry food"] == ("572\u00a0g", "1\u00a0lb\u00a04\u00a0oz")
    # each as its own batch was weighed: 144 x 900/216 + 194 x 900/225 + 234 x 900/234 = 600 + 776 + 900 = 2276 g
    assert told["Worth fresh"][0] == "2.28\u00a0kg"
    assert [told[name][0] for name in ("Open", "Past their day", "Run short")] == ["1", "2", "1"]


def _told(groups: tuple[ShelfGroup, ...]) -> list[tuple[str, list[tuple[str, int, str, str]]]]:
    return [
        (
            one.heading,
            [(line.run.name, line.count, line.holds.metric, line.first.use_by) for line in one.lines],
        )
        for one in groups
    ]


def test_what_wants_a_look_comes_first() -> None:
    """Dried on 2 November and 11 January, six months end on 2 May and 11 July; opened on 20 May, four weeks on 17 June.

    36 h after 1 November is 2 November, 40 h after 10 January the 11th, 48 h after 1 May the 3rd.
    """
    assert _told(larder().first) == [
        ("Past its day", [("2026-11-01-eggs/a2 to a3", 2, "144\u00a0g", "2 May 2027")]),
        ("Open", [("2027-01-10-eggs/a2", 1, "50\u00a0g", "17 June 2027")]),
    ]
    assert _told(larder().later) == [
        ("July 2027", [("2027-01-10-eggs/a1, a3", 2, "144\u00a0g", "11 July 2027")]),
        ("November 2027", [("2027-05-01-leeks-and-eggs/b1", 1, "234\u00a0g", "3 November 2027")]),
    ]
    assert [(line.run.name, line.first.state, line.first.use_by) for line in larder().emptied_shelf] == [
        ("2026-11-01-eggs/a1", "empty", "")
    ]


def test_every_container_stands_in_one_group() -> None:
    """The groups part the larder: none is left out and none comes twice."""
    groups = (*larder().first, *larder().later)
    assert sum(one.count for one in groups) == len(larder().containers)
    assert sum(line.count for one in groups for line in one.lines) == len(larder().containers)


def test_a_level_counts_what_is_not_past() -> None:
    """Of 572 g, 428 are good, and 300 are wanted; of leeks nothing stands where 50 g are wanted."""
    rows = {row.component.id: row for row in larder().levels}
    eggs, leeks = rows["egg-powder"], rows["leek-rings"]
    assert (eggs.held.metric, eggs.short, eggs.past, eggs.until) == ("572\u00a0g", False, True, "2 May 2027")
    assert (leeks.containers, leeks.short, leeks.until, leeks.stays) == (0, True, "", ())
    assert eggs.stays == (
        Stay(until=date(2027, 5, 2).toordinal(), count=2, opened=False, past=True),
        Stay(until=date(2027, 6, 17).toordinal(), count=1, opened=True, past=False),
        Stay(until=date(2027, 7, 11).toordinal(), count=2, opened=False, past=False),
        Stay(until=date(2027, 11, 3).toordinal(), count=1, opened=False, past=False),
    )
    assert eggs.says == "1 open, 5 sealed: 2 May 2027 to 3 November 2027"
    assert larder().levels[0] is leeks  # what runs short comes first


def test_the_calendar_holds_all_days() -> None:
    """It begins two weeks before the first day and ends two after the last; quarters begin within it."""
    calendar = larder().calendar
    assert calendar is not None
    assert (date.fromordinal(calendar.first), date.fromordinal(calendar.last)) == (
        date(2027, 4, 18),
        date(2027, 11, 17),
    )
    assert [(date.fromordinal(one.day), one.month, one.year) for one in calendar.quarters] == [
        (date(2027, 7, 1), "July", ""),
        (date(2027, 10, 1), "Oct", ""),
    ]


def test_a_run_says_what_came_of_it_in_both_systems() -> None:
    """900 g less 216 g are 684 g of water: 680 mL; 684 / 236.6 = 2.89 cups, which 3 cups meet within a twentieth."""
    summary = run("2026-11-01-eggs").summary
    assert plain(summary, System.METRIC, 0) == "900\u00a0g fresh gave 216\u00a0g dry: 680\u00a0mL of water taken out."
    assert plain(summary, System.US, 0) == (
        # 900 / 28.35 = 31.75 oz, in halves 31½ of them: 1 lb 15½ oz; 216 / 28.35 = 7.62 oz, in quarters 7½
        "1\u00a0lb\u00a015½\u00a0oz fresh gave 7½\u00a0oz dry: 3\u00a0cups of water taken out."
    )
    assert plain(run("2027-05-31-leeks").summary, System.METRIC, 0) == "Still in the dryer."


def test_a_wet_batch_says_how_much_lighter_it_must_get() -> None:
    """Boiled leek is 90.8 % water by SR28: a kilogram holds 92 g of solids, so that 130 g still hold 38 g of water."""
    leeks, eggs = run("2027-05-01-leeks-and-eggs").batches
    assert leeks.verdict == "not dry yet"
    says = plain(leeks.verdict_says, System.METRIC, 0)
    # at most 5 % of what is left may be water: 92 / 0.95 = 96.8, on the safe side 96 g; 130 - 96.8 = 33.2, so 34 g
    assert says.startswith("At most 5\u00a0% water is dry. It must get 34\u00a0g lighter, to 96\u00a0g")
    assert eggs.verdict == "dry"


def test_what_lay_beside_raw_food_says_so() -> None:
    """Leeks that shared a run with raw egg name it; the egg does not name itself, nor do leeks that lay alone."""
    leeks, eggs = run("2027-05-01-leeks-and-eggs").batches
    assert [one.name for one in leeks.beside_raw] == ["Egg powder"]
    assert eggs.beside_raw == ()
    assert run("2027-05-31-leeks").batches[0].beside_raw == ()


def test_runs_are_listed_newest_first_by_year() -> None:
    """Three of 2027, one of 2026; weights of all trays, and each food with its own RAW and verdict."""
    index = sheet().run_index
    assert index is not None
    assert [(year.year, [one.link.id for one in year.entries]) for year in index.years] == [
        ("2027", ["2027-05-31-leeks", "2027-05-01-leeks-and-eggs", "2027-01-10-eggs"]),
        ("2026", ["2026-11-01-eggs"]),
    ]
    running, mixed, _ = index.years[0].entries
    assert (running.dry, running.fresh is not None and running.fresh.metric) == (None, "1000\u00a0g")
    assert mixed.dry is not None
    assert mixed.dry.metric == "364\u00a0g"  # 130 + 234
    assert [(one.name, one.raw, one.verdict) for one in mixed.trays] == [
        ("Leek rings", False, "not dry yet"),
        ("Egg powder", True, "dry"),
    ]


def test_a_history_has_a_point_for_each_weighed_batch() -> None:
    """216, 225 and 234 g of 900 g are 240, 250 and 260 g of a kilogram: the median is 250 g."""
    stored = {one.id: one.stored for one in sheet().components}["egg-powder"]
    assert stored is not None
    assert stored.history is not None
    assert [(round(one.dry_per_kg), one.gave.metric, one.counted) for one in stored.history.points] == [
        (240, "240\u00a0g", True),
        (250, "250\u00a0g", True),
        (260, "260\u00a0g", True),
    ]
    assert stored.history.median == pytest.approx(250)
    assert plain(stored.history.says, System.METRIC, 0) == (
        "The median of 3 batches that were dry by our own test: 1 kg fresh gives 250\u00a0g dry "
        "(240\u00a0g to 260\u00a0g)."
    )
    # 250 / 28.35 = 8.82 oz -> 8¾
    assert "gives 8¾\u00a0oz dry" in plain(stored.history.says, System.US, 0)


def test_the_card_says_what_to_expect_next_time() -> None:
    """Trays of 450 g; five take 2250 g and, at a quarter, give 562 g; hours 36, 40, 48: the median is 40."""
    stored = {one.id: one.stored for one in sheet().components}["egg-powder"]
    assert stored is not None
    assert stored.history is not None
    card = {fact.label: fact.metric for fact in stored.history.card}
    assert card["fresh on each tray"] == "450\u00a0g"
    assert card["hours last time"] == "48\u00a0h"
    assert card["hours, all runs"] == "40\u00a0h (36\u00a0h to 48\u00a0h)"
    assert card["a full load of 5 trays, fresh"] == "2250\u00a0g"
    assert card["a full load gives, dry"] in ("562\u00a0g", "563\u00a0g")  # 562.5
    # a tablespoon of 14.79 mL weighs 6.1 g: 562.5 / 6.1 x 14.79 = 1364 mL: three small jars, one large one
    assert card["which fills"] == "3\u00a0×\u00a0small jar or 1\u00a0×\u00a0large jar"


ORIGINS = (
    (
        (),
        "3 of our batches",
        "from 3 of our batches, 250\u00a0g dry from 1 kg (the median of 240\u00a0g to 260\u00a0g)",
    ),
    (
        ("batches/2026-11-01-eggs.yaml", "batches/2027-01-10-eggs.yaml", "draws/2027-05-20.yaml"),
        "one of our batches",
        "from one of our batches, 260\u00a0g dry from 1 kg;",
    ),
    (
        (
            "batches/2026-11-01-eggs.yaml",
            "batches/2027-01-10-eggs.yaml",
            "batches/2027-05-01-leeks-and-eggs.yaml",
            "draws/2027-05-20.yaml",
        ),
        "food table",
        "by the food table",
    ),
)


@pytest.mark.parametrize(("without", "noun", "line"), ORIGINS, ids=[noun for _, noun, _ in ORIGINS])
def test_page_and_data_name_the_batches_alike(without: tuple[str, ...], noun: str, line: str) -> None:
    """Dish page, component page and `show dish --json` tell from how many batches a yield comes, in the same words."""
    book = checked(*without)
    series = dish_series(book, "egg-and-leek-pan", (2,))
    page = dish_sheet(series, ())
    assert page.parts[0].yield_from == noun
    assert dish_data(series, page, edition="0", day="2027-06-01")["parts"][0]["yield_from"] == noun
    assert any(line in origin for origin in page.origins)
    assert any(line in origin for origin in component_origins(book.components["egg-powder"]))
    component = next(one for one in book_sheet(book, edition="0", on=ON).components if one.id == "egg-powder")
    assert {fact.source for fact in component.yields} == {noun}


def test_a_book_without_runs_has_nothing_stored() -> None:
    """No larder, no list of runs, no record for other programs, and no history of a component."""
    without = tuple(path for path in FILES if path.startswith(("batches/", "draws/")))
    bare = book_sheet(checked(*without), edition="0", on=ON)
    assert (bare.larder, bare.run_index, dict(bare.runs), dict(bare.records)) == (None, None, {}, {})
    assert all(one.stored is None for one in bare.components)


def test_records_are_what_the_commands_show() -> None:
    """The larder and each run go by the names of their files, and name what they are of."""
    records = sheet().records
    assert list(records) == ["larder", *(f"batches/{id}" for id in sheet().runs)]
    assert dict(records["larder"])["day"] == "2027-06-01"
    assert dict(records["batches/2026-11-01-eggs"])["batch"] == "2026-11-01-eggs"
