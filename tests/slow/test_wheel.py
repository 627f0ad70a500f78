"""What users install is the wheel: it alone must do, in an environment that has nothing else of ours."""

import os
import subprocess
import sys
import venv
from pathlib import Path

import pytest


@pytest.fixture(scope="module")
def programs(checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Install the wheel and what is locked for users into an empty environment, and give the folder of its programs."""
    folder = tmp_path_factory.mktemp("installed")
    subprocess.run(
        [sys.executable, "-P", "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)], cwd=checkout, check=True
    )
    [wheel] = folder.glob("*.whl")
    venv.create(folder / "venv", with_pip=True, symlinks=True)
    install = [str(folder / "venv" / "bin" / "python"), "-P", "-m", "pip", "install", "-qq", "--no-cache-dir"]
    subprocess.run([*install, "--require-hashes", "-r", str(checkout / "requirements" / "run.txt")], check=True)
    subprocess.run([*install, "--no-deps", "--no-index", str(wheel)], check=True)
    return folder / "venv" / "bin"


def run(programs: Path, folder: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """Run the installed command in a folder, with nothing of the checkout to be found."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith("PYTHON")}
    return subprocess.run(
        [programs / "packlarder", *words], cwd=folder, env=environment, capture_output=True, text=True, check=False
    )


@pytest.mark.slow
def test_wheel_alone_starts_and_builds_a_book(programs: Path, tmp_path: Path) -> None:
    """In an empty folder `packlarder start` gives a book, and `packlarder build` its site, booklets and data."""
    started = run(programs, tmp_path, "start", "our-book")
    assert started.returncode == 0, started.stderr
    built = run(programs, tmp_path, "build", "--book", "our-book", "--out", "out")
    assert built.returncode == 0, built.stderr
    assert (tmp_path / "out" / "index.html").stat().st_size > 0
    assert any((tmp_path / "out" / "print").glob("*.pdf"))
    assert any((tmp_path / "out" / "data").iterdir())
