"""Reading the tables that lie beside these modules: rows of text, each file once."""

import csv
import io
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType


@cache
def read_rows(table: str) -> tuple[Mapping[str, str], ...]:
    """Give the rows of a packed CSV table in their order, each as column name -> text."""
    text = files("packlarder.figures").joinpath(table).read_text(encoding="utf-8")
    columns, *rows = csv.reader(io.StringIO(text), strict=True)
    return tuple(MappingProxyType(dict(zip(columns, row, strict=True))) for row in rows)


def listed(cell: str) -> tuple[str, ...]:
    """Split a cell that lists words with `;` between them; an empty cell lists none."""
    return tuple(word for word in cell.split(";") if word)


def number_or_unknown(cell: str) -> float | None:
    """Read a number; an empty cell means unknown and never nought."""
    return float(cell) if cell else None
