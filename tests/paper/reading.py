"""Read facts back from a PDF: words and where they stand, type sizes, ink, fonts, outline."""

import re
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

from pypdf import PageObject, PdfReader
from pypdf.generic import ContentStream, Destination, DictionaryObject, PdfObject

PT_PER_MM = 72 / 25.4
XHTML = "{http://www.w3.org/1999/xhtml}"


@dataclass(frozen=True, slots=True)
class Word:
    """A word and its box, in points from the page's upper left corner."""

    text: str
    left: float
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Run:
    """A piece of text set in one size (points) and font."""

    text: str
    size: float
    font: str


def tool(name: str) -> str:
    """Find a program of poppler; fail where it is missing, since nothing could be told then."""
    found = shutil.which(name)
    assert found, f"{name} is not on the PATH: install poppler (Debian: apt-get install poppler-utils)"
    return found


def words(pdf: Path, *options: str) -> list[list[Word]]:
    """Give the words of each page, in the order of reading unless an option of pdftotext asks for another."""
    told = subprocess.run([tool("pdftotext"), *options, "-bbox", str(pdf), "-"], check=True, capture_output=True)
    root = ElementTree.fromstring(told.stdout)  # noqa: S314 - poppler's own output about our own PDF
    return [
        [
            Word(word.text or "", *(float(word.get(edge, "nan")) for edge in ("xMin", "yMin", "xMax", "yMax")))
            for word in page.iter(f"{XHTML}word")
        ]
        for page in root.iter(f"{XHTML}page")
    ]


def rows(page: list[Word]) -> list[str]:
    """Put the words of a page into rows by the height of their middles; left to right, top down."""
    lines: list[list[Word]] = []
    for word in sorted(page, key=_middle):
        if lines and abs(_middle(word) - _middle(lines[-1][0])) < 3:
            lines[-1].append(word)
        else:
            lines.append([word])
    return [" ".join(word.text for word in sorted(line, key=lambda word: word.left)) for line in lines]


def _middle(word: Word) -> float:
    return (word.top + word.bottom) / 2


def overlap(one: Word, other: Word) -> bool:
    """Tell whether the middles of two words' boxes overlap; boxes of neighbouring lines may touch."""
    air = 0.25 * (one.bottom - one.top)
    across = min(one.right, other.right) - max(one.left, other.left)
    down = min(one.bottom, other.bottom) - max(one.top, other.top)
    return across > 0.5 and down > 2 * air


def inside(whole: object, *keys: str) -> object:
    """Follow keys into a PDF's dictionaries, through references."""
    found = whole.get_object() if isinstance(whole, PdfObject) else whole
    for key in keys:
        assert isinstance(found, DictionaryObject), key
        found = found[key].get_object()
    return found


def drawing(page: PageObject) -> bytes:
    """Give the operators that draw a page."""
    content = page.get_contents()
    assert content is not None
    return content.get_data()


def boxes(page: PageObject) -> int:
    """Count the frames of a page that are as wide as they are high: boxes to tick."""
    frames = re.findall(rb"([0-9.]+) ([0-9.]+) re\s+f\*", drawing(page))
    return sum(abs(float(width) - float(height)) < 0.01 for width, height in frames)


def runs(page: PageObject) -> list[Run]:
    """Give the pieces of text of a page with their sizes as printed."""
    found: list[Run] = []

    def visit(text: str, cm: list[float], tm: list[float], font: dict[str, object] | None, size: float) -> None:
        if text.strip():
            found.append(Run(text, abs(size * tm[3] * cm[3]), str((font or {}).get("/BaseFont", ""))))

    page.extract_text(visitor_text=visit)
    return found


def inks(reader: PdfReader) -> set[tuple[str, tuple[float, ...]]]:
    """Give every colour that the pages set, with the operator that sets it."""
    setters = {b"g", b"G", b"rg", b"RG", b"k", b"K", b"sc", b"SC", b"scn", b"SCN"}
    found = set()
    for page in reader.pages:
        for operands, operator in ContentStream(page.get_contents(), reader).operations:
            if operator in setters:
                found.add((operator.decode(), tuple(float(part) for part in operands)))
    return found


def outline(reader: PdfReader) -> list[tuple[str, int]]:
    """Give the outline: titles and the pages they lead to, from 1."""
    return [(str(entry.title), _page(reader, entry)) for entry in _flat(reader.outline)]


def _flat(entries: object) -> Iterator[Destination]:
    assert isinstance(entries, list)
    for entry in entries:
        if isinstance(entry, Destination):
            yield entry
        else:
            yield from _flat(entry)


def _page(reader: PdfReader, entry: Destination) -> int:
    number = reader.get_destination_page_number(entry)
    assert number is not None
    return number + 1


def fonts(pdf: Path) -> list[tuple[str, bool]]:
    """Give the fonts of a PDF: names without their subset mark, and whether they are embedded."""
    told = subprocess.run([tool("pdffonts"), str(pdf)], check=True, capture_output=True, text=True)
    lines = [line.split() for line in told.stdout.splitlines()[2:]]
    return [(fields[0].partition("+")[2], fields[-5] == "yes") for fields in lines]
