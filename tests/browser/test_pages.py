"""Pages of the site in a real browser, opened from disk."""

import re
import unicodedata
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Browser
from pypdf import PdfReader
from tests.browser.conftest import DESK, PHONE, THEME, Open, brightest_red_at_night
from tests.site.samples import BOOK
from tests.site.test_site_html import KINDS

from packlarder.publish.single import build_single
from packlarder.sheets.printed import Printed, System, plain

PAN = "dishes/egg-and-leek-pan.html"
DISH = BOOK.dishes[0]
CARRY = DISH.strip[0].figure


def bare(text: str | None) -> str:
    """Give a text with its spaces as one plain space."""
    return re.sub(r"\s+", " ", text or "").strip()


def letters(text: str) -> str:
    """Give the letters of a text: without spaces, small, each letter of a ligature by itself."""
    return "".join(unicodedata.normalize("NFKC", text).lower().split())


def texts(figure: Printed, *, servings: int, us: bool = False) -> str:
    """Give what a figure must show."""
    return bare((figure.us if us else figure.metric)[servings - 1])


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("size", [PHONE, DESK], ids=["phone", "desk"])
def test_no_page_scrolls_sideways(open_page: Open, kind: str, size: tuple[int, int]) -> None:
    """Every kind of page fits a phone of 360 px and a desk, in US units and with the table for all servings open."""
    page = open_page(kind, size=size).page
    if page.locator("[data-in=us]").count():
        page.locator("[data-in=us]").first.click()
    page.evaluate("for (const part of document.querySelectorAll('details')) part.open = true")
    assert page.evaluate("document.documentElement.scrollWidth") <= size[0]
    stray = page.evaluate(
        "[...document.querySelectorAll('main *, header *, footer *')]"
        ".filter(e => !e.closest('.unseen, .fold thead, .every thead, .sources thead'))"
        ".filter(e => e.getBoundingClientRect().right > innerWidth + 1).map(e => e.outerHTML.slice(0, 80))"
    )
    assert stray == []


@pytest.mark.parametrize("kind", ["index.html", PAN, "lists/by-meal.html", "components/egg-powder.html"])
def test_a_wet_thumb_finds_its_target(open_page: Open, kind: str) -> None:
    """On a phone, every button and link is at least 44 px high, and body text at least 17 px."""
    page = open_page(kind, size=PHONE).page
    low = page.evaluate(
        "[...document.querySelectorAll('a:not(.skip), button, summary')].filter(e => e.getClientRects().length"
        " && Math.max(...[...e.getClientRects()].map(r => r.height)) < 43.5).map(e => e.outerHTML.slice(0, 90))"
    )
    assert low == []
    assert page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)") >= 17


def test_on_a_phone_the_steps_are_one_touch_away(open_page: Open) -> None:
    """The links to parts, packs, steps and cautions stand before the RAW box, 44 px high; a touch shows the steps."""
    page = open_page(PAN, size=PHONE).page
    links = page.locator(".within a")
    assert [bare(text) for text in links.all_text_contents()] == ["Parts", "Packs", "Steps", "Cautions"]
    boxes = [link.bounding_box() for link in links.all()]
    assert all(box and box["height"] >= 43.5 for box in boxes)
    raw = page.locator(".rawbox").bounding_box()
    assert raw
    assert boxes[0]
    assert boxes[0]["y"] < raw["y"]
    links.nth(2).click()
    assert 0 <= page.evaluate("document.getElementById('steps').getBoundingClientRect().top") < 100
    assert bare(page.locator(".for").text_content()) == "for 2 servings"


def test_sources_open_without_scripts(open_page: Open) -> None:
    """Where the cautions come from is out of sight until asked for, and needs no script."""
    page = open_page(PAN, size=PHONE, scripts=False).page
    source = page.locator(".from li").first
    assert not source.is_visible()
    page.locator(".from summary").click()
    assert source.is_visible()


def test_fonts_and_styles_load_from_disk(open_page: Open) -> None:
    """Opened from disk, the page gets its own style sheet and fonts past its policy."""
    page = open_page(PAN).page
    page.evaluate("document.fonts.ready")
    assert page.evaluate("[...document.fonts].filter(font => font.status === 'loaded').length") == 5
    assert page.evaluate("getComputedStyle(document.querySelector('.strip')).borderTopStyle") == "double"


def test_the_buttons_pick_servings(open_page: Open) -> None:
    """Plus and minus show the texts for the next number of servings, in the strip, the parts and the steps."""
    page = open_page(PAN).page
    plus, minus = page.locator("[data-by='1']"), page.locator("[data-by='-1']")
    for servings in (3, 4):
        plus.click()
        assert bare(page.locator(".for").text_content()) == f"for {servings} servings"
        assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=servings)
        row = page.locator(".parts tbody tr").first.locator("td")
        for place, figure in enumerate((DISH.parts[0].measure, DISH.parts[0].dry, DISH.parts[0].fresh)):
            assert bare(row.nth(place).text_content()) == texts(figure, servings=servings)
        assert texts(DISH.parts[1].dry, servings=servings) in bare(page.locator(".steps li").first.text_content())
    minus.click()
    assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=3)


def test_the_ends_are_the_ends(open_page: Open) -> None:
    """Below one and above twelve servings nothing changes, and the button says that it is of no use there."""
    page = open_page(PAN).page
    for label, end, presses in (("[data-by='1']", 12, 15), ("[data-by='-1']", 1, 15)):
        button = page.locator(label)
        for _ in range(presses):
            button.click(force=True)
        assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=end)
        assert button.get_attribute("aria-disabled") == "true"
    assert bare(page.locator(".for").text_content()) == "for 1 serving"


def test_units_switch_everywhere(open_page: Open) -> None:
    """US shows the US text of every figure on the page; metric brings the first back."""
    page = open_page(PAN).page
    before = page.locator("main").text_content()
    page.locator("[data-in=us]").click()
    assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=2, us=True)
    assert "160 °F" in bare(page.locator(".rawbox").text_content())
    assert page.locator("[data-in=us]").get_attribute("aria-pressed") == "true"
    page.locator("[data-in=metric]").click()
    assert page.locator("main").text_content() == before


def test_the_choice_is_remembered_and_can_be_sent(open_page: Open) -> None:
    """Servings and units hold on the next dish; the address says them, and an address that says them wins."""
    first = open_page(PAN)
    first.page.locator("[data-by='1']").click()
    first.page.locator("[data-in=us]").click()
    assert first.page.url.endswith("#for-3-us")
    other = open_page("dishes/mountain-barley.html", like=first).page
    assert bare(other.locator(".strip dd").first.text_content()) == texts(
        BOOK.dishes[3].strip[0].figure, servings=3, us=True
    )
    sent = open_page(f"{PAN}#for-8-metric", like=first).page
    assert bare(sent.locator(".strip dd").first.text_content()) == texts(CARRY, servings=8)
    fresh = open_page(f"{PAN}#for-99-metric").page
    assert bare(fresh.locator(".strip dd").first.text_content()) == texts(CARRY, servings=2)


def test_without_a_store_it_works_for_the_page(open_page: Open, site: Path) -> None:
    """Where the browser keeps nothing, the buttons still work."""
    page = open_page("index.html").page
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })")
    page.goto((site / PAN).as_uri())
    page.locator("[data-by='1']").click()
    page.locator("#night").click()
    assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=3)
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(0, 0, 0)"


def test_with_scripts_off_the_usual_servings_are_there(open_page: Open) -> None:
    """Without scripts no dead control is in sight, the usual servings can be read, and a table tells the others."""
    page = open_page(PAN, size=PHONE, scripts=False).page
    assert page.locator("button:visible").count() == 0
    assert bare(page.locator(".for").text_content()) == "for 2 servings"
    assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=2)
    page.locator(".every summary").click()
    row = page.locator(".every tr", has_text="Water to carry").locator("td")
    assert bare(row.nth(11).text_content()) == texts(CARRY, servings=12)
    assert row.nth(11).is_visible()


def test_night_is_red_on_black_and_stays(open_page: Open) -> None:
    """Night turns the page red on black, is remembered on the next page before it is painted, and goes again."""
    first = open_page(PAN, size=PHONE)
    button = first.page.locator("#night")
    assert button.get_attribute("aria-pressed") == "false"
    button.click()
    assert button.get_attribute("aria-pressed") == "true"
    colours = "(s => [s.color, s.backgroundColor])(getComputedStyle(document.body))"
    assert first.page.evaluate(colours) == ["rgb(240, 0, 0)", "rgb(0, 0, 0)"]
    second = open_page("index.html", like=first)
    assert second.page.evaluate(colours) == ["rgb(240, 0, 0)", "rgb(0, 0, 0)"]
    second.page.locator("#night").click()
    assert second.page.evaluate(colours)[1] != "rgb(0, 0, 0)"


@pytest.mark.parametrize("kind", [PAN, "pages/our-year.html"])
def test_at_night_no_pixel_is_other_than_red(open_page: Open, tmp_path: Path, kind: str) -> None:
    """In a picture of the night page, with its photo, green and blue are dark in every pixel."""
    page = open_page(kind, size=PHONE).page
    page.locator(".photo img").scroll_into_view_if_needed()
    assert brightest_red_at_night(page, tmp_path / "night.png") == 240


def test_dark_follows_the_reader(open_page: Open) -> None:
    """A reader who likes dark pages gets light ink on dark paper."""
    page = open_page(PAN, scheme="dark").page
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(21, 22, 19)"


def test_keys_do_all(open_page: Open) -> None:
    """By keyboard alone: the first stop leads to the page, every stop can be seen, and space works the buttons."""
    page = open_page(PAN).page
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.className") == "skip"
    assert page.evaluate("document.activeElement.getBoundingClientRect().top") >= 0
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "page"
    tops = []
    for _ in range(4):
        page.keyboard.press("Tab")
        tops.append(page.evaluate("document.activeElement.dataset.by || document.activeElement.dataset.in"))
        assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
    assert tops == ["-1", "1", "metric", "us"]
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Space")
    assert bare(page.locator(".strip dd").first.text_content()) == texts(CARRY, servings=3)
    assert page.evaluate("document.activeElement.dataset.by") == "1"


def test_steps_stand_in_order_of_the_clock(open_page: Open) -> None:
    """On a phone each step's clock stands left of its line, the lines below each other."""
    page = open_page("dishes/mountain-barley.html", size=PHONE).page
    boxes = [row.bounding_box() for row in page.locator(".steps li").all()]
    assert len(boxes) == 14
    assert all(one and two and one["y"] + one["height"] <= two["y"] + 1 for one, two in pairwise(boxes))


def test_paper_shows_the_servings_chosen_and_no_controls(open_page: Open) -> None:
    """On paper the page is black on white, for the servings chosen, without buttons and navigation."""
    page = open_page(PAN).page
    page.locator("[data-by='1']").click()
    page.locator("#night").click()
    page.emulate_media(media="print")
    assert page.locator("button:visible").count() == 0
    assert page.locator("nav:visible").count() == 0
    assert page.locator(".for").is_visible()
    assert bare(page.locator(".for").text_content()) == "for 3 servings"
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"


def test_a_dish_is_one_or_two_sheets_of_paper(open_page: Open, tmp_path: Path) -> None:
    """A dish prints on two pages of A4 at most, its steps on one of them, without sources or the table for all."""
    page = open_page(PAN).page
    page.evaluate("for (const part of document.querySelectorAll('details')) part.open = true")
    paper = tmp_path / "pan.pdf"
    page.pdf(path=paper, format="A4")
    pages = [letters(sheet.extract_text()) for sheet in PdfReader(paper).pages]
    assert len(pages) <= 2
    steps = [letters(plain(step.line, System.METRIC, DISH.usual)) for step in DISH.steps]
    assert any(all(step in text for step in steps) for text in pages)
    assert not any(letters(text) in page for page in pages for text in ("USDA FSIS", "For 1 to 12 servings", "metric"))


def test_the_foot_of_the_pocket_file_covers_no_words(browser: Browser, tmp_path: Path) -> None:
    """Contents and Night stand on a bar as wide as the window, and the last line of the file ends above it."""
    build_single(BOOK, theme=THEME, out=tmp_path)
    context = browser.new_context(viewport={"width": PHONE[0], "height": PHONE[1]}, java_script_enabled=False)
    page = context.new_page()
    page.goto((tmp_path / "pocket.html").as_uri() + "#safety")
    bar = page.locator(".bar").bounding_box()
    assert bar
    assert (bar["x"], bar["width"], bar["y"] + bar["height"]) == (0, *PHONE)
    assert bar["height"] >= 43.5
    page.keyboard.press("End")
    page.wait_for_function("scrollY + innerHeight >= document.documentElement.scrollHeight - 1")
    last = page.locator(".foot p").bounding_box()
    assert last
    assert last["y"] + last["height"] <= bar["y"]
    page.locator("#night").check()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(0, 0, 0)"
    page.locator(".bar a").click()
    assert page.evaluate("document.getElementById('contents').getBoundingClientRect().top") < PHONE[1] / 2
    context.close()
