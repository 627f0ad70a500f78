"""batches/*.yaml: a drying run, and the batches that came of it."""

from typing import Annotated

from pydantic import Field, field_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.batch import Batch
from packlarder.book.days import Moment
from packlarder.book.fields import Text
from packlarder.book.limits import DryerHours
from packlarder.book.names import Texts


class DryingRun(BookModel):
    """One run of a dryer: when, how long, and what lay on its trays."""

    loaded: Moment
    """when it was loaded: `2027-03-12 08:30`, or the day alone"""
    dryer: Text
    """one of your dryers"""
    took: DryerHours | None = None
    """how long it took, in hours; left out, it is still running"""
    on_the_trays: Annotated[tuple[Batch, ...], Field(min_length=1)]
    """one entry for each component: what went in, what came out, where it was put"""
    notes: Texts = ()
    """anything worth knowing next time"""

    @field_validator("on_the_trays", mode="before")
    @classmethod
    def _something(cls, value: object) -> object:
        if value is None or value == []:
            help = "write an entry for each component: `- egg powder: {fresh: 900 g, trays: 2}`"
            raise slip("empty-value", "nothing lies on the trays", help)
        return value
