"""foods.yaml: the household's own foods, and packets bought with a label, which the food table lacks."""

from pydantic import Field, RootModel, model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.fields import Energy, Id, Nutrient, Text, Weight
from packlarder.book.limits import WaterShare
from packlarder.book.names import Allergens
from packlarder.figures.kinds import Kind, State

MOST_G = 110
"""What may be in 100 g: each figure of a label is rounded, and some labels count fibre among carbohydrate."""


class OwnFood(BookModel):
    """A food of your own; its figures are for 100 g, as a label prints them."""

    name: Text
    """what it is called"""
    kind: Kind
    """the word for its rules: one of the kinds of food"""
    state: State
    """raw, cooked, ready, dry, dried or freeze-dried: the state its figures describe"""
    contains: Allergens = ()
    """the allergens it holds; `[]` says: none, we looked"""
    water: WaterShare
    """water in it, as a share of its weight"""
    energy: Energy
    """energy of 100 g"""
    protein: Nutrient | None = None
    """protein in 100 g"""
    fat: Nutrient | None = None
    """fat in 100 g"""
    carbohydrate: Nutrient | None = None
    """carbohydrate in 100 g"""
    fibre: Nutrient | None = None
    """fibre in 100 g"""
    sugars: Nutrient | None = None
    """sugars in 100 g"""
    sodium: Nutrient | None = None
    """sodium in 100 g (salt divided by 2.5)"""
    weighs: dict[Text, Weight] = Field(default_factory=dict)
    """what a measure of it weighs"""
    source: Text = "label"
    """where its figures come from"""

    @model_validator(mode="after")
    def _adds_up(self) -> "OwnFood":
        solids = sum(one.base for one in (self.protein, self.fat, self.carbohydrate, self.fibre) if one is not None)
        held_g = 100 * self.water.base + solids
        if held_g > MOST_G:
            message = f"water, protein, fat, carbohydrate and fibre of 100 g come to {held_g:.0f} g"
            raise slip("more-than-100-g", message, "figures are for 100 g, and water is a share of the weight")
        return self


class OwnFoods(RootModel[dict[Id, OwnFood]]):
    """The foods of foods.yaml by id."""
