"""The sheet of the larder: what stands, until when, how much of each thing there is, and what runs short."""

from collections.abc import Iterator, Sequence
from datetime import date

from packlarder.measure import as_weighed
from packlarder.reckon.larder_records import InStore, LarderSums, Standing
from packlarder.reckon.use_by import UseBy
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import store_words as words
from packlarder.sheets.component_sheet import Link
from packlarder.sheets.dish import caution, day
from packlarder.sheets.run import container_row, weight
from packlarder.sheets.store_sheet import Bar, LarderSheet, LevelRow, ShelfPicture, ShelfRow

MOST_ROWS = 40
"""Components that a picture can show and still be read; of a larger larder those that expire first."""
YEAR_MONTHS = 12


def larder_sheet(larder: LarderSums, findings: Sequence[Finding]) -> LarderSheet:
    """Build the sheet of the larder."""
    return LarderSheet(
        day=day(larder.on),
        summary=_summary(larder),
        picture=_picture(larder),
        containers=tuple(container_row(one.container, one.batch, one, larder.on) for one in larder.standing),
        levels=tuple(_level(one) for one in sorted(larder.in_store.values(), key=_short_first)),
        emptied=tuple(container_row(one.container, one.batch, one, larder.on) for one in larder.emptied),
        cautions=tuple(caution(finding) for finding in on_the_page(findings)),
    )


def _summary(larder: LarderSums) -> str:
    if not larder.standing:
        return words.LARDER_EMPTY
    held_g = sum(one.left_g for one in larder.standing)
    fresh_g = sum(one.left_g * stands_for(one) for one in larder.standing)
    return words.LARDER_SUMMARY.format(
        containers=len(larder.standing), weight=as_weighed(held_g), fresh=as_weighed(fresh_g)
    )


def stands_for(one: Standing) -> float:
    """Give the fresh food that a gram of a container stands for: as its own batch was weighed, or its component's."""
    made = one.batch.component.yielded
    return one.batch.fresh_per_dry or (1.0 if made is None else made.fresh_g)


def _short_first(one: InStore) -> tuple[bool, str]:
    return not one.short, one.component.model.name.lower()


def _level(store: InStore) -> LevelRow:
    component = store.component
    first = store.standing[0] if store.standing else None
    return LevelRow(
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        containers=len(store.standing),
        held=weight("", store.held_g),
        stands_for=weight("", sum(one.left_g * stands_for(one) for one in store.standing)),
        level=None if store.level_g is None else weight("", store.level_g),
        short=store.short,
        eat_first="" if first is None else str(first.mark),
        until="" if first is None or first.use_by is None else day(first.use_by.day),
    )


def _picture(larder: LarderSums) -> ShelfPicture | None:
    """Lay the containers along a calendar of whole months, by component; None where nothing has a day."""
    rows = tuple(row for store in _first_to_expire(larder)[:MOST_ROWS] if (row := _row(store, larder.on)).bars)
    bars = [bar for row in rows for bar in row.bars]
    if not bars:
        return None
    today = larder.on.toordinal()
    first = date.fromordinal(min(today, *(bar.filled for bar in bars))).replace(day=1)
    last = _month_after(date.fromordinal(max(today, *(bar.until for bar in bars))))
    return ShelfPicture(
        first=first.toordinal(),
        last=last.toordinal(),
        today=today,
        today_text=day(larder.on),
        ticks=tuple(_ticks(first, last)),
        rows=rows,
    )


def _first_to_expire(larder: LarderSums) -> list[InStore]:
    ids = dict.fromkeys(one.batch.component.id for one in larder.standing)
    return [larder.in_store[id] for id in ids]


def _row(store: InStore, on: date) -> ShelfRow:
    component = store.component
    return ShelfRow(
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        holds=weight("", store.held_g),
        bars=tuple(_bar(one, one.use_by, on) for one in store.standing if one.use_by is not None),
    )


def _bar(one: Standing, keeps: UseBy, on: date) -> Bar:
    says = words.BAR.format(mark=one.mark, holds=as_weighed(one.left_g), day=day(keeps.day))
    return Bar(
        mark=str(one.mark),
        says=says,
        filled=(one.batch.dried_on or on).toordinal(),
        opened=None if one.opened_on is None else one.opened_on.toordinal(),
        until=keeps.day.toordinal(),
        past=one.past(on),
    )


def _month_after(on: date) -> date:
    return date(on.year + on.month // YEAR_MONTHS, on.month % YEAR_MONTHS + 1, 1)


def _ticks(first: date, last: date) -> Iterator[tuple[int, str]]:
    """Give the first day of each month with its name, and the year beside January and the first."""
    month = first
    while month <= last:
        name = words.MONTHS[month.month - 1]
        yield month.toordinal(), f"{name} {month.year}" if month == first or month.month == 1 else name
        month = _month_after(month)
