"""Soon."""

from pathlib import Path

from packlarder.faults import Fault
from packlarder.sheets.book_sheet import BookSheet


def build_data(sheet: BookSheet, *, out: Path) -> tuple[Fault, ...]:
    return ()
