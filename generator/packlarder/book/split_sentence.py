"""Sentences that a comma in brackets cuts into several lines: `to dry: [Core, cut to strips, dry.]`."""

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import TypeAlias

from yaml.events import CollectionEndEvent, CollectionStartEvent, NodeEvent, ScalarEvent, SequenceStartEvent

from packlarder.book.strict.events import events
from packlarder.book.strict.source import readable
from packlarder.faults import Fault, Place, Severity

Items: TypeAlias = "Sequence[ScalarEvent | None]"
"""What stands in brackets; None for what is no text."""

SENTENCES = ("to dry", "notes", "steps")
TRIED = "tried"

_MAY_BE = re.compile("|".join((*SENTENCES, TRIED)).join(("(?:", r")['\"]?:\s*\[")).encode())
"""Few files have such a list, and all others need not be parsed again."""
_DAY = re.compile(r"[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}")
_QUOTE_SENTENCE = "put the whole sentence in quotes: in [ ] each comma begins a new line"
_QUOTE_PLACE = 'put place and day in quotes, like "at the lake, 2027-05-03": in [ ] each comma begins a new line'
_STOPS = (".", "!", "?", "…", ":", ";")


def split_sentences(file: str, data: bytes) -> Iterator[Fault]:
    """Find lists of sentences in a file, readable as YAML, in which a comma parts what belongs together."""
    if not _MAY_BE.search(data):
        return
    for key, items in _in_brackets(readable(data)).items():
        if key in SENTENCES and (index := _split_sentence(items)):
            yield _fault(Place(file=file, path=(key, index)), "this line begins in lower case", _QUOTE_SENTENCE)
        elif key == TRIED and (index := _lone_day(items)):
            yield _fault(Place(file=file, path=(key, index)), "this day stands on a line of its own", _QUOTE_PLACE)


def _in_brackets(text: str) -> Mapping[str, Items]:
    """Give the lists in brackets at the top of a file by their keys."""
    found: dict[str, list[ScalarEvent | None]] = {}
    key, items = "", None
    for depth, event in _with_depth(text):
        if depth == 1 and not key:
            key = event.value if isinstance(event, ScalarEvent) else ""
        elif depth == 1:
            in_brackets = isinstance(event, SequenceStartEvent) and event.flow_style
            items = found.setdefault(key, []) if in_brackets else None
            key = ""
        elif depth == 2 and items is not None:
            items.append(event if isinstance(event, ScalarEvent) else None)
    return found


def _with_depth(text: str) -> Iterator[tuple[int, NodeEvent]]:
    """Give whatever begins in a text, with the number of lists and mappings that it stands in."""
    depth = 0
    for event in events(text):
        if isinstance(event, NodeEvent):
            yield depth, event
        depth += isinstance(event, CollectionStartEvent) - isinstance(event, CollectionEndEvent)


def _split_sentence(items: Items) -> int | None:
    """Give the first item that goes on with a sentence.

    A list all in lower case without a full stop is taken for a list of a few words each, and is left in peace.
    """
    texts = [item.value for item in items if item is not None]
    if not texts or (texts[0][:1].islower() and not any(text.endswith(_STOPS) for text in texts)):
        return None
    return next((index for index, text in _after_comma(items) if text[:1].islower()), None)


def _lone_day(items: Items) -> int | None:
    return next((index for index, text in _after_comma(items, _DAY) if _DAY.fullmatch(text)), None)


def _after_comma(items: Items, ended: re.Pattern[str] | None = None) -> Iterator[tuple[int, str]]:
    """Give the items without quotes that follow another such one which is not at its end."""
    for index, (before, item) in enumerate(pairwise(items), start=1):
        if before is None or item is None or before.style or item.style:
            continue
        if before.value.endswith(_STOPS) or (ended is not None and ended.search(before.value)):
            continue
        yield index, item.value


def _fault(place: Place, message: str, help: str) -> Fault:
    return Fault(
        place=place,
        code="split-sentence",
        message=f"{message}: was the comma before it meant as a comma?",
        help=help,
        severity=Severity.WARNING,
    )
