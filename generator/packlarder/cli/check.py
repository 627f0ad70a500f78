"""The command `check`: all that is wrong in a book."""

import json
import sys
from typing import TypedDict

from packlarder.book.show_faults import Record, as_records
from packlarder.cli import texts
from packlarder.cli.console import print_json, show_faults
from packlarder.cli.crew import check_together
from packlarder.cli.options import Options
from packlarder.cli.stages import BookRead, BookWorked, book_folder
from packlarder.faults import Severity, has_errors


class Checked(TypedDict):
    """What `check --json` gives."""

    dishes: int
    components: int
    errors: int
    warnings: int
    faults: list[Record]


def check(options: Options) -> int:
    """Say everything that is wrong; 1 if any of it is an error."""
    worked = check_together(book_folder(options), options.on)
    if options.json:
        print_json(json.dumps(_checked(worked), ensure_ascii=False, indent=2))
    else:
        _tell(worked)
    return int(has_errors(worked.faults))


def _checked(worked: BookWorked) -> Checked:
    records = as_records(worked.faults, worked.read.files.texts, worked.shown)
    dishes, components = _size(worked.read)
    return Checked(
        dishes=dishes,
        components=components,
        errors=sum(record["severity"] == Severity.ERROR for record in records),
        warnings=sum(record["severity"] == Severity.WARNING for record in records),
        faults=records,
    )


def _tell(worked: BookWorked) -> None:
    if worked.faults:
        show_faults(worked.faults, worked.read.files.texts, worked.shown, sys.stdout)
    if not has_errors(worked.faults):
        says = texts.NO_ERRORS if worked.faults else texts.ALL_WELL
        print(says.format(counts=texts.counts(*_size(worked.read))))


def _size(found: BookRead) -> tuple[int, int]:
    return (0, 0) if found.book is None else (len(found.book.dishes), len(found.book.components))
