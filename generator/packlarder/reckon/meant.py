"""Which name was most likely meant."""

from collections.abc import Iterable
from difflib import get_close_matches

from packlarder.book.book import spoken

ALIKE = 0.6
"""How alike two names must be, from 0 to 1: `freezr` is freezer, `jug` is no jar."""


def closest_name(name: str, known: Iterable[str]) -> str | None:
    """Give the known name that is closest; letter case and hyphens do not count. None where none is close."""
    plain = {spoken(one): one for one in known}
    return next((plain[one] for one in get_close_matches(spoken(name), plain, n=1, cutoff=ALIKE)), None)


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """Begin a way out with the closest name; "" where none is close."""
    close = closest_name(name, known)
    return f'did you mean "{close}"? ' if close else ""
