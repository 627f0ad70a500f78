"""The composing room for labels: HTML and CSS of some labels, each set in its own way, in a draft or on their cells.

In a draft the labels stand one below the other, each as high as it wants to be; so it is seen what fits.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import TypeAlias

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from packlarder.publish.label_fit import Fit
from packlarder.publish.label_stock import Cell, LabelStock, Purpose
from packlarder.publish.press import OUR_SCHEME, PX_PER_MM, Laid
from packlarder.publish.words import read_words
from packlarder.sheets.label_sheet import JarLabel, LabelSet, TripPackLabel

Label: TypeAlias = JarLabel | TripPackLabel

CUTS = f"{OUR_SCHEME}cuts.svg"
SLACK_MM = 0.05
HAIR_MM = 0.1
ARM_MM = 3.0
"""How far a cut mark reaches from the corner of a label."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What is set in one cell: a label or a part of it, counted from 0, in its way; `cell` is None in a draft."""

    id: str
    label: Label
    fit: Fit
    part: int = 0
    cell: Cell | None = None

    @property
    def blocks(self) -> str:
        """Name the blocks that stand in its cell."""
        return self.fit.pieces[self.part]

    @property
    def code_url(self) -> str:
        """Give the address of the label's code; "" if it has none."""
        code = self.fit.code
        return f"{OUR_SCHEME}{sha256(code.svg).hexdigest()[:16]}.svg" if code else ""


class LabelRoom:
    """Sets labels for one purpose on one stock."""

    def __init__(self, templates: Path, labels: LabelSet, stock: LabelStock, purpose: Purpose) -> None:
        """Take the templates' folder, what the labels are of, and what they are printed on and for."""
        self._jinja = Environment(
            loader=FileSystemLoader(templates), autoescape=True, undefined=StrictUndefined, trim_blocks=True
        )
        self.stock = stock
        words = read_words(templates / "words", labels.language)
        self._given: dict[str, object] = {
            "title": f"{labels.title} · {words[f'labels_{purpose.value}']}",
            "language": labels.language,
            "words": words,
            "purpose": purpose.value,
            "stock": stock,
            "cuts": CUTS if stock.cut else "",
        }

    def draft(self, pieces: Sequence[Piece]) -> tuple[str, str]:
        """Give HTML and CSS of a draft: one page, high enough for all."""
        return self._set((tuple(pieces),), draft_mm=(len(pieces) + 1) * 10 * self.stock.height_mm)

    def final(self, sheets: Sequence[Sequence[Piece]]) -> tuple[str, str]:
        """Give HTML and CSS of the sheets as printed."""
        return self._set(sheets, draft_mm=0)

    def _set(self, sheets: Sequence[Sequence[Piece]], *, draft_mm: float) -> tuple[str, str]:
        fits = {fit: f"fit-{number}" for number, fit in enumerate(dict.fromkeys(p.fit for s in sheets for p in s))}
        given = {**self._given, "sheets": sheets, "fits": fits, "draft_mm": draft_mm}
        return (
            self._jinja.get_template("labels.html").render(given),
            self._jinja.get_template("labels.css").render(given),
        )


def pictures(stock: LabelStock, pieces: Sequence[Piece]) -> Mapping[str, bytes]:
    """Give what the press must hold: the codes, by address, and the cut marks."""
    codes = {piece.code_url: piece.fit.code.svg for piece in pieces if piece.fit.code}
    return {**codes, CUTS: _cut_marks(stock)} if stock.cut else codes


def fits_its_cell(drafted: Laid, piece: Piece, stock: LabelStock) -> bool:
    """Tell whether a piece keeps to its cell, and in a round label each line to its zone."""
    if not piece.fit.zones:
        return _height_mm(drafted, piece.id) <= stock.height_mm + SLACK_MM
    return all(_height_mm(drafted, f"{piece.id}-{zone.name}") <= zone.height_mm + SLACK_MM for zone in piece.fit.zones)


def _height_mm(drafted: Laid, anchor: str) -> float:
    """Give the height of what bears an anchor; what runs over the draft's page is too high for anything."""
    found = [page.anchors[anchor] for page in drafted.pages if anchor in page.anchors]
    if not found:
        return 0
    (_, top, _, bottom) = found[0]
    return (bottom - top) / PX_PER_MM if len(found) == 1 else float("inf")


def _cut_marks(stock: LabelStock) -> bytes:
    """Draw what to cut along: a circle round each round label, a small cross at each corner of the others."""
    width, height = stock.page_mm
    drawn = "".join(_circle(cell, stock) if stock.is_round else _crosses(cell, stock) for cell in stock.cells)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" viewBox="0 0 {width} {height}">'
        f'<g fill="none" stroke="#000" stroke-width="{HAIR_MM}">{drawn}</g></svg>'
    ).encode()


def _circle(cell: Cell, stock: LabelStock) -> str:
    radius = stock.width_mm / 2  # the label's own white hides what lies within it
    return f'<circle cx="{cell.left_mm + radius:g}" cy="{cell.top_mm + radius:g}" r="{radius + HAIR_MM:g}"/>'


def _crosses(cell: Cell, stock: LabelStock) -> str:
    corners = (
        (cell.left_mm + right * stock.width_mm, cell.top_mm + down * stock.height_mm)
        for right in (0, 1)
        for down in (0, 1)
    )
    return "".join(
        f'<path d="M{x - ARM_MM:g} {y:g}H{x + ARM_MM:g}M{x:g} {y - ARM_MM:g}V{y + ARM_MM:g}"/>' for x, y in corners
    )
