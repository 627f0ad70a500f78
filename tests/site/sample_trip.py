"""A trip for the site's tests, worked out by the real sums among the demo book's dishes, batches and draws.

All its jars of egg but one were emptied before, so that something RAW is still to dry.
"""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from functools import cache
from pathlib import Path

from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.reckon.trip.records import TripSums
from packlarder.safety.whole import CheckedBook, CheckedTrip, check_book
from packlarder.sheets.book import book_sheet
from packlarder.sheets.book_sheet import BookSheet
from packlarder.sheets.trip import trip_sheet
from packlarder.sheets.trip_sheet import TripSheet

RECIPES = Path(__file__).parents[2] / "recipes"
FOLDERS = ("", "components/", "dishes/", "batches/", "draws/")
ID = "over-the-sound"
TRIP = """\
name: Over the sound
about: Four days from island to island, the last of them high up.
starts: 2027-07-03
people:
  - Runa: {drinks: 3.5 L}
  - Eskil: {appetite: 120 %, carries: 150 %}
  - Tove: {avoids: [tree nuts, peanut], at risk: yes}
  - Pim: {age: 8, appetite: 60 %}
stoves: [canister burner, spirit burner]
burners: 1
pots: [big pot, small pot, pan]
fuel in hand: [85 g]
water containers:
  big can: {holds: 10 L, count: 2}
  bottle: {holds: 1 L, count: 4}
drinks: [milk coffee]
on the move:
  - raisins: 25 g each
spare day:
  - breakfast: muesli and milk
  - supper: squash stew in the cosy
stops:
  - place: Gull skerry
    day: 1
    other water: sea
    meals:
      - supper: beef and leek noodles
      - breakfast: eggs and ham
  - place: the long island
    day: 2
    fills: to be treated
    treated by: chlorine
    other water: lake
    meals:
      - lunch: crispbread board
      - supper: {dish: black bean and corn soup, for: [Runa, Eskil, Tove]}
      - supper: {dish: squash stew in the cosy, for: [Pim], stove: spirit burner}
      - breakfast: apple porridge
      - lunch: lentil rice from the heater
  - place: the saddle under the glacier, where the huts of the old road stand
    day: 3
    height: 2900 m
    air: -4 °C
    fills: snow
    windy: yes
    to buy: [honey]
    meals:
      - supper: chicken and pea rice
      - breakfast: muesli and milk
  - place: the ferry
    day: 4
notes: The ferry back leaves at four.
"""
EGGS = "2027-01-30-eggs/a1", "2027-01-30-eggs/a2", *(f"2027-04-10-eggs/a{number}" for number in (1, 2, 3))
DRAWN = "date: 2027-05-31\ndrawn:\n" + "".join(f"  - {{from: {mark}, took: all}}\n" for mark in EGGS)


@cache
def checked() -> CheckedBook:
    """Read the demo book with this trip alone, and check it."""
    paths = [path for folder in FOLDERS for path in RECIPES.glob(f"{folder}*.yaml")]
    files = {path.relative_to(RECIPES).as_posix(): path.read_bytes() for path in paths}
    read = read_book({**files, f"trips/{ID}.yaml": TRIP.encode(), "draws/eggs.yaml": DRAWN.encode()})
    assert read.book is not None
    assert not has_errors(read.faults), read.faults
    return check_book(read.book, date(2027, 6, 1))


def sums() -> TripSums:
    """Give the trip worked out."""
    return checked().trips[ID].sums


@cache
def trip() -> TripSheet:
    """Give the sheet of the trip, with what the rules say of two of its dishes."""
    book = checked()
    findings = (*book.dishes["eggs-and-ham"].findings, *book.dishes["boat-lentil-rice"].findings)
    return trip_sheet(sums(), findings, book.book.household)


def book_with_trip() -> CheckedBook:
    """Give the demo book with the trip, held against no rule."""
    return replace(checked(), trips={ID: CheckedTrip(sums=sums(), findings=())})


@cache
def tripped(*, leads: bool = True) -> BookSheet:
    """Give the sheet of the demo book with the sample trip, as its leading process or a mate has it."""
    checked = book_with_trip() if leads else replace(book_with_trip(), trips={})
    sheet = book_sheet(checked, edition="7f3a9c", on=date(2027, 6, 1))
    return with_sheets(sheet, {ID: trip()}) if leads else sheet


def with_sheets(sheet: BookSheet, sheets: Mapping[str, TripSheet]) -> BookSheet:
    """Give the sheet of a book with other sheets of its trips."""
    assert sheet.trips is not None
    return replace(sheet, trips=replace(sheet.trips, sheets=sheets))


def tripped_and_gone() -> BookSheet:
    """Give that sheet with one trip more, which is gone."""
    sheet = tripped()
    assert sheet.trips is not None
    [planned] = sheet.trips.index.planned
    link = replace(planned.link, id="the-lake-in-may", name="The lake in May")
    gone = replace(planned, link=link, dates="1 May to 3 May 2027", people="Runa", gone=True, figures=())
    sheets = {**sheet.trips.sheets, link.id: replace(trip(), id=link.id, name=link.name, gone=True)}
    index = replace(sheet.trips.index, gone=(gone,))
    return replace(sheet, trips=replace(sheet.trips, index=index, sheets=sheets))
