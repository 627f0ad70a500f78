"""The food table as a whole: its size, its sums, its names, and figures that belong together."""

import re
from collections import Counter

import pytest

from packlarder.figures.figure import Standing
from packlarder.figures.foods import FOODS, Food, Nutrients, closest_foods, find_food
from packlarder.figures.kinds import Kind, State
from packlarder.figures.rows import listed, number_or_unknown

# Energy that 4/9/4 does not tell: cocoa and baking powder by their own factors, celery flakes by the acids they hold
OWN_ENERGY_FACTORS = {"cocoa-unsweetened", "baking-powder", "celery-flakes-dried"}


def known(figure: float | None) -> float:
    """Give a figure that must not be unknown."""
    assert figure is not None
    return figure


def column(name: str) -> list[float | None]:
    """Give one nutrient of all foods."""
    return [getattr(food.nutrients, name) for food in FOODS.values()]


@pytest.mark.parametrize(
    ("name", "total", "unknown"),
    [
        ("water_g", 13831.78, 0),
        ("energy_kcal", 59344, 0),
        ("protein_g", 3547.80, 0),
        ("fat_g", 2352.48, 0),
        ("carbohydrate_g", 6620.32, 0),
        ("fibre_g", 1217.8, 5),
        ("sugars_g", 2169.44, 26),
        ("sodium_mg", 145839, 0),
    ],
)
def test_column_sums(name: str, total: float, unknown: int) -> None:
    """Each column adds up to its pinned sum, with its pinned number of unknowns: no figure was changed unseen."""
    values = column(name)
    assert sum(value for value in values if value is not None) == pytest.approx(total)
    assert values.count(None) == unknown


def test_row_counts() -> None:
    """272 foods, 704 household measures weighing 84,242.6 g together; three foods have none."""
    assert len(FOODS) == 272
    measures = [measure for food in FOODS.values() for measure in food.measures]
    assert len(measures) == 704
    assert sum(measure.grams for measure in measures) == pytest.approx(84242.6)
    assert sum(measure.amount for measure in measures) == pytest.approx(983.366)
    bare = {food.id for food in FOODS.values() if not food.measures}
    assert bare == {"celery-flakes-dried", "tomato-powder", "mango-dried-sweetened"}


def test_states() -> None:
    """How many foods stand in each state is pinned."""
    counts = Counter(food.state for food in FOODS.values())
    assert counts == {
        State.COOKED: 83,
        State.RAW: 73,
        State.DRIED: 44,
        State.DRY: 43,
        State.READY: 23,
        State.FREEZE_DRIED: 6,
    }


def test_every_food_says_where_it_comes_from() -> None:
    """No food lacks its source, and each has its own number there."""
    assert {(food.source, food.standing) for food in FOODS.values()} == {("USDA SR28", Standing.PUBLISHED)}
    assert len({food.ndb for food in FOODS.values()}) == len(FOODS)
    assert all(re.fullmatch(r"\d{5}", food.ndb) for food in FOODS.values())


def test_names_are_fit_for_a_book() -> None:
    """Names are unique, lower case, no id of another food, and plain scalars in YAML; ids are `[a-z0-9-]`."""
    names = [food.name for food in FOODS.values()]
    assert len(set(names)) == len(names)
    for food in FOODS.values():
        assert re.fullmatch(r"[a-z][a-z0-9 ,%-]*[a-z0-9]", food.name), food.name
        assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", food.id), food.id
    assert not {food.id for food in FOODS.values() if food.id != food.name} & set(names)


def test_raw_and_cooked_tell_themselves_apart() -> None:
    """A name that says raw belongs to a raw food, and the name of a raw food says so."""
    for food in FOODS.values():
        assert ("raw" in food.name.split(", ")) == (food.state is State.RAW), food.name


def test_energy_against_its_parts() -> None:
    """Energy is 4 kcal/g protein + 9 fat + 4 carbohydrate, fibre at 2, within 15 % or 10 kcal, but for three foods."""
    departing = set()
    for food in FOODS.values():
        held = food.nutrients
        protein_g, fat_g, carbohydrate_g = known(held.protein_g), known(held.fat_g), known(held.carbohydrate_g)
        expected = 4 * protein_g + 9 * fat_g + 4 * carbohydrate_g - 2 * (held.fibre_g or 0)
        if known(held.energy_kcal) != pytest.approx(expected, rel=0.15, abs=10):
            departing.add(food.id)
    assert departing == OWN_ENERGY_FACTORS


@pytest.mark.parametrize("food", FOODS.values(), ids=lambda food: food.id)
def test_parts_fit_into_the_whole(food: Food) -> None:
    """Water, protein, fat and carbohydrate of 100 g weigh no more than 100 g and the rounding of four analyses."""
    held = food.nutrients
    parts = [known(part) for part in (held.water_g, held.protein_g, held.fat_g, held.carbohydrate_g)]
    assert min(parts) >= 0
    assert sum(parts) <= 100.5  # chicken thigh, stewed: 65.59 + 25.00 + 9.79 = 100.38
    for within in (held.fibre_g, held.sugars_g):
        assert (within or 0) <= known(held.carbohydrate_g) + 0.6  # sugars are analysed, carbohydrate is the rest


def test_unknown_is_not_nought() -> None:
    """A figure that SR28 lacks is None; a figure of nought is nought."""
    assert FOODS["couscous-dry"].nutrients.sugars_g is None
    assert FOODS["oil-olive"].nutrients.sugars_g == 0
    assert number_or_unknown("") is None
    assert number_or_unknown("0") == 0
    assert listed("") == ()


def test_a_food_that_is_known_by_heart() -> None:
    """Raw whole egg: 76.15 % water, 143 kcal, a large one 50 g (USDA SR28, 01123)."""
    egg = FOODS["egg-whole-raw"]
    assert egg.kind is Kind.EGG
    assert egg.state is State.RAW
    assert egg.nutrients == Nutrients(
        water_g=76.15,
        energy_kcal=143,
        protein_g=12.56,
        fat_g=9.51,
        carbohydrate_g=0.72,
        fibre_g=0,
        sugars_g=0.37,
        sodium_mg=142,
    )
    assert next(measure.grams for measure in egg.measures if measure.unit == "large") == 50


@pytest.mark.parametrize("text", ["egg-whole-raw", "egg, whole, raw", "  Egg,  WHOLE, raw "])
def test_a_food_is_found_by_id_or_name(text: str) -> None:
    """An id or a name finds the food, however it is spaced or capitalised."""
    assert find_food(text) is FOODS["egg-whole-raw"]


@pytest.mark.parametrize("text", ["", "egg", "egg, whole"])
def test_half_a_name_finds_nothing(text: str) -> None:
    """Part of a name is no name: a guess could be the wrong food."""
    assert find_food(text) is None


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("onion", "onion, raw"),
        ("noodels, egg, dry", "noodles, egg, dry"),
        ("beef, ground, 93% lean, brownd", "beef, ground, 93% lean, browned"),
        ("garbanzo", "chickpeas, dry"),  # by SR28's own name
        ("courgette", "zucchini, raw"),
        ("prawns", "shrimp, raw"),
        ("eggs", "egg, whole, raw"),
        ("tomatoes", "tomato, raw"),
        ("blueberries", "blueberry, raw"),
        ("stock", "bouillon, beef, powder"),
        ("beef, stewed", "beef, ground, 97% lean, browned"),  # beef at least, and cooked
        ("stewed beef", "beef, ground, 97% lean, browned"),
    ],
)
def test_the_closest_food_is_suggested_first(text: str, first: str) -> None:
    """A slip or another word for a food leads to its name."""
    assert closest_foods(text)[0] == first


def test_at_most_three_suggestions() -> None:
    """Suggestions are few, each once, and none where nothing is near."""
    assert len(closest_foods("raw")) == 3
    assert closest_foods("xyzzy") == ()
    assert closest_foods("") == ()
    assert len(set(closest_foods("egg, whole, raw"))) == 3


def test_the_table_can_not_be_changed() -> None:
    """The foods are one fixed table for every stage."""
    with pytest.raises(TypeError):
        FOODS["egg"] = FOODS["egg-whole-raw"]  # type: ignore[index]  # that it has no such method is the point
