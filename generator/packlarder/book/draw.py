"""draws/*.yaml: what was taken from jars and pouches, opened, given away, thrown out, or counted."""

import re
from dataclasses import dataclass
from enum import StrEnum
from string import ascii_lowercase
from typing import Annotated, ClassVar

from pydantic import field_validator, model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.fields import Day, Text, Written, YesNo, quantity_of
from packlarder.faults import Spot
from packlarder.measure import Dimension, Quantity, Unreadable, parse


class Deed(StrEnum):
    """What can happen to a container."""

    TOOK = "took"
    GAVE_AWAY = "gave away"
    THREW_OUT = "threw out"
    OPENED = "opened"
    COUNTED = "counted"


@dataclass(frozen=True, slots=True, order=True)
class Mark:
    """What the label of a container bears: the id of its run, the letter of its batch, and its number there.

    Letters go by the entries of a run, numbers by the containers of an entry: a jar that is filled later, or an entry
    that is added at the end, changes no mark that stands on a label.
    """

    run: str
    batch: str
    number: int

    def __str__(self) -> str:
        return f"{self.run}/{self.in_run}"

    @property
    def in_run(self) -> str:
        """Give what stands after the stroke."""
        return f"{self.batch}{self.number}"


@dataclass(frozen=True, slots=True)
class Share:
    """A part of what a container holds; without a weight, all that is left."""

    weight: Quantity | None


LETTERS = ascii_lowercase
"""The letters of a run's batches, in the order of its entries."""
ALL = "all"
_MARK = re.compile(r"(?P<run>[a-z0-9-]+)/(?P<batch>[a-z])(?P<number>[1-9][0-9]{0,3})")
_weight = quantity_of(Dimension.WEIGHT, like="60 g")


def read_mark(text: str) -> Mark:
    """Read the mark of a container, in letters of any case and with blanks; raises slip(...) for what is none."""
    run, _, rest = text.lower().partition("/")
    found = _MARK.fullmatch(f"{'-'.join(run.split())}/{''.join(rest.split())}")
    if not found:
        message = f'"{text}" is not the mark of a container'
        raise slip("not-a-mark", message, "write it as its label has it, like 2027-03-12-egg/a2")
    return Mark(found["run"], found["batch"], int(found["number"]))


def read_share(text: str) -> Share:
    """Read a weight or `all`; raises slip(...) for what is neither."""
    if text.lower() == ALL:
        return Share(None)
    if isinstance(found := parse(text, Dimension.WEIGHT), Unreadable):
        raise slip("unreadable-quantity", found.message, f"{found.help}; for all that is left write `all`")
    weight = _weight.read(text)
    return Share(weight if isinstance(weight, Quantity) else None)


MarkField = Annotated[Mark, Written(read_mark, Mark, {"type": "string", "examples": ["2027-03-12-egg/a2"]})]
"""The mark of a container, as its label has it."""
ShareField = Annotated[Share, Written(read_share, Share, {"type": "string", "examples": ["60 g", ALL]})]
"""A weight, or `all`."""
CountedField = Annotated[Quantity, quantity_of(Dimension.WEIGHT, like="85 g", nought=True)]
"""What is still there; nought is an answer."""


class Draw(BookModel):
    """One thing that happened to one container."""

    from_: MarkField
    """which container, as its label has it: the run, a stroke, the letter of the batch and a number"""
    took: ShareField | None = None
    """what was taken to cook or to pack: a weight, or `all`"""
    gave_away: ShareField | None = None
    """what was given away"""
    threw_out: ShareField | None = None
    """what was thrown out"""
    opened: YesNo | None = None
    """whether it was opened, with nothing taken yet"""
    counted: CountedField | None = None
    """what is still in it, as weighed: it corrects what was forgotten"""
    why: Text = ""
    """why"""

    @model_validator(mode="after")
    def _one_deed(self) -> "Draw":
        named = [deed for deed in Deed if self._said(deed)]
        if not named:
            deeds = ", ".join(f"`{deed}`" for deed in Deed)
            raise slip("one-deed", "it does not say what happened to it", f"name one of {deeds}")
        if len(named) > 1:
            message = f"one thing is wanted here, this has {' and '.join(f'`{deed}`' for deed in named)}"
            raise slip("one-deed", message, "begin each on a line of its own with `- `", at=(named[1],), spot=Spot.KEY)
        return self

    def _said(self, deed: Deed) -> bool:
        return getattr(self, deed.replace(" ", "_")) not in (None, False)

    @property
    def deed(self) -> Deed:
        """Give what happened."""
        return next(deed for deed in Deed if self._said(deed))

    @property
    def share(self) -> Share | None:
        """Give what went; None where it was only opened or counted."""
        return self.took or self.gave_away or self.threw_out


class Draws(BookModel):
    """What was drawn on one day, and what for; a list of which no line counts yet draws nothing."""

    may_stand_empty: ClassVar[frozenset[str]] = frozenset({"drawn"})

    date: Day
    """the day"""
    for_: Text = ""
    """what for: a trip, a supper, a stocktake"""
    drawn: tuple[Draw, ...]
    """one line for each: `- {from: 2027-03-12-egg/a2, took: 60 g}`"""

    @field_validator("drawn", mode="before")
    @classmethod
    def _nothing_yet(cls, value: object) -> object:
        return () if value is None else value
