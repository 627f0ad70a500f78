"""Slips with signs that YAML keeps for itself: quotes, brackets, backslashes, and what may not begin a value.

Each function tells what it knows of a misreading, or passes.
"""

import re

from packlarder.book.strict.misread import Misread
from packlarder.book.strict.refused import QUOTE_IT, QUOTE_TEXT
from packlarder.faults import Fault


def never_closed_quote(m: Misread) -> Fault | None:
    """Explain a quote that the whole rest of the file is read into."""
    if "quoted scalar" not in m.context or "unexpected" not in m.problem:
        return None
    return _open_quote(m, m.from_line, m.from_column)


def _open_quote(m: Misread, line: int, column: int) -> Fault:
    quote = m.lines[line - 1][column - 1 : column] or '"'
    return m.fault(
        "open-quote",
        f"this quote is never closed: a second {quote} is missing",
        f"put a {quote} at the end of the text"
        + ("; around a text that holds an apostrophe put double quotes" if quote == "'" else ""),
        line=line,
        column=column,
    )


def backslash(m: Misread) -> Fault | None:
    """Explain a backslash in double quotes that YAML knows no sign for."""
    if "quoted scalar" not in m.context and m.problem:
        return None
    if not m.problem and not any("\\" in line for line in m.lines):
        return None
    column = m.words.rfind("\\", 0, m.column) + 1 or m.column
    return m.fault(
        "backslash",
        "a backslash in double quotes begins a special sign, and this one there is not",
        "put the text in single quotes: there a backslash is a backslash",
        column=column,
    )


def sign_that_needs_quotes(m: Misread) -> Fault | None:
    """Explain `note: @home`."""
    begins = ("cannot start any token", "mapping keys are not allowed", "node content")
    column = 0
    if any(words in m.problem for words in begins) or (m.here == "," and not m.before.strip(" -")):
        column = m.column
    elif re.search(r"\b(alias|anchor|tag)\b", m.context):
        column = m.from_column
    sign = m.words[column - 1 : column] if column else ""
    if not sign or sign.isspace() or (sign == "," and m.before.endswith((",", "[", "{"))):
        return None
    line = m.from_line if column == m.from_column else m.line
    shown = "a backtick" if sign == "`" else f"`{sign}`"
    return m.fault("needs-quotes", f"a value can not begin with {shown}", QUOTE_IT, line=line, column=column)


def tight_colon(m: Misread) -> Fault | None:
    """Explain `{take:[30 mL]}` and `[leek:]`."""
    if "unexpected ':'" not in m.problem:
        return None
    return m.fault(
        "no-space",
        "inside brackets a colon needs a space and a value after it",
        f"write `key: value`; if the colon is text, {QUOTE_TEXT}",
    )


def empty_item(m: Misread) -> Fault | None:
    """Explain `[leek,, egg]`."""
    if "node content" not in m.problem or m.here != ",":
        return None
    return m.fault("empty-item", "nothing stands between these two commas", "take one of the commas out")


def block_header(m: Misread) -> Fault | None:
    """Explain `weight: > 5 g`."""
    if "block scalar" not in m.context:
        return None
    sign = m.lines[m.from_line - 1][m.from_column - 1 : m.from_column]
    return m.fault(
        "needs-quotes",
        f"a value can not begin with `{sign}`",
        f"{QUOTE_IT}; a text of several lines begins on the line after the `{sign}`",
        line=m.from_line,
        column=m.from_column,
    )


def bracket(m: Misread) -> Fault | None:
    """Explain a bracket that is never closed, or stands in a text inside brackets."""
    found = _opening(m) if "flow" in m.context else None
    if found is None:
        return None
    line, column = found
    opening = m.lines[line - 1][column - 1]
    closing = {"[": "]", "{": "}"}[opening]
    if m.here and m.here in "[]{}" and m.before.rstrip()[-1:] not in ("", ",", ":", "[", "{"):
        return m.fault(
            "bracket-in-text",
            f"a text inside `{opening} {closing}` can not hold a `{m.here}`",
            QUOTE_TEXT,
        )
    return m.fault(
        "open-bracket",
        f"this `{opening}` is never closed, or something between it and its `{closing}` needs quotes",
        f"put a `{closing}` at the end; a text that holds a comma, a colon or a bracket needs quotes",
        line=line,
        column=column,
    )


def _opening(m: Misread) -> tuple[int, int] | None:
    """Find the bracket that a text stands in: where the parser says, or else the nearest one before that."""
    for line in range(m.from_line, 0, -1):
        words = m.lines[line - 1][: m.from_column] if line == m.from_line else m.lines[line - 1]
        column = max(words.rfind("["), words.rfind("{")) + 1
        if column:
            return line, column
    return None


def after_quote(m: Misread) -> Fault | None:
    """Explain `'don't stop'`."""
    quote = m.before[-1:]
    if quote not in ("'", '"') or not m.here:
        return None
    opening = re.search(rf"(?:^\s*|: +|- +|[\[{{,] *){quote}", m.before[:-1])
    if opening is None:
        return _earlier_quote(m, quote)
    return m.fault(
        "text-after-quote",
        "words stand after the closing quote",
        "around a text that holds an apostrophe put double quotes" if quote == "'" else QUOTE_TEXT,
        length=len(m.words.rstrip()) - m.column + 1,
    )


def _earlier_quote(m: Misread, quote: str) -> Fault | None:
    for number in range(m.line - 1, 0, -1):
        opening = re.search(rf"(?:^\s*|: +|- +|[\[{{,] *)(?={quote})", m.lines[number - 1])
        if opening:
            return _open_quote(m, number, opening.end() + 1)
    return None


def after_bracket(m: Misread) -> Fault | None:
    """Explain `note: [see] below`, and a bracket too many."""
    if m.here and m.here in "]}":
        opening = {"]": "[", "}": "{"}[m.here]
        help_ = "take it out; if it is text, put the whole text in quotes"
        return m.fault("extra-bracket", f"this `{m.here}` has no `{opening}` to close", help_)
    if m.before[-1:] not in ("]", "}") or not m.here:
        return None
    message = "words stand after the closing bracket"
    length = len(m.words.rstrip()) - m.column + 1
    return m.fault("text-after-bracket", message, f"if the bracket is text, {QUOTE_TEXT}", length=length)
