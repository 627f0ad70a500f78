"""The press, for every printed thing: fonts, a fetcher that serves nothing but them, and HTML with CSS to PDF.

WeasyPrint reads no file and no network of its own accord: the HTML and the CSS are strings, and whatever they name by
URL must be in the fetcher's hands, or printing stops with `Refused`.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Protocol

from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration
from weasyprint.urls import FatalURLFetchingError, URLFetcher, URLFetcherResponse

OUR_SCHEME = "press:"
PX_PER_MM = 96 / 25.4
"""CSS pixels to a millimetre."""


class Refused(RuntimeError):
    """A template or style sheet names something that was not handed to the press: a slip of ours, not of a book."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One font file of a package, and the family, and weight under which style sheets know it."""

    family: str
    weight: int
    package: str
    file: str

    @property
    def url(self) -> str:
        """Give the address under which the fetcher serves the file."""
        return f"{OUR_SCHEME}{self.file}"


SERIF, SANS = "font_source_serif_pro", "font_source_sans_pro"
FACES = (
    Face(family="Booklet Serif", weight=400, package=SERIF, file="SourceSerifPro-Regular.ttf"),
    Face(family="Booklet Serif", weight=700, package=SERIF, file="SourceSerifPro-Bold.ttf"),
    Face(family="Booklet Sans", weight=400, package=SANS, file="SourceSansPro-Regular.ttf"),
    Face(family="Booklet Sans", weight=700, package=SANS, file="SourceSansPro-Bold.ttf"),
)


@cache
def fonts() -> Mapping[str, bytes]:
    """Read the font files, by the address that `font_css` gives them."""
    return {face.url: (files(face.package) / "files" / face.file).read_bytes() for face in FACES}


def font_css() -> str:
    """Declare the fonts for a style sheet."""
    return "\n".join(
        f'@font-face {{ font-family: "{face.family}"; font-weight: {face.weight}; src: url("{face.url}"); }}'
        for face in FACES
    )


class Page(Protocol):
    """A page as laid out: where each anchor stands, in CSS pixels from the left and from the top."""

    anchors: Mapping[str, tuple[float, ...]]


class Laid(Protocol):
    """A document as laid out by WeasyPrint, which ships no types."""

    pages: Sequence[Page]

    def write_pdf(self, *, pdf_variant: str, pdf_identifier: bytes) -> bytes:
        """Write it as PDF."""


class Fetcher(URLFetcher):  # type: ignore[misc]  # its base is untyped
    """Serves what it was handed, by exact address, and nothing else."""

    def __init__(self, held: Mapping[str, bytes]) -> None:
        """Hold the bytes to serve, by address."""
        super().__init__(fail_on_errors=True)
        self._held = held

    def fetch(self, url: str, headers: object = None) -> URLFetcherResponse:  # noqa: ARG002 - WeasyPrint hands headers over
        """Give what is held under an address.

        Raises `Refused` for any other; WeasyPrint wraps it in `FatalURLFetchingError`, which stops the rendering.
        """
        if url not in self._held:
            raise Refused(f"not in the press's hands: {url}")
        return URLFetcherResponse(url, self._held[url])


class Press:
    """Lays out HTML with CSS and our fonts. One press keeps its fonts over many layouts."""

    def __init__(self, extra: Mapping[str, bytes] | None = None) -> None:
        """Take what may be named by URL besides the fonts: pictures, by address."""
        self._fetcher = Fetcher({**fonts(), **(extra or {})})
        self._fonts = FontConfiguration()
        self._declared = CSS(string=font_css(), font_config=self._fonts, url_fetcher=self._fetcher)

    def lay_out(self, html: str, css: str) -> Laid:
        """Lay out a document. Raises `Refused` if it names something that was not handed over."""
        try:
            page = HTML(string=html, base_url=OUR_SCHEME, url_fetcher=self._fetcher)
            style = CSS(string=css, base_url=OUR_SCHEME, font_config=self._fonts, url_fetcher=self._fetcher)
            laid: Laid = page.render(font_config=self._fonts, stylesheets=[self._declared, style], pdf_tags=True)
        except FatalURLFetchingError as stopped:
            raise Refused(str(stopped.__cause__ or stopped)) from stopped
        return laid

    def write_pdf(self, document: Laid, *, identifier: str) -> bytes:
        """Write a laid-out document as tagged PDF (PDF/UA-1).

        The bytes hang on the document and the identifier alone; dates come from the document's `dcterms` metadata.
        """
        return document.write_pdf(pdf_variant="pdf/ua-1", pdf_identifier=identifier.encode())
