"""The stage of drying runs and the larder: their sums on a day, held against the rules. Prints nothing."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from packlarder.book.book import BATCHES_FOLDER, DRAWS_FOLDER, Book, component_place, run_place, spoken
from packlarder.cli.stages import BookRead
from packlarder.faults import Fault
from packlarder.safety.whole import CheckedComponents, CheckedStore, check_components


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderOpened:
    """A book that was read, with its components, runs and larder; `faults` are those of both."""

    folder: Path
    read: BookRead
    book: Book
    components: CheckedComponents
    faults: tuple[Fault, ...]

    @property
    def day(self) -> date:
        """Give the day it was worked out for."""
        return self.read.day

    @property
    def store(self) -> CheckedStore:
        """Give its runs and its larder."""
        return self.components.store

    def about_run(self, id: str) -> tuple[Fault, ...]:
        """Give the faults that concern a run: in its file, and in the files of its components."""
        run = self.book.runs.get(id)
        names = () if run is None else tuple(batch.name for batch in run.on_the_trays)
        return self._in({run_place(id).file, *self._component_files(names)})

    def about_larder(self) -> tuple[Fault, ...]:
        """Give the faults that concern the larder: in the files of all runs, of their components, and of all draws."""
        names = {batch.name for run in self.book.runs.values() for batch in run.on_the_trays}
        folders = (f"{BATCHES_FOLDER}/", f"{DRAWS_FOLDER}/")
        texts = self.read.files.texts
        return self._in({*(file for file in texts if file.startswith(folders)), *self._component_files(names)})

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


def open_larder(folder: Path, found: BookRead, book: Book) -> LarderOpened:
    """Work out the larder of a book that was read from a folder."""
    components = check_components(book, found.day)
    faults = (*found.faults, *components.slips, *components.store.faults)
    return LarderOpened(folder=folder, read=found, book=book, components=components, faults=faults)
