"""From a place (a file, and keys that lead on in it) to a line and a column, worked out only for faults that are shown.

No positions are kept beside a book: 2,000 files would double in memory for the sake of the few that are wrong.
"""

from dataclasses import dataclass, field
from functools import cached_property
from itertools import pairwise

from yaml.events import AliasEvent, CollectionEndEvent, CollectionStartEvent, Event, MappingStartEvent, ScalarEvent

from packlarder.book.strict.events import PARSER_ERRORS, Span, events, span_of
from packlarder.book.strict.source import lines_of, readable
from packlarder.faults import Key, Place, Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class Position:
    """A spot in a file, from 1, how many characters to mark there, and its line."""

    line: int
    column: int
    length: int
    line_text: str


def locate(data: bytes, place: Place) -> Position:
    """Find one place in its file's bytes."""
    return Layout(data).locate(place)


class Layout:
    """Where everything in one file stands."""

    def __init__(self, data: bytes) -> None:
        self._text = readable(data)
        self._lines = lines_of(self._text)

    @cached_property
    def _root(self) -> "Node":
        return tree(self._text)

    def locate(self, place: Place) -> Position:
        """Find a place; where its last keys are missing, the nearest thing around them. Never fails.

        A key that leads into a text, or a word that leads into a list, is passed over: many models take one value for
        a list of one, or a list for a whole mapping, and speak of what they made of it.
        """
        if place.line is not None:
            return self._position(place.line, place.column or 1, place.length)
        span = self._span(place)
        length = span.end_column - span.column
        if span.line != span.end_line:
            length = len(self._lines[span.line - 1].rstrip()) - span.column + 1
        return self._position(span.line, span.column, length)

    def _span(self, place: Place) -> Span:
        node, key_span = self._root, None
        for key in place.path:
            found = node.inside(key)
            if found is None and node.could_hold(key):
                return key_span or node.first_words()
            key_span, node = found or (key_span, node)
        if place.spot is Spot.VALUE and node.inline:
            return node.span
        return key_span or node.first_words()

    def _position(self, line: int, column: int, length: int) -> Position:
        line = min(max(line, 1), len(self._lines))
        words = self._lines[line - 1]
        column = min(max(column, 1), len(words) + 1)
        room = len(words) - column + 1
        return Position(line=line, column=column, length=max(min(length, room), 1), line_text=words)


@dataclass(slots=True)
class Node:
    """One value: where it stands, whether it can be marked from end to end, and what is in it.

    The span of a list or mapping over several lines is only where it begins: at the hyphen, at the first key.
    """

    span: Span
    inline: bool = True
    is_mapping: bool = False
    is_list: bool = False
    keys: "dict[str, tuple[Span, Node]]" = field(default_factory=dict)
    items: "list[Node]" = field(default_factory=list)
    waiting: tuple[str, Span] | None = None

    def first_words(self) -> Span:
        """Give what to mark for the whole value."""
        for key_span, _ in self.keys.values():
            return self.span if self.inline else key_span
        return self.span

    def could_hold(self, key: Key) -> bool:
        """Tell whether a key of this kind can lead on from here."""
        return self.is_list if isinstance(key, int) else self.is_mapping

    def inside(self, key: Key) -> "tuple[Span | None, Node] | None":
        """Give what stands under a key, and the key's own place if it has one."""
        if isinstance(key, str):
            return self.keys.get(key)
        return (None, self.items[key]) if 0 <= key < len(self.items) else None

    def take(self, node: "Node", text: str = "") -> None:
        """Take what comes next inside: an item, a key, or the value of the key that waits."""
        if not self.is_mapping:
            self.items.append(node)
        elif self.waiting is None:
            self.waiting = (text, node.span)
        else:
            key, key_span = self.waiting
            self.keys.setdefault(key, (key_span, node))
            self.waiting = None


def tree(text: str) -> Node:
    """Build the tree of a text, without byte order mark, as far as it can be read."""
    top = Node(Span(1, 1, 1, 1), inline=False, is_list=True)
    around = [top]
    try:
        for event in events(text):
            _grow(around, event)
    except PARSER_ERRORS:
        pass  # the reader has told what is wrong there
    for outer, inner in reversed(list(pairwise(around))):
        outer.take(inner)
    return top.items[0] if top.items else top


def _grow(around: list[Node], event: Event) -> None:
    span = span_of(event)
    if isinstance(event, ScalarEvent):
        around[-1].take(Node(span, inline=bool(event.value or event.style)), event.value)
    elif isinstance(event, AliasEvent):
        around[-1].take(Node(span))
    elif isinstance(event, CollectionStartEvent):
        is_mapping = isinstance(event, MappingStartEvent)
        around.append(Node(span, inline=bool(event.flow_style), is_mapping=is_mapping, is_list=not is_mapping))
    elif isinstance(event, CollectionEndEvent):
        full = around.pop()
        if full.inline:
            full.span = Span(full.span.line, full.span.column, span.end_line, span.end_column)
        around[-1].take(full)
