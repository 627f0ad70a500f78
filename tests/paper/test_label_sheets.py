"""Sheets of labels as a whole: where they start, what is wrong with a job, what the file says of itself."""

import subprocess
from dataclasses import replace
from pathlib import Path

import pytest
from PIL import Image
from pypdf import PdfReader
from pypdf.generic import ArrayObject, BooleanObject, StreamObject
from tests.paper import reading
from tests.paper.label_reading import papers, squeezed, texts_on, words_as_drawn
from tests.paper.label_samples import BEEF, EGG, HARD, LABELS, LEEK, PAN

from packlarder.faults import Severity
from packlarder.publish.label_fit import Fit, Ladders, seek
from packlarder.publish.label_stock import Purpose, label_stock
from packlarder.publish.labels import LabelJob, LabelSheets, build_labels, print_labels

THREE = replace(LABELS, jars=(EGG, BEEF, LEEK), packs=(PAN,), with_code=False)


@pytest.fixture
def theme(checkout: Path) -> Path:
    """Give the theme."""
    return checkout / "theme"


def job(purpose: Purpose = Purpose.JAR, stock: str = "a4-8", first: int = 1) -> LabelJob:
    """Write down a job."""
    return LabelJob(purpose=purpose, stock=stock, first=first)


def test_half_used_sheet(theme: Path, tmp_path: Path) -> None:
    """From cell 7 of 8 on, the first two labels stand in the last row, the third on the next sheet's first cell."""
    (sheets,) = build_labels(THREE, (job(first=7),), theme=theme, out=tmp_path)
    reader = PdfReader(tmp_path / "labels-jar-a4-8.pdf")
    found = [[(paper.left, paper.top) for paper in papers(page)] for page in reader.pages]
    # left 4.65 or 4.65 + 101.6; the last row at 13.1 + 3 x 67.7
    assert found[0] == [pytest.approx((4.65, 216.2), abs=0.3), pytest.approx((106.25, 216.2), abs=0.3)]
    assert found[1] == [pytest.approx((4.65, 13.1), abs=0.3)]
    assert (sheets.pages, sheets.printed, sheets.next_first) == (2, 3, 2)
    texts = [text for page, words in zip(reader.pages, words_as_drawn(tmp_path / "labels-jar-a4-8.pdf"), strict=True)
             for text in texts_on(papers(page), words)]  # fmt: skip  # two loops
    assert all(squeezed(label.name) in text for label, text in zip(THREE.jars, texts, strict=True))


def test_a_full_sheet_leaves_no_page_begun(theme: Path) -> None:
    """Labels that end on a sheet's last cell take no further page, and the next start is a fresh sheet."""
    sheets = print_labels(THREE, job(first=6), theme=theme)
    assert (sheets.pages, sheets.next_first) == (1, 1)


def test_each_job_has_its_file(theme: Path, tmp_path: Path) -> None:
    """Jars, lids and packs go into a file each; what there is nothing of makes none."""
    jobs = (job(), job(Purpose.LID, "a4-round-12"), job(Purpose.PACK, "letter-6"))
    build_labels(replace(THREE, packs=()), jobs, theme=theme, out=tmp_path / "print")
    names = sorted(path.name for path in (tmp_path / "print").iterdir())
    assert names == ["labels-jar-a4-8.pdf", "labels-lid-a4-round-12.pdf"]


@pytest.mark.parametrize(
    ("wrong", "code", "says", "help"),
    [
        (job(stock="a4-9"), "unknown-label-sheet", 'no label sheet is called "a4-9"', "a4-8, a4-10"),
        (job(Purpose.LID), "label-purpose", "a4-8 (A4, 8 of 99.1 × 67.7 mm) is not for a lid", "a4-round-12"),
        (job(first=0), "label-cell", "no label 0 to start at: a4-8 has 8", "between 1 and 8"),
        (job(first=9), "label-cell", "no label 9 to start at: a4-8 has 8", "between 1 and 8"),
    ],
)
def test_a_job_that_can_not_be(theme: Path, wrong: LabelJob, code: str, says: str, help: str) -> None:
    """A sheet or a first cell that is not there is an error that says what there is; nothing is printed."""
    sheets = print_labels(THREE, wrong, theme=theme)
    (fault,) = sheets.faults
    assert (fault.code, fault.severity, sheets.pdf) == (code, Severity.ERROR, b"")
    assert says in fault.message
    assert help in fault.help


def test_a_label_without_any_room_is_left_out(theme: Path) -> None:
    """A text too long for three labels leaves its label out, with a warning; the others are printed."""
    endless = replace(EGG, warning="Raw egg wants care. " * 60)
    sheets = print_labels(replace(THREE, jars=(endless, BEEF)), job(), theme=theme)
    (fault,) = sheets.faults
    assert (fault.code, fault.severity, fault.place.file) == ("label-no-room", Severity.WARNING, EGG.file)
    assert sheets.printed == 1
    alone = print_labels(replace(THREE, jars=(endless,)), job(first=3), theme=theme)
    assert (alone.pdf, alone.pages, alone.next_first) == (b"", 0, 3)


def test_the_code_goes_before_the_text(theme: Path) -> None:
    """Where text and code have no room together the code is left out, a note says so, and no label takes more cells."""
    two = replace(THREE, packs=(PAN, PAN), with_code=True)
    sheets = print_labels(two, job(Purpose.PACK, "letter-10"), theme=theme)
    (fault,) = sheets.faults
    assert (fault.code, fault.severity) == ("label-no-code", Severity.NOTE)
    assert fault.message.count(PAN.dish) == 1
    assert sheets.next_first == 3


def test_the_same_fault_is_told_once(theme: Path) -> None:
    """Fourteen jars of one batch that each take more than one label are one warning."""
    jars = tuple(replace(HARD, nth=f"{number} of 3") for number in range(1, 4))
    sheets = print_labels(replace(THREE, jars=jars), job(), theme=theme)
    assert [fault.code for fault in sheets.faults] == ["label-several-cells"]


def fit(body_pt: float) -> Fit:
    """Write down a way to set a label."""
    return Fit(body_pt=body_pt, name_pt=20, pad_mm=3)


def sought(ladders: Ladders, least: float) -> tuple[Fit | None, int]:
    """Give what is found where nothing over a size fits, and after how many tries."""
    search, tries = seek(ladders), 1
    asked = next(search)
    try:
        while True:
            asked = search.send(asked.body_pt <= least)
            tries += 1
    except StopIteration as ended:
        return ended.value, tries


@pytest.mark.parametrize("least", [8, 9, 10, 11, 12])
def test_the_largest_type_that_fits_is_found(least: int) -> None:
    """Of what fits on a ladder the first is chosen; a ladder with nothing costs one try, one of five ways at most 4."""
    ladders = (tuple(map(fit, (20, 19))), (), tuple(map(fit, (12, 11, 10, 9, 8))))
    found, tries = sought(ladders, least)
    assert found == fit(least)
    assert tries <= 1 + 4


def test_nothing_fits() -> None:
    """Where no way fits there is none, and each ladder was tried once."""
    assert sought(((fit(9), fit(8)), (fit(8),)), 7) == (None, 2)


@pytest.fixture(scope="module")
def three(checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[LabelSheets, Path]:
    """Print three labels with their codes."""
    out = tmp_path_factory.mktemp("three")
    (sheets,) = build_labels(replace(THREE, with_code=True), (job(),), theme=checkout / "theme", out=out)
    return sheets, out / sheets.job.file


def test_fonts_are_ours_and_embedded(three: tuple[LabelSheets, Path]) -> None:
    """Four fonts, all embedded, none from the machine it was printed on."""
    assert sorted(reading.fonts(three[1])) == [
        ("Booklet-Sans", True), ("Booklet-Sans-Bold", True), ("Booklet-Serif", True), ("Booklet-Serif-Bold", True),
    ]  # fmt: skip  # two and two


def test_tagged_with_title_and_language(three: tuple[LabelSheets, Path]) -> None:
    """The PDF is tagged, says that it follows PDF/UA-1, has title and language; its outline names the labels."""
    reader = PdfReader(three[1])
    root = reading.inside(reader.trailer, "/Root")
    assert reading.inside(root, "/MarkInfo", "/Marked") == BooleanObject(value=True)
    assert isinstance(reading.inside(root, "/StructTreeRoot", "/K"), ArrayObject)
    assert reading.inside(root, "/Lang") == "en"
    metadata = reading.inside(root, "/Metadata")
    assert isinstance(metadata, StreamObject)
    assert b"pdfuaid:part" in metadata.get_data()
    assert reader.metadata is not None
    assert reader.metadata.title == "The Skerry Book · Labels for jars"
    assert [title for title, _ in reading.outline(reader)] == ["Egg powder", "Beef crumbles", "Leek rings"]


def test_same_labels_same_bytes(theme: Path, three: tuple[LabelSheets, Path]) -> None:
    """Printed twice, labels are the same to the byte."""
    again = print_labels(replace(THREE, with_code=True), job(), theme=theme)
    assert again.pdf == three[0].pdf


def test_hostile_words_stay_words(theme: Path, tmp_path: Path) -> None:
    """Tags, quotes and unbreakable words print as they are, within their label."""
    hostile = replace(EGG, name='<b>Egg & "yolk"</b>', mark="x" * 90, contains="Unbreakable" * 9, nth="{{ nth }}")
    build_labels(replace(THREE, jars=(hostile,), with_code=False), (job(),), theme=theme, out=tmp_path)
    pdf = tmp_path / "labels-jar-a4-8.pdf"
    (words,), found = words_as_drawn(pdf), papers(PdfReader(pdf).pages[0])
    assert all(any(paper.holds(word, is_round=False) for paper in found) for word in words)
    text = "".join(texts_on(found, words))
    assert all(squeezed(one) in text for one in (hostile.name, hostile.mark, hostile.contains, hostile.nth))


@pytest.mark.parametrize(("stock", "cut"), [("a4-cut", True), ("a4-8", False)])
def test_cut_marks(theme: Path, tmp_path: Path, stock: str, *, cut: bool) -> None:
    """On plain paper a hairline stands beside each outer corner of the grid, on a sheet of labels there is none."""
    (sheets,) = build_labels(THREE, (job(stock=stock),), theme=theme, out=tmp_path)
    known = label_stock(stock)
    assert known is not None
    subprocess.run(
        [
            reading.tool("pdftoppm"),
            "-r",
            "300",
            "-gray",
            "-singlefile",
            "-png",
            str(tmp_path / sheets.job.file),
            "page",
        ],
        cwd=tmp_path,
        check=True,
    )
    with Image.open(tmp_path / "page.png") as page:
        for cell in known.cells[:: known.grid[0]]:
            across, down = ((length * 300) / 25.4 for length in (cell.left_mm - 1.5, cell.top_mm))
            strip = page.crop((round(across), round(down) - 4, round(across) + 1, round(down) + 5))
            assert (min(strip.tobytes()) < 128) is cut, cell
