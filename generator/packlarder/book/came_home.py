"""What is told of a trip that came home: when, and what was not eaten."""

from pydantic import GetCoreSchemaHandler, model_validator
from pydantic_core import CoreSchema

from packlarder.book.base import BookModel
from packlarder.book.fields import Day, Text
from packlarder.book.limits import StoredWeight
from packlarder.book.names import ComponentName
from packlarder.book.pair import pair_schema


class LeftDetail(BookModel):
    """How much of something came home, and why."""

    weight: StoredWeight
    """what came home of it, weighed"""
    why: Text = ""
    """why nobody ate it"""

    @model_validator(mode="before")
    @classmethod
    def _weight_alone(cls, value: object) -> object:
        return {"weight": value} if isinstance(value, str) else value


class Left:
    """A component of which some came home; `name` is as the author wrote it."""

    __slots__ = ("detail", "name")

    def __init__(self, name: str, detail: LeftDetail) -> None:
        self.name = name
        self.detail = detail

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `component: weight`, one to a line."""
        return pair_schema(ComponentName, LeftDetail, handler, make=cls, example="40 g", alone="weight")


class CameHome(BookModel):
    """The end of a trip. What came home is not put back into a jar: it lay open in a trip pack."""

    date: Day
    """the day of coming home"""
    left: tuple[Left, ...] = ()
    """what came home uneaten: `- beef crumbles: {weight: 40 g, why: too much}`"""
