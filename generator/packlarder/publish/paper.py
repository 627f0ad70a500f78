"""The field booklet on paper: a plain tagged PDF in each size, and the same imposed for folding and stapling."""

from collections.abc import Iterator
from pathlib import Path

from packlarder.faults import Fault, Place, Severity
from packlarder.publish import paper_words
from packlarder.publish.imposition import PAGES_PER_LEAF
from packlarder.publish.imposition_sheets import impose
from packlarder.publish.paper_setting import Booklet, print_booklet
from packlarder.publish.press import Press
from packlarder.publish.sizes import MOST_LEAVES, PAGES, page_size
from packlarder.sheets.book_sheet import FieldBook


def build_booklets(field: FieldBook, *, sizes: tuple[str, ...], theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `field-<size>.pdf` and `field-<size>-imposed-<sheet>.pdf` into `out` for each size.

    `theme` holds `print/`. Gives a warning for each dish that takes more than one opening, for a booklet too thick to
    fold, and an error for a size that is not known.
    """
    out.mkdir(parents=True, exist_ok=True)
    press = Press()
    faults: list[Fault] = []
    for name in sizes:
        size = page_size(name)
        if size is None:
            faults.append(_unknown(name))
            continue
        booklet = print_booklet(field, size, theme, press)
        (out / f"field-{size.id}.pdf").write_bytes(booklet.pdf)
        sheets = impose(booklet.pdf, size, booklet.bed)
        (out / f"field-{size.id}-imposed-{booklet.bed.sheet.id}.pdf").write_bytes(sheets)
        faults.extend(_long_dishes(field, booklet))
        faults.extend(_thick(booklet))
    return tuple(faults)


def _long_dishes(field: FieldBook, booklet: Booklet) -> Iterator[Fault]:
    for opening in field.openings:
        openings = booklet.plan.openings[opening.id]
        if openings > 1:
            yield Fault(
                place=Place(file=f"dishes/{opening.id}.yaml"),
                code="long-dish",
                message=paper_words.too_long(opening.name, booklet.size, openings),
                help=paper_words.TOO_LONG_HELP,
                severity=Severity.WARNING,
            )


def _thick(booklet: Booklet) -> Iterator[Fault]:
    leaves = booklet.plan.pages // PAGES_PER_LEAF
    if leaves > MOST_LEAVES:
        yield Fault(
            place=Place(file="book.yaml"),
            code="thick-booklet",
            message=paper_words.too_thick(booklet.size, leaves, MOST_LEAVES),
            help=paper_words.TOO_THICK_HELP,
            severity=Severity.WARNING,
        )


def _unknown(name: str) -> Fault:
    return Fault(
        place=Place(file="book.yaml"),
        code="unknown-print-size",
        message=paper_words.unknown_size(name),
        help=paper_words.known_sizes(tuple(page.id for page in PAGES)),
    )
