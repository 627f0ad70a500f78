"""Page and sheet sizes, one line each: what a household can print on, and what it can carry in a pocket.

A new page size is one line in `PAGES`. How many booklet spreads a sheet takes, which way round it lies and how it is
turned follow from the two sizes.
"""

from dataclasses import dataclass

SLACK_MM = 0.05
"""Paper sizes rounded to the tenth of a millimetre may miss each other by this much and still fit."""

TRIM_MM = 0.5
"""A strip narrower than this is left on; scissors are no finer."""

MOST_LEAVES = 20
"""Sheets of office paper that fold as one and take a staple; common practice, no published figure."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """Paper as it lies in the printer, upright; `paper_mm` is the thickness of one sheet of 80 g office paper."""

    id: str
    name: str
    width_mm: float
    height_mm: float
    paper_mm: float = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class PageSize:
    """A page of the booklet; `type_scale` enlarges all type, which at 1 has its least sizes (see `booklet.css`).

    Margins keep out of what home printers leave white (6.35 mm); the inner one gives room to fold and hold.
    """

    id: str
    name: str
    width_mm: float
    height_mm: float
    sheet: str
    type_scale: float = 1.0
    top_mm: float = 7.5
    foot_mm: float = 14.0
    inner_mm: float = 12.0
    outer_mm: float = 8.0

    @property
    def bottom_mm(self) -> float:
        """Give the lower margin: the foot, with its title and number, grows with the type."""
        return self.foot_mm * self.type_scale

    @property
    def text_height_mm(self) -> float:
        """Give the height between the margins."""
        return self.height_mm - self.top_mm - self.bottom_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """How spreads lie on a sheet: the sheet's width and height as turned, and how many rows of spreads it takes."""

    sheet: Sheet
    width_mm: float
    height_mm: float
    rows: int

    @property
    def turns_on_long_edge(self) -> bool:
        """Tell which edge the sheet turns on for its other side: the spines run up and down, and so must the edge."""
        return self.height_mm > self.width_mm

    @property
    def band_mm(self) -> float:
        """Give the height that each row of spreads has to itself."""
        return self.height_mm / self.rows

    def trims(self, page: PageSize) -> bool:
        """Tell whether the sheet is larger than its spreads by more than a cut takes away."""
        return self.width_mm - 2 * page.width_mm > 2 * TRIM_MM or self.band_mm - page.height_mm > 2 * TRIM_MM


# ISO 216 for A sizes; ANSI/ASME Y14.1 for Letter. Thickness of 80 g/m2 paper: common practice.
SHEETS = (
    Sheet(id="a4", name="A4", width_mm=210, height_mm=297),
    Sheet(id="letter", name="Letter", width_mm=215.9, height_mm=279.4),
)

PAGES = (
    PageSize(id="a6", name="A6", width_mm=105, height_mm=148, sheet="a4"),
    PageSize(id="quarter-letter", name="quarter Letter", width_mm=107.95, height_mm=139.7, sheet="letter"),
    PageSize(id="card-4x6", name="4 × 6 inch card", width_mm=101.6, height_mm=152.4, sheet="letter"),
    PageSize(id="a5", name="A5", width_mm=148, height_mm=210, sheet="a4", type_scale=1.3),
    PageSize(id="half-letter", name="half Letter", width_mm=139.7, height_mm=215.9, sheet="letter", type_scale=1.3),
)


def page_size(size: str) -> PageSize | None:
    """Find a page size by its id."""
    return next((page for page in PAGES if page.id == size), None)


def bed(page: PageSize) -> Bed:
    """Lay spreads of a page size on its sheet, upright or across, whichever takes more rows."""
    sheet = next(sheet for sheet in SHEETS if sheet.id == page.sheet)
    upright = Bed(sheet=sheet, width_mm=sheet.width_mm, height_mm=sheet.height_mm, rows=0)
    across = Bed(sheet=sheet, width_mm=sheet.height_mm, height_mm=sheet.width_mm, rows=0)
    filled = [_filled(page, empty) for empty in (upright, across)]
    best = max(filled, key=lambda laid: laid.rows)
    if best.rows == 0:
        raise ValueError(f"no spread of {page.name} fits on {sheet.name}")
    return best


def _filled(page: PageSize, empty: Bed) -> Bed:
    fits = 2 * page.width_mm <= empty.width_mm + SLACK_MM
    rows = int((empty.height_mm + SLACK_MM) // page.height_mm) if fits else 0
    return Bed(sheet=empty.sheet, width_mm=empty.width_mm, height_mm=empty.height_mm, rows=rows)
