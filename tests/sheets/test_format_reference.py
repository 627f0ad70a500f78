"""The format reference says what the models say, and every example in it is what the reader really takes."""

import json
import re
from collections.abc import Iterator, Mapping
from datetime import date
from pathlib import Path
from typing import Annotated, cast, get_type_hints

import pytest
from jsonschema import Draft202012Validator

from packlarder.book.base import BookModel, in_words
from packlarder.book.bring_back import Way
from packlarder.book.component import Component
from packlarder.book.dish import Dish, Meal
from packlarder.book.draw import Draws
from packlarder.book.drying_run import DryingRun
from packlarder.book.fields import Length, Text, Weight, Whole, YesNo
from packlarder.book.household import Household
from packlarder.book.names import Allergens, FuelName
from packlarder.book.nodes import Node, read_yaml
from packlarder.book.own_food import OwnFoods
from packlarder.book.part import Part
from packlarder.book.read import read_book
from packlarder.book.schema import json_schemas
from packlarder.book.step import Sentence, Verb
from packlarder.book.trip import Trip
from packlarder.book.validate import validate
from packlarder.faults import Severity
from packlarder.figures.allergens import Allergen
from packlarder.figures.fuels import FUELS
from packlarder.figures.kinds import Kind, WentIn
from packlarder.figures.stoves import STOVES
from packlarder.figures.temperatures import Authority
from packlarder.measure import Dimension, parse
from packlarder.safety.whole import check_book
from packlarder.sheets import format_words as words
from packlarder.sheets.book_sheet import KeyRow
from packlarder.sheets.format_examples import WHOLE
from packlarder.sheets.format_keys import KEYS
from packlarder.sheets.format_reference import MODELS, format_sections, in_quotes, key_examples, model_rows, takes

FILES: Mapping[str, tuple[type[object], str]] = {
    "writing": (Component, "component.json"),
    "book": (Household, "book.json"),
    "foods": (OwnFoods, "foods.json"),
    "component": (Component, "component.json"),
    "dish": (Dish, "dish.json"),
    "run": (DryingRun, "batch.json"),
    "draws": (Draws, "draws.json"),
    "trip": (Trip, "trip.json"),
}
"""Sections whose example is a whole file: what reads it, and its schema."""

STAND_IN = {
    "stove": "book",
    "pot": "book",
    "dryer": "book",
    "container": "book",
    "larder": "book",
    "keeping": "book",
    "margins": "book",
    "usual-conditions": "book",
    "yields": "component",
    "bring-back": "component",
    "part": "dish",
    "pack": "dish",
    "step": "dish",
    "lesson": "dish",
    "batch": "run",
    "filled": "run",
    "draw": "draws",
    "person": "trip",
    "stop": "trip",
    "meal-line": "trip",
    "water-container": "trip",
    "cooler": "trip",
    "trip-margins": "trip",
    "came-home": "trip",
    "left": "trip",
}
"""Sections whose example stands in a file of another section."""

CLOSED: Mapping[str, list[str]] = {
    "amounts": list(Dimension),
    "ways": list(Way),
    "verbs": list(Verb),
    "kinds": list(Kind),
    "allergens": list(Allergen),
    "fuels": list(FUELS),
    "stove-kinds": list(STOVES),
    "authorities": list(Authority),
    "meals": list(Meal),
}
"""Sections that are a closed list, and its words."""

WHAT_PROGRAMMERS_SAY = re.compile(
    r"\b(string|array|null|bool|boolean|integer|floats?|object|dict|mapping|enum|tuple|regex|fields?)\b(?! booklet)",
    re.IGNORECASE,
)

SECTIONS = {section.id: section for section in format_sections()}
ROWS = [(section.id, row) for section in SECTIONS.values() for row in section.keys]
KEY_ROWS = [(id, row) for id, row in ROWS if id in MODELS]


def read(text: str) -> dict[str, Node]:
    """Read an example as a file is read."""
    found = read_yaml("example.yaml", text.encode())
    assert found.faults == ()
    assert found.value is not None
    return found.value


def scolded(schema: str, value: object) -> list[str]:
    """Give what an editor says against a file."""
    check = Draft202012Validator(json.loads(json_schemas(None)[schema]))
    return [error.message for error in check.iter_errors(value)]


def models(above: type[BookModel] = BookModel) -> Iterator[type[BookModel]]:
    """Give every model that the files of a book are read with."""
    for model in above.__subclasses__():
        if model.__module__.startswith("packlarder.book."):
            yield model
            yield from models(model)


def test_every_model_has_a_section() -> None:
    """No group of keys that a file may hold is missing from the page, and none is told of twice."""
    assert set(models()) - {Sentence} == set(MODELS.values())
    assert len(MODELS) == len(set(MODELS.values()))


def test_every_section_is_one_of_a_kind() -> None:
    """Every section is a file, a group of keys, a closed list or plain words, and each has title and introduction."""
    assert list(SECTIONS) == list(words.SECTIONS)
    assert set(SECTIONS) == {*MODELS, *CLOSED, "writing", "pages"}
    for section in SECTIONS.values():
        assert section.title
        assert section.says.endswith("."), section.id


@pytest.mark.parametrize("id", MODELS)
def test_keys_are_those_of_the_model(id: str) -> None:
    """A section has a row for each key of its model, in the model's order, and no other; so have its examples."""
    keys = [in_words(name) for name in MODELS[id].model_fields]
    assert [row.key for row in SECTIONS[id].keys] == keys
    assert list(key_examples(KEYS[id])) == keys


@pytest.mark.parametrize("id", MODELS)
def test_required_keys_are_marked(id: str) -> None:
    """What must be there is what the model asks for: an empty group of keys is told exactly these."""
    found = validate(cast("type[object]", MODELS[id]), "example.yaml", {})
    faults = found if isinstance(found, tuple) else ()
    told = {fault.place.path[-1] for fault in faults if fault.code == "missing-key" and fault.place.path}
    required = {row.key for row in SECTIONS[id].keys if row.required}
    assert told == required


@pytest.mark.parametrize("row", [pytest.param(row, id=f"{id}-{row.key}") for id, row in KEY_ROWS])
def test_every_key_is_told_in_full(row: KeyRow) -> None:
    """Each key says what it takes, what it is for, in a sentence, and shows an example of itself."""
    assert row.takes
    assert re.fullmatch(r"[A-Z].+\.", row.says), row.says
    assert row.example.startswith(f"{row.key}:")


@pytest.mark.parametrize(("id", "row"), [pytest.param(*one, id=f"{one[0]}-{one[1].key}") for one in KEY_ROWS])
def test_every_example_of_a_key_is_read(id: str, row: KeyRow) -> None:
    """The real validator takes what the example of a key holds."""
    [name] = [name for name in MODELS[id].model_fields if in_words(name) == row.key]
    hint = get_type_hints(MODELS[id], include_extras=True)[name]
    [value] = read(row.example).values()
    made = validate(cast("type[object]", hint), "example.yaml", value)
    assert not (isinstance(made, tuple) and any(type(one).__name__ == "Fault" for one in made)), made


@pytest.mark.parametrize("id", FILES)
def test_whole_files_are_read(id: str) -> None:
    """The example of a file is one: the reader takes it, and so does its schema."""
    model, schema = FILES[id]
    value = read(WHOLE[id])
    made = validate(model, "example.yaml", value)
    assert isinstance(made, model), made
    assert scolded(schema, value) == []


@pytest.mark.parametrize("id", STAND_IN)
def test_nested_groups_are_read(id: str) -> None:
    """The example of a nested group of keys is read where it stands: in the example of its file."""
    model, schema = FILES[STAND_IN[id]]
    value = {**read(WHOLE[STAND_IN[id]]), **read(WHOLE[id])}
    made = validate(model, "example.yaml", value)
    assert isinstance(made, model), made
    assert scolded(schema, value) == []


def test_every_section_with_keys_has_a_whole_example() -> None:
    """Whoever reads of a group of keys sees one written out; and no example is left over."""
    assert {*FILES, *STAND_IN, "pages"} == set(WHOLE)
    assert {*MODELS} <= {*FILES, *STAND_IN}
    assert {id for id, section in SECTIONS.items() if section.example} == set(WHOLE)


def test_the_examples_make_a_sound_book(checkout: Path) -> None:
    """With the demo book's other components, the example files pass every sum and every rule without an error."""
    folder = checkout / "recipes"
    demo = {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*.yaml")}
    components = {name: data for name, data in demo.items() if name.startswith("components/")}
    foods = demo["foods.yaml"] + WHOLE["foods"].encode()
    book = read_book(
        {
            **components,
            "book.yaml": WHOLE["book"].encode(),
            "foods.yaml": foods,
            "components/beetroot-cubes.yaml": WHOLE["component"].encode(),
            "components/garden-apples.yaml": WHOLE["writing"].replace("Apple rings", "Garden apples").encode(),
            "dishes/beef-and-leek-noodles.yaml": WHOLE["dish"].encode(),
            "batches/2027-03-12-beetroot.yaml": WHOLE["run"].encode(),
            "draws/2027-04-01-skerries.yaml": WHOLE["draws"].encode(),
            "trips/over-the-ridge.yaml": WHOLE["trip"].encode(),
            "pages/how-we-pack.md": WHOLE["pages"].encode(),
        }
    )
    assert book.book
    assert book.faults == ()
    assert book.book.pages["how-we-pack"].startswith("# How we pack")
    checked = check_book(book.book, date(2027, 6, 1))
    assert [fault.message for fault in checked.faults if fault.severity is Severity.ERROR] == []
    assert checked.dishes["beef-and-leek-noodles"].usual.water.carry_ml > 0
    assert [meal.portions for meal in checked.trips["over-the-ridge"].sums.meals] == [2.8] * 3  # 1 + 1.2 + 0.6


@pytest.mark.parametrize("id", CLOSED)
def test_closed_lists_are_whole(id: str) -> None:
    """A section of closed words lists each of them once, in order, and says something of each."""
    rows = SECTIONS[id].keys
    assert [row.key for row in rows] == [str(word) for word in CLOSED[id]]
    for row in rows:
        assert re.fullmatch(r"[A-Z].+\.", row.says), row.says
        assert not row.required


@pytest.mark.parametrize("row", [pytest.param(row, id=row.key) for row in SECTIONS["amounts"].keys])
def test_amounts_are_read(row: KeyRow) -> None:
    """The example of each kind of amount is one, and so is a 2 before each of its units."""
    kind = Dimension(row.key)
    assert (row.takes == words.ANY_NOUN) == (kind is Dimension.COUNT)
    units = ["eggs"] if row.takes == words.ANY_NOUN else row.takes.split(", ")
    for text in (row.example, *(f"2 {unit}" for unit in units)):
        assert getattr(parse(text, kind), "dimension", None) is kind, text


def test_what_verbs_do_is_what_the_table_says() -> None:
    """Boiling cooks and boils off; pouring over wets and only warms; frying leaves dry what is dry."""
    does = {row.key: row.takes for row in SECTIONS["verbs"].keys}
    assert does["boil"] == "wets what goes into a pot that holds water; cooks; some of its water boils away"
    assert does["pour over"] == "wets right through; only warms; lid on unless you say off"
    assert does["fry"] == "leaves dry what is dry; cooks"


def test_no_programmers_words() -> None:
    """The page speaks to cooks: what programmers call a value stands nowhere on it, nor does a backtick."""
    texts = [text for row in SECTIONS.values() for text in (row.title, row.says)]
    texts += [text for _, row in ROWS for text in (row.takes, row.says)]
    assert len(texts) > 300
    assert [text for text in texts if WHAT_PROGRAMMERS_SAY.search(text) or "`" in text] == []
    assert WHAT_PROGRAMMERS_SAY.search("an array of them")


@pytest.mark.parametrize(
    ("hint", "text"),
    [
        (Text, "one line of text"),
        (Weight, "a weight like 60 g"),
        (Length | None, "a length like 13 cm or 1200 m"),
        (YesNo, "yes or no"),
        (WentIn, "one of: " + ", ".join(WentIn)),
        (WentIn | None, "one of: " + ", ".join(WentIn)),
        (Annotated[Whole, "whatever else"], "a whole number"),
        (dict[Text, Weight], "for each name, a weight like 60 g"),
        (tuple[Part, ...], "a list, see “Part”"),
        (Annotated[tuple[Part, ...], "whatever else"], "a list, see “Part”"),
        (Allergens, "an allergen, or several in [ ]; [] for none"),
        (FuelName, "a word of “Fuels”"),
        (Kind, "a word of “Kinds of food”"),
        (complex, ""),
    ],
)
def test_types_in_plain_words(hint: object, text: str) -> None:
    """What a key takes is told from its type alone; a type that nobody has words for is told with none."""
    assert takes(hint) == text


class Kettle(BookModel):
    """A model that nobody described."""

    holds: Weight
    bare: Text = "as bought"
    """what `it` is"""


def test_a_key_without_words_shows() -> None:
    """A field without a docstring or an example comes out as a row that the tests above refuse."""
    holds, bare = model_rows(Kettle, {"bare": "bare: yes"})
    assert (holds.says, holds.example, holds.required) == (".", "", True)
    assert bare == KeyRow(
        key="bare",
        takes="one line of text",
        required=False,
        says="What “it” is. Left out: as bought.",
        example="bare: yes",
    )


def test_examples_are_parted_by_key() -> None:
    """What stands beneath a key goes with it."""
    parted = {"a": "a: 1", "b": "b:\n  - 2\n  c: 3", "d e": "d e: 4"}
    assert dict(key_examples("a: 1\nb:\n  - 2\n  c: 3\nd e: 4\n")) == parted


def test_quotes() -> None:
    """What stands between backticks in a docstring stands in quotes on a page."""
    assert in_quotes("write `a: 1` or `b`") == "write “a: 1” or “b”"
