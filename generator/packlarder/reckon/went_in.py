"""Two statements that clash: a food that is raw or dry by the table, and a component that says it went in cooked."""

from collections.abc import Iterable
from difflib import SequenceMatcher

from packlarder.book.book import Book, component_place
from packlarder.book.component import Component
from packlarder.faults import Fault
from packlarder.figures.foods import FOODS, Food
from packlarder.figures.kinds import Cooking, State, WentIn
from packlarder.reckon.foods import food_of

_OFFERED = 2
_DONE = frozenset({State.COOKED, State.READY})


def cooked_in_words_only(book: Book, id: str) -> Fault | None:
    """Find a component of one food that must be cooked to be safe, was not, and is said to have gone in cooked.

    A whole meal lists its foods as they went into its pot, and so may list raw ones. What is merely hard or starchy
    uncooked, and what needs no cooking, may be told in short: nobody falls ill of it.
    """
    component = book.components[id]
    key, name = _only_food(component)
    food = food_of(book, name) if name else None
    if food is None or component.went_in is not WentIn.COOKED:
        return None
    if food.state in _DONE or food.kind.rules.uncooked is not Cooking.TO_BE_SAFE:
        return None
    place = component_place(id)
    return Fault(
        place=place.at("went in"),
        code="cooked-in-words-only",
        message=f"`went in: cooked`, but `{key}` names a food that was not: {food.name}",
        help=f"{_instead(key, food, book)}; if it was loaded uncooked, write `went in: raw`",
        also=(place.at(key),),
    )


def _only_food(component: Component) -> tuple[str, str]:
    """Give the key under which a component names the one food it is of, and the food; "" where it is of several."""
    if component.was is not None:
        return "was", component.was
    return "made of", component.made_of[0].name if len(component.made_of) == 1 else ""


def _instead(key: str, food: Food, book: Book) -> str:
    own = (found for one in book.foods if (found := food_of(book, one)) is not None)
    names = closest_cooked(food, (*FOODS.values(), *own))
    if not names:
        return "describe the cooked food in foods.yaml, with `state: cooked`, and name that"
    meant = " or ".join(f'"{name}"' for name in names)
    return f"under `{key}` name the food as it was loaded: {meant}"


def closest_cooked(food: Food, foods: Iterable[Food]) -> tuple[str, ...]:
    """Give the names of at most two cooked foods of its kind, most alike first; its own cooked forms, if it has any."""
    cooked = {one.name for one in foods if one.kind is food.kind and one.state is State.COOKED}
    same = {name for name in cooked if _first_word(name) == _first_word(food.name)}
    return tuple(sorted(same or cooked, key=lambda name: (-_alike(name, food.name), name))[:_OFFERED])


def _first_word(name: str) -> str:
    return name.replace(",", " ").split()[0]


def _alike(one: str, other: str) -> float:
    """Tell how alike two names are: by the words they share, then by their letters."""
    shared = len(set(one.replace(",", "").split()) & set(other.replace(",", "").split()))
    return shared + SequenceMatcher(None, one, other).ratio()
