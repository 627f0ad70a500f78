"""The larder: all that was put into containers, less what was drawn from them, on a day."""

from bisect import insort
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from types import MappingProxyType
from typing import TypeAlias

from packlarder.book.book import Book, draws_place
from packlarder.book.draw import Draw, Mark, Share
from packlarder.faults import Fault
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.contents import Event, follow
from packlarder.reckon.draw_slips import unknown_mark
from packlarder.reckon.drying import Verdict
from packlarder.reckon.larder_records import InStore, LarderSums, Standing
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.stock_slips import stock_slips
from packlarder.reckon.use_by import KeepingTimes

Containers: TypeAlias = Mapping[Mark, tuple[FilledContainer, BatchSums]]
NOT_FOR_STORE = frozenset({Verdict.CAN_NOT_BE_RIGHT, Verdict.NOT_DRY_YET})
"""Verdicts under which no keeping time holds."""


def reckon_larder(
    book: Book, components: Mapping[str, ComponentSums], runs: Mapping[str, RunSums], on: date
) -> tuple[LarderSums, tuple[Fault, ...]]:
    """Take stock on a day: what was filled and drawn by then.

    The faults are those of levels, keeping rules and draws; draws after the day count not yet, and can be at fault.
    """
    containers = {
        container.mark: (container, batch)
        for run in runs.values()
        for batch in run.batches
        for container in batch.containers
    }
    events, faults = _events(book, containers)
    keeping = KeepingTimes(book.household)
    faults += stock_slips(book)
    standing: list[Standing] = []
    known: dict[Mark, Standing] = {}
    for mark, (container, batch) in containers.items():
        one, wrong = _standing(container, batch, keeping, events.get(mark, ()), on)
        faults += wrong
        known[mark] = one = _no_longer_than_its_source(one, known)
        if container.filled_on is not None and container.filled_on <= on:
            standing.append(one)
    standing.sort(key=_to_be_eaten_first)
    held = tuple(one for one in standing if not one.empty)
    return (
        LarderSums(
            on=on,
            standing=held,
            emptied=tuple(one for one in standing if one.empty),
            in_store=MappingProxyType(_in_store(book, components, held, on)),
        ),
        tuple(faults),
    )


def _events(book: Book, containers: Containers) -> tuple[Mapping[Mark, Sequence[Event]], list[Fault]]:
    """Sort all draws by container, each in the order of days; a draw from a container that there is not is a fault.

    What one container was filled with from another is drawn from that one.
    """
    events: dict[Mark, list[Event]] = defaultdict(list)
    faults: list[Fault] = []
    for id, draws in sorted(book.draws.items(), key=lambda pair: (pair[1].date, pair[0])):
        for index, draw in enumerate(draws.drawn):
            place = draws_place(id).at("drawn", index)
            if draw.from_ in containers:
                events[draw.from_].append(Event(day=draws.date, draw=draw, what_for=draws.for_, place=place))
            else:
                faults += unknown_mark(book, draw.from_, place)
    for mark, (container, _) in containers.items():
        source, day = container.filled.from_, container.filled.on
        if source is not None and day is not None and source in containers:
            went = Draw(from_=source, took=Share(container.filled.holds))
            moved = Event(day=day, draw=went, what_for=f"put into {mark}", place=container.place)
            insort(events[source], moved, key=lambda event: event.day)
    return events, faults


def _no_longer_than_its_source(one: Standing, known: Mapping[Mark, Standing]) -> Standing:
    """Let food that was filled from one container into another keep no longer than where it came from."""
    source = known.get(one.container.filled.from_) if one.container.filled.from_ else None
    if source is None or source.use_by is None or one.use_by is None or one.use_by.day <= source.use_by.day:
        return one
    return replace(one, use_by=source.use_by)


def _standing(
    container: FilledContainer, batch: BatchSums, keeping: KeepingTimes, events: Sequence[Event], on: date
) -> tuple[Standing, tuple[Fault, ...]]:
    contents, faults = follow(container, events, on)
    keeps = None
    if batch.dried_on is not None and batch.verdict not in NOT_FOR_STORE:
        keeps = keeping.use_by(
            batch.component,
            container.filled,
            container.size,
            dried_on=batch.dried_on,
            filled_on=container.filled_on or batch.dried_on,
            opened_on=contents.opened_on,
            best_before=batch.model.detail.best_before,
            untested=batch.verdict is Verdict.CAN_NOT_TELL,
        )
    return (
        Standing(
            container=container,
            batch=batch,
            left_g=contents.left_g,
            opened_on=contents.opened_on,
            use_by=keeps,
            drawn=contents.drawn,
        ),
        faults,
    )


def _to_be_eaten_first(one: Standing) -> tuple[date, bool, Mark]:
    """Order containers: first to expire first, of those the opened one first.

    What may not be kept comes before all, that of which no rule and no figure speaks after all.
    """
    day = date.max if one.use_by is None else one.use_by.day
    day = date.min if one.batch.verdict in NOT_FOR_STORE else day
    return day, one.opened_on is None, one.mark


def _good(one: Standing, on: date) -> bool:
    return one.batch.verdict not in NOT_FOR_STORE and not one.past(on)


def _in_store(
    book: Book, components: Mapping[str, ComponentSums], held: Iterable[Standing], on: date
) -> dict[str, InStore]:
    """Sum up by component: what stands, and what the household wants to have of it even if nothing does."""
    by_component: dict[str, list[Standing]] = defaultdict(list)
    for one in held:
        by_component[one.batch.component.id].append(one)
    levels = {book.component_id(name): level.base for name, level in book.household.larder.at_least.items()}
    ids = [id for id in components if id in by_component or id in levels]
    return {
        id: InStore(
            component=components[id],
            standing=tuple(by_component[id]),
            held_g=sum(one.left_g for one in by_component[id]),
            good_g=sum(one.left_g for one in by_component[id] if _good(one, on)),
            level_g=levels.get(id),
        )
        for id in ids
    }
