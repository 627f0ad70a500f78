"""A change to one place of a file, as a splice: comments, quotes, brackets and blank lines stay byte for byte.

Every function gives the new bytes, or None where the change can not be made so that nothing else changes: what was
written is read again, and must be what was read before but for the change.
"""

import json
import re
from collections.abc import Mapping, Sequence
from copy import deepcopy

from packlarder.book.nodes import Node, read_yaml
from packlarder.book.places import Node as Placed
from packlarder.book.places import tree
from packlarder.book.strict.events import Span
from packlarder.book.strict.source import BYTE_ORDER_MARK, lines_of
from packlarder.faults import Key, KeyPath

_PLAIN = re.compile(r"[^\W_](?:[\w .'()/&+%>½¼¾°-]*[\w.')%])?")
"""A text that YAML reads as it stands, inside brackets too."""
_QUOTES = ('"', "'")
_BLOCK = ("|", ">")
STEP = 2
"""Blanks by which we indent what belongs to a key."""


def as_written(text: str) -> str:
    """Write a text so that YAML reads just that, wherever it stands."""
    return text if _PLAIN.fullmatch(text) and " - " not in text else json.dumps(text, ensure_ascii=False)


def with_value(data: bytes, path: KeyPath, value: str) -> bytes | None:
    """Put another text in the place of the one at a path; quotes around it stay."""
    sheet = _Sheet(data)
    node = sheet.find(path)
    if node is None or node.is_mapping or node.is_list:
        return None
    former = sheet.between(node.span)
    if not former or former.startswith(_BLOCK):
        return None
    return sheet.checked(sheet.put(node.span, _quoted_as(former, value)), path, value)


def with_key(data: bytes, key: str, value: Node, *, after: str = "") -> bytes | None:
    """Add a key at the top of a file, behind another one, or at the end where that one is missing."""
    sheet = _Sheet(data)
    root = sheet.root
    if not root.is_mapping or not root.keys or key in root.keys:
        return None
    before = root.keys[after][1] if after in root.keys else list(root.keys.values())[-1][1]
    end = _end(before)
    if root.inline:
        return sheet.checked(sheet.put(end, f", {key}: {_in_braces(value)}"), (key,), value)
    lines = _as_block(key, value)
    return sheet.checked(sheet.put_lines(_line_behind(end), lines), (key,), value)


def with_first(data: bytes, key: str, item: Mapping[str, str]) -> bytes | None:
    """Put an entry before all others of a list at the top of a file, written as the first of them is."""
    sheet = _Sheet(data)
    held = sheet.root.keys.get(key) if sheet.root.is_mapping else None
    entry = dict[str, Node](item)
    if held is None:
        return with_key(data, key, [entry])
    key_span, node = held
    if not node.is_list:
        return None
    if node.inline:
        text = sheet.in_brackets(node, _in_braces(entry))
    else:
        lines = _item_lines(entry, node.span.column - 1, whole=node.items[0].inline)
        text = sheet.put_lines(key_span.line + 1, lines)
    return sheet.checked(text, (key,), entry, first=True)


class _Sheet:
    """A file's text, where everything stands in it, and what was read of it."""

    def __init__(self, data: bytes) -> None:
        text = data.decode()
        self.mark = BYTE_ORDER_MARK if text.startswith(BYTE_ORDER_MARK) else ""
        self.text = text.removeprefix(BYTE_ORDER_MARK)
        self.line_end = "\r\n" if "\r\n" in self.text else "\n"
        self.root = tree(self.text)
        self.read = read_yaml("", data)
        self.starts = [0]
        for line in lines_of(self.text):
            begin = self.starts[-1] + len(line)
            self.starts.append(begin + (2 if self.text.startswith("\r\n", begin) else 1))

    def find(self, path: KeyPath) -> Placed | None:
        """Give what stands at a path."""
        node = self.root
        for key in path:
            found = node.inside(key)
            if found is None:
                return None
            node = found[1]
        return node

    def at(self, line: int, column: int) -> int:
        """Give how many characters stand before a spot; both count from 1."""
        return min(self.starts[min(line, len(self.starts)) - 1] + column - 1, len(self.text))

    def between(self, span: Span) -> str:
        """Give what stands there."""
        return self.text[self.at(span.line, span.column) : self.at(span.end_line, span.end_column)]

    def put(self, span: Span, text: str) -> str:
        """Give the whole text with another one in a place."""
        return (
            self.text[: self.at(span.line, span.column)] + text + self.text[self.at(span.end_line, span.end_column) :]
        )

    def put_lines(self, before: int, lines: Sequence[str]) -> str:
        """Give the whole text with lines more, before the line of a number."""
        spot = self.at(before, 1)
        lead = self.line_end if spot and not self.text[:spot].endswith(("\n", "\r")) else ""
        added = lead + "".join(f"{line}{self.line_end}" for line in lines)
        return self.text[:spot] + (added.removesuffix(self.line_end) if lead else added) + self.text[spot:]

    def in_brackets(self, node: Placed, entry: str) -> str:
        """Give the whole text with an entry more at the head of a list in brackets."""
        if not node.items:
            return self.put(node.span, f"[{entry}]")
        first = node.items[0].span
        same_line = first.line == node.span.line
        apart = " " if same_line else self.line_end + " " * (first.column - 1)
        return self.put(Span(first.line, first.column, first.line, first.column), f"{entry},{apart}")

    def checked(self, text: str, path: KeyPath, value: Node, *, first: bool = False) -> bytes | None:
        """Give a text's bytes if it is read as the former one was, but for a value, or an entry at a list's head."""
        data = (self.mark + text).encode()
        if self.read.value is None:
            return None
        wanted = deepcopy(self.read.value)
        _set(wanted, path, value, first=first)
        found = read_yaml("", data)
        return data if found.value == wanted and len(found.faults) == len(self.read.faults) else None


def _set(inside: Node, path: KeyPath, value: Node, *, first: bool) -> None:
    *steps, last = path
    for step in steps:
        inside = _within(inside, step)
    if first:
        held = _within(inside, last)
        value = [value, *held] if isinstance(held, list) else [value]
    if isinstance(inside, dict) and isinstance(last, str):
        inside[last] = value


def _within(inside: Node, step: Key) -> Node:
    if isinstance(inside, dict) and isinstance(step, str):
        return inside.get(step)
    return inside[step] if isinstance(inside, list) and isinstance(step, int) else None


def _quoted_as(former: str, value: str) -> str:
    quote = former[0]
    if quote not in _QUOTES:
        return as_written(value)
    return f"'{value.replace(quote, quote * 2)}'" if quote == "'" else json.dumps(value, ensure_ascii=False)


def _end(node: Placed) -> Span:
    """Give the spot behind the last character of a value."""
    inner = [value for _, value in node.keys.values()] or node.items
    if inner and not node.inline:
        return _end(inner[-1])
    return Span(node.span.end_line, node.span.end_column, node.span.end_line, node.span.end_column)


def _line_behind(end: Span) -> int:
    """Give the line that begins behind a spot; a text of several lines may end at the head of the next one."""
    return end.line if end.column == 1 else end.line + 1


def _in_braces(value: Node) -> str:
    if isinstance(value, dict):
        return f"{{{', '.join(f'{as_written(key)}: {_in_braces(one)}' for key, one in value.items())}}}"
    if isinstance(value, list):
        return f"[{', '.join(map(_in_braces, value))}]"
    return as_written(value or "")


def _as_block(key: str, value: Node, indent: int = 0) -> list[str]:
    """Write a key with what belongs to it over several lines; entries of lists stand on a line each."""
    head = f"{' ' * indent}{as_written(key)}:"
    if isinstance(value, dict):
        return [head, *(line for inner, one in value.items() for line in _as_block(inner, one, indent + STEP))]
    if isinstance(value, list):
        return [head, *(f"{' ' * (indent + STEP)}- {_item(one)}" for one in value)]
    return [f"{head} {as_written(value or '')}"]


def _item(value: Node) -> str:
    """Write an entry of a list on one line; what is a name with something behind it needs no braces."""
    if isinstance(value, dict) and len(value) == 1:
        ((key, inner),) = value.items()
        return f"{as_written(key)}: {_in_braces(inner)}"
    return _in_braces(value)


def _item_lines(entry: dict[str, Node], indent: int, *, whole: bool) -> list[str]:
    """Write an entry of a list, in braces or with a line for each key, its hyphen behind so many blanks."""
    if whole:
        return [f"{' ' * indent}- {_in_braces(entry)}"]
    keys = [f"{as_written(key)}: {_in_braces(value)}" for key, value in entry.items()]
    return [f"{' ' * indent}{'  ' if number else '- '}{key}" for number, key in enumerate(keys)]
