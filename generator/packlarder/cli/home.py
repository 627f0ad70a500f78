"""The command `home`: books what a trip took, what was left and what was learnt, and marks it gone; shown first."""

from collections.abc import Mapping
from datetime import date
from pathlib import Path

from packlarder.book.book import TRIPS_FOLDER, Book, spoken, trip_place
from packlarder.book.read import read_book
from packlarder.book.trip import Stands, Trip
from packlarder.cli import texts
from packlarder.cli.console import say
from packlarder.cli.home_files import Changed, changed_files
from packlarder.cli.home_said import learnt_said, left_said, marks_said, printable
from packlarder.cli.options import Misuse, Options
from packlarder.cli.plain_home import HomePage
from packlarder.cli.stages import BookRead, book_folder, read
from packlarder.cli.trip_asked import tell, trip_id
from packlarder.disk.together import FileChange, write_together
from packlarder.faults import Fault, Place, Severity, has_errors
from packlarder.reckon.trip.home import not_in_store, stayed_shut, taken_out
from packlarder.safety.whole import CheckedBook, check_book
from packlarder.sheets.printed import System


def home(options: Options) -> int:
    """Show what would be booked, or book it; 1 if the trip, or the book after it, is wrong. Raises Misuse."""
    printable((*options.left, *options.learnt))
    folder = book_folder(options)
    found = read(folder, options.on)
    if found.book is None:
        raise Misuse(texts.NO_BOOK.format(folder=folder, program=texts.PROGRAM))
    id = trip_id(options.name, found.book, found.files.texts)
    trip = found.book.trips.get(id)
    if trip is None:
        return _told(_about(id, found.faults), found.files.texts, folder)
    _refuse_unless_out(trip, found.day)
    checked = check_book(found.book, trip.starts)  # jars as they stood when the packs were filled
    if id not in checked.trips:
        return _told((*_about(id, found.faults), *_about(id, checked.faults)), found.files.texts, folder)
    return _booked(options, folder, found, found.book, checked, id)


def _booked(options: Options, folder: Path, found: BookRead, book: Book, checked: CheckedBook, id: str) -> int:
    sums = checked.trips[id].sums
    before = {mark: one.left_g for mark, one in checked.store.larder.by_mark.items()}
    not_taken = marks_said(options.not_taken, sums)
    taken = taken_out(sums, before, not_taken)
    left = left_said(options.left, sums, book)
    learnt = learnt_said(options.learnt, book)
    changed = changed_files(sums, book, found.files.texts, day=found.day, taken=taken, left=left, learnt=learnt)
    after = {**found.files.texts, **changed.after}
    if wrong := new_errors(found.files.texts, after, found.day, id):
        say(texts.HOME_REFUSED)
        return _told(wrong, after, folder)
    if options.write:
        _write(folder, changed)
    print(
        HomePage(sums, System(book.household.units.value)).text(
            taken=taken,
            shut=stayed_shut(sums, not_taken),
            lacked=not_in_store(sums),
            left=left,
            learnt=learnt,
            changed=changed,
            foot=texts.HOME_WRITTEN if options.write else texts.HOME_NOT_YET,
        ),
        end="",
    )
    for noted in _noted_before(book, book.trips[id], id):
        say(texts.HOME_NOTED_BEFORE.format(file=noted))
    return 0


def _refuse_unless_out(trip: Trip, day: date) -> None:
    """Raise Misuse for a trip that came home already, or has not begun."""
    if trip.came_home is not None:
        raise Misuse(texts.HOME_SINCE.format(name=trip.name, day=trip.came_home.date.isoformat()))
    if trip.stands is Stands.GONE:
        raise Misuse(texts.HOME_ALREADY.format(name=trip.name))
    if trip.starts > day:
        raise Misuse(texts.NOT_BEGUN.format(name=trip.name, starts=trip.starts.isoformat(), day=day.isoformat()))


def new_errors(before: Mapping[str, bytes], after: Mapping[str, bytes], day: date, id: str) -> tuple[Fault, ...]:
    """Give the errors of a book in which a trip came home that it had not before, by reading, sums and rules.

    What happened can be booked whatever it does to other trips: they are planned anew from what is left.
    """
    errors = tuple(fault for fault in _errors(after, day) if not _of_another_trip(fault, id))
    if not errors:
        return ()
    known = {_key(fault) for fault in _errors(before, day)}
    return tuple(fault for fault in errors if _key(fault) not in known)


def _errors(held: Mapping[str, bytes], day: date) -> tuple[Fault, ...]:
    found = read_book(held)
    faults = (*found.faults, *(check_book(found.book, day).faults if found.book else ()))
    return tuple(fault for fault in faults if fault.severity is Severity.ERROR)


def _of_another_trip(fault: Fault, id: str) -> bool:
    file = fault.place.file
    return file.startswith(f"{TRIPS_FOLDER}/") and file != trip_place(id).file


def _key(fault: Fault) -> tuple[Place, str]:
    """Give by what an error is known again: its figures may change with what was booked, its place and code do not."""
    return fault.place, fault.code


def _write(folder: Path, changed: Changed) -> None:
    write_together(
        [
            FileChange(path=folder / file, before=changed.before.get(file), after=data)
            for file, data in changed.after.items()
        ]
    )


def _noted_before(book: Book, trip: Trip, id: str) -> list[str]:
    """Name the files of draws that were noted for the trip before."""
    names = {spoken(trip.name), spoken(id)}
    return [f"draws/{one}.yaml" for one, draws in book.draws.items() if spoken(draws.for_) in names]


def _about(id: str, faults: tuple[Fault, ...]) -> tuple[Fault, ...]:
    """Give the faults that keep a trip from being worked out: its own, or all errors of the book where it has none."""
    own = tuple(fault for fault in faults if fault.place.file == trip_place(id).file)
    return own if has_errors(own) else tuple(fault for fault in faults if fault.severity is Severity.ERROR)


def _told(faults: tuple[Fault, ...], held: Mapping[str, bytes], folder: Path) -> int:
    tell(faults, held, folder)
    return 1
