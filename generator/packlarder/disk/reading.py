"""The files of a book's folder, read with caps, in a fixed order, and nothing but what belongs to a book."""

import os
import re
import stat
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from packlarder.disk.strays import stray_at_the_top, stray_in_a_folder
from packlarder.faults import Fault, Place, Severity

TEXT_CAP = (1 << 20) + 1
"""Bytes read of a text file: one more than a book's reader takes, so that it sees what is too large."""
PHOTO_CAP = 8 << 20
"""Bytes that a photo may have; a page that shows it should still open on a telephone."""
PIECE = 1 << 16
"""Bytes asked for at once; room is made for them all, however few there are."""

TOP_FILES = frozenset({"book.yaml", "foods.yaml", "book.yml", "foods.yml"})
SUFFIXES: Mapping[str, tuple[str, ...]] = {
    "components": (".yaml", ".yml"),
    "dishes": (".yaml", ".yml"),
    "batches": (".yaml", ".yml"),
    "draws": (".yaml", ".yml"),
    "trips": (".yaml", ".yml"),
    "pages": (".md",),
    "photos": (".jpg", ".jpeg", ".png", ".webp"),
}
"""The folders of a book and how the names of their files end. `.yml` is read so that its faults can be told."""
PHOTOS = "photos"
PHOTO_NAME = re.compile(r"[A-Za-z0-9_-][A-Za-z0-9._-]*")
HIDDEN = "."


@dataclass(frozen=True, slots=True, kw_only=True)
class BookFiles:
    """What a book's folder holds: texts by their paths in it (`dishes/porridge.yaml`), photos by their names."""

    texts: Mapping[str, bytes]
    photos: Mapping[str, bytes]
    faults: tuple[Fault, ...]


def read_folder(book: Path) -> BookFiles:
    """Read a book. What can not be read, or leads out of the book, is a fault; hidden files are passed over.

    Raises OSError where the folder itself can not be listed.
    """
    desk = _Desk(book.resolve())
    desk.top()
    for folder in SUFFIXES:
        desk.folder(folder)
    return BookFiles(texts=desk.texts, photos=desk.photos, faults=tuple(desk.faults))


@dataclass(slots=True)
class _Desk:
    """Gathers what is read."""

    root: Path
    texts: dict[str, bytes] = field(default_factory=dict)
    photos: dict[str, bytes] = field(default_factory=dict)
    faults: list[Fault] = field(default_factory=list)

    def top(self) -> None:
        for entry in _listed(self.root):
            if entry.name not in TOP_FILES:
                self._tell(stray_at_the_top(entry))
            elif not (entry.is_symlink() and self._leads_out(Path(entry.path), entry.name)):
                self._take(entry, entry.name)

    def folder(self, name: str) -> None:
        place = self.root / name
        if not place.is_dir():
            return
        if place.is_symlink() and self._leads_out(place, name):
            return
        try:
            entries = list(_listed(place))
        except OSError as error:
            self._fault(name, "unreadable", f"this folder can not be read: {_why(error)}", "see who may read it")
            return
        for entry in entries:
            if not entry.name.startswith(HIDDEN):
                self._look(entry, name)

    def _look(self, entry: os.DirEntry[str], folder: str) -> None:
        """Take one entry of a folder if it is one of its files; say so of what looks meant for the book."""
        if not entry.name.isprintable():
            shown = "".join(letter if letter.isprintable() else "?" for letter in entry.name)
            message = "the name of this file holds characters that can not be shown"
            self._fault(f"{folder}/{shown}", "file-name", message, "give it another name, of letters and hyphens")
            return
        path = f"{folder}/{entry.name}"
        if entry.is_symlink() and self._leads_out(Path(entry.path), path):
            return
        if entry.is_dir():
            message = f"folders inside {folder}/ are not read"
            self._fault(path, "stray-folder", message, f"move its files up into {folder}/", Severity.WARNING)
        elif not entry.name.lower().endswith(SUFFIXES[folder]):
            self._tell(stray_in_a_folder(entry.name, folder))
        elif folder == PHOTOS and not PHOTO_NAME.fullmatch(entry.name):
            message = f'"{entry.name}" can not name a photo: pages name it in their addresses'
            self._fault(path, "file-name", message, "call it by letters from a to z, figures and hyphens: camp-1.jpg")
        else:
            self._take(entry, path)

    def _take(self, entry: os.DirEntry[str], path: str) -> None:
        photo = path.startswith(f"{PHOTOS}/")
        try:
            content = _read(entry, PHOTO_CAP + 1 if photo else TEXT_CAP)
        except OSError as error:
            self._fault(path, "unreadable", f"this file can not be read: {_why(error)}", "see who may read it")
            return
        if content is None:
            self._fault(path, "not-a-file", "this is no file, though it is called like one", "take it out of the book")
        elif not photo:
            self.texts[path] = content
        elif len(content) > PHOTO_CAP:
            message = f"this photo has more than {PHOTO_CAP >> 20} MiB"
            self._fault(path, "photo-too-large", message, "save a smaller copy; 1600 pixels wide is plenty for a page")
        else:
            self.photos[entry.name] = content

    def _tell(self, fault: Fault | None) -> None:
        if fault is not None:
            self.faults.append(fault)

    def _leads_out(self, link: Path, path: str) -> bool:
        """Say whether a link leads out of the book, and make a fault of it."""
        try:
            outside = not link.resolve().is_relative_to(self.root)
        except (OSError, RuntimeError):  # a ring of links; Python before 3.13 raises RuntimeError
            outside = True
        if outside:
            self._fault(path, "leads-out", "this link leads out of the book", "put the file itself here")
        return outside

    def _fault(self, path: str, code: str, message: str, help: str, severity: Severity = Severity.ERROR) -> None:
        self.faults.append(Fault(place=Place(file=path), code=code, message=message, help=help, severity=severity))


def _listed(folder: Path) -> Iterator[os.DirEntry[str]]:
    """List a folder by name, so that the same book is read alike on every disk."""
    with os.scandir(folder) as found:
        yield from sorted(found, key=lambda entry: entry.name)


def _read(entry: os.DirEntry[str], most: int) -> bytes | None:
    """Read a file's first bytes; None for what is no regular file, which might never end."""
    if not stat.S_ISREG(entry.stat().st_mode):
        return None
    with open(entry.path, "rb", buffering=0) as file:  # noqa: PTH123 - 2,000 files: a Path each takes as long as reading
        pieces = []
        while most > 0 and (piece := file.read(min(most, PIECE))):
            pieces.append(piece)
            most -= len(piece)
    return b"".join(pieces)


def _why(error: OSError) -> str:
    return (error.strerror or "no reason given").lower()
