"""The live preview: an edit rewrites what it changes, a slip shows as a page, and only this machine is served."""

import http.client
import time
from datetime import date
from pathlib import Path

import pytest

from packlarder.cli import texts
from packlarder.cli.options import Misuse, Options
from packlarder.cli.preview import Preview
from packlarder.cli.preview_server import NEWS, serving
from packlarder.cli.start import starter_files
from packlarder.disk.theme import theme_folder

TRIP = "trips/weekend-at-the-lake.yaml"
TRIP_PAGE = "trips/weekend-at-the-lake.html"


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """Give a sound book."""
    folder = tmp_path / "book"
    for path, content in starter_files():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(content)
    return folder


@pytest.fixture
def preview(book: Path, tmp_path: Path) -> Preview:
    """Give a preview that has looked at the book once."""
    made = Preview(Options(command="serve"), book, theme=theme_folder(), out=tmp_path / "site")
    made.refresh()
    return made


def edit(book: Path, name: str, old: str, new: str) -> None:
    """Change a file of a book."""
    text = (book / name).read_text("utf-8")
    assert old in text
    (book / name).write_text(text.replace(old, new), "utf-8")


def written(preview: Preview) -> set[str]:
    """Refresh a preview and name the files that were written again."""
    before = {path: path.stat().st_mtime_ns for path in preview.out.rglob("*") if path.is_file()}
    time.sleep(0.01)  # so that a file that is written again has another time
    preview.refresh()
    after = {path: path.stat().st_mtime_ns for path in preview.out.rglob("*") if path.is_file()}
    return {str(path.relative_to(preview.out)) for path, when in after.items() if before.get(path) != when}


def asked(address: str, path: str, **headers: str) -> tuple[int, str]:
    """Ask the server for a path; give the number it answers with, and the text."""
    connection = http.client.HTTPConnection(address.removeprefix("http://").rstrip("/"), timeout=10)
    connection.request("GET", path, headers=headers)
    answer = connection.getresponse()
    text = answer.read().decode()
    connection.close()
    return answer.status, text


def test_an_edit_rewrites_what_it_changes(book: Path, preview: Preview) -> None:
    """A word in a dish rewrites its page and no other dish's; schemas stay out of the site, fonts are left alone."""
    edit(book, "dishes/apple-porridge.yaml", "Stir again before you eat.", "Stir twice before you eat.")
    rewritten = written(preview)
    assert "dishes/apple-porridge.html" in rewritten
    assert "Stir twice" in (preview.out / "dishes" / "apple-porridge.html").read_text("utf-8")
    assert not {name for name in rewritten if name.startswith("dishes/")} - {"dishes/apple-porridge.html"}
    assert not {name for name in rewritten if name.endswith((".ttf", ".css"))}


def test_an_edit_that_only_other_servings_show_is_not_missed(book: Path, preview: Preview) -> None:
    """At the usual servings a fixed part looks the same; the page has all servings, and is written again."""
    edit(book, "dishes/beans-and-rice.yaml", "olive oil: 2 tbsp", "olive oil: {take: 2 tbsp, fixed: yes}")
    assert "dishes/beans-and-rice.html" in written(preview)


def test_nothing_changed_means_nothing_written(book: Path, preview: Preview) -> None:
    """A file that is saved as it was is no change."""
    (book / "book.yaml").touch()
    assert preview.refresh() is None
    assert written(preview) == set()


def test_a_page_whose_dish_is_gone_goes(book: Path, preview: Preview) -> None:
    """A dish that is taken out takes its page along; the others no longer lead to it."""
    edit(book, TRIP, "      - lunch: crackers and apple\n", "")
    (book / "dishes" / "crackers-and-apple.yaml").unlink()
    preview.refresh()
    assert not (preview.out / "dishes" / "crackers-and-apple.html").exists()
    assert "crackers-and-apple" not in (preview.out / "index.html").read_text("utf-8")


@pytest.fixture
def planned(book: Path, tmp_path: Path) -> Preview:
    """Give a preview of the book with its trip planned: Ada eats one portion of each dish, Bo 120 % of one."""
    text = (book / TRIP).read_text("utf-8").replace("stands: gone", "stands: planned")
    (book / TRIP).write_text(text.replace("2026-10-03 ", "2027-07-03 ").partition("came home:")[0], "utf-8")
    options = Options(command="serve", on=date(2027, 6, 1))
    made = Preview(options, book, theme=theme_folder(), out=tmp_path / "planned")
    made.refresh()
    assert not made.faults
    return made


@pytest.mark.parametrize(
    ("file", "old", "new", "was", "shows"),
    [
        pytest.param(
            "dishes/beans-and-rice.yaml",
            "black beans: 80 g",
            "black beans: 100 g",
            "88\u00a0g",
            "110\u00a0g",
            id="a dish",
        ),
        pytest.param(
            "components/black-beans.yaml",
            "wait: 20 min",
            "wait: 50 min",
            "17:56",
            "17:25",
            id="a component",
        ),
        pytest.param(TRIP, "place: the far shore", "place: the near shore", "far shore", "near shore", id="a stop"),
        pytest.param(
            TRIP, "appetite: 120 %", "appetite: 160 %", "2.2\u00a0portions", "2.6\u00a0portions", id="an appetite"
        ),
    ],
)
def test_a_trip_shows_an_edit_of_whatever_it_is_made_of(
    book: Path, planned: Preview, file: str, old: str, new: str, was: str, shows: str
) -> None:
    """80 g for 2 are 88 g for 2.2 portions, and 100 g are 110 g; a longer soak begins sooner; appetites add up."""
    page = planned.out / TRIP_PAGE
    before = page.read_text("utf-8")
    assert was in before
    assert shows not in before
    edit(book, file, old, new)
    assert TRIP_PAGE in written(planned)
    assert not planned.faults
    after = page.read_text("utf-8")
    assert shows in after
    assert was not in after


def test_a_trip_that_is_taken_out_takes_its_page_along(book: Path, planned: Preview) -> None:
    """The dishes eaten on it no longer name it, and without any trip there is no list of them."""
    assert "Weekend at the lake" in (planned.out / "dishes" / "beans-and-rice.html").read_text("utf-8")
    (book / TRIP).unlink()
    planned.refresh()
    assert not planned.faults
    assert not (planned.out / TRIP_PAGE).exists()
    assert not (planned.out / "trips.html").exists()
    pages = planned.out.rglob("*.html")
    assert [page.name for page in pages if "Weekend at the lake" in page.read_text("utf-8")] == []


def test_a_slip_shows_as_a_page_and_the_site_stays(book: Path, preview: Preview) -> None:
    """While something is wrong every page tells what; the former page can be asked for; mended, it is back."""
    before = (preview.out / "index.html").read_bytes()
    edit(book, "dishes/apple-porridge.yaml", "serves: 1", "srves: 1")
    preview.refresh()
    with serving(preview, 0) as address:
        status, page = asked(address, "/index.html")
        assert status == 200
        assert "error[unknown-key]: `srves` is not a key" in page
        assert (preview.out / "index.html").read_bytes() == before
        assert asked(address, "/index.html?former")[1] == before.decode()
        edit(book, "dishes/apple-porridge.yaml", "srves: 1", "serves: 1")
        preview.refresh()
        assert "error[" not in asked(address, "/index.html")[1]


def test_a_fault_page_shows_what_is_typed(book: Path, preview: Preview) -> None:
    """Markup in a book's file is shown as it is typed."""
    edit(book, "dishes/apple-porridge.yaml", "serves: 1", "serves: <script>alert(1)</script>")
    preview.refresh()
    assert preview.faults.count("<script") == 1  # our own, which asks for news
    assert "&lt;script&gt;alert(1)" in preview.faults


def test_a_book_that_is_wrong_from_the_start_is_served_too(book: Path, tmp_path: Path) -> None:
    """The fault page is there before any site is; it names no former page."""
    edit(book, "book.yaml", "packlarder: 1", "packlarder: 2")
    preview = Preview(Options(command="serve"), book, theme=theme_folder(), out=tmp_path / "site")
    preview.refresh()
    assert "error[" in preview.faults
    assert "?former" not in preview.faults


def test_only_this_machine_by_its_own_name_is_answered(preview: Preview) -> None:
    """A page elsewhere that has its name point to this machine gets nothing; folders are not listed."""
    with serving(preview, 0) as address:
        assert address.startswith("http://127.0.0.1:")
        assert asked(address, "/")[0] == 200
        assert asked(address, "/", Host="evil.example:8300")[0] == 403
        assert asked(address, NEWS, Host="evil.example:8300")[0] == 403
        assert asked(address, "/dishes/")[0] == 404
        assert asked(address, "/../../book/book.yaml")[0] == 404


def test_what_is_not_there_is_told_on_a_page_that_leads_back(preview: Preview) -> None:
    """A page that is gone, or never was, answers 404 with a page of ours; markup in the address is shown as typed."""
    with serving(preview, 0) as address:
        for path in ("/dishes/gone.html", "/dishes/", "/nothing"):
            status, page = asked(address, path)
            assert status == 404
            assert f"<p>{path} is no page of this book" in page
            assert '<a href="/">To the front page</a>' in page
            assert "/-/news" in page  # so that it is loaded again when the page comes
        assert "&lt;b&gt;" in asked(address, "/%3Cb%3E")[1]


@pytest.mark.parametrize(
    "path", ["/print/", "/print/field-a6.pdf", "/pocket.html", "/book.epub", "/data/book.json", "/trips/lake-plan.ics"]
)
def test_what_only_a_build_makes_is_told_so(preview: Preview, path: str) -> None:
    """Booklets and files to hand on are not there while one writes; the page says which command makes them."""
    with serving(preview, 0) as address:
        status, page = asked(address, path)
        assert status == 404
        assert f"{path} comes with `{texts.PROGRAM} build`" in page
    assert "pocket.html" not in (preview.out / "index.html").read_text("utf-8")


def test_news_comes_at_once_and_after_a_change(book: Path, preview: Preview) -> None:
    """The stream tells when something last changed, and again as soon as something does."""
    with serving(preview, 0) as address:
        connection = http.client.HTTPConnection(address.removeprefix("http://").rstrip("/"), timeout=10)
        connection.request("GET", NEWS)
        answer = connection.getresponse()
        assert answer.getheader("Content-Type") == "text/event-stream"
        assert answer.fp.readline() == f"data: {preview.changed_ms}\n".encode()
        answer.fp.readline()
        edit(book, "dishes/apple-porridge.yaml", "serves: 1", "serves: 2")
        preview.refresh()
        assert answer.fp.readline() == f"data: {preview.changed_ms}\n".encode()
        connection.close()


def test_a_port_that_is_taken_is_passed_over_or_told(preview: Preview) -> None:
    """Without `--port` the next free one is taken; a named one that is taken is misuse."""
    with serving(preview, 0) as first, serving(preview, 0) as second:
        assert first != second
        with pytest.raises(Misuse, match="is taken"), serving(preview, int(first.rstrip("/").rpartition(":")[2])):
            pass
