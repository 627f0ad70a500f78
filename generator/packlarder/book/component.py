"""components/*.yaml: a food in one form, as it is carried."""

from typing import Annotated

from pydantic import Field, GetCoreSchemaHandler, model_validator
from pydantic_core import CoreSchema, core_schema

from packlarder.book.base import BookModel, slip
from packlarder.book.bring_back import BringBack
from packlarder.book.fields import Id, Share, Text, Weight, YesNo
from packlarder.book.names import Allergens, FoodName, Texts
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Cooking, WentIn
from packlarder.measure import Quantity


class Yield(BookModel):
    """The household's own statement of what drying gives."""

    from_: Weight
    """weight as loaded into the dryer"""
    gives: Weight
    """weight when dry"""


class Ingredient:
    """One thing that a meal or mix was made of, with its weight: a food, or another component."""

    __slots__ = ("name", "weight")

    def __init__(self, name: str, weight: Quantity) -> None:
        self.name = name
        self.weight = weight

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `food: weight`, one to a line."""
        inner = handler.generate_schema(Annotated[dict[FoodName, Weight], Field(min_length=1, max_length=1)])
        return core_schema.no_info_after_validator_function(cls._of, inner)

    @classmethod
    def _of(cls, entry: dict[str, Quantity]) -> "Ingredient":
        ((name, weight),) = entry.items()
        return cls(name, weight)


class Component(BookModel):
    """A food in one form, as it is carried."""

    name: Text
    """what you call it: the food and its form"""
    about: Text = ""
    """a few words about it"""
    was: FoodName | None = None
    """the food it was before drying, or is: one of the table or of foods.yaml"""
    made_of: tuple[Ingredient, ...] = ()
    """for a whole meal or a mix: what went into it, by weight"""
    went_in: WentIn | None = None
    """raw, blanched, cooked, or as it is (cheese, bread): how it was loaded into the dryer"""
    contains: Allergens
    """the allergens it holds; `[]` says: none, we looked"""
    may_contain: Allergens = ()
    """allergens it may hold traces of"""
    dried: Drying | None = None
    """how it was dried; a mix of dry components needs none"""
    form: Text
    """its form: powder, rings, crumbles, flakes"""
    counts: dict[Text, Weight] = Field(default_factory=dict)
    """how people count it fresh: `1 egg: 50 g`"""
    weighs: dict[Text, Weight] = Field(default_factory=dict)
    """what a measure of yours weighs: `1 tbsp: 6.1 g`, `1 portion: 110 g`"""
    yields: Yield | None = None
    """what drying gave, if you weighed it: `{from: 1 kg, gives: 245 g}`"""
    dry_water: Share | None = None
    """water left in it when dry, if you know it better than the table"""
    bring_back: BringBack | None = None
    """how it takes its water; left out for what is eaten or cooked as it is"""
    must_be_cooked: Cooking | None = None
    """only to raise it: what the food and its state ask for can not be lowered"""
    sachet: YesNo = False
    """whether an oxygen absorber or desiccant lies in its container"""
    carried_in: Text = ""
    """a tub or bottle of its own that it travels in, and is not packed by dish"""
    heat_step: YesNo = False
    """for air-dried raw meat: heated through before or after drying as the rule asks"""
    to_dry: Texts = ()
    """how it is prepared and dried, step by step"""
    notes: Texts = ()
    """anything else worth knowing"""
    formerly: tuple[Id, ...] = ()
    """ids it had before, so that old labels still find it"""

    @model_validator(mode="after")
    def _one_origin(self) -> "Component":
        if (self.was is None) == (not self.made_of):
            raise slip(
                "one-origin",
                "a component is either one food (`was`) or made of several (`made of`)",
                "write `was: onion, raw`, or `made of:` with a line for each food and its weight",
            )
        if self.was is not None and self.dried is None:
            raise slip("missing-key", "`dried` is missing", "write freeze-dried, air-dried, bought dry or not dried")
        if self.dried in (Drying.FREEZE_DRIED, Drying.AIR_DRIED) and self.went_in is None:
            raise slip("missing-key", "`went in` is missing", "write raw, blanched, cooked or as it is: how it was loaded")
        return self
