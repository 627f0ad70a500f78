"""components/*.yaml: a food in one form, as it is carried."""

from collections.abc import Iterable

from pydantic import Field, GetCoreSchemaHandler, field_validator, model_validator
from pydantic_core import CoreSchema

from packlarder.book.base import BookModel, slip
from packlarder.book.bring_back import BringBack
from packlarder.book.fields import Id, Text, Weight, YesNo
from packlarder.book.limits import DryWaterShare
from packlarder.book.names import Allergens, FoodName, Texts
from packlarder.book.pair import not_all_bare, pair_schema
from packlarder.faults import Spot
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Cooking, WentIn
from packlarder.measure import Dimension, Quantity, Unreadable, parse


def is_measure(text: str) -> bool:
    """Tell whether a text is a measure that something can weigh: `1 tbsp`, `2 eggs`, `portion`."""
    wordings = (parse(wording, (Dimension.VOLUME, Dimension.COUNT)) for wording in (text, f"1 {text}"))
    return any(not isinstance(one, Unreadable) for one in wordings)


def check_measures(key: str, weighed: Iterable[str]) -> None:
    """Raise slip(...) for the first of the words under a key that is no measure."""
    for measure in weighed:
        if not is_measure(measure):
            message = f'"{measure}" is no measure that can be weighed'
            help = "write a spoon, a cup or a piece, like `1 tbsp` or `1 portion`, and behind it what it weighs"
            raise slip("not-a-measure", message, help, at=(key, measure), spot=Spot.KEY)


class Yield(BookModel):
    """The household's own statement of what drying gives."""

    from_: Weight
    """weight as loaded into the dryer"""
    gives: Weight
    """weight when dry"""

    @model_validator(mode="after")
    def _gives_less(self) -> "Yield":
        if self.gives.base > self.from_.base:
            message = "this gives more dry than went in"
            raise slip("impossible-yield", message, "swap the two weights?", at=("gives",))
        return self


class Ingredient:
    """One thing that a meal or mix was made of, with its weight: a food, or another component."""

    __slots__ = ("name", "weight")

    def __init__(self, name: str, weight: Quantity) -> None:
        self.name = name
        self.weight = weight

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `food: weight`, one to a line."""
        return pair_schema(FoodName, Weight, handler, make=cls, example="100 g")


class Component(BookModel):
    """A food in one form, as it is carried."""

    name: Text
    """what you call it: the food and its form"""
    about: Text = ""
    """a few words about it"""
    was: FoodName | None = None
    """the food as it was loaded into the dryer, or as it is carried: a name of the food table or of foods.yaml"""
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
    """what it weighs fresh, as people count it: `1 egg: 50 g`"""
    weighs: dict[Text, Weight] = Field(default_factory=dict)
    """what a measure of yours weighs: `1 tbsp: 6.1 g`, `1 portion: 110 g`"""
    yields: Yield | None = None
    """what drying gave, if you weighed it: `{from: 1 kg, gives: 245 g}`"""
    dry_water: DryWaterShare | None = None
    """water left in it when dry, if you know it better than the table"""
    bring_back: BringBack | None = None
    """how it takes its water; left out for what is eaten or cooked as it is"""
    must_be_cooked: Cooking | None = None
    """only to raise it: what the food and its state ask for can not be lowered"""
    sachet: YesNo = False
    """whether an oxygen absorber or desiccant lies in its container"""
    carried_in: Text = ""
    """the tub or bottle of its own that it travels in; it then lies in no pack of a dish"""
    heat_step: YesNo = False
    """for air-dried raw meat: whether it was heated through before or after drying, as the rule asks"""
    to_dry: Texts = ()
    """how it is prepared and dried, step by step"""
    notes: Texts = ()
    """anything else worth knowing"""
    formerly: tuple[Id, ...] = ()
    """ids it had before, so that old labels still find it"""

    @field_validator("made_of", mode="before")
    @classmethod
    def _weights(cls, value: object) -> object:
        return not_all_bare(value, "100 g")

    @model_validator(mode="after")
    def _one_origin(self) -> "Component":
        if self.was is None and not self.made_of:
            help = "write `was: onion, raw`, or `made of:` with a line for each food and its weight"
            raise slip("one-origin", "it does not say what food this was", help)
        if self.was is not None and self.made_of:
            message = "a component is either one food (`was`) or made of several (`made of`)"
            help = "take one of the two out"
            raise slip("one-origin", message, help, at=("made of",), spot=Spot.KEY, also=(("was",),))
        if self.was is not None and self.dried is None:
            help = "write freeze-dried, air-dried, bought dry or not dried"
            raise slip("missing-key", "`dried` is missing", help, at=("dried",), spot=Spot.KEY)
        if self.dried in (Drying.FREEZE_DRIED, Drying.AIR_DRIED) and self.went_in is None:
            help = "write raw, blanched, cooked or as it is: how it was loaded"
            raise slip("missing-key", "`went in` is missing", help, at=("went in",), spot=Spot.KEY)
        return self

    @model_validator(mode="after")
    def _known_measures(self) -> "Component":
        for key, weighed in (("counts", self.counts), ("weighs", self.weighs)):
            check_measures(key, weighed)
        return self
