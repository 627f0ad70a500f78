"""Which pages there are, and which must be written again after an edit."""

from dataclasses import replace
from pathlib import Path

from tests.site.conftest import THEME
from tests.site.page import read_page
from tests.site.samples import BOOK, FOODS, with_dishes

from packlarder.publish.site import build_site
from packlarder.publish.site_pages import changed_pages
from packlarder.publish.words import read_words
from packlarder.sheets.book_sheet import Download, DownloadGroup
from packlarder.sheets.dish_sheet import Lesson

WORDS = read_words(THEME / "site" / "words", "en")


def test_one_changed_dish_is_one_changed_page_and_the_whole_views() -> None:
    """A new note on a dish changes its page; pages made from the whole book count as changed, other dishes do not."""
    dish = replace(BOOK.dishes[0], notes=("Good.",))
    after = replace(with_dishes(BOOK, dish, *BOOK.dishes[1:]), edition="000000")
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
    assert told == [(done, 18) for done in range(1, 19)]


def test_an_empty_book_has_a_site(tmp_path: Path) -> None:
    """A book without dishes, components or lists builds, and its navigation leads nowhere that is not there."""
    book = replace(
        with_dishes(BOOK),
        components=(),
        indexes=(),
        pages=(),
        rules=(),
        figures=(),
        format=(),
        general_cautions=(),
        larder=None,
        run_index=None,
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


def test_links_lead_to_what_a_cook_looks_for(site: Path) -> None:
    """Below the strip stand links to parts, packs, steps and cautions, those that the dish has; each leads there."""
    page = read_page(site / "dishes" / "egg-and-leek-pan.html")
    [row] = page.all("nav", class_="within")
    headings = {heading.attributes.get("id"): heading.text for heading in page.all("h2")}
    led = [(link.attributes["href"], headings[link.attributes["href"][1:]]) for link in row.all("a")]
    assert led == [("#parts", "Parts"), ("#packs", "Packs"), ("#steps", "Steps"), ("#cautions", "Cautions")]
    short = read_page(site / "dishes" / "hot-berry-cup.html")
    assert not short.all("nav", class_="within") or not short.all("a", href="#cautions")


def test_sources_of_cautions_are_folded_away_below_them(site: Path) -> None:
    """Each caution is read by itself; its source stands at the same place of a list that opens without a script."""
    page = read_page(site / "dishes" / "egg-and-leek-pan.html")
    [said] = page.all("ol", class_="cautions")
    [folded] = page.all("details", class_="from")
    dish = BOOK.dishes[0]
    assert [line.text for line in said.all("li")] == [caution.text for caution in dish.cautions]
    for line, caution in zip(folded.all("li"), dish.cautions, strict=True):
        assert line.text.startswith(caution.source)
        assert ("from memory" in line.text) == (caution.standing == "from memory")


def test_the_figures_begin_with_what_there_is(site: Path) -> None:
    """The contents lead to each group; a long list in order has its letters, a standing shared by all is said once."""
    page = read_page(site / "figures.html")
    [contents] = page.all("nav", class_="jump")
    ids = [element.attributes["id"] for element in page.walk() if "id" in element.attributes]
    assert [link.text for link in contents.all("a")] == ["Heat", "Safety facts", "Foods"]
    [letters] = page.all("nav", class_="letters")
    assert [link.text for link in letters.all("a")] == list("ABCDEFGHJK")
    assert all(link.attributes["href"][1:] in ids for nav in (contents, letters) for link in nav.all("a"))
    tables = [[heading.text for heading in table.all("th", scope="col")] for table in page.all("table")]
    assert tables == [["Name", "Value", "Source", "Standing"], *[["Name", "Value", "Source"]] * 2]
    assert "Standing: copy" in page.text
    assert all(page.text.count(food.name) == 1 for food in FOODS)


def test_the_front_page_offers_what_can_be_printed_and_handed_on(tmp_path: Path) -> None:
    """Booklets and files to hand on are links under a heading of their own; without any there is no heading."""
    files = (Download(label="To fold, on A4", address="print/a6.pdf"), Download(label="E-book", address="book.epub"))
    for groups, name in (((DownloadGroup(trip=None, files=files),), "with"), ((), "without")):
        build_site(replace(BOOK, downloads=groups), theme=THEME, out=tmp_path / name, only=frozenset({"index.html"}))
    page = read_page(tmp_path / "with" / "index.html")
    found = {link.attributes["href"]: link.text for link in page.all("a")}
    assert all(found[file.address] == file.label for file in files)
    assert "To print and hand on" in page.text
    assert "To print and hand on" not in read_page(tmp_path / "without" / "index.html").text


def test_a_lesson_parts_what_was_changed_from_why(tmp_path: Path) -> None:
    """A dash stands between change and reason, so that they do not run together; after a whole sentence none does."""
    said = (("leeks 75 g", "thin"), ("More salt.", "Bland."))
    dish = replace(BOOK.dishes[0], learnt=tuple(Lesson(day="1 May", change=change, why=why) for change, why in said))
    build_site(with_dishes(BOOK, dish), theme=THEME, out=tmp_path, only=frozenset({f"dishes/{dish.id}.html"}))
    [rows] = read_page(tmp_path / "dishes" / f"{dish.id}.html").all("dl", class_="learnt")
    assert [row.text for row in rows.all("dd")] == ["leeks 75 g – thin", "More salt. Bland."]


def test_a_raw_component_says_what_to_do(site: Path) -> None:
    """The box of a component that is RAW says what that asks of the cook, not only that it is so."""
    [box] = read_page(site / "components" / "egg-powder.html").all("p", class_="rawbox")
    for word in ("Must be cooked to be safe", "Wet it right through", "wash what it touched"):
        assert word in box.text


def test_raw_is_boxed_where_it_must_be_cooked_to_be_safe_and_nowhere_else(site: Path) -> None:
    """RAW stands at the head, at the part and at its pack; a dish without raw parts has none."""
    raw = read_page(site / "dishes" / "egg-and-leek-pan.html")
    assert len(raw.all("p", class_="rawbox")) == 1
    assert len(raw.all("b", class_="raw")) == 2
    safe = read_page(site / "dishes" / "shore-soup.html")
    assert not safe.all("p", class_="rawbox")
    assert not safe.all("b", class_="raw")
