"""The booklet of a trip, read back from its PDF: all that the field booklet must hold, and what only a trip has."""

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

import pytest
from tests.paper import reading, test_booklet, test_imposed_sheets
from tests.paper.conftest import Booklet
from tests.sheets import trip_sample

from packlarder.faults import Severity
from packlarder.publish.sizes import bed, page_size
from packlarder.publish.trip_paper import build_trip_booklets
from packlarder.sheets.field_sheet import FieldOpening, NotFor
from packlarder.sheets.trip_field import trip_book
from packlarder.sheets.trip_field_sheet import SpotCard, TripBook

EDITION = "7f3a9c"


@dataclass(frozen=True, kw_only=True)
class PrintedTrip(Booklet):
    """The booklet of the sample trip as printed."""

    book: TripBook

    @property
    def short(self) -> list[FieldOpening]:
        """Give the openings that take a page each."""
        return [one for one in self.book.openings if one.short]

    def chapter(self, title: str) -> str:
        """Give the words of a chapter row by row, from its title in the outline to the next title."""
        pages = sorted(self.starts.values())
        start = self.starts[title]
        end = next(page for page in (*pages, len(self.words) + 1) if page > start)
        return " ".join(row for page in range(start, end) for row in reading.rows(self.words[page - 1]))


def print_trip(size: str, theme: Path, out: Path) -> PrintedTrip:
    """Print the sample trip in one size; nuts in a dish and a stop at its end are added by hand."""
    household = trip_sample.book().book.household
    book = trip_book(trip_sample.checked_trip(), household, edition=EDITION, on=trip_sample.ON)
    long = next(one for one in book.openings if not one.short)
    avoided = replace(long, not_for=(NotFor(name="NOT FOR TOVE", why="tree nuts"),))
    openings = tuple([avoided if one is long else one for one in book.openings])
    spot = SpotCard(place="The far quay", day="Day 3", water="2.40\u00a0L", notes=("Filled there: tap.",))
    book = replace(book, openings=openings, on_the_spot=(spot,))
    faults = build_trip_booklets(book, sizes=(size,), theme=theme, out=out)
    page = page_size(size)
    assert page is not None
    return PrintedTrip(
        book=book,
        openings=[one for one in book.openings if not one.short],
        name=f"trip-{book.id}",
        title=book.name,
        size=page,
        bed=bed(page),
        out=out,
        faults=faults,
    )


@pytest.fixture(scope="module", params=["a6", "quarter-letter"])
def trip(request: pytest.FixtureRequest, checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> PrintedTrip:
    """Give the sample trip, printed in each of the first two sizes."""
    return print_trip(request.param, checkout / "theme", tmp_path_factory.mktemp("trip"))


@pytest.mark.parametrize(
    "holds",
    [
        test_booklet.test_page_size_and_number,
        test_booklet.test_nothing_under_nine_points,
        test_booklet.test_water_and_minutes_are_large_and_bold,
        test_booklet.test_one_ink,
        test_booklet.test_nothing_near_the_edge,
        test_booklet.test_no_word_lies_on_another,
        test_booklet.test_footer_has_title_edition_and_number,
        test_booklet.test_fonts_are_ours_and_embedded,
        test_booklet.test_every_word_is_printed,
        test_booklet.test_in_hand_on_the_left_to_do_on_the_right,
        test_imposed_sheets.test_sheets_have_their_size_and_number,
        test_imposed_sheets.test_every_page_lies_where_the_formula_says,
    ],
)
def test_holds_what_every_booklet_holds(trip: PrintedTrip, holds: Callable[[Booklet], None]) -> None:
    """Sizes, edges, type, ink, fonts, footer, every word of each opening, imposed sheets: as in the field booklet."""
    holds(trip)


def test_each_dish_takes_exactly_one_opening_from_a_left_page(trip: PrintedTrip) -> None:
    """Nothing was said of the booklet, and each dish starts on an even page and takes two."""
    assert trip.faults == ()
    for opening in trip.openings:
        pages = trip.pages_of(opening)
        assert (pages.start % 2, len(pages)) == (0, 2), opening.name


def test_short_dishes_stand_two_to_an_opening(trip: PrintedTrip) -> None:
    """Board and cocoa, of one step each, take the left and the right page of the last opening, with all there is."""
    assert [one.name for one in trip.short] == ["Crispbread, smoked cheese and apple", "Hot cocoa"]
    left, right = (trip.pages_of(one) for one in trip.short)
    assert (left.start % 2, len(left), len(right), right.start) == (0, 1, 1, left.start + 1)
    for one in trip.short:
        text = trip.text_of(trip.pages_of(one))
        assert_all(text, (one.for_whom, one.allergens, one.conditions, *one.cautions))
        assert_all(text, (f"{share.what}: {share.each}." for share in one.shares))
        assert_all(text, ("".join(span.text for span in step.line) for step in one.steps))
        assert_all(text, (text for row in one.meals for text in (row.begins, *row.soaks, row.eaten, row.marks)))
        assert_all(text, (pack.holds for pack in one.packs))


def test_the_outline_leads_to_every_chapter_and_dish(trip: PrintedTrip) -> None:
    """Front, menu, water and fuel, lists, each dish once in the order of days, the short ones last, safety, lines."""
    assert [title for title, _ in reading.outline(trip.reader)] == [
        "Two days among the skerries", "Menu", "Water and fuel", "Packing list", "Filling the packs", "Kit",
        *(opening.name for opening in trip.openings), *(one.name for one in trip.short), "Safety", "To write on",
    ]  # fmt: skip  # in their order


def test_the_front_says_who_goes_and_what_they_must_not_eat(trip: PrintedTrip) -> None:
    """Name, dates, people, what they avoid, edition, how to use and how to print it, and where each chapter begins."""
    front = trip.text_of(range(1, 2))
    told = ("Saturday 26 June to Sunday 27 June 2027", "Tove: no tree nuts, peanut", EDITION, "actual size")
    assert_all(front, (*told, *trip.book.how_to_use))
    for name in ("Menu", "Water and fuel", "Packing list", "Filling the packs", "Kit", "Safety", "To write on"):
        assert f"{name} {trip.starts[name]}" in front


def test_the_menu_lies_open_at_once_and_names_the_real_pages(trip: PrintedTrip) -> None:
    """It starts on a left page and ends on the next at most; each dish stands there with its times and its page."""
    start = trip.starts["Menu"]
    assert start % 2 == 0
    assert trip.starts["Water and fuel"] <= start + 2
    menu = trip.chapter("Menu")
    pages = {opening.id: trip.starts[opening.name] for opening in trip.book.openings}
    for day in trip.book.menu:
        assert_all(menu, (f"{day.heading} {day.on_the_move}", *(there.place for there in day.places)))
        for line in (line for there in day.places for line in there.lines):
            assert_all(menu, line.dish.split())
            assert_all(menu, (f"{line.begins} {line.eaten} {pages[line.opening]}",))
    raw = sum(line.raw for day in trip.book.menu for there in day.places for line in there.lines)
    assert len(re.findall(r"\bRAW\b", menu)) == raw == 1


def test_water_and_fuel_stand_on_their_card(trip: PrintedTrip) -> None:
    """Of each leg what is filled, in large type, its pieces, treatment, wait, what is lacking; of fuel each stop."""
    card = trip.chapter("Water and fuel")
    for leg in trip.book.legs:
        assert_all(card, (leg.heading, leg.fill, leg.containers, leg.short, *leg.notes))
        assert_all(card, (f"{one.label} {one.figure}" for one in leg.made_of))
    for spot in trip.book.on_the_spot:
        assert_all(card, (spot.place, spot.day, spot.water, *spot.notes))
    for fuel in trip.book.fuels:
        assert_all(card, (fuel.heading, fuel.need, *fuel.taken))
        assert_all(card, (f"{one.label} {one.figure}" for one in fuel.stops))
    start = trip.starts["Water and fuel"]
    end = min(page for page in trip.starts.values() if page > start)
    large = [run.text for runs in trip.runs[start - 1 : end - 1] for run in runs if run.size >= 14 - 0.01]
    assert len(trip.book.legs) == 2
    assert all(any(leg.fill in text for text in large) for leg in trip.book.legs)


def test_lists_have_every_pack_jar_and_thing_with_a_box(trip: PrintedTrip) -> None:
    """Each pack with mark, weight, bearer and RAW; each jar with what is taken; each thing of the kit."""
    packing, filling, kit = (trip.chapter(name) for name in ("Packing list", "Filling the packs", "Kit"))
    packs = [pack for day in trip.book.packing for pack in day.packs]
    assert len(re.findall(r"\bRAW\b", packing)) == sum(pack.raw for pack in packs) == 1
    for pack in packs:
        assert_all(packing, (pack.mark, pack.weight, pack.bearer, *pack.called.split()))
    for fill in trip.book.fills:
        assert_all(filling, (fill.component, *(f"{one.label} {one.figure}" for one in fill.into)))
        assert_all(filling, (text for jar in fill.jars for text in (jar.weight, *jar.mark.split("/")[:1])))
    assert_all(kit, (thing.what for thing in trip.book.kit))
    boxes = sum(reading.boxes(page) for page in trip.reader.pages)
    jars = sum(len(fill.jars) + len(fill.into) for fill in trip.book.fills)
    assert boxes >= len(packs) + jars + len(trip.book.kit)


def test_a_day_of_packs_that_is_torn_says_that_it_goes_on(trip: PrintedTrip) -> None:
    """Where a page of the packing list begins in the middle of a day, its first words name that day."""
    start, end = trip.starts["Packing list"], trip.starts["Filling the packs"]
    headings = [day.heading for day in trip.book.packing]
    open_day, torn = "", 0
    for page in range(start, end):
        rows = reading.rows(trip.words[page - 1])
        heads = [heading for row in rows for heading in headings if row.startswith(heading)]
        whole = (*(f"{one} its packs" for one in headings), "Who carries")
        if page > start and not rows[0].startswith(whole):
            assert rows[0] == f"{open_day}, continued"
            torn += 1
        open_day = heads[-1] if heads else open_day
    assert torn


def test_nothing_is_left_to_be_worked_out_at_camp(trip: PrintedTrip) -> None:
    """On each opening: who, portions, place; begin, each soak, ready and eat as times of day; each step's time."""
    assert any(opening.not_for for opening in trip.openings)
    for opening in trip.openings:
        text = trip.text_of(trip.pages_of(opening))
        assert_all(text, (opening.for_whom,))
        assert_all(text, opening.soaks)
        for meal in opening.meals:
            assert_all(text, (meal.begins, *meal.soaks, meal.ready, meal.eaten, *meal.where.split(), meal.note))
        assert_all(text, (f"{one.name} ({one.why})" for one in opening.not_for))
        assert_all(text, (f"{one.what}: {one.each}." for one in opening.shares))
        bold = [run for page in trip.pages_of(opening) for run in trip.runs[page - 1] if run.font.endswith("-Bold")]
        head, steps = ("".join(run.text for run in bold if run.size >= least - 0.01) for least in (12, 14))
        assert all(time in head for meal in opening.meals for time in (meal.begins, *meal.soaks, meal.eaten))
        assert all(step.at in steps for step in opening.steps)
        assert_all(text, (mark for pack in opening.packs for mark in pack.marks))


def test_raw_and_sachets_stand_at_their_packs(trip: PrintedTrip) -> None:
    """On the left page RAW stands once at each raw pack and once in the box; each sachet is told at its pack."""
    for opening in trip.openings:
        start = trip.pages_of(opening).start
        left = trip.text_of(range(start, start + 1))
        assert len(re.findall(r"\bRAW\b", left)) == sum(pack.raw for pack in opening.packs) + bool(opening.raw)
        assert left.count("TAKE OUT THE SACHET") == sum(pack.sachet for pack in opening.packs)
    assert any(pack.sachet for opening in trip.openings for pack in opening.packs)


def test_each_step_that_handles_something_raw_has_the_word_in_its_row(trip: PrintedTrip) -> None:
    """On the right page RAW stands once in each row of a step that names a RAW pack, besides the cautions' words."""
    for opening in trip.openings:
        start = trip.pages_of(opening).start
        right = trip.text_of(range(start + 1, start + 2))
        cautions = sum(len(re.findall(r"\bRAW\b", text)) for text in opening.cautions)
        assert len(re.findall(r"\bRAW\b", right)) == sum(step.raw for step in opening.steps) + cautions


def test_the_safety_card_names_raw_dishes_and_who_avoids_what(trip: PrintedTrip) -> None:
    """RAW with the page of its dish, Tove's nuts, and every general caution of the field booklet once."""
    card = trip.chapter("Safety")
    for one in trip.book.safety.raw:
        (page,) = {trip.starts[opening.name] for opening in trip.openings if opening.id == one.opening}
        assert f"{one.name} {page} {one.says}" in card
    assert "Tove: no tree nuts, peanut" in card
    assert_all(card, (ref.says for one in trip.book.safety.people for ref in one.dishes))
    assert_all(card, (caution.text for caution in trip.book.safety.general))


def test_a_dish_that_takes_two_openings_is_told_of_the_trip(checkout: Path, tmp_path: Path) -> None:
    """Three times the steps of the noodles overrun their page: a warning at the trip's file."""
    household = trip_sample.book().book.household
    book = trip_book(trip_sample.checked_trip(), household, edition=EDITION, on=trip_sample.ON)
    long = next(replace(one, steps=3 * one.steps) for one in book.openings if one.name == "Beef and leek noodles")
    short = replace(book, openings=(long,), menu=(), safety=replace(book.safety, raw=(), people=()))
    (fault,) = build_trip_booklets(short, sizes=("a6",), theme=checkout / "theme", out=tmp_path)
    assert (fault.code, fault.severity) == ("long-dish", Severity.WARNING)
    assert fault.place.file == "trips/two-skerries.yaml"


def assert_all(text: str, wanted: Iterable[str]) -> None:
    """Find every text, however its lines break; "" is nothing to look for."""
    found = "".join(text.split())
    for one in wanted:
        assert "".join(one.split()) in found, one
