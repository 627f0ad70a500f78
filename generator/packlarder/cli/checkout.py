"""Finding the checkout that the package is read from; `test` and `bench` work only there."""

from pathlib import Path

from packlarder.cli import texts
from packlarder.cli.options import Misuse

WANTED = ("pyproject.toml", "generator/packlarder", "tests")


PACKAGE = Path(__file__).resolve().parents[1]


def checkout(package: Path = PACKAGE) -> Path:
    """Give the checkout's top folder. Raises Misuse where the package was installed without one."""
    top = package.parents[1]
    if not all((top / name).exists() for name in WANTED):
        raise Misuse(texts.NO_CHECKOUT)
    return top
