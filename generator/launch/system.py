"""What the system must have that no Python package brings: found, or installed through apt if allowed, or named."""

import importlib.util
import os
import shutil
import sys
from collections.abc import Callable
from typing import NamedTuple

from launch.console import agreed, is_root, on_a_terminal, run, say

INSTALLERS = {
    "debian": "sudo apt-get install",
    "fedora": "sudo dnf install",
    "macos": "brew install",
    "windows": "winget install MSYS2.MSYS2 && C:\\msys64\\usr\\bin\\pacman -S",
}
LIBRARIES = {
    "darwin": ("libpango-1.0.dylib", "libpangoft2-1.0.dylib", "libharfbuzz-subset.0.dylib"),
    "linux": ("libpango-1.0.so.0", "libpangoft2-1.0.so.0", "libharfbuzz-subset.so.0"),
    "win32": ("libpango-1.0-0.dll", "libpangoft2-1.0-0.dll", "libharfbuzz-subset-0.dll"),
}
"""What WeasyPrint opens, under the names that it tries."""

WINDOWS_FOLDERS = ("C:\\msys64\\ucrt64\\bin", "C:\\msys64\\mingw64\\bin")
"""Where WeasyPrint looks for them on Windows."""


class Need(NamedTuple):
    """One thing of the system: its name, how to see that it is there, its packages by family of systems."""

    name: str
    is_there: Callable[[], bool]
    packages: dict[str, str]


def _has_venv() -> bool:
    return bool(importlib.util.find_spec("venv") and importlib.util.find_spec("ensurepip"))


def _has_pango() -> bool:
    import ctypes

    if sys.platform == "win32":
        for folder in filter(os.path.isdir, WINDOWS_FOLDERS):
            os.add_dll_directory(folder)
    try:
        for library in LIBRARIES.get(sys.platform, LIBRARIES["linux"]):
            ctypes.CDLL(library)
    except OSError:
        return False
    return True


def _has_atomic() -> bool:
    import ctypes

    try:
        return sys.platform != "linux" or bool(ctypes.CDLL("libatomic.so.1"))
    except OSError:
        return False


def _has(*programs: str) -> Callable[[], bool]:
    return lambda: all(shutil.which(program) for program in programs)


NEEDS = {
    "run": (
        Need(
            "the venv module of Python",
            _has_venv,
            {"debian": f"python3.{sys.version_info.minor}-venv", "fedora": "python3", "macos": "python"},
        ),
        Need(
            "Pango (sets the pages of the booklet)",
            _has_pango,
            {
                "debian": "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0",
                "fedora": "pango",
                "macos": "pango",
                "windows": "mingw-w64-ucrt-x86_64-pango",
            },
        ),
    ),
    "test": (
        Need(
            "Chromium (shows pages to the tests)",
            _has("chromium"),
            {"debian": "chromium", "fedora": "chromium", "macos": "chromium"},
        ),
        Need(
            "libatomic (opened by what drives Chromium)",
            _has_atomic,
            {"debian": "libatomic1", "fedora": "libatomic"},
        ),
        Need(
            "Poppler (reads printed pages back)",
            _has("pdftotext", "pdftoppm"),
            {
                "debian": "poppler-utils",
                "fedora": "poppler-utils",
                "macos": "poppler",
                "windows": "mingw-w64-ucrt-x86_64-poppler",
            },
        ),
        Need(
            "a Java runtime (runs the checkers of web pages and e-books)",
            _has("java"),
            {"debian": "default-jre-headless", "fedora": "java-latest-openjdk-headless", "macos": "openjdk"},
        ),
    ),
}
"""What each kind of start needs of the system; a test needs what a run needs, too."""


def missing(kind: str) -> list[Need]:
    """What a start of this kind needs and does not find."""
    importlib.invalidate_caches()  # what was installed a moment ago counts
    needs = NEEDS["run"] + (NEEDS["test"] if kind == "test" else ())
    return [need for need in needs if not need.is_there()]


def supply(kind: str, *, allowed: bool) -> None:
    """Install what is missing where that is allowed, and name what then is missing still."""
    lacking = missing(kind)
    if lacking and _may_install(lacking, allowed=allowed):
        _install(lacking)
        lacking = missing(kind)
    if lacking:
        say(advice(lacking, family()))


def advice(lacking: list[Need], where: str) -> str:
    """Say in one line what is missing and how to get it on this family of systems."""
    line = f"missing: {_names(lacking)}."
    packages = [need.packages[where] for need in lacking if where in need.packages]
    return f"{line} To get it: {INSTALLERS[where]} {' '.join(packages)}" if packages else line


def family() -> str:
    """Tell which family this system belongs to: a key of `INSTALLERS`, or nothing if it is none of them."""
    known = {"darwin": "macos", "win32": "windows"}.get(sys.platform, "")
    return known or next((name for name, tool in (("debian", "apt-get"), ("fedora", "dnf")) if shutil.which(tool)), "")


def _may_install(lacking: list[Need], *, allowed: bool) -> bool:
    """Whether to go ahead: asked for by `--system`, agreed on a terminal, or root with nobody to ask."""
    if family() != "debian" or not (is_root() or shutil.which("sudo")):
        return False
    if allowed or not on_a_terminal():
        return allowed or is_root()
    return agreed(f"missing: {_names(lacking)}. Install through apt-get now?")


def _install(lacking: list[Need]) -> None:
    say(f"installing through apt-get: {_names(lacking)}.")
    sudo = [] if is_root() else ["sudo"]
    apt = [*sudo, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-qq", "-o", "DPkg::Lock::Timeout=300"]
    run([*apt, "update"])  # where one of several sources does not answer, the others may do
    for need in lacking:  # one by one: a package that this release does not have must not keep out the others
        run([*apt, "install", "--yes", "--no-install-recommends", *need.packages["debian"].split()])


def _names(lacking: list[Need]) -> str:
    return ", ".join(need.name for need in lacking)
