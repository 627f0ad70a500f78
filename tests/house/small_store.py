"""A small book whose drying run was worked by hand, and a shell that says commands to it."""

import json
from pathlib import Path
from typing import Any

import pytest

from packlarder.cli import main
from packlarder.cli.start import starter_files

STOCK = """
on: 2027-06-01
dryers:
  machine: {dries: freeze-dried, trays: 4, a tray: 800 g, takes: 30 h}
containers:
  small jar: {kind: jar, holds: 270 mL}
larder:
  keeping: [{what: egg, for: 12 months, why: our rule}, {kept: opened, for: 4 weeks}]
  at least: {egg powder: 200 g}
"""
EGG = """name: Egg powder
was: egg, whole, raw
went in: raw
contains: [egg]
dried: freeze-dried
form: powder
"""
LEEK = EGG.replace("Egg powder", "Leek rings").replace("egg, whole, raw", "leek, raw").replace("[egg]", "[]")
RUN = """loaded: 2027-04-10 20:00
dryer: machine
took: 36 h
on the trays:
  - egg powder:
      fresh: 900 g
      treated: frozen first
      trays: 2
      deep: 6 mm
      dry: 225 g
      tested: no lighter
      put in:
        - {in: small jar, holds: 75 g, stands: cellar}
        - {in: small jar, holds: 75 g, stands: cellar}
        - {in: small jar, holds: 2.6 oz, stands: attic}
"""
"""900 g of egg hold 214.7 g of solids (SR28): 225 g are dry, with 4.6 % water. A gram stands for 900 / 225 = 4 g."""
FILES = {"components/egg-powder.yaml": EGG, "components/leek-rings.yaml": LEEK, "batches/2027-04-10-eggs.yaml": RUN}


def make_book(folder: Path) -> Path:
    """Make the book: what `start` makes, with dryer, jars and one run of eggs in three of them for its own."""
    for path, content in starter_files():
        if path.parts[0] not in ("batches", "draws", "trips"):
            write(folder, str(path), content.decode())
    kitchen = (folder / "book.yaml").read_text("utf-8")
    before, _, rest = kitchen.partition("# Your dryers")
    after = rest.partition("# Where and on what")[2]
    assert after
    write(folder, "book.yaml", before + "# Where and on what" + after + STOCK)
    for name, text in FILES.items():
        write(folder, name, text)
    return folder


def write(book: Path, path: str, text: str) -> None:
    """Write a file of a book."""
    (book / path).parent.mkdir(parents=True, exist_ok=True)
    (book / path).write_text(text, "utf-8")


class Shell:
    """Says commands to one book, and keeps what was told."""

    def __init__(self, book: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.book = book
        self.capsys = capsys

    def __call__(self, words: str, *more: str) -> tuple[int, str, str]:
        """Give what a command ends with, and what it tells on standard output and standard error."""
        ended = main([*words.split(), *more, "--book", str(self.book)])
        told = self.capsys.readouterr()
        assert "fault of Packlarder" not in told.err
        return ended, told.out, told.err

    def files(self) -> dict[Path, bytes]:
        """Give every file of the book."""
        return {path: path.read_bytes() for path in self.book.rglob("*") if path.is_file()}

    def data(self, words: str) -> dict[str, Any]:
        """Give what a command prints as data."""
        ended, out, err = self(f"{words} --json")
        assert (ended, err) == (0, "")
        found: dict[str, Any] = json.loads(out)
        return found

    def left(self, when: str = "") -> dict[str, tuple[float, str | None]]:
        """Give what each container holds, and since when it is open."""
        found = self.data(f"show larder {when}")["containers"]
        return {one["mark"]: (one["left_g"], one["opened_on"]) for one in found}
