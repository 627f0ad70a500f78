"""What a sheet says beside its steps: waters apart, mugs, done-when, lessons, the meaning of warm and hot."""

import pytest
from tests.sheets.demo import demo
from tests.sheets.test_step_words import METRIC, US, series_of, sheet_of
from tests.sums import book_of
from tests.sums.book_of import dish_of

from packlarder.measure import NARROW, NO_BREAK
from packlarder.sheets import field_words, words
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.field import field_opening
from packlarder.sheets.printed import plain


def spaced(text: str) -> str:
    """Give a text with plain spaces."""
    return text.replace(NO_BREAK, " ").replace(NARROW, " ")


def test_heater_water_from_the_sea_stands_apart() -> None:
    """It is not carried, but somebody must scoop it: page and booklet say how much; 60 mL for each of two."""
    one = demo("boat-lentil-rice")
    reading = next(reading for reading in one.sheet.strip if reading.key == "heater")
    assert reading.label == "For ration heaters, from the sea"
    assert spaced(reading.figure.metric[1]) == "120 mL, not carried"
    told = {figure.label: spaced(figure.figure) for figure in one.opening(METRIC).figures}
    assert told["for ration heaters, from the sea"] == "120 mL, not carried"
    assert not any(reading.key == "heater" for reading in demo("cocoa").sheet.strip)


def test_a_mug_of_our_own_says_what_it_holds(monkeypatch: pytest.MonkeyPatch) -> None:
    """700 mL are 2⅓ mugs of 300 mL: two and a half, which hold 750; in US units the same mugs hold 25 fl oz."""
    monkeypatch.setattr(book_of, "KITCHEN", book_of.KITCHEN + "booklet measure: mug\n")
    series = series_of(dish_of("rice: 350 g", "moisten: rice"), (2,))
    sheet = dish_sheet(series, ())
    assert spaced(field_opening(series, sheet, (), METRIC).figures[0].figure) == "2½ mugs (750 mL)"
    assert spaced(field_opening(series, sheet, (), US).figures[0].figure) == "2½ mugs (25 fl oz)"


def test_the_booklet_counts_bare_minutes() -> None:
    """64 minutes on the left page, as the right page counts them."""
    told = {figure.label: spaced(figure.figure) for figure in demo("black-bean-soup").opening(METRIC).figures}
    assert told["From start to plate"].endswith(" min")
    assert not any(" h " in text for text in told.values())


def test_a_cold_dish_names_no_stove() -> None:
    """Nothing burns under a mix of nuts."""
    assert demo("pocket-mix").opening(METRIC).conditions == ""
    assert demo("cold-oats-and-berries").opening(METRIC).conditions == ""
    assert demo("beef-and-leek-noodles").opening(METRIC).conditions == "On canister burner; big pot, pan."


def test_signs_of_being_done_are_told_once() -> None:
    """Egg twice in a mix is one sign, and the author's own sign takes the place of that of a kind."""
    raw = plain(demo("blueberry-pancakes").sheet.raw, METRIC, 0)
    assert raw.count("no liquid egg") == 1
    assert "clear" not in demo("cocoa-pudding").sheet.done_when
    assert demo("cocoa-pudding").sheet.done_when == "it has bubbled and turned thick and glossy"


def test_lessons_end_in_a_stop() -> None:
    """What changed and why can stand side by side without running together."""
    learnt = "learnt: [{date: 2027-04-11, change: leek 100 g -> 150 g, why: thin}]\n"
    (lesson,) = sheet_of(dish_of("salt: 1 g", "Lick the salt.", more=learnt)).learnt
    assert (lesson.change, lesson.why) == ("leek 100 g -> 150 g.", "thin.")


def test_warm_and_hot_are_explained_where_water_is_given() -> None:
    """On the page of a dish with water, in the booklet's how-to-use; not beside a dry one."""
    assert words.WARMTHS in demo("cocoa").sheet.conditions
    assert words.WARMTHS not in demo("pocket-mix").sheet.conditions
    assert any("hand-warm" in line for line in field_words.HOW_TO_USE)
