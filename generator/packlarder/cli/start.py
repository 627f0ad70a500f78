"""The command `start`: a new book, with a commented example of each kind of file."""

from collections.abc import Iterator
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

from packlarder.cli import texts
from packlarder.cli.options import Misuse, Options
from packlarder.cli.schemas import write_schemas
from packlarder.cli.stages import read
from packlarder.disk.writing import NotWritten, create_file

RENAMED = {"gitignore": ".gitignore"}
"""Files that sleep under another name in the package, where they would take effect."""
MAY_BE_THERE = frozenset({".git"})


def start(options: Options) -> int:
    """Make a book. Raises Misuse where the folder holds files already."""
    folder = options.folder
    if folder.exists() and not folder.is_dir():
        raise Misuse(texts.NO_DIRECTORY.format(folder=folder))
    try:
        if folder.is_dir() and {entry.name for entry in folder.iterdir()} - MAY_BE_THERE:
            raise Misuse(texts.NOT_EMPTY.format(folder=folder))
        for path, content in starter_files():
            create_file(folder / path, content)
    except OSError as error:
        raise NotWritten(f"{folder} can not be written: {(error.strerror or str(error)).lower()}") from error
    write_schemas(folder, read(folder).book)
    print(texts.STARTED.format(folder=folder, program=texts.PROGRAM))
    return 0


def starter_files() -> Iterator[tuple[Path, bytes]]:
    """Give every file of the example book, by its path in the book."""
    yield from _walk(files("packlarder") / "starter" / "book", Path())


def _walk(folder: Traversable, path: Path) -> Iterator[tuple[Path, bytes]]:
    for entry in sorted(folder.iterdir(), key=lambda one: one.name):
        if entry.is_dir():
            yield from _walk(entry, path / entry.name)
        else:
            yield path / RENAMED.get(entry.name, entry.name), entry.read_bytes()
