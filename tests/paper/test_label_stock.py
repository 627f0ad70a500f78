"""Label sheets as data: every label lies on its page, and none on another."""

import pytest

from packlarder.publish.label_stock import STOCKS, LabelStock, Purpose, label_stock, stocks_for

SLACK_MM = 0.05
"""Inches rounded to the thousandth of a millimetre."""


@pytest.fixture(params=STOCKS, ids=lambda stock: stock.id)
def stock(request: pytest.FixtureRequest) -> LabelStock:
    """Give each sheet."""
    assert isinstance(request.param, LabelStock)
    return request.param


def test_every_label_lies_on_its_page(stock: LabelStock) -> None:
    """No label reaches over an edge of its page."""
    width, height = stock.page_mm
    for cell in stock.cells:
        assert cell.left_mm >= 0
        assert cell.top_mm >= 0
        assert cell.left_mm + stock.width_mm <= width + SLACK_MM
        assert cell.top_mm + stock.height_mm <= height + SLACK_MM


def test_no_label_lies_on_another(stock: LabelStock) -> None:
    """Each label has its place to itself: the pitch is no less than the label."""
    for number, cell in enumerate(stock.cells):
        for other in stock.cells[number + 1 :]:
            across = abs(cell.left_mm - other.left_mm) >= stock.width_mm - SLACK_MM
            down = abs(cell.top_mm - other.top_mm) >= stock.height_mm - SLACK_MM
            assert across or down, (cell, other)


def test_the_grid_is_all_the_page_takes(stock: LabelStock) -> None:
    """Neither a further column nor a further row would fit: the counts are right; cells count from 1, row by row."""
    columns, rows = stock.grid
    assert [cell.number for cell in stock.cells] == list(range(1, columns * rows + 1))
    assert stock.start_mm[0] + columns * stock.pitch_mm[0] + stock.width_mm > stock.page_mm[0]
    assert stock.start_mm[1] + rows * stock.pitch_mm[1] + stock.height_mm > stock.page_mm[1]


def test_the_grid_lies_in_the_middle(stock: LabelStock) -> None:
    """Margins left and right, and above and below, are the same to half a millimetre, as sheets are cut."""
    last = stock.cells[-1]
    assert stock.page_mm[0] - last.left_mm - stock.width_mm == pytest.approx(stock.start_mm[0], abs=0.5)
    assert stock.page_mm[1] - last.top_mm - stock.height_mm == pytest.approx(stock.start_mm[1], abs=0.5)


def test_shape_and_purpose(stock: LabelStock) -> None:
    """Round labels are round and serve lids; the others serve jars and packs; each says how firmly it is known."""
    assert stock.serves == ((Purpose.LID,) if stock.is_round else (Purpose.JAR, Purpose.PACK))
    assert not stock.is_round or stock.width_mm == stock.height_mm == 2 * stock.corner_mm
    assert stock.standing


@pytest.mark.parametrize(
    ("id", "count", "size"),
    [
        ("a4-8", 8, (99.1, 67.7)),
        ("a4-10", 10, (99.1, 57)),
        ("a4-round-12", 12, (60, 60)),
        ("a4-round-24", 24, (40, 40)),
        ("letter-6", 6, (4 * 25.4, 10 / 3 * 25.4)),
        ("letter-10", 10, (4 * 25.4, 2 * 25.4)),
        ("letter-round-12", 12, (2.5 * 25.4, 2.5 * 25.4)),
        ("letter-round-20", 20, (2 * 25.4, 2 * 25.4)),
        ("one-62x100", 1, (62, 100)),
        ("one-100x60", 1, (100, 60)),
        ("one-4x6", 1, (4 * 25.4, 6 * 25.4)),
    ],
)
def test_common_sizes(id: str, count: int, size: tuple[float, float]) -> None:
    """The sheets that people buy are there, with as many labels of that size."""
    stock = label_stock(id)
    assert stock is not None
    assert stock.count == count
    assert stock.size_mm == pytest.approx(size, abs=0.001)


def test_ids_are_unique_and_each_purpose_is_served() -> None:
    """No two sheets have one id; each purpose has sheets for A4, Letter and plain paper."""
    assert len({stock.id for stock in STOCKS}) == len(STOCKS)
    for purpose in Purpose:
        ids = " ".join(stock.id for stock in stocks_for(purpose))
        assert all(paper in ids for paper in ("a4-", "letter-", "a4-cut", "letter-cut"))
    assert label_stock("papyrus") is None
