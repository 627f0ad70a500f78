"""The marker of an output folder: it says that the folder is ours, and names what the last build wrote there."""

from collections.abc import Iterable
from contextlib import suppress
from pathlib import Path

MARKER = ".packlarder-output"
"""The file by which an output folder is known as ours; it names what the last build wrote there."""
MARKER_SAYS = "Packlarder writes this folder anew at every build. Below stands what the last one wrote.\n"
LITTER = frozenset({MARKER, ".DS_Store", "Thumbs.db", "desktop.ini"})
"""Files that stand in no marker and that nobody misses: desktops leave them in whatever folder they show."""
MOST_NAMED = 3
"""Files of somebody else's that a refusal names."""


def is_ours(folder: Path) -> bool:
    """Tell whether a build of ours wrote a folder."""
    return (folder / MARKER).is_file()


def objection(out: Path) -> str:
    """Say what speaks against replacing a folder: an output of ours with files that no build wrote. Else empty."""
    theirs = foreign(out) if is_ours(out) else []
    if not theirs:
        return ""
    more = len(theirs) - MOST_NAMED
    named = ", ".join(theirs[:MOST_NAMED]) + (f" and {more:,} more" if more > 0 else "")
    what = "which no build wrote, and a build would take away"
    return f"{out} holds {named}, {what}; move {'it' if len(theirs) == 1 else 'them'} away, or build elsewhere"


def foreign(out: Path) -> list[str]:
    """Name the files in an output folder that its marker does not name, by their paths in it."""
    known: set[str] = set()
    with suppress(OSError):  # a marker that can not be read names nothing
        known.update((out / MARKER).read_text(encoding="utf-8", errors="replace").splitlines()[1:])
    return [name for name in names_in(out) if name not in known]


def marker_of(names: Iterable[str]) -> bytes:
    """Give what the marker of a folder holds in which a build wrote these files."""
    return (MARKER_SAYS + "".join(f"{name}\n" for name in sorted(names))).encode()


def names_in(out: Path) -> list[str]:
    """Name the files below a folder, links too, in order; what desktops leave there is passed over."""
    found = (path for path in out.rglob("*") if path.name not in LITTER and (path.is_symlink() or not path.is_dir()))
    return sorted(path.relative_to(out).as_posix() for path in found)
