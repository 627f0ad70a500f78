"""A book as a whole: the household's files, read and typed."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from types import MappingProxyType

from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.draw import Draws
from packlarder.book.drying_run import DryingRun
from packlarder.book.household import Household
from packlarder.book.own_food import OwnFood
from packlarder.book.trip import Trip
from packlarder.faults import Place

HOUSEHOLD_FILE = "book.yaml"
FOODS_FILE = "foods.yaml"
COMPONENTS_FOLDER = "components"
DISHES_FOLDER = "dishes"
BATCHES_FOLDER = "batches"
DRAWS_FOLDER = "draws"
TRIPS_FOLDER = "trips"
PAGES_FOLDER = "pages"
PHOTOS_FOLDER = "photos"


def component_place(id: str) -> Place:
    """Give the place of a component's file."""
    return Place(file=f"{COMPONENTS_FOLDER}/{id}.yaml")


def dish_place(id: str) -> Place:
    """Give the place of a dish's file."""
    return Place(file=f"{DISHES_FOLDER}/{id}.yaml")


def run_place(id: str) -> Place:
    """Give the place of a drying run's file."""
    return Place(file=f"{BATCHES_FOLDER}/{id}.yaml")


def draws_place(id: str) -> Place:
    """Give the place of a file of draws."""
    return Place(file=f"{DRAWS_FOLDER}/{id}.yaml")


def trip_place(id: str) -> Place:
    """Give the place of a trip's file."""
    return Place(file=f"{TRIPS_FOLDER}/{id}.yaml")


@lru_cache(maxsize=4096)
def spoken(name: str) -> str:
    """Give the form in which names are compared: lower case, single spaces, hyphens as spaces."""
    return " ".join(name.lower().replace("-", " ").split())


@dataclass(frozen=True, kw_only=True)
class Book:
    """All files of one household's book. Keys of the mappings are ids."""

    household: Household
    foods: Mapping[str, OwnFood] = field(default_factory=lambda: MappingProxyType({}))
    components: Mapping[str, Component] = field(default_factory=lambda: MappingProxyType({}))
    dishes: Mapping[str, Dish] = field(default_factory=lambda: MappingProxyType({}))
    runs: Mapping[str, DryingRun] = field(default_factory=lambda: MappingProxyType({}))
    draws: Mapping[str, Draws] = field(default_factory=lambda: MappingProxyType({}))
    trips: Mapping[str, Trip] = field(default_factory=lambda: MappingProxyType({}))
    pages: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    unread: frozenset[str] = frozenset()
    """Files that were there and could not be read; whoever names what they hold is not to blame."""
    unread_components: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    """For each word, as `spoken` gives it, that a component in such a file answers to: the file."""
    unread_dishes: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    """The same for dishes."""

    @cached_property
    def component_ids(self) -> Mapping[str, str]:
        """Give the id for each way of calling a component: id, name, former id."""
        return _ids({id: (one.name, one.formerly) for id, one in self.components.items()})

    @cached_property
    def dish_ids(self) -> Mapping[str, str]:
        """Give the id for each way of calling a dish: id, name, former id."""
        return _ids({id: (one.name, one.formerly) for id, one in self.dishes.items()})

    @cached_property
    def trip_ids(self) -> Mapping[str, str]:
        """Give the id for each way of calling a trip: id, name."""
        return _ids({id: (one.name, ()) for id, one in self.trips.items()})

    def has_unread_component(self, name: str) -> bool:
        """Tell whether a component that could not be read is meant."""
        return spoken(name) in self.unread_components

    def component_id(self, name: str) -> str | None:
        """Give the id of the component that is called so, or None."""
        return self.component_ids.get(spoken(name))


def _ids(called: Mapping[str, tuple[str, tuple[str, ...]]]) -> Mapping[str, str]:
    found: dict[str, str] = {}
    for id, (name, formerly) in called.items():
        for one in (*formerly, name, id):
            found.setdefault(spoken(one), id)
    return MappingProxyType(found)
