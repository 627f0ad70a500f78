"""The format reference: every key of every file of a book, from the models that read them."""

from packlarder.sheets.book_sheet import FormatSection


def format_sections() -> tuple[FormatSection, ...]:
    """Give the sections of the format reference."""
    return ()
