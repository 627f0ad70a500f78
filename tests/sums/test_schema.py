"""The JSON Schema of a book's files: a reference library holds every file of the demo book against it."""

import json
import re
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path, PurePosixPath

import pytest
import yaml
from jsonschema import Draft202012Validator
from pydantic.json_schema import JsonSchemaValue

from packlarder.book.base import in_words
from packlarder.book.batch import BatchDetail, Filled
from packlarder.book.bring_back import BringBack
from packlarder.book.came_home import CameHome, LeftDetail
from packlarder.book.component import Component, Yield
from packlarder.book.dish import Dish, Lesson, Pack
from packlarder.book.draw import Draw, Draws
from packlarder.book.drying_run import DryingRun
from packlarder.book.household import Household, Margins, Pot, Stove, UsualConditions
from packlarder.book.nodes import read_yaml
from packlarder.book.own_food import OwnFood
from packlarder.book.part import PartDetail
from packlarder.book.person import PersonDetail
from packlarder.book.read import read_book
from packlarder.book.schema import FILES, json_schemas
from packlarder.book.step import Step
from packlarder.book.stock import ContainerSize, Dryer, KeepingRule, LarderRules
from packlarder.book.stop import MealDetail, Stop
from packlarder.book.trip import Cooler, Trip, TripMargins, WaterContainer
from packlarder.book.validate import validate
from packlarder.figures import foods
from packlarder.figures.allergens import Allergen
from packlarder.figures.fuels import FUELS
from packlarder.figures.stoves import STOVES
from packlarder.figures.temperatures import Authority

BY_FOLDER = {
    "components": "component.json",
    "dishes": "dish.json",
    "batches": "batch.json",
    "draws": "draws.json",
    "trips": "trip.json",
}
MODELS = {
    "book.json": (
        Household,
        Margins,
        Pot,
        Stove,
        UsualConditions,
        Dryer,
        ContainerSize,
        KeepingRule,
        LarderRules,
    ),
    "foods.json": (OwnFood,),
    "component.json": (Component, BringBack, Yield),
    "dish.json": (Dish, Lesson, Pack, PartDetail, Step),
    "batch.json": (DryingRun, BatchDetail, Filled),
    "draws.json": (Draws, Draw),
    "trip.json": (
        Trip,
        PersonDetail,
        Stop,
        MealDetail,
        WaterContainer,
        Cooler,
        TripMargins,
        CameHome,
        LeftDetail,
    ),
}


@pytest.fixture(scope="module")
def files(checkout: Path) -> Mapping[str, bytes]:
    """Give the files of the demo book."""
    folder = checkout / "recipes"
    found = {path.relative_to(folder).as_posix(): path.read_bytes() for path in sorted(folder.rglob("*.yaml"))}
    assert len(found) >= 20, "the demo book has many files: a walk that finds few is blind"
    return found


@pytest.fixture(scope="module")
def texts(files: Mapping[str, bytes]) -> Mapping[str, str]:
    """Give the schemas with the demo book's names."""
    book = read_book(files).book
    assert book
    return json_schemas(book)


@pytest.fixture(scope="module")
def checks(texts: Mapping[str, str]) -> Mapping[str, Draft202012Validator]:
    """Give a checker for each schema."""
    return {name: Draft202012Validator(json.loads(text)) for name, text in texts.items()}


def schema_of(file: str) -> str:
    """Name the schema for a file of a book."""
    path = PurePosixPath(file)
    return BY_FOLDER.get(str(path.parent), f"{path.stem}.json")


class EditorLoader(yaml.SafeLoader):
    """Reads a file as editors do, by the core schema of YAML 1.2: numbers are numbers, yes and 2027-03-12 are text."""

    yaml_implicit_resolvers: dict[str, list[tuple[str, re.Pattern[str]]]] = {}  # noqa: RUF012 - as PyYAML has it


EditorLoader.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile(r"true|false"), list("tf"))
EditorLoader.add_implicit_resolver("tag:yaml.org,2002:int", re.compile(r"[-+]?[0-9]+$"), list("-+0123456789"))
EditorLoader.add_implicit_resolver("tag:yaml.org,2002:float", re.compile(r"[0-9]+\.[0-9]+$"), list("0123456789"))
EditorLoader.add_implicit_resolver("tag:yaml.org,2002:null", re.compile(r"$"), [""])


def as_text(data: bytes) -> object:
    """Read a file as the book's reader does: every value is text."""
    return read_yaml("a.yaml", data).value


def as_editors(data: bytes) -> object:
    """Read a file as an editor does."""
    return yaml.load(data, EditorLoader)  # noqa: S506 - a safe loader, with fewer guesses


def is_read(name: str, text: str) -> bool:
    """Tell whether the book's own reader takes a file."""
    value = read_yaml("a.yaml", text.encode()).value
    return value is not None and not isinstance(validate(FILES[name][0], "a.yaml", value), tuple)


def within(schema: object, path: str = "") -> Iterator[tuple[str, JsonSchemaValue]]:
    """Give every mapping in a schema with the keys that lead to it."""
    if isinstance(schema, dict):
        yield path, schema
        for key, value in schema.items():
            yield from within(value, f"{path}/{key}")
    elif isinstance(schema, list):
        for index, value in enumerate(schema):
            yield from within(value, f"{path}/{index}")


@pytest.mark.parametrize("with_book", [True, False])
def test_schemas_are_schemas(texts: Mapping[str, str], with_book: bool) -> None:
    """Each kind of file has a schema that is one by the draft it names, with a book's names or without."""
    made = texts if with_book else json_schemas(None)
    assert list(made) == [
        "book.json",
        "foods.json",
        "component.json",
        "dish.json",
        "batch.json",
        "draws.json",
        "trip.json",
    ]
    for name, text in made.items():
        schema = json.loads(text)
        Draft202012Validator.check_schema(schema)
        assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
        assert next(iter(schema)) == "$schema", name
        assert schema["title"], name


def test_schemas_are_the_same_each_time(files: Mapping[str, bytes], texts: Mapping[str, str]) -> None:
    """A book that did not change gives the same text, so that git shows no change."""
    book = read_book(files).book
    assert dict(json_schemas(book)) == dict(texts)


@pytest.mark.parametrize("read", [as_text, as_editors])
def test_every_file_of_the_demo_book_fits(
    files: Mapping[str, bytes], checks: Mapping[str, Draft202012Validator], read: Callable[[bytes], object]
) -> None:
    """Nothing in a sound file is scolded, whether values are read as text or as an editor reads them."""
    scolded = [
        f"{file}: {list(error.absolute_path)} {error.message}"
        for file, data in files.items()
        for error in checks[schema_of(file)].iter_errors(read(data))
    ]
    assert scolded == []


def test_every_file_fits_without_names(files: Mapping[str, bytes]) -> None:
    """A schema made without a book offers nothing, and lets through what every book may hold."""
    checks = {name: Draft202012Validator(json.loads(text)) for name, text in json_schemas(None).items()}
    assert [file for file, data in files.items() if not checks[schema_of(file)].is_valid(as_text(data))] == []


DISH = """
name: Leek soup
meal: supper
serves: 2
parts:
  - leek rings: 20 g
  - oil: {take: 30 mL, stays in: 15 mL, instead: butter}
packs:
  - [leek rings]
  - {holds: [[leek rings], oil], called: 1}
steps:
  - soak: leek rings
    for: 5 min
  - Eat.
"""
COMPONENT = """
name: Leek rings
was: leek, raw
went in: blanched
contains: []
dried: freeze-dried
form: rings
counts: {1 leek: 90 g}
bring back: {soak: hot water, wait: 10 min}
"""
FOODS = """
rye-bread: {name: bread, kind: bread, state: ready, contains: rye, water: 6 %, energy: 346 kcal}
"""
BOOK = """
packlarder: 1
title: 1984
stoves: {burner: {fuel: gas mix, kind: gas burner}}
pots: {pot: {holds: 1 L, across: 13 cm, lid: yes}}
usual conditions: {stove: burner, pot: pot}
"""

RUN = """
loaded: 2027-03-12 08:30
dryer: freezer
on the trays:
  - egg powder: {fresh: 18 eggs, treated: frozen first, trays: 2, dry: 221 g, tested: no lighter, traces: milk}
  - leek rings:
      fresh: 1 kg
      treated: [blanched, heated to 90 °C]
      trays: 1
      put in: [{in: jar, holds: 90 g, vacuum: yes, sachet: desiccant, stands: on the stairs}]
      dry: 120 g
"""
DRAWS = """
date: 2027-04-01
drawn:
  - {from: 2027-03-12-egg/a2, took: all}
  - {from: 2027-03-12-egg/a1, counted: 0 g}
"""
TRIP = """
name: The lake
starts: 2027-06-26
people:
  - Ada
  - Bo: {appetite: 120 %, avoids: peanut}
stoves: burner
pots: [pot, pan]
fuel in hand: 85 g
water containers: {can: 10 L, bottle: {holds: 1 L, count: 4}}
mealtimes: {supper: 19:00}
drinks: tea
spare day: [supper: leek soup]
stops:
  - {place: the jetty, day: 1, fills: tap}
  - place: the far shore
    day: 1
    fills: to be treated
    treated by: boiling
    meals:
      - supper: leek soup
      - breakfast: {dish: porridge, for: Ada, at: 7:30}
stands: gone
came home: {date: 2027-06-27, left: [{oats: 40 g}, {leek rings: {weight: 1 oz, why: rain}}]}
"""

PLAIN = {
    "dish.json": DISH,
    "component.json": COMPONENT,
    "foods.json": FOODS,
    "book.json": BOOK,
    "batch.json": RUN,
    "draws.json": DRAWS,
    "trip.json": TRIP,
}


def test_examples_are_such_as_one_would_write() -> None:
    """Nobody fills a tray a kilometre deep: lengths at hand are offered in millimetres and centimetres."""
    batch, book = (json.loads(json_schemas(None)[name])["$defs"] for name in ("batch.json", "book.json"))
    assert batch["BatchDetail"]["properties"]["deep"]["examples"] == ["12 mm"]
    assert book["Dryer"]["properties"]["deep"]["examples"] == ["12 mm"]
    assert book["Pot"]["properties"]["across"]["examples"] == ["16 cm"]
    assert batch["Filled"]["properties"]["from"]["examples"] == ["2027-03-12-egg/a2"]


@pytest.mark.parametrize("read", [as_text, as_editors])
@pytest.mark.parametrize("name", PLAIN)
def test_plain_files_fit(
    checks: Mapping[str, Draft202012Validator], name: str, read: Callable[[bytes], object]
) -> None:
    """The files that the cases below spoil are sound before."""
    assert [error.message for error in checks[name].iter_errors(read(PLAIN[name].encode()))] == []


@pytest.mark.parametrize(
    ("name", "right", "other"),
    [
        ("dish.json", "leek rings: 20 g", "a component of tomorrow: worth 150 g fresh each"),
        ("dish.json", "soak: leek rings", "soak: [leek rings, oil]"),
        ("dish.json", "soak: leek rings", "soak: what it was called before"),
        ("dish.json", "name: Leek soup", "name: Leek soup\nx-shelf: {lowest: [left, 2]}"),
        ("dish.json", "instead: butter", "instead: [butter, lard], x-why: cheaper"),
        ("component.json", "contains: []", "contains: soy"),
        ("component.json", "contains: []", "contains: [celery, mustard]"),
        ("component.json", "was: leek, raw", "made of: [{leeks: 1 kg}, {egg-powder: 10 g}]"),
        ("batch.json", "treated: frozen first", "treated: [frozen first, heated to 74 °C]"),
        ("batch.json", "treated: [blanched, heated to 90 °C]", "treated: blanched"),
        ("batch.json", "tested: no lighter", "tested: [no lighter, snaps cold]"),
        ("batch.json", "trays: 1", "trays: 1\n      deep: 12 mm"),
        ("batch.json", "stands: on the stairs", "from: 2027-03-12-egg/a1, on: 2027-05-01"),
        ("foods.json", "contains: rye", "contains: []"),
        ("book.json", "packlarder: 1", 'packlarder: "1"'),
        ("book.json", "lid: yes", "lid: false"),
        ("book.json", "title: 1984", "title: A book\non: 2027-06-01"),
        ("trip.json", "- Ada\n", "- Ada: {}\n  - Cy\n"),
        ("trip.json", "avoids: peanut", "avoids: [peanut, nuts], x-bunk: 3"),
        ("trip.json", "fuel in hand: 85 g", "fuel in hand: [85 g, 180 g]"),
        ("trip.json", "drinks: tea", "drinks: [tea, what it was called before]"),
        ("trip.json", "at: 7:30", "at: 7.30"),
        ("trip.json", "for: Ada", "for: [Ada, Bo]"),
        ("trip.json", "can: 10 L", "can: {holds: 10 L}"),
    ],
)
def test_other_ways_to_write_it_fit(
    checks: Mapping[str, Draft202012Validator], name: str, right: str, other: str
) -> None:
    """What the reader takes is not scolded: short forms, former names, other words for an allergen, keys with x-."""
    assert right in PLAIN[name]
    text = PLAIN[name].replace(right, other)
    assert is_read(name, text)
    for read in (as_text, as_editors):
        assert [error.message for error in checks[name].iter_errors(read(text.encode()))] == []


@pytest.mark.parametrize(
    ("name", "right", "wrong"),
    [
        ("dish.json", "meal: supper", "meel: supper"),
        ("dish.json", "meal: supper", "meal: brunch"),
        ("dish.json", "meal: supper", "meal: [supper]"),
        ("dish.json", "serves: 2\n", ""),
        ("dish.json", "leek rings: 20 g\n  - oil: {", "leek rings: 20 g\n    oil: {"),
        ("dish.json", "stays in: 15 mL", "stay in: 15 mL"),
        ("dish.json", "holds: [[leek rings], oil]", "holds: []"),
        ("dish.json", "called: 1", "caled: 1"),
        ("dish.json", "soak: leek rings", "soek: leek rings"),
        ("dish.json", "soak: leek rings", "drain: in the pot"),
        ("dish.json", "soak: leek rings", "soak: leek rings\n    boil: oil"),
        ("dish.json", "soak: leek rings\n", "until: soft\n"),
        ("dish.json", "- Eat.", "- {sentence: Eat.}"),
        ("component.json", "went in: blanched", "went in: steamed"),
        ("component.json", "dried: freeze-dried", "dried: frozen"),
        ("component.json", "contains: []\n", ""),
        ("component.json", "contains: []", "contains: [glutten]"),
        ("component.json", "contains: []", "contains: seafood"),  # fish, crustaceans or molluscs: which?
        ("component.json", "was: leek, raw", "was: leek, raw\nmade of: [{leek: 1 kg}]"),
        ("component.json", "was: leek, raw\n", ""),
        ("component.json", "soak: hot water, wait", "soak: hot water, mix: 1 tbsp, wait"),
        ("component.json", "soak: hot water, wait", "wait"),
        ("component.json", "counts: {1 leek: 90 g}", "counts: 90 g"),
        ("foods.json", "kind: bread", "kind: loaf"),
        ("foods.json", "rye-bread:", "Rye bread:"),
        ("foods.json", "water: 6 %, ", ""),
        ("book.json", "fuel: gas mix", "fuel: coal"),
        ("book.json", "kind: gas burner", "kind: candle"),
        ("book.json", "packlarder: 1", "packlarder: 2"),
        ("book.json", "lid: yes", "lit: yes"),
        ("book.json", "title: 1984", "title: A book\nauthority: my aunt"),
        ("book.json", "pot: pot}", "pot: pot, heater water: river}"),
        ("batch.json", "on the trays:", "on trays:"),
        ("batch.json", "tested: no lighter", "tested: no more"),
        ("batch.json", "sachet: desiccant", "sachet: salt"),
        ("batch.json", "traces: milk", "traces: mlik"),
        ("batch.json", "fresh: 18 eggs", "frsh: 18 eggs"),
        ("batch.json", "in: jar, holds: 90 g", "in: jar"),
        ("draws.json", "took: all", "tok: all"),
        ("draws.json", "date: 2027-04-01\n", ""),
        ("trip.json", "starts: 2027-06-26\n", ""),
        ("trip.json", "stops:", "stop:"),
        ("trip.json", "- Bo: {appetite: 120 %", "- Bo: {apetite: 120 %"),
        ("trip.json", "avoids: peanut", "avoids: peenut"),
        ("trip.json", "fills: tap", "fills: well"),
        ("trip.json", "treated by: boiling", "treated by: praying"),
        ("trip.json", "- supper: leek soup", "- super: leek soup"),
        ("trip.json", "- supper: leek soup", "- supper: [leek soup, porridge]"),
        ("trip.json", "mealtimes: {supper", "mealtimes: {dinner"),
        ("trip.json", "holds: 1 L, count: 4", "count: 4"),
        ("trip.json", "weight: 1 oz, why", "wait: 1 oz, why"),
        ("trip.json", "stands: gone", "stands: away"),
    ],
)
def test_wrong_files_do_not_fit(checks: Mapping[str, Draft202012Validator], name: str, right: str, wrong: str) -> None:
    """A mistyped key, a word that is none of a closed list, a missing key and a second verb are each scolded."""
    assert right in PLAIN[name]
    text = PLAIN[name].replace(right, wrong)
    assert not is_read(name, text)
    for read in (as_text, as_editors):
        assert not checks[name].is_valid(read(text.encode()))


@pytest.mark.parametrize("name", MODELS)
def test_every_key_is_described(texts: Mapping[str, str], name: str) -> None:
    """Each key of each model stands in its schema, in the model's order, with words that say what it is."""
    described = [
        {key: one.get("description", "") for key, one in schema["properties"].items()}
        for _, schema in within(json.loads(texts[name]))
        if "properties" in schema and "patternProperties" in schema
    ]
    for model in MODELS[name]:
        keys = [in_words(field) for field in model.model_fields]
        [found] = [one for one in described if list(one) == keys]
        assert [key for key, text in found.items() if not text] == [], model.__name__
    assert len(described) == len(MODELS[name]), "a model that this test does not know"


def offered(checks: Mapping[str, Draft202012Validator], name: str, *path: str) -> set[str]:
    """Give what an editor offers at a place of a schema: words of closed lists and keys, through all references."""
    root = checks[name].schema
    assert isinstance(root, dict)
    found: set[str] = set()
    todo: list[object] = [_at(root, path)]
    while todo:
        one = todo.pop()
        if isinstance(one, dict):
            found.update(map(str, one.get("enum", ())), one.get("properties", {}) if path[-1] in KEYS else ())
            todo += [one[key] for key in ("items", "anyOf", "oneOf") if key in one]
            todo += [root["$defs"][one["$ref"].rpartition("/")[2]]] if "$ref" in one else []
        elif isinstance(one, list):
            todo += one
    return found


KEYS = ("parts", "made of", "on the trays", "on the move")


def _at(root: JsonSchemaValue, path: tuple[str, ...]) -> object:
    here: object = root
    for key in path:
        assert isinstance(here, dict)
        here = here[key]
    return here


@pytest.mark.parametrize(
    ("name", "path", "words"),
    [
        ("dish.json", ("properties", "parts"), {"Egg powder", "egg-powder", "Ghee"}),
        ("dish.json", ("properties", "packs"), {"Egg powder", "egg-powder", "Ghee"}),
        ("dish.json", ("$defs", "Step", "properties", "soak"), {"Egg powder", "egg-powder", "Ghee"}),
        ("dish.json", ("$defs", "Step", "properties", "pot"), {"small pot", "griddle"}),
        ("dish.json", ("properties", "pot"), {"small pot", "griddle"}),
        ("dish.json", ("properties", "stove"), {"canister burner", "beach fire"}),
        ("component.json", ("properties", "was"), {"egg, whole, raw", "crispbread, rye", "rye-crispbread"}),
        ("component.json", ("properties", "made of"), {"egg, whole, raw", "rye-crispbread", "Egg powder"}),
        ("component.json", ("properties", "contains"), set(Allergen)),
        ("batch.json", ("properties", "on the trays"), {"Egg powder", "egg-powder"}),
        ("batch.json", ("properties", "dryer"), {"freeze-dryer", "air dryer"}),
        ("trip.json", ("$defs", "MealDetail", "anyOf"), {"Apple porridge", "apple-porridge"}),
        ("trip.json", ("properties", "drinks"), {"Milk coffee", "milk-coffee"}),
        ("trip.json", ("properties", "on the move"), {"Raisins", "raisins"}),
        ("trip.json", ("properties", "stoves"), {"canister burner", "beach fire"}),
        ("trip.json", ("properties", "pots"), {"small pot", "griddle"}),
        ("trip.json", ("$defs", "Stop", "properties", "to buy"), {"Raisins", "raisins"}),
        ("trip.json", ("$defs", "Stop", "properties", "fills"), {"tap", "to be treated", "snow"}),
        ("trip.json", ("$defs", "PersonDetail", "properties", "avoids"), set(Allergen)),
        ("batch.json", ("$defs", "Filled", "properties", "in"), {"half-litre jar"}),
        ("book.json", ("properties", "booklet measure"), {"mug", "beaker"}),
        ("book.json", ("properties", "authority"), set(Authority)),
        ("book.json", ("$defs", "Stove", "properties", "fuel"), set(FUELS)),
        ("book.json", ("$defs", "Stove", "properties", "kind"), set(STOVES)),
        ("book.json", ("$defs", "UsualConditions", "properties", "stove"), {"canister burner", "beach fire"}),
        ("book.json", ("$defs", "UsualConditions", "properties", "pot"), {"small pot", "griddle"}),
    ],
)
def test_names_of_the_book_are_offered(
    checks: Mapping[str, Draft202012Validator], name: str, path: tuple[str, ...], words: set[str]
) -> None:
    """Where a name belongs, an editor offers the book's own, and the words of the tables."""
    assert words <= offered(checks, name, *path)


def test_every_food_of_the_table_is_offered(checks: Mapping[str, Draft202012Validator]) -> None:
    """A component may have been any food of the table."""
    assert {food.name for food in foods.FOODS.values()} <= offered(checks, "component.json", "properties", "was")


def test_no_one_elses_names_are_offered() -> None:
    """Without a book there are no components to offer, and closed lists stay closed."""
    checks = {name: Draft202012Validator(json.loads(text)) for name, text in json_schemas(None).items()}
    assert offered(checks, "dish.json", "$defs", "Step", "properties", "soak") == set()
    assert offered(checks, "component.json", "properties", "contains") == set(Allergen)


def test_nothing_of_the_machinery_is_left(texts: Mapping[str, str]) -> None:
    """No schema offers to write null, and none holds our own marks, or titles made from names in the code."""
    for name, text in texts.items():
        for path, schema in within(json.loads(text)):
            assert "x-names" not in schema, f"{name} {path}"
            assert schema.get("type") != "null", f"{name} {path}"
            assert "title" not in schema or not path or isinstance(schema["title"], dict), f"{name} {path}"


def test_defaults_read_as_one_writes_them(texts: Mapping[str, str]) -> None:
    """What holds where a key is left out stands as it would be written in the file."""
    book = json.loads(texts["book.json"])
    assert book["properties"]["servings"]["default"] == 2
    assert book["properties"]["print"]["default"] == ["a6", "quarter-letter"]
    assert book["$defs"]["Pot"]["properties"]["lid"]["default"] == "yes"
    assert book["$defs"]["Margins"]["properties"]["fuel"]["default"] == "15 %"
