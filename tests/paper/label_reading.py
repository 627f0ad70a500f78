"""Read labels back from their PDF: where the paper of each lies, what stands on it, what its code says."""

import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import zxingcpp
from PIL import Image
from pypdf import PageObject
from pypdf.generic import ContentStream
from tests.paper.reading import PT_PER_MM, Word, tool, words

WHITE = (1.0, 1.0, 1.0)
AIR_PT = 3.0
"""A word's box reaches above and below its letters by this much."""

Matrix = tuple[float, float, float, float, float, float]


@dataclass(frozen=True, slots=True)
class Paper:
    """The white of one label, in millimetres from the page's upper left corner."""

    left: float
    top: float
    width: float
    height: float

    def holds(self, word: Word, *, is_round: bool) -> bool:
        """Tell whether all of a word lies on it, on a round one within the circle."""
        left, right = word.left / PT_PER_MM - self.left, word.right / PT_PER_MM - self.left
        top, bottom = (word.top + AIR_PT) / PT_PER_MM - self.top, (word.bottom - AIR_PT) / PT_PER_MM - self.top
        if not is_round:
            return min(left, top) >= 0 and right <= self.width and bottom <= self.height
        radius = self.width / 2
        return all((x - radius) ** 2 + (y - radius) ** 2 <= radius**2 for x in (left, right) for y in (top, bottom))

    def middle_of(self, word: Word) -> bool:
        """Tell whether the middle of a word lies on it."""
        across = (word.left + word.right) / 2 / PT_PER_MM - self.left
        down = (word.top + word.bottom) / 2 / PT_PER_MM - self.top
        return 0 <= across <= self.width and 0 <= down <= self.height


def papers(page: PageObject) -> list[Paper]:
    """Give the white rectangles that a page is painted with, in their order."""
    height = float(page.mediabox.height)
    return [
        Paper(left / PT_PER_MM, (height - top) / PT_PER_MM, width / PT_PER_MM, down / PT_PER_MM)
        for left, top, width, down in _white(ContentStream(page.get_contents(), page.pdf))
    ]


def _white(content: ContentStream) -> Iterator[tuple[float, float, float, float]]:
    """Follow the operators that move, colour and fill; boxes as left, upper edge from below, width, height."""
    matrix: Matrix = (1, 0, 0, 1, 0, 0)
    kept: list[tuple[Matrix, tuple[float, ...]]] = []
    ink: tuple[float, ...] = ()
    box: tuple[float, ...] = ()
    for operands, operator in content.operations:
        if operator == b"q":
            kept.append((matrix, ink))
        elif operator == b"Q":
            matrix, ink = kept.pop()
        elif operator == b"cm":
            a, b, c, d, e, f = (float(part) for part in operands)
            matrix = _times((a, b, c, d, e, f), matrix)
        elif operator == b"rg":
            ink = tuple(float(part) for part in operands)
        elif operator == b"re":
            box = tuple(float(part) for part in operands)
        elif operator == b"f" and ink == WHITE:
            a, _, _, d, e, f = matrix
            yield a * box[0] + e, d * box[1] + f, abs(a * box[2]), abs(d * box[3])


def _times(inner: Matrix, outer: Matrix) -> Matrix:
    a, b, c, d, e, f = inner
    g, h, i, j, k, m = outer
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)


def squeezed(text: str) -> str:
    """Give a text without blanks and capitals, as lines break it anywhere and captions are set in capitals."""
    return "".join(text.split()).casefold()


def texts_on(papers: list[Paper], words: list[Word]) -> list[str]:
    """Give what stands on each paper, in the order of the file, squeezed."""
    return [squeezed(" ".join(word.text for word in words if paper.middle_of(word))) for paper in papers]


def words_as_drawn(pdf: Path) -> list[list[Word]]:
    """Give the words of each page in the order in which they are drawn."""
    return words(pdf, "-raw")


def codes(pdf: Path, folder: Path, *, dpi: int = 300) -> list[zxingcpp.Barcode]:
    """Print a PDF's pages as pictures and decode every QR code on them."""
    subprocess.run([tool("pdftoppm"), "-r", str(dpi), "-gray", "-png", str(pdf), str(folder / "page")], check=True)
    found = []
    for picture in sorted(folder.glob("page*.png")):
        with Image.open(picture) as opened:
            found += zxingcpp.read_barcodes(opened, formats=zxingcpp.BarcodeFormats(zxingcpp.BarcodeFormat.QRCode))
    return found
