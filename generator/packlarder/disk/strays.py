"""What lies in a book's folder, looks meant for the book, and is not read: each is a warning."""

import os
import re
from contextlib import suppress
from difflib import get_close_matches

from packlarder.faults import Fault, Place, Severity

HIDDEN = "."
YAML = (".yaml", ".yml")
READ = {**dict.fromkeys(("components", "dishes", "batches", "draws", "trips"), ".yaml"), "pages": ".md"}
"""The folders of texts, and how the names of their files end."""
QUIET_FOLDERS = frozenset({*READ, "photos"})
"""Folders that are read."""
BOOK_FILE = "book.yaml"
"""A folder that holds it is another book."""
PHOTOS = (".jpg", ".jpeg", ".png", ".webp")
_QUIET_FILES = re.compile(
    r"[.#].*|.*[~#]|.*\.(bak|orig|rej|swp|tmp)|(readme|licen[cs]e|changelog)(\..*)?|thumbs\.db|desktop\.ini",
    re.IGNORECASE,
)
"""Files that nobody takes for a part of the book: editors' copies, what belongs to a repository or to a desktop."""


def stray_at_the_top(entry: os.DirEntry[str]) -> Fault | None:
    """Tell of a YAML file beside book.yaml, or of a folder with such files, that no one reads."""
    name = entry.name
    if _QUIET_FILES.fullmatch(name) or not name.isprintable():
        return None
    if not entry.is_dir():
        if not name.lower().endswith(YAML):
            return None
        return _stray(name, f"{name} is not read", "dishes live in dishes/, components in components/")
    if name in QUIET_FOLDERS or not _holds_texts(entry.path):
        return None
    close = get_close_matches(name.lower(), READ, n=1, cutoff=0.6)
    meant = f"did you mean {close[0]}/? " if close else ""
    return _stray(name, f"files in {name}/ are not read", f"{meant}a book has {', '.join(f'{one}/' for one in READ)}")


def stray_in_a_folder(name: str, folder: str) -> Fault | None:
    """Tell of a file in a folder of texts that by its ending is none of them: `dishes/soup.txt`."""
    if folder not in READ or _QUIET_FILES.fullmatch(name):
        return None
    stem, dot, ending = name.rpartition(".")
    message = f"files that end in .{ending} are not read here" if dot else "a file without an ending is not read"
    help = f"call it {(stem or name).removesuffix(READ[folder])}{READ[folder]}, or move it out of {folder}/"
    if name.lower().endswith(PHOTOS):
        help = "photos live in photos/"
    return _stray(f"{folder}/{name}", message, help)


def _holds_texts(folder: str) -> bool:
    """Tell whether YAML files lie in a folder that is no book of its own."""
    with suppress(OSError), os.scandir(folder) as found:
        names = {entry.name.lower() for entry in found if not entry.name.startswith(HIDDEN)}
        return BOOK_FILE not in names and any(name.endswith(YAML) for name in names)
    return False


def _stray(path: str, message: str, help: str) -> Fault:
    return Fault(place=Place(file=path), code="stray-file", message=message, help=help, severity=Severity.WARNING)
