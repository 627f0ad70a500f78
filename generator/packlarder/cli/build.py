"""The command `build`: everything that comes of a book, in one folder."""

import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from packlarder.book.household import Household
from packlarder.cli import texts
from packlarder.cli.console import progress, say, show_faults
from packlarder.cli.crew import Crew, work_together
from packlarder.cli.downloads import PRINT, downloads
from packlarder.cli.label_sheets import usual_sheet
from packlarder.cli.options import Misuse, Options
from packlarder.cli.rings import sweep_rings
from packlarder.cli.schemas import write_schemas
from packlarder.cli.stages import DEFAULT_BOOK, BookWorked, book_folder
from packlarder.disk.theme import theme_folder
from packlarder.disk.writing import refusal, whole_or_nothing
from packlarder.faults import Fault, has_errors
from packlarder.publish import file_names
from packlarder.sheets.book_sheet import BookSheet, BookTrips

DEFAULT_OUT = "book-out"
"""Where a book in the folder `recipes` is written, beside it; others bear their own names: `our-book-out`."""
Told = Callable[[float], None]
"""Told which share of its work a job has done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """One output: its name, how long it takes beside the others, and what writes it and gives what is wrong."""

    name: str
    weight: int
    run: Callable[[Told], tuple[Fault, ...]]


class _Stopped(Exception):
    """An output found an error in the book; what was written so far is let go."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__()
        self.faults = faults


def build(options: Options) -> int:
    """Write all outputs of a book; 1 if it has errors, and then nothing is written."""
    folder = book_folder(options)
    out = options.out or default_out(folder.resolve())
    reason = refusal(out, folder)
    if reason:
        raise Misuse(f"{reason}.")
    with work_together(folder, options.on, writes=True) as (worked, crew):
        if crew is None or not worked.sound:
            return _stopped(worked, worked.faults, out)
        write_schemas(folder, crew.checked.book)
        return _build(worked, crew, out)


def _build(worked: BookWorked, crew: Crew, out: Path) -> int:
    """Write all outputs of a sound book."""
    sizes = crew.checked.book.household.print
    sheet = crew.sheet(downloads(sizes, crew.checked.trips))
    try:
        with whole_or_nothing(out) as fresh:
            found = _write(jobs(sheet, crew, sizes=sizes, theme=theme_folder(), out=fresh))
    except _Stopped as stopped:
        return _stopped(worked, (*worked.faults, *stopped.faults), out)
    faults = (*worked.faults, *found)
    if faults:
        show_faults(faults, worked.read.files.texts, worked.shown, sys.stderr)
    print(texts.WRITTEN.format(counts=texts.counts(len(sheet.dishes), len(sheet.components)), out=_shown(out)))
    return 0


def default_out(book: Path) -> Path:
    """Give the folder that a book is written to unless another is named: beside it, by its name."""
    return book.parent / (DEFAULT_OUT if book.name == DEFAULT_BOOK else f"{book.name}-out")


def jobs(sheet: BookSheet, crew: Crew, *, sizes: tuple[str, ...], theme: Path, out: Path) -> Iterator[Job]:
    """Give the outputs of a book in the order in which they are written."""
    from packlarder.publish.data import build_data
    from packlarder.publish.ebook import build_ebook
    from packlarder.publish.paper import build_booklets
    from packlarder.publish.single import build_single

    def site(told: Told) -> tuple[Fault, ...]:
        return crew.write_site(sheet, theme=theme, out=out, progress=lambda done, of: told(done / of))

    def booklet(size: str) -> Job:
        def run(_told: Told) -> tuple[Fault, ...]:
            sweep_rings()
            return build_booklets(sheet.field, sizes=(size,), theme=theme, out=out / PRINT)

        return Job(name=texts.JOB_BOOKLET.format(size=size), weight=10, run=run)

    yield Job(name=texts.JOB_SITE, weight=4, run=site)
    yield from map(booklet, sizes)
    trips = sheet.trips
    if trips is not None:
        yield from trip_jobs(trips, crew.checked.book.household, theme=theme, out=out / PRINT)
    yield Job(name=texts.JOB_POCKET, weight=1, run=lambda _told: build_single(sheet, theme=theme, out=out))
    yield Job(name=texts.JOB_EBOOK, weight=1, run=lambda _told: build_ebook(sheet, theme=theme, out=out))
    yield Job(name=texts.JOB_DATA, weight=1, run=lambda _told: build_data(sheet, out=out))
    if trips is not None and trips.data:
        from packlarder.publish.trip_files import build_trip_files  # its calendar is slow to load

        data = trips.data
        yield Job(name=texts.JOB_TRIPS, weight=1, run=lambda _told: build_trip_files(data, sheet.title, out=out))


def trip_jobs(trips: BookTrips, household: Household, *, theme: Path, out: Path) -> Iterator[Job]:
    """Give what is printed for each trip that is planned: its booklet in each size, the labels of its packs."""
    from packlarder.publish.label_stock import Purpose
    from packlarder.publish.labels import LabelJob, build_labels
    from packlarder.publish.trip_paper import build_trip_booklets

    def booklet(id: str, size: str) -> Job:
        def run(_told: Told) -> tuple[Fault, ...]:
            return build_trip_booklets(trips.booklets[id], sizes=(size,), theme=theme, out=out)

        return Job(name=texts.JOB_TRIP_BOOKLET.format(id=id, size=size), weight=4, run=run)

    def labels(id: str) -> Job:
        def run(_told: Told) -> tuple[Fault, ...]:
            stock = usual_sheet(household.print, Purpose.PACK)
            job = LabelJob(purpose=Purpose.PACK, stock=stock, name=file_names.TRIP.format(id=id))
            return tuple(
                fault for made in build_labels(trips.labels[id], (job,), theme=theme, out=out) for fault in made.faults
            )

        return Job(name=texts.JOB_TRIP_LABELS.format(id=id), weight=2, run=run)

    for id in trips.booklets:
        yield from (booklet(id, size) for size in household.print)
        yield labels(id)


def _write(work: Iterator[Job]) -> tuple[Fault, ...]:
    """Do the jobs, and show how far they are. Raises _Stopped at the first that finds an error."""
    held = list(work)
    faults: tuple[Fault, ...] = ()
    with progress(sum(job.weight for job in held)) as show:
        done = 0
        for job in held:
            faults = (*faults, *job.run(_teller(job, done, show)))
            if has_errors(faults):
                raise _Stopped(faults)
            done += job.weight
    return faults


def _teller(job: Job, before: int, show: Callable[[str, float], None]) -> Told:
    """Give a job what it tells its share to; `before` is the weight of the jobs already done."""
    show(job.name, before)
    return lambda share: show(job.name, before + share * job.weight)


def _stopped(worked: BookWorked, faults: tuple[Fault, ...], out: Path) -> int:
    show_faults(faults, worked.read.files.texts, worked.shown, sys.stderr)
    say(texts.OLD_STAYS.format(out=_shown(out)) if out.exists() else texts.NOTHING_WRITTEN)
    return 1


def _shown(out: Path) -> str:
    """Give a folder as it is reached from the current one, where that is shorter."""
    here = Path.cwd()
    return str(out.relative_to(here)) if out.is_relative_to(here) else str(out)
