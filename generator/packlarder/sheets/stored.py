"""What a book has dried and stored, as sheets: its larder and its runs, and what there is of each component."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass

from packlarder.lazily import Anew, Kept
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.card import drying_card
from packlarder.reckon.learnt import NOTHING_LEARNT
from packlarder.safety.whole import CheckedBook, CheckedStore
from packlarder.sheets.history import history
from packlarder.sheets.larder import NOTHING_RESERVED, larder_sheet, level_row
from packlarder.sheets.run import run_index, run_sheet
from packlarder.sheets.shelf import Shelf
from packlarder.sheets.store_data import LarderData, RunData, larder_data, run_data
from packlarder.sheets.store_sheet import LarderSheet, RunIndex, RunSheet, Stored

LARDER = "larder"
"""The key of the larder among the records; those of runs begin with `batches/`."""
BATCHES = "batches/"


@dataclass(frozen=True, slots=True, kw_only=True)
class StoredBook:
    """What is published of a book's runs and larder, as `BookSheet` has it; `stored` goes by component."""

    larder: LarderSheet | None
    run_index: RunIndex | None
    runs: Mapping[str, RunSheet]
    records: Mapping[str, LarderData | RunData]
    stored: Mapping[str, Stored]


def stored_book(checked: CheckedBook, edition: str, reserved_g: Mapping[str, float] = NOTHING_RESERVED) -> StoredBook:
    """Build the sheets of what a book has dried and stored; without runs there is nothing.

    `reserved_g` is what planned trips take of each component, by id.
    """
    store = checked.store
    if not store.runs:
        return StoredBook(larder=None, run_index=None, runs={}, records={}, stored={})
    shelf = Shelf(store.larder.on)
    runs = Kept(store.runs, lambda id: _run(store, id, shelf))
    return StoredBook(
        larder=larder_sheet(store.larder, store.larder_findings, shelf, reserved_g),
        run_index=run_index(store.runs.values()),
        runs=runs,
        records=_records(store, runs, edition),
        stored=_all_stored(checked, shelf),
    )


def _run(store: CheckedStore, id: str, shelf: Shelf) -> RunSheet:
    return run_sheet(store.runs[id], store.run_findings[id], store.larder.by_mark, store.larder.on, shelf)


def _records(store: CheckedStore, runs: Mapping[str, RunSheet], edition: str) -> Mapping[str, LarderData | RunData]:
    """Give larder and runs as other programs get them, by `larder` and `batches/<id>`, each made anew."""

    def record(key: str) -> LarderData | RunData:
        if key == LARDER:
            return larder_data(store.larder, edition=edition)
        id = key.removeprefix(BATCHES)
        return run_data(store.runs[id], runs[id], store.larder, edition=edition)

    return Anew((LARDER, *(f"{BATCHES}{id}" for id in store.runs)), record)


def _all_stored(checked: CheckedBook, shelf: Shelf) -> Mapping[str, Stored]:
    """Tell of each component what was dried of it by the larder's day, and what is left; by id."""
    batches: dict[str, list[BatchSums]] = defaultdict(list)
    for run in sorted(checked.store.runs.values(), key=lambda run: run.model.loaded):
        for batch in run.batches if run.model.loaded.date() <= shelf.on else ():
            batches[batch.component.id].append(batch)
    told = {id: _stored(checked, id, batches[id], shelf) for id in checked.components}
    return {id: one for id, one in told.items() if one is not None}


def _stored(checked: CheckedBook, id: str, batches: list[BatchSums], shelf: Shelf) -> Stored | None:
    store = checked.store
    card = drying_card(checked.components[id], batches, checked.book.household)
    told = history(batches, store.learnt.get(id, NOTHING_LEARNT), card)
    held = store.larder.in_store.get(id)
    if told is None and held is None:
        return None
    return Stored(
        history=told,
        level=None if held is None else level_row(held, shelf.on),
        shelf=() if held is None else shelf.lines(held.standing),
    )
