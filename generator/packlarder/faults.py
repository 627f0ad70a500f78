"""What is wrong in a book, as values.

Error: what follows from it would be wrong or unsafe; a build stops.
Warning: most likely a slip; the build goes on and says so.
Note: worth knowing; nothing to mend.

A fault is never raised for a user's mistake. `Gap` is a sum that can not be made; it says what is missing.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

Key: TypeAlias = str | int
KeyPath: TypeAlias = tuple[Key, ...]


class Severity(StrEnum):
    """How much a fault matters; see the module's docstring for what each word means."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Spot(StrEnum):
    """Which end of a `key: value` pair a place points at."""

    KEY = "key"
    VALUE = "value"


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where in a book: a file (relative to the book's folder, `/` between folders) and the keys that lead there.

    `line` and `column` (both from 1) and `length` (in characters) are set only where no key path can lead: a file
    that is not YAML.
    """

    file: str
    path: KeyPath = ()
    spot: Spot = Spot.VALUE
    line: int | None = None
    column: int | None = None
    length: int = 1

    def at(self, *keys: Key, spot: Spot = Spot.VALUE) -> "Place":
        """Give the place further in."""
        return Place(file=self.file, path=(*self.path, *keys), spot=spot)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing that is wrong: where, how much it matters, a stable code, a sentence, and a way out."""

    place: Place
    code: str
    message: str
    help: str = ""
    severity: Severity = Severity.ERROR
    also: tuple[Place, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Gap:
    """A sum that can not be made, and what is missing to make it."""

    what: str
    missing: str


def has_errors(faults: "tuple[Fault, ...] | list[Fault]") -> bool:
    """Tell whether any of the faults stops a build."""
    return any(fault.severity is Severity.ERROR for fault in faults)
