"""The command `new`: a file for a component, dish, batch, trip or stocktake, with what is known of it filled in."""

import re
from collections import Counter
from pathlib import Path

from packlarder.book.book import Book, component_place, dish_place, spoken
from packlarder.book.bring_back import Way
from packlarder.book.component import Component
from packlarder.cli import texts
from packlarder.cli.larder_stage import open_larder
from packlarder.cli.new_file import EMPTY, id_of, quoted, skeleton, write_new
from packlarder.cli.new_store import new_batch, new_stocktake
from packlarder.cli.new_trip import new_trip
from packlarder.cli.options import Misuse, Options
from packlarder.cli.schemas import write_schemas
from packlarder.cli.stages import book_folder, read
from packlarder.figures.dryness import Drying
from packlarder.figures.foods import FOODS, Food, closest_foods, words_meant
from packlarder.figures.kinds import HomeDrying, State

SMALL_WORDS = frozenset({"a", "and", "at", "for", "from", "in", "of", "on", "or", "the", "to", "with"})


def new(options: Options) -> int:
    """Write the file and say where it is. Raises Misuse for a name that can not be, or that is taken."""
    folder = book_folder(options)
    found = read(folder, options.on)
    if found.book is None:
        raise Misuse(texts.NO_BOOK.format(folder=folder, program=texts.PROGRAM))
    if options.kind in ("component", "dish"):
        file, text = _named(options.kind, " ".join(options.name.split()), folder, found.book)
    else:
        opened = open_larder(folder, found, found.book)
        file, text = OPENED_FIRST[options.kind](opened, options.name)
    write_new(folder, file, text)
    write_schemas(folder, found.book)
    says = texts.LISTED if options.kind == "stocktake" else texts.ADDED
    print(says.format(path=folder / file, program=texts.PROGRAM))
    return 0


OPENED_FIRST = {"batch": new_batch, "stocktake": new_stocktake, "trip": new_trip}
"""What gives the file of kinds that want to know what the household has in its larder."""


def _named(kind: str, name: str, folder: Path, book: Book) -> tuple[str, str]:
    """Give the file of a new component or dish, and what stands in it."""
    id = id_of(name)
    taken, place, facts = {
        "component": (book.component_ids, component_place, component_facts),
        "dish": (book.dish_ids, dish_place, dish_facts),
    }[kind]
    file = place(taken.get(spoken(name)) or id).file
    if spoken(name) in taken or (folder / file).exists():
        raise Misuse(texts.TAKEN.format(name=name, path=folder / file))
    return file, skeleton(kind, facts(name, book))


def component_facts(name: str, book: Book) -> dict[str, str]:
    """Give what is known of a component of this name: a food that it may be made from, and what follows from it.

    What nobody can know stays empty, so that a check asks for it: what it holds if not by its food, how it was dried.
    """
    food, others = guess_food(name)
    state = State.RAW if food is None else food.state
    loaded = state in LOADED
    return {
        "name": quoted(name),
        "was": f"was: {quoted(food.name)}" if food else "was:",
        "was_says": texts.GUESSED.format(others="; ".join(others)) if others else texts.WAS,
        "went_in": f"went in: {LOADED[state]}  # raw, blanched, cooked or as it is" if loaded else EMPTY,
        "contains": f"contains: [{', '.join(food.allergens)}]" if food and food.allergens else "contains:",
        "dried": f"dried: {_usual_drying(food, book) if loaded else Drying.BOUGHT_DRY.value}",
        "form": quoted(name.rpartition(" ")[2].lower()) if " " in name else "pieces",
    }


LOADED = {State.RAW: "raw", State.COOKED: "cooked", State.READY: "as it is"}
"""How foods of these states go into a dryer; those of all others were dry before."""


def guess_food(name: str) -> tuple[Food | None, tuple[str, ...]]:
    """Find the food that a component of this name may be made from, and the names of others that it may be.

    Only foods whose names hold its words count, raw ones first: a wrong guess must not pass for what is safe.
    """
    words = name.lower().split()
    for text in dict.fromkeys((name, " ".join(words[:-1]), words[0])):
        named = [food for food in map(_food, closest_foods(text)) if words_meant(text) <= words_meant(food.name)]
        if named:
            first, *others = sorted(named, key=lambda food: food.state is not State.RAW)
            return first, tuple(food.name for food in others)
    return None, ()


def _food(name: str) -> Food:
    return next(food for food in FOODS.values() if food.name == name)


def dish_facts(name: str, book: Book) -> dict[str, str]:
    """Give what is known of a dish of this name: the components that it speaks of, and how they take their water."""
    spoken_of = set(re.findall(r"\w+", spoken(name))) - SMALL_WORDS
    found = [one for one in book.components.values() if spoken_of & set(spoken(one.name).split())]
    parts = [f"  - {quoted(one.name.lower())}:" for one in found]
    steps = [f"  - {way.value}: {quoted(one.name.lower())}" for one in found if (way := _own_way(one))]
    return {
        "name": quoted(name),
        "meal": "supper",
        "serves": str(book.household.servings),
        "parts": "\n".join(parts) or "#  - leek rings: 20 g",
        "steps": "\n".join(steps) or "#  - soak: leek rings",
    }


def _own_way(component: Component) -> Way | None:
    """Give the way in which a component is given water of its own."""
    back = component.bring_back
    return None if back is None or back.way is Way.IN_THE_POT else back.way


def _usual_drying(food: Food | None, book: Book) -> str:
    """Give the way in which the household dries most; freeze-dried what may not go raw into warm air."""
    if food is not None and food.state is State.RAW and food.kind.rules.air_dry is not HomeDrying.YES:
        return Drying.FREEZE_DRIED.value
    dried = Counter(one.dried for one in book.components.values())
    return max((Drying.AIR_DRIED, Drying.FREEZE_DRIED), key=lambda way: dried[way]).value
