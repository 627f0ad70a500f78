"""Every kind of page: sound HTML, nothing from elsewhere, nothing that a book could slip in."""

import base64
import hashlib
import re
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from tests.site.conftest import THEME
from tests.site.nu import nu_messages
from tests.site.page import read_page
from tests.site.sample_store import LARDER, RUN, RUN_INDEX, RUN_SHEET, group, line
from tests.site.samples import BOOK, EGG_COMPONENT, INDEXES, WRITTEN, with_dishes

from packlarder.publish.site import build_site
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Printed, Strong, same
from packlarder.sheets.store_sheet import RunIndex, RunYear, Tray

KINDS = (
    "index.html",
    "components.html",
    "safety.html",
    "figures.html",
    "format.html",
    "larder.html",
    "batches.html",
    "batches/2026-10-17-eggs-and-leeks.html",
    "lists/by-meal.html",
    "lists/by-water.html",
    "pages/our-year.html",
    "components/egg-powder.html",
    "components/leek-rings.html",
    "components/noodles.html",
    "dishes/egg-and-leek-pan.html",
    "dishes/hot-berry-cup.html",
    "dishes/shore-soup.html",
    "dishes/mountain-barley.html",
)
MOST_BYTES = 60 * 1024
EVIL = "<script>alert(1)</script>\"'><img src=x onerror=alert(2)>"


def test_every_page_is_among_the_kinds(site: Path) -> None:
    """The pages written are those that are checked below, no more and no fewer."""
    assert {str(page.relative_to(site)) for page in site.rglob("*.html")} == set(KINDS)


def test_the_checker_of_web_pages_has_nothing_to_say(site: Path) -> None:
    """The Nu HTML Checker gives no error and no warning for any kind of page."""
    assert nu_messages(site / kind for kind in KINDS) == []


@pytest.mark.parametrize("kind", KINDS)
def test_headings_and_landmarks(site: Path, kind: str) -> None:
    """A page has one first heading, no level is skipped, and header, main, footer and navigation are there by name."""
    page = read_page(site / kind)
    levels = [int(element.tag[1]) for element in page.walk() if re.fullmatch("h[1-6]", element.tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert [len(page.all(tag)) for tag in ("header", "main", "footer")] == [1, 1, 1]
    assert all(nav.attributes["aria-label"] for nav in page.all("nav"))
    assert page.all("html")[0].attributes["lang"] == "en"
    assert page.all("a", class_="skip")[0].attributes["href"] == "#page"


@pytest.mark.parametrize("kind", KINDS)
def test_tables_say_what_they_are(site: Path, kind: str) -> None:
    """Each table has a caption or a heading that names it, and each of its headings says what it heads."""
    page = read_page(site / kind)
    ids = {element.attributes.get("id") for element in page.walk()}
    for table in page.all("table"):
        if kind == "pages/our-year.html":
            continue  # what people write by hand has no captions
        assert table.all("caption") or table.attributes["aria-labelledby"] in ids
        assert all(heading.attributes["scope"] for heading in table.all("th"))


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_asks_for_nothing_from_elsewhere(site: Path, kind: str) -> None:
    """What a page loads is in the folder; no style, handler or frame stands in the markup."""
    page = read_page(site / kind)
    for element in page.walk():
        assert not any(name.startswith("on") or name == "style" for name in element.attributes)
        assert element.tag not in {"style", "iframe", "object", "embed", "base", "form"}
        for name in ("src", "href"):
            target = element.attributes.get(name, "").partition("#")[0]
            if not target or target == "data:," or (element.tag == "a" and target == "https://weather.example/"):
                continue
            assert "//" not in target
            assert ":" not in target
            assert ((site / kind).parent / target).is_file(), f"{target} is not there"


@pytest.mark.parametrize("kind", KINDS)
def test_the_policy_allows_only_our_script(site: Path, kind: str) -> None:
    """The content security policy stands in each page and names, by digest, exactly the script that is in it."""
    page = read_page(site / kind)
    [policy] = [element for element in page.all("meta") if "content-security-policy" in str(element.attributes).lower()]
    [script] = [element for element in page.all("script") if "type" not in element.attributes]
    digest = base64.b64encode(hashlib.sha256(script.text.encode()).digest()).decode()
    rules = dict(rule.split(" ", 1) for rule in policy.attributes["content"].split("; "))
    assert rules["script-src"] == f"'sha256-{digest}'"
    assert rules["default-src"] == rules["base-uri"] == rules["form-action"] == "'none'"
    assert "connect-src" not in rules
    assert "unsafe" not in policy.attributes["content"]


def test_the_script_stays_small() -> None:
    """The script that picks figures is under 4 KiB."""
    assert (THEME / "site" / "site.js").stat().st_size < 4 * 1024


def test_a_dish_page_stays_small(site: Path) -> None:
    """A dish of twelve parts and fourteen steps keeps within 60 KiB."""
    assert (site / "dishes" / "mountain-barley.html").stat().st_size <= MOST_BYTES


def test_a_preview_script_is_allowed_to_talk(tmp_path: Path) -> None:
    """A preview's script stands in the page beside ours, and only then may a page fetch from where it came."""
    build_site(BOOK, theme=THEME, out=tmp_path, only=frozenset({"index.html"}), preview="1 < 2 && 3;")
    page = read_page(tmp_path / "index.html")
    policy = " ".join(meta.attributes.get("content", "") for meta in page.all("meta"))
    assert [script.text for script in page.all("script")][1] == "1 < 2 && 3;"
    assert "connect-src 'self'" in policy
    assert policy.count("'sha256-") == 2


def test_markup_in_a_book_stays_text(tmp_path: Path) -> None:
    """A name or sentence that holds tags, quotes or an event handler is shown as typed, on every kind of page."""
    part, reading = BOOK.dishes[0].parts[0], BOOK.dishes[0].strip[0]
    steady = same(EVIL, 12)
    varying = Printed(("1", EVIL, *"3456789abc"), ("1", EVIL, *"3456789abc"))
    dish = replace(
        BOOK.dishes[0],
        name=EVIL,
        meal=EVIL,
        about=EVIL,
        raw=(EVIL,),
        notes=(EVIL,),
        done_when=EVIL,
        allergens=(EVIL,),
        missing=(EVIL,),
        conditions=(EVIL,),
        parts=(replace(part, name=EVIL, way=EVIL, instead=(EVIL,), measure=steady, dry=varying),),
        strip=(replace(reading, label=EVIL, figure=steady), replace(reading, figure=varying)),
        steps=(replace(BOOK.dishes[0].steps[0], verb=EVIL, line=(EVIL, steady, varying, Strong(EVIL))),),
    )
    component = replace(
        EGG_COMPONENT,
        name=EVIL,
        bring_back=EVIL,
        to_dry=(EVIL,),
        facts=(Fact(label=EVIL, metric=EVIL, us=EVIL, source=EVIL),),
        used_in=(Link(kind="dish", id=dish.id, name=EVIL),),
    )
    evil = Link(kind="component", id="gone", name=EVIL)
    jar = replace(LARDER.containers[0], component=evil, size=EVIL, stands=EVIL, state=EVIL, keeping=EVIL)
    stock = replace(LARDER.levels[0], component=evil, says=EVIL, until=EVIL)
    entry = RUN_INDEX.years[0].entries[0]
    book = replace(
        with_dishes(BOOK, dish),
        larder=replace(LARDER, day=EVIL, first=(group(EVIL, line(jar)),), levels=(stock,), emptied_shelf=(line(jar),)),
        run_index=RunIndex(
            years=(RunYear(year=EVIL, entries=(replace(entry, trays=(Tray(name=EVIL, raw=True, verdict=EVIL),)),)),)
        ),
        runs={RUN: replace(RUN_SHEET, id=EVIL, batches=(replace(RUN_SHEET.batches[0], component=evil, verdict=EVIL),))},
        title=EVIL,
        about=(EVIL,),
        edition=EVIL,
        components=(component,),
        indexes=(replace(INDEXES[0], title=EVIL),),
        rules=(replace(BOOK.rules[0], text=EVIL),),
        pages=(replace(WRITTEN, title=EVIL, markdown=EVIL),),
    )
    build_site(book, theme=THEME, out=tmp_path)
    ours = (THEME / "site" / "site.js").read_text(encoding="utf-8")
    for file in tmp_path.rglob("*.html"):
        page = read_page(file)
        assert EVIL in page.text
        assert [script.text for script in page.all("script") if "type" not in script.attributes] == [ours]
        assert len(page.all("script")) <= 2
        assert not any("onerror" in element.attributes for element in page.walk())
