"""Why a text is not YAML, in plain words.

The parsers say where they stopped and what they wanted; what the author did is mostly found in the lines around it.
"""

from collections.abc import Callable

from packlarder.book.strict import misread_lines as lines
from packlarder.book.strict import misread_signs as signs
from packlarder.book.strict.misread import Misread, misread
from packlarder.faults import Fault

EXPLANATIONS: tuple[Callable[[Misread], Fault | None], ...] = (
    lines.percent,
    lines.tab,
    signs.never_closed_quote,
    signs.block_header,
    lines.odd_blank,
    signs.backslash,
    signs.sign_that_needs_quotes,
    signs.empty_item,
    signs.tight_colon,
    lines.list_on_key_line,
    signs.bracket,
    lines.colon,
    lines.key_without_colon,
    lines.second_document,
    lines.before_colon,
    signs.after_quote,
    signs.after_bracket,
    lines.after_comment,
    lines.list_and_keys,
)
"""Each tells what it knows, or passes; the first that knows is heard."""


def explain(file: str, text: str, error: Exception) -> Fault:
    """Turn what a parser raised into one fault."""
    stopped = misread(file, text, error)
    for explanation in EXPLANATIONS:
        fault = explanation(stopped)
        if fault:
            return fault
    return stopped.fault(
        "unreadable",
        "from here on this file can not be understood",
        "look at the indentation, quotes and colons of this line and of the one above it",
    )
