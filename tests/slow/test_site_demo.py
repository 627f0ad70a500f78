"""site_demo/ is the demo book as built: what is checked in is what `build` writes today."""

import subprocess
import sys
import zipfile
from collections.abc import Mapping
from itertools import chain
from pathlib import Path

import pytest
from tests.paper.reading import Word, words

REFRESH = "refresh it: python3 generator build --book recipes --out site_demo"
SAME_PT = 0.5
"""How far a word may stand from where it stood: fonts are the same, their shaper may be of another version."""


@pytest.fixture(scope="module")
def built(checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the demo book anew."""
    out = tmp_path_factory.mktemp("demo") / "site"
    command = [sys.executable, "-P", "-m", "packlarder", "--book", "recipes", "build", "--out", str(out)]
    done = subprocess.run(command, cwd=checkout, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return out


def files(root: Path) -> Mapping[str, Path]:
    """Name every file of a folder by its path in it."""
    return {path.relative_to(root).as_posix(): path for path in sorted(root.rglob("*")) if path.is_file()}


def test_the_demo_holds_the_same_files(checkout: Path, built: Path) -> None:
    """No page, booklet or data file is missing from site_demo/, and none is left over."""
    assert sorted(files(checkout / "site_demo")) == sorted(files(built)), REFRESH


def test_the_demo_reads_the_same(checkout: Path, built: Path) -> None:
    """Pages, data, fonts and scripts are the same to the letter."""
    then = files(checkout / "site_demo")
    differing = [
        name
        for name, path in files(built).items()
        if path.suffix not in (".pdf", ".epub") and then[name].read_bytes() != path.read_bytes()
    ]
    assert differing == [], REFRESH


def test_the_demo_e_book_holds_the_same(checkout: Path, built: Path) -> None:
    """What lies in the e-book is the same, file by file."""
    for name, path in files(built).items():
        if path.suffix == ".epub":
            assert contents(checkout / "site_demo" / name) == contents(path), REFRESH


def contents(epub: Path) -> Mapping[str, bytes]:
    """Give what lies in an e-book, by name."""
    with zipfile.ZipFile(epub) as held:
        return {name: held.read(name) for name in held.namelist()}


def test_the_demo_booklets_print_the_same(checkout: Path, built: Path) -> None:
    """Each word of each booklet stands on the same page at the same place."""
    pdfs = {name: path for name, path in files(built).items() if path.suffix == ".pdf"}
    assert pdfs
    for name, path in pdfs.items():
        then, now = words(checkout / "site_demo" / name), words(path)
        assert [[word.text for word in page] for page in then] == [[word.text for word in page] for page in now], (
            REFRESH
        )
        for before, after in zip(chain(*then), chain(*now), strict=True):
            assert abs(before.left - after.left) < SAME_PT, (name, before, after)
            assert abs(before.top - after.top) < SAME_PT, (name, before, after)


def texts(pages: list[list[Word]]) -> list[list[str]]:
    """Give the words of each page without their places."""
    return [[word.text for word in page] for page in pages]
