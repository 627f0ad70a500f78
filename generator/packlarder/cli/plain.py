"""Plain text of 80 columns: paragraphs, lists, sections and columns for a terminal."""

from collections.abc import Iterable, Iterator, Sequence
from textwrap import wrap

from packlarder.measure import as_typed

COLUMNS = 80
GAP = "  "


def page(lines: Iterable[str], foot: str) -> str:
    """Put a page together, with `foot` below it; blanks that must not break were kept until now."""
    held = [line.rstrip() for line in lines]
    return as_typed("\n".join([*held, "", *wrap(foot, COLUMNS)])) + "\n"


def section(heading: str, lines: Iterable[str]) -> Iterator[str]:
    """Set lines under a heading; nothing where there are none."""
    held = list(lines)
    if held:
        yield from ("", heading.upper(), *held)


def paragraph(text: str, indent: str = "") -> list[str]:
    """Set a text over as many lines as it takes."""
    return wrap(text, COLUMNS, initial_indent=indent, subsequent_indent=indent)


def listed(texts: Iterable[str]) -> Iterator[str]:
    """Set texts as a list."""
    for text in texts:
        yield from wrap(text, COLUMNS, initial_indent="- ", subsequent_indent=GAP)


def columns(rows: Sequence[tuple[str, ...]]) -> Iterator[str]:
    """Set rows as columns: the first to the left, figures to the right."""
    if not rows:
        return
    widths = [max(len(cell) for cell in column) for column in zip(*rows, strict=True)]
    for first, *figures in rows:
        cells = [f"{figure:>{width}}" for figure, width in zip(figures, widths[1:], strict=True)]
        yield GAP.join([f"{first:<{widths[0]}}", *cells])


def told(rows: Sequence[tuple[str, str]]) -> Iterator[str]:
    """Set labels with what is said of each beside them, over several lines where it is long."""
    width = max((len(label) for label, _ in rows), default=0)
    for label, text in rows:
        head = f"{label:<{width}}{GAP}"
        yield from wrap(text, COLUMNS, initial_indent=head, subsequent_indent=" " * len(head)) or [label]
