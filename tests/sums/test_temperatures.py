"""Cooking temperatures by authority: the published figures, and one for every class of food."""

import pytest

from packlarder.figures.facts import FACTS
from packlarder.figures.kinds import Doneness
from packlarder.figures.temperatures import (
    DEFAULT_AUTHORITY,
    TEMPERATURES,
    Authority,
    CookingTemperature,
    cooking_temperature,
)


@pytest.mark.parametrize("authority", Authority)
@pytest.mark.parametrize("doneness", Doneness)
def test_every_authority_answers_for_every_class(authority: Authority, doneness: Doneness) -> None:
    """Whatever the household's authority, each class of food has a temperature between 60 and 90 °C, hold or not."""
    found = cooking_temperature(authority, doneness)
    assert found.authority is authority
    assert 60 < found.temp_c < 90
    assert found.doneness in {doneness, None}


def test_row_count_and_sum() -> None:
    """28 rows, their °C and °F adding up to the pinned sums."""
    assert len(TEMPERATURES) == 28
    assert sum(row.temp_c for row in TEMPERATURES.values()) == pytest.approx(1979.9)
    assert sum(row.temp_f for row in TEMPERATURES.values()) == pytest.approx(4459)


@pytest.mark.parametrize("row", TEMPERATURES.values(), ids=lambda row: f"{row.authority}, {row.doneness}")
def test_the_two_scales_agree_and_the_fact_holds_the_figure(row: CookingTemperature) -> None:
    """°C and °F are the same warmth within half a degree, and the fact that a row names prints its figure."""
    assert row.temp_c == pytest.approx((row.temp_f - 32) / 1.8, abs=0.5)
    assert f"{row.temp_c:g} °C" in FACTS[row.fact].figures
    assert row.standing is FACTS[row.fact].standing


@pytest.mark.parametrize(
    ("authority", "doneness", "temp_f"),
    [
        # USDA FSIS, Safe Minimum Internal Temperature Chart
        (Authority.USDA_FSIS, Doneness.WHOLE_CUT, 145),
        (Authority.USDA_FSIS, Doneness.PORK_CUT, 145),
        (Authority.USDA_FSIS, Doneness.GROUND_MEAT, 160),
        (Authority.USDA_FSIS, Doneness.POULTRY, 165),
        (Authority.USDA_FSIS, Doneness.EGG, 160),
        (Authority.USDA_FSIS, Doneness.FISH, 145),
        (Authority.USDA_FSIS, Doneness.COOKED_HAM, 165),  # 140 only from an inspected pack
        (Authority.USDA_FSIS, Doneness.COOKED_BEFORE, 165),
        # Health Canada, Safe internal cooking temperatures
        (Authority.HEALTH_CANADA, Doneness.PORK_CUT, 160),
        (Authority.HEALTH_CANADA, Doneness.EGG, 165),
        (Authority.HEALTH_CANADA, Doneness.FISH, 158),
        # UK FSA, Cooking your food: 70 °C for 2 min, whatever it is
        (Authority.UK_FSA, Doneness.EGG, 158),
        (Authority.UK_FSA, Doneness.POULTRY, 158),
    ],
)
def test_figures_that_authorities_differ_in(authority: Authority, doneness: Doneness, temp_f: float) -> None:
    """The figures that sources disagree on are each authority's own."""
    assert cooking_temperature(authority, doneness).temp_f == temp_f


def test_what_must_be_held_says_so() -> None:
    """Whole cuts rest for 3 min in the United States; in the United Kingdom everything is held for 2 min."""
    assert cooking_temperature(DEFAULT_AUTHORITY, Doneness.WHOLE_CUT).hold == "rest at least 3 min off the heat"
    assert cooking_temperature(Authority.UK_FSA, Doneness.EGG).hold == "held for 2 min"
    assert DEFAULT_AUTHORITY is Authority.USDA_FSIS
