"""Files as people spoil them, through the real command line: one clear fault, and the former output stays."""

import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from packlarder.cli import main
from packlarder.cli.start import starter_files
from packlarder.disk.marker import MARKER, marker_of

DISH = "dishes/beans-and-rice.yaml"
COMPONENT = "components/black-beans.yaml"
BOMB = b"a0: &a0 [lol, lol, lol, lol, lol, lol, lol, lol, lol]\n" + b"".join(
    b"a%d: &a%d [%s]\n" % (n, n, b", ".join([b"*a%d" % (n - 1)] * 9)) for n in range(1, 10)
)
LARGE_BOMB = BOMB + b"# " + b"x" * (10_000_000 - len(BOMB) - 3) + b"\n"


def changed(old: bytes, new: bytes) -> Callable[[bytes], bytes]:
    """Give what changes a file's bytes."""

    def change(content: bytes) -> bytes:
        assert old in content
        return content.replace(old, new, 1)

    return change


SPOILT: dict[str, tuple[str, Callable[[bytes], bytes], int, int, str, str]] = {
    "a mistyped key": (DISH, changed(b"serves: 2", b"srves: 2"), 8, 1, "unknown-key", "did you mean `serves`?"),
    "a mistyped component": (
        DISH,
        changed(b"- black beans: 80 g", b"- black baens: 80 g"),
        10,
        5,
        "unknown-component",
        'did you mean "black beans"?',
    ),
    "a wrong unit": (DISH, changed(b"black beans: 80 g", b"black beans: 80 min"), 10, 18, "unreadable-quantity", ""),
    "a tab": (DISH, changed(b"  - black beans", b"\t- black beans"), 10, 1, "tab", "space"),
    "a missing name": (COMPONENT, changed(b"name: Black beans\n", b""), 2, 1, "missing-key", "name"),
    "an unclosed quote": (COMPONENT, changed(b"name: Black", b'name: "Black'), 2, 7, "open-quote", ""),
    "a binary file": (
        COMPONENT,
        lambda _content: b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR" + bytes(range(256)),
        3,
        1,
        "not-text",
        "",
    ),
    "an empty file": (COMPONENT, lambda _content: b"", 1, 1, "empty-file", ""),
    "an alias bomb": (COMPONENT, lambda _content: BOMB, 1, 5, "needs-quotes", ""),
    "an alias bomb of 10 MB": (COMPONENT, lambda _content: LARGE_BOMB, 1, 1, "too-large", ""),
}


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """Give a sound book with its output, as a build before left it."""
    for path, content in starter_files():
        (tmp_path / "book" / path).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "book" / path).write_bytes(content)
    (tmp_path / "book-out" / "dishes").mkdir(parents=True)
    (tmp_path / "book-out" / MARKER).write_bytes(marker_of(["dishes/old.html"]))
    (tmp_path / "book-out" / "dishes" / "old.html").write_bytes(b"<p>old</p>")
    return tmp_path / "book"


def held(folder: Path) -> dict[str, bytes]:
    """Give every file beside and in the output."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.mark.parametrize("what", SPOILT)
def test_one_clear_fault_and_the_output_stays(book: Path, capsys: pytest.CaptureFixture[str], what: str) -> None:
    """A check and a build each end with 1 and tell one fault with file, line and column; the output is as it was."""
    name, change, line, column, code, help = SPOILT[what]
    (book / name).write_bytes(change((book / name).read_bytes()))
    before = held(book.parent)
    for command in (["check"], ["build"]):
        assert main([*command, "--book", str(book)]) == 1
        told = "".join(capsys.readouterr())
        heads = re.findall(r"^(\S+):(\d+):(\d+): error\[([a-z-]+)\]", told, re.MULTILINE)
        assert heads == [(f"{book.as_posix()}/{name}", str(line), str(column), code)]
        assert "1 error in 1 file" in told
        assert help in told
        assert "fault of Packlarder" not in told
        assert "Traceback" not in told
    assert f"packlarder: Nothing was written; {book.parent / 'book-out'} is as it was." in told
    assert held(book.parent) == before


def test_nothing_is_spoilt_to_begin_with(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The book that the slips are made in has none of its own."""
    assert main(["check", "--book", str(book)]) == 0
    assert "nothing wrong" in capsys.readouterr().out


def test_a_bomb_takes_no_time_and_no_memory(book: Path, checkout: Path) -> None:
    """The check of a 10 MB alias bomb, as a program of its own, takes hardly more memory than that of the book."""
    sound = _check_apart(book, checkout)
    (book / COMPONENT).write_bytes(LARGE_BOMB)
    bombed = _check_apart(book, checkout)
    assert (sound[0], bombed[0]) == (0, 1)
    assert bombed[1] < sound[1] + 30


def _check_apart(book: Path, checkout: Path) -> tuple[int, int]:
    """Check a book in a process of its own; give what it ends with and the most memory that it held, in MiB."""
    # The kernel's own high-water mark: that of `resource` would begin with the memory of the process that starts it.
    asked = (
        "import re, sys; from pathlib import Path; from packlarder.cli import main;"
        "ended = main(['check', '--book', sys.argv[1]]);"
        "print(ended, int(re.search(r'VmHWM:\\s+(\\d+)', Path('/proc/self/status').read_text())[1]) // 1024)"
    )
    ended = subprocess.run(
        [sys.executable, "-P", "-c", asked, str(book)],
        env={"PYTHONPATH": str(checkout / "generator")},
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    assert ended.stderr == ""
    code, mib = map(int, ended.stdout.splitlines()[-1].split())
    return code, mib


RAW_FAULTS = {
    "something raw in a steeped dish": (
        {
            "components/oat-egg.yaml": """\
name: Oats with egg
made of: [rolled oats: 80 g, "egg, whole, raw": 20 g]
went in: raw
contains: [oats, egg]
dried: freeze-dried
form: loose
weighs: {1 portion: 90 g}
bring back: {pour over: 1 portion, with: 250 mL boiling water, wait: 8 min}
""",
            "dishes/oat-egg.yaml": """\
name: Steeped oats with egg
meal: breakfast
serves: 1
parts:
  - oats with egg: 1 portion
steps:
  - pour over: oats with egg
""",
        },
        "components/oat-egg.yaml",
    ),
    "raw powder fried dry": (
        {
            "components/egg-powder.yaml": """\
name: Egg powder
was: egg, whole, raw
went in: raw
contains: [egg]
dried: freeze-dried
form: powder
weighs: {1 tbsp: 6.1 g}
bring back: {mix: 1 tbsp, with: 1 tbsp cold water, wait: 5 min}
""",
            "dishes/dry-egg.yaml": """\
name: Egg from the dry pan
meal: breakfast
serves: 1
parts:
  - egg powder: 24 g
  - olive oil: 1 tbsp
steps:
  - fry: [egg powder, olive oil]
    for: 5 min
    to: 74 °C
""",
        },
        "components/egg-powder.yaml",
    ),
    "raw in a pack with ready food": (
        {
            "components/egg-powder.yaml": """\
name: Egg powder
was: egg, whole, raw
went in: raw
contains: [egg]
dried: freeze-dried
form: powder
weighs: {1 tbsp: 6.1 g}
bring back: {mix: 1 tbsp, with: 1 tbsp cold water, wait: 5 min}
""",
            "dishes/egg-and-crackers.yaml": """\
name: Egg and crackers
meal: breakfast
serves: 1
parts:
  - egg powder: 24 g
  - seed crackers: 4 crackers
  - olive oil: 1 tbsp
packs:
  - [egg powder, seed crackers]
steps:
  - mix: egg powder
  - fry: [egg powder, olive oil]
    for: 5 min
    to: 74 °C
  - Eat with the seed crackers.
""",
        },
        "components/egg-powder.yaml",
    ),
}


@pytest.mark.parametrize("what", RAW_FAULTS)
def test_what_is_raw_and_unsafe_stops_the_build(book: Path, capsys: pytest.CaptureFixture[str], what: str) -> None:
    """The error stands at the dish and names the component's file as well; the output is as it was."""
    files, component = RAW_FAULTS[what]
    for name, text in files.items():
        (book / name).write_text(text, "utf-8")
    before = held(book.parent)
    assert main(["build", "--book", str(book)]) == 1
    told = capsys.readouterr().err
    dish = next(name for name in files if name.startswith("dishes/"))
    assert re.search(rf"^{re.escape(book.as_posix())}/{dish}:\d+:\d+: error\[", told, re.MULTILINE)
    assert re.search(rf"^  also: {re.escape(book.as_posix())}/{component}:\d+:\d+", told, re.MULTILINE)
    assert held(book.parent) == before
