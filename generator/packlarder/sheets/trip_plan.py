"""What is still to get before a trip, and the dated plan: shopping, cooking, drying, packing."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime
from itertools import groupby

from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import TripSums
from packlarder.reckon.trip.stores import DryingLoad, OnTrays, Shortfall, Source, Task
from packlarder.sheets import trip_names as names
from packlarder.sheets import words
from packlarder.sheets.dish import day
from packlarder.sheets.trip_figures import NO_FIGURE, scales, weight
from packlarder.sheets.trip_menu import component_link
from packlarder.sheets.trip_stores_sheet import LoadRow, PlanDay, ShortGroup, ShortRow, TaskItem, TaskRow, TrayRow
from packlarder.sheets.words import opened


def short_groups(trip: TripSums) -> tuple[ShortGroup, ...]:
    """Set what the larder lacks, by how it is come by."""
    lacking = trip.stores.shortfalls
    return tuple(
        ShortGroup(
            how=opened(names.SOURCES[source]),
            rows=tuple(_short(one) for one in lacking if one.source is source),
            plain=source is Source.BUY,
        )
        for source in Source
        if any(one.source is source for one in lacking)
    )


def _short(one: Shortfall) -> ShortRow:
    component = one.component
    return ShortRow(
        component=component_link(component.id, component.model.name),
        raw=component.raw,
        short=weight(one.short_g),
        for_mixes=weight(one.for_mixes_g),
        fresh=scales(one.fresh_g),
        bought=NO_FIGURE if one.bought_g == one.short_g else scales(one.bought_g),
        bought_as=one.bought_as,
        trays="" if one.trays is None else names.trays_called(one.trays),
        loads=words.COMMA.join(map(str, one.loads)),
        start_by="" if one.start_by is None else day(one.start_by),
    )


def load_rows(trip: TripSums) -> tuple[LoadRow, ...]:
    """Set the runs of dryers that are still to be made."""
    return tuple(map(_load, trip.stores.loads))


def _load(load: DryingLoad) -> LoadRow:
    return LoadRow(
        number=load.number,
        dryer=load.dryer,
        trays=tuple(map(_trays, load.on_the_trays)),
        starts=names.moment(load.starts),
        ends=names.moment(load.ends),
    )


def _trays(one: OnTrays) -> TrayRow:
    return TrayRow(
        component=component_link(one.component.id, one.component.model.name),
        raw=one.component.raw,
        trays=names.trays_called(one.trays),
        fresh=scales(one.fresh_g),
        dry=scales(one.dry_g),
    )


def plan_days(trip: TripSums) -> tuple[PlanDay, ...]:
    """Set what is to be done before a trip, by the day on which it begins, in the order of time."""
    return tuple(
        PlanDay(on=opened(names.NOW) if overdue else _dated(on, trip.model.starts), tasks=tuple(_together(of_day)))
        for (overdue, on), of_day in groupby(sorted(trip.stores.tasks, key=_rank), key=_day)
    )


def _rank(task: Task) -> tuple[date, bool, bool, datetime]:
    return task.starts.date(), not task.overdue, not task.whole_day, task.starts


def _day(task: Task) -> tuple[bool, date]:
    return task.overdue, task.starts.date()


def _dated(on: date, starts: date) -> str:
    """Print a date of the plan, with its year where the trip starts in another."""
    return names.short_date(on) if on.year == starts.year else f"{names.short_date(on)} {on.year}"


def _together(tasks: Iterable[Task]) -> Iterator[TaskRow]:
    """Set tasks of one day; those of one kind, time and load are one row."""
    alike: dict[tuple[object, ...], list[Task]] = {}
    for task in tasks:
        alike.setdefault((task.kind, task.whole_day, task.starts, task.ends, task.load), []).append(task)
    return map(_row, alike.values())


def _row(tasks: Sequence[Task]) -> TaskRow:
    first = tasks[0]
    each = all(len(task.components) == 1 for task in tasks)
    together = None if each else sum(task.grams or 0.0 for task in tasks)
    return TaskRow(
        clock="" if first.whole_day else names.clock(first.starts, first.starts.date()),
        until=names.lasting(first),
        kind=opened(names.TASKS[first.kind]),
        items=tuple(_item(one, task.grams if each else None) for task in tasks for one in task.components),
        weight=scales(together),
        load=names.LOAD.format(number=first.load) if first.load else "",
    )


def _item(one: ComponentSums, grams: float | None) -> TaskItem:
    return TaskItem(component=component_link(one.id, one.model.name), raw=one.raw, weight=scales(grams))
