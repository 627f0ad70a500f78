"""What is YAML but hardly what the author meant: a `#` that hides words, a hyphen in a text, odd blanks."""

import re
from bisect import bisect_right
from collections.abc import Iterator

from yaml.events import ScalarEvent

from packlarder.book.strict.events import events, span_of
from packlarder.book.strict.refused import place_of, question_mark
from packlarder.book.strict.source import ODD_SPACES, lines_of
from packlarder.faults import Fault, Place, Severity

_SUSPECT_SIGNS = "#?"
"""Without one of these, there is nothing for `_SUSPECT` to find; most files hold none."""
_SUSPECT = re.compile(r"#+(?=[^\s#=~*-])|(?<=[^\s#]) #+ |\?(?=\s|$)")
_HASHES = re.compile(r"#+")
_HIDING = re.compile(r"#+[^\s#=~*-]")
_QUESTION = re.compile(r"[ \t]*(?:- +)*\?(?=\s|$)")
_SWALLOWED = re.compile(r"[\r\n][ \t]*- ")
_ODD_BLANK = re.compile(rf":[{ODD_SPACES}]|(?:^| )-[{ODD_SPACES}]")
_ODD_BLANK_IN_KEY = re.compile(rf"[{ODD_SPACES}]")
SENTENCE_KEYS = frozenset({"about", "say", "until", "why", "change", "note", "notes", "to dry", "steps"})
"""Keys whose values are sentences."""
_CURLY = "“”„‟«»‘’‚‛‹›"


def look_again(file: str, text: str) -> Iterator[Fault]:
    """Find what the parser passed over without a word."""
    if not any(sign in text for sign in _SUSPECT_SIGNS) or not _SUSPECT.search(text):
        return
    scalars = Scalars(text)
    for line, words in enumerate(lines_of(text), 1):
        question = _QUESTION.match(words)
        if question and not scalars.cover(line, question.end()):
            yield question_mark(file, line, question.end())
        remark = _remark(scalars, line, words)
        if remark and _HIDING.match(words, remark):
            yield _hidden(file, line, remark + 1, words, "put a space after the `#`")
        elif remark and _goes_on(scalars, line, remark, words):
            yield _hidden(file, line, remark + 1, words, "put two spaces before the `#`")


def _remark(scalars: "Scalars", line: int, words: str) -> int:
    """Count the characters before the remark at the end of a line, 0 where there is none."""
    said = len(words) - len(words.lstrip(" \t#"))
    for hashes in _HASHES.finditer(words, said):
        start = hashes.start()
        if words[start - 1] in " \t" and not scalars.cover(line, start + 1):
            return start
    return 0


def _goes_on(scalars: "Scalars", line: int, remark: int, words: str) -> bool:
    """Tell whether a remark, one space behind a sentence without quotes, may well be the rest of it: `Eat it # hot`."""
    said = scalars.ending_at(line, remark)
    if said is None or said.style or " " not in said.value or not words[remark:].strip("# "):
        return False
    before = scalars.before(said)
    is_item = before.endswith("- ") and (said.value[0].isupper() or said.value.count(" ") >= 3)
    return is_item or before.strip(" -").removesuffix(":") in SENTENCE_KEYS


def look_at_odd_scalar(file: str, text: str, event: ScalarEvent, *, is_key: bool) -> Iterator[Fault]:
    """Look again at a text without quotes that holds ` - ` or letters beyond ASCII."""
    value: str = event.value
    odd = (_ODD_BLANK_IN_KEY if is_key else _ODD_BLANK).search(value)
    if odd:
        yield _odd_blank(file, event, odd)
    elif " - " in value and (swallowed := _swallowed_item(file, text, event)):
        yield swallowed
    elif len(value) > 1 and value[0] in _CURLY and value[-1] in _CURLY and not set(value[1:-1]) & set("“„«"):
        yield Fault(
            place=place_of(file, event),
            code="curly-quotes",
            severity=Severity.WARNING,
            message="these curly quotes are read as part of the text",
            help="put the text in straight quotes, or in none",
        )


class Scalars:
    """Where the single values of a text stand, to tell what belongs to one."""

    def __init__(self, text: str) -> None:
        self.lines = lines_of(text)
        self.events = [event for event in events(text) if isinstance(event, ScalarEvent)]
        spans = [span_of(event) for event in self.events]
        self.starts = [(span.line, span.column) for span in spans]
        self.ends = [(span.end_line, span.end_column) for span in spans]

    def cover(self, line: int, column: int) -> bool:
        """Tell whether the character at this place belongs to a value."""
        index = bisect_right(self.starts, (line, column)) - 1
        return index >= 0 and (line, column) < self.ends[index]

    def ending_at(self, line: int, column: int) -> ScalarEvent | None:
        """Give the value whose last character stands before this place."""
        index = bisect_right(self.starts, (line, column)) - 1
        return self.events[index] if index >= 0 and self.ends[index] == (line, column) else None

    def before(self, event: ScalarEvent) -> str:
        """Give what stands before a value on its line."""
        span = span_of(event)
        return self.lines[span.line - 1][: span.column - 1]


def _hidden(file: str, line: int, column: int, words: str, if_remark: str) -> Fault:
    return Fault(
        place=Place(file=file, line=line, column=column, length=len(words.rstrip()) - column + 1),
        code="left-out",
        severity=Severity.WARNING,
        message="what follows this `#` is left out",
        help=f"if it belongs to the text, put the whole text in quotes; if it is a remark, {if_remark}",
    )


def _swallowed_item(file: str, text: str, event: ScalarEvent) -> Fault | None:
    start, end = event.start_mark, event.end_mark
    written = text[start.index : end.index] if start and end else ""
    item = _SWALLOWED.search(written)
    if item is None:
        return None
    return Fault(
        place=Place(
            file=file,
            line=span_of(event).line + len(lines_of(written[: item.end()])) - 1,
            column=item.end() - item.start() - 2,
        ),
        code="swallowed-line",
        message="this line is read as the rest of the text above it, not as an item of a list",
        help="begin all items of a list in the same column, under a key that has no text of its own",
    )


def _odd_blank(file: str, event: ScalarEvent, odd: re.Match[str]) -> Fault:
    span = span_of(event)
    on_one_line = span.line == span.end_line
    where = {":": "after a colon", "-": "after a hyphen"}.get(odd.group().strip(" ")[0], "in a key")
    return Fault(
        place=Place(file=file, line=span.line, column=span.column + odd.end() - 1)
        if on_one_line
        else place_of(file, event),
        code="odd-blank",
        message=f"a blank that is no plain space (a non-breaking one, most likely) stands {where}",
        help="type that space anew",
    )
