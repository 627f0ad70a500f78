"""Printed figures: one text for every number of servings, in both systems of units."""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

NOTHING = "·"
"""What stands where a figure does not apply."""
EMPTY = frozenset({"", NOTHING})


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
