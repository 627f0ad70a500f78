"""Which pages there are, and which must be written again after an edit."""

from dataclasses import replace
from pathlib import Path

from tests.site.conftest import THEME
from tests.site.page import read_page
from tests.site.samples import BOOK

from packlarder.publish.site import build_site
from packlarder.publish.site_pages import changed_pages
from packlarder.publish.words import read_words

WORDS = read_words(THEME / "site" / "words", "en")


def test_one_changed_dish_is_one_changed_page_and_the_whole_views() -> None:
    """A new note on a dish changes its page; pages made from the whole book count as changed, other dishes do not."""
    dish = replace(BOOK.dishes[0], notes=("Good.",))
    after = replace(BOOK, dishes=(dish, *BOOK.dishes[1:]), edition="000000")
    assert changed_pages(BOOK, after, WORDS) == {
        "dishes/egg-and-leek-pan.html",
        "index.html",
        "components.html",
        "safety.html",
        "figures.html",
        "format.html",
    }


def test_a_new_title_changes_every_page() -> None:
    """The book's title stands at the head of each page."""
    changed = changed_pages(BOOK, replace(BOOK, title="The Islet Book"), WORDS)
    assert {"dishes/shore-soup.html", "components/noodles.html", "pages/our-year.html"} <= changed


def test_an_untouched_book_changes_nothing() -> None:
    """Two equal books have equal pages."""
    assert changed_pages(BOOK, replace(BOOK), WORDS) == frozenset()


def test_only_some_pages_are_written(tmp_path: Path) -> None:
    """With a choice of pages, those are written and everything else in the folder is left as it was."""
    (tmp_path / "dishes").mkdir()
    (tmp_path / "dishes" / "shore-soup.html").write_text("as before")
    (tmp_path / "stray.txt").write_text("not ours")
    build_site(BOOK, theme=THEME, out=tmp_path, only=frozenset({"dishes/egg-and-leek-pan.html"}))
    assert "Egg and leek pan" in read_page(tmp_path / "dishes" / "egg-and-leek-pan.html").text
    assert (tmp_path / "dishes" / "shore-soup.html").read_text() == "as before"
    assert (tmp_path / "stray.txt").read_text() == "not ours"
    assert not (tmp_path / "index.html").exists()


def test_progress_is_told_page_by_page(tmp_path: Path) -> None:
    """The progress call gets each count once, up to the number of pages."""
    told: list[tuple[int, int]] = []
    build_site(BOOK, theme=THEME, out=tmp_path, progress=lambda done, of: told.append((done, of)))
    assert told == [(done, 15) for done in range(1, 16)]


def test_an_empty_book_has_a_site(tmp_path: Path) -> None:
    """A book without dishes, components or lists builds, and its navigation leads nowhere that is not there."""
    book = replace(
        BOOK,
        dishes=(),
        components=(),
        indexes=(),
        pages=(),
        rules=(),
        figures=(),
        format=(),
        general_cautions=(),
        photos=(),
    )
    assert build_site(book, theme=THEME, out=tmp_path) == ()
    page = read_page(tmp_path / "index.html")
    assert "There is no dish in this book yet." in page.text
    for link in page.all("a"):
        assert link.attributes["href"].startswith("#") or (tmp_path / link.attributes["href"]).is_file()


def test_what_is_written_is_the_same_each_time(site: Path, tmp_path: Path) -> None:
    """Two builds of one book are equal byte for byte: no time, no order by chance."""
    build_site(BOOK, theme=THEME, out=tmp_path)
    first = {file.relative_to(site): file.read_bytes() for file in site.rglob("*") if file.is_file()}
    second = {file.relative_to(tmp_path): file.read_bytes() for file in tmp_path.rglob("*") if file.is_file()}
    assert first == second


def test_a_dish_is_told_in_order(site: Path) -> None:
    """The sections of a dish page follow each other as a cook needs them."""
    page = read_page(site / "dishes" / "egg-and-leek-pan.html")
    assert [heading.text for heading in page.all("h2")] == [
        "Parts",
        "Packs",
        "Steps",
        "Done when",
        "Cautions",
        "Water to carry",
        "Clock and heat",
        "What one serving feeds",
        "Allergens",
        "Where the numbers come from",
        "Tried and learnt",
        "Notes",
        "For 1 to 12 servings",
    ]


def test_raw_is_boxed_where_it_must_be_cooked_to_be_safe_and_nowhere_else(site: Path) -> None:
    """RAW stands at the head, at the part and at its pack; a dish without raw parts has none."""
    raw = read_page(site / "dishes" / "egg-and-leek-pan.html")
    assert len(raw.all("p", class_="rawbox")) == 1
    assert len(raw.all("b", class_="raw")) == 2
    safe = read_page(site / "dishes" / "shore-soup.html")
    assert not safe.all("p", class_="rawbox")
    assert not safe.all("b", class_="raw")
