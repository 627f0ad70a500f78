"""Components and drying runs together: what batches teach goes back into the components they are of."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from packlarder.book.book import Book
from packlarder.faults import Fault
from packlarder.reckon.batch_records import RunSums
from packlarder.reckon.components import reckon_components
from packlarder.reckon.learnt import Learnt, learn
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.runs import reckon_runs


@dataclass(frozen=True, slots=True, kw_only=True)
class StoreSums:
    """Every component with what its batches taught, every run, and what was learnt, by id."""

    components: Mapping[str, ComponentSums]
    runs: Mapping[str, RunSums]
    learnt: Mapping[str, Learnt]
    faults: tuple[Fault, ...]


def reckon_store(book: Book, on: date) -> StoreSums:
    """Work out components and runs; where batches dried by a day have taught something, both once more with it."""
    components, faults = reckon_components(book)
    if not book.runs:
        return StoreSums(components=components, runs={}, learnt={}, faults=faults)
    runs, _ = reckon_runs(book, components)
    learnt = learn(runs.values(), on)
    components, faults = reckon_components(book, learnt)
    runs, slips = reckon_runs(book, components)
    return StoreSums(components=components, runs=runs, learnt=learnt, faults=(*faults, *slips))
