"""What a book has dried and stored, as sheets: its larder and its runs, and what there is of each component."""

from collections import defaultdict
from collections.abc import Mapping
from types import MappingProxyType

from packlarder.lazily import Anew, Kept
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.card import drying_card
from packlarder.reckon.learnt import NOTHING_LEARNT
from packlarder.safety.whole import CheckedBook, CheckedStore
from packlarder.sheets.history import history
from packlarder.sheets.larder import larder_sheet, level_row
from packlarder.sheets.run import run_index, run_sheet
from packlarder.sheets.shelf import shelf_lines
from packlarder.sheets.store_data import LarderData, RunData, larder_data, run_data
from packlarder.sheets.store_sheet import LarderSheet, RunIndex, RunSheet, Stored

LARDER = "larder"
"""The key of the larder among the records; those of runs begin with `batches/`."""
BATCHES = "batches/"


def book_larder(checked: CheckedBook) -> LarderSheet | None:
    """Build the sheet of a book's larder; None for a book without runs."""
    store = checked.store
    return larder_sheet(store.larder, store.larder_findings) if store.runs else None


def book_run_index(checked: CheckedBook) -> RunIndex | None:
    """List the runs of a book; None for a book without any."""
    return run_index(checked.store.runs.values()) if checked.store.runs else None


def book_runs(checked: CheckedBook) -> Mapping[str, RunSheet]:
    """Give the sheets of runs by id, each made when somebody asks for it."""
    return Kept(checked.store.runs, lambda id: _run(checked.store, id))


def _run(store: CheckedStore, id: str) -> RunSheet:
    return run_sheet(store.runs[id], store.run_findings[id], store.larder.by_mark, store.larder.on)


def book_records(
    checked: CheckedBook, runs: Mapping[str, RunSheet], edition: str
) -> Mapping[str, LarderData | RunData]:
    """Give larder and runs as other programs get them, by `larder` and `batches/<id>`, each made anew."""
    store = checked.store

    def record(key: str) -> LarderData | RunData:
        if key == LARDER:
            return larder_data(store.larder, edition=edition)
        id = key.removeprefix(BATCHES)
        return run_data(store.runs[id], runs[id], store.larder, edition=edition)

    return Anew((LARDER, *(f"{BATCHES}{id}" for id in store.runs)) if store.runs else (), record)


def all_stored(checked: CheckedBook) -> Mapping[str, Stored]:
    """Tell of each component what was dried of it by the larder's day, and what is left; by id."""
    store = checked.store
    if not store.runs:
        return MappingProxyType({})
    batches: dict[str, list[BatchSums]] = defaultdict(list)
    for run in sorted(store.runs.values(), key=lambda run: run.model.loaded):
        for batch in run.batches if run.model.loaded.date() <= store.larder.on else ():
            batches[batch.component.id].append(batch)
    told = {id: _stored(checked, id, batches[id]) for id in checked.components}
    return MappingProxyType({id: one for id, one in told.items() if one is not None})


def _stored(checked: CheckedBook, id: str, batches: list[BatchSums]) -> Stored | None:
    store, component = checked.store, checked.components[id]
    card = drying_card(component, batches, checked.book.household)
    held = store.larder.in_store.get(id)
    told = history(batches, store.learnt.get(id, NOTHING_LEARNT), card)
    if told is None and held is None:
        return None
    on = store.larder.on
    return Stored(
        history=told,
        level=None if held is None else level_row(held, on),
        shelf=() if held is None else shelf_lines(held.standing, on),
    )
