"""The e-book: EPUB 3, a page per dish, made of our own templates; the same book gives the same bytes."""

import uuid
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

from jinja2 import Environment

from packlarder.faults import Fault
from packlarder.publish.usual import (
    SHARED,
    in_order,
    make_templates,
    planned_trips,
    set_pages,
    shared_context,
    words_of,
)
from packlarder.sheets.book_sheet import BookSheet

FILE = "book.epub"
TEMPLATES = "ebook"
INSIDE = "book"
"""The folder in the e-book that holds everything but what EPUB wants at the top."""
NAMESPACE = uuid.UUID("6f2c1d0e-5d7b-5c0a-9a52-3b1b7c0f2d11")
"""Ours; identifiers of books are made in it from title and edition."""
MADE_AT = (1980, 1, 1, 0, 0, 0)
"""The earliest time that a ZIP file can tell: when it was made does not belong to what it holds."""

XHTML = "application/xhtml+xml"
PICTURES = {".jpg": "image/jpeg", ".jpeg": "image/jpeg", ".png": "image/png", ".webp": "image/webp"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """A file of the e-book as its manifest lists it."""

    id: str
    href: str
    content: bytes
    media_type: str = XHTML
    properties: str = ""

    @property
    def in_spine(self) -> bool:
        """Tell whether readers turn to it page by page."""
        return self.media_type == XHTML


def build_ebook(sheet: BookSheet, *, theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `book.epub` into `out`, dated by the book's day. Finds nothing wrong that the site has not told."""
    templates = make_templates(theme, TEMPLATES, SHARED)
    items = tuple(_items(sheet, templates, theme))
    package = templates.get_template("package.opf").render(
        book=sheet, items=items, identifier=_identifier(sheet), on=sheet.field.on
    )
    container = (theme / TEMPLATES / "container.xml").read_bytes()
    with ZipFile(out / FILE, "w") as archive:
        _put(archive, "mimetype", b"application/epub+zip", packed=False)
        _put(archive, "META-INF/container.xml", container)
        _put(archive, f"{INSIDE}/package.opf", package.encode())
        for item in items:
            _put(archive, f"{INSIDE}/{item.href}", item.content, packed=not item.href.startswith("photos/"))
    return ()


def _items(sheet: BookSheet, templates: Environment, theme: Path) -> Iterator[Item]:
    """Make every file, in the order in which the book is read."""
    words = words_of(theme, sheet.language)
    photos = {name: content for name, content in sheet.photos if _media_type(name)}
    pages = set_pages(sheet, words, _address, frozenset(photos), safety="safety.xhtml")
    shared = shared_context(sheet, words, pages, _address)

    def page(name: str, template: str, title: str, properties: str = "", **more: object) -> Item:
        text = templates.get_template(f"{template}.xhtml").render({**shared, "title": title, **more})
        return Item(id=name, href=f"{name}.xhtml", content=text.encode(), properties=properties)

    yield page("front", "front", sheet.title)
    yield page("nav", "nav", words["contents"], properties="nav")
    if sheet.trips is not None:
        yield page("trips", "trips", words["trips"])
    for trip in planned_trips(sheet):
        yield page(f"trip-{trip.id}", "trip", trip.name, sheet=trip)
    for dish in in_order(sheet):
        photo = dish.photo if dish.photo in photos else ""
        yield page(f"dish-{dish.id}", "dish", dish.name, sheet=dish, photo=photo)
    for written in pages:
        yield page(f"page-{written.id}", "written", written.title, page=written)
    if sheet.components:
        yield page("components", "components", words["components"])
    if sheet.larder is not None:
        yield page("larder", "larder", words["larder"])
    yield page("safety", "safety", words["rules"])
    style = (theme / TEMPLATES / "ebook.css").read_bytes()
    yield Item(id="style", href="ebook.css", content=style, media_type="text/css")
    for number, (name, content) in enumerate(photos.items(), 1):
        yield Item(id=f"photo-{number}", href=f"photos/{name}", content=content, media_type=_media_type(name))


def _address(kind: str, id: str) -> str:
    return f"components.xhtml#component-{id}" if kind == "component" else f"{kind}-{id}.xhtml"


def _media_type(name: str) -> str:
    return PICTURES.get(Path(name).suffix.lower(), "")


def _identifier(sheet: BookSheet) -> str:
    return uuid.uuid5(NAMESPACE, f"{sheet.title} {sheet.edition}").urn


def _put(archive: ZipFile, name: str, content: bytes, *, packed: bool = True) -> None:
    info = ZipInfo(name, MADE_AT)
    info.external_attr = 0o644 << 16
    archive.writestr(info, content, ZIP_DEFLATED if packed else ZIP_STORED)
