"""What YAML allows and a book does not: references, tags, merges, several documents, keys that are no words."""

from yaml.events import AliasEvent, CollectionStartEvent, Event, ScalarEvent

from packlarder.book.strict.events import span_of
from packlarder.book.strict.source import lines_of, what_is
from packlarder.faults import Fault, KeyPath, Place, Spot

QUOTE_TEXT = "put the whole text in quotes"
QUOTE_IT = f"if it belongs to the text, {QUOTE_TEXT}"
WRITE_TWICE = f"{QUOTE_IT}; a book has no references: what is needed twice is written twice"


def place_of(file: str, event: Event) -> Place:
    """Give the place of an event, as long as it is on its first line."""
    span = span_of(event)
    return Place(file=file, line=span.line, column=span.column, length=span.length)


def alias(file: str, event: AliasEvent) -> Fault:
    """Refuse `*name`."""
    return Fault(
        place=place_of(file, event),
        code="needs-quotes",
        message="a value can not begin with `*`",
        help=WRITE_TWICE,
    )


def anchor_or_tag(file: str, event: ScalarEvent | CollectionStartEvent) -> Fault:
    """Refuse `&name` and `!name`."""
    sign = "&" if event.anchor else "!"
    span = span_of(event)
    return Fault(
        place=Place(file=file, line=span.line, column=span.column),
        code="needs-quotes",
        message=f"a value can not begin with `{sign}`",
        help=WRITE_TWICE if event.anchor else QUOTE_IT,
    )


def merge(file: str, event: ScalarEvent) -> Fault:
    """Refuse `<<:`."""
    return Fault(
        place=place_of(file, event),
        code="merge",
        message="`<<` is no key: a book does not merge one group of keys into another",
        help="write out here what you wanted to take over",
    )


def empty_key(file: str, event: ScalarEvent) -> Fault:
    """Refuse a value without a key."""
    return Fault(
        place=place_of(file, event),
        code="no-key",
        message="there is no key before this colon",
        help="write `key: value`; if the colon belongs to a text, put the whole text in quotes",
    )


def key_is_no_text(file: str, event: Event) -> Fault:
    """Refuse a list or a mapping as a key."""
    return Fault(
        place=place_of(file, event),
        code="key-is-no-text",
        message="a key is plain words; here stands a list or a group of `key: value`",
        help="write `key: value`; words in { } or [ ] that are meant as text need quotes",
    )


def question_mark(file: str, line: int, column: int) -> Fault:
    """Refuse `? key`."""
    return Fault(
        place=Place(file=file, line=line, column=column),
        code="needs-quotes",
        message="a line can not begin with a question mark and a space",
        help=QUOTE_IT,
    )


def twice(file: str, event: ScalarEvent, first: KeyPath) -> Fault:
    """Refuse a key that stands twice in one mapping."""
    return Fault(
        place=place_of(file, event),
        code="key-twice",
        message=f"`{event.value}` stands here a second time",
        help="keep one of the two",
        also=(Place(file=file, path=first, spot=Spot.KEY),),
    )


def escaped(file: str, event: ScalarEvent, character: str) -> Fault:
    """Refuse a control character that was written with a backslash."""
    return Fault(
        place=place_of(file, event),
        code="unwelcome-character",
        message=f"a backslash in this text makes {what_is(character)}",
        help="put the text in single quotes: there a backslash is a backslash",
    )


def too_deep(file: str, event: Event, cap: int) -> Fault:
    """Refuse a nest."""
    return Fault(
        place=place_of(file, event),
        code="too-deep",
        message=f"this lies more than {cap} levels deep",
        help="no part of a book needs that; is a bracket open that should be closed?",
    )


def too_many(file: str, event: Event, cap: int) -> Fault:
    """Refuse a flood."""
    return Fault(
        place=place_of(file, event),
        code="too-large",
        message=f"this file holds more than {cap:,} values",
        help="is it the right file? otherwise make several of it",
    )


def directive(place: Place) -> Fault:
    """Refuse `%YAML` and `%TAG`."""
    return Fault(
        place=place,
        code="directive",
        message="a line can not begin with `%`",
        help=f"leave this line out; if it belongs to a text, {QUOTE_TEXT}",
    )


def second_document(place: Place) -> Fault:
    """Refuse what follows a line of three hyphens or dots."""
    return Fault(
        place=place,
        code="second-document",
        message="a second document begins here; a file of a book holds one",
        help="take the line with the three hyphens or dots out, or make two files of it",
    )


def no_mapping(file: str, text: str, root: object) -> Fault:
    """Refuse a file that is empty, a list or a text."""
    lines = lines_of(text)
    if root is None:
        return Fault(
            place=Place(file=file, line=1, column=1),
            code="empty-file",
            message="nothing stands in this file" + (" but comments" if text.strip() else ""),
            help="write its `key: value` lines, or delete the file",
        )
    line = _first_line(lines)
    words = lines[line - 1]
    indent = len(words) - len(words.lstrip())
    return Fault(
        place=Place(file=file, line=line, column=indent + 1, length=len(words.strip()) or 1),
        code="no-keys",
        message="this file is a list" if isinstance(root, list) else "this file is not made of `key: value` lines",
        help="begin each line at the margin with a key, a colon and a space, like `name: Leek rings`",
    )


def _first_line(lines: list[str]) -> int:
    said = (number for number, words in enumerate(lines, 1) if words.strip() and words.lstrip()[:1] != "#")
    return next((number for number in said if lines[number - 1].rstrip() != "---"), 1)
