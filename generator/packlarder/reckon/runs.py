"""Drying runs worked out: counts as weights, moisture, containers with their marks, what each batch lay beside."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from types import MappingProxyType
from typing import TypeAlias

from packlarder.book.batch import Batch, BatchDetail, Filled
from packlarder.book.book import Book, run_place
from packlarder.book.draw import LETTERS, Mark
from packlarder.book.drying_run import DryingRun
from packlarder.faults import Fault, Gap, Place
from packlarder.figures.allergens import Allergen
from packlarder.measure import Quantity, written
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.batch_slips import slips_of_run, unknown_component
from packlarder.reckon.drying import Dried, dried
from packlarder.reckon.measures import grams_per, in_grams
from packlarder.reckon.records import ComponentSums

Together: TypeAlias = Sequence[tuple[Batch, ComponentSums]]
"""What lay in a run together, as far as it is known."""


def reckon_runs(book: Book, components: Mapping[str, ComponentSums]) -> Mapping[str, RunSums]:
    """Work out every drying run of a book, oldest first; a batch of a component that is not known is left out."""
    oldest_first = sorted(book.runs.items(), key=lambda run: (run[1].loaded, run[0]))
    return MappingProxyType({id: _run(book, components, id, model) for id, model in oldest_first})


def with_components(runs: Mapping[str, RunSums], components: Mapping[str, ComponentSums]) -> Mapping[str, RunSums]:
    """Give runs anew whose components have learnt something since; all others stay as they were."""
    before = {batch.component.id: batch.component for run in runs.values() for batch in run.batches}
    changed = {id for id, sums in before.items() if components[id] != sums}
    return MappingProxyType(
        {
            id: _with(run, components) if any(one.component.id in changed for one in run.batches) else run
            for id, run in runs.items()
        }
    )


def slips_of_runs(book: Book, runs: Mapping[str, RunSums]) -> tuple[Fault, ...]:
    """Find what can not be true of drying runs, and names in them that no component bears."""
    found: list[Fault] = []
    for run in runs.values():
        found += _unknown(book, run)
        found += slips_of_run(run, book.household)
    return tuple(found)


def _unknown(book: Book, run: RunSums) -> Iterator[Fault]:
    for index, batch in enumerate(run.model.on_the_trays):
        if book.component_id(batch.name) is None and not book.has_unread_component(batch.name):
            yield unknown_component(book, batch.name, _place(run.place, index, batch))


def _place(run: Place, index: int, batch: Batch) -> Place:
    return run.at("on the trays", index, batch.name)


def _run(book: Book, components: Mapping[str, ComponentSums], id: str, model: DryingRun) -> RunSums:
    place = run_place(id)
    known = {
        index: (batch, component)
        for index, batch in enumerate(model.on_the_trays)
        if (component := components.get(book.component_id(batch.name) or "")) is not None
    }
    return RunSums(
        id=id,
        model=model,
        dryer=book.household.dryers.get(model.dryer),
        place=place,
        batches=tuple(
            _batch(book, _Loaded(run=id, index=index, model=model, place=place), tuple(known.values()), nth)
            for nth, index in enumerate(known)
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Loaded:
    """Which entry of a run a batch is; `place` is that of the run."""

    run: str
    index: int
    model: DryingRun
    place: Place


def _batch(book: Book, loaded: _Loaded, together: Together, nth: int) -> BatchSums:
    """Work out a batch: the `nth`, from nought, of those that lay together."""
    model, (batch, component) = loaded.model, together[nth]
    detail, place = batch.detail, _place(loaded.place, loaded.index, batch)
    fresh_g = _grams(detail.fresh, component)
    dry_g = None if detail.dry is None else detail.dry.base
    minutes = 0.0 if model.took is None else model.took.base
    dried_on = None if dry_g is None else (model.loaded + timedelta(minutes=minutes)).date()
    beside = _beside(model, together, nth)
    return BatchSums(
        run=loaded.run,
        index=loaded.index,
        model=batch,
        component=component,
        place=place,
        dryer=model.dryer,
        loaded=model.loaded,
        hours=None if model.took is None else minutes / 60,
        dried_on=dried_on,
        bought_g=_grams(detail.bought, component),
        fresh_g=fresh_g,
        dry_g=dry_g,
        dried=_held(detail, component, fresh_g, dry_g),
        grams_per=grams_per((measure, weight.base) for measure, weight in detail.weighs.items()),
        containers=_containers(book, loaded, detail.put_in, dried_on, place),
        traces=_traces(together[nth], beside),
        beside_raw=_raw_among(component, beside),
        gaps=tuple(_uncounted(detail, component)),
    )


def _with(run: RunSums, components: Mapping[str, ComponentSums]) -> RunSums:
    """Give a run with what its components have learnt since: all that follows from them, and nothing else, is new."""
    together = tuple((batch.model, components[batch.component.id]) for batch in run.batches)
    batches = tuple(
        replace(
            batch,
            component=component,
            dried=_held_again(batch, component),
            traces=_traces(together[nth], _beside(run.model, together, nth)),
        )
        for nth, (batch, (_, component)) in enumerate(zip(run.batches, together, strict=True))
    )
    return replace(run, batches=batches)


def _held(detail: BatchDetail, component: ComponentSums, fresh_g: float | None, dry_g: float | None) -> Dried | None:
    if fresh_g is None or dry_g is None or detail.thrown_out:
        return None
    return dried(component, fresh_g, dry_g, detail.tested)


def _held_again(batch: BatchSums, component: ComponentSums) -> Dried | None:
    """Give what a batch's weights tell; only a mix has other water when something was learnt."""
    if component.fresh_water == batch.component.fresh_water:
        return batch.dried
    return _held(batch.model.detail, component, batch.fresh_g, batch.dry_g)


def _beside(model: DryingRun, together: Together, nth: int) -> Together:
    """Give what else lay in the dryer; what was only mixed or filled on one day lay beside nothing."""
    return (*together[:nth], *together[nth + 1 :]) if model.dryer else ()


def _traces(own: tuple[Batch, ComponentSums], beside: Together) -> frozenset[Allergen]:
    """Give what a batch may have picked up: what the others hold, and what they may hold themselves."""
    batch, component = own
    others = (one.allergens.union(one.own_traces, other.detail.traces) for other, one in beside)
    return frozenset(batch.detail.traces).union(*others) - component.allergens


def _raw_among(component: ComponentSums, beside: Together) -> tuple[str, ...]:
    if component.raw:
        return ()
    return tuple(dict.fromkeys(one.model.name for _, one in beside if one.raw))


def _containers(
    book: Book, loaded: _Loaded, put_in: Sequence[Filled], dried_on: date | None, place: Place
) -> tuple[FilledContainer, ...]:
    letter, sizes = LETTERS[loaded.index], book.household.containers
    return tuple(
        FilledContainer(
            mark=Mark(loaded.run, letter, nth),
            nth=nth,
            of=len(put_in),
            filled=filled,
            size=sizes.get(filled.in_),
            filled_on=filled.on or dried_on,
            place=place.at("put in", nth - 1),
        )
        for nth, filled in enumerate(put_in, 1)
    )


def _grams(fresh: Quantity | None, component: ComponentSums) -> float | None:
    return None if fresh is None else in_grams(fresh, component.fresh_grams_per)


def _uncounted(detail: BatchDetail, component: ComponentSums) -> Iterator[Gap]:
    if detail.fresh is not None and _grams(detail.fresh, component) is None:
        noun = detail.fresh.noun or "piece"
        yield Gap(
            what=f"the weight of {written(detail.fresh)} of it fresh",
            missing=f"weigh 1 {noun} and write `counts: {{1 {noun}: ... g}}` in components/{component.id}.yaml",
        )
