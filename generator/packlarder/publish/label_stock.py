"""Label sheets, one line each: where every label lies on its page, and what it serves for.

A new sheet is one line in a table below; `tests/paper/test_label_stock.py` holds each line against its page. Lengths
are millimetres, pairs are across and down.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

from packlarder.publish.sizes import SHEETS

LARGE_MM2 = 6100
"""From this area on a label takes body type of 10 pt and more."""

HUGE_MM2 = 12000
"""From this area on it takes type to be read from across a room."""

Pair = tuple[float, float]


class Purpose(StrEnum):
    """What a label is stuck on."""

    JAR = "jar"
    LID = "lid"
    PACK = "pack"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """Where one label lies on its page; `number` counts from 1, row by row."""

    number: int
    left_mm: float
    top_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelStock:
    """A sheet of labels, or a single one.

    `grid` is columns and rows, `size_mm` the label, `start_mm` the first one's left and top, `pitch_mm` how far the
    next one is. A round label has its diameter twice. `cut` asks for hairlines to cut along. `standing` says how
    firmly the geometry is known.
    """

    id: str
    name: str
    page_mm: Pair
    grid: tuple[int, int]
    size_mm: Pair
    start_mm: Pair
    pitch_mm: Pair
    corner_mm: float = 2.5
    serves: tuple[Purpose, ...] = (Purpose.JAR, Purpose.PACK)
    is_round: bool = False
    cut: bool = False
    standing: str = "common practice, from memory"

    @property
    def count(self) -> int:
        """Give the number of labels on a page."""
        return self.grid[0] * self.grid[1]

    @property
    def width_mm(self) -> float:
        """Give the width of a label."""
        return self.size_mm[0]

    @property
    def height_mm(self) -> float:
        """Give the height of a label."""
        return self.size_mm[1]

    @property
    def area_mm2(self) -> float:
        """Give the area of a label, its corners included."""
        return self.width_mm * self.height_mm

    @property
    def is_upright(self) -> bool:
        """Tell whether a label is taller than it is wide."""
        return self.height_mm > self.width_mm

    @property
    def cells(self) -> tuple[Cell, ...]:
        """Give the place of every label of a page, row by row."""
        columns, rows = self.grid
        return tuple(
            Cell(
                number=row * columns + column + 1,
                left_mm=round(self.start_mm[0] + column * self.pitch_mm[0], 4),
                top_mm=round(self.start_mm[1] + row * self.pitch_mm[1], 4),
            )
            for row in range(rows)
            for column in range(columns)
        )


A4, LETTER = ((sheet.width_mm, sheet.height_mm) for sheet in SHEETS)


def _boxes(page: Pair, id: str, name: str, grid: tuple[int, int], size: Pair, start: Pair, pitch: Pair) -> LabelStock:
    """Write down a sheet of rectangles."""
    return LabelStock(id=id, name=name, page_mm=page, grid=grid, size_mm=size, start_mm=start, pitch_mm=pitch)


def _rounds(
    page: Pair, id: str, name: str, grid: tuple[int, int], across: float, start: Pair, pitch: Pair
) -> LabelStock:
    """Write down a sheet of round labels, `across` wide."""
    boxes = _boxes(page, id, name, grid, (across, across), start, pitch)
    return replace(boxes, corner_mm=across / 2, serves=(Purpose.LID,), is_round=True)


def _single(id: str, name: str, size: Pair) -> LabelStock:
    """Write down a label that is its own page, as printers of labels take it."""
    return replace(_boxes(size, id, name, (1, 1), size, (0, 0), size), corner_mm=0)


def _to_cut(stock: LabelStock) -> LabelStock:
    """Print a sheet on plain paper: square corners unless it is round, hairlines to cut along."""
    return replace(stock, cut=True, corner_mm=stock.corner_mm if stock.is_round else 0, standing="ours")


# Page, id, name, columns and rows, size, left and top of the first, pitch.
ON_SHEETS = (
    _boxes(A4, "a4-8", "A4, 8 of 99.1 × 67.7 mm", (2, 4), (99.1, 67.7), (4.65, 13.1), (101.6, 67.7)),
    _boxes(A4, "a4-10", "A4, 10 of 99.1 × 57 mm", (2, 5), (99.1, 57), (4.65, 6), (101.6, 57)),
    _boxes(LETTER, "letter-6", "Letter, 6 of 4 × 3⅓ in", (2, 3), (101.6, 84.667), (3.969, 12.7), (106.363, 84.667)),
    _boxes(LETTER, "letter-10", "Letter, 10 of 4 × 2 in", (2, 5), (101.6, 50.8), (3.969, 12.7), (106.363, 50.8)),
    _rounds(A4, "a4-round-12", "A4, 12 round of 60 mm", (3, 4), 60, (10, 15), (65, 69)),
    _rounds(A4, "a4-round-24", "A4, 24 round of 40 mm", (4, 6), 40, (16, 13.5), (46, 46)),
    _rounds(LETTER, "letter-round-12", "Letter, 12 round of 2½ in", (3, 4), 63.5, (6.35, 6.35), (69.85, 67.733)),
    _rounds(LETTER, "letter-round-20", "Letter, 20 round of 2 in", (4, 5), 50.8, (3.969, 12.7), (52.388, 50.8)),
)
ON_PLAIN_PAPER = (
    _boxes(A4, "a4-cut", "A4 to cut apart, 8 of 98 × 70 mm", (2, 4), (98, 70), (7, 8.5), (98, 70)),
    _boxes(LETTER, "letter-cut", "Letter to cut apart, 6 of 100 × 88 mm", (2, 3), (100, 88), (7.95, 7.7), (100, 88)),
    _rounds(A4, "a4-cut-round", "A4 to cut out, 12 round of 60 mm", (3, 4), 60, (11, 18), (64, 67)),
    _rounds(LETTER, "letter-cut-round", "Letter to cut out, 12 round of 60 mm", (3, 4), 60, (13.95, 12.2), (64, 65)),
)
SINGLE = (
    _single("one-62x100", "single labels, 62 × 100 mm", (62, 100)),
    _single("one-100x60", "single labels, 100 × 60 mm", (100, 60)),
    _single("one-4x6", "single labels, 4 × 6 in", (101.6, 152.4)),
)
STOCKS = (*ON_SHEETS, *map(_to_cut, ON_PLAIN_PAPER), *SINGLE)


def label_stock(id: str) -> LabelStock | None:
    """Find a label sheet by its id."""
    return next((stock for stock in STOCKS if stock.id == id), None)


def stocks_for(purpose: Purpose) -> tuple[LabelStock, ...]:
    """Give the label sheets that serve for something."""
    return tuple(stock for stock in STOCKS if purpose in stock.serves)
