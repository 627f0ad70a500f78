"""The environment `.venv`: where it lies, and whether it holds what a command needs. Quick, as every start asks."""

import hashlib
import os
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
STAMP = VENV / "packlarder-has.txt"
UNFINISHED = "unfinished"

LOCKS = {
    "run": ("requirements/run.txt",),
    "test": ("requirements/test.txt", "requirements/test-source.txt"),
}
"""What each kind of start installs. `test.txt` holds all of `run.txt`, in the same versions."""


def digest(kind: str) -> str:
    """What the stamp says once all for `kind` is there; it changes with locks, project, its folder and Python."""
    seen = hashlib.sha256(os.fsencode(f"{ROOT}\n{os.path.realpath(PYTHON)}\n"))
    for name in ("pyproject.toml", *LOCKS[kind]):
        seen.update((ROOT / name).read_bytes())
    return f"{kind}-{seen.hexdigest()}"


def stamped() -> list[str]:
    """What the stamp says: the digest of each kind that is there, or that an installation did not end."""
    try:
        return STAMP.read_text("utf-8").split()
    except OSError:
        return []


def ready(kind: str) -> bool:
    """Whether `.venv` holds what a start of this kind needs."""
    return digest(kind) in stamped()
