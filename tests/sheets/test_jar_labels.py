"""Labels of jars, held against the demo's larder: each says what it is, RAW or not, and what its own weights say."""

import pytest
from tests.sheets.demo import checked

from packlarder.book.draw import read_mark
from packlarder.reckon.larder_records import Standing
from packlarder.sheets.jar_labels import jar_label
from packlarder.sheets.label_sheet import JarLabel

LARDER = checked().store.larder
EVERY = tuple(LARDER.by_mark.values())
RAW = "RAW"


def standing(mark: str) -> Standing:
    """Give a container of the demo by its mark."""
    return LARDER.by_mark[read_mark(mark)]


def label(mark: str) -> JarLabel:
    """Give the label of a container of the demo."""
    return jar_label(standing(mark), checked().book.household)


@pytest.mark.parametrize("one", EVERY, ids=lambda one: str(one.mark))
def test_raw_stands_on_what_must_be_cooked_to_be_safe_and_on_nothing_else(one: Standing) -> None:
    """The word is on the label and in its code exactly where the sums call the component raw."""
    made = jar_label(one, checked().book.household)
    assert made.raw is one.batch.component.raw
    assert (made.state == RAW) is made.raw
    assert (RAW in made.code_text.split("\n")) is made.raw


@pytest.mark.parametrize("one", EVERY, ids=lambda one: str(one.mark))
def test_the_code_says_the_label_in_plain_lines(one: Standing) -> None:
    """Whoever reads the code without a network gets the name, the days, the mark and every allergen."""
    made = jar_label(one, checked().book.household)
    for text in (made.name, made.mark, made.net, made.contains, made.use_by, made.take_out):
        assert text.replace("\u00a0", " ") in made.code_text
    assert "\u00a0" not in made.code_text


def test_eggs_say_how_many_they_stand_for_and_how_hot() -> None:
    """71 g of powder of a batch with 4.085 g fresh to the gram: 290 g, at 50 g an egg 5.8, so 6 eggs."""
    made = label("2027-04-10-eggs/a1")
    one = standing("2027-04-10-eggs/a1")
    assert one.batch.fresh_per_dry == pytest.approx(4.085, abs=0.001)
    assert round(71 * 4.085 / 50) == 6
    assert made.stands_for == "6\u00a0eggs, 290\u00a0g fresh"
    assert made.net == "71\u00a0g (2½\u00a0oz)"
    assert made.cook_to == "71\u00a0°C / 160\u00a0°F"  # USDA FSIS, egg dishes (T1-06)
    assert (made.contains, made.nth) == ("egg", "1 of 3")


def test_a_sachet_is_told_from_the_container() -> None:
    """An oxygen absorber that lies in this jar, and not in another, is on its label."""
    with_sachet = [one for one in EVERY if one.container.filled.sachet]
    assert with_sachet
    for one in EVERY:
        told = jar_label(one, checked().book.household).take_out
        expected = one.container.filled.sachet is not None or one.batch.component.model.sachet
        assert bool(told) is expected
        assert not told or told.startswith("TAKE OUT THE SACHET")


def test_cooked_food_is_called_cooked_and_bears_no_temperature() -> None:
    """Beef that was browned right through before it was dried is no RAW; its label asks for no cooking."""
    (one, *_) = [one for one in EVERY if one.batch.component.id == "beef-crumbles"]
    made = jar_label(one, checked().book.household)
    assert (made.state, made.cook_to) == ("cooked", "")


def test_raw_food_without_a_temperature_says_how_to_tell() -> None:
    """No body gives a temperature for flour: a mix that holds it says what done looks like."""
    mixes = [one for one in EVERY if one.batch.component.id == "pan-bread-mix"]
    assert mixes
    for one in mixes:
        made = jar_label(one, checked().book.household)
        assert made.raw
        assert made.cook_to or "no raw dough" in made.bring_back


def test_what_nobody_tested_says_so() -> None:
    """Food of which weights alone can not tell warns on its jar; what is dry by a test does not."""
    untested = [one for one in EVERY if one.use_by is not None and one.use_by.untested]
    assert untested
    for one in EVERY:
        assert ("Not tested" in jar_label(one, checked().book.household).warning) is (one in untested)


def test_cooked_food_that_lay_beside_raw_says_so_without_the_word() -> None:
    """It is no RAW itself, so it does not bear the word; but whoever opens it knows what shared its dryer."""
    beside = [one for one in EVERY if one.batch.beside_raw and not one.batch.component.raw]
    assert beside
    for one in beside:
        made = jar_label(one, checked().book.household)
        assert made.warning.startswith("Dried beside raw ")
        assert RAW not in made.code_text


def test_a_sealed_jar_says_how_long_it_keeps_once_opened_only_where_that_is_shorter() -> None:
    """Eggs of April keep a year sealed and four weeks open; turkey keeps two weeks anyway, and untested spinach too."""
    assert label("2027-04-10-eggs/a1").keeping.endswith("Once opened: 4\u00a0weeks.")
    for mark in ("2027-05-22-turkey/a1", "2027-05-27-potatoes-spinach/b1"):
        assert "Once opened" not in label(mark).keeping
