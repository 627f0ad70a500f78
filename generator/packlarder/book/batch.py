"""A batch: what one drying run gave of one component, from the shop to the jars."""

from enum import StrEnum
from typing import Annotated

from pydantic import BeforeValidator, Field, GetCoreSchemaHandler, WithJsonSchema, model_validator
from pydantic_core import CoreSchema

from packlarder.book.base import BookModel, slip
from packlarder.book.component import check_measures
from packlarder.book.draw import MarkField
from packlarder.book.fields import Day, Text, Weight, WeightOrCount, Whole, YesNo
from packlarder.book.limits import RunWeight, StoredWeight, TrayDepth
from packlarder.book.names import Allergens, ComponentName, Texts, as_list
from packlarder.book.pair import pair_schema
from packlarder.book.treatment import TreatedField
from packlarder.faults import Spot


class DrynessTest(StrEnum):
    """How the household finds out that something is dry; arithmetic can not."""

    NO_LIGHTER = "no lighter"
    """Dried two hours more and weighed again: it had lost nothing."""
    SNAPS_COLD = "snaps cold"
    """Cooled down, it snapped or crumbled."""


class Sachet(StrEnum):
    """What lies in a container beside the food, and comes out before water goes in."""

    OXYGEN_ABSORBER = "oxygen absorber"
    DESICCANT = "desiccant"


def _one_or_many(word: dict[str, object]) -> WithJsonSchema:
    return WithJsonSchema({"anyOf": [word, {"type": "array", "items": word}]})


Treatments = Annotated[
    tuple[TreatedField, ...],
    BeforeValidator(as_list),
    _one_or_many({"type": "string", "examples": ["blanched", "heated to 74 °C"]}),
]
"""One treatment, or several in brackets."""
Tests = Annotated[
    tuple[DrynessTest, ...], BeforeValidator(as_list), _one_or_many({"type": "string", "enum": list(DrynessTest)})
]
"""One test of dryness, or several in brackets."""


class Filled(BookModel):
    """A container that was filled from a batch."""

    in_: Text
    """one of your sizes of jar, pouch or bag"""
    holds: StoredWeight
    """the dry weight in it"""
    vacuum: YesNo = False
    """whether the air was drawn out"""
    sachet: Sachet | None = None
    """oxygen absorber or desiccant, if one lies in it"""
    stands: Text = ""
    """where it stands: one of your stores, or any words"""
    from_: MarkField | None = None
    """the earlier container of its batch that it was filled from, later: then it keeps as an opened one does"""
    on: Day | None = None
    """the day on which it was filled from that container"""

    @model_validator(mode="after")
    def _from_and_on(self) -> "Filled":
        if (self.from_ is None) != (self.on is None):
            there, missing = ("from", "on") if self.on is None else ("on", "from")
            help = "what was filled from another container says both: `from: 2027-03-12-egg/a1, on: 2027-05-01`"
            raise slip("missing-key", f"`{there}` stands here without `{missing}`", help, at=(there,), spot=Spot.KEY)
        return self


class BatchDetail(BookModel):
    """What is known of one component in a run."""

    bought: WeightOrCount | None = None
    """as it was bought: a weight, or a count such as `18 eggs`"""
    trimmed: Weight | None = None
    """peeled, boned, cut: before it was cooked"""
    cooked: Weight | None = None
    """cooked and drained, as it came from the pot or oven"""
    fresh: WeightOrCount | None = None
    """as it was loaded, all trays together: a weight, or a count such as `18 eggs`"""
    treated: Treatments = ()
    """what was done to it: `blanched`, `acid dip`, `heated to 74 °C`, `frozen first`"""
    trays: Whole | None = None
    """on how many trays it lay"""
    deep: TrayDepth | None = None
    """how deep it lay"""
    dry: RunWeight | None = None
    """as it came out, all trays together, or as it was mixed; left out, it still lies in the dryer"""
    tested: Tests = ()
    """how you found that it is dry: `no lighter` (two hours more, weighed again), `snaps cold`"""
    best_before: Day | None = None
    """for what was bought dry, the day on its pack; for a mix, the earliest day of what went into it"""
    weighs: dict[Text, Weight] = Field(default_factory=dict)
    """what a measure of this batch weighs: `1 cup: 62 g`"""
    put_in: tuple[Filled, ...] = ()
    """the jars, pouches and bags it was put in; add later ones at the end of their batch, for labels count them"""
    traces: Allergens = ()
    """allergens it may have picked up: trays, knives or boards that were shared"""
    thrown_out: Text = ""
    """why nothing of it was kept: it stays in the book, and counts for nothing"""
    notes: Texts = ()
    """anything worth knowing next time"""

    @model_validator(mode="after")
    def _known_measures(self) -> "BatchDetail":
        check_measures("weighs", self.weighs)
        return self

    @model_validator(mode="after")
    def _fills_what_was_kept(self) -> "BatchDetail":
        if self.thrown_out and self.put_in:
            message = "it was thrown out, and yet jars are filled"
            help = "take `put in` away, or leave `thrown out` out: what is thrown out of one jar is a draw"
            raise slip("thrown-out-in-jars", message, help, at=("put in",), spot=Spot.KEY)
        if self.dry is None and self.put_in:
            message = "it does not say how much came out, and yet jars are filled"
            raise slip("no-dry-weight", message, "write `dry: 221 g`, as weighed", at=("put in",))
        return self


class Batch:
    """One component in a run; `name` is as the author wrote it."""

    __slots__ = ("detail", "name")

    def __init__(self, name: str, detail: BatchDetail) -> None:
        self.name = name
        self.detail = detail

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `component: {...}`, one to an item."""
        return pair_schema(ComponentName, BatchDetail, handler, make=cls, example="{fresh: 900 g, trays: 2}")
