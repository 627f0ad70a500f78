"""A large book in several hands: each process checks a share of the dishes and writes their pages, and those of runs.

One of them speaks with people; the others are its mates, forked from it once the book is read and its components are
worked out. They do not send each other dishes, only what is wrong with them and their rows of the indexes, and each
puts together the same book and the same sheet. A dish of another share is worked out when somebody asks for it.
"""

import os
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from functools import partial
from multiprocessing.connection import Connection
from pathlib import Path
from typing import TYPE_CHECKING, Protocol, TypeVar

from packlarder.book.book import Book
from packlarder.cli.mate import Mate
from packlarder.cli.stages import BookRead, BookWorked, held, read, sheet_of
from packlarder.faults import Fault
from packlarder.safety.whole import CheckedBook, CheckedComponents, check_components, check_dishes, whole_book

if TYPE_CHECKING:
    from packlarder.publish.site import Progress
    from packlarder.sheets.book_sheet import BookSheet, DownloadGroup

LARGE = 200
"""Dishes, or pages of dishes and runs, from which a second process is worth its start."""
MOST = 4
T = TypeVar("T")


class Swap(Protocol):
    """Hands what was made of the own dishes, by id, to the others, and gives what was made of all."""

    def __call__(self, own: Mapping[str, T], /) -> dict[str, T]:
        """Swap."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """Some dishes and drying runs of a book, and the steps that every process takes with its own.

    The one that `leads` works out the trips as well.
    """

    found: BookRead
    components: CheckedComponents
    ids: Sequence[str]
    runs: Sequence[str] = ()
    leads: bool = False

    def check(self, swap: Swap) -> CheckedBook:
        """Check the dishes, and put the book together."""
        own = check_dishes(self.components, self.ids)
        trips_on = self.found.day if self.leads else None
        return whole_book(self.components, own.dishes, swap(own.faults), trips_on=trips_on)

    def sheet(self, swap: Swap, checked: CheckedBook, downloads: "tuple[DownloadGroup, ...]") -> "BookSheet":
        """Take the dishes into the indexes, and make the sheet of the book."""
        from packlarder.sheets.book import index_rows

        return sheet_of(self.found, checked, downloads, swap(index_rows(checked, self.ids)))


class Crew:
    """The process that speaks with people, and its mates. `checked` is the book, held against the rules."""

    def __init__(self, own: Share, mates: Sequence[Mate]) -> None:
        """Check the book together."""
        self._own = own
        self._mates = mates
        self.checked = own.check(self._swap)

    def sheet(self, downloads: "tuple[DownloadGroup, ...]" = ()) -> "BookSheet":
        """Make the sheet of a sound book; `downloads` are the files that will lie beside its site."""
        self._tell(downloads)
        return self._own.sheet(self._swap, self.checked, downloads)

    def write_site(
        self, sheet: "BookSheet", *, theme: Path, out: Path, progress: "Progress | None" = None
    ) -> tuple[Fault, ...]:
        """Write the site as `build_site` does, and let the mates go; however this ends, none writes any more."""
        from packlarder.publish.site_shares import PageShare, build_all_but

        book = self.checked.book
        others = PageShare(dishes=book.dishes.keys() - {*self._own.ids}, runs=book.runs.keys() - {*self._own.runs})
        with _dismissing(self._mates):
            self._tell((theme, out))
            faults = build_all_but(sheet, others, theme=theme, out=out, progress=progress)
            for mate in self._mates:
                mate.hear()
        return faults

    def _tell(self, word: object) -> None:
        for mate in self._mates:
            mate.tell(word)

    def _swap(self, own: Mapping[str, T]) -> dict[str, T]:
        """Gather what all have made, and give it to all."""
        made = dict(own)
        for mate in self._mates:
            made |= mate.hear()
        self._tell(made)
        return made


@contextmanager
def work_together(
    folder: Path, on: date | None = None, *, writes: bool = False
) -> Iterator[tuple[BookWorked, Crew | None]]:
    """Read a book and check it with mates, where it is large and processes can be forked; none outlives the block.

    With `writes`, its site may be wanted too. There is no crew where no book could be read.
    """
    found = read(folder, on)
    if found.book is None:
        yield held(folder, found, None), None
        return
    if writes:  # before there are mates, so that it is loaded only once
        import packlarder.publish.site_shares
        import packlarder.sheets.book  # noqa: F401 - see above
    components = check_components(found.book, found.day)
    own, *others = (
        Share(found=found, components=components, ids=ids, runs=runs, leads=at == 0)
        for at, (ids, runs) in enumerate(_dealt(found.book, writes=writes))
    )
    mates: list[Mate] = []
    with _dismissing(mates):
        mates.extend(Mate(partial(_help, share)) for share in others)
        crew = Crew(own, mates)
        yield held(folder, found, crew.checked), crew


def check_together(folder: Path, on: date | None = None) -> BookWorked:
    """Read a book and check it with mates, and let them go."""
    with work_together(folder, on) as (worked, _):
        return worked


def _dealt(book: Book, *, writes: bool) -> list[tuple[tuple[str, ...], tuple[str, ...]]]:
    """Deal out the dishes of a book, and its runs, which only matter where pages are written."""
    runs = tuple(book.runs) if writes else ()
    is_large = len(book.dishes) + len(runs) >= LARGE
    hands = min(os.cpu_count() or 1, MOST) if is_large and hasattr(os, "fork") else 1
    besides = len(book.components)
    return list(zip(_shares(tuple(book.dishes), hands, besides), _shares(runs, hands, besides), strict=True))


def _shares(ids: tuple[str, ...], hands: int, besides: int) -> list[tuple[str, ...]]:
    """Part some ids; the first process gets fewer, as it writes so many other pages too."""
    own = max(0, (len(ids) + besides) // hands - besides)
    return [ids[:own], *(ids[own + at :: hands - 1] for at in range(hands - 1))]


@contextmanager
def _dismissing(mates: Sequence[Mate]) -> Iterator[None]:
    try:
        yield
    finally:
        for mate in mates:
            mate.dismiss()


def _help(share: Share, pipe: Connection) -> None:
    """Do what a mate does, step by step as its `Crew` asks; it is ended when there is nothing more to do."""

    def swap(own: Mapping[str, T]) -> dict[str, T]:
        pipe.send(own)
        made: dict[str, T] = pipe.recv()
        return made

    checked = share.check(swap)
    downloads = pipe.recv()
    sheet = share.sheet(swap, checked, downloads)
    theme, out = pipe.recv()
    from packlarder.publish.site_shares import PageShare, build_share  # not for a check, which takes no mate so far

    build_share(sheet, PageShare(dishes=share.ids, runs=share.runs), theme=theme, out=out)
    pipe.send(None)
