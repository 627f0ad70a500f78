"""A small book with drying runs and draws, worked out by the real reader and the real sums.

The store is fixed and round: a freeze-dryer of five trays, a rack of eight; jars of half a litre and of two US quarts,
pouches and bags of a litre. `book_of.LARDER` has the components.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from textwrap import dedent, indent

from tests.sums.book_of import KITCHEN, Told, component_files, told

from packlarder.book.book import Book
from packlarder.book.draw import Mark
from packlarder.book.read import read_book
from packlarder.faults import Fault
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.larder import reckon_larder
from packlarder.reckon.larder_records import LarderSums, Standing
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.store import StoreSums, reckon_store

RUN = "run"
STORE = """\
dryers:
  freezer: {dries: freeze-dried, trays: 5, a tray: 1 kg, deep: 15 mm, takes: 36 h}
  rack: {dries: air-dried, trays: 8, a tray: 500 g, takes: 10 h}
containers:
  jar: {kind: jar, holds: 500 mL}
  two-quart jar: {kind: jar, holds: 1893 mL}
  pouch: {kind: pouch, holds: 1 L}
  bag: {kind: bag, holds: 1 L}
"""
TWO_JARS = "put in: [{in: jar, holds: 110 g}, {in: jar, holds: 111 g}]"
EGG = f"egg powder: {{fresh: 900 g, trays: 2, dry: 221 g, tested: no lighter, {TWO_JARS}}}"
"""18 large eggs as they came out, in two jars: run/a1 with 110 g and run/a2 with 111 g."""
RICE = "rice: {fresh: 1 kg, trays: 2, dry: 320 g, tested: no lighter, put in: [{in: pouch, holds: 320 g}]}"
"""A kilogram of boiled rice as it came out, in a pouch."""
CHEESE = "was: cheese, cheddar\nwent in: as it is\ncontains: [milk]\ndried: freeze-dried\nform: crumbs"
MIX = "made of: [{egg powder: 100 g}, {milk powder: 50 g}]\ncontains: [egg, milk]\nform: powder"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stored:
    """A book with its runs, and the larder on a day. `faults` are empty unless some were expected."""

    book: Book
    store: StoreSums
    larder: LarderSums
    faults: tuple[Told, ...]

    def batch(self, index: int = 0, run: str = RUN) -> BatchSums:
        """Give one batch of a run."""
        return self.store.runs[run].batches[index]

    def jar(self, number: int = 1, run: str = RUN, batch: str = "a") -> Standing:
        """Give one container as it stands, an empty one too."""
        return self.larder.by_mark[Mark(run, batch, number)]

    def component(self, id: str) -> ComponentSums:
        """Give a component with what its batches taught."""
        return self.store.components[id]

    @property
    def codes(self) -> list[str]:
        """Give the codes of the faults."""
        return [fault.code for fault in self.faults]


def run_of(*batches: str, dryer: str = "freezer", loaded: str = "2027-03-12 08:30", took: str = "36 h") -> str:
    """Write a drying run; each batch in YAML's short form, `egg powder: {fresh: 900 g, ...}`."""
    keys = {"loaded": loaded, "dryer": dryer, "took": took}
    head = "".join(f"{key}: {value}\n" for key, value in keys.items() if value)
    return f"{head}on the trays:\n" + "".join(f"  - {batch}\n" for batch in batches)


def drawn_on(day: str, *draws: str, what_for: str = "") -> str:
    """Write a file of draws; each one without its braces, `from: run/a1, took: 60 g`."""
    head = f"date: {day}\n" + (f"for: {what_for}\n" if what_for else "")
    return f"{head}drawn:\n" + "".join(f"  - {{{draw}}}\n" for draw in draws)


def store_of(
    *runs: str,
    draws: tuple[str, ...] = (),
    larder: str = "",
    on: date = date(2027, 6, 1),
    fails: bool | None = False,
    **components: str,
) -> Stored:
    """Work out runs (called `run`, `run-2`, ...), draws and the larder on a day.

    `larder` holds keys of book.yaml's `larder`, `components` further components by id (an underscore is a hyphen).
    Fails if there are faults, unless `fails` expects them; None takes what comes.
    """
    ids = [RUN, *(f"{RUN}-{number}" for number in range(2, len(runs) + 1))]
    named = {f"batches/{id}.yaml": run for id, run in zip(ids, runs, strict=False)}
    named |= {f"draws/{number:03}.yaml": text for number, text in enumerate(draws)}
    return store_in(named, larder=larder, on=on, fails=fails, **components)


def store_in(
    named: Mapping[str, str], *, larder: str = "", on: date, fails: bool | None = False, **components: str
) -> Stored:
    """Work out a book of which the files of runs and draws are given by their paths."""
    kept = f"larder:\n{indent(dedent(larder), '  ')}\n" if larder else ""
    files = {"book.yaml": f"{KITCHEN}{STORE}{kept}".encode(), **component_files(components)}
    files |= {path: text.encode() for path, text in named.items()}
    read = read_book(files)
    assert read.book is not None, read.faults
    assert not read.faults, [(fault.place, fault.message, fault.help) for fault in read.faults]
    store = reckon_store(read.book, on)
    stock, found = reckon_larder(read.book, store.components, store.runs, on)
    faults = tuple(told(files, fault) for fault in (*store.faults, *found))
    assert fails in (None, bool(faults)), faults or "faults were expected, and there are none"
    return Stored(book=read.book, store=store, larder=stock, faults=faults)


def only(found: Stored) -> tuple[str, str, str]:
    """Give code, marked words and message of the one fault, with plain blanks."""
    (fault,) = found.faults
    return fault.code, fault.marked, fault.message.replace("\u00a0", " ")


def refused(run: str) -> Fault:
    """Give the one fault for which a run is not even read."""
    faults = read_book({"book.yaml": b"", "batches/run.yaml": run.encode()}).faults
    (fault,) = [one for one in faults if one.place.file == "batches/run.yaml"]
    return fault
