"""A dish that lies among the components, or a component that lies among the dishes."""

from collections.abc import Mapping

from packlarder.book.base import in_words
from packlarder.book.book import COMPONENTS_FOLDER, DISHES_FOLDER
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.nodes import Node
from packlarder.faults import Fault, Place, Spot

CODE = "other-kind"
ENOUGH = 2
"""So many keys that only the other kind of file has tell it; one may be a slip."""

_COMPONENT_KEYS = frozenset(map(in_words, Component.model_fields))
_DISH_KEYS = frozenset(map(in_words, Dish.model_fields))
_OTHERS = {
    COMPONENTS_FOLDER: ("dish", DISHES_FOLDER, _DISH_KEYS - _COMPONENT_KEYS, _COMPONENT_KEYS - _DISH_KEYS),
    DISHES_FOLDER: ("component", COMPONENTS_FOLDER, _COMPONENT_KEYS - _DISH_KEYS, _DISH_KEYS - _COMPONENT_KEYS),
}
"""By folder: what else may lie there, where that lives, the keys that only it has, and those that it has not."""


def misplaced(file: str, value: Mapping[str, Node]) -> Fault | None:
    """Tell of a file that by its keys belongs into the other folder; it needs no other fault."""
    around, _, name = file.rpartition("/")
    if around not in _OTHERS:
        return None
    kind, folder, theirs, ours = _OTHERS[around]
    found = [key for key in value if key in theirs]
    if len(found) < ENOUGH or len(found) <= sum(key in ours for key in value):
        return None
    return Fault(
        place=Place(file=file, path=(found[0],), spot=Spot.KEY),
        code=CODE,
        message=f"this reads like a {kind}; {folder} live in {folder}/",
        help=f"move the file to {folder}/{name}",
    )
