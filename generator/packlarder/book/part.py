"""A part of a dish: one component with its amount."""

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated

from pydantic import GetCoreSchemaHandler, model_validator
from pydantic_core import CoreSchema

from packlarder.book.base import BookModel, slip
from packlarder.book.fields import Amount, Text, Written, YesNo
from packlarder.book.names import ComponentName, ComponentNames
from packlarder.book.pair import pair_schema
from packlarder.measure import Dimension, Quantity, Unreadable, parse, written


@dataclass(frozen=True, slots=True)
class Take:
    """How much is taken: a quantity, of the fresh food or of the dry component, in all or for each."""

    quantity: Quantity
    fresh: bool = False
    each: bool = False

    def __str__(self) -> str:
        """Write it as a dish does: `worth 150 g fresh each`."""
        amount = f"worth {written(self.quantity)} fresh" if self.fresh else written(self.quantity)
        return f"{amount} each" if self.each else amount


_TAKE = re.compile(r"(?P<worth>worth\s+)?(?P<amount>.+?)(?P<fresh>\s+fresh)?(?P<each>\s+each)?(?P<late>\s+fresh)?")


@lru_cache(maxsize=4096)
def read_take(text: str) -> Take:
    """Read `60 g`, `worth 150 g fresh`, `75 g each`; raises slip(...) for what is none of them."""
    found = _TAKE.fullmatch(text)
    quantity = parse(found["amount"], (Dimension.WEIGHT, Dimension.VOLUME, Dimension.COUNT)) if found else None
    if quantity is None or found is None:
        raise slip("unreadable-quantity", f'"{text}" is not an amount', "write it like `60 g` or `worth 150 g fresh`")
    if isinstance(quantity, Unreadable):
        raise slip("unreadable-quantity", quantity.message, quantity.help)
    if quantity.number <= 0:
        raise slip("nothing-taken", f'"{text}" takes nothing', "leave the part out, or write how much")
    return Take(quantity, bool(found["worth"] or found["fresh"] or found["late"]), bool(found["each"]))


TakeField = Annotated[Take, Written(read_take, Take, {"type": "string", "examples": ["60 g", "worth 150 g fresh"]})]


class PartDetail(BookModel):
    """A part's amount and what else there is to say of it: `{take: 30 mL, stays in: 15 mL}`."""

    take: TakeField
    """how much: `60 g`, `worth 150 g fresh`, `75 g each`, `4 eggs`"""
    stays_in: Amount | None = None
    """of oil and the like: how much of it is eaten"""
    fixed: YesNo = False
    """whether it stays the same for any number of servings"""
    instead: ComponentNames = ()
    """other forms that will do, taken by what they stand for fresh"""
    called: Text = ""
    """a name of its own, when one component comes twice"""

    @model_validator(mode="before")
    @classmethod
    def _amount_alone(cls, value: object) -> object:
        if isinstance(value, list):
            help = "write it like `60 g` or `worth 150 g fresh`"
            raise slip("no-amount", "an amount is wanted here, not a list", help)
        return {"take": value} if isinstance(value, str) else value

    @model_validator(mode="after")
    def _stays_in_dry(self) -> "PartDetail":
        if self.take.fresh and self.stays_in is not None:
            message = "`stays in` goes with an amount as it is carried, not with one worth fresh"
            raise slip("stays-in", message, "write in `take` how much is carried", at=("stays in",))
        return self


class Part:
    """One component of a dish with its amount; `name` is as the author wrote it."""

    __slots__ = ("detail", "name")

    def __init__(self, name: str, detail: PartDetail) -> None:
        self.name = name
        self.detail = detail

    @property
    def called(self) -> str:
        """Give the name by which steps and packs speak of it."""
        return self.detail.called or self.name

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `component: amount`, one to a line."""
        return pair_schema(ComponentName, PartDetail, handler, make=cls, example="60 g", alone="take")
