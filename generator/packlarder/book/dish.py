"""dishes/*.yaml: a recipe in terms of dried components."""

from enum import StrEnum
from typing import Annotated, TypeAlias

from pydantic import Discriminator, Field, Tag, ValidationInfo, field_validator, model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.fields import Day, Id, Prose, Text, YesNo
from packlarder.book.limits import Servings
from packlarder.book.names import Texts
from packlarder.book.pair import not_all_bare
from packlarder.book.part import Part
from packlarder.book.step import Sentence, Step


class Meal(StrEnum):
    """What a dish is eaten as."""

    BREAKFAST = "breakfast"
    LUNCH = "lunch"
    SUPPER = "supper"
    SWEET = "sweet"
    SNACK = "snack"
    BREAD = "bread"
    DRINK = "drink"


def _item_shape(value: object) -> str:
    return "name" if isinstance(value, str) else "inner"


PackItem: TypeAlias = Annotated[
    Annotated[Text, Tag("name")] | Annotated[tuple[Text, ...], Field(min_length=1), Tag("inner")],
    Discriminator(_item_shape),
]
"""A part by name, or the parts of a pack inside the pack, in brackets."""


class Pack(BookModel):
    """A pack: the parts that travel together; packs are listed in the order in which they are opened."""

    holds: Annotated[tuple[PackItem, ...], Field(min_length=1)]
    """the parts in it; a pack inside it stands in brackets of its own"""
    called: Text = ""
    """what is written on it"""
    sachet: YesNo = False
    """whether an oxygen absorber or desiccant travels in it"""

    @model_validator(mode="before")
    @classmethod
    def _list_alone(cls, value: object) -> object:
        if isinstance(value, str):
            raise slip("pack-in-brackets", "the parts of a pack stand in brackets", f"write `- [{value}]`")
        if value == []:
            raise slip("empty-pack", "this pack holds nothing", "write the parts in it, or leave it out")
        return {"holds": value} if isinstance(value, list) else value


def _step_shape(value: object) -> str:
    return "sentence" if isinstance(value, str | Sentence) else "step"


StepField: TypeAlias = Annotated[
    Annotated[Sentence, Tag("sentence")] | Annotated[Step, Tag("step")], Discriminator(_step_shape)
]
"""A plain sentence, or a verb with its parts."""


class Lesson(BookModel):
    """What was learnt by cooking it."""

    date: Day
    """the day it was learnt"""
    change: Text
    """what was changed"""
    why: Text = ""
    """why"""


class Dish(BookModel):
    """A recipe: its parts, their packs, and the steps at camp."""

    name: Text
    """what it is called"""
    about: Text = ""
    """a few words under its name"""
    meal: Meal
    """breakfast, lunch, supper, sweet, snack, bread or drink"""
    serves: Servings
    """for how many its amounts are written"""
    parts: Annotated[tuple[Part, ...], Field(min_length=1)]
    """one line for each component: `beef crumbles: 60 g`"""
    packs: tuple[Pack, ...] = ()
    """what travels together; left out, worked out from parts and steps"""
    steps: Annotated[tuple[StepField, ...], Field(min_length=1)]
    """what to do at camp: a verb with its parts, or a plain sentence"""
    stove: Text = ""
    """which stove, if not the usual one"""
    pot: Text = ""
    """which pot or pan, if not the usual one"""
    tried: Texts = ()
    """where and when it was cooked: `at home, 2027-03-12`"""
    learnt: tuple[Lesson, ...] = ()
    """what was learnt, newest first"""
    notes: Prose = ()
    """anything else worth knowing"""
    photo: Text = ""
    """a picture of yours in photos/"""
    formerly: tuple[Id, ...] = ()
    """ids it had before"""

    @field_validator("parts", "steps", mode="before")
    @classmethod
    def _something(cls, value: object, info: ValidationInfo) -> object:
        if value is None or value == []:
            line = "- leek rings: 60 g" if info.field_name == "parts" else "- boil: noodles"
            raise slip("empty-value", "nothing stands here", f"write at least one line, like `{line}`")
        return value

    @field_validator("parts", mode="before")
    @classmethod
    def _amounts(cls, value: object) -> object:
        return not_all_bare(value, "60 g")
