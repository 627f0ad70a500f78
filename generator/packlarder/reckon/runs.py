"""Drying runs worked out: counts as weights, moisture, containers with their marks, and what can not be true."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import timedelta
from types import MappingProxyType

from packlarder.book.batch import Batch, BatchDetail
from packlarder.book.book import Book, run_place
from packlarder.book.draw import Mark
from packlarder.book.drying_run import DryingRun
from packlarder.faults import Fault, Gap, Place
from packlarder.figures.allergens import Allergen
from packlarder.measure import Quantity, written
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.batch_slips import slips_of_run, unknown_component
from packlarder.reckon.drying import dried
from packlarder.reckon.measures import grams_per, in_grams
from packlarder.reckon.records import ComponentSums


def reckon_runs(book: Book, components: Mapping[str, ComponentSums]) -> tuple[Mapping[str, RunSums], tuple[Fault, ...]]:
    """Work out every drying run of a book, oldest first, and find what can not be true of it.

    A batch of an unknown component is left out and gives a fault.
    """
    faults: list[Fault] = []
    runs: dict[str, RunSums] = {}
    for id, model in sorted(book.runs.items(), key=lambda run: (run[1].loaded, run[0])):
        runs[id] = RunSums(
            id=id,
            model=model,
            dryer=book.household.dryers.get(model.dryer),
            place=run_place(id),
            batches=tuple(_batches(book, components, id, model)),
        )
        faults += _unknown(book, id, model)
        faults += slips_of_run(runs[id], book.household)
    return MappingProxyType(runs), tuple(faults)


def _unknown(book: Book, id: str, model: DryingRun) -> Iterator[Fault]:
    for index, batch in enumerate(model.on_the_trays):
        if book.component_id(batch.name) is None and not book.has_unread_component(batch.name):
            yield unknown_component(book, batch.name, _place(id, index, batch))


def _batches(book: Book, components: Mapping[str, ComponentSums], id: str, model: DryingRun) -> Iterator[BatchSums]:
    """Work out the batches of a run; each may hold traces of what lay on the other trays."""
    known = [components.get(book.component_id(batch.name) or "") for batch in model.on_the_trays]
    filled = 0
    for index, (batch, component) in enumerate(zip(model.on_the_trays, known, strict=True)):
        if component is not None:
            beside = frozenset().union(*(other.allergens for other in known if other is not None))
            yield _batch(
                _Loaded(run=id, index=index, model=model, batch=batch),
                component,
                _containers(book, id, index, batch, filled),
                (beside | frozenset(batch.detail.traces)) - component.allergens,
            )
        filled += len(batch.detail.put_in)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Loaded:
    """A batch as written, and where."""

    run: str
    index: int
    model: DryingRun
    batch: Batch


def _batch(
    loaded: _Loaded,
    component: ComponentSums,
    containers: tuple[FilledContainer, ...],
    traces: frozenset[Allergen],
) -> BatchSums:
    model, detail = loaded.model, loaded.batch.detail
    fresh_g = _grams(detail.fresh, component)
    dry_g = None if detail.dry is None else detail.dry.base
    return BatchSums(
        run=loaded.run,
        index=loaded.index,
        model=loaded.batch,
        component=component,
        place=_place(loaded.run, loaded.index, loaded.batch),
        dryer=model.dryer,
        loaded=model.loaded,
        hours=None if model.took is None else model.took.base / 60,
        dried_on=None if dry_g is None else (model.loaded + timedelta(minutes=_minutes(model))).date(),
        bought_g=_grams(detail.bought, component),
        fresh_g=fresh_g,
        dry_g=dry_g,
        dried=None if fresh_g is None or dry_g is None else dried(component, fresh_g, dry_g, detail.tested),
        grams_per=grams_per((measure, weight.base) for measure, weight in detail.weighs.items()),
        containers=containers,
        traces=traces,
        gaps=tuple(_uncounted(detail, component)),
    )


def _minutes(model: DryingRun) -> float:
    return 0.0 if model.took is None else model.took.base


def _containers(book: Book, run: str, index: int, batch: Batch, before: int) -> tuple[FilledContainer, ...]:
    """Give a batch's containers; `before` is how many the run has filled from batches before it."""
    put_in = batch.detail.put_in
    return tuple(
        FilledContainer(
            mark=Mark(run, before + nth),
            nth=nth,
            of=len(put_in),
            filled=filled,
            size=book.household.containers.get(filled.in_),
            place=_place(run, index, batch).at("put in", nth - 1),
        )
        for nth, filled in enumerate(put_in, 1)
    )


def _place(run: str, index: int, batch: Batch) -> Place:
    return run_place(run).at("on the trays", index, batch.name)


def _grams(fresh: Quantity | None, component: ComponentSums) -> float | None:
    return None if fresh is None else in_grams(fresh, component.fresh_grams_per)


def _uncounted(detail: BatchDetail, component: ComponentSums) -> Iterator[Gap]:
    if detail.fresh is not None and _grams(detail.fresh, component) is None:
        noun = detail.fresh.noun or "piece"
        yield Gap(
            what=f"the weight of {written(detail.fresh)} of it fresh",
            missing=f"weigh 1 {noun} and write `counts: {{1 {noun}: ... g}}` in components/{component.id}.yaml",
        )
