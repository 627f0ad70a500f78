"""Speaking with the one at the terminal: sentences, faults in colour, progress."""

import os
import re
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from io import TextIOWrapper
from typing import TextIO

from packlarder.cli import texts
from packlarder.faults import Fault

RED, YELLOW, BLUE, BOLD, PLAIN = "\x1b[31m", "\x1b[33m", "\x1b[34m", "\x1b[1m", "\x1b[0m"
COLOURS = {"error": RED, "warning": YELLOW, "note": BLUE}
_HEAD = re.compile(
    r"^(?P<place>\S[^\n]*?): (?P<severity>error|warning|note)(?P<rest>\[[a-z0-9-]+\]: .*)$", re.MULTILINE
)
BAR = "{desc:<12}{bar}{percentage:4.0f} %"
_MARK = re.compile(r"^(?P<margin> +\| +)(?P<mark>\^+)$", re.MULTILINE)


def say(sentence: str) -> None:
    """Say a sentence on standard error; standard output belongs to what was asked for."""
    print(texts.SAID.format(sentence=sentence), file=sys.stderr, flush=True)


def show_faults(faults: Sequence[Fault], held: Mapping[str, bytes], book: str, to: TextIO) -> None:
    """Print faults with the lines they are about; in colour where the stream is a terminal that wants it."""
    from packlarder.book.show_faults import render

    text = render(faults, held, book)
    print(painted(text) if wants_colour(to) else text, end="", file=to)


def painted(text: str) -> str:
    """Set severities and marks in colour; the words say the same without it."""
    text = _HEAD.sub(
        lambda found: f"{BOLD}{found['place']}: {COLOURS[found['severity']]}{found['severity']}{PLAIN}{found['rest']}",
        text,
    )
    return _MARK.sub(rf"\g<margin>{BOLD}\g<mark>{PLAIN}", text)


def wants_colour(stream: TextIO) -> bool:
    """Tell whether a stream is a terminal on which colour is welcome."""
    return stream.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def make_printable() -> None:
    """Let no letter that a stream's encoding lacks stop a command."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")


def print_json(text: str) -> None:
    """Print JSON, which is UTF-8 wherever it goes."""
    if isinstance(sys.stdout, TextIOWrapper):
        sys.stdout.reconfigure(encoding="utf-8")
    print(text)


@contextmanager
def progress(total: int) -> Iterator[Callable[[str, float], None]]:
    """Give what is called with the name of the work and how much of `total` is done; on a terminal a bar shows it."""
    if not sys.stderr.isatty():
        yield lambda _work, _done: None
        return
    from tqdm import tqdm

    with tqdm(total=total, file=sys.stderr, leave=False, ncols=80, bar_format=BAR) as bar:

        def show(work: str, done: float) -> None:
            bar.update(done - bar.n)
            bar.set_description_str(work, refresh=work != bar.desc)

        yield show
