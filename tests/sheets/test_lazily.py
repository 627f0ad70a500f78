"""Things that are made when somebody asks for them."""

from collections.abc import Callable

import pytest

from packlarder.lazily import Anew, Kept, Lazily

KEYS = ("egg", "leek")


def maker() -> tuple[list[str], Callable[[str], str]]:
    """Give what makes a thing of its key, and the list of what it made."""
    made: list[str] = []

    def make(key: str) -> str:
        made.append(key)
        return key.upper()

    return made, make


def test_what_is_kept_is_made_once() -> None:
    """Looking for a key, counting and listing make nothing; what was made before is never made."""
    made, make = maker()
    things = Kept(KEYS, make, made={"leek": "leek as it was"})
    assert ("egg" in things, "salt" in things, len(things), list(things)) == (True, False, 2, ["egg", "leek"])
    assert made == []
    assert (things["egg"], things["egg"], things["leek"]) == ("EGG", "EGG", "leek as it was")
    assert made == ["egg"]


def test_what_is_made_anew_is_not_kept() -> None:
    """Each asking makes it."""
    made, make = maker()
    things = Anew(KEYS, make)
    assert (things["egg"], things["egg"]) == ("EGG", "EGG")
    assert made == ["egg", "egg"]


@pytest.mark.parametrize("kind", [Kept[str], Anew[str]])
def test_a_key_that_there_is_not(kind: Callable[..., Kept[str] | Anew[str]]) -> None:
    """It is a KeyError, and nothing is made."""
    made, make = maker()
    with pytest.raises(KeyError, match="salt"):
        kind(KEYS, make)["salt"]
    assert made == []


def test_a_row_is_made_by_place() -> None:
    """One by one, or as a slice; each once."""
    made, make = maker()
    row = Lazily(KEYS, make)
    assert (row[-1], row[:], len(row)) == ("LEEK", ("EGG", "LEEK"), 2)
    assert made == ["leek", "egg"]
