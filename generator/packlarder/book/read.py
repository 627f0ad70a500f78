"""From the bytes of a book's files to a Book, or to all that is wrong with them."""

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath
from types import MappingProxyType
from typing import TypeVar

from packlarder.book.base import BookModel
from packlarder.book.book import (
    BATCHES_FOLDER,
    COMPONENTS_FOLDER,
    DISHES_FOLDER,
    DRAWS_FOLDER,
    FOODS_FILE,
    HOUSEHOLD_FILE,
    PAGES_FOLDER,
    TRIPS_FOLDER,
    Book,
    component_place,
)
from packlarder.book.called_alike import files_called_alike, foods_called_alike
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.draw import Draws
from packlarder.book.drying_run import DryingRun
from packlarder.book.empty_values import with_empty_values
from packlarder.book.household import Household
from packlarder.book.meant import did_you_mean
from packlarder.book.misplaced import CODE as MISPLACED
from packlarder.book.misplaced import misplaced
from packlarder.book.nodes import read_yaml
from packlarder.book.own_food import OwnFood, OwnFoods
from packlarder.book.split_sentence import split_sentences
from packlarder.book.strict.source import text_of
from packlarder.book.trip import Trip
from packlarder.book.unread import unread_names
from packlarder.book.validate import validate
from packlarder.faults import Fault, Place, Severity, Spot

M = TypeVar("M", bound=BookModel)

YAML = ".yaml"
MARKDOWN = ".md"
ENDS = {YAML: YAML, ".yml": YAML, MARKDOWN: MARKDOWN}
"""How a file's name should end, by how it ends in small letters."""
FOLDERS = (COMPONENTS_FOLDER, DISHES_FOLDER, BATCHES_FOLDER, DRAWS_FOLDER, TRIPS_FOLDER, PAGES_FOLDER)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBook:
    """What was read: the book as far as its files are sound, None without a sound book.yaml, and all faults."""

    book: Book | None
    faults: tuple[Fault, ...]


def read_book(files: Mapping[str, bytes], lost: Iterable[str] = ()) -> ReadBook:
    """Read a book from its files, each under its path in the book's folder (`dishes/porridge.yaml`).

    `lost` are files that are there and could not even be opened.
    """
    faults: list[Fault] = []
    lost = frozenset(lost)
    household = _household(files, faults)
    foods = _foods(files, faults)
    components = _components(files, faults)
    dishes = _folder(Dish, DISHES_FOLDER, files, faults)
    faults += files_called_alike(DISHES_FOLDER, dishes)
    runs = _folder(DryingRun, BATCHES_FOLDER, files, faults)
    draws = _folder(Draws, DRAWS_FOLDER, files, faults)
    trips = _folder(Trip, TRIPS_FOLDER, files, faults)
    pages = _pages(files, faults)
    faults += _strays(files)
    if household is None:
        return ReadBook(book=None, faults=tuple(faults))
    book = Book(
        household=household,
        unread=_files(fault for fault in faults if fault.severity is Severity.ERROR) | lost,
        unread_components=MappingProxyType(_unread(COMPONENTS_FOLDER, files, lost, faults, components)),
        unread_dishes=MappingProxyType(_unread(DISHES_FOLDER, files, lost, faults, dishes)),
        foods=MappingProxyType(foods),
        components=MappingProxyType(components),
        dishes=MappingProxyType(dishes),
        runs=MappingProxyType(runs),
        draws=MappingProxyType(draws),
        trips=MappingProxyType(trips),
        pages=MappingProxyType(pages),
    )
    faults += _kitchen(household)
    return ReadBook(book=book, faults=tuple(faults))


def _files(faults: Iterable[Fault]) -> frozenset[str]:
    return frozenset(fault.place.file for fault in faults)


def _unread(
    folder: str, files: Mapping[str, bytes], lost: Iterable[str], faults: Iterable[Fault], sound: Iterable[str]
) -> dict[str, str]:
    elsewhere = _files(fault for fault in faults if fault.code == MISPLACED)
    return unread_names(folder, files, lost, elsewhere, sound)


def _household(files: Mapping[str, bytes], faults: list[Fault]) -> Household | None:
    if HOUSEHOLD_FILE in files:
        return _one(Household, HOUSEHOLD_FILE, files[HOUSEHOLD_FILE], faults)
    if "book.yml" not in files:  # a stray file tells enough
        faults.append(
            Fault(
                place=Place(file=HOUSEHOLD_FILE, line=1, column=1),
                code="no-book",
                message="there is no book.yaml here, so this is no book",
                help="name the book's folder with `--book DIR`, or make a new book with `start DIR`",
            )
        )
    return None


def _foods(files: Mapping[str, bytes], faults: list[Fault]) -> dict[str, OwnFood]:
    """Read the household's own foods; one that is called like another is told and left out."""
    read = _one(OwnFoods, FOODS_FILE, files[FOODS_FILE], faults) if FOODS_FILE in files else None
    foods = dict(read.root) if read else {}
    alike = foods_called_alike(foods)
    faults += alike
    left_out = {fault.place.path[0] for fault in alike}
    return {id: food for id, food in foods.items() if id not in left_out}


def _components(files: Mapping[str, bytes], faults: list[Fault]) -> dict[str, Component]:
    """Read the components; one that is called like another is told and left out."""
    components = _folder(Component, COMPONENTS_FOLDER, files, faults)
    alike = files_called_alike(COMPONENTS_FOLDER, components)
    faults += alike
    return {id: one for id, one in components.items() if component_place(id).file not in _files(alike)}


ModelT = TypeVar("ModelT")


def _one(model: type[ModelT], file: str, data: bytes, faults: list[Fault]) -> ModelT | None:
    read = read_yaml(file, data)
    faults += read.faults
    if read.value is None:
        return None
    if stray := misplaced(file, read.value):
        faults.append(stray)
        return None
    made = validate(model, file, read.value)
    told = made if isinstance(made, tuple) else ()
    if read.has_empty:
        allowed = model.may_stand_empty if issubclass(model, BookModel) else frozenset[str]()
        told = with_empty_values(file, read.value, told, allowed)
    faults += (*told, *split_sentences(file, data))
    return None if told or isinstance(made, tuple) else made


def _folder(model: type[M], folder: str, files: Mapping[str, bytes], faults: list[Fault]) -> dict[str, M]:
    found: dict[str, M] = {}
    for file, stem in _stems(files, folder, YAML):
        if not _is_id(stem):
            faults.append(_bad_id(file, stem))
            continue
        one = _one(model, file, files[file], faults)
        if one is not None:
            found[stem] = one
    return found


def _pages(files: Mapping[str, bytes], faults: list[Fault]) -> dict[str, str]:
    pages: dict[str, str] = {}
    for file, stem in _stems(files, PAGES_FOLDER, MARKDOWN):
        text = text_of(file, files[file])
        if isinstance(text, Fault):
            faults.append(text)
        elif not _is_id(stem):
            faults.append(_bad_id(file, stem))
        else:
            pages[stem] = text
    return pages


def _stems(files: Iterable[str], folder: str, suffix: str) -> Iterator[tuple[str, str]]:
    """Give the files of a folder that end so, in order, each with its name without that ending."""
    for file in sorted(files):
        around, _, name = file.rpartition("/")
        if around == folder and name.endswith(suffix) and name != suffix:
            yield file, name.removesuffix(suffix)


def _is_id(stem: str) -> bool:
    return bool(stem) and all(letter in "abcdefghijklmnopqrstuvwxyz0123456789-" for letter in stem)


def _bad_id(file: str, stem: str) -> Fault:
    bare = "".join(letter for letter in unicodedata.normalize("NFKD", stem) if not unicodedata.combining(letter))
    plain = "-".join("".join(letter if _is_id(letter) else " " for letter in bare.lower()).replace("-", " ").split())
    return Fault(
        place=Place(file=file, line=1, column=1),
        code="file-name",
        message=f'the file name "{stem}" can not be an id: only a to z, figures and hyphens can stand in it',
        help=f"call the file `{plain or 'leek-rings'}{PurePosixPath(file).suffix}`",
    )


def _strays(files: Mapping[str, bytes]) -> list[Fault]:
    """Find files that are meant for the book and are not read, for how they end: `dishes/soup.yml`, `SOUP.YAML`."""
    faults: list[Fault] = []
    for file in sorted(files):
        if file.endswith((YAML, MARKDOWN)):
            continue
        path = PurePosixPath(file)
        suffix = ENDS.get(path.suffix.lower())
        if suffix not in (None, path.suffix) and str(path.parent) in (*FOLDERS, "."):
            place = Place(file=file, line=1, column=1)
            message = f"files that end in {path.suffix} are not read"
            help = f"call it {path.with_suffix(suffix or YAML)}"
            faults.append(Fault(place=place, code="stray-file", message=message, help=help))
    return faults


def _kitchen(household: Household) -> list[Fault]:
    """Check that the usual stove, pot and measures are among the household's own."""
    usual, place = household.usual_conditions, Place(file=HOUSEHOLD_FILE)
    wanted = (
        ("stove", usual.stove, household.stoves, place.at("usual conditions", "stove")),
        ("pot", usual.pot, household.pots, place.at("usual conditions", "pot")),
    )
    faults = [
        Fault(place=at, code=f"unknown-{what}", message=f'no {what} is called "{name}"', help=_known(name, ours))
        for what, name, ours, at in wanted
        if name not in ours
    ]
    mug = household.booklet_measure
    if mug and mug not in household.measures:
        faults.append(
            Fault(
                place=place.at("booklet measure", spot=Spot.VALUE),
                code="unknown-measure",
                message=f'no measure of yours is called "{mug}"',
                help=_known(mug, household.measures) if household.measures else "add it under `measures`",
            )
        )
    return faults


def _known(name: str, ours: Iterable[str]) -> str:
    known = list(ours)
    hint = did_you_mean(name, known)
    return f"{hint}known are: {', '.join(known)}"
