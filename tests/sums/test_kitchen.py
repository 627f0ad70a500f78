"""Spoons, cups and halves: what people own, close to what was worked out, never nothing."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from packlarder.measure import Dimension, Quantity, parse
from packlarder.reckon.kitchen import in_halves, in_spoons, spoons

TSP_ML = 4.92892159375  # NIST Handbook 44, exact
TBSP_ML = 3 * TSP_ML
CUP_ML = 48 * TSP_ML

OWNED = {
    "tsp": (1 / 8, 1 / 4, 1 / 2, 1),
    "tbsp": (1,),
    "cup": (1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1),
    "quart": (1,),
}

VOLUMES = st.one_of(
    st.floats(min_value=0.3, max_value=5000),
    st.floats(min_value=0.3, max_value=60),
    st.integers(1, 48 * 21).map(lambda tsp: tsp * TSP_ML),
    st.integers(1, 400).map(lambda eighths: eighths * TSP_ML / 8),
    st.integers(1, 800).map(lambda sixteenths: sixteenths * TSP_ML / 16),
)


def read(text: str) -> float:
    """Read a printed measure back, in mL."""
    found = parse(text, Dimension.VOLUME)
    assert isinstance(found, Quantity), found
    return found.base


@pytest.mark.parametrize(
    ("volume_ml", "text"),
    [
        (TSP_ML / 8, "⅛ tsp"),
        (TSP_ML / 2, "½ tsp"),
        (TSP_ML, "1 tsp"),
        (1.5 * TSP_ML, "1½ tsp"),
        (2 * TSP_ML, "2 tsp"),
        (3 * TSP_ML, "1 tbsp"),
        (4 * TSP_ML, "1 tbsp + 1 tsp"),
        (2 * TBSP_ML, "2 tbsp"),
        (4 * TBSP_ML, "¼ cup"),
        (5 * TBSP_ML, "¼ cup + 1 tbsp"),
        (8 * TBSP_ML, "½ cup"),
        (CUP_ML / 3, "⅓ cup"),
        (2 * CUP_ML / 3, "⅔ cup"),
        (12 * TBSP_ML, "¾ cup"),
        (CUP_ML, "1 cup"),
        (1.25 * CUP_ML, "1¼ cups"),
        (1.5 * CUP_ML, "1½ cups"),
        (2 * CUP_ML + TBSP_ML, "2 cups + 1 tbsp"),
        (7 * CUP_ML / 3, "2⅓ cups"),
        (11 * CUP_ML, "11 cups"),
        (11.8 * CUP_ML, "11¾ cups"),
        (12 * CUP_ML, "3 quarts"),
        (13 * CUP_ML, "3 quarts + 1 cup"),
        (5000, "5 quarts + 1 cup"),  # 5000 / 236.59 = 21.13 cups
        (250, "1 cup + 1 tbsp"),  # 50.7 tsp; 1 cup would be 5.4 % short
        (15, "1 tbsp"),
        (1.875 * CUP_ML, "1¾ cups + 2 tbsp"),  # not 1½ cups + 6 tbsp
        (9 * TBSP_ML, "½ cup + 1 tbsp"),  # not ⅓ cup + ¼ cup
        (450, "1¾ cups + 2 tbsp"),  # 91.3 tsp
        (0.1, "less than ⅛ tsp"),
        (0, "0 tsp"),
    ],
)
def test_natural_forms_are_preferred(volume_ml: float, text: str) -> None:
    """Three teaspoons are a tablespoon, four tablespoons a quarter of a cup."""
    assert spoons(volume_ml).replace("\u00a0", " ") == text


@given(volume_ml=VOLUMES)
@example(volume_ml=0.3081)
@example(volume_ml=TSP_ML * 3 / 16)  # midway between ⅛ and ¼ tsp
@example(volume_ml=1.87 * TSP_ML)
@example(volume_ml=374.0)
@example(volume_ml=11.9 * CUP_ML)
def test_a_form_is_close_to_the_volume(volume_ml: float) -> None:
    """From 0.3 mL to 5 L a form is at most 5 % or 1/16 tsp off, the larger; only below 1/16 tsp it says "less"."""
    found = in_spoons(volume_ml)
    if found.less:
        assert volume_ml < TSP_ML / 16
        assert found.text == "less than ⅛\u00a0tsp"
    else:
        allowed = max(0.05 * volume_ml, TSP_ML / 16)
        assert abs(found.volume_ml - volume_ml) <= allowed * (1 + 1e-9)
        assert found.error == pytest.approx(found.volume_ml / volume_ml - 1)


def test_no_volume_is_left_out() -> None:
    """Every volume from 0.3 mL to 5 L in steps of 0.02 % has a form in bound."""
    volume_ml = 0.3
    while volume_ml < 5000:
        found = in_spoons(volume_ml)
        close = abs(found.volume_ml - volume_ml) <= max(0.05 * volume_ml, TSP_ML / 16) * (1 + 1e-9)
        assert close or found.less, (volume_ml, found)
        volume_ml *= 1.0002


@given(volume_ml=VOLUMES)
def test_the_words_amount_to_the_volume_given(volume_ml: float) -> None:
    """Read back, the words are the volume that the record names, and printing that volume gives no worse words."""
    found = in_spoons(volume_ml)
    assert read(found.text.removeprefix("less than ")) == pytest.approx(found.volume_ml)
    again = in_spoons(found.volume_ml)
    assert abs(again.error) <= 0.05


@given(volume_ml=VOLUMES)
def test_at_most_two_measures_that_people_own(volume_ml: float) -> None:
    """Each term is some of one owned spoon or cup, and there are two at most."""
    terms = in_spoons(volume_ml).text.removeprefix("less than ").split(" + ")
    measures = 0
    for term in terms:
        found = parse(term, Dimension.VOLUME)
        assert isinstance(found, Quantity)
        sizes = OWNED[found.unit.name]
        alone = any(is_some_of(found.number, size) for size in sizes)
        whole = int(found.number)
        with_part = whole and any(
            is_some_of(found.number - some, size) for size in sizes for some in range(1, whole + 1)
        )
        measures += 1 if alone else 2
        assert alone or with_part, term
    assert measures <= 2, terms


def is_some_of(number: float, size: float) -> bool:
    """Tell whether a number is 1 to 12 of a size."""
    return any(number == pytest.approx(count * size) for count in range(1, 13))


@given(volume_ml=VOLUMES)
def test_the_short_way_gives_the_same_words(volume_ml: float) -> None:
    """`spoons` prints what `in_spoons` finds."""
    assert spoons(volume_ml) == in_spoons(volume_ml).text


@pytest.mark.parametrize("bad", [-1.0, float("nan"), float("inf")])
def test_no_volume_has_no_spoon(bad: float) -> None:
    """Below zero, nan and infinity are bugs of ours."""
    with pytest.raises(ValueError, match="no spoon"):
        spoons(bad)
    with pytest.raises(ValueError, match="no spoon"):
        in_spoons(bad)


@pytest.mark.parametrize(
    ("number", "noun", "text", "counted"),
    [
        (2, "egg", "2 eggs", 2),
        (1.43, "egg", "1½ eggs (1.43)", 1.5),
        (1.5, "egg", "1½ eggs", 1.5),
        (1, "egg", "1 egg", 1),
        (0.5, "egg", "½ egg", 0.5),
        (0.1, "egg", "½ egg (0.1)", 0.5),  # never nothing
        (0.81, "portion", "1 portion (0.81)", 1),
        (2.99, "slice of bread", "3 slices of bread", 3),  # within 1 %
        (12.3, "egg", "12 eggs (12.3)", 12),
        (123.4, "egg", "123 eggs", 123),
    ],
)
def test_things_are_counted_in_halves(number: float, noun: str, text: str, counted: float) -> None:
    """A share of an egg goes to the nearest half, and the true number is told."""
    found = in_halves(number, noun)
    assert found.text.replace("\u00a0", " ") == text
    assert found.number == counted


@given(number=st.floats(min_value=1e-6, max_value=1e6))
def test_a_count_is_at_most_a_quarter_off(number: float) -> None:
    """Below ten a count is at most ¼ off, above at most ½, and what is less than a half is a half."""
    counted = in_halves(number, "egg").number
    assert counted >= 0.5
    if number >= 0.25:
        assert abs(counted - number) <= (0.25 if number < 10 else 0.5)


@pytest.mark.parametrize("bad", [0.0, -1.0, float("nan"), float("inf")])
def test_no_thing_can_not_be_counted(bad: float) -> None:
    """Zero, less, nan and infinity are bugs of ours."""
    with pytest.raises(ValueError, match="can not be counted"):
        in_halves(bad, "egg")
