"""What no file of the repository may hold: where it was written, where packages come from, what was left for later."""

import re
import subprocess
from pathlib import Path

import pytest

PATHS = re.compile(r"(?<![\w./}-])/([r]oot\b|[h]ome/[a-z]|[U]sers/[A-Z]|[t]mp/[a-z]|[o]pt/[a-z])")
HOSTS = re.compile(r"[p]ypi\.org|[p]ythonhosted|[d]ebian\.(org|net)|[n]pmjs|[p]ypi/simple", re.IGNORECASE)
LEFT_OVER = re.compile(r"\b([T]ODO|[F]IXME|[X]XX|[H]ACK)\b")
"""Each first letter stands in brackets, so that this file is not its own find."""


def texts(checkout: Path) -> dict[str, str]:
    """Read every text file that git has, or would take in: name to content."""
    command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    listed = subprocess.run(command, cwd=checkout, capture_output=True, text=True, check=True).stdout
    found = {}
    for name in filter(None, listed.split("\0")):
        try:
            found[name] = (checkout / name).read_text("utf-8")
        except (UnicodeDecodeError, FileNotFoundError):  # a picture or a PDF; or removed and not yet committed
            continue
    return found


def finds(pattern: re.Pattern[str], held: dict[str, str]) -> list[str]:
    """Name each line that the pattern is found in."""
    return [
        f"{name}:{number}: {found[0]}"
        for name, text in held.items()
        for number, line in enumerate(text.splitlines(), start=1)
        if (found := pattern.search(line))
    ]


@pytest.fixture(scope="module")
def held(checkout: Path) -> dict[str, str]:
    """Give all texts of the repository, having made sure that they are all."""
    found = texts(checkout)
    assert {"pyproject.toml", "generator/__main__.py", "requirements/run.txt", "tests/conftest.py"} <= found.keys()
    return found


def test_no_path_of_a_machine(checkout: Path, held: dict[str, str]) -> None:
    """No file says where on its author's machine something lay, this checkout's own place included."""
    assert finds(PATHS, held) == []
    if len(checkout.parts) > 2:  # a checkout right under / would be found in every second path
        assert finds(re.compile(rf"{re.escape(str(checkout))}\b"), held) == []


def test_no_host_of_a_registry(held: dict[str, str]) -> None:
    """No file names the host of a package registry: where packages come from is the user's to say."""
    assert finds(HOSTS, held) == []


def test_nothing_left_for_later(held: dict[str, str]) -> None:
    """No file holds a note of what somebody meant to do some day."""
    assert finds(LEFT_OVER, held) == []


@pytest.mark.parametrize(
    ("pattern", "line"),
    [
        (PATHS, "see " + "/ho" + "me/ann/book"),
        (PATHS, "[a](" + "/ro" + "ot/.cache)"),
        (HOSTS, "https://files.py" + "thonhosted.org/x"),
        (HOSTS, "deb http://deb.de" + "bian.org/debian"),
        (LEFT_OVER, "# TO" + "DO: later"),
    ],
)
def test_finds_are_found(pattern: re.Pattern[str], line: str) -> None:
    """Each pattern does find what it is for."""
    assert finds(pattern, {"a.txt": f"first\n{line}\n"})[0].startswith("a.txt:2: ")


@pytest.mark.parametrize("line", ["url(../images/root/x.svg)", "{{ base }}/home/index.html", "the root", "A HACKSAW"])
def test_others_words_pass(line: str) -> None:
    """Words that only look alike are nobody's path and nobody's note."""
    for pattern in (PATHS, HOSTS, LEFT_OVER):
        assert finds(pattern, {"a.txt": line}) == []
