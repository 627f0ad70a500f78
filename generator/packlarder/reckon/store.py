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
from packlarder.reckon.runs import reckon_runs, slips_of_runs, with_components


@dataclass(frozen=True, slots=True, kw_only=True)
class StoreSums:
    """Every component with what its batches taught, every run, and what was learnt, by id."""

    components: Mapping[str, ComponentSums]
    runs: Mapping[str, RunSums]
    learnt: Mapping[str, Learnt]
    faults: tuple[Fault, ...]


def reckon_store(book: Book, on: date) -> StoreSums:
    """Work out components and runs, and again with what batches loaded by a day taught, until they teach nothing new.

    What a batch teaches changes the mixes that hold its component, and may so change batches of theirs. No component
    holds itself, and traces only become more: that comes to an end.
    """
    components, faults = reckon_components(book)
    runs = reckon_runs(book, components)
    known: Mapping[str, Learnt] = {}
    while (learnt := learn(runs.values(), on)) != known:
        known = learnt
        components, faults = reckon_components(book, learnt)
        runs = with_components(runs, components)
    slips = slips_of_runs(book, runs)
    return StoreSums(components=components, runs=runs, learnt=learnt, faults=(*faults, *slips))
