"""A file's bytes as plain mappings, lists and texts: strict YAML, with a fault for every trap it sets."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from yaml.events import (
    AliasEvent,
    CollectionEndEvent,
    DocumentStartEvent,
    Event,
    MappingStartEvent,
    ScalarEvent,
    SequenceStartEvent,
)

from packlarder.book.strict import refused
from packlarder.book.strict.events import PARSER_ERRORS, events
from packlarder.book.strict.explain import explain
from packlarder.book.strict.second_look import look_again, look_at_odd_scalar
from packlarder.book.strict.source import first_unwelcome, lines_of, text_of
from packlarder.faults import Fault, KeyPath, Place, Severity

DEPTH_CAP = 20
NODE_CAP = 20_000
MERGE_KEY = "<<"

_DIRECTIVE = re.compile(r"(?:[ \t]*(?:#[^\r\n]*)?(?:\r\n|\n|\r))*(?P<words>%[^\r\n]*)")
"""What stands before a first document that is marked as one; the parsers tell of known directives only."""

Node: TypeAlias = "str | list[Node] | dict[str, Node] | None"
"""What stands in a file: every single value is text, an empty one is None."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """What was read of a file: its mapping, or None where it could not be read, and what is wrong with it.

    A mapping may come with faults (a key that stands twice counts the first time), so that all faults of a file
    can be told in one run.
    """

    value: dict[str, Node] | None
    faults: tuple[Fault, ...] = ()


def read_yaml(file: str, data: bytes) -> Read:
    """Read one file; `file` is its path in the book, for the faults."""
    text = text_of(file, data)
    if isinstance(text, Fault):
        return Read(value=None, faults=(text,))
    return _Builder(file, text).read()


class _Frame:
    """A mapping or list that is still being filled, and the key that waits for its value."""

    __slots__ = ("into", "key", "twice")

    def __init__(self, into: "list[Node] | dict[str, Node]") -> None:
        self.into = into
        self.key: str | None = None
        self.twice = False

    def put(self, value: Node) -> None:
        """Take a value: as the next item, or under the key that waits; what stands under a key twice is let go."""
        if isinstance(self.into, list):
            self.into.append(value)
            return
        if not self.twice and self.key is not None:
            self.into[self.key] = value
        self.key = None
        self.twice = False


class _Builder:
    """Turns events into plain data, and stops at the first thing that makes the rest unreadable."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.text = text
        self.faults: list[Fault] = []
        self.root: list[Node] = []
        self.frame = _Frame(self.root)
        self.around: list[_Frame] = []
        self.nodes = 0
        self.misled = False

    def read(self) -> Read:
        """Read the whole text."""
        try:
            for event in events(self.text):
                stop = self._scalar(event) if isinstance(event, ScalarEvent) else self._take(event)
                if stop:
                    return self._unreadable(stop)
        except PARSER_ERRORS as error:
            return self._unreadable(explain(self.file, self.text, error))
        root = self.root[0] if self.root else None
        if not isinstance(root, dict):
            return self._unreadable(refused.no_mapping(self.file, self.text, root))
        self._doubt(look_again(self.file, self.text))
        return Read(value=None if self.misled else root, faults=tuple(self.faults))

    def _doubt(self, faults: Iterable[Fault]) -> None:
        """Take faults of what the parser read otherwise than it was meant; an error among them spoils the data."""
        for fault in faults:
            self.faults.append(fault)
            self.misled = self.misled or fault.severity is Severity.ERROR

    def _unreadable(self, fault: Fault) -> Read:
        """End the reading; a fault that follows from a doubt is not told beside it."""
        return Read(value=None, faults=tuple(self.faults) if self.misled else (*self.faults, fault))

    def _take(self, event: Event) -> Fault | None:
        if isinstance(event, MappingStartEvent):
            return self._open(event, {})
        if isinstance(event, SequenceStartEvent):
            return self._open(event, [])
        if isinstance(event, CollectionEndEvent):
            full, self.frame = self.frame.into, self.around.pop()
            self.frame.put(full)
        elif isinstance(event, AliasEvent):
            return refused.alias(self.file, event)
        elif isinstance(event, DocumentStartEvent):
            return self._document(event)
        return None

    def _scalar(self, event: ScalarEvent) -> Fault | None:
        if event.anchor or event.tag:
            return refused.anchor_or_tag(self.file, event)
        self.nodes += 1
        if self.nodes > NODE_CAP:
            return refused.too_many(self.file, event, NODE_CAP)
        value: str = event.value
        is_key = self.frame.key is None and isinstance(self.frame.into, dict)
        if not event.style:
            if not value.isascii() or " - " in value:
                self._doubt(look_at_odd_scalar(self.file, self.text, event, is_key=is_key))
        elif event.style == '"' and (character := first_unwelcome(value)):
            return refused.escaped(self.file, event, character)
        if is_key:
            return self._key(event, value)
        if "\n" in value and event.style != "|":
            value = _paragraphs(value)
        self.frame.put(value if value or event.style else None)
        return None

    def _key(self, event: ScalarEvent, key: str) -> Fault | None:
        if key == MERGE_KEY or not key:
            return refused.merge(self.file, event) if key else refused.empty_key(self.file, event)
        frame = self.frame
        if key in frame.into:
            frame.twice = True
            self.faults.append(refused.twice(self.file, event, (*self._path(), key)))
        frame.key = key
        return None

    def _open(
        self, event: MappingStartEvent | SequenceStartEvent, into: "list[Node] | dict[str, Node]"
    ) -> Fault | None:
        if event.anchor or event.tag:
            return refused.anchor_or_tag(self.file, event)
        frame = self.frame
        if frame.key is None and isinstance(frame.into, dict):
            return refused.key_is_no_text(self.file, event)
        self.nodes += 1
        if self.nodes > NODE_CAP:
            return refused.too_many(self.file, event, NODE_CAP)
        if len(self.around) >= DEPTH_CAP:
            return refused.too_deep(self.file, event, DEPTH_CAP)
        self.around.append(frame)
        self.frame = _Frame(into)
        return None

    def _document(self, event: DocumentStartEvent) -> Fault | None:
        if self.root:
            return refused.second_document(refused.place_of(self.file, event))
        directive = _DIRECTIVE.match(self.text) if event.explicit else None
        if directive is None:
            return None
        line = len(lines_of(directive.group()))
        return refused.directive(Place(file=self.file, line=line, column=1, length=len(directive["words"].rstrip())))

    def _path(self) -> KeyPath:
        """Give the keys that lead to the mapping or list that is being filled."""
        inside = self.around[1:]
        return tuple(len(frame.into) if isinstance(frame.into, list) else frame.key or "" for frame in inside)


def _paragraphs(folded: str) -> str:
    """Part the paragraphs of a folded text by an empty line, as they are parted in a text kept line by line."""
    return "\n\n".join(part for part in folded.split("\n") if part)
