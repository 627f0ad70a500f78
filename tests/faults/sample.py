"""A small model with every kind of value, for the faults that a file can have."""

from enum import StrEnum
from typing import Annotated

from pydantic import BeforeValidator, Field, model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.fields import (
    Amount,
    Day,
    Degrees,
    Id,
    Minutes,
    Prose,
    Share,
    Text,
    Volume,
    Weight,
    Whole,
    YesNo,
    whole_between,
)


class Form(StrEnum):
    """A closed list of words."""

    RINGS = "rings"
    FLAKES = "flakes"
    POWDER = "powder"


def _as_list(value: object) -> object:
    return [value] if isinstance(value, str) else value


class Soak(BookModel):
    """One alternative of a step."""

    soak: tuple[Text, ...]
    for_: Minutes | None = None


class Boil(BookModel):
    """Another alternative of a step."""

    boil: Text
    in_: Volume
    to: Degrees | None = None


class Loaded(BookModel):
    """A mapping in a mapping, with a rule of its own."""

    fresh: Weight
    dry: Weight

    @model_validator(mode="after")
    def _dry_is_lighter(self) -> "Loaded":
        if self.dry.base >= self.fresh.base:
            raise slip(
                "not-lighter",
                "it can not weigh more dry than fresh",
                "weigh again",
                at=("dry",),
                also=[("fresh",)],
            )
        return self


class Pack(BookModel):
    """A mapping that may be written as a list of what it holds."""

    holds: "tuple[Text | Pack, ...]"

    @model_validator(mode="before")
    @classmethod
    def _list_alone(cls, value: object) -> object:
        return {"holds": value} if isinstance(value, list) else value


class Jar(BookModel):
    """The file of these tests."""

    name: Text
    form: Form = Form.FLAKES
    went_in: Text | None = None
    contains: tuple[Text, ...]
    serves: Whole = 1
    shelf: Annotated[int, whole_between(1, 12)] = 1
    dried_on: Day | None = None
    sachet: YesNo = False
    water_left: Share | None = None
    weighs: dict[Text, Weight] = Field(default_factory=dict)
    loaded: Loaded | None = None
    parts: Annotated[tuple[dict[Text, Amount], ...], Field(min_length=1)] | None = None
    steps: tuple[Soak | Boil | Text, ...] = ()
    tried: Annotated[tuple[Text, ...], BeforeValidator(_as_list)] = ()
    formerly: tuple[Id, ...] = ()
    shelves: dict[Id, Text] = Field(default_factory=dict)
    packs: "tuple[Pack, ...]" = ()
    notes: Prose = ()
