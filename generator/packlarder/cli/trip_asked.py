"""The trip that a command is asked for: found by its id or name, worked out, and told of where something is wrong."""

import sys
from collections.abc import Mapping
from pathlib import Path

from packlarder.book.book import Book, spoken, trip_place
from packlarder.cli import texts
from packlarder.cli.console import say, show_faults
from packlarder.cli.hints import meant_or_known
from packlarder.cli.options import Misuse, Options
from packlarder.cli.stages import BookRead, book_folder, shown
from packlarder.cli.trip_stage import TripsOpened, open_trips
from packlarder.faults import Fault, has_errors
from packlarder.safety.whole import CheckedTrip


def trip_asked_for(options: Options) -> tuple[TripsOpened, CheckedTrip] | None:
    """Work out the trip that is asked for; None where it, or what it uses, is wrong, after saying what.

    What is wrong elsewhere in the book is only mentioned.
    """
    opened, trip, sound = trip_worked_out(options)
    return (opened, trip) if opened is not None and trip is not None and sound else None


def trip_worked_out(options: Options) -> tuple[TripsOpened | None, CheckedTrip | None, bool]:
    """Work out the trip that is asked for as far as that can be, and tell if it is sound, after saying what is not.

    The trip is None where it can not be worked out, or what it draws on is wrong; both are where there is no book.
    """
    folder = book_folder(options)
    opened = open_trips(folder, options.on)
    if isinstance(opened, BookRead):
        tell(opened.faults, opened.files.texts, folder)
        return None, None, False
    id = trip_id(options.name, opened.book, opened.read.files.texts)
    own, trip = opened.about_trip(id), opened.trips.trips.get(id)
    if trip is None or has_errors(own):
        tell(own or opened.faults, opened.read.files.texts, folder)
        wrong_elsewhere = has_errors([fault for fault in own if fault.place.file != trip_place(id).file])
        return opened, None if wrong_elsewhere else trip, False
    _mention_others(trip, opened)
    return opened, trip, True


def trip_id(name: str, book: Book, held: Mapping[str, bytes]) -> str:
    """Find a trip by id or name; one whose file could not be read is found by id. Raises Misuse where there is none."""
    id = book.trip_ids.get(spoken(name))
    if id is not None:
        return id
    asked = spoken(name).replace(" ", "-")
    if trip_place(asked).file in held:
        return asked
    if not book.trips:
        raise Misuse(texts.NO_TRIPS)
    raise Misuse(texts.NO_TRIP.format(name=name, hint=meant_or_known(asked, book.trips, least=0.4)))


def tell(faults: tuple[Fault, ...], held: Mapping[str, bytes], folder: Path) -> None:
    """Say what is wrong in the files of a book."""
    show_faults(faults, held, shown(folder), sys.stderr)


def _mention_others(trip: CheckedTrip, opened: TripsOpened) -> None:
    """Say which trips might have taken food before this one, had they been sound; and that other things are wrong."""
    missed = [] if trip.sums.gone else opened.not_reckoned_before(trip.sums)
    if missed:
        say(texts.TOOK_NOTHING.format(trips=", ".join(missed)))
    elif has_errors(opened.faults):
        say(texts.OTHER_FAULTS)
