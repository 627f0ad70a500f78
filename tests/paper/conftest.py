"""Booklets of the sample book, printed once and read by many tests."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.paper import reading, samples

from packlarder.faults import Fault
from packlarder.publish.paper import build_booklets
from packlarder.publish.sizes import Bed, PageSize, bed, page_size
from packlarder.sheets.book_sheet import FieldBook
from packlarder.sheets.field_sheet import FieldOpening


@dataclass(frozen=True, kw_only=True)
class Booklet:
    """A booklet in one size as printed: its files, what was said of it, the openings that it was made from."""

    openings: Sequence[FieldOpening]
    name: str
    title: str
    size: PageSize
    bed: Bed
    out: Path
    faults: tuple[Fault, ...]

    @property
    def plain(self) -> Path:
        """Give the plain file."""
        return self.out / f"{self.name}-{self.size.id}.pdf"

    @property
    def imposed(self) -> Path:
        """Give the file for folding."""
        return self.out / f"{self.name}-{self.size.id}-imposed-{self.bed.sheet.id}.pdf"

    @cached_property
    def reader(self) -> PdfReader:
        """Open the plain file."""
        return PdfReader(self.plain)

    @cached_property
    def words(self) -> list[list[reading.Word]]:
        """Read the words of each page."""
        return reading.words(self.plain)

    @cached_property
    def starts(self) -> dict[str, int]:
        """Give the page of each title of the outline."""
        return dict(reading.outline(self.reader))

    @cached_property
    def runs(self) -> list[list[reading.Run]]:
        """Read the pieces of text of each page with their sizes."""
        return [reading.runs(page) for page in self.reader.pages]

    def pages_of(self, opening: FieldOpening) -> range:
        """Give the pages of a dish: from its title in the outline to the next title."""
        pages = sorted(self.starts.values())
        start = self.starts[opening.name]
        return range(start, pages[pages.index(start) + 1])

    def text_of(self, pages: range) -> str:
        """Give the words of some pages, one space between them."""
        return " ".join(word.text for page in pages for word in self.words[page - 1])


@dataclass(frozen=True, kw_only=True)
class Printed(Booklet):
    """A field booklet as printed."""

    book: FieldBook


def print_it(book: FieldBook, size: str, theme: Path, out: Path) -> Printed:
    """Print a book in one size."""
    faults = build_booklets(book, sizes=(size,), theme=theme, out=out)
    page = page_size(size)
    assert page is not None
    return Printed(
        book=book,
        openings=book.openings,
        name="field",
        title=book.title,
        size=page,
        bed=bed(page),
        out=out,
        faults=faults,
    )


@pytest.fixture(scope="session", params=["a6", "quarter-letter"])
def printed(request: pytest.FixtureRequest, checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    """Give the sample book of twenty dishes, printed in each of the first two sizes."""
    return print_it(samples.field_book(), request.param, checkout / "theme", tmp_path_factory.mktemp("print"))
