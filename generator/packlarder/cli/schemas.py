"""The JSON Schemas beside a book, from which editors complete and check while one types."""

from pathlib import Path

from packlarder.safety.whole import CheckedBook

FOLDER = ".schema"


def write_schemas(book: Path, checked: CheckedBook) -> None:
    """Write the schemas into the book's hidden folder, those that changed; where that is forbidden, go without."""
