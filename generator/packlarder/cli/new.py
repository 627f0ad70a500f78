"""The command `new`: a file for a component or dish, with what is known of it filled in."""

import json
import re
import unicodedata
from collections import Counter
from collections.abc import Mapping
from importlib.resources import files
from string import Template

from packlarder.book.book import COMPONENTS_FOLDER, DISHES_FOLDER, Book, spoken
from packlarder.book.bring_back import Way
from packlarder.book.component import Component
from packlarder.cli import texts
from packlarder.cli.options import Misuse, Options
from packlarder.cli.schemas import write_schemas
from packlarder.cli.stages import book_folder, read
from packlarder.disk.writing import NotWritten, create_file
from packlarder.figures.dryness import Drying
from packlarder.figures.foods import FOODS, Food, closest_foods, words_meant
from packlarder.figures.kinds import State

FOLDERS = {"component": COMPONENTS_FOLDER, "dish": DISHES_FOLDER}
LONGEST = 80
SMALL_WORDS = frozenset({"a", "and", "at", "for", "from", "in", "of", "on", "or", "the", "to", "with"})
_PLAIN = re.compile(r"[^\W_][\w ,.'()/&+-]*")
"""A text that YAML reads as it stands."""


def new(options: Options) -> int:
    """Write the file and say where it is. Raises Misuse for a name that can not be, or that is taken."""
    folder = book_folder(options)
    book = read(folder).book
    if book is None:
        raise Misuse(texts.NO_BOOK.format(folder=folder, program=texts.PROGRAM))
    name = " ".join(options.name.split())
    id = id_of(name)
    taken = (book.component_ids if options.kind == "component" else book.dish_ids).get(spoken(name))
    path = folder / FOLDERS[options.kind] / f"{taken or id}.yaml"
    if taken:
        raise Misuse(texts.TAKEN.format(name=name, path=path))
    known = component_facts(name, book) if options.kind == "component" else dish_facts(name, book)
    try:
        create_file(path, skeleton(options.kind, known).encode())
    except FileExistsError:
        raise Misuse(texts.TAKEN.format(name=name, path=path)) from None
    except OSError as error:
        raise NotWritten(f"{path} can not be written: {(error.strerror or str(error)).lower()}") from error
    write_schemas(folder, book)
    print(texts.ADDED.format(path=path, program=texts.PROGRAM))
    return 0


def id_of(name: str) -> str:
    """Make an id from a name: leek-rings. Raises Misuse where no letter of it can stand in one."""
    letters = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode()
    id = re.sub(r"[^a-z0-9]+", "-", letters.replace("'", "")).strip("-")
    if not id or len(id) > LONGEST or not name.isprintable():
        raise Misuse(texts.NO_ID.format(name=name))
    return id


def skeleton(kind: str, known: Mapping[str, str]) -> str:
    """Fill what is known into the skeleton of a kind of file; comments keep their columns where they can."""
    template = Template((files("packlarder") / "starter" / "new" / f"{kind}.yaml").read_text(encoding="utf-8"))
    lines = (line for line in template.substitute(known).split("\n") if line != EMPTY)
    return "\n".join(_aligned(line) for line in lines)


EMPTY = "-empty-"
"""Stands where a line has nothing to say; the line is left out."""
COMMENT_COLUMN = 26


def _aligned(line: str) -> str:
    words, mark, comment = line.partition("  #")
    if not mark or line.startswith("#"):
        return line
    return f"{words.rstrip():<{COMMENT_COLUMN}}#{comment}"


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
        "dried": f"dried: {_usual_drying(book) if loaded else Drying.BOUGHT_DRY.value}",
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


def _usual_drying(book: Book) -> str:
    """Give the way in which the household dries most."""
    dried = Counter(one.dried for one in book.components.values())
    return max((Drying.AIR_DRIED, Drying.FREEZE_DRIED), key=lambda way: dried[way]).value


def quoted(text: str) -> str:
    """Write a text so that YAML reads just that."""
    return text if _PLAIN.fullmatch(text) else json.dumps(text, ensure_ascii=False)
