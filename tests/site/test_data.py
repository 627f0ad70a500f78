"""Data for other programs: recipes as schema.org words them, and the sheets as they are."""

import json
import re
from dataclasses import replace
from pathlib import Path

import pytest
from tests.site.samples import BOOK

from packlarder.publish.data import build_data, recipe
from packlarder.sheets.dish_sheet import DishSheet


@pytest.fixture(scope="module")
def data(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Write the data of the sample book."""
    out = tmp_path_factory.mktemp("data")
    assert build_data(BOOK, out=out) == ()
    return out / "data"


def rich() -> DishSheet:
    """Give the sample dish that has everything."""
    return next(dish for dish in BOOK.dishes if dish.id == "egg-and-leek-pan")


def test_every_sheet_has_its_files(data: Path) -> None:
    """Two for each dish, one for each component, one for what there is besides; all are JSON."""
    named = {str(path.relative_to(data)) for path in data.rglob("*.json*")}
    assert named == {
        "book.json",
        *(f"recipes/{dish.id}.jsonld" for dish in BOOK.dishes),
        *(f"dishes/{dish.id}.json" for dish in BOOK.dishes),
        *(f"components/{one.id}.json" for one in BOOK.components),
    }
    for name in named:
        assert isinstance(json.loads((data / name).read_text("utf-8")), dict)


def test_a_recipe_has_the_words_of_schema_org(data: Path) -> None:
    """The properties that schema.org's Recipe names, each of the type it asks for; the clock by ISO 8601."""
    told = json.loads((data / "recipes" / "egg-and-leek-pan.jsonld").read_text("utf-8"))
    assert (told["@context"], told["@type"]) == ("https://schema.org", "Recipe")
    assert told["name"] == "Egg and leek pan"
    assert told["recipeYield"] == f"{rich().servings[rich().usual]} servings"
    assert re.fullmatch(r"PT\d+H\d+M", told["totalTime"])
    kinds = [step["@type"] for step in told["recipeInstructions"]]
    assert kinds.count("HowToStep") == len(rich().steps)
    assert set(kinds) == {"HowToStep", "HowToTip"}


def test_a_recipe_warns_whoever_takes_it_over(data: Path) -> None:
    """What is RAW is told before the first step, the cautions after the last, and RAW at the ingredient."""
    told = json.loads((data / "recipes" / "egg-and-leek-pan.jsonld").read_text("utf-8"))
    first, *_, last = told["recipeInstructions"]
    assert first["text"].startswith("RAW: ")
    assert last["text"] == rich().cautions[-1].text.replace("\u00a0", " ")
    [egg] = [one for one in told["recipeIngredient"] if "egg powder" in one]
    assert egg.endswith("(raw: must be cooked to be safe)")


def test_ingredients_carry_the_printed_amounts() -> None:
    """Each ingredient begins with the weight and the measure that the page prints; water is the last."""
    dish = rich()
    told = recipe(dish, BOOK)["recipeIngredient"]
    assert isinstance(told, list)
    for part, line in zip(dish.parts, told, strict=False):
        assert isinstance(line, str)
        assert line.startswith(part.dry.metric[dish.usual])
        assert part.name.lower() in line
    assert told[len(dish.parts) :] == [f"{dish.water_total.metric[dish.usual]} water"]


def test_an_address_leads_to_the_page() -> None:
    """With an address of its own, a book's recipes name their pages and photos; without one they name neither."""
    told = recipe(rich(), replace(BOOK, address="https://skerry.example/book"))
    assert told["url"] == "https://skerry.example/book/dishes/egg-and-leek-pan.html"
    assert told["image"] == "https://skerry.example/book/photos/egg-and-leek-pan.png"
    assert {"url", "image"} & recipe(rich(), replace(BOOK, address="")).keys() == set()


def test_a_sheet_is_there_as_it_is(data: Path) -> None:
    """Every figure of a dish's sheet stands in its file, for every number of servings, with plain spaces."""
    told = json.loads((data / "dishes" / "egg-and-leek-pan.json").read_text("utf-8"))
    dish = BOOK.spread.get("egg-and-leek-pan") or rich()
    assert told["servings"] == list(dish.servings)
    assert told["parts"][0]["dry"]["metric"] == [text.replace("\u00a0", " ") for text in dish.parts[0].dry.metric]
    assert "\u00a0" not in (data / "dishes" / "egg-and-leek-pan.json").read_text("utf-8")
    assert "photos" not in json.loads((data / "book.json").read_text("utf-8"))
