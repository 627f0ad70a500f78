"""What is suggested to somebody who named a thing that there is not."""

from collections.abc import Iterable

from packlarder.book.meant import closest
from packlarder.cli import texts


def meant_or(name: str, known: Iterable[str], otherwise: str, *, least: float = 0.5) -> str:
    """Ask whether the closest name is meant; where none is close, say something else."""
    close = closest(name, known, least=least)
    return texts.DID_YOU_MEAN.format(word=close) if close else otherwise


def meant_or_known(name: str, known: Iterable[str], *, least: float = 0.5) -> str:
    """Ask whether the closest name is meant; where none is close, tell what there is."""
    names = list(known)
    return meant_or(name, names, texts.some_of(names), least=least)
