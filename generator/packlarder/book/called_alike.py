"""Two things that answer to one word: ids, names and former ids share one space of words."""

from collections.abc import Iterator, Mapping, Sequence

from packlarder.book.book import FOODS_FILE, spoken
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.own_food import OwnFood
from packlarder.faults import Fault, KeyPath, Place
from packlarder.figures.foods import find_food

ANOTHER_NAME = "give one of them another name"


def files_called_alike(folder: str, read: Mapping[str, Component] | Mapping[str, Dish]) -> list[Fault]:
    """Find components, or dishes, that answer to the same word; the later one is at fault."""
    owner = {spoken(id): _in_file(folder, id, ("name",)) for id in read}
    faults: list[Fault] = []
    for id, one in read.items():
        for word, path in _words(one.name, one.formerly):
            here = _in_file(folder, id, path)
            first = owner.setdefault(spoken(word), here)
            if first.file != here.file:
                message = f'"{word}" is already what {first.file} is called'
                if path[0] == "formerly" or first.path[0] == "formerly":
                    message = f'"{word}" already leads to {first.file}'
                faults.append(_fault(here, message, ANOTHER_NAME, first))
    return faults


def foods_called_alike(foods: Mapping[str, OwnFood]) -> list[Fault]:
    """Find foods of the household's own that answer to the same word, or to a food of the table."""
    owner = {spoken(id): id for id in foods}
    faults: list[Fault] = []
    for id, food in foods.items():
        here = Place(file=FOODS_FILE, path=(id, "name"))
        first = owner.setdefault(spoken(food.name), id)
        if first != id:
            there = Place(file=FOODS_FILE, path=(first, "name"))
            faults.append(_fault(here, f'"{food.name}" is already what {first} is called', ANOTHER_NAME, there))
        elif find_food(food.name) is not None:
            help = "take the table's, and leave this one out; or say in its name how yours differs"
            faults.append(_fault(here, f'the food table has a "{food.name}" of its own', help))
    return faults


def _in_file(folder: str, id: str, path: KeyPath) -> Place:
    return Place(file=f"{folder}/{id}.yaml", path=path)


def _words(name: str, formerly: Sequence[str]) -> Iterator[tuple[str, KeyPath]]:
    yield name, ("name",)
    for index, old in enumerate(formerly):
        yield old, ("formerly", index)


def _fault(place: Place, message: str, help: str, *also: Place) -> Fault:
    return Fault(place=place, code="called-alike", message=message, help=help, also=also)
