"""The YAML parser: its events, one after the other, from the fast C one or, where that is missing, the plain one."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Protocol

from yaml.error import YAMLError
from yaml.events import Event
from yaml.parser import Parser
from yaml.reader import Reader
from yaml.scanner import Scanner

PARSER_ERRORS = (YAMLError, ValueError, OverflowError)
"""What the parsers raise at a text that is not YAML; the plain one lets slip some errors of Python's own."""


@dataclass(frozen=True, slots=True)
class Span:
    """Where an event stands: lines and columns from 1, the end behind its last character."""

    line: int
    column: int
    end_line: int
    end_column: int

    @property
    def length(self) -> int:
        """How many characters stand on one line; 1 for what goes over several."""
        return max(self.end_column - self.column, 1) if self.line == self.end_line else 1


class SourceOfEvents(Protocol):
    """What both parsers have in common."""

    def get_event(self) -> Event | None:
        """Give the next event, None after the last one."""


class PlainParser(Reader, Scanner, Parser):
    """The parser that is written in Python: twenty times slower, there on every machine."""

    def __init__(self, text: str) -> None:
        Reader.__init__(self, text)
        Scanner.__init__(self)
        Parser.__init__(self)


def new_parser(text: str) -> SourceOfEvents:
    """Open the fastest parser that this machine has."""
    try:
        from yaml._yaml import CParser
    except ImportError:
        return PlainParser(text)
    return CParser(text)


def events(text: str) -> Iterator[Event]:
    """Give the events of a text; raises one of PARSER_ERRORS where it stops being YAML."""
    return iter(new_parser(text).get_event, None)


def span_of(event: Event) -> Span:
    """Give where an event stands."""
    start, end = event.start_mark, event.end_mark
    if start is None or end is None:
        return Span(1, 1, 1, 1)
    return Span(start.line + 1, start.column + 1, end.line + 1, end.column + 1)
