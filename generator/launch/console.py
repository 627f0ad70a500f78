"""Speaking with the one who typed the command, and running other programs for them.

Everything goes to standard error: standard output belongs to the command.
"""

import os
import subprocess
import sys


class Stop(Exception):
    """The start can not go on; the message says why, in a sentence for the one who typed the command."""


def say(sentence: str) -> None:
    """Say one sentence."""
    print(f"packlarder: {sentence}", file=sys.stderr, flush=True)


def on_a_terminal() -> bool:
    """Whether somebody is there to answer."""
    return sys.stdin is not None and sys.stdin.isatty()


def is_root() -> bool:
    """Whether this start may change the system without a password."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


def agreed(question: str) -> bool:
    """Ask a question. Enter and what begins with y mean yes; an ended input means no."""
    print(f"packlarder: {question} [Y/n] ", end="", file=sys.stderr, flush=True)
    answer = sys.stdin.readline()
    return answer != "" and answer.strip().lower()[:1] in ("", "y")


def run(command: list[str]) -> bool:
    """Run a program to its end and tell whether it did well. A terminal shows what it prints; errors always show."""
    shown = sys.stderr if on_a_terminal() else subprocess.DEVNULL
    try:
        return subprocess.run(command, stdin=subprocess.DEVNULL, stdout=shown, check=False).returncode == 0
    except OSError:  # there is no such program
        return False
