"""A start: see that all is there, install what is not, hand over to the package."""

import os

from launch.console import Stop, is_root, on_a_terminal, say
from launch.environment import PYTHON, ready

SYSTEM = "--system"
"""The one option that is ours: install what the system lacks without asking. The package never sees it."""

ENTRY = "import sys; from packlarder.cli import main; sys.exit(main(sys.argv[1:]))"


def main(arguments: list[str]) -> int:
    """Start the package with these arguments. On POSIX this returns only if it can not."""
    allowed = SYSTEM in arguments
    passed_on = [argument for argument in arguments if argument != SYSTEM]
    kind = "test" if passed_on[:1] == ["test"] else "run"
    for stray in ("PYTHONHOME", "PYTHONPATH", "PIP_TARGET"):
        os.environ.pop(stray, None)  # each would lead past .venv
    try:
        _prepare(kind, allowed=allowed)
    except (Stop, OSError) as reason:
        say(str(reason))
        return 1
    except KeyboardInterrupt:
        say("stopped; the next start mends what was left half-made.")
        return 130
    return _hand_over(passed_on)


def _prepare(kind: str, *, allowed: bool) -> None:
    """Look at the system when something is to be installed anyway, and wherever nobody needs to be asked."""
    unasked = allowed or (is_root() and not on_a_terminal())
    if ready(kind) and not unasked:
        return
    from launch import system

    if ready(kind) and not system.missing(kind):
        return
    from launch import install

    with install.alone():
        system.supply(kind, allowed=allowed)
        install.fill(kind)


def _hand_over(arguments: list[str]) -> int:
    """Become the package. With -P no file of the current folder can stand in for a module of ours."""
    command = [str(PYTHON), "-P", "-c", ENTRY, *arguments]
    if os.name != "nt":
        os.execv(command[0], command)
    import subprocess  # on Windows, exec would give the prompt back at once

    return subprocess.run(command, check=False).returncode
