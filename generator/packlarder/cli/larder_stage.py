"""The stage of drying runs and the larder: their sums on a day, held against the rules. Prints nothing."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from types import MappingProxyType

from packlarder.book.book import BATCHES_FOLDER, DRAWS_FOLDER, Book, component_place, run_place, spoken
from packlarder.cli.stages import BookRead
from packlarder.faults import Fault
from packlarder.reckon.larder import reckon_larder
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.store import StoreSums, reckon_store
from packlarder.safety import Finding, check_larder, check_run, faults_of

NOTHING_DRAWN = ("empty-value", ("drawn",))
"""Code and place of the fault of a list of draws on which nothing stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderWorked:
    """Runs and larder on a day, what the rules found in each, and all that is wrong with them."""

    store: StoreSums
    larder: LarderSums
    run_findings: Mapping[str, tuple[Finding, ...]]
    larder_findings: tuple[Finding, ...]
    faults: tuple[Fault, ...]


def larder_of(book: Book, day: date) -> LarderWorked:
    """Work out the runs of a book and its larder on a day, and hold both against the rules."""
    store = reckon_store(book)
    larder, wrong = reckon_larder(book, store.components, store.runs, day)
    run_findings = {id: check_run(run, book.household) for id, run in store.runs.items()}
    larder_findings = check_larder(larder, book.household)
    found = [faults_of(findings) for findings in (*run_findings.values(), larder_findings)]
    return LarderWorked(
        store=store,
        larder=larder,
        run_findings=MappingProxyType(run_findings),
        larder_findings=larder_findings,
        faults=(*store.faults, *wrong, *(fault for faults in found for fault in faults)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderOpened:
    """A book that was read, with its larder on the day it is worked out for; `faults` are those of both."""

    folder: Path
    read: BookRead
    book: Book
    day: date
    worked: LarderWorked
    faults: tuple[Fault, ...]

    def about_run(self, id: str) -> tuple[Fault, ...]:
        """Give the faults that concern a run: in its file, and in the files of its components."""
        run = self.book.runs.get(id)
        names = () if run is None else tuple(batch.name for batch in run.on_the_trays)
        return self._in({run_place(id).file, *self._component_files(names)})

    def about_larder(self) -> tuple[Fault, ...]:
        """Give the faults that concern the larder: in the files of all runs, of their components, and of all draws.

        A list of draws that nobody has filled in yet, such as that of a stocktake, takes nothing away.
        """
        names = {batch.name for run in self.book.runs.values() for batch in run.on_the_trays}
        folders = (f"{BATCHES_FOLDER}/", f"{DRAWS_FOLDER}/")
        texts = self.read.files.texts
        own = self._in({*(file for file in texts if file.startswith(folders)), *self._component_files(names)})
        return tuple(fault for fault in own if (fault.code, fault.place.path) != NOTHING_DRAWN)

    def ids_in(self, folder: str) -> set[str]:
        """Give the ids that are taken in a folder, by files that could not be read too."""
        files = [file.removeprefix(f"{folder}/") for file in self.read.files.texts if file.startswith(f"{folder}/")]
        return {file.partition(".")[0] for file in files}

    def _in(self, files: Collection[str]) -> tuple[Fault, ...]:
        return tuple(fault for fault in self.faults if {fault.place.file, *(one.file for one in fault.also)} & {*files})

    def _component_files(self, names: Collection[str]) -> set[str]:
        ids = {name: self.book.component_id(name) for name in names}
        return {
            component_place(id).file if id else self.book.unread_components.get(spoken(name), "")
            for name, id in ids.items()
        }


def open_larder(folder: Path, found: BookRead, book: Book, day: date) -> LarderOpened:
    """Work out the larder of a book that was read from a folder."""
    worked = larder_of(book, day)
    return LarderOpened(
        folder=folder, read=found, book=book, day=day, worked=worked, faults=(*found.faults, *worked.faults)
    )


def shown(folder: Path) -> str:
    """Give a book's folder as it stands before the names of its files in messages."""
    return "" if folder == Path() else folder.as_posix()
