"""Where in a file, and at which model's keys, a complaint of pydantic's belongs.

pydantic's own `loc` mixes the keys of the file with names of its alternatives; the schema tells them apart.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, TypeAlias

from packlarder.faults import Key, KeyPath, Spot

Schema: TypeAlias = Mapping[str, Any]  # Any: a core schema is a union of fifty kinds of mapping

KEY_OF_MAPPING = "[key]"
"""How pydantic marks that a key, not its value, is wrong."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """A place where a value may be one of several things, and which of them a complaint is about."""

    path: KeyPath
    choice: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Trail:
    """The keys that lead to a value, the turns taken on the way, and the keys that the mapping there knows."""

    path: KeyPath
    spot: Spot
    turns: tuple[Turn, ...]
    known_keys: tuple[str, ...]
    """of the mapping that the last key stands in"""
    inner_keys: tuple[str, ...]
    """of the mapping that is wanted as the value itself; empty if none is"""
    may_be_left_out: bool
    """whether the last key may be missing"""


def follow(schema: Schema, loc: tuple[Key, ...]) -> Trail:
    """Walk along `loc` through a schema."""
    walk = _Walk(schema)
    for step in loc:
        walk.take(step)
    return Trail(
        path=tuple(walk.path),
        spot=walk.spot,
        turns=tuple(walk.turns),
        known_keys=walk.known_keys,
        inner_keys=tuple(_fields(walk.inner())),
        may_be_left_out=walk.may_be_left_out,
    )


class _Walk:
    def __init__(self, schema: Schema) -> None:
        self.definitions: dict[str, Schema] = {}
        self.schema: Schema = schema
        self.path: list[Key] = []
        self.turns: list[Turn] = []
        self.spot = Spot.VALUE
        self.known_keys: tuple[str, ...] = ()
        self.may_be_left_out = True

    def take(self, step: Key) -> None:
        """Go one step further in."""
        schema = self.inner()
        kind = schema.get("type")
        if kind in ("union", "tagged-union"):
            self.turns.append(Turn(path=tuple(self.path), choice=str(step)))
            self.schema = _choice(schema, str(step), self)
        elif step == KEY_OF_MAPPING:
            self.spot = Spot.KEY
        elif kind is not None and kind in INSIDE:
            self.path.append(step)
            self.known_keys = tuple(_fields(schema))
            self.schema = INSIDE[kind](schema, step)
            self.may_be_left_out = kind != "model-fields" or self.schema.get("type") == "default"
        else:
            self.schema = {}

    def inner(self) -> Schema:
        """Take off what wraps the schema that stands here: defaults, functions, references."""
        return self.bare(self.schema)

    def bare(self, schema: Schema, *, to_model: bool = False) -> Schema:
        """Take off what wraps a schema; with `to_model`, no further than to a model."""
        while not (to_model and schema.get("type") == "model"):
            kind = schema.get("type")
            if kind == "definitions":
                self.definitions.update({one["ref"]: one for one in schema["definitions"]})
            if kind == "definition-ref":
                schema = self.definitions.get(schema["schema_ref"], {})
            elif kind in WRAPPERS and "schema" in schema:
                schema = schema["schema"]
            else:
                break
        return schema


WRAPPERS = frozenset(
    ("definitions", "model", "default", "nullable", "function-before", "function-after", "function-wrap")
)
"""Kinds of schema that add something to one inside and no step to a `loc`."""


def _fields(schema: Schema) -> dict[str, Schema]:
    """Give the keys of a mapping with fixed keys, as they stand in a file."""
    if schema.get("type") != "model-fields":
        return {}
    return {field.get("validation_alias", name): field["schema"] for name, field in schema["fields"].items()}


def _item(schema: Schema, step: Key) -> Schema:
    items = schema.get("items_schema") or {}
    if isinstance(items, list):
        return items[min(int(step), len(items) - 1)] if items and isinstance(step, int) else {}
    return items


INSIDE: Mapping[str, Callable[[Schema, Key], Schema]] = {
    "model-fields": lambda schema, step: _fields(schema).get(str(step), {}),
    "dict": lambda schema, _step: schema.get("values_schema") or {},
    "list": _item,
    "tuple": _item,
    "set": _item,
    "frozenset": _item,
}
"""For each kind of value that holds others, how to find the schema of what it holds."""


def _choice(schema: Schema, name: str, walk: _Walk) -> Schema:
    """Find the alternative that pydantic calls by this name; an empty schema where that can not be told."""
    choices = schema["choices"]
    if isinstance(choices, dict):
        return _schema(choices.get(name))
    pairs = (choice if isinstance(choice, tuple) else (choice, "") for choice in choices)
    return _schema(
        next((one for one, label in pairs if label == name or _called(walk.bare(one, to_model=True), name)), None)
    )


def _schema(found: Schema | None) -> Schema:
    return found or {}


def _called(schema: Schema, name: str) -> bool:
    """Tell whether pydantic's name for an alternative, like `function-after[check(), Pot]`, is about this schema."""
    own = schema["cls"].__name__ if schema.get("type") == "model" else schema.get("type", "")
    return re.search(rf"\b{re.escape(own)}\b", name) is not None
