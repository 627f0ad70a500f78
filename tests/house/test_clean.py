"""The code is clean by the rules in pyproject.toml: style and types."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

IGNORE = re.compile(r"# ([n]oqa(: [A-Z0-9, ]*[0-9])?|[t]ype: ignore(\[[a-z, -]+\])?|[p]ragma: no cover)(?P<reason>.*)")
CHECKS = {
    "style": ["ruff", "check", "--quiet", "--no-cache", "--output-format=concise", "generator", "tests"],
    "types": ["mypy", "--no-error-summary", "generator", "tests"],
}


@pytest.mark.parametrize("check", CHECKS)
def test_code_is_clean(checkout: Path, check: str) -> None:
    """Style and strict types find nothing in code and tests."""
    ended = subprocess.run(
        [sys.executable, "-P", "-m", *CHECKS[check]], cwd=checkout, capture_output=True, text=True, check=False
    )
    assert (ended.returncode, ended.stdout) == (0, ""), f"{ended.stdout}\n{ended.stderr}"


@pytest.mark.parametrize(("check", "flaw"), [("style", "import os\n"), ("types", "def double(x): return 2 * x\n")])
def test_a_flaw_is_seen(checkout: Path, tmp_path: Path, check: str, flaw: str) -> None:
    """The checks do look, under the project's own rules: one flaw in one file is found."""
    (tmp_path / "generator").mkdir()
    (tmp_path / "tests").mkdir()
    (tmp_path / "pyproject.toml").write_bytes((checkout / "pyproject.toml").read_bytes())
    (tmp_path / "generator" / "flawed.py").write_text(f'"""A module."""\n\n{flaw}', "utf-8")
    (tmp_path / "tests" / "fine.py").write_text('"""A module."""\n', "utf-8")
    ended = subprocess.run(
        [sys.executable, "-P", "-m", *CHECKS[check]], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert ended.returncode == 1
    assert "flawed.py" in ended.stdout


def test_every_ignore_has_its_reason(checkout: Path) -> None:
    """An ignore in the code names what it ignores and says why, on the same line."""
    files = [*checkout.glob("generator/**/*.py"), *checkout.glob("tests/**/*.py")]
    ignores = {
        f"{path.relative_to(checkout)}:{number}": found["reason"]
        for path in files
        for number, line in enumerate(path.read_text("utf-8").splitlines(), start=1)
        if (found := IGNORE.search(line))
    }
    assert len(ignores) >= 1, "the project has some: a search that finds none is blind"
    assert [place for place, reason in ignores.items() if not re.search("[a-z]{2}", reason)] == []


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("x = 1  # noqa: X123, Y1 - as the library", " - as the library"),
        ("x = 1  # type: ignore[misc]  # untyped", "  # untyped"),
        ("x = 1  #\x20noqa", ""),
        ("x = 1  #\x20type: ignore", ""),
    ],
)
def test_ignores_are_seen(line: str, reason: str) -> None:
    """The search for ignores knows each kind, and cuts its reason off."""
    found = IGNORE.search(line)
    assert found
    assert found["reason"] == reason
