"""batches/*.yaml: a drying run, and the batches that came of it."""

from typing import Annotated

from pydantic import Field, field_validator, model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.batch import Batch
from packlarder.book.days import Moment
from packlarder.book.draw import LETTERS
from packlarder.book.fields import Text
from packlarder.book.limits import DryerHours
from packlarder.book.names import Texts
from packlarder.faults import Spot


class DryingRun(BookModel):
    """One run of a dryer: when, how long, and what lay on its trays; or a mix that was made without a dryer."""

    loaded: Moment
    """when it was loaded, or mixed: `2027-03-12 08:30`, or the day alone"""
    dryer: Text = ""
    """one of your dryers; left out for what was only mixed, or bought dry and put into jars"""
    took: DryerHours | None = None
    """how long it took, in hours; left out, it is still running"""
    on_the_trays: Annotated[tuple[Batch, ...], Field(min_length=1, max_length=len(LETTERS))]
    """one entry for each component: what went in, what came out, where it was put; add later ones at the end"""
    notes: Texts = ()
    """anything worth knowing next time"""

    @model_validator(mode="after")
    def _loaded_with_something(self) -> "DryingRun":
        for index, batch in enumerate(self.on_the_trays):
            needed = (
                ("fresh", batch.detail.fresh, "how much of it was loaded"),
                ("trays", batch.detail.trays, "on how many it lay"),
            )
            for key, value, what in needed:
                if self.dryer and value is None:
                    message = f"`{key}` is missing: {what}"
                    help = "write `fresh: 900 g` and `trays: 2`; or leave `dryer` out if nothing was dried"
                    raise slip("missing-key", message, help, at=("on the trays", index, batch.name), spot=Spot.KEY)
        return self

    @field_validator("on_the_trays", mode="before")
    @classmethod
    def _something(cls, value: object) -> object:
        if value is None or value == []:
            help = "write an entry for each component: `- egg powder: {fresh: 900 g, trays: 2}`"
            raise slip("empty-value", "nothing lies on the trays", help)
        if isinstance(value, list) and len(value) > len(LETTERS):
            message = f"{len(value)} entries stand here, and there are letters for {len(LETTERS)} on labels"
            raise slip("too-many", message, "write the rest into a run of its own", spot=Spot.KEY)
        return value
