"""A real browser without a window, and pages that tell everything they say and ask for."""

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Browser, Page, sync_playwright
from tests.site.samples import BOOK

from packlarder.publish.site import build_site

NAMES = ("chromium", "chromium-browser", "google-chrome")
FLAGS = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run")
THEME = Path(__file__).parents[2] / "theme"
PHONE = (360, 740)
DESK = (1280, 900)


@dataclass(slots=True, kw_only=True)
class Opened:
    """A page in the browser, with what it said on the console and what it asked for."""

    page: Page
    said: list[str] = field(default_factory=list)
    asked: list[str] = field(default_factory=list)


Open = Callable[..., Opened]
"""`open_page(address, size=, scheme=, scripts=, store=)`: opens a page of the sample site from disk."""


def brightest_red_at_night(page: Page, shot: Path) -> int:
    """Turn a page to night and give the brightest red of its picture, in which green and blue are dark everywhere."""
    page.locator("#night").click()
    page.mouse.move(0, 0)
    page.screenshot(path=shot, full_page=True)
    with Image.open(shot) as picture:
        red, green, blue = picture.convert("RGB").split()
    assert all(count == 0 for band in (green, blue) for count in band.histogram()[13:])
    return max(level for level, count in enumerate(red.histogram()) if count)


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Start the browser that the PATH knows; fail, not skip, when there is none."""
    path = next((found for name in NAMES if (found := shutil.which(name))), None)
    if path is None:
        pytest.fail(f"the browser tests need one of {', '.join(NAMES)} on the PATH")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=path, args=list(FLAGS))
        yield started
        started.close()


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the site of the sample book and give its folder."""
    out = tmp_path_factory.mktemp("site")
    build_site(BOOK, theme=THEME, out=out)
    return out


@pytest.fixture
def open_page(browser: Browser, site: Path) -> Iterator[Open]:
    """Open pages in fresh contexts; each test ends by finding that none of them said or asked anything amiss."""
    contexts = []
    opened: list[Opened] = []

    def opening(
        address: str,
        *,
        size: tuple[int, int] = DESK,
        scheme: str = "light",
        scripts: bool = True,
        like: Opened | None = None,
    ) -> Opened:
        if like is None:
            context = browser.new_context(
                viewport={"width": size[0], "height": size[1]},
                color_scheme=scheme,  # type: ignore[arg-type]  # the library wants a literal
                java_script_enabled=scripts,
            )
            contexts.append(context)
        else:
            context = like.page.context
        found = Opened(page=context.new_page())
        found.page.on("console", lambda message: found.said.append(message.text))
        found.page.on("pageerror", lambda error: found.said.append(str(error)))
        found.page.on("request", lambda request: found.asked.append(request.url))
        found.page.on("requestfailed", lambda request: found.said.append(f"failed: {request.url}"))
        found.page.goto((site / address.partition("#")[0]).as_uri() + address[len(address.partition("#")[0]) :])
        opened.append(found)
        return found

    yield opening
    for found in opened:
        assert found.said == []
        assert [address for address in found.asked if not address.startswith(("file:", "data:"))] == []
    for context in contexts:
        context.close()
