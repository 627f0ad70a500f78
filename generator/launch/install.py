"""Making `.venv` and filling it from the lock files. Only a start that finds something lacking comes here."""

import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager

from launch.console import Stop, run, say
from launch.environment import LOCKS, PYTHON, ROOT, STAMP, UNFINISHED, VENV, digest, ready, stamped

if sys.platform == "win32":
    import msvcrt

    def _claim(lock: int, *, wait: bool) -> None:
        """Claim the lock file, or raise OSError; Windows gives up waiting after ten seconds."""
        msvcrt.locking(lock, msvcrt.LK_LOCK if wait else msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _claim(lock: int, *, wait: bool) -> None:
        """Claim the lock file, or raise OSError where somebody holds it and we are not to wait."""
        fcntl.flock(lock, fcntl.LOCK_EX if wait else fcntl.LOCK_EX | fcntl.LOCK_NB)


@contextmanager
def alone() -> Iterator[None]:
    """Of several starts let one install while the others wait. The system frees the lock, however a start ends."""
    with (ROOT / ".venv.lock").open("w") as lock:
        try:
            _claim(lock.fileno(), wait=False)
        except OSError:
            say("another start is installing; waiting for it.")
            _claim(lock.fileno(), wait=True)
        yield


def fill(kind: str) -> None:
    """Bring `.venv` to what the lock files say for this kind of start, and stamp it.

    The stamp says "unfinished" in between, so that the next start makes anew what an interrupted one left half-made.
    An environment that somebody made by hand is kept, and brought to the locked versions.
    """
    if ready(kind):
        return
    say(f"installing into {VENV.name} what a {kind} needs; this happens once and takes a minute or two.")
    if stamped() == [UNFINISHED] or not _works():
        _make_anew()
    STAMP.write_text(UNFINISHED, "utf-8")
    for lock in LOCKS[kind]:
        _install_locked(lock)
    # The project itself is built by the locked build backend: nothing unlocked comes in on that way.
    _pip("--no-deps", "--no-build-isolation", "--no-index", "--editable", str(ROOT))
    done = ("run", "test") if kind == "test" else ("run",)
    STAMP.write_text(" ".join(map(digest, done)), "utf-8")


def _works() -> bool:
    """Whether `.venv` has a Python that is new enough (an older one does not know -P) and a pip."""
    try:
        tried = subprocess.run([PYTHON, "-P", "-c", "import pip"], stderr=subprocess.DEVNULL, check=False)
    except OSError:
        return False
    return tried.returncode == 0


def _make_anew() -> None:
    if VENV.exists():
        say(f"making {VENV.name} anew: what is there is half-made or broken.")
        shutil.rmtree(VENV)
    VENV.mkdir()
    STAMP.write_text(UNFINISHED, "utf-8")
    if not run([sys.executable, "-P", "-m", "venv", str(VENV)]):
        raise Stop(f"{VENV.name} could not be made: {sys.executable} has no working venv module.")


def _install_locked(lock: str) -> None:
    """Install what a lock file names. What comes as source alone is built by the setuptools already there."""
    from_source = ("--no-deps", "--no-build-isolation", "--use-pep517") if lock.endswith("-source.txt") else ()
    _pip("--require-hashes", *from_source, "--requirement", str(ROOT / lock))


def _pip(*words: str) -> None:
    """Run pip's install. No cache, so that nothing is left outside the project."""
    quiet = ("-qq", "--no-cache-dir", "--disable-pip-version-check", "--no-user", "--no-input")
    if not run([str(PYTHON), "-P", "-m", "pip", "install", *quiet, *words]):
        raise Stop("pip could not install what is locked; it said why above. The next start tries again.")
