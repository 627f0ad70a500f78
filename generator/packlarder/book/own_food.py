"""foods.yaml: the household's own foods, and packets bought with a label, which the food table lacks."""

from pydantic import Field, RootModel

from packlarder.book.base import BookModel
from packlarder.book.fields import Energy, Id, Nutrient, Share, Text, Weight
from packlarder.book.names import Allergens
from packlarder.figures.kinds import Kind, State


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
    water: Share
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


class OwnFoods(RootModel[dict[Id, OwnFood]]):
    """The foods of foods.yaml by id."""
