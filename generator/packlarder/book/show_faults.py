"""Faults as text for a terminal and as plain records for programs, with the lines they are about."""

import unicodedata
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import TypedDict

from packlarder.book.places import Layout, Position
from packlarder.faults import Fault, Place, Severity

IN_FULL = 50
"""Faults shown in full; of the others the number."""
PAGE_COLUMNS = 100
"""Columns that a source line may take, its number included."""
MESSAGE_CAP = 400
"""Characters of one message or help; a value that a message repeats may be long."""

CUT = "…"
HIDDEN = "·"
INVISIBLE = frozenset(("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"))
"""Unicode's categories of what can not be seen, or would upset a terminal."""


class Spotted(TypedDict):
    """A place in a record: the file as shown, line and column from 1; None where the file is not there."""

    file: str
    line: int | None
    column: int | None


class Record(Spotted):
    """One fault as data."""

    severity: str
    code: str
    message: str
    help: str
    also: list[Spotted]


def render(faults: Iterable[Fault], texts: Mapping[str, bytes], book: str = "") -> str:
    """Show faults, sorted by place; `texts` holds the bytes of the files by their paths in the book.

    `book` is the book's folder as it was given; it stands before each path. No fault gives an empty text.
    """
    sifted = list(dict.fromkeys(faults))
    if not sifted:
        return ""
    shown = [_in_full(found) for found, _ in zip(_sorted(sifted, texts, book), range(IN_FULL), strict=False)]
    more = len(sifted) - len(shown)
    tail = [f"and {more:,} more, not shown here"] if more else []
    return "\n\n".join([*shown, *tail, sum_up(sifted)]) + "\n"


def sum_up(faults: Iterable[Fault]) -> str:
    """Say how many faults there are in how many files: `2 errors, 1 warning in 2 files`."""
    faults = list(faults)
    number = Counter(fault.severity for fault in faults)
    counts = [_count(number[severity], str(severity)) for severity in Severity if number[severity]]
    return f"{', '.join(counts) or 'no faults'} in {_count(len({fault.place.file for fault in faults}), 'file')}"


def as_records(faults: Iterable[Fault], texts: Mapping[str, bytes], book: str = "") -> list[Record]:
    """Give all faults as data, sorted by place."""
    return [_record(found) for found in _sorted(list(dict.fromkeys(faults)), texts, book)]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """A fault with the positions of its places; None where the file is not there."""

    fault: Fault
    position: Position | None
    path: str
    also: tuple[Spotted, ...]


def _sorted(faults: Sequence[Fault], texts: Mapping[str, bytes], book: str) -> Iterator[_Found]:
    """Find the faults' positions, one file after the other, so that only what is shown is looked up."""
    for _file, group in groupby(sorted(faults, key=lambda fault: fault.place.file), lambda fault: fault.place.file):
        places = _Places(texts, book)
        found = [places.find(fault) for fault in group]
        yield from sorted(found, key=_order)


def _order(found: _Found) -> tuple[int, int, str, str]:
    position = found.position
    line, column = (position.line, position.column) if position else (0, 0)
    return line, column, found.fault.code, found.fault.message


class _Places:
    """Looks places up, each file laid out once."""

    def __init__(self, texts: Mapping[str, bytes], book: str) -> None:
        self._texts = texts
        self._before = f"{book.rstrip('/')}/" if book else ""
        self._layouts: dict[str, Layout] = {}

    def find(self, fault: Fault) -> _Found:
        also = tuple(self._spotted(place) for place in fault.also)
        path = self._path(fault.place)
        return _Found(fault=fault, position=self._position(fault.place), path=path, also=also)

    def _path(self, place: Place) -> str:
        return f"{self._before}{place.file}"

    def _position(self, place: Place) -> Position | None:
        if place.file not in self._texts:
            return None
        if place.file not in self._layouts:
            self._layouts[place.file] = Layout(self._texts[place.file])
        return self._layouts[place.file].locate(place)

    def _spotted(self, place: Place) -> Spotted:
        position = self._position(place)
        return _spotted(self._path(place), position)


def _spotted(path: str, position: Position | None) -> Spotted:
    return Spotted(file=path, line=position.line if position else None, column=position.column if position else None)


def _record(found: _Found) -> Record:
    fault = found.fault
    return Record(
        **_spotted(found.path, found.position),
        severity=str(fault.severity),
        code=fault.code,
        message=_said(fault.message),
        help=_said(fault.help),
        also=list(found.also),
    )


def _in_full(found: _Found) -> str:
    fault = found.fault
    address = _address(_spotted(found.path, found.position))
    lines = [f"{address}: {fault.severity}[{fault.code}]: {_said(fault.message)}"]
    if found.position and found.position.line_text.strip():
        lines += _source(found.position)
    lines += [f"  also: {_address(spotted)}" for spotted in found.also]
    if fault.help:
        lines.append(f"  help: {_said(fault.help)}")
    return "\n".join(lines)


def _address(spotted: Spotted) -> str:
    return ":".join(str(part) for part in (spotted["file"], spotted["line"], spotted["column"]) if part is not None)


def _source(position: Position) -> list[str]:
    number = f"  {position.line} | "
    words, before, marked = _excerpt(position, PAGE_COLUMNS - len(number))
    margin = " " * (len(number) - 2) + "| "
    return [(number + words).rstrip(), f"{margin}{' ' * before}{'^' * marked}"]


def _excerpt(position: Position, room: int) -> tuple[str, int, int]:
    """Cut a line to the columns there are, the mark inside: its words, the columns before the mark, the mark's."""
    line, start, end = position.line_text, position.column - 1, position.column - 1 + position.length
    first, last = 0, len(line)
    if last > 4 * room or _columns(line) > room:
        first = _back(line, start, room // 3)
        last = _ahead(line, first, room - 2)
    end = min(end, last)
    words = (CUT if first else "") + _shown(line[first:last]) + (CUT if last < len(line) else "")
    before = _columns(line[first:start]) + (1 if first else 0)
    return words, before, max(_columns(line[start:end]), 1)


def _back(line: str, start: int, columns: int) -> int:
    while start > 0 and columns > 0:
        start -= 1
        columns -= _width(line[start])
    return start


def _ahead(line: str, first: int, columns: int) -> int:
    last = first
    while last < min(len(line), first + 4 * PAGE_COLUMNS) and columns >= _width(line[last]):
        columns -= _width(line[last])
        last += 1
    return last


def _columns(text: str) -> int:
    return sum(map(_width, text))


def _width(character: str) -> int:
    """Give the columns that a character takes on a terminal."""
    if character.isascii():
        return 1
    if unicodedata.category(character) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _shown(text: str) -> str:
    visible = (HIDDEN if unicodedata.category(one) in INVISIBLE else one for one in text.replace("\t", " "))
    return "".join(visible)


def _said(text: str) -> str:
    """Make a message one line that a terminal can show, whatever value it repeats."""
    words = _shown(" ".join(text[: MESSAGE_CAP + 1].split()))
    return words if len(words) <= MESSAGE_CAP else words[:MESSAGE_CAP] + CUT


def _count(number: int, what: str) -> str:
    return f"{number:,} {what}{'' if number == 1 else 's'}"
