"""The order of stages: files, a book, its sums held against the rules, its sheet. Prints nothing."""

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from packlarder.book.book import HOUSEHOLD_FILE, Book
from packlarder.book.read import read_book
from packlarder.cli import texts
from packlarder.cli.loose_ends import loose_ends
from packlarder.cli.options import Misuse, Options
from packlarder.disk.reading import BookFiles, read_folder
from packlarder.faults import Fault, has_errors
from packlarder.safety.whole import CheckedBook, check_book

if TYPE_CHECKING:
    from packlarder.sheets.book_sheet import BookSheet, DownloadGroup
    from packlarder.sheets.indexes import IndexedDish

DEFAULT_BOOK = "recipes"
EDITION_DIGITS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class BookRead:
    """A book's files and what was read of them; `book` is None without a sound book.yaml.

    `day` is the one to work for: as the command line says, else the book, else today.
    """

    files: BookFiles
    book: Book | None
    day: date
    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BookWorked:
    """A book worked out and held against the rules; `checked` is None without a book, `faults` are those of all stages.

    `shown` is the book's folder as it was given, for messages.
    """

    shown: str
    read: BookRead
    checked: CheckedBook | None
    faults: tuple[Fault, ...]

    @property
    def sound(self) -> bool:
        """Tell whether nothing stops a build."""
        return self.checked is not None and not has_errors(self.faults)


def book_folder(options: Options) -> Path:
    """Give the book's folder: as it was named, else the default. Raises Misuse where there is no such folder."""
    named = options.book
    if named is None:
        default = Path(DEFAULT_BOOK)
        named = default if (default / HOUSEHOLD_FILE).is_file() else Path()
    if not named.is_dir():
        raise Misuse(texts.NO_FOLDER.format(folder=named))
    return named


Sift = Callable[[Mapping[str, bytes]], Mapping[str, bytes]]
"""Leaves out of a book's files what is not to be read."""


def read(folder: Path, on: date | None = None, sift: Sift = lambda files: files) -> BookRead:
    """Read a book, to be worked out for a day. Raises Misuse where its folder can not be listed."""
    try:
        files = read_folder(folder)
    except OSError as error:
        why = (error.strerror or str(error)).lower()
        raise Misuse(texts.UNREADABLE_FOLDER.format(folder=folder, why=why)) from error
    found = read_book(sift(files.texts), lost=[fault.place.file for fault in files.faults])
    own_day = None if found.book is None else found.book.household.on
    return BookRead(
        files=files,
        book=found.book,
        day=on or own_day or datetime.now().astimezone().date(),
        faults=(*files.faults, *found.faults),
    )


def work_out(folder: Path, on: date | None = None) -> BookWorked:
    """Read a book, do its sums and hold them against the rules, all in this process."""
    found = read(folder, on)
    return held(folder, found, None if found.book is None else check_book(found.book, found.day))


def held(folder: Path, found: BookRead, checked: CheckedBook | None) -> BookWorked:
    """Put together what all stages found in a book."""
    told = () if checked is None else (*checked.faults, *loose_ends(checked.book, found.files.photos))
    return BookWorked(
        shown=shown(folder),
        read=found,
        checked=checked,
        faults=(*found.faults, *told),
    )


def shown(folder: Path) -> str:
    """Give a book's folder as it stands before the names of its files in messages."""
    return "" if folder == Path() else folder.as_posix()


def edition_of(files: BookFiles, day: date) -> str:
    """Give the edition: a short digest of the book's files and the day."""
    digest = hashlib.sha256(day.isoformat().encode())
    for held in (files.texts, files.photos):
        for name in sorted(held):
            digest.update(f"\n{name}\n{len(held[name])}\n".encode())
            digest.update(held[name])
    return digest.hexdigest()[:EDITION_DIGITS]


def sheet_of(
    found: BookRead,
    checked: CheckedBook,
    downloads: "tuple[DownloadGroup, ...]" = (),
    rows: "Mapping[str, IndexedDish] | None" = None,
) -> "BookSheet":
    """Build the sheet of a sound book; `downloads` are the files that will lie beside its site, `rows` as there."""
    from packlarder.sheets.book import book_sheet

    files = found.files
    edition = edition_of(files, found.day)
    return book_sheet(checked, edition=edition, on=found.day, photos=files.photos, downloads=downloads, rows=rows)
