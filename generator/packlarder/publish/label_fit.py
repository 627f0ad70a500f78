"""How a label can be set in its cell: ways in order, from the largest type with its code down to three cells without.

The code goes before the type shrinks below what its size of label asks for, and no text ever goes: what one cell can
not hold at the least type is set in two or three. Type sizes are points at which an older person reads at arm's length
(16 pt bold for a name, 10 pt for the text of a large label, never under 8): common practice.
"""

from collections.abc import Generator, Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from math import sqrt
from types import MappingProxyType
from typing import TypeAlias

from packlarder.publish.label_code import Code, fit_code
from packlarder.publish.label_stock import HUGE_MM2, LARGE_MM2, LabelStock, Purpose

LEAST_PT = 8.0
LEAST_BIG_PT = 14.0
MM_PER_PT = 25.4 / 72

HUGE = ((15.0, 32.0), (14.0, 28.0), (13.0, 25.0), (12.0, 22.0), (11.0, 19.0), (10.0, 16.0))
LARGE = ((12.0, 23.0), (11.5, 21.0), (11.0, 19.0), (10.5, 17.0), (10.0, 16.0))
SMALL = ((10.5, 18.0), (10.0, 17.0), (9.5, 16.0), (9.0, 15.0), (8.5, 14.0), (8.0, 13.0))
"""Type of the text and of the name, from the first that is tried to the least."""

ROOMS = (1.0, 0.82)
"""Shares of the room for a code that are tried."""

LID_WAYS = (
    (2.1, 0.8, 0.76),
    (1.7, 0.7, 0.76),
    (1.4, 0.65, 0.76),
    (1.4, 0.65, 0.66),
    (1.0, 0.0, 0.76),
    (1.0, 0.0, 0.66),
)
"""How much larger than the rest a lid's name is, down to which share of the largest type, and how far down it goes."""

MOST_CODE_MM = 36.0

MARK_LINES = (1, 2, 3)
INNER, TOP_REACH = 0.93, 0.84
"""How much of the radius of a lid is printed on, and how far up the state stands."""

LID_LINE, RAW_LINE, RAW_FRAME_MM = 1.2, 1.9, 1.4
"""The height of a line of a lid and of the word RAW, as a share of the type, and what RAW's frame adds."""

SPLITS: Mapping[Purpose, tuple[tuple[str, ...], ...]] = MappingProxyType(
    {
        Purpose.JAR: (("use holds days",), ("use", "holds days"), ("use", "holds", "days")),
        Purpose.PACK: (
            ("open do warn holds",),
            ("open do", "warn holds"),
            ("open do", "warn", "holds"),
            ("open", "do", "warn holds"),
            ("open warn", "do", "holds"),
            ("open holds", "do", "warn"),
            ("open holds", "do"),
        ),
    }
)
"""Which blocks of a label stand in which cell: all in one, in two, in three. What it is, and RAW, stand in each.

A way that leaves a cell without text is not taken (`labels.py`).
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """A part of a round label: its middle is the label's; `top_mm` counts from the label's upper edge."""

    name: str
    top_mm: float
    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """One way to set a label: type sizes, air inside its edge, its code, its cells, the zones of a round one."""

    body_pt: float
    name_pt: float
    pad_mm: float
    code: Code | None = None
    pieces: tuple[str, ...] = ("lid",)
    snug: bool = False
    zones: tuple[Zone, ...] = ()

    @property
    def caption_pt(self) -> float:
        """Give the size of the small words that say what a figure is."""
        return max(LEAST_PT, round(0.8 * self.body_pt, 1))

    @property
    def raw_pt(self) -> float:
        """Give the size of the word RAW."""
        return max(self.body_pt, round(0.9 * self.name_pt, 1))

    @property
    def big_pt(self) -> float:
        """Give the size of the water and minutes of a trip pack."""
        return max(LEAST_BIG_PT, round(1.4 * self.body_pt, 1))


Ladders: TypeAlias = tuple[tuple[Fit, ...], ...]
"""Ways to set a label, better ladders first; on a ladder each way takes less room than the one before."""


def seek(ladders: Ladders) -> Generator[Fit, bool, Fit | None]:
    """Ask way by way whether it fits, and return the best that does; None where none does.

    A ladder is tried at its foot first, so that one with no way that fits costs a single try, and then halved.
    """
    for ways in ladders:
        if not ways or not (yield ways[-1]):
            continue
        low, best = 0, len(ways) - 1
        while low < best:
            middle = (low + best) // 2
            if (yield ways[middle]):
                best = middle
            else:
                low = middle + 1
        return ways[best]
    return None


def box_fits(stock: LabelStock, purpose: Purpose, code_text: str) -> Ladders:
    """Give the ways to set a label in a rectangle; `code_text` is "" where no code is wanted."""
    sizes = HUGE if stock.area_mm2 >= HUGE_MM2 else LARGE if stock.area_mm2 >= LARGE_MM2 else SMALL
    pad_mm = 3.2 if stock.area_mm2 >= LARGE_MM2 else 3.0
    whole, *split = SPLITS[purpose]
    airy = tuple(Fit(body_pt=body, name_pt=name, pad_mm=pad_mm, pieces=whole) for body, name in sizes)
    snug = replace(airy[-1], pad_mm=2.3, snug=True)
    drawn = dict.fromkeys(fit_code(code_text, share * _code_room_mm(stock, pad_mm)) for share in ROOMS)
    codes = [code for code in drawn if code]
    return (
        *(tuple(replace(fit, code=code) for fit in airy) for code in codes),
        tuple(replace(snug, code=code) for code in codes),
        (*airy, snug),
        *(tuple(replace(fit, pieces=pieces) for fit in (*airy, snug)) for pieces in split),
    )


def _code_room_mm(stock: LabelStock, pad_mm: float) -> float:
    """Give the side of the room for a code: beside the text of a wide label, at the foot of an upright one."""
    inner_mm = stock.width_mm - 2 * pad_mm
    most_mm = 0.5 * inner_mm if stock.is_upright else 0.38 * inner_mm
    return min(MOST_CODE_MM, most_mm, 0.44 * (stock.height_mm - 2 * pad_mm))


def lid_fits(stock: LabelStock, *, raw: bool, days: int) -> Ladders:
    """Give the ways to set a round label with so many days below its name, and its mark on one to three lines."""
    most_pt = max(LEAST_PT, 0.25 * stock.width_mm)
    steps = round((most_pt - LEAST_PT) / 0.5)
    bodies = tuple(LEAST_PT + 0.5 * step for step in range(steps, -1, -1))
    return tuple(
        tuple(
            _lid_fit(stock, body, share * body, raw=raw, lines=(1,) * days + (mark,), reach=reach)
            for body in bodies
            if body >= least * most_pt
        )
        for share, least, reach in LID_WAYS
        for mark in MARK_LINES
    )


def _lid_fit(
    stock: LabelStock, body_pt: float, name_pt: float, *, raw: bool, lines: tuple[int, ...], reach: float
) -> Fit:
    """Divide a round label: the state at the top, the name across the middle, lines that grow shorter below."""
    radius = stock.width_mm / 2
    inner = INNER * radius
    line_mm = LID_LINE * body_pt * MM_PER_PT
    state_mm = RAW_LINE * body_pt * MM_PER_PT + RAW_FRAME_MM if raw else line_mm
    top, bottom = -TOP_REACH * inner, reach * inner
    edges = [top, top + state_mm, *(bottom - line_mm * sum(lines[zone:]) for zone in range(len(lines) + 1))]
    names = ["state", "name", *(f"line-{number + 1}" for number in range(len(lines)))]
    zones = tuple(
        Zone(
            name=name,
            top_mm=round(radius + upper, 3),
            width_mm=round(2 * sqrt(inner**2 - max(abs(upper), abs(lower)) ** 2), 3),
            height_mm=round(lower - upper, 3),
        )
        for name, (upper, lower) in zip(names, pairwise(edges), strict=True)
    )
    return Fit(body_pt=body_pt, name_pt=round(name_pt, 1), pad_mm=0, zones=zones)
