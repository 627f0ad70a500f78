"""Pages that people wrote by hand: Markdown to HTML that can neither run nor fetch anything."""

import posixpath
import re
from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlsplit
from xml.etree.ElementTree import Element, SubElement

from markdown import Markdown
from markdown.extensions import Extension
from markdown.extensions.tables import TableExtension
from markdown.extensions.toc import TocExtension
from markdown.treeprocessors import Treeprocessor
from markupsafe import Markup

from packlarder.faults import Fault, Place, Severity
from packlarder.sheets.book_sheet import WrittenPage

MOST_CHARACTERS = 100_000
MOST_OPEN = 100
MOST_HEADINGS = 1_000
BRACKET = re.compile(r"[\[\]()]")
HEADING = re.compile(r"^(?:#|=+ *$|-+ *$)", re.MULTILINE)
HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
FIRST_LEVEL = 1
"""Where in these the headings of a page begin; the one above is its title."""
OUTWARD = frozenset({"http", "https", "mailto"})
"""Schemes a link may have. A link fetches nothing until a reader follows it; pictures must be the book's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenHtml:
    """A written page as HTML, and what is wrong with it."""

    html: Markup
    faults: tuple[Fault, ...]


def set_written(
    page: WrittenPage, *, addresses: frozenset[str], photos: frozenset[str], words: Mapping[str, str]
) -> WrittenHtml:
    """Set a page. Tags are shown as typed; links and pictures that lead nowhere stay as words and are faults."""
    place = Place(file=f"pages/{page.id}.md")
    if len(page.markdown) > MOST_CHARACTERS:
        fault = Fault(
            place=place,
            code="page-too-long",
            message=f"this page has {len(page.markdown):,} characters, the most is {MOST_CHARACTERS:,}",
            help="part it into several pages",
        )
        return WrittenHtml(html=Markup(""), faults=(fault,))
    if _knotted(page.markdown):
        fault = Fault(
            place=place,
            code="page-too-deep",
            message=f"more than {MOST_OPEN} brackets are open at once, or there are more than {MOST_HEADINGS} headings",
            help="close each [ and (, or write a \\ before it",
        )
        return WrittenHtml(html=Markup(""), faults=(fault,))
    links = _Links(addresses=addresses, photos=photos, picture=words["picture"])
    try:
        html = Markup(_markdown(links).convert(_without_title(page)))  # noqa: S704 - tags are off, links mended
    except RecursionError:
        fault = Fault(place=place, code="page-too-deep", message="lists or quotations lie too deep inside each other")
        return WrittenHtml(html=Markup(""), faults=(fault,))
    faults = tuple(
        Fault(
            place=place,
            code="broken-link",
            message=f'the link "{link}" leads to nothing in this book',
            help="write it from the page's own folder: other-page.md, ../dishes/name.yaml, ../photos/name.jpg",
            severity=Severity.WARNING,
        )
        for link in links.broken
    )
    return WrittenHtml(html=html, faults=faults)


def _knotted(text: str) -> bool:
    """Tell whether the converter would take minutes: it looks for the end of each bracket and for an id per heading."""
    if len(HEADING.findall(text)) > MOST_HEADINGS:
        return True
    depth = 0
    for bracket in BRACKET.findall(text):
        depth = depth + 1 if bracket in "[(" else max(0, depth - 1)
        if depth > MOST_OPEN:
            return True
    return False


def _without_title(page: WrittenPage) -> str:
    """Drop a first heading that only repeats the page's title."""
    first, _, rest = page.markdown.lstrip().partition("\n")
    return rest if first.startswith("# ") and first[2:].strip() == page.title else page.markdown


def _markdown(links: "_Links") -> Markdown:
    """Make the converter: tables, headings that can be linked to, no raw HTML."""
    made = Markdown(extensions=[TableExtension(), TocExtension(), _Plain(links)], output_format="html")
    made.preprocessors.deregister("html_block")
    made.inlinePatterns.deregister("html")
    return made


class _Plain(Extension):
    """Puts the links in order after everything else is done."""

    def __init__(self, links: "_Links") -> None:
        """Keep the processor to register."""
        super().__init__()
        self._links = links

    def extendMarkdown(self, md: Markdown) -> None:  # noqa: N802 - the name is the library's
        """Register the processor; 1 is after every other one."""
        md.treeprocessors.register(self._links, "packlarder_links", 1)


class _Links(Treeprocessor):
    """Leads links to the site's pages and takes out what could run or fetch something."""

    def __init__(self, *, addresses: frozenset[str], photos: frozenset[str], picture: str) -> None:
        """Take what may be linked to."""
        super().__init__()
        self._addresses = addresses
        self._photos = photos
        self._picture = picture
        self.broken: list[str] = []

    def run(self, root: Element) -> None:
        """Go through headings, links and pictures."""
        headings = [element for element in root.iter() if element.tag in HEADINGS]
        step = FIRST_LEVEL - min((HEADINGS.index(element.tag) for element in headings), default=FIRST_LEVEL)
        for element in headings:
            element.tag = HEADINGS[min(HEADINGS.index(element.tag) + step, len(HEADINGS) - 1)]
        for element in tuple(root.iter()):
            if element.tag == "a" and (href := element.get("href")) is not None:
                self._mend(element, "href", self._link(href), href)
            elif element.tag == "img" and (source := element.get("src")) is not None:
                self._mend(element, "src", self._photo(source), source)
                _frame(element)

    def _mend(self, element: Element, name: str, address: str | None, written: str) -> None:
        """Set the address, or turn the element into words."""
        if address is not None:
            element.set(name, address)
            return
        self.broken.append(written)
        alternative = element.get("alt", "")
        element.attrib.clear()
        if element.tag == "img":
            words = SubElement(element, "em")
            words.text = self._picture + alternative
        element.tag = "span"

    def _link(self, written: str) -> str | None:
        """Lead a link from a page to another page of the site, or outward."""
        parts = _split(written)
        if parts is None:
            return None
        scheme, path, fragment = parts
        if scheme:
            return written if scheme in OUTWARD else None
        mark = f"#{fragment}" if fragment else ""
        if not path:
            return mark or None
        stem, _ = posixpath.splitext(posixpath.normpath(posixpath.join("pages", path)))
        address = f"{stem}.html"
        return f"../{address}{mark}" if address in self._addresses else None

    def _photo(self, written: str) -> str | None:
        """Lead a picture to the book's photos; nothing is fetched from elsewhere."""
        parts = _split(written)
        if parts is None or parts[0]:
            return None
        folder, _, name = posixpath.normpath(posixpath.join("pages", parts[1])).rpartition("/")
        return f"../photos/{name}" if folder == "photos" and name in self._photos else None


def _frame(picture: Element) -> None:
    """Put a picture into an element of its own, which the night can dim; one that became words stays as it is."""
    if picture.tag == "img":
        SubElement(picture, "img", dict(picture.attrib))
        picture.attrib.clear()
        picture.tag = "span"
        picture.set("class", "photo")


def _split(written: str) -> tuple[str, str, str] | None:
    """Part an address into scheme, path and fragment; none where it has another host or control characters."""
    if not written.isprintable() or written.startswith(("//", "\\")):
        return None
    try:
        parts = urlsplit(written)
    except ValueError:
        return None
    return parts.scheme.lower(), parts.path, parts.fragment
