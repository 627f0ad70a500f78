"""The kinds of food: every kind has its rules, and the rules decide what must be cooked."""

import pytest

from packlarder.figures.cooking import Softens
from packlarder.figures.facts import FACTS
from packlarder.figures.figure import Standing
from packlarder.figures.foods import FOODS
from packlarder.figures.kinds import (
    KINDS,
    Cooking,
    Doneness,
    Group,
    HomeDrying,
    Kind,
    KindRules,
    State,
    WentIn,
    doneness_of,
    must_be_cooked,
)

TO_BE_SAFE = {
    Kind.EGG,
    Kind.POULTRY,
    Kind.GAME_BIRD,
    Kind.GROUND_MEAT,
    Kind.WHOLE_CUT,
    Kind.PORK_CUT,
    Kind.HAM,
    Kind.GAME,
    Kind.GROUND_GAME,
    Kind.FISH,
    Kind.CRUSTACEAN,
    Kind.MOLLUSC,
    Kind.RAW_MILK,
    Kind.KIDNEY_BEAN,
    Kind.FLOUR,
    Kind.SPROUTS,
    Kind.WILD_MUSHROOM,
}
TO_BE_EDIBLE = {
    Kind.DRY_BEAN,
    Kind.LENTIL,
    Kind.PASTA,
    Kind.RICE,
    Kind.GRAIN,
    Kind.STARCH,
    Kind.POTATO,
    Kind.GREEN_BEAN,
    Kind.SHIITAKE,
}
UNCOOKED_STATES = [state for state in State if state is not State.COOKED]


def test_every_kind_has_its_rules() -> None:
    """The table has one row for each of the 48 kinds and no other."""
    assert list(KINDS) == list(Kind)
    assert len(KINDS) == 48
    assert all(kind.rules.kind is kind for kind in Kind)


@pytest.mark.parametrize("kind", Kind)
def test_what_a_kind_must_be_cooked_for(kind: Kind) -> None:
    """Uncooked, each kind must be cooked to be safe, to be edible or not at all, as pinned here one by one."""
    assert (kind.rules.uncooked is Cooking.TO_BE_SAFE) == (kind in TO_BE_SAFE)
    assert (kind.rules.uncooked is Cooking.TO_BE_EDIBLE) == (kind in TO_BE_EDIBLE)


@pytest.mark.parametrize("kind", Kind)
def test_what_went_in_cooked_need_not_be_cooked(kind: Kind) -> None:
    """Cooked before drying is cooked, whatever row of the table it is likened to."""
    assert {must_be_cooked(kind, state, WentIn.COOKED) for state in State} == {Cooking.NO}


@pytest.mark.parametrize("kind", Kind)
@pytest.mark.parametrize("went_in", [WentIn.RAW, WentIn.BLANCHED])
def test_raw_and_blanched_are_uncooked(kind: Kind, went_in: WentIn) -> None:
    """Blanching is not cooking, and what went in raw is raw even if its row of the table was cooked."""
    assert {must_be_cooked(kind, state, went_in) for state in State} == {kind.rules.uncooked}


@pytest.mark.parametrize("kind", Kind)
def test_what_was_not_dried_goes_by_its_state(kind: Kind) -> None:
    """Bought dry or not dried: cooked food is cooked, all other food is not."""
    assert must_be_cooked(kind, State.COOKED, None) is Cooking.NO
    assert {must_be_cooked(kind, state, None) for state in UNCOOKED_STATES} == {kind.rules.uncooked}


@pytest.mark.parametrize(
    ("food", "went_in", "expected"),
    [
        ("egg-whole-raw", WentIn.RAW, Cooking.TO_BE_SAFE),
        ("egg-whole-scrambled", WentIn.COOKED, Cooking.NO),
        ("egg-whole-dried", None, Cooking.TO_BE_SAFE),  # pasteurised powder is still not cooked (T3-12)
        ("beef-ground-93-cooked-crumbles", WentIn.COOKED, Cooking.NO),
        ("chicken-breast-meat-raw", WentIn.BLANCHED, Cooking.TO_BE_SAFE),
        ("cod-atlantic-dried-salted", None, Cooking.TO_BE_SAFE),
        ("salmon-pink-canned-drained", WentIn.COOKED, Cooking.NO),
        ("tuna-light-canned-water-drained", None, Cooking.NO),
        ("beef-jerky", None, Cooking.NO),
        ("milk-nonfat-dry-instant", None, Cooking.NO),
        ("kidney-beans-red-dry", None, Cooking.TO_BE_SAFE),
        ("kidney-beans-red-cooked", WentIn.COOKED, Cooking.NO),
        ("black-beans-dry", None, Cooking.TO_BE_EDIBLE),
        ("pasta-dry", None, Cooking.TO_BE_EDIBLE),
        ("rice-white-long-dry", None, Cooking.TO_BE_EDIBLE),
        ("rice-instant-dry", None, Cooking.NO),
        ("couscous-dry", None, Cooking.NO),
        ("oats-dry", None, Cooking.NO),
        ("flour-white-ap", None, Cooking.TO_BE_SAFE),
        ("soy-flour-defatted", None, Cooking.TO_BE_SAFE),
        ("peanut-flour-defatted", None, Cooking.NO),  # ground from roasted nuts
        ("sweet-potato-raw", WentIn.BLANCHED, Cooking.TO_BE_EDIBLE),
        ("potato-flakes-dry", None, Cooking.NO),
        ("leek-raw", WentIn.RAW, Cooking.NO),
        ("strawberry-raw", WentIn.RAW, Cooking.NO),
        ("tofu-firm", WentIn.RAW, Cooking.NO),
    ],
)
def test_foods_of_the_table(food: str, went_in: WentIn | None, expected: Cooking) -> None:
    """Foods that a household dries or buys come out as the design's table of must be cooked says."""
    assert must_be_cooked(FOODS[food].kind, FOODS[food].state, went_in) is expected


def test_only_kidney_beans_are_kidney_beans() -> None:
    """Of the table's beans the two rows of kidney beans have the kind whose raw bean is poisonous, and no other."""
    found = {food.id for food in FOODS.values() if food.kind is Kind.KIDNEY_BEAN}
    assert found == {"kidney-beans-red-dry", "kidney-beans-red-cooked"}
    others = {food.kind for food in FOODS.values() if "beans" in food.name and food.id not in found}
    assert others == {Kind.DRY_BEAN, Kind.GREEN_BEAN}


@pytest.mark.parametrize("kind", Kind)
def test_a_kind_speaks_plainly_and_names_its_sources(kind: Kind) -> None:
    """Each kind says when it is done, cautions in at most 25 words, and has facts or is marked as not published."""
    rules = kind.rules
    assert rules.done_when
    assert rules.done_when == rules.done_when.strip(" .")
    assert rules.caution == "" or rules.caution.endswith(".")
    assert len(rules.caution.split()) <= 25
    assert set(rules.facts) <= set(FACTS)
    assert rules.facts or rules.standing in {Standing.COMMON_PRACTICE, Standing.FROM_MEMORY}


@pytest.mark.parametrize("rules", KINDS.values(), ids=lambda rules: rules.kind)
def test_traits_that_go_together(rules: KindRules) -> None:
    """Animal food is perishable once wet; meat, fish and egg have a temperature and never dry raw in warm air."""
    assert rules.perishable or not rules.animal
    if rules.group in {Group.EGG, Group.MEAT, Group.FISH} and rules.uncooked is Cooking.TO_BE_SAFE:
        assert rules.animal
        assert rules.doneness is not None
        assert rules.air_dry is not HomeDrying.YES
    if rules.group is Group.MEAT and rules.uncooked is Cooking.TO_BE_SAFE:
        assert rules.softens is Softens.BRAISED_MEAT
    if rules.group in {Group.EGG, Group.MILK, Group.FAT, Group.SWEET}:
        assert rules.air_dry is HomeDrying.NO


@pytest.mark.parametrize("kind", [Kind.FAT, Kind.SWEET, Kind.HONEY, Kind.NUT, Kind.COCONUT])
def test_what_a_freeze_dryer_can_not_dry(kind: Kind) -> None:
    """What is mostly fat or mostly sugar does not suit a freeze-dryer (T4-26)."""
    assert kind.rules.freeze_dry is HomeDrying.NO


def test_which_temperature_heats_it() -> None:
    """Raw food goes by its own row, what was cooked before by the row for reheating, ham by its own."""
    assert doneness_of(Kind.EGG, cooked_before=False) is Doneness.EGG
    assert doneness_of(Kind.EGG, cooked_before=True) is Doneness.COOKED_BEFORE
    assert doneness_of(Kind.HAM, cooked_before=False) is Doneness.RAW_HAM
    assert doneness_of(Kind.HAM, cooked_before=True) is Doneness.COOKED_HAM
    assert doneness_of(Kind.RICE, cooked_before=True) is Doneness.COOKED_BEFORE
    assert doneness_of(Kind.FRUIT, cooked_before=True) is None
    assert doneness_of(Kind.KIDNEY_BEAN, cooked_before=False) is None  # it is boiled by the clock, not by a probe
