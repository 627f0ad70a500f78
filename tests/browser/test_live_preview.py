"""The live preview in a real browser: what is saved is seen."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from packlarder.cli.start import starter_files

NAME = "name: Apple porridge"


@pytest.fixture
def dish(tmp_path: Path) -> Path:
    """Make a sound book, and give the file of one of its dishes."""
    for path, content in starter_files():
        (tmp_path / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / path).write_bytes(content)
    return tmp_path / "dishes" / "apple-porridge.yaml"


@pytest.fixture
def address(dish: Path, checkout: Path) -> Iterator[str]:
    """Run the real command in a process of its own, and give the address that it tells; Ctrl-C ends it well."""
    process = subprocess.Popen(
        [sys.executable, "-P", "-m", "packlarder", "serve", "--book", str(dish.parents[1])],
        env={**os.environ, "PYTHONPATH": str(checkout / "generator")},
        stderr=subprocess.PIPE,
        text=True,
    )
    assert process.stderr is not None
    found = next(line for line in process.stderr if "http://" in line)
    yield next(word for word in found.split() if word.startswith("http://"))
    process.send_signal(signal.SIGINT)
    rest = process.communicate(timeout=20)[1]
    assert process.returncode == 0
    assert "Traceback" not in rest


def test_an_edit_is_in_the_browser_within_a_second(browser: Browser, dish: Path, address: str) -> None:
    """From saving a file to its words on the page, under the page's own policy; the best of three counts."""
    text = dish.read_text("utf-8")
    assert NAME in text
    complaints: list[str] = []
    took = []
    page = browser.new_page()
    page.on("console", lambda message: complaints.append(message.text))
    page.goto(f"{address}dishes/apple-porridge.html")
    for number in range(3):
        start = time.perf_counter()
        dish.write_text(text.replace(NAME, f"{NAME} {number}"), "utf-8")
        page.get_by_role("heading", name=f"Apple porridge {number}").wait_for(timeout=10_000)
        took.append(time.perf_counter() - start)
    page.close()
    assert min(took) < 1
    assert complaints == []
