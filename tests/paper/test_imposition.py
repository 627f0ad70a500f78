"""Which pages lie on which sheet, by the formula and by folding paper in the mind."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.publish.imposition import Leaf, creep_mm, cut_and_stack, leaves, padded

LEAVES = st.integers(min_value=1, max_value=60)
ROWS = st.integers(min_value=1, max_value=4)


def read_through(folded: tuple[Leaf, ...]) -> list[int]:
    """Turn the pages of folded leaves, outermost first: to the middle on the right halves, then back out on the left.

    Turning the right half of a leaf's front shows the left half of its back, since it lies behind it.
    """
    inwards = [page for leaf in folded for page in (leaf.front[1], leaf.back[0])]
    outwards = [page for leaf in reversed(folded) for page in (leaf.back[1], leaf.front[0])]
    return inwards + outwards


def test_eight_pages_by_the_published_formula() -> None:
    """Eight pages make two leaves: front [N-2s | 1+2s], back [2+2s | N-1-2s] for s = 0, 1 (numbers.md, section 10)."""
    assert leaves(8) == (
        Leaf(depth=0, front=(8, 1), back=(2, 7)),  # 8-0 | 1+0, 2+0 | 8-1-0
        Leaf(depth=1, front=(6, 3), back=(4, 5)),  # 8-2 | 1+2, 2+2 | 8-1-2
    )


@given(LEAVES)
def test_folded_leaves_read_in_order(count: int) -> None:
    """Folded one within the other, the pages run from 1 to N without a gap or a repetition."""
    pages = 4 * count
    assert read_through(leaves(pages)) == list(range(1, pages + 1))


@given(LEAVES)
def test_pages_side_by_side_add_up(count: int) -> None:
    """Left and right page of every side add up to N + 1, as of any stitched booklet."""
    pages = 4 * count
    assert {sum(side) for leaf in leaves(pages) for side in (leaf.front, leaf.back)} == {pages + 1}


@given(LEAVES, ROWS)
def test_cut_piles_laid_on_each_other_are_in_order(count: int, rows: int) -> None:
    """Cut across, upper pile upon lower, the leaves lie as for one row: outermost on top."""
    pages = padded(4 * count, rows)
    sheets = cut_and_stack(pages, rows)
    piles = [[sheet.leaves[row] for sheet in sheets] for row in range(rows)]
    assert tuple(leaf for pile in piles for leaf in pile) == leaves(pages)


@given(st.integers(min_value=1, max_value=400), ROWS)
def test_padding_fills_whole_sheets_and_no_more(pages: int, rows: int) -> None:
    """Pages are rounded up to whole sheets, 4 pages for each row, and never by a whole sheet."""
    whole = padded(pages, rows)
    assert whole % (4 * rows) == 0
    assert 0 <= whole - pages < 4 * rows


@pytest.mark.parametrize("pages", [0, -4, 2, 6, 33])
def test_no_leaves_for_odd_numbers_of_pages(pages: int) -> None:
    """What is no multiple of four can not be folded; that is a slip of ours."""
    with pytest.raises(ValueError, match="multiple of 4"):
        leaves(pages)


def test_no_half_filled_sheets() -> None:
    """Three leaves do not fill sheets of two rows."""
    with pytest.raises(ValueError, match="do not fill"):
        cut_and_stack(12, rows=2)


def test_creep_grows_with_depth() -> None:
    """Of 56 pages the innermost leaf moves by (56/4 - 1) x 0.1 = 1.3 mm (numbers.md, section 10), the outer by none."""
    folded = leaves(56)
    assert creep_mm(folded[0], 0.1) == 0
    assert creep_mm(folded[-1], 0.1) == pytest.approx(1.3)
