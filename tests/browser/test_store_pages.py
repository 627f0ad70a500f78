"""Larder and drying runs in a real browser: units in pictures, night, what is folded away, without scripts."""

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Page
from tests.browser.conftest import PHONE, THEME, Open, brightest_red_at_night
from tests.browser.test_pages import bare
from tests.site.sample_store import LARDER, RUN, level
from tests.site.samples import BOOK

from packlarder.publish.site import build_site
from packlarder.sheets.facts import Link
from packlarder.sheets.store_sheet import Stay

STORE = ("larder.html", "batches.html", f"batches/{RUN}.html", "components/egg-powder.html")
MANY = 40


@pytest.mark.parametrize("kind", STORE)
def test_a_wet_thumb_finds_its_target(open_page: Open, kind: str) -> None:
    """On a phone, every button and link of these pages is at least 44 px high."""
    page = open_page(kind, size=PHONE).page
    low = page.evaluate(
        "[...document.querySelectorAll('a:not(.skip), button, summary')].filter(e => e.getClientRects().length"
        " && Math.max(...[...e.getClientRects()].map(r => r.height)) < 43.5).map(e => e.outerHTML.slice(0, 90))"
    )
    assert low == []


@pytest.mark.parametrize("kind", STORE)
def test_units_switch(open_page: Open, kind: str) -> None:
    """US leaves no gram on the page, and metric brings the first text back."""
    page = open_page(kind).page
    before = page.locator("main").text_content()
    page.locator("[data-in=us]").click()
    switched = page.evaluate("[...document.querySelectorAll('[data-f]')].map(e => e.textContent)")
    assert switched
    assert not [text for text in switched if text.endswith("\u00a0g")]
    page.locator("[data-in=metric]").click()
    assert page.locator("main").text_content() == before


def test_a_picture_switches_with_its_page(open_page: Open) -> None:
    """The figures beside a plot are text of the picture, and follow the choice of units."""
    page = open_page("components/egg-powder.html").page
    label = page.locator(".picture tspan").first
    assert bare(label.text_content()) == "260 g"
    page.locator("[data-in=us]").click()
    assert bare(label.text_content()) == "8½ oz"


@pytest.mark.parametrize("kind", ["larder.html", "components/egg-powder.html"])
def test_at_night_pictures_are_red(open_page: Open, tmp_path: Path, kind: str) -> None:
    """In a picture of the night page with its drawings, green and blue are dark in every pixel."""
    page = open_page(kind, size=PHONE).page
    assert brightest_red_at_night(page, tmp_path / "night.png") == 240


def test_without_scripts_all_is_there(open_page: Open) -> None:
    """Without scripts no dead control is in sight, the pictures are drawn, and a month opens."""
    page = open_page("larder.html", size=PHONE, scripts=False).page
    assert page.locator("button:visible").count() == 0
    box = page.locator("svg.stays[role=img]").first.bounding_box()
    assert box
    assert box["width"] > 300
    row = page.locator(".month tbody tr").first
    assert not row.is_visible()
    page.locator(".month summary").first.click()
    assert row.is_visible()


def points(page: Page) -> list[tuple[float, float]]:
    """Give the place of each point and ring of all strips, from the left edge of its strip."""
    found: list[tuple[float, float]] = page.evaluate(
        "[...document.querySelectorAll('svg.stays[role=img] circle')].map(e => {"
        " const box = e.getBoundingClientRect(), strip = e.ownerSVGElement.getBoundingClientRect();"
        " return [(box.left + box.width / 2 - strip.left) / strip.width, box.width]; })"
    )
    return found


@pytest.mark.parametrize("size", [PHONE, (1280, 900)], ids=["phone", "desk"])
def test_a_strip_keeps_its_scale_and_its_type(open_page: Open, size: tuple[int, int]) -> None:
    """Points stand at the same share of any width and are as large on a phone as on a desk, and so is the type."""
    page = open_page("larder.html", size=size).page
    found = points(page)
    # of 594 days, 19 October 2027 is the 176th, and 20 June 2027 the 55th
    assert [round(x, 2) for x, _ in found] == [round(176 / 594, 2), round(55 / 594, 2)]
    assert all(width == pytest.approx(8, abs=2) for _, width in found)
    type_px = page.evaluate("parseFloat(getComputedStyle(document.querySelector('svg .mark')).fontSize)")
    assert 10 <= type_px <= 18


@pytest.mark.parametrize("size", [PHONE, (1280, 900)], ids=["phone", "desk"])
def test_forty_components_are_readable(open_page: Open, site: Path, size: tuple[int, int]) -> None:
    """With 40 components and many days no name is cut, no row covers another, and nothing scrolls sideways."""
    today = LARDER.levels[0].stays[0].until
    stays = tuple(Stay(until=today + 29 * nth, count=nth % 3 + 1, opened=nth == 1, past=False) for nth in range(1, 15))
    rows = tuple(
        level(
            Link(kind="component", id=f"c{nth}", name=f"Component with a rather long name {nth}"),
            short=False,
            stays=stays,
        )
        for nth in range(MANY)
    )
    build_site(
        replace(BOOK, larder=replace(LARDER, levels=rows)),
        theme=THEME,
        out=site.parent / "forty",
        only=frozenset({"larder.html"}),
    )
    (site.parent / "forty" / "assets").mkdir(exist_ok=True)
    for file in (site / "assets").iterdir():
        (site.parent / "forty" / "assets" / file.name).write_bytes(file.read_bytes())
    page = open_page("../forty/larder.html", size=size).page
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    boxes = [row.bounding_box() for row in page.locator(".stock tbody tr").all()]
    assert len(boxes) == MANY
    assert all(one and two and one["y"] + one["height"] <= two["y"] + 1 for one, two in pairwise(boxes))
    assert page.locator(".stock tbody svg").count() == MANY
    most = 175 if size == PHONE else 60
    assert all(box and box["height"] <= most for box in boxes)
