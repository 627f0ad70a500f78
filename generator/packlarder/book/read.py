"""From the bytes of a book's files to a Book, or to all that is wrong with them."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import PurePosixPath
from types import MappingProxyType
from typing import TypeVar

from packlarder.book.base import BookModel
from packlarder.book.book import (
    COMPONENTS_FOLDER,
    DISHES_FOLDER,
    FOODS_FILE,
    HOUSEHOLD_FILE,
    PAGES_FOLDER,
    Book,
    spoken,
)
from packlarder.book.component import Component
from packlarder.book.dish import Dish
from packlarder.book.household import Household
from packlarder.book.nodes import read_yaml
from packlarder.book.own_food import OwnFoods
from packlarder.book.strict.source import text_of
from packlarder.book.validate import validate
from packlarder.faults import Fault, Place, Severity, Spot

M = TypeVar("M", bound=BookModel)

YAML = ".yaml"
MARKDOWN = ".md"
FOLDERS = (COMPONENTS_FOLDER, DISHES_FOLDER, PAGES_FOLDER)


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBook:
    """What was read: the book as far as its files are sound, None without a sound book.yaml, and all faults."""

    book: Book | None
    faults: tuple[Fault, ...]


def read_book(files: Mapping[str, bytes]) -> ReadBook:
    """Read a book from its files, each under its path in the book's folder (`dishes/porridge.yaml`)."""
    faults: list[Fault] = []
    household = _household(files, faults)
    foods = _one(OwnFoods, FOODS_FILE, files[FOODS_FILE], faults) if FOODS_FILE in files else None
    components = _folder(Component, COMPONENTS_FOLDER, files, faults)
    dishes = _folder(Dish, DISHES_FOLDER, files, faults)
    pages = _pages(files, faults)
    faults += _strays(files)
    if household is None:
        return ReadBook(book=None, faults=tuple(faults))
    book = Book(
        household=household,
        unread=frozenset(fault.place.file for fault in faults if fault.severity is Severity.ERROR),
        foods=MappingProxyType(foods.root if foods else {}),
        components=MappingProxyType(components),
        dishes=MappingProxyType(dishes),
        pages=MappingProxyType(pages),
    )
    faults += _called_alike(COMPONENTS_FOLDER, {id: (one.name, *one.formerly) for id, one in components.items()})
    faults += _called_alike(DISHES_FOLDER, {id: (one.name, *one.formerly) for id, one in dishes.items()})
    faults += _kitchen(household)
    return ReadBook(book=book, faults=tuple(faults))


def _household(files: Mapping[str, bytes], faults: list[Fault]) -> Household | None:
    if HOUSEHOLD_FILE in files:
        return _one(Household, HOUSEHOLD_FILE, files[HOUSEHOLD_FILE], faults)
    faults.append(
        Fault(
            place=Place(file=HOUSEHOLD_FILE, line=1, column=1),
            code="no-book",
            message="there is no book.yaml here, so this is no book",
            help="name the book's folder with `--book DIR`, or make a new book with `start DIR`",
        )
    )
    return None


ModelT = TypeVar("ModelT")


def _one(model: type[ModelT], file: str, data: bytes, faults: list[Fault]) -> ModelT | None:
    read = read_yaml(file, data)
    faults += read.faults
    if read.value is None:
        return None
    made = validate(model, file, read.value)
    if isinstance(made, tuple):
        faults += made
        return None
    return made


def _folder(model: type[M], folder: str, files: Mapping[str, bytes], faults: list[Fault]) -> dict[str, M]:
    found: dict[str, M] = {}
    for file in sorted(files):
        path = PurePosixPath(file)
        if path.parent != PurePosixPath(folder) or path.suffix != YAML:
            continue
        if not _is_id(path.stem):
            faults.append(_bad_id(file, path.stem))
            continue
        one = _one(model, file, files[file], faults)
        if one is not None:
            found[path.stem] = one
    return found


def _pages(files: Mapping[str, bytes], faults: list[Fault]) -> dict[str, str]:
    pages: dict[str, str] = {}
    for file in sorted(files):
        path = PurePosixPath(file)
        if path.parent == PurePosixPath(PAGES_FOLDER) and path.suffix == MARKDOWN:
            text = text_of(file, files[file])
            if isinstance(text, Fault):
                faults.append(text)
            elif not _is_id(path.stem):
                faults.append(_bad_id(file, path.stem))
            else:
                pages[path.stem] = text
    return pages


def _is_id(stem: str) -> bool:
    return bool(stem) and all(letter in "abcdefghijklmnopqrstuvwxyz0123456789-" for letter in stem)


def _bad_id(file: str, stem: str) -> Fault:
    plain = "-".join("".join(letter if letter.isascii() and letter.isalnum() else " " for letter in stem.lower()).split())
    return Fault(
        place=Place(file=file, line=1, column=1),
        code="file-name",
        message=f'the file name "{stem}" can not be an id: only a to z, figures and hyphens can stand in it',
        help=f"call the file `{plain or 'leek-rings'}`",
    )


def _strays(files: Mapping[str, bytes]) -> list[Fault]:
    """Point out files that look meant for the book and are not read: `dishes/soup.yml`."""
    faults: list[Fault] = []
    for file in sorted(files):
        path = PurePosixPath(file)
        if path.suffix == ".yml" and (str(path.parent) in FOLDERS or str(path.parent) == "."):
            message = "files that end in .yml are not read"
            help = f"call it {path.with_suffix(YAML)}"
            place = Place(file=file, line=1, column=1)
            faults.append(Fault(place=place, code="stray-file", message=message, help=help, severity=Severity.WARNING))
    return faults


def _called_alike(folder: str, called: Mapping[str, tuple[str, ...]]) -> list[Fault]:
    """Find two files that answer to the same word: names and ids share one space of words."""
    faults: list[Fault] = []
    owner: dict[str, str] = {spoken(id): id for id in called}
    for id, (name, *formerly) in called.items():
        for word, key in ((name, "name"), *((old, "formerly") for old in formerly)):
            first = owner.setdefault(spoken(word), id)
            if first != id:
                faults.append(
                    Fault(
                        place=Place(file=f"{folder}/{id}{YAML}", path=(key,)),
                        code="called-alike",
                        message=f'"{word}" is already what {folder}/{first}{YAML} is called',
                        help="give one of them another name",
                        also=(Place(file=f"{folder}/{first}{YAML}", path=("name",)),),
                    )
                )
    return faults


def _kitchen(household: Household) -> list[Fault]:
    """Check that the usual stove, pot and measures are among the household's own."""
    usual, place = household.usual_conditions, Place(file=HOUSEHOLD_FILE)
    wanted = (
        ("stove", usual.stove, household.stoves, place.at("usual conditions", "stove")),
        ("pot", usual.pot, household.pots, place.at("usual conditions", "pot")),
    )
    faults = [
        Fault(place=at, code=f"unknown-{what}", message=f'no {what} is called "{name}"', help=f"known are: {', '.join(all)}")
        for what, name, all, at in wanted
        if name not in all
    ]
    mug = household.booklet_measure
    if mug and mug not in household.measures:
        faults.append(
            Fault(
                place=place.at("booklet measure", spot=Spot.VALUE),
                code="unknown-measure",
                message=f'no measure of yours is called "{mug}"',
                help=f"known are: {', '.join(household.measures) or 'none yet; add it under `measures`'}",
            )
        )
    return faults
