"""The command `test`: the project's own checks, from a checkout; style and types are among them (`tests/house`)."""

import subprocess
import sys
from importlib.util import find_spec

from packlarder.cli import texts
from packlarder.cli.checkout import checkout
from packlarder.cli.options import Misuse, Options

TOOLS = {"pytest": "pytest", "xdist": "pytest-xdist", "mypy": "mypy", "ruff": "ruff"}
"""What the checks need: modules, and what they are called where they are installed from."""
ON_EVERY_CORE = ("-n", "auto")


def test(options: Options) -> int:
    """Run pytest over everything, on every core; its closing line is the last word. 1 if anything fails."""
    top = checkout()
    lacking = [name for module, name in TOOLS.items() if find_spec(module) is None]
    if lacking:
        raise Misuse(texts.NO_TOOLS.format(tools=", ".join(lacking)))
    command = [sys.executable, "-P", "-m", "pytest", *ON_EVERY_CORE, *options.passed_on]
    return int(subprocess.run(command, cwd=top, check=False).returncode != 0)
