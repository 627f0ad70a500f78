"""Allergens: the two laws' lists, words for them, and how declared and carried are held against each other."""

from dataclasses import dataclass

import pytest

from packlarder.figures.allergens import (
    ALLERGENS,
    Allergen,
    Law,
    allergens_meant,
    compare,
    concerns,
    listed_by,
    wider,
    with_wider,
)
from packlarder.figures.facts import FACTS
from packlarder.figures.foods import FOODS, Food
from packlarder.figures.kinds import Kind


def test_the_vocabulary_is_closed() -> None:
    """The table has one row for each of the 28 words and no other, each with plain words, a law and existing facts."""
    assert list(ALLERGENS) == list(Allergen)
    assert len(ALLERGENS) == 28
    for facts in ALLERGENS.values():
        assert facts.plain
        assert facts.laws
        assert facts.facts
        assert set(facts.facts) <= set(FACTS)


def test_the_us_nine() -> None:
    """The nine of American law, from the US FDA's page on the FASTER Act (fact T11-01)."""
    assert {allergen.value for allergen in listed_by(Law.US_NINE)} == {
        "milk", "egg", "fish", "crustaceans", "tree nuts", "peanut", "wheat", "soya", "sesame",
    }  # fmt: skip


def test_the_eu_fourteen() -> None:
    """The fourteen of EU Regulation 1169/2011 Annex II (fact T11-05), with its eight tree nuts and five cereals."""
    assert {allergen.value for allergen in listed_by(Law.EU_FOURTEEN)} == {
        "gluten", "crustaceans", "egg", "fish", "peanut", "soya", "milk", "tree nuts", "celery", "mustard", "sesame",
        "sulphites", "lupin", "molluscs",
    }  # fmt: skip
    eu = [allergen for allergen in Allergen if Law.EU_FOURTEEN in ALLERGENS[allergen].laws]
    assert sum(Allergen.TREE_NUTS in wider(allergen) for allergen in eu) == 8
    assert {allergen.value for allergen in eu if Allergen.GLUTEN in wider(allergen)} == {
        "wheat", "spelt", "rye", "barley", "oats",
    }  # fmt: skip


def test_what_is_in_the_european_list_only() -> None:
    """Barley, rye, oats, celery, mustard, lupin, molluscs and sulphites are not American (fact T11-07)."""
    only = {allergen.value for allergen in Allergen if ALLERGENS[allergen].laws == {Law.EU_FOURTEEN}}
    assert only == {"molluscs", "gluten", "rye", "barley", "oats", "celery", "mustard", "lupin", "sulphites"}


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("soy", ["soya"]),
        ("Soybean", ["soya"]),
        ("  tree   nuts ", ["tree nuts"]),
        ("eggs", ["egg"]),
        ("prawns", ["crustaceans"]),
        ("sulfites", ["sulphites"]),
        ("groundnut", ["peanut"]),
        ("nuts", ["tree nuts", "peanut"]),
        ("shellfish", ["crustaceans", "molluscs"]),
        ("seafood", ["fish", "crustaceans", "molluscs"]),
        ("plutonium", []),
        ("", []),
    ],
)
def test_words_for_allergens(word: str, meant: list[str]) -> None:
    """One answer is the allergen, several mean "ask which", none means unknown."""
    assert [allergen.value for allergen in allergens_meant(word)] == meant


@pytest.mark.parametrize("allergen", Allergen)
def test_an_allergen_means_itself(allergen: Allergen) -> None:
    """The vocabulary's own words are never ambiguous."""
    assert allergens_meant(allergen.value) == (allergen,)


def test_what_implies_what() -> None:
    """Wheat implies gluten, spelt wheat and gluten, almond tree nuts, each once and in a fixed order."""
    assert wider(Allergen.SPELT) == (Allergen.WHEAT, Allergen.GLUTEN)
    assert with_wider([Allergen.SPELT, Allergen.WHEAT]) == (Allergen.GLUTEN, Allergen.WHEAT, Allergen.SPELT)
    assert with_wider([Allergen.ALMOND]) == (Allergen.TREE_NUTS, Allergen.ALMOND)
    assert with_wider([]) == ()


@pytest.mark.parametrize(
    ("avoided", "contained", "concerned"),
    [
        (Allergen.GLUTEN, [Allergen.WHEAT, Allergen.MILK], [Allergen.WHEAT]),
        (Allergen.TREE_NUTS, [Allergen.CASHEW], [Allergen.CASHEW]),
        (Allergen.ALMOND, [Allergen.TREE_NUTS], [Allergen.TREE_NUTS]),  # it may be almond
        (Allergen.WALNUT, [Allergen.CASHEW], []),
        (Allergen.PEANUT, [Allergen.TREE_NUTS], []),  # a peanut is no tree nut
        (Allergen.WHEAT, [Allergen.OATS], []),
        (Allergen.MILK, [Allergen.MILK], [Allergen.MILK]),
        (Allergen.MILK, [], []),
    ],
)
def test_what_concerns_someone_who_avoids(
    avoided: Allergen, contained: list[Allergen], concerned: list[Allergen]
) -> None:
    """A narrower or a wider word in the food concerns whoever avoids one; a sister does not."""
    assert list(concerns(avoided, contained)) == concerned


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A declared and a carried list, and what their comparison must say."""

    declared: tuple[Allergen, ...]
    carried: tuple[Allergen, ...]
    missing: tuple[Allergen, ...] = ()
    named_broadly: tuple[Allergen, ...] = ()
    beyond: tuple[Allergen, ...] = ()


@pytest.mark.parametrize(
    "case",
    [
        Case(declared=(), carried=()),
        Case(declared=(), carried=(Allergen.EGG,), missing=(Allergen.EGG,)),
        Case(declared=(Allergen.EGG,), carried=(Allergen.EGG,)),
        Case(declared=(Allergen.MILK,), carried=(), beyond=(Allergen.MILK,)),
        Case(declared=(Allergen.TREE_NUTS,), carried=(Allergen.ALMOND,), named_broadly=(Allergen.ALMOND,)),
        Case(declared=(Allergen.SPELT,), carried=(Allergen.WHEAT,)),
        Case(declared=(Allergen.GLUTEN,), carried=(Allergen.WHEAT, Allergen.EGG), missing=(Allergen.EGG,),
             named_broadly=(Allergen.WHEAT,)),
        Case(declared=(Allergen.WALNUT,), carried=(Allergen.ALMOND,), missing=(Allergen.ALMOND,),
             beyond=(Allergen.WALNUT,)),
    ],
)  # fmt: skip
def test_comparison(case: Case) -> None:
    """What is carried and not declared is missing, or named broadly; what is declared beyond is told and no fault."""
    found = compare(case.declared, case.carried)
    assert (found.missing, found.named_broadly, found.beyond) == (case.missing, case.named_broadly, case.beyond)


KIND_CARRIES = {
    Kind.EGG: Allergen.EGG,
    Kind.FISH: Allergen.FISH,
    Kind.CRUSTACEAN: Allergen.CRUSTACEANS,
    Kind.MOLLUSC: Allergen.MOLLUSCS,
    Kind.MILK: Allergen.MILK,
    Kind.CHEESE: Allergen.MILK,
    Kind.PASTA: Allergen.WHEAT,
    Kind.TOFU: Allergen.SOYA,
}
WORD_TELLS = {
    "wheat": Allergen.WHEAT,
    "couscous": Allergen.WHEAT,
    "bulgur": Allergen.WHEAT,
    "noodles": Allergen.WHEAT,
    "barley": Allergen.BARLEY,
    "oats": Allergen.OATS,
    "peanut": Allergen.PEANUT,
    "peanuts": Allergen.PEANUT,
    "almonds": Allergen.ALMOND,
    "walnuts": Allergen.WALNUT,
    "cashews": Allergen.CASHEW,
    "pecans": Allergen.PECAN,
    "sesame": Allergen.SESAME,
    "soya": Allergen.SOYA,
    "celery": Allergen.CELERY,
    "sulphured": Allergen.SULPHITES,
}


@pytest.mark.parametrize("food", FOODS.values(), ids=lambda food: food.id)
def test_foods_carry_what_their_kind_and_name_say(food: Food) -> None:
    """Every egg, fish, milk, wheat, nut, celery or sulphured food of the table carries its allergen."""
    expected = {allergen for kind, allergen in KIND_CARRIES.items() if food.kind is kind}
    expected |= {allergen for word, allergen in WORD_TELLS.items() if word in food.name.replace(",", "").split()}
    assert expected <= set(food.allergens)


def test_sulphites_follow_the_source() -> None:
    """Sulphites are carried where, and only where, SR28 prints "sulfured"."""
    carrying = {food.id for food in FOODS.values() if Allergen.SULPHITES in food.allergens}
    assert carrying == {food.id for food in FOODS.values() if "sulfured" in food.source_name}
    assert len(carrying) == 8


def test_what_has_no_recipe_is_not_called_free() -> None:
    """Bouillon, sausage, jerky and other foods made of several things have no recipe in SR28: more may be in them."""
    unknown = {food.name for food in FOODS.values() if not food.allergens_known}
    assert len(unknown) == 25
    assert {"bouillon, beef, powder", "pork sausage, fried", "beef jerky", "chilli powder, blend"} <= unknown
    assert not {"onion, raw", "egg, whole, raw", "milk, whole", "rice, white, dry"} & unknown


def test_how_many_foods_carry_an_allergen() -> None:
    """The number of entries in the table's column is pinned: no allergen was lost unseen."""
    assert sum(len(food.allergens) for food in FOODS.values()) == 89
