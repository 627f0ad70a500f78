"""The sheets of a drying run and of the larder as plain text of 80 columns, for a terminal."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from textwrap import wrap

from packlarder.cli import sheet_words as words
from packlarder.cli.plain import COLUMNS, GAP, columns, listed, page, paragraph, section, told
from packlarder.measure import as_typed
from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.facts import Fact
from packlarder.sheets.printed import System, plain
from packlarder.sheets.store_sheet import BatchRow, ContainerRow, LarderSheet, LevelRow, RunSheet, StageRow
from packlarder.sheets.store_words import EMPTY


def plain_run(sheet: RunSheet, system: System, foot: str) -> str:
    """Set a drying run, and `foot` below it."""
    return page(_Run(sheet, system).lines(), foot)


def plain_larder(sheet: LarderSheet, system: System, foot: str) -> str:
    """Set the larder, and `foot` below it."""
    return page(_Larder(sheet, system).lines(), foot)


def plain_drawn(
    row: ContainerRow, deed: str, *, before: Fact, went: Fact, level: LevelRow | None, system: System
) -> str:
    """Set a container after something was drawn from it, with what there is of its component in all."""
    held = _said(row.holds, system)
    rows = [(words.LEFT, held if row.state == EMPTY else words.COMMA.join((held, row.state)))]
    if deed in words.WENT:
        rows.insert(0, (deed, _said(went, system)))
    if deed == words.COUNTED:
        rows.insert(0, (deed, words.BEFORE.format(left=held, before=_said(before, system))))
    if row.state != EMPTY:
        rows.append((words.USE_BY, _use_by(row).removeprefix(f"{words.USE_BY} ")))
    rows.append((words.IN_ALL, _in_all(level, system)))
    what = words.COMMA.join(filter(None, (named(row.component.name, raw=row.raw), row.size, row.stands)))
    lines = [*paragraph(words.MARKED.format(what=what, mark=row.mark)), "", *told(rows), ""]
    return as_typed("\n".join(lines))


def _in_all(level: LevelRow | None, system: System) -> str:
    if level is None:
        return words.NOTHING_LEFT
    count = words.CONTAINER if level.containers == 1 else words.CONTAINERS
    held = words.HELD_IN.format(weight=_said(level.held, system), containers=count.format(count=level.containers))
    if level.level is None:
        return held
    wanted = words.WANTED.format(weight=_said(level.level, system))
    return words.COMMA.join((held, words.RUNS_SHORT.format(wanted=wanted) if level.short else wanted))


def named(name: str, *, raw: bool) -> str:
    """Give a name, with the word RAW where it belongs."""
    return f"{name} {words.RAW}" if raw else name


class _Run:
    """Sets a run, batch by batch."""

    def __init__(self, sheet: RunSheet, system: System) -> None:
        self.sheet = sheet
        self.system = system

    def lines(self) -> Iterator[str]:
        sheet = self.sheet
        yield from paragraph(sheet.title)
        yield from paragraph(named(words.RUN_ID.format(id=sheet.id), raw=any(batch.raw for batch in sheet.batches)))
        yield from ("", *paragraph(plain(sheet.summary, self.system, 0)), "")
        yield from self._facts(sheet.facts)
        for batch in sheet.batches:
            yield from section(named(batch.component.name, raw=batch.raw), self._batch(batch))
        yield from section(words.CAUTIONS, cautions(sheet.cautions))
        yield from section(words.NOTES, (line for note in sheet.notes for line in paragraph(note)))

    def _batch(self, batch: BatchRow) -> Iterator[str]:
        says = plain(batch.verdict_says, self.system, 0)
        yield from (*paragraph(words.VERDICT.format(verdict=batch.verdict, says=says)), "")
        rows = [(stage.label, self._stage(stage)) for stage in batch.chain]
        rows += [(fact.label, "; ".join(filter(None, (_said(fact, self.system), fact.source)))) for fact in batch.facts]
        if batch.traces:
            rows.append((words.TRACES_IN, words.COMMA.join(batch.traces)))
        yield from told(rows)
        if batch.containers:
            yield ""
            yield from shelved(batch.containers, self.system)
        if batch.notes or batch.missing:
            yield ""
            yield from listed((*batch.missing, *batch.notes))

    def _stage(self, stage: StageRow) -> str:
        weight = stage.us if self.system is System.US else stage.metric
        return words.COMMA.join(filter(None, (weight, stage.factor)))

    def _facts(self, facts: Sequence[Fact]) -> Iterator[str]:
        yield from told([(fact.label, _said(fact, self.system)) for fact in facts])


class _Larder:
    """Sets the larder: what runs short, what is to be eaten first, and what there is of each thing."""

    def __init__(self, sheet: LarderSheet, system: System) -> None:
        self.sheet = sheet
        self.system = system

    def lines(self) -> Iterator[str]:
        sheet = self.sheet
        yield from paragraph(words.LARDER.format(day=sheet.day))
        yield from paragraph(plain(sheet.summary, self.system, 0))
        if sheet.emptied:
            one = words.EMPTIED_ONE if len(sheet.emptied) == 1 else words.EMPTIED
            yield from paragraph(one.format(count=len(sheet.emptied)))
        yield from section(words.SHORT, self._levels(row for row in sheet.levels if row.short))
        yield from section(words.EAT_FIRST, shelved(sheet.containers, self.system))
        yield from section(words.IN_STORE, self._levels(row for row in sheet.levels if row.containers))
        yield from section(words.CAUTIONS, cautions(sheet.cautions))

    def _levels(self, rows: Iterable[LevelRow]) -> Iterator[str]:
        yield from columns([self._level(row) for row in rows])

    def _level(self, row: LevelRow) -> tuple[str, ...]:
        wanted = "" if row.level is None else words.WANTED.format(weight=_said(row.level, self.system))
        held = _said(row.held, self.system)
        fresh = words.WORTH.format(fresh=_said(row.stands_for, self.system)) if row.containers else ""
        count = words.CONTAINER if row.containers == 1 else words.CONTAINERS
        return named(row.component.name, raw=row.raw), held, fresh, count.format(count=row.containers), wanted


def shelved(containers: Sequence[ContainerRow], system: System) -> Iterator[str]:
    """Set containers by their use-by days, each day with what it rests on, and alike ones below one line."""
    width = max((len(_said(one.holds, system)) for one in containers), default=0)
    for says, of_a_day in groupby(containers, _use_by):
        yield from wrap(says, COLUMNS)
        for what, alike in groupby(of_a_day, _what):
            yield from wrap(what, COLUMNS, initial_indent=GAP, subsequent_indent=GAP * 2)
            yield from (f"{GAP * 2}{_said(one.holds, system):>{width}}{GAP}{one.mark}" for one in alike)


def _use_by(one: ContainerRow) -> str:
    """Say until when a container keeps, and why that day."""
    if one.state == EMPTY:
        return words.EMPTY
    if not one.use_by:
        return one.keeping
    says = words.PAST_DAY if one.past else words.DAY
    return says.format(day=one.use_by, why=one.keeping)


def _what(one: ContainerRow) -> str:
    state = "" if one.state == EMPTY else one.state
    return words.COMMA.join(filter(None, (named(one.component.name, raw=one.raw), one.size, one.stands, state)))


def cautions(found: Iterable[Caution]) -> Iterator[str]:
    """Set cautions with their sources."""
    yield from listed(f"{one.text} ({one.source})" for one in found)


def _said(fact: Fact, system: System) -> str:
    return fact.us if system is System.US else fact.metric
