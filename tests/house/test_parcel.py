"""What is handed to users: the wheel carries all that the package reads, the source archive only what belongs."""

import subprocess
import sys
import tarfile
from pathlib import Path
from zipfile import ZipFile

import pytest


@pytest.fixture(scope="module")
def parcels(checkout: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build both with the locked build backend, and give the folder that they lie in."""
    folder = tmp_path_factory.mktemp("parcels")
    subprocess.run([sys.executable, "-P", "-m", "hatchling", "build", "-d", str(folder)], cwd=checkout, check=True)
    return folder


def files_under(folder: Path, name: str) -> set[str]:
    """Name the files of a folder as they are named in a parcel, under `name/`."""
    return {
        f"{name}/{path.relative_to(folder).as_posix()}"
        for path in folder.rglob("*")
        if path.is_file() and path.suffix != ".pyc"
    }


def in_wheel(parcels: Path) -> set[str]:
    """Name the files of the wheel."""
    [wheel] = parcels.glob("*.whl")
    with ZipFile(wheel) as opened:
        return set(opened.namelist())


def test_wheel_carries_package_theme_and_figures(checkout: Path, parcels: Path) -> None:
    """The wheel holds the package with its tables, and the theme inside it; beside them only what describes them."""
    package = files_under(checkout / "generator" / "packlarder", "packlarder")
    theme = files_under(checkout / "theme", "packlarder/theme")
    assert "packlarder/figures/foods.csv" in package
    assert len(theme) >= 10
    ours = {name for name in in_wheel(parcels) if ".dist-info/" not in name}
    assert ours == package | theme


def test_wheel_brings_its_command(parcels: Path) -> None:
    """Installing the wheel gives the command `packlarder`."""
    [wheel] = parcels.glob("*.whl")
    with ZipFile(wheel) as opened:
        [entry_points] = [name for name in opened.namelist() if name.endswith("/entry_points.txt")]
        assert opened.read(entry_points).decode().split("\n", 1)[1].strip() == "packlarder = packlarder.cli:main"


def test_source_archive_holds_what_the_wheel_is_built_from(checkout: Path, parcels: Path) -> None:
    """The source archive holds package, theme and what describes the project: no tests, no demo, nothing of a build."""
    [archive] = parcels.glob("*.tar.gz")
    with tarfile.open(archive) as opened:
        held = {name.partition("/")[2] for name in opened.getnames()}
    package = files_under(checkout / "generator" / "packlarder", "generator/packlarder")
    theme = files_under(checkout / "theme", "theme")
    assert held == package | theme | {"pyproject.toml", "README.md", "PKG-INFO", ".gitignore"}
