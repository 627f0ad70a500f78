"""A file's bytes as plain mappings, lists and texts: strict YAML, with a fault for every trap it sets."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypeAlias

from yaml.events import (
    AliasEvent,
    CollectionStartEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    NodeEvent,
    ScalarEvent,
    SequenceEndEvent,
)

from packlarder.book.strict import refused
from packlarder.book.strict.events import PARSER_ERRORS, events
from packlarder.book.strict.second_look import look_again, look_at_odd_scalar
from packlarder.book.strict.source import first_unwelcome, lines_of, text_of
from packlarder.faults import Fault, Key, Place, Severity

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
    has_empty: bool = False
    """whether a key has nothing behind it"""


def read_yaml(file: str, data: bytes) -> Read:
    """Read one file; `file` is its path in the book, for the faults."""
    text = text_of(file, data)
    if isinstance(text, Fault):
        return Read(value=None, faults=(text,))
    return _Builder(file, text).read()


class _Unreadable(Exception):
    """Nothing can be read of a file, for this fault."""

    def __init__(self, fault: Fault) -> None:
        super().__init__(fault.message)
        self.fault = fault


class _Builder:
    """Turns events into plain data, and stops at the first thing that makes the rest unreadable."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self.text = text
        self.events = events(text)
        self.faults: list[Fault] = []
        self.around: list[Key] = []  # the number of the document, and the keys that lead from there to what is read
        self.nodes = 0
        self.has_empty = False
        self.misled = False

    def read(self) -> Read:
        """Read the whole text."""
        try:
            root = self._document()
        except _Unreadable as stop:
            return self._unreadable(stop.fault)
        except PARSER_ERRORS as error:
            from packlarder.book.strict.explain import explain  # most books never need it

            return self._unreadable(explain(self.file, self.text, error))
        if not isinstance(root, dict):
            return self._unreadable(refused.no_mapping(self.file, self.text, root))
        self._doubt(look_again(self.file, self.text))
        return Read(value=None if self.misled else root, faults=tuple(self.faults), has_empty=self.has_empty)

    def _doubt(self, faults: Iterable[Fault]) -> None:
        """Take faults of what the parser read otherwise than it was meant; an error among them spoils the data."""
        for fault in faults:
            self.faults.append(fault)
            self.misled = self.misled or fault.severity is Severity.ERROR

    def _unreadable(self, fault: Fault) -> Read:
        """End the reading; a fault that follows from a doubt is not told beside it."""
        return Read(value=None, faults=tuple(self.faults) if self.misled else (*self.faults, fault))

    def _document(self) -> Node:
        """Read the one document that a file may hold."""
        documents: list[Node] = []
        for event in self.events:
            if isinstance(event, NodeEvent):
                documents.append(self._node(event, len(documents)))
            elif isinstance(event, DocumentStartEvent):
                self._begin(event, is_first=not documents)
        return documents[0] if documents else None

    def _begin(self, event: DocumentStartEvent, *, is_first: bool) -> None:
        if not is_first:
            raise _Unreadable(refused.second_document(refused.place_of(self.file, event)))
        directive = _DIRECTIVE.match(self.text) if event.explicit else None
        if directive is not None:
            line, length = len(lines_of(directive.group())), len(directive["words"].rstrip())
            raise _Unreadable(refused.directive(Place(file=self.file, line=line, column=1, length=length)))

    def _node(self, event: Event, at: Key) -> Node:
        """Read what begins with an event; `at` is its key or number in what is around it."""
        if isinstance(event, ScalarEvent):
            text = self._scalar(event, is_key=False)
            if "\n" in text and event.style != "|":
                return _paragraphs(text)
            return text if text or event.style else None
        self._open(event)
        self.around.append(at)
        inside = self._mapping() if isinstance(event, MappingStartEvent) else self._list()
        self.around.pop()
        return inside

    def _list(self) -> list[Node]:
        items: list[Node] = []
        while not isinstance(event := next(self.events), SequenceEndEvent):
            items.append(self._node(event, len(items)))
        return items

    def _mapping(self) -> dict[str, Node]:
        """Read keys and their values; what stands under a key a second time is let go."""
        mapping: dict[str, Node] = {}
        while isinstance(event := next(self.events), ScalarEvent):
            key = self._key(event)
            if twice := key in mapping:
                self.faults.append(refused.twice(self.file, event, (*self.around[1:], key)))
            value = self._node(next(self.events), key)
            if not twice:
                mapping[key] = value
                self.has_empty = self.has_empty or value is None
        if not isinstance(event, MappingEndEvent):
            self._refuse_marks(event)
            raise _Unreadable(refused.key_is_no_text(self.file, event))
        return mapping

    def _key(self, event: ScalarEvent) -> str:
        key = self._scalar(event, is_key=True)
        if key == MERGE_KEY or not key:
            raise _Unreadable(refused.merge(self.file, event) if key else refused.empty_key(self.file, event))
        return key

    def _scalar(self, event: ScalarEvent, *, is_key: bool) -> str:
        """Give a single text, once it was looked at for what may not stand in it."""
        if event.anchor or event.tag:
            raise _Unreadable(refused.anchor_or_tag(self.file, event))
        self._count(event)
        text: str = event.value
        if not event.style:
            if not text.isascii() or " - " in text:
                self._doubt(look_at_odd_scalar(self.file, self.text, event, is_key=is_key))
        elif event.style == '"' and (character := first_unwelcome(text)):
            raise _Unreadable(refused.escaped(self.file, event, character))
        return text

    def _open(self, event: Event) -> None:
        """Let a list or mapping begin."""
        self._refuse_marks(event)
        self._count(event)
        if len(self.around) >= DEPTH_CAP:
            raise _Unreadable(refused.too_deep(self.file, event, DEPTH_CAP))

    def _refuse_marks(self, event: Event) -> None:
        """Refuse `*name`, and `&name` and `!name` before a list or mapping."""
        if isinstance(event, AliasEvent):
            raise _Unreadable(refused.alias(self.file, event))
        if isinstance(event, CollectionStartEvent) and (event.anchor or event.tag):
            raise _Unreadable(refused.anchor_or_tag(self.file, event))

    def _count(self, event: Event) -> None:
        self.nodes += 1
        if self.nodes > NODE_CAP:
            raise _Unreadable(refused.too_many(self.file, event, NODE_CAP))


def _paragraphs(folded: str) -> str:
    """Part the paragraphs of a folded text by an empty line, as they are parted in a text kept line by line."""
    return "\n\n".join(part for part in folded.split("\n") if part)
