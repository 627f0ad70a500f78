"""Labels, read back from their PDF: on every stock, for everything that it serves."""

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import combinations
from pathlib import Path

import pytest
from pypdf import PdfReader
from tests.paper import reading
from tests.paper.label_reading import Paper, papers, squeezed, texts_on, words_as_drawn
from tests.paper.label_samples import HARD, LABELS, jar_texts, lid_texts, pack_texts

from packlarder.faults import Severity
from packlarder.publish.label_stock import LARGE_MM2, STOCKS, LabelStock, Purpose
from packlarder.publish.labels import LabelJob, LabelSheets, build_labels
from packlarder.sheets.label_sheet import JarLabel, TripPackLabel

JOBS = [(purpose, stock) for stock in STOCKS for purpose in stock.serves]

CELLS = dict.fromkeys(("a4-8", "a4-10", "a4-cut", "letter-10", "one-62x100", "one-100x60"), 2)
"""How many labels the hardest label of a jar takes, where it is not one."""

NO_ROOM = {(Purpose.LID, "a4-round-24"): {HARD.name}}
"""What is left out, and said to be."""


@dataclass(frozen=True, kw_only=True)
class Printed:
    """The sample labels on one stock."""

    purpose: Purpose
    stock: LabelStock
    first: int
    sheets: LabelSheets
    pdf: Path

    @cached_property
    def reader(self) -> PdfReader:
        """Open the file."""
        return PdfReader(self.pdf)

    @cached_property
    def words(self) -> list[list[reading.Word]]:
        """Read the words of each page as they were drawn."""
        return words_as_drawn(self.pdf)

    @cached_property
    def papers(self) -> list[list[Paper]]:
        """Read where the labels of each page lie."""
        return [papers(page) for page in self.reader.pages]

    @cached_property
    def texts(self) -> list[str]:
        """Read what stands on each label, in the order of the cells."""
        return [text for page, words in zip(self.papers, self.words, strict=True) for text in texts_on(page, words)]

    @property
    def runs(self) -> list[reading.Run]:
        """Read the pieces of text with their sizes."""
        return [run for page in self.reader.pages for run in reading.runs(page)]

    @property
    def wanted(self) -> list[tuple[str, bool, list[str]]]:
        """Give the name of each label that has room, whether it is RAW, and the texts that it must bear."""
        if self.purpose is Purpose.PACK:
            return [(label.dish, label.raw, pack_texts(label)) for label in LABELS.packs]
        texts_of = lid_texts if self.purpose is Purpose.LID else jar_texts
        left_out = NO_ROOM.get((self.purpose, self.stock.id), set())
        return [(label.name, label.raw, texts_of(label)) for label in LABELS.jars if label.name not in left_out]

    @property
    def cells(self) -> dict[str, list[str]]:
        """Give what stands on the label or the two labels of each name."""
        return {name: [text for text in self.texts if squeezed(name) in text] for name, _, _ in self.wanted}


@pytest.fixture(scope="module", params=JOBS, ids=lambda job: f"{job[0]}-{job[1].id}")
def printed(request: pytest.FixtureRequest, checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> Printed:
    """Print the sample labels on each stock, from its last cell but one on, so that they go on to a second sheet."""
    purpose, stock = request.param
    first, out = max(1, stock.count - 1), tmp_path_factory.mktemp("labels")
    job = LabelJob(purpose=purpose, stock=stock.id, first=first)
    (sheets,) = build_labels(LABELS, (job,), theme=checkout / "theme", out=out)
    return Printed(purpose=purpose, stock=stock, first=first, sheets=sheets, pdf=out / job.file)


def test_every_label_lies_on_its_cell(printed: Printed) -> None:
    """The paper of each label lies within 0.3 mm of its cell, from the first cell that was asked for on."""
    cells = printed.stock.cells
    found = [paper for page in printed.papers for paper in page]
    assert len(found) == sum(map(len, printed.cells.values()))
    for spot, paper in enumerate(found, printed.first - 1):
        cell = cells[spot % len(cells)]
        wanted = (cell.left_mm, cell.top_mm, *printed.stock.size_mm)
        assert (paper.left, paper.top, paper.width, paper.height) == pytest.approx(wanted, abs=0.3)


def test_pages_are_as_large_as_the_stock(printed: Printed) -> None:
    """Every page has the size of the sheet, and the sheets are as many as were told."""
    wanted = tuple(length * reading.PT_PER_MM for length in printed.stock.page_mm)
    for page in printed.reader.pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(wanted, abs=0.05)
    assert len(printed.reader.pages) == printed.sheets.pages
    last = printed.first - 1 + len(printed.texts)
    assert printed.sheets.next_first == last % printed.stock.count + 1


def test_no_word_outside_its_label(printed: Printed) -> None:
    """Every word lies wholly on the paper of one label, on a round one within the circle."""
    for page, words in zip(printed.papers, printed.words, strict=True):
        for word in words:
            assert any(paper.holds(word, is_round=printed.stock.is_round) for paper in page), word


def test_no_word_lies_on_another(printed: Printed) -> None:
    """No two words of a label overlap: what stands at its foot, and the zones of a round one, keep apart."""
    for page, words in zip(printed.papers, printed.words, strict=True):
        for paper in page:
            for one, other in combinations(filter(paper.middle_of, words), 2):
                assert not reading.overlap(one, other), (one, other)


def test_no_word_is_missing(printed: Printed) -> None:
    """Each label bears all its texts, each whole and in one piece; one that has two cells bears them on the two."""
    for name, _, texts in printed.wanted:
        on_it = printed.cells[name]
        assert 1 <= len(on_it) <= 3, name
        for text in texts:
            assert any(squeezed(text) in found for found in on_it), (name, text)


def test_raw_on_each_label_of_what_is_raw_and_on_no_other(printed: Printed) -> None:
    """The word RAW stands once on each label of raw food, on both of two, and on nothing else."""
    for name, raw, _ in printed.wanted:
        rest = [found.replace("crawl", "") for found in printed.cells[name]]
        assert [found.count("raw") for found in rest] == [int(raw)] * len(rest), name


def test_what_has_no_room_on_one_label_is_said(printed: Printed) -> None:
    """A warning names each label that takes more than one cell, and each that is left out, with its file."""
    several = {name for name, found in printed.cells.items() if len(found) > 1}
    assert named(printed, "label-several-cells") == several
    assert named(printed, "label-no-room") == NO_ROOM.get((printed.purpose, printed.stock.id), set())
    assert printed.sheets.printed == len(printed.wanted)
    if printed.purpose is Purpose.JAR:
        hard = printed.cells.pop(HARD.name)
        assert len(hard) == CELLS.get(printed.stock.id, 1)
        assert several <= {HARD.name}


def named(printed: Printed, code: str) -> set[str]:
    """Give the names that warnings of a kind tell of."""
    faults = [fault for fault in printed.sheets.faults if fault.code == code]
    assert all(fault.severity is Severity.WARNING and "larger stock" in fault.help for fault in faults)
    assert all(fault.place.file.startswith(("batches/", "dishes/")) for fault in faults)
    return {fault.message.split('"')[1] for fault in faults}


def test_nothing_under_the_least_type(printed: Printed) -> None:
    """No text is under 8 pt; on large labels nothing but captions is under 10."""
    assert min(run.size for run in printed.runs) >= 8 - 0.01
    if printed.stock.area_mm2 >= LARGE_MM2 and printed.purpose is Purpose.JAR:
        body = squeezed("".join(run.text for run in printed.runs if run.size >= 10 - 0.01))
        for label in LABELS.jars:
            for text in (label.form, label.bring_back, label.contains, label.use_by, label.mark, label.warning):
                assert squeezed(text) in body, text


def test_names_and_what_to_do_are_large_and_bold(printed: Printed) -> None:
    """Names are bold, on large labels at 16 pt or more; water, minutes and how to tell are bold at 14 or more."""
    least = 8 if printed.stock.is_round else 16 if printed.stock.area_mm2 >= LARGE_MM2 else 13
    assert squeezed_bold(printed.runs, least, [name for name, _, _ in printed.wanted])
    if printed.purpose is Purpose.PACK:
        assert squeezed_bold(printed.runs, 14, [text for p in LABELS.packs for text in (p.water, p.minutes, p.done)])
    if printed.purpose is Purpose.JAR:
        assert squeezed_bold(printed.runs, 8, [text for j in LABELS.jars for text in (j.contains, j.may_contain)])


def squeezed_bold(runs: list[reading.Run], least_pt: float, texts: list[str]) -> bool:
    """Tell whether all texts are set bold and no smaller."""
    bold = squeezed("".join(run.text for run in runs if run.size >= least_pt - 0.01 and run.font.endswith("-Bold")))
    return all(squeezed(text) in bold for text in texts)


def test_one_ink(printed: Printed) -> None:
    """Black, on the white of the label, and nothing else."""
    assert {colour for _, colour in reading.inks(printed.reader)} == {(0.0, 0.0, 0.0), (1.0, 1.0, 1.0)}


def test_order_on_a_jar(checkout: Path, tmp_path: Path) -> None:
    """What it is, the sachet, what to do, weight, allergens, warning, days, mark, lines to write on."""
    job = LabelJob(purpose=Purpose.JAR, stock="one-4x6")
    build_labels(replace(LABELS, jars=(HARD,), with_code=False), (job,), theme=checkout / "theme", out=tmp_path)
    (page,) = words_as_drawn(tmp_path / job.file)
    text = squeezed(" ".join(word.text for word in page))
    asked = (
        HARD.name, HARD.form, HARD.take_out, HARD.bring_back, HARD.cook_to, HARD.net, HARD.stands_for, HARD.contains,
        HARD.may_contain, HARD.warning, HARD.dried, HARD.use_by, HARD.mark, HARD.nth, HARD.keeping, "opened", "left",
    )  # fmt: skip  # in their order
    places = [text.index(squeezed(one)) for one in asked]
    assert places == sorted(places)


def test_kinds_are_as_told() -> None:
    """The samples hold both kinds of label, raw and not, with and without a sachet."""
    assert {label.raw for label in LABELS.jars} == {bool(label.take_out) for label in LABELS.jars} == {True, False}
    assert all(isinstance(label, JarLabel) for label in LABELS.jars)
    assert all(isinstance(label, TripPackLabel) for label in LABELS.packs)
    assert len(HARD.name) == 60
    assert HARD.contains.count(",") == 11
