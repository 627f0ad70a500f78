"""Pages written by hand: what Markdown may do, and what it may not."""

import time

import pytest

from packlarder.faults import Severity
from packlarder.publish.site_written import MOST_CHARACTERS, WrittenHtml, set_written
from packlarder.sheets.book_sheet import WrittenPage


def written(markdown: str) -> WrittenHtml:
    """Set a page in a site of one dish, one other page and one photo."""
    return set_written(
        WrittenPage(id="page", title="A page", markdown=markdown),
        addresses=frozenset({"dishes/pan.html", "pages/other.html"}),
        photos=frozenset({"pan.jpg"}),
        words={"picture": "Picture: "},
    )


@pytest.mark.parametrize(
    ("link", "address"),
    [
        ("../dishes/pan.yaml", "../dishes/pan.html"),
        ("../dishes/pan.html", "../dishes/pan.html"),
        ("other.md#jars", "../pages/other.html#jars"),
        ("#jars", "#jars"),
        ("https://weather.example/?a=1", "https://weather.example/?a=1"),
        ("mailto:us@skerry.example", "mailto:us@skerry.example"),
    ],
)
def test_links_lead_to_pages(link: str, address: str) -> None:
    """A link to a file of the book leads to its page; one outward stays."""
    page = written(f"[there]({link})")
    assert page.html == f'<p><a href="{address}">there</a></p>'
    assert page.faults == ()


@pytest.mark.parametrize(
    "link",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "&#106;avascript:alert(1)",
        "java&#10;script:alert(1)",
        "data:text/html,x",
        "vbscript:x",
        "//elsewhere.example/",
        "\\\\\\\\elsewhere.example",
        "../dishes/gone.yaml",
        "../../outside.md",
        "file:///etc/passwd",
    ],
)
def test_links_that_lead_nowhere_stay_words(link: str) -> None:
    """A link that could run something, leaves the site unseen or leads to nothing is a warning and no link."""
    page = written(f"[there]({link})")
    assert "href" not in page.html
    assert "there" in page.html
    [fault] = page.faults
    assert (fault.code, fault.severity, fault.place.file) == ("broken-link", Severity.WARNING, "pages/page.md")


def test_addresses_in_angle_brackets_are_held_to_the_same() -> None:
    """Every way that Markdown has to write a link goes through the same gate."""
    page = written("<javascript:alert(1)>\n\n[a][b]\n\n[b]: javascript:alert(2)\n")
    assert "href" not in page.html


def test_pictures_are_the_books_own() -> None:
    """A photo of the book is shown; a picture from elsewhere becomes its words, so that nothing is fetched."""
    own = written("![The pan](../photos/pan.jpg)")
    assert own.html == '<p><span class="photo"><img alt="The pan" src="../photos/pan.jpg"></span></p>'
    for elsewhere in (
        "https://elsewhere.example/dot.png",
        "//elsewhere.example/dot.png",
        "../photos/gone.jpg",
        "data:x",
    ):
        page = written(f"![The pan]({elsewhere})")
        assert "<img" not in page.html
        assert "Picture: The pan" in page.html
        assert [fault.code for fault in page.faults] == ["broken-link"]


def test_tags_are_shown_as_typed() -> None:
    """Raw HTML, within a line or as a block, is text."""
    page = written("a <b onclick=x>bold</b> word\n\n<script>alert(1)</script>\n\n<div>\n*not*\n</div>\n\n<!-- c -->")
    for tag in ("<b", "<script", "<div", "<!--"):
        assert tag not in page.html


def test_the_title_is_not_said_twice() -> None:
    """A first heading that repeats the title goes; other headings start one level below it."""
    assert written("# A page\n\nText.").html == "<p>Text.</p>"
    assert written("# Jars\n\n## Lids").html == '<h2 id="jars">Jars</h2>\n<h3 id="lids">Lids</h3>'
    assert written("# A page\n\n## Jars").html == '<h2 id="jars">Jars</h2>'


def test_too_long_a_page_is_a_fault() -> None:
    """A page over the cap is not set at all."""
    page = written("x" * (MOST_CHARACTERS + 1))
    assert page.html == ""
    assert [fault.code for fault in page.faults] == ["page-too-long"]


@pytest.mark.parametrize("bomb", ["[", "[a](", "![](", "> ", "1. ", "- ", "*a ", "`", "a\n=\n", "|a\n"])
def test_a_page_made_to_take_forever_does_not(bomb: str) -> None:
    """Deep or broken nesting ends within seconds, set or refused."""
    start = time.process_time()
    written((bomb * MOST_CHARACTERS)[:MOST_CHARACTERS])
    assert time.process_time() - start < 10
