"""Dried food at rest and in water: what it still holds, how long it keeps, what it is soaked in."""

import pytest

from packlarder.figures.dryness import DRYNESSES, Drying, Dryness, dryness_of
from packlarder.figures.facts import FACTS
from packlarder.figures.figure import Standing
from packlarder.figures.foods import FOODS
from packlarder.figures.keeping import KEEPINGS, Keeping, Kept, keeping_of
from packlarder.figures.kinds import Group, State
from packlarder.figures.soaking import SOAKINGS, Soaking, SoakWater

HOME_DRYING = (Drying.FREEZE_DRIED, Drying.AIR_DRIED)


@pytest.mark.parametrize("dryness", DRYNESSES.values(), ids=lambda one: one.water.name)
def test_dryness_is_in_order(dryness: Dryness) -> None:
    """Each row lies within its spread and below its limit, and names its source."""
    assert dryness.water.low is not None
    assert dryness.water.high is not None
    assert dryness.water.low <= dryness.water.value <= dryness.water.high <= dryness.limit_percent
    assert dryness.water.source


def test_dryness_by_class() -> None:
    """Freeze-dried a few per cent, dried vegetables up to 10, dried fruit up to 20 (NCHFP family, from memory)."""
    assert len(DRYNESSES) == 10
    assert DRYNESSES[Group.VEGETABLE, Drying.AIR_DRIED].limit_percent == 10
    assert DRYNESSES[Group.FRUIT, Drying.AIR_DRIED].limit_percent == 20
    freeze_dried = [dryness_of(group, Drying.FREEZE_DRIED) for group in Group]
    assert {found.limit_percent for found in freeze_dried if found} == {5}


@pytest.mark.parametrize("group", [Group.EGG, Group.MILK, Group.FAT, Group.SWEET, Group.DRINK])
def test_no_figure_for_what_is_not_air_dried(group: Group) -> None:
    """What is not dried in warm air at home has no figure for it, and nothing has one for what was bought dry."""
    assert dryness_of(group, Drying.AIR_DRIED) is None
    assert dryness_of(group, Drying.BOUGHT_DRY) is None
    assert dryness_of(group, Drying.NOT_DRIED) is None


def test_freeze_dried_foods_of_the_table() -> None:
    """The table's six freeze-dried rows hold 2.0 % of water (USDA SR28), the low end of what is usual."""
    found = dryness_of(Group.VEGETABLE, Drying.FREEZE_DRIED)
    assert found is not None
    held = {food.nutrients.water_g for food in FOODS.values() if food.state is State.FREEZE_DRIED}
    assert held == {found.water.low} == {2.0}


def test_published_keeping_times() -> None:
    """Fruit a year at 60 °F and half at 80 °F; vegetables half of each (NCHFP/UGA, Clemson; copies)."""
    fruit = keeping_of(Group.FRUIT, Drying.AIR_DRIED, Kept.SEALED)
    vegetable = keeping_of(Group.VEGETABLE, Drying.AIR_DRIED, Kept.SEALED)
    # (60 - 32) / 1.8 = 15.6; (80 - 32) / 1.8 = 26.7
    assert [(one.days, one.at_c) for one in fruit] == [(365, 16), (182, 27)]
    assert [(one.days, one.at_c) for one in vegetable] == [(182, 16), (91, 27)]
    assert {one.standing for one in (*fruit, *vegetable)} == {Standing.COPY}


@pytest.mark.parametrize("group", [Group.FRUIT, Group.VEGETABLE])
def test_freeze_dried_produce_keeps_half_as_long_where_it_is_warm(group: Group) -> None:
    """Nobody has studied it: as air-dried fruit, a year at 16 °C and half a year at 27 (common practice)."""
    found = keeping_of(group, Drying.FREEZE_DRIED, Kept.SEALED)
    assert [(one.days, one.at_c, one.standing, one.fact) for one in found] == [
        (365, 16, Standing.COMMON_PRACTICE, "T5-20"),
        (182, 27, Standing.COMMON_PRACTICE, "T5-20"),
    ]
    assert len(KEEPINGS) == 16


@pytest.mark.parametrize("group", Group)
@pytest.mark.parametrize("drying", HOME_DRYING)
@pytest.mark.parametrize("kept", Kept)
def test_home_dried_food_always_has_a_figure(group: Group, drying: Drying, kept: Kept) -> None:
    """Whatever is dried at home keeps a finite time, and in a trip pack or opened no longer than sealed."""
    found = keeping_of(group, drying, kept)
    sealed = keeping_of(group, drying, Kept.SEALED)
    assert 0 < found[0].days <= sealed[0].days <= 365
    assert keeping_of(group, Drying.BOUGHT_DRY, kept) == ()


@pytest.mark.parametrize("keeping", KEEPINGS, ids=lambda one: one.says)
def test_keeping_figures_do_not_claim_more_than_their_fact(keeping: Keeping) -> None:
    """A row is as well known as its fact or marked as common practice; freeze-drying at home is always the latter."""
    assert keeping.standing in {FACTS[keeping.fact].standing, Standing.COMMON_PRACTICE}
    assert keeping.drying is Drying.AIR_DRIED or keeping.standing is Standing.COMMON_PRACTICE


def test_soaking_table() -> None:
    """Fourteen foods, 28 1/4 cups and 11 3/4 h in all: fruit in warm water, vegetables in boiling water."""
    assert len(SOAKINGS) == 14
    # 1.5 + 1.75 + 2 + 2.5 + 2.75 + 2.25 + 3 + 2.25 + 2 + 2.5 + 1.75 + 1 + 1.5 + 1.5
    assert sum(soaking.cups_per_cup for soaking in SOAKINGS.values()) == 28.25
    # 0.5 + 1.25 + 1.25 + 1 + 1.5 + 1 + 1 + 0.5 + 0.75 + 0.5 + 1 + 0.5 + 0.5 + 0.5
    assert sum(soaking.hours for soaking in SOAKINGS.values()) == 11.75
    warm = {soaking.id for soaking in SOAKINGS.values() if soaking.water is SoakWater.WARM}
    assert warm == {"apples", "pears", "peaches"}


@pytest.mark.parametrize("soaking", SOAKINGS.values(), ids=lambda one: one.id)
def test_a_soak_is_for_foods_of_the_table(soaking: Soaking) -> None:
    """Each soak is found by each of its foods, is marked as read on a copy, and stays within two hours."""
    assert soaking.foods
    for food in soaking.foods:
        assert food in FOODS
        assert [one for one in SOAKINGS.values() if food in one.foods] == [soaking]
    assert soaking.standing is Standing.COPY
    assert soaking.hours <= 2


def test_what_has_no_published_soak() -> None:
    """A food that no table lists has no soak: none is borrowed."""
    assert not any("beef-ground-93-cooked-crumbles" in one.foods for one in SOAKINGS.values())
    assert {one.id for one in SOAKINGS.values() if one.other_hours is not None} == {
        "pears",
        "snap beans",
        "cabbage",
        "onions",
    }
