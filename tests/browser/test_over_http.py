"""The same pages from a server: the policy lets styles, fonts and the script through there too."""

import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser


class _Silent(SimpleHTTPRequestHandler):
    """Serves files and writes no log."""

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the name is the library's
        """Say nothing."""


@pytest.fixture
def address(site: Path) -> Iterator[str]:
    """Serve the site on a free port of this machine."""
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(_Silent, directory=str(site))) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


def test_a_dish_works_over_http(browser: Browser, address: str) -> None:
    """Styles and fonts load, the buttons pick, nothing is said on the console, nothing is asked of another host."""
    context = browser.new_context()
    page = context.new_page()
    said: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(f"{address}/dishes/egg-and-leek-pan.html")
    page.evaluate("document.fonts.ready")
    assert page.evaluate("[...document.fonts].filter(font => font.status === 'loaded').length") == 5
    page.locator("[data-by='1']").click()
    assert page.locator(".for").text_content() == "for 3 servings"
    assert said == []
    assert all(url.startswith((address, "data:")) for url in asked)
    context.close()


def test_the_policy_stops_a_foreign_script(browser: Browser, address: str, site: Path) -> None:
    """A script that someone smuggled into a page does not run."""
    clean = (site / "index.html").read_text(encoding="utf-8")
    (site / "smuggled.html").write_text(clean.replace("</main>", "<script>document.title = 'taken'</script></main>"))
    page = browser.new_page()
    page.goto(f"{address}/smuggled.html")
    assert page.title() == "The Skerry Book"
    page.close()
    (site / "smuggled.html").unlink()
