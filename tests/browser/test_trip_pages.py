"""A trip's page in a real browser: thumbs, units in pictures, night, a phone's width, no scripts."""

from pathlib import Path

import pytest
from tests.browser.conftest import DESK, PHONE, THEME, Open, brightest_red_at_night
from tests.browser.test_pages import bare
from tests.site.sample_trip import ID, trip, tripped

from packlarder.publish.site import build_site

PAGES = (f"trips/{ID}.html", "trips.html")


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the site of the book with the sample trip."""
    out = tmp_path_factory.mktemp("trips")
    build_site(tripped(), theme=THEME, out=out)
    return out


@pytest.mark.parametrize("kind", PAGES)
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_nothing_scrolls_sideways_and_thumbs_find_links(open_page: Open, kind: str, size: tuple[int, int]) -> None:
    """No page is wider than its window; on a phone every link and button is at least 44 px high."""
    page = open_page(kind, size=size).page
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    low = page.evaluate(
        "[...document.querySelectorAll('a:not(.skip), button, summary')].filter(e => e.getClientRects().length"
        " && Math.max(...[...e.getClientRects()].map(r => r.height)) < 43.5).map(e => e.outerHTML.slice(0, 90))"
    )
    assert size == DESK or low == []


def test_units_switch_in_pictures_and_what_they_say(open_page: Open) -> None:
    """US leaves no gram and no litre on the page; metric brings the first text back."""
    page = open_page(PAGES[0]).page
    before = page.locator("main").text_content()
    page.locator("[data-in=us]").click()
    switched = page.evaluate("[...document.querySelectorAll('[data-f]')].map(e => e.textContent)")
    assert not [text for text in switched if text.endswith(("\u00a0g", "\u00a0L", "\u00a0mL", "\u00a0kg"))]
    assert bare(page.locator("#leg-3-says").text_content()).startswith(f"{bare(trip().legs[2].total.us[0])} in all")
    assert bare(page.locator(".columns .above tspan").first.text_content()) == "12.0 lb"
    page.locator("[data-in=metric]").click()
    assert page.locator("main").text_content() == before


def test_at_night_hatchings_are_red(open_page: Open, tmp_path: Path) -> None:
    """In a picture of the night page with its drawings, green and blue are dark in every pixel."""
    page = open_page(PAGES[0], size=PHONE).page
    assert brightest_red_at_night(page, tmp_path / "night.png") == 240


def test_without_scripts_all_is_there(open_page: Open) -> None:
    """No dead control is in sight, the bars are drawn, and figures can be read."""
    page = open_page(PAGES[0], size=PHONE, scripts=False).page
    assert page.locator("button:visible").count() == 0
    widths = [box["width"] for one in page.locator("svg.water .drinking").all() if (box := one.bounding_box())]
    assert len(widths) == 3
    assert min(widths) > 60
    assert page.locator("#fed").is_visible()
