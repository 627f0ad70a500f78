"""The command `bench`: time a large book."""

import os
import subprocess
import sys

from packlarder.cli.checkout import checkout
from packlarder.cli.options import Options


def bench(options: Options) -> int:
    """Run the bench of the checkout, which prints its timings."""
    top = checkout()
    paths = os.pathsep.join((str(top / "generator"), str(top)))
    command = [sys.executable, "-P", "-m", "tests.bench.run", str(options.dishes)]
    return int(subprocess.run(command, env={**os.environ, "PYTHONPATH": paths}, check=False).returncode != 0)
