"""The imposed booklet, read back from its PDF: which page lies where."""

from itertools import product

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject
from tests.paper import reading
from tests.paper.conftest import Booklet
from tests.paper.reading import PT_PER_MM, Word

from packlarder.publish.imposition import cut_and_stack


def quarter(sheet: list[Word], printed: Booklet, row: int, half: int) -> list[Word]:
    """Give the words of one page of a sheet: `row` from the top, `half` 0 left, 1 right, in the page's own places."""
    width, height = printed.size.width_mm * PT_PER_MM, printed.bed.band_mm * PT_PER_MM
    middle = printed.bed.width_mm * PT_PER_MM / 2
    left, top = middle - width * (1 - half), row * height
    return [
        Word(word.text, word.left - left, word.top - top, word.right - left, word.bottom - top)
        for word in sheet
        if left <= (word.left + word.right) / 2 < left + width and top <= (word.top + word.bottom) / 2 < top + height
    ]


def text(words: list[Word]) -> list[str]:
    """Give words from the top down, then from the left: poppler's own order differs between one page and four."""
    return [word.text for word in sorted(words, key=lambda word: (round(word.bottom), word.left))]


def test_sheets_have_their_size_and_number(printed: Booklet) -> None:
    """Each leaf of four pages has a front and a back; the sheets are of the paper's size."""
    pages = PdfReader(printed.imposed).pages
    assert len(pages) == 2 * len(printed.reader.pages) // (4 * printed.bed.rows)
    wanted = (printed.bed.width_mm * PT_PER_MM, printed.bed.height_mm * PT_PER_MM)
    for page in pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(wanted, abs=0.01)


def test_every_page_lies_where_the_formula_says(printed: Booklet) -> None:
    """Read back from the sheets, each quarter holds the words of the page that belongs there, and those only."""
    sheets = reading.words(printed.imposed)
    planned = cut_and_stack(len(printed.words), printed.bed.rows)
    for number, sheet in enumerate(planned):
        for (row, leaf), half in product(enumerate(sheet.leaves), (0, 1)):
            for side, spread in enumerate((leaf.front, leaf.back)):
                found = quarter(sheets[2 * number + side], printed, row, half)
                assert sorted(text(found)) == sorted(word.text for word in printed.words[spread[half] - 1])


def test_inner_leaves_move_towards_the_fold(printed: Booklet) -> None:
    """The innermost leaf's number stands nearer the fold than in the plain file: by 0.1 mm a leaf around it."""
    sheets = reading.words(printed.imposed)
    planned = cut_and_stack(len(printed.words), printed.bed.rows)
    innermost = planned[-1].leaves[-1]
    page = innermost.front[1]
    plain = next(word for word in printed.words[page - 1] if word.text == str(page))
    found = next(
        word
        for word in quarter(sheets[2 * (len(planned) - 1)], printed, printed.bed.rows - 1, 1)
        if word.text == str(page)
    )
    moved_mm = (plain.left - found.left) / PT_PER_MM
    assert moved_mm == pytest.approx(innermost.depth * 0.1, abs=0.02)
    assert innermost.depth == len(printed.words) // 4 - 1


def test_fonts_stay_embedded(printed: Booklet) -> None:
    """Imposing keeps the fonts and draws no page as a picture."""
    assert sorted(reading.fonts(printed.imposed)) == sorted(reading.fonts(printed.plain))
    for page in PdfReader(printed.imposed).pages:
        forms = reading.inside(page, "/Resources", "/XObject")
        assert isinstance(forms, DictionaryObject)
        assert {reading.inside(form, "/Subtype") for form in forms.values()} == {"/Form"}


def test_marks_to_cut_fold_and_staple(printed: Booklet) -> None:
    """A front has two fold ticks a row and a dashed cut between rows; the first has two marks for staples more."""
    pages = PdfReader(printed.imposed).pages
    counts = [reading.drawing(page).count(b" l S") for page in pages]
    rows = printed.bed.rows
    assert counts[0] == 2 * rows + (rows - 1) + 2
    assert set(counts[2::2]) == {2 * rows + (rows - 1)}
    assert set(counts[1::2]) == {0}
    assert reading.drawing(pages[0]).count(b"[4 3] 0 d") == rows - 1
