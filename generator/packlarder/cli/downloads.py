"""The files that a build writes beside the site, as its front page offers them."""

from collections.abc import Iterator

from packlarder.cli import texts
from packlarder.publish import data, ebook, single
from packlarder.publish.sizes import bed, page_size
from packlarder.sheets.book_sheet import Download

PRINT = "print"
"""The folder of the booklets."""


def downloads(sizes: tuple[str, ...]) -> tuple[Download, ...]:
    """Name booklets, each plain and to fold, then the files to hand on. Sizes that no booklet has are left out."""
    return (
        *(one for size in sizes for one in _booklets(size)),
        Download(label=texts.POCKET, address=single.FILE),
        Download(label=texts.EBOOK, address=ebook.FILE),
        Download(label=texts.DATA, address=f"{data.FOLDER}/{data.BOOK}"),
    )


def _booklets(size: str) -> Iterator[Download]:
    page = page_size(size)
    if page is not None:
        sheet = bed(page).sheet
        file = f"{PRINT}/field-{page.id}"
        yield Download(
            label=texts.BOOKLET_TO_FOLD.format(page=page.name, sheet=sheet.name),
            address=f"{file}-imposed-{sheet.id}.pdf",
        )
        yield Download(label=texts.BOOKLET.format(page=page.name), address=f"{file}.pdf")
