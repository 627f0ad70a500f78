"""What several foods a meal or a mix is made of, in grams: to buy, and to mix."""

from collections.abc import Collection, Iterator

from packlarder.book.component import Ingredient
from packlarder.measure import UP, kitchen_grams
from packlarder.reckon.dish import printed_g
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.pantry import Pantry

Foods = tuple[tuple[str, float], ...]
"""Names as the book calls them, each with its grams."""
A_PINCH_G = 0.1
"""The least that is weighed of a food for a mix."""


def foods_of_a_meal(component: ComponentSums, bought_g: float) -> Foods:
    """Give what is bought for so much of a meal that is dried whole, each food rounded up as a kitchen weighs."""
    return tuple(_rounded_up(component, bought_g, component.model.made_of))


def foods_of_a_mix(component: ComponentSums, mixed_g: float, pantry: Pantry) -> Foods:
    """Give what is bought for so much of a mix: its foods that are no components, for those are provided for apart."""
    return tuple(_rounded_up(component, mixed_g, [one for one in component.model.made_of if _is_food(one, pantry)]))


def into_a_mix(component: ComponentSums, mixed_g: float, pantry: Pantry) -> Foods:
    """Give what goes into so much of a mix: components as they are filled for it, foods to a tenth of a gram.

    What is filled from jars is rounded as packs are, so that all together may weigh a little more or less than the mix.
    """
    made_of = component.model.made_of
    whole_g = sum(one.weight.base for one in made_of)
    exact_g = [(one, mixed_g * one.weight.base / whole_g) for one in made_of]
    return tuple([(one.name, _pinched(grams) if _is_food(one, pantry) else printed_g(grams)) for one, grams in exact_g])


def _pinched(grams: float) -> float:
    """Round to a tenth of a gram, and never to nothing."""
    return max(A_PINCH_G, round(grams, 1))


def _rounded_up(
    component: ComponentSums, grams: float, ingredients: Collection[Ingredient]
) -> Iterator[tuple[str, float]]:
    whole_g = sum(one.weight.base for one in component.model.made_of)
    for one in ingredients:
        yield one.name, kitchen_grams(grams * one.weight.base / whole_g, UP)


def _is_food(one: Ingredient, pantry: Pantry) -> bool:
    return pantry.book.component_id(one.name) is None
