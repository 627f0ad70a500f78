"""The command `test`: the project's own checks, from a checkout."""

import subprocess
import sys
from importlib.util import find_spec

from packlarder.cli import texts
from packlarder.cli.checkout import checkout
from packlarder.cli.options import Misuse, Options

STYLE = ("ruff", "check", "generator", "tests")
TYPES = ("mypy",)
BEHAVIOUR = ("pytest",)


def test(options: Options) -> int:
    """Check style, types and behaviour; 1 if any of it fails. Options go to pytest, which then runs alone."""
    top = checkout()
    passed_on = options.passed_on
    checks = [BEHAVIOUR] if passed_on else [STYLE, TYPES, BEHAVIOUR]
    lacking = [name for name, *_ in checks if find_spec(name) is None]
    if lacking:
        raise Misuse(texts.NO_TOOLS.format(tools=", ".join(lacking)))
    failed: list[str] = []
    for tool, *words in checks:
        says = texts.CHECKS[tool]
        print(says, flush=True)
        command = [sys.executable, "-P", "-m", tool, *words, *(passed_on if tool == "pytest" else ())]
        if subprocess.run(command, cwd=top, check=False).returncode:
            failed.append(says)
    print(texts.FAILED.format(checks="; ".join(failed)) if failed else texts.ALL_PASSED)
    return int(bool(failed))
