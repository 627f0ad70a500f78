"""The trip that a command is asked for, found by its id or name."""

import sys

from packlarder.book.book import Book, spoken, trip_place
from packlarder.book.wording import closest
from packlarder.cli import texts
from packlarder.cli.console import show_faults
from packlarder.cli.options import Misuse, Options
from packlarder.cli.stages import BookRead, book_folder, work_out
from packlarder.safety.whole import CheckedBook, CheckedTrip


def trip_asked_for(options: Options) -> tuple[BookRead, CheckedBook, CheckedTrip] | None:
    """Work out a book with the trip that is asked for; None where something is wrong in it, after saying what.

    What a trip takes from the larder hangs on all trips before it, and on the larder: so the whole book must be sound.
    """
    worked = work_out(book_folder(options), options.on)
    checked = worked.checked
    if checked is not None and trip_place(_as_id(options.name)).file not in worked.read.files.texts:
        _trip_id(options.name, checked.book)
    if checked is not None and worked.sound:
        return worked.read, checked, checked.trips[_trip_id(options.name, checked.book)]
    show_faults(worked.faults, worked.read.files.texts, worked.shown, sys.stderr)
    return None


def _trip_id(name: str, book: Book) -> str:
    """Find a trip by id or name. Raises Misuse where there is none."""
    id = book.trip_ids.get(spoken(name))
    if id is not None:
        return id
    close = closest(_as_id(name), book.trips, least=0.4)
    hint = texts.DID_YOU_MEAN.format(word=close) if close else texts.some_of(book.trips)
    raise Misuse(texts.NO_SUCH_TRIP.format(name=name, hint=hint))


def _as_id(name: str) -> str:
    return spoken(name).replace(" ", "-")
