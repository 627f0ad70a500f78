"""JSON Schema of a book's files, made from the models, so that an editor completes and checks while people type.

An editor takes 7 for a number and yes for a text, where a book's own reader takes every value for text: what the
schema asks for is as wide as both. Where a book's own names belong, they are offered, and other texts are let through:
a name may be a former one, or in a file that is yet to be written.
"""

import json
import re
from collections.abc import Mapping
from enum import Enum
from functools import lru_cache
from types import MappingProxyType
from typing import TypeAlias

from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core import core_schema

from packlarder.book.base import BookModel, in_words
from packlarder.book.book import Book
from packlarder.book.bring_back import Way
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.docstrings import said_of_fields
from packlarder.book.draw import Draws
from packlarder.book.drying_run import DryingRun
from packlarder.book.household import Household
from packlarder.book.own_food import OwnFoods
from packlarder.book.step import Verb
from packlarder.book.trip import Trip
from packlarder.figures.allergens import ALLERGENS, Allergen, allergens_meant
from packlarder.figures.foods import FOODS
from packlarder.measure import Quantity, as_typed, written

SCHEMA_FOLDER = ".schema"
"""Where in a book's folder its schemas lie."""

DIALECT = "https://json-schema.org/draft/2020-12/schema"

FileModel: TypeAlias = Household | OwnFoods | Component | Dish | DryingRun | Draws | Trip
"""What a file of a book is read as."""
FILES: Mapping[str, tuple[type[FileModel], str]] = MappingProxyType(
    {
        "book.json": (Household, "book.yaml: the book and its kitchen"),
        "foods.json": (OwnFoods, "foods.yaml: foods of your own"),
        "component.json": (Component, "components/*.yaml: a component"),
        "dish.json": (Dish, "dishes/*.yaml: a dish"),
        "batch.json": (DryingRun, "batches/*.yaml: a drying run"),
        "draws.json": (Draws, "draws/*.yaml: what was drawn on one day"),
        "trip.json": (Trip, "trips/*.yaml: a trip"),
    }
)
"""The schemas by the names of their files: what each is made from, and its title."""

ALONE: Mapping[str, str] = MappingProxyType(
    {"PartDetail": "take", "Pack": "holds", "MealDetail": "dish", "WaterContainer": "holds", "LeftDetail": "weight"}
)
"""Models that may be written as the value of one of their keys alone: `60 g` for `{take: 60 g}`."""

ONE_OF: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"Step": tuple(Verb), "BringBack": tuple(Way), "Component": ("was", "made of")}
)
"""Keys of which exactly one must be there."""

NAMES: Mapping[tuple[str, str], tuple[str, ...]] = MappingProxyType(
    {
        ("Component", "made of"): ("food", "component"),
        ("Dish", "stove"): ("stove",),
        ("MealDetail", "pot"): ("pot",),
        ("MealDetail", "stove"): ("stove",),
        ("Dish", "pot"): ("pot",),
        ("DryingRun", "dryer"): ("dryer",),
        ("Filled", "in"): ("container",),
        ("Filled", "stands"): ("store",),
        ("Household", "booklet measure"): ("measure",),
        ("Pack", "holds"): ("component",),
        ("Step", "pot"): ("pot",),
        ("Trip", "drinks"): ("dish",),
        ("Trip", "pots"): ("pot",),
        ("Trip", "stoves"): ("stove",),
        ("UsualConditions", "stove"): ("stove",),
        ("UsualConditions", "pot"): ("pot",),
    }
)
"""Whose names belong at keys whose type does not say so itself by `x-names`."""

MARK = "x-names"
CHOICES = ("anyOf", "oneOf")

Names: TypeAlias = Mapping[str, tuple[str, ...]]
"""The names of a book, by what they are names of."""


def json_schemas(book: Book | None) -> Mapping[str, str]:
    """Give the JSON text of each schema by its file name; `book` is the one whose names are offered."""
    return _schemas_with(tuple(_names(book).items()))


@lru_cache(maxsize=1)
def _schemas_with(names: tuple[tuple[str, tuple[str, ...]], ...]) -> Mapping[str, str]:
    """Make the schemas that offer these names; nearly every edit of a book leaves them as they were."""
    offered = MappingProxyType(dict(names))
    return MappingProxyType(
        {file: json.dumps(_schema(file, offered), indent=2, ensure_ascii=False) + "\n" for file in FILES}
    )


def as_written(default: object) -> int | str | list[str] | None:
    """Give what stands where a file says nothing, as one would write it; None where that is nothing."""
    if isinstance(default, bool):
        return "yes" if default else "no"
    if isinstance(default, Quantity):
        return as_typed(written(default))
    if isinstance(default, Enum):
        return str(default.value)
    if isinstance(default, tuple) and default:
        return [str(one) for one in default]
    return default if isinstance(default, int | str) and default != "" else None


class _FileSchema(GenerateJsonSchema):
    """What pydantic says of our models, without what only Python has: titles of fields, and null for what is absent."""

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        return self.generate_inner(schema["schema"])

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        inner = self.generate_inner(schema["schema"])
        default = as_written(schema.get("default"))
        return inner if default is None else {**inner, "default": default}

    def model_schema(self, schema: core_schema.ModelSchema) -> JsonSchemaValue:
        made = super().model_schema(schema)
        model: type[BookModel] = schema["cls"]
        keys = made.get("properties", {})
        for name, text in said_of_fields(model).items():
            key = in_words(name)
            keys[key] = {**keys[key], "description": text}
        return made

    def field_title_should_be_set(self, schema: object) -> bool:  # noqa: ARG002 - the same for every field
        return False


def _names(book: Book | None) -> Names:
    foods = tuple(food.name for food in FOODS.values())
    if book is None:
        return MappingProxyType({"food": foods})
    own = {id: food.name for id, food in book.foods.items()}
    components = {id: component.name for id, component in book.components.items()}
    dishes = {id: dish.name for id, dish in book.dishes.items()}
    return MappingProxyType(
        {
            "food": (*own.values(), *own, *foods),
            "component": (*components.values(), *components),
            "dish": (*dishes.values(), *dishes),
            "stove": tuple(book.household.stoves),
            "pot": tuple(book.household.pots),
            "measure": tuple(book.household.measures),
            "dryer": tuple(book.household.dryers),
            "container": tuple(book.household.containers),
            "store": tuple(book.household.larder.stores),
        }
    )


def _schema(file: str, names: Names) -> JsonSchemaValue:
    model, title = FILES[file]
    made = model.model_json_schema(schema_generator=_FileSchema)
    definitions: JsonSchemaValue = made.pop("$defs")
    offer = _Offer(names)
    whole = offer.within(_shape(model.__name__, made))
    shaped = {name: offer.within(_shape(name, one)) for name, one in definitions.items()}
    return {"$schema": DIALECT, "title": title, **whole, "$defs": {**shaped, **offer.definitions}}


def _shape(model: str, schema: JsonSchemaValue) -> JsonSchemaValue:
    """Let a model be written as its validators let it be, and mark where names belong in it."""
    schema = {key: value for key, value in schema.items() if key != "title"}
    if "enum" in schema:
        return {key: value for key, value in schema.items() if key != "description"}  # the key's own says more
    if "properties" not in schema:
        return {**schema, "additionalProperties": False}  # foods by id: a key that is no id is none
    keys = schema["properties"]
    if model == "Sentence":
        return {**keys["sentence"], "description": schema["description"]}
    marked = {key: _marked(one, NAMES[model, key]) if (model, key) in NAMES else one for key, one in keys.items()}
    schema = {**schema, "properties": marked}
    if model in ONE_OF:
        schema["oneOf"] = [{"required": [key]} for key in ONE_OF[model]]
    if model in ALONE:
        alone = {key: value for key, value in marked[ALONE[model]].items() if key != "description"}
        return {"description": schema["description"], "anyOf": [alone, schema]}
    return schema


def _marked(schema: JsonSchemaValue, kinds: tuple[str, ...]) -> JsonSchemaValue:
    """Mark every text in a schema, or the keys of its mappings, as names of these kinds."""
    if schema.get("type") == "string":
        return {**schema, MARK: kinds}
    if "propertyNames" in schema:
        return {**schema, "propertyNames": {MARK: kinds}}
    choices = {key: [_marked(one, kinds) for one in schema[key]] for key in CHOICES if key in schema}
    inner = {"items": _marked(schema["items"], kinds)} if "items" in schema else {}
    return {**schema, **choices, **inner}


class _Offer:
    """Puts names where they are marked; each list of names stands once, among the definitions."""

    def __init__(self, names: Names) -> None:
        self.names = names
        self.definitions: JsonSchemaValue = {}

    def within(self, schema: JsonSchemaValue) -> JsonSchemaValue:
        """Go through a schema and all that is in it."""
        if MARK in schema:
            kept = {key: value for key, value in schema.items() if key in ("description", "default")}
            return {**self._texts(_kinds(schema)), **kept}
        if MARK in schema.get("propertyNames", {}):
            return self._keys(schema)
        if schema.get("items", {}).get(MARK) == "allergen":
            schema = {key: value for key, value in schema.items() if key != "minItems"}  # [] says: none, we looked
        return {key: self._inside(key, value) for key, value in _widened(schema).items()}

    def _inside(self, key: str, value: object) -> object:
        if key in ("properties", "patternProperties") and isinstance(value, dict):
            return {name: self.within(one) for name, one in value.items()}
        if key in CHOICES and isinstance(value, list):
            return [self.within(one) for one in value]
        return self.within(value) if isinstance(value, dict) else value

    def _texts(self, kinds: tuple[str, ...]) -> JsonSchemaValue:
        """Refer to the names of these kinds; any other text is let through, but for allergens."""
        offered = self._wanted(kinds)
        others: JsonSchemaValue = {"type": "string", "minLength": 1}
        if kinds in (("allergen",), ("avoided",)):
            pattern = _also_called(several=kinds == ("avoided",))
            offered, others = [one.value for one in Allergen], {"type": "string", "pattern": pattern}
        either = {"anyOf": [{"enum": offered}, others]} if offered else others
        return self._defined(f"{'-or-'.join(kinds)}-names", either)

    def _keys(self, schema: JsonSchemaValue) -> JsonSchemaValue:
        """Offer names as keys: editors complete keys from `properties`, whatever else they know."""
        rest = {key: value for key, value in schema.items() if key != "propertyNames"}
        kinds, value = _kinds(schema["propertyNames"]), self.within(schema["additionalProperties"])
        if "$ref" not in value:
            value = self._defined(f"of-one-{'-or-'.join(kinds)}", value)
        return {**rest, "additionalProperties": value, "properties": dict.fromkeys(self._wanted(kinds), value)}

    def _defined(self, name: str, schema: JsonSchemaValue) -> JsonSchemaValue:
        self.definitions[name] = schema
        return {"$ref": f"#/$defs/{name}"}

    def _wanted(self, kinds: tuple[str, ...]) -> list[str]:
        return list(dict.fromkeys(name for kind in kinds for name in self.names.get(kind, ())))


def _kinds(schema: JsonSchemaValue) -> tuple[str, ...]:
    """Give whose names a mark asks for; the models name one, our own table several."""
    mark: str | tuple[str, ...] = schema[MARK]
    return (mark,) if isinstance(mark, str) else mark


def _also_called(*, several: bool) -> str:
    """Give the pattern of the other words that mean one allergen, or `several` too; they are read, not offered."""
    words = {word for facts in ALLERGENS.values() for word in facts.also_called}
    others = {word for word in words if several or len(allergens_meant(word)) == 1}
    return f"^({'|'.join(map(re.escape, sorted(others)))})$"


def _widened(schema: JsonSchemaValue) -> JsonSchemaValue:
    """Let a text that looks like a number be one: a pack called 1, format 1."""
    if "enum" in schema:
        numbers = [int(word) for word in schema["enum"] if word.isdecimal()]
        rest = {key: value for key, value in schema.items() if key != "type" or not numbers}
        return {**rest, "enum": [*numbers, *schema["enum"]]}
    closed = any(key in schema for key in ("pattern", "format", "examples"))
    return {**schema, "type": ["string", "number"]} if schema.get("type") == "string" and not closed else schema
