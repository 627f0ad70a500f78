"""A file that lies in another folder than its kind: a dish among the components, a drying run among the dishes."""

from collections.abc import Mapping

from packlarder.book.base import BookModel, in_words
from packlarder.book.book import BATCHES_FOLDER, COMPONENTS_FOLDER, DISHES_FOLDER, DRAWS_FOLDER, TRIPS_FOLDER
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.draw import Draws
from packlarder.book.drying_run import DryingRun
from packlarder.book.nodes import Node
from packlarder.book.trip import Trip
from packlarder.faults import Fault, Place, Spot

CODE = "other-kind"
ENOUGH = 2
"""So many keys that only the other kind of file has tell it; one may be a slip."""


def _keys(model: type[BookModel]) -> frozenset[str]:
    return frozenset(map(in_words, model.model_fields))


_KINDS: Mapping[str, tuple[str, str, frozenset[str]]] = {
    COMPONENTS_FOLDER: ("a component", "components", _keys(Component)),
    DISHES_FOLDER: ("a dish", "dishes", _keys(Dish)),
    BATCHES_FOLDER: ("a drying run", "drying runs", _keys(DryingRun)),
    DRAWS_FOLDER: ("a note of what was drawn", "such notes", _keys(Draws)),
    TRIPS_FOLDER: ("a trip", "trips", _keys(Trip)),
}
"""By folder: one and all of what lies in it, in words, and the keys that it has."""


def misplaced(file: str, value: Mapping[str, Node]) -> Fault | None:
    """Tell of a file that by its keys belongs into another folder; it needs no other fault."""
    around, _, name = file.rpartition("/")
    if around not in _KINDS:
        return None
    ours = _KINDS[around][2]
    told = {folder: [key for key in value if key in keys - ours] for folder, (*_, keys) in _KINDS.items()}
    folder = max(told, key=lambda one: len(told[one]))
    own = sum(key in ours - _KINDS[folder][2] for key in value)
    if len(told[folder]) < ENOUGH or len(told[folder]) <= own:
        return None
    one, all_of_them, _ = _KINDS[folder]
    return Fault(
        place=Place(file=file, path=(told[folder][0],), spot=Spot.KEY),
        code=CODE,
        message=f"this reads like {one}; {all_of_them} live in {folder}/",
        help=f"move the file to {folder}/{name}",
    )
