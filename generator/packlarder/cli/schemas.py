"""The JSON Schemas beside a book, from which editors complete and check while one types."""

from contextlib import suppress
from pathlib import Path

from packlarder.book.book import Book
from packlarder.disk.writing import write_changed


def write_schemas(folder: Path, book: Book | None) -> None:
    """Write the schemas into a book's hidden folder, those that changed; where that is forbidden, go without."""
    from packlarder.book.schema import SCHEMA_FOLDER, json_schemas

    with suppress(OSError):
        for name, text in json_schemas(book).items():
            write_changed(folder / SCHEMA_FOLDER / name, text.encode())
