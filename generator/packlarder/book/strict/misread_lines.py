"""Slips with lines: tabs, indentation, colons, keys, lists and remarks.

Each function tells what it knows of a misreading, or passes.
"""

import re

from packlarder.book.strict import refused
from packlarder.book.strict.misread import Misread
from packlarder.book.strict.refused import QUOTE_TEXT
from packlarder.book.strict.source import ODD_SPACES
from packlarder.faults import Fault

SHORT = 60
"""Characters of a value that a help still repeats."""

_KEY_WITHOUT_SPACE = re.compile(r"\s*(?:- +)*[^\s:#\"'\[\]{},][^:#\"']*:(?=[^\s:/])")
_KEY = re.compile(r"\s*(?:- +)*(?:\"[^\"]*\"|'[^']*'|[^\s#\"'][^:#]*?)\s*:(?=\s|$)")
_ODD_BLANK = re.compile(rf"^ *(?:- +)?[{ODD_SPACES}]|:[{ODD_SPACES}]|^ *-[{ODD_SPACES}]")
_CURLY = re.compile("[“„«‘‚”»’]")


def percent(m: Misread) -> Fault | None:
    """Explain a line that begins with `%`."""
    if not m.words.startswith("%"):
        return None
    return refused.directive(m.place(m.line, 1, len(m.words.rstrip())))


def tab(m: Misread) -> Fault | None:
    """Explain a tab where spaces are wanted."""
    indent = m.words[: len(m.words) - len(m.words.lstrip())]
    if "\t" in indent:
        column = indent.index("\t") + 1
        help_ = "take the tab out and indent with spaces, as many as the lines beside it have"
        return m.fault("tab", "a tab stands in the indentation of this line", help_, column=column)
    if m.here == "\t":
        return m.fault("tab", "a tab stands here instead of a space", "put a space in its place")
    return None


def odd_blank(m: Misread) -> Fault | None:
    """Explain a blank that only looks like a space."""
    for number in {m.from_line, max(m.line - 1, 1), m.line}:
        odd = _ODD_BLANK.search(m.lines[number - 1])
        if odd:
            message = "a blank that is no plain space (a non-breaking one, most likely) stands here"
            return m.fault("odd-blank", message, "type that space anew", line=number, column=odd.end())
    return None


def list_on_key_line(m: Misread) -> Fault | None:
    """Explain `parts: - leek`."""
    if "sequence entries are not allowed" not in m.problem:
        return None
    return m.fault(
        "list-beside-key",
        "a list can not begin on the line of its key",
        "put each item on a line of its own, beginning with `- `; if the hyphen is text, put the text in quotes",
    )


def colon(m: Misread) -> Fault | None:
    """Explain `note: Wait: it is hot`, and lines that are indented too far."""
    if "mapping values are not allowed" not in m.problem:
        return None
    key = _KEY.match(m.words)
    if key is None or key.end() < m.column:
        return _colon_in_text(m)
    return _line_above(m) or _indented_too_far(m)


def _colon_in_text(m: Misread) -> Fault:
    if _CURLY.search(m.before):
        help_ = "curly quotes do not count: put the whole text in straight quotes"
    else:
        help_ = QUOTE_TEXT + _quoted(m.words)
    return m.fault("colon-in-text", "a colon and a space in the middle of a text", help_)


def _quoted(words: str) -> str:
    """Show the value of a line in quotes, where that is short and simple."""
    key = _KEY.match(words)
    value = words[key.end() :].strip() if key else ""
    is_simple = value and len(value) <= SHORT and not set(value) & set('"#\\{}[]')
    return f': "{value}"' if is_simple and not words.lstrip().startswith("- ") else ""


def _line_above(m: Misread) -> Fault | None:
    """Look for what is wrong with the last line that says something above the one that was refused."""
    for number in range(m.line - 1, 0, -1):
        words = m.lines[number - 1]
        if words.strip() and not words.lstrip().startswith("#"):
            return None if _KEY.match(words) else _no_key(m, number)
    return None


def _no_key(m: Misread, number: int) -> Fault:
    words = m.lines[number - 1]
    indent = len(words) - len(words.lstrip())
    tight = _KEY_WITHOUT_SPACE.match(words)
    if tight:
        column = tight.end()
        return m.fault(
            "no-space", "a space is missing after this colon", "write `key: value`", line=number, column=column
        )
    return m.fault(
        "no-colon",
        "this line is neither `key: value` nor an item of a list",
        "put a colon and a space after the key; a text that goes on from the line above is indented further",
        line=number,
        column=indent + 1,
        length=len(words.strip()),
    )


def _indented_too_far(m: Misread) -> Fault:
    indent = len(m.words) - len(m.words.lstrip())
    return m.fault(
        "indentation",
        "this line is indented further than the one above it, which has its value already",
        "begin it in the same column as the keys it belongs to",
        column=indent + 1,
        length=m.column - indent,
    )


def key_without_colon(m: Misread) -> Fault | None:
    """Explain a line without a colon among keys."""
    return _no_key(m, m.from_line) if "could not find expected ':'" in m.problem else None


def before_colon(m: Misread) -> Fault | None:
    """Explain `: value`."""
    if m.here != ":" or m.before.strip(" -"):
        return None
    return m.fault("no-key", "there is no key before this colon", "write `key: value`")


def after_comment(m: Misread) -> Fault | None:
    """Explain a text that goes on after a remark."""
    above = m.lines[m.line - 2] if m.line > 1 else ""
    if m.before or " #" not in above or above.lstrip().startswith("#") or _KEY.match(m.words):
        return None
    return m.fault(
        "text-after-comment",
        "a text can not go on after a `#`",
        "put the remark on a line of its own; if the `#` is text, put the whole text in quotes",
        line=m.line - 1,
        column=above.index(" #") + 2,
        length=len(above.rstrip()) - above.index(" #") - 1,
    )


def list_and_keys(m: Misread) -> Fault | None:
    """Explain a line that is neither an item nor a key of what stands above it."""
    if m.before:
        return None
    if ("'-' indicator" in m.problem or "block collection" in m.context) and not m.words.lstrip().startswith("- "):
        return m.fault(
            "no-hyphen",
            "this line stands in a list but does not begin with `- `",
            "begin it with `- `, or begin it in the same column as the key it belongs to",
            length=len(m.words.strip()),
        )
    return m.fault(
        "indentation",
        f"this line is indented by {_spaces(m.column - 1)}, which fits none of the lines above it",
        "begin it in the same column as the lines it belongs with",
    )


def _spaces(number: int) -> str:
    return {0: "no space", 1: "one space"}.get(number, f"{number} spaces")


def second_document(m: Misread) -> Fault | None:
    """Explain a line of dots with more after it."""
    return refused.second_document(m.place(m.line, m.column)) if "document start" in m.problem else None
