"""The press reads only what it is handed, and gives the same bytes for the same sheets."""

import logging
from collections.abc import Iterator
from io import BytesIO

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject, PdfObject
from tests.paper import reading

from packlarder.publish.press import FACES, Press, Refused, fonts

PAGE = '<html lang="en"><title>A page</title><body>{}</body></html>'
FOREIGN = [
    "https://example.org/mark.png",
    "file:///etc/hostname",
    "mark.png",
    "data:image/png;base64,AAAA",
    "press:other",
]


@pytest.mark.parametrize("address", FOREIGN)
def test_foreign_picture_stops_the_press(address: str) -> None:
    """A picture that was not handed over is refused, wherever it lies: network, disk, beside the page, in the page."""
    with pytest.raises(Refused, match="not in the press's hands"):
        Press().lay_out(PAGE.format(f'<img src="{address}" alt="">'), "")


@pytest.mark.parametrize("address", FOREIGN)
@pytest.mark.parametrize("css", ['@import "{}";', 'body {{ background: url("{}") }}'])
def test_foreign_address_in_a_style_sheet_stops_the_press(address: str, css: str) -> None:
    """A style sheet can not reach out either."""
    with pytest.raises(Refused, match="not in the press's hands"):
        Press().lay_out(PAGE.format("words"), css.format(address))


@pytest.mark.parametrize("address", FOREIGN)
def test_foreign_style_link_stops_the_press(address: str) -> None:
    """Neither can a link in the page's head."""
    with pytest.raises(Refused, match="not in the press's hands"):
        Press().lay_out(f'<link rel="stylesheet" href="{address}">' + PAGE.format("words"), "")


def test_what_is_handed_over_is_served() -> None:
    """A drawing that was handed over is printed: its one black square is in the page."""
    drawing = b'<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><rect width="9" height="9"/></svg>'
    press = Press({"press:square.svg": drawing})
    laid = press.lay_out(PAGE.format('<img src="press:square.svg" alt="A square">'), "")
    reader = PdfReader(BytesIO(press.write_pdf(laid, identifier="square")))
    assert b" re" in reading.drawing(reader.pages[0])


def test_every_face_is_served_and_embedded(caplog: pytest.LogCaptureFixture) -> None:
    """Each declared family and weight ends as a font of its own in the PDF, without a word of complaint."""
    assert len(fonts()) == len(FACES) == 4
    body = "".join(f'<p class="f{number}">Æbleø ½ °C</p>' for number in range(len(FACES)))
    css = "\n".join(f'.f{number} {{ font: {face.weight} 12pt "{face.family}" }}' for number, face in enumerate(FACES))
    press = Press()
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        pdf = press.write_pdf(press.lay_out(PAGE.format(body), css), identifier="faces")
    found = {str(reading.inside(font, "/BaseFont")).partition("+")[2] for font in _fonts(pdf)}
    assert found == {"Booklet-Serif", "Booklet-Serif-Bold", "Booklet-Sans", "Booklet-Sans-Bold"}
    assert caplog.records == []


def _fonts(pdf: bytes) -> Iterator[PdfObject]:
    held = reading.inside(PdfReader(BytesIO(pdf)).pages[0], "/Resources", "/Font")
    assert isinstance(held, DictionaryObject)
    yield from held.values()


def test_same_sheets_same_bytes() -> None:
    """Two presses give the same bytes for the same page."""
    first, second = Press(), Press()
    css = 'body { font: 400 12pt "Booklet Serif" }'
    pdfs = [press.write_pdf(press.lay_out(PAGE.format("words"), css), identifier="same") for press in (first, second)]
    assert pdfs[0] == pdfs[1]
