"""Saddle stitch: which pages of a booklet lie side by side on which sheet, so that it reads in order once folded.

A *leaf* is a small sheet that is folded once and carries four pages; leaf 0 is the outermost. A printer's sheet can
carry several leaves one above the other (`rows`): after printing, the pile is cut across and the upper piles are laid
upon the lower ones, which gives the leaves in order.

Pure functions; pages count from 1. Formula: reference figures on paper, saddle stitch of N pages, leaf s:
front [N-2s | 1+2s], back [2+2s | N-1-2s].
"""

from dataclasses import dataclass
from typing import TypeAlias

PAGES_PER_LEAF = 4

Spread: TypeAlias = tuple[int, int]
"""Two pages side by side, left and right, as printed (not as read)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """A folded sheet of four pages; `depth` counts from the outermost, 0."""

    depth: int
    front: Spread
    back: Spread


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedSheet:
    """The leaves that one sheet in the printer carries, from the top down."""

    leaves: tuple[Leaf, ...]


def padded(pages: int, rows: int = 1) -> int:
    """Round a number of pages up to whole sheets of `rows` leaves."""
    whole = PAGES_PER_LEAF * rows
    return -(-pages // whole) * whole


def leaves(pages: int) -> tuple[Leaf, ...]:
    """Give the leaves of a booklet from the outermost inwards. Raises ValueError unless `pages` is a multiple of 4."""
    if pages <= 0 or pages % PAGES_PER_LEAF:
        raise ValueError(f"a folded booklet has a multiple of {PAGES_PER_LEAF} pages, not {pages}")
    return tuple(
        Leaf(depth=s, front=(pages - 2 * s, 1 + 2 * s), back=(2 + 2 * s, pages - 1 - 2 * s))
        for s in range(pages // PAGES_PER_LEAF)
    )


def cut_and_stack(pages: int, rows: int) -> tuple[PrintedSheet, ...]:
    """Lay the leaves on sheets of `rows` leaves so that the cut piles, upper upon lower, are in order.

    Raises ValueError unless the leaves fill whole sheets (`padded`).
    """
    ordered = leaves(pages)
    if len(ordered) % rows:
        raise ValueError(f"{len(ordered)} leaves do not fill sheets of {rows}")
    sheets = len(ordered) // rows
    return tuple(
        PrintedSheet(leaves=tuple(ordered[row * sheets + sheet] for row in range(rows))) for sheet in range(sheets)
    )


def creep_mm(leaf: Leaf, paper_mm: float) -> float:
    """Tell how far a leaf's pages move towards the fold, since each leaf within another sticks out by its thickness."""
    return leaf.depth * paper_mm
