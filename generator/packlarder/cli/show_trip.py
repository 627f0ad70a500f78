"""The command `show trip`: one trip, worked out, as text or data."""

import json
import sys
from pathlib import Path

from packlarder.book.book import spoken, trip_place
from packlarder.book.wording import closest
from packlarder.cli import texts
from packlarder.cli.console import print_json, say, show_faults
from packlarder.cli.larder_stage import shown
from packlarder.cli.options import Misuse, Options
from packlarder.cli.plain_trip import plain_trip
from packlarder.cli.stages import BookRead, book_folder, edition_of
from packlarder.cli.trip_stage import TripsOpened, open_trips
from packlarder.faults import Fault, has_errors
from packlarder.safety.whole import CheckedTrip
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.printed import System
from packlarder.sheets.trip_data import trip_data


def show_trip(options: Options) -> int:
    """Print a trip; 1 if it, or what it uses, is wrong, so that it can not be worked out or is not safe."""
    folder = book_folder(options)
    opened = open_trips(folder, options.on)
    if isinstance(opened, BookRead):
        return _faulty(opened, opened.faults, folder)
    id = trip_id(options.name, opened)
    own, trip = opened.about_trip(id), opened.trips.trips.get(id)
    if trip is None or has_errors(own):
        return _faulty(opened.read, own or opened.faults, folder)
    _mention_others(trip, opened)
    _give(trip, opened, as_json=options.json)
    return 0


def _faulty(found: BookRead, faults: tuple[Fault, ...], folder: Path) -> int:
    show_faults(faults, found.files.texts, shown(folder), sys.stderr)
    return 1


def _give(trip: CheckedTrip, opened: TripsOpened, *, as_json: bool) -> None:
    edition, household = edition_of(opened.read.files, opened.day), opened.book.household
    if as_json:
        data = trip_data(trip.sums, trip.findings, edition=edition, day=opened.day.isoformat())
        print_json(json.dumps(data, ensure_ascii=False, indent=2))
    else:
        foot = texts.FOOT.format(title=household.title, edition=edition, day=printed_day(opened.day))
        print(plain_trip(trip.sums, trip.findings, System(household.units.value), foot), end="")


def trip_id(name: str, opened: TripsOpened) -> str:
    """Find a trip by id or name; one whose file could not be read is found by id. Raises Misuse where there is none."""
    book = opened.book
    id = book.trip_ids.get(spoken(name))
    if id is not None:
        return id
    asked = spoken(name).replace(" ", "-")
    if trip_place(asked).file in opened.read.files.texts:
        return asked
    if not book.trips:
        raise Misuse(texts.NO_TRIPS)
    close = closest(asked, book.trips, least=0.4)
    hint = texts.DID_YOU_MEAN.format(word=close) if close else texts.some_of(book.trips)
    raise Misuse(texts.NO_TRIP.format(name=name, hint=hint))


def _mention_others(trip: CheckedTrip, opened: TripsOpened) -> None:
    """Say which trips might have taken food before this one, had they been sound; and that other things are wrong."""
    missed = [] if trip.sums.gone else opened.not_reckoned_before(trip.sums)
    if missed:
        say(texts.TOOK_NOTHING.format(trips=", ".join(missed)))
    elif has_errors(opened.faults):
        say(texts.OTHER_FAULTS)
