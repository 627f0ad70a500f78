"""From the words of a command line to the number it ends with."""

import os
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from importlib import import_module

from packlarder.cli import texts, usage
from packlarder.cli.console import make_printable, say
from packlarder.cli.options import Misuse, Options, parse
from packlarder.cli.rings import rings_left
from packlarder.disk.writing import NotWritten

CLEAN, FAULTY, MISUSED = 0, 1, 2
STOPPED, PIPE_CLOSED = 130, 141
"""What shells use for a program ended by Ctrl-C, and by a reader that went away."""
DEBUG = "PACKLARDER_DEBUG"


def main(argv: Sequence[str] | None = None) -> int:
    """Do what a command line asks: 0 clean, warnings alone too; 1 for faults; 2 for what can not be followed."""
    words = list(sys.argv[1:] if argv is None else argv)
    make_printable()
    try:
        with rings_left():
            ended = _run(_understood(words))
        sys.stdout.flush()
    except Misuse as misuse:
        say(str(misuse))
        return MISUSED
    except NotWritten as reason:
        say(f"{reason}.")
        return FAULTY
    except SystemExit as help_shown:
        return int(help_shown.code or 0)
    except KeyboardInterrupt:
        return STOPPED
    except BrokenPipeError:
        _drop_output()
        return PIPE_CLOSED
    except Exception as error:  # noqa: BLE001 - whatever comes here is a slip of ours, and is told as one
        return _our_fault(error)
    return ended


def _run(options: Options) -> int:
    """Hand over to a command: the function of its name in the module of its name, which brings along what it needs."""
    module = import_module(f"packlarder.cli.{options.command}")
    command: Callable[[Options], int] = getattr(module, options.command)
    return command(options)


def _understood(words: Sequence[str]) -> Options:
    """Understand the words, or name the help besides saying what is wrong with them."""
    try:
        return parse(words)
    except Misuse as misuse:
        known = [word for word in words[:1] if word in usage.COMMANDS]
        raise Misuse(f"{misuse} {texts.SEE_HELP.format(program=' '.join([texts.PROGRAM, *known]))}") from None


def _drop_output() -> None:
    """Let what is still to be written go nowhere, or Python complains at its end."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _our_fault(error: Exception) -> int:
    if os.environ.get(DEBUG):
        import traceback

        traceback.print_exception(error)
    say(texts.OUR_FAULT.format(error=f"{type(error).__name__}: {error}".rstrip(".")))
    print(texts.REPORT, file=sys.stderr)
    return FAULTY
