"""A booklet on paper: a plain tagged PDF in each size, and the same imposed for folding and stapling."""

from collections.abc import Iterator
from pathlib import Path

from packlarder.faults import Fault, Place, Severity
from packlarder.publish import file_names, paper_words
from packlarder.publish.imposition import PAGES_PER_LEAF
from packlarder.publish.imposition_sheets import impose
from packlarder.publish.paper_setting import Booklet, Copy, print_booklet
from packlarder.publish.press import Press
from packlarder.publish.sizes import MOST_LEAVES, PAGES, page_size

BOOK = Place(file="book.yaml")


def write_booklets(copy: Copy, name: str, *, sizes: tuple[str, ...], theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `<name>-<size>.pdf` and `<name>-<size>-imposed-<sheet>.pdf` into `out` for each size.

    `theme` holds `print/`. Gives a warning for each dish that takes more than one opening, for a booklet too thick to
    fold, and an error for a size that is not known.
    """
    out.mkdir(parents=True, exist_ok=True)
    press = Press()
    faults: list[Fault] = []
    for wanted in sizes:
        size = page_size(wanted)
        if size is None:
            faults.append(_unknown(wanted))
            continue
        booklet = print_booklet(copy, size, theme, press)
        (out / file_names.booklet(name, size.id)).write_bytes(booklet.pdf)
        sheets = impose(booklet.pdf, size, booklet.bed)
        (out / file_names.imposed(name, size.id, booklet.bed.sheet.id)).write_bytes(sheets)
        faults.extend(_long_dishes(copy, booklet))
        faults.extend(_thick(copy, booklet))
    return tuple(faults)


def _long_dishes(copy: Copy, booklet: Booklet) -> Iterator[Fault]:
    for dish in booklet.plan.longer_than(1):
        yield Fault(
            place=copy.places[dish],
            code="long-dish",
            message=paper_words.too_long(copy.names[dish], booklet.size, booklet.plan.openings[dish]),
            help=paper_words.TOO_LONG_HELP,
            severity=Severity.WARNING,
        )


def _thick(copy: Copy, booklet: Booklet) -> Iterator[Fault]:
    leaves = booklet.plan.pages // PAGES_PER_LEAF
    if leaves > MOST_LEAVES:
        yield Fault(
            place=copy.place,
            code="thick-booklet",
            message=paper_words.too_thick(booklet.size, leaves, MOST_LEAVES),
            help=paper_words.TOO_THICK_HELP,
            severity=Severity.WARNING,
        )


def _unknown(name: str) -> Fault:
    return Fault(
        place=BOOK,
        code="unknown-print-size",
        message=paper_words.unknown_size(name),
        help=paper_words.known_sizes(tuple(page.id for page in PAGES)),
    )
