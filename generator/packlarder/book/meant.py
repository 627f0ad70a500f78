"""Which of some known words was most likely meant."""

import re
from collections.abc import Iterable
from difflib import get_close_matches

ALIKE = 0.6
"""How alike two words must be, from 0 to 1: `freezr` is freezer, `jug` is no jar."""


def closest(word: str, words: Iterable[str], *, least: float = ALIKE) -> str | None:
    """Find the word that was most likely meant: letter case, hyphens and underscores do not count.

    Letters that changed places (`fro`, `wiat`) are the commonest slip, so a word of the same letters goes before all
    others. `least` is how alike two words must be, from 0 to 1.
    """
    plain = {_plain(one): one for one in words}
    asked = _plain(word)
    found = get_close_matches(asked, plain, n=len(plain) or 1, cutoff=least)
    turned = (one for one in found if sorted(one) == sorted(asked))
    best = next(turned, next(iter(found), None))
    return None if best is None else plain[best]


def _plain(word: str) -> str:
    return " ".join(re.sub(r"[-_]", " ", word.casefold()).split())


def did_you_mean(name: str, known: Iterable[str], *, least: float = ALIKE) -> str:
    """Begin a way out with the closest name; "" where none is close."""
    close = closest(name, known, least=least)
    return f'did you mean "{close}"? ' if close else ""
