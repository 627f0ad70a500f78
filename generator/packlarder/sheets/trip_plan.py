"""What is still to get before a trip, and the dated plan: shopping, cooking, drying, packing."""

from collections.abc import Iterator
from datetime import date, datetime
from itertools import groupby

from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import TripSums
from packlarder.reckon.trip.stores import DryingLoad, OnTrays, Shortfall, Task
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_words as words
from packlarder.sheets.dish import day
from packlarder.sheets.trip_figures import NO_FIGURE, scales, weight
from packlarder.sheets.trip_menu import component_link
from packlarder.sheets.trip_stores_sheet import LoadRow, PlanDay, ShortRow, TaskItem, TaskRow, TrayRow


def short_rows(trip: TripSums) -> tuple[ShortRow, ...]:
    """Set what the larder lacks."""
    return tuple(map(_short, trip.stores.shortfalls))


def _short(one: Shortfall) -> ShortRow:
    component = one.component
    return ShortRow(
        component=component_link(component.id, component.model.name),
        raw=component.raw,
        how=words.SOURCES[one.source.value],
        short=weight(one.short_g),
        for_mixes=weight(one.for_mixes_g),
        fresh=scales(one.fresh_g),
        bought=NO_FIGURE if one.bought_g == one.short_g else scales(one.bought_g),
        bought_as=one.bought_as,
        trays="" if one.trays is None else trays_called(one.trays),
        loads=words.COMMA.join(map(str, one.loads)),
        start_by="" if one.start_by is None else day(one.start_by),
    )


def trays_called(count: int) -> str:
    """Print a number of trays."""
    return words.TRAY if count == 1 else words.TRAYS.format(count=count)


def load_rows(trip: TripSums) -> tuple[LoadRow, ...]:
    """Set the runs of dryers that are still to be made."""
    return tuple(map(_load, trip.stores.loads))


def _load(load: DryingLoad) -> LoadRow:
    return LoadRow(
        number=load.number,
        dryer=load.dryer,
        trays=tuple(map(_trays, load.on_the_trays)),
        starts=_moment(load.starts),
        ends=_moment(load.ends),
    )


def _trays(one: OnTrays) -> TrayRow:
    return TrayRow(
        component=component_link(one.component.id, one.component.model.name),
        raw=one.component.raw,
        trays=trays_called(one.trays),
        fresh=scales(one.fresh_g),
        dry=scales(one.dry_g),
    )


def _moment(at: datetime) -> str:
    """Print a day and a time of it."""
    return words.MOMENT.format(day=names.short_date(at.date()), clock=names.clock(at, at.date()))


def plan_days(trip: TripSums) -> tuple[PlanDay, ...]:
    """Set what is to be done before a trip, by the day on which it begins, in the order of time."""
    tasks = sorted(trip.stores.tasks, key=lambda task: (task.starts.date(), not task.whole_day, task.starts))
    return tuple(
        PlanDay(on=_dated(on, trip.model.starts), tasks=tuple(map(_task, of_day)))
        for on, of_day in groupby(tasks, key=lambda task: task.starts.date())
    )


def _dated(on: date, starts: date) -> str:
    """Print a date of the plan, with its year where the trip starts in another."""
    return names.short_date(on) if on.year == starts.year else f"{names.short_date(on)} {on.year}"


def _task(task: Task) -> TaskRow:
    return TaskRow(
        clock="" if task.whole_day else names.clock(task.starts, task.starts.date()),
        until=_until(task),
        kind=words.TASKS[task.kind.value],
        items=tuple(_items(task.components)),
        weight=scales(task.grams),
        load=words.LOAD.format(number=task.load) if task.load else "",
    )


def _items(components: tuple[ComponentSums, ...]) -> Iterator[TaskItem]:
    for one in components:
        yield TaskItem(component=component_link(one.id, one.model.name), raw=one.raw)


def _until(task: Task) -> str:
    """Say until when a task lasts, where that is another moment than its start."""
    if task.whole_day:
        last = task.ends.date()
        return "" if last <= task.starts.date() else words.UNTIL.format(end=names.short_date(last))
    if task.ends <= task.starts:
        return ""
    if task.ends.date() == task.starts.date():
        return words.UNTIL.format(end=names.clock(task.ends, task.ends.date()))
    return words.UNTIL.format(end=_moment(task.ends))
