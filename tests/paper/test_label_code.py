"""QR codes: what they say, how large they are, and that a printed page can be read."""

from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree

import pytest
import segno
from tests.paper import label_samples
from tests.paper.label_reading import codes

from packlarder.publish.label_code import BYTES_AT_Q, LEAST_MODULE_MM, MOST_MODULE_MM, fit_code
from packlarder.publish.label_stock import Purpose
from packlarder.publish.labels import LabelJob, build_labels


@pytest.mark.parametrize("version", [1, 2, 7, 10, 14, 20])
def test_bytes_that_a_version_holds(version: int) -> None:
    """The table of the standard agrees with the encoder: so many bytes fit into the version, one more does not."""
    full = "x" * BYTES_AT_Q[version - 1]
    made = [segno.make(text, error="q", boost_error=False, micro=False) for text in (full, full + "x")]
    assert [code.version for code in made] == [version, version + 1]
    assert made[0].error == "Q"


def test_all_of_a_short_text() -> None:
    """A text that fits is kept whole, and its modules grow with the room, up to the largest."""
    small, large = fit_code("Leek rings\nready", 14), fit_code("Leek rings\nready", 60)
    assert small is not None
    assert large is not None
    assert small.text == large.text == "Leek rings\nready"
    assert LEAST_MODULE_MM <= small.module_mm < large.module_mm == MOST_MODULE_MM
    # version 2 has 25 modules, and 4 of white on each side: 33
    assert small.side_mm == pytest.approx(33 * small.module_mm)
    assert small.side_mm <= 14


def test_four_modules_of_white_on_every_side() -> None:
    """The first dark module stands at 4 across and 4 down of 33, so that 4 are left on the other sides too."""
    code = fit_code("Leek rings\nready", 60)
    assert code is not None
    drawing = ElementTree.fromstring(code.svg)  # noqa: S314 - our own drawing
    assert float(drawing.attrib["width"].removesuffix("mm")) == pytest.approx(33 * code.module_mm)
    assert drawing[0].attrib["d"].startswith("M4 4.5h7")  # the upper side of the finder: 7 modules, drawn mid-line
    assert code.quiet_mm == pytest.approx(4 * code.module_mm)


def test_a_long_text_is_cut_at_a_line_end() -> None:
    """What does not fit goes line by line from the end: 13.2 mm is version 2 at 0.4 mm, which holds 20 bytes."""
    code = fit_code("Leek rings\nready\nSoak in cold water, 15 min.", 13.2)
    assert code is not None
    assert code.text == "Leek rings\nready"


def test_no_room_for_one_line() -> None:
    """Where not even the first line fits, or there is no text, there is no code."""
    assert fit_code("x" * 21, 13.2) is None
    assert fit_code("x", 11) is None  # version 1 at 0.4 mm is 11.6 mm wide
    assert fit_code("", 60) is None


def test_bytes_are_counted_not_letters() -> None:
    """Eleven letters of two bytes need more than version 1, which holds 11 bytes."""
    assert fit_code("é" * 6, 11.7) is None
    assert fit_code("é" * 5, 11.7) is not None


@pytest.mark.parametrize(
    ("purpose", "stock"), [(Purpose.JAR, "a4-8"), (Purpose.JAR, "one-4x6"), (Purpose.PACK, "letter-cut")]
)
def test_printed_codes_are_read_back(checkout: Path, tmp_path: Path, purpose: Purpose, stock: str) -> None:
    """From the rendered page each code is decoded at level Q, and says the first lines of its label's text."""
    labels = label_samples.LABELS
    (sheets,) = build_labels(labels, (LabelJob(purpose=purpose, stock=stock),), theme=checkout / "theme", out=tmp_path)
    found = codes(tmp_path / sheets.job.file, tmp_path)
    wanted = [label.code_text for label in (labels.packs if purpose is Purpose.PACK else labels.jars)]
    bare = [fault.message.count('"') // 2 for fault in sheets.faults if fault.code == "label-no-code"]
    assert len(found) == len(wanted) - sum(bare) >= len(wanted) - 1
    for code in found:
        assert code.ec_level == "Q"
        (whole,) = {text for text in wanted if text.splitlines()[0] == code.text.splitlines()[0]}
        assert whole.splitlines()[: len(code.text.splitlines())] == code.text.splitlines()


def test_no_codes_unless_asked_for(checkout: Path, tmp_path: Path) -> None:
    """Labels without codes have none, and nothing is said of it."""
    labels = replace(label_samples.LABELS, jars=(label_samples.EGG,), with_code=False)
    (sheets,) = build_labels(
        labels, (LabelJob(purpose=Purpose.JAR, stock="a4-8"),), theme=checkout / "theme", out=tmp_path
    )
    assert codes(tmp_path / sheets.job.file, tmp_path) == []
    assert sheets.faults == ()
