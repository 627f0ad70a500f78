"""A pack's label that takes several cells: each of them has something to say besides what it is."""

from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.paper.label_reading import papers, squeezed, texts_on, words_as_drawn
from tests.paper.label_samples import HARD_PACK

from packlarder.publish.label_stock import Purpose
from packlarder.publish.labels import LabelJob, build_labels
from packlarder.sheets.label_sheet import LabelSet

LONG = replace(
    HARD_PACK,
    raw=True,
    take_out="",
    caution="Wet right through, then cook until done. Keep apart from what is ready to eat.",
    may_contain="almond, lupin",
)


@pytest.mark.parametrize("stock", ["a4-8", "letter-10", "one-100x60"])
def test_no_cell_is_empty_but_for_its_head(stock: str, checkout: Path, tmp_path: Path) -> None:
    """Without a sachet to speak of, the first cell has what to do; the next have the caution, or what is in it."""
    job = LabelJob(purpose=Purpose.PACK, stock=stock)
    labels = LabelSet(title="", language="en", edition="0", packs=(LONG,))
    (sheets,) = build_labels(labels, (job,), theme=checkout / "theme", out=tmp_path)
    assert sheets.printed == 1
    drawn = zip(map(papers, PdfReader(tmp_path / job.file).pages), words_as_drawn(tmp_path / job.file), strict=True)
    cells = [text for page, words in drawn for text in texts_on(page, words)]
    assert len(cells) > 1
    bodies = (LONG.done, LONG.caution, LONG.may_contain, LONG.holds[0])
    assert all(any(squeezed(body) in cell for body in bodies) for cell in cells)
    assert all(any(squeezed(body) in cell for cell in cells) for body in bodies)
