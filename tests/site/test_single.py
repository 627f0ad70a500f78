"""The pocket file: the whole book in one file that asks for nothing."""

import base64
import hashlib
import re
from collections import Counter
from dataclasses import replace
from pathlib import Path

import pytest
from tests.site.conftest import THEME
from tests.site.nu import nu_messages
from tests.site.page import Element, read_page
from tests.site.samples import BOOK, with_dishes

from packlarder.publish.single import build_single
from packlarder.sheets.facts import Link
from packlarder.sheets.printed import Printed, System

EVIL = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>"


@pytest.fixture(scope="module")
def pocket(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the pocket file of the sample book."""
    out = tmp_path_factory.mktemp("pocket")
    assert build_single(BOOK, theme=THEME, out=out) == ()
    return out / "pocket.html"


@pytest.fixture(scope="module")
def page(pocket: Path) -> Element:
    """Read the pocket file back."""
    return read_page(pocket)


def test_every_dish_component_and_page_stands_in_it(page: Element) -> None:
    """Each has an article of its own, with its name as heading, and the contents lead to it."""
    wanted = {f"dish-{dish.id}": dish.name for dish in BOOK.dishes}
    wanted |= {f"component-{one.id}": one.name for one in BOOK.components}
    wanted |= {f"page-{one.id}": one.title for one in BOOK.pages}
    found = {one.attributes["id"]: one.all("h2")[0].text for one in page.all("article")}
    assert found == wanted
    [contents] = page.all("nav")
    led = {link.attributes["href"].removeprefix("#") for link in contents.all("a")}
    listed = {f"dish-{entry.link.id}" for group in BOOK.indexes[0].groups for entry in group.entries}
    assert led == {*listed, *(id for id in wanted if not id.startswith("dish-")), "larder", "safety"}


def test_every_link_leads_somewhere_in_it(page: Element) -> None:
    """A link leads to an element of the file, or is the address that a hand-written page names; no id comes twice."""
    ids = Counter(one.attributes["id"] for one in page.walk() if "id" in one.attributes)
    assert {id: count for id, count in ids.items() if count > 1} == {}
    for link in page.all("a"):
        href = link.attributes.get("href", "")
        assert not href or href == "https://weather.example/" or href.removeprefix("#") in ids, href


def test_it_asks_for_nothing(pocket: Path) -> None:
    """No script, picture, frame, style sheet or font comes from anywhere; the policy allows the style in it alone."""
    html = pocket.read_text("utf-8")
    assert re.findall(r"<(?:script|img|iframe|object|embed|form|base)\b", html) == []
    assert re.findall(r'<link [^>]*href="(?!data:,")', html) == []
    [style] = re.findall(r"<style>(.*?)</style>", html, re.DOTALL)
    assert "url(" not in style
    assert "@import" not in style
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    assert f"default-src &#39;none&#39;; style-src &#39;sha256-{digest}&#39;;" in html
    assert re.findall(r'\s(?:on\w+|style)="', html) == []


def test_the_checker_of_web_pages_has_nothing_to_say(pocket: Path, tmp_path: Path) -> None:
    """The Nu HTML Checker gives no error and no warning; of today's style sheets it knows too little."""
    bare = tmp_path / "pocket.html"
    bare.write_text(re.sub(r"(?s)(<style>).*?(</style>)", r"\1\2", pocket.read_text("utf-8")), "utf-8")
    assert nu_messages([bare]) == []


def test_figures_are_those_of_the_usual_servings(page: Element) -> None:
    """Every part of every dish shows its dry weight at the usual servings, and the table below all the others."""
    articles = {one.attributes["id"]: one for one in page.all("article")}
    for dish in BOOK.dishes:
        article = articles[f"dish-{dish.id}"]
        shown = [row.text for row in article.all("tr")]
        for part in dish.parts:
            usual = part.dry.metric[dish.usual]
            assert any(part.name in row and (usual in row or usual == "·") for row in shown), (dish.id, part.name)
        if len(dish.servings) > 1:
            [every] = article.all("table", class_="every")
            assert [cell.text for cell in every.all("th", scope="col")][1:] == [str(count) for count in dish.servings]
        assert article.all("b", class_="raw") or not dish.raw_parts


def test_a_book_in_us_units_shows_them(tmp_path: Path) -> None:
    """The book's own system of units is the one that is set."""
    build_single(replace(BOOK, system=System.US), theme=THEME, out=tmp_path)
    html = (tmp_path / "pocket.html").read_text("utf-8")
    dish = next(dish for dish in BOOK.dishes if dish.parts)
    part = next(part for part in dish.parts if part.dry.us[dish.usual] != part.dry.metric[dish.usual])
    assert part.dry.us[dish.usual] in html


def test_what_a_book_says_is_only_said(tmp_path: Path) -> None:
    """Names, notes and figures that look like markup are shown as they are typed."""
    dish = next(dish for dish in BOOK.dishes if dish.parts)
    evil = replace(
        dish,
        name=EVIL,
        about=EVIL,
        notes=(EVIL,),
        raw=(EVIL,),
        raw_parts=(EVIL,),
        parts=(
            replace(dish.parts[0], name=EVIL, dry=Printed((EVIL,) * len(dish.servings), (EVIL,) * len(dish.servings))),
        ),
    )
    part = replace(BOOK.components[0], about=EVIL, used_in=(Link(kind="dish", id=EVIL, name=EVIL),))
    build_single(replace(with_dishes(BOOK, evil), title=EVIL, components=(part,)), theme=THEME, out=tmp_path)
    html = (tmp_path / "pocket.html").read_text("utf-8")
    assert "<script" not in html
    assert "<img" not in html
    assert html.count("&lt;script&gt;") >= 8
