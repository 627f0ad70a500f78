"""What every printed amount shares: its spaces, its signs, and being remembered."""

from collections.abc import Callable
from functools import lru_cache
from typing import ParamSpec, cast

NO_BREAK = "\u00a0"
"""Stands between a number and its unit, so that a line never ends between them."""

NARROW = "\u202f"
"""Stands within a unit of two words, fl oz, so that what stands after the last NO_BREAK is the whole unit."""

MINUS = "\u2212"
"""The minus sign of print, as wide as a plus; the hyphen of the keyboard is read as one too."""

_TEXTS = 32_768
"""How many amounts each way of printing remembers: more than one book's dishes at 1 to 12 servings have."""

Inputs = ParamSpec("Inputs")


def remembered(function: Callable[Inputs, str]) -> Callable[Inputs, str]:
    """Remember what a printing function gave: site, booklet and labels print the same amounts again and again."""
    return cast("Callable[Inputs, str]", lru_cache(maxsize=_TEXTS)(function))


@remembered
def amount(number: float | str, unit: str) -> str:
    """Set a number before its unit. A number given as such must have been rounded; its last zeros are left out."""
    return f"{number if isinstance(number, str) else plain(number)}{NO_BREAK}{unit}"


def as_typed(text: str) -> str:
    """Give a text with blanks as people type them, for files, terminals and other programs."""
    return text.replace(NO_BREAK, " ").replace(NARROW, " ")


def plain(number: float) -> str:
    """Write a rounded number with at most two decimals: 2.50 -> 2.5, -3.0 -> −3."""
    return f"{number + 0.0:.2f}".rstrip("0").rstrip(".").replace("-", MINUS)
