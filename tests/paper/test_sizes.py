"""Sizes as data: what fits on what, and which way round."""

import pytest

from packlarder.publish.sizes import PAGES, PageSize, bed, page_size

LEAST_MARGIN_MM = 6.35
"""Reference figures on paper: margin at least 6.35 mm."""


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.id)
def test_spreads_fit_on_their_sheet(page: PageSize) -> None:
    """Two pages side by side, and as many rows as the bed says, are no larger than the sheet."""
    laid = bed(page)
    assert 2 * page.width_mm <= laid.width_mm + 0.05
    assert laid.rows * page.height_mm <= laid.height_mm + 0.05


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.id)
def test_margins_keep_out_of_what_printers_leave_white(page: PageSize) -> None:
    """Every margin is at least 6.35 mm, and type is never made smaller than the least sizes."""
    assert min(page.top_mm, page.bottom_mm, page.inner_mm, page.outer_mm) >= LEAST_MARGIN_MM
    assert page.type_scale >= 1


@pytest.mark.parametrize(
    ("size", "rows", "long_edge", "trims"),
    [
        ("a6", 2, True, False),  # 2 x 105 = 210 across, 2 x 148 = 296 of 297 up
        ("quarter-letter", 2, True, False),  # 2 x 107.95 = 215.9, 2 x 139.7 = 279.4
        ("a5", 1, False, False),  # 2 x 148 = 296 of 297 across a sheet on its side
        ("half-letter", 1, False, False),  # 2 x 139.7 = 279.4
        ("card-4x6", 1, True, True),  # 2 x 101.6 = 203.2 of 215.9; 152.4 of 279.4
    ],
)
def test_how_spreads_lie(size: str, rows: int, *, long_edge: bool, trims: bool) -> None:
    """Rows, the edge to turn on, and whether there is something to trim follow from the two sizes."""
    page = page_size(size)
    assert page is not None
    laid = bed(page)
    assert (laid.rows, laid.turns_on_long_edge, laid.trims(page)) == (rows, long_edge, trims)


def test_page_too_large_for_its_sheet() -> None:
    """A line of data that can not work says so: two pages of 200 mm do not fit on A4 either way."""
    with pytest.raises(ValueError, match="no spread of big fits on A4"):
        bed(PageSize(id="big", name="big", width_mm=200, height_mm=200, sheet="a4"))
