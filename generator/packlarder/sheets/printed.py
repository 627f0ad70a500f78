"""Printed figures: one text for every number of servings, in both systems of units."""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache
from typing import ParamSpec, TypeAlias, TypeVar, cast

NOTHING = "·"
"""What stands where a figure does not apply."""
EMPTY = frozenset({"", NOTHING})

_ROWS = 2048
"""How many rows each way of setting one keeps."""

Inputs = ParamSpec("Inputs")
T = TypeVar("T")


def kept(function: Callable[Inputs, T]) -> Callable[Inputs, T]:
    """Keep what was made of a row of numbers or texts.

    One dish shows the same row in several places, and dishes share rows: 3 g of salt are the same in all.
    """
    return cast("Callable[Inputs, T]", lru_cache(maxsize=_ROWS)(function))


class System(StrEnum):
    """The two systems of units that every figure is printed in."""

    METRIC = "metric"
    US = "us"


@dataclass(frozen=True, slots=True)
class Printed:
    """A figure as text: `metric[i]` and `us[i]` are for the sheet's `servings[i]`; no-break space before the unit."""

    metric: tuple[str, ...]
    us: tuple[str, ...]

    def text(self, system: System, index: int) -> str:
        """Give the text in one system for one place in the sheet's servings."""
        return self.us[index] if system is System.US else self.metric[index]

    @property
    def empty(self) -> bool:
        """Tell whether there is nothing to print at any number of servings."""
        return EMPTY.issuperset(self.metric) and EMPTY.issuperset(self.us)


@dataclass(frozen=True, slots=True)
class Strong:
    """Words that a tired cook must not miss."""

    text: str


Run: TypeAlias = str | Printed | Strong
"""A piece of a line: plain words, a figure, or words set bold."""

Line: TypeAlias = tuple[Run, ...]
"""A sentence in pieces; the pieces carry their own spaces."""


def same(text: str, count: int) -> Printed:
    """Print a text that does not change with servings or units."""
    texts = (text,) * count
    return Printed(texts, texts)


def plain(line: Line, system: System, index: int) -> str:
    """Set a line as plain text."""
    return "".join(_plain_run(run, system, index) for run in line)


def _plain_run(run: Run, system: System, index: int) -> str:
    if isinstance(run, str):
        return run
    return run.text if isinstance(run, Strong) else run.text(system, index)
