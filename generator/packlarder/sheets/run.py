"""The sheet of a drying run, built from its sums and the safety rules' findings."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date
from itertools import groupby

from packlarder.book.draw import Mark
from packlarder.book.treatment import Treated
from packlarder.measure import (
    DOWN,
    NEAREST,
    UP,
    Rounding,
    as_weighed,
    in_celsius,
    in_fahrenheit,
    in_inches,
    in_millimetres,
    in_ml,
    in_ounces,
    in_percent,
)
from packlarder.reckon.batch_records import BatchSums, RunSums
from packlarder.reckon.card import bulk_of
from packlarder.reckon.chain import Stage, chain
from packlarder.reckon.drying import Dried
from packlarder.reckon.kitchen import spoons
from packlarder.reckon.larder_records import Standing
from packlarder.reckon.measures import PER_ML
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.dish import caution, day
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Line, Printed
from packlarder.sheets.shelf import Shelf, container_row, weight
from packlarder.sheets.store_sheet import BatchRow, RunEntry, RunIndex, RunSheet, RunYear, StageRow, Tray

LEAST_SHARE = 0.0
"""No food holds less than no water: below it an estimate is printed as nought."""


def run_sheet(
    run: RunSums,
    findings: Sequence[Finding],
    standing: Mapping[Mark, Standing],
    on: date,
    shelf: Shelf | None = None,
) -> RunSheet:
    """Build the sheet of a run; `standing` are the larder's containers by their marks, `shelf` is as for the larder."""
    shelf = shelf or Shelf(on)
    return RunSheet(
        id=run.id,
        title=words.RUN_TITLE.format(what=_what(run), day=day(run.model.loaded.date())),
        day=day(run.model.loaded.date()),
        dryer=run.model.dryer or words.NO_DRYER,
        summary=_summary(run),
        facts=tuple(_facts(run)),
        batches=tuple(_batch(run, batch, standing, shelf) for batch in run.batches),
        cautions=tuple(dict.fromkeys(caution(finding) for finding in on_the_page(findings))),
        notes=run.model.notes,
    )


def _what(run: RunSums) -> str:
    """Name what lay on the trays: all of it, or the first and how many more."""
    names = [batch.component.model.name for batch in run.batches]
    if len(names) > 2:
        return words.MANY.format(first=names[0], rest=len(names) - 1)
    return common.COMMA.join(names) or run.id


def _summary(run: RunSums) -> Line:
    if any(batch.dry_g is None for batch in run.batches):
        return (words.SUMMARY_RUNNING,)
    dry = _grams(_dry_g(run))
    if run.dryer is None:
        return common.set_line(words.SUMMARY_MIXED, {"dry": dry})
    water = Printed((in_ml(run.removed_ml),), (spoons(run.removed_ml),))
    return common.set_line(words.SUMMARY_DRY, {"fresh": _grams(run.fresh_g), "dry": dry, "water": water})


def _dry_g(run: RunSums) -> float:
    return sum(batch.dry_g or 0.0 for batch in run.batches)


def _grams(grams: float, rounding: Rounding = NEAREST) -> Printed:
    return Printed((as_weighed(grams, rounding),), (in_ounces(grams, rounding),))


def run_index(runs: Iterable[RunSums]) -> RunIndex:
    """List runs by the year in which they were loaded, the newest first."""
    ordered = sorted(runs, key=lambda run: (run.model.loaded, run.id), reverse=True)
    return RunIndex(
        years=tuple(
            RunYear(year=str(year), entries=tuple(map(_entry, of_a_year)))
            for year, of_a_year in groupby(ordered, lambda run: run.model.loaded.year)
        )
    )


def _entry(run: RunSums) -> RunEntry:
    dry_g = _dry_g(run)
    return RunEntry(
        link=Link(kind="run", id=run.id, name=_what(run)),
        trays=tuple(
            Tray(name=batch.component.model.name, raw=batch.component.raw, verdict=verdict_of(batch))
            for batch in run.batches
        ),
        day=day(run.model.loaded.date()),
        dryer=run.model.dryer or words.NO_DRYER,
        fresh=weight("", run.fresh_g) if run.fresh_g else None,
        dry=weight("", dry_g) if dry_g else None,
    )


def _facts(run: RunSums) -> Iterator[Fact]:
    loaded = run.model.loaded
    time = "" if loaded.hour == loaded.minute == 0 else f", {loaded:%H:%M}"
    yield _same(words.RUN["loaded"], f"{day(loaded.date())}{time}")
    yield _same(words.RUN["dryer"], run.model.dryer or words.NO_DRYER)
    if run.hours is not None:
        yield _same(words.RUN["took"], hours(run.hours))
    if run.fresh_g:
        yield weight(words.RUN["fresh"], run.fresh_g)
    if run.removed_ml > 0:
        yield _volume(words.RUN["removed"], run.removed_ml)
        if run.hours:
            yield _volume(words.RUN["per_hour"], run.removed_ml / run.hours)


def _batch(run: RunSums, batch: BatchSums, standing: Mapping[Mark, Standing], shelf: Shelf) -> BatchRow:
    component = batch.component
    verdict = verdict_of(batch)
    return BatchRow(
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        state=common.STATES[component.must_be_cooked.value],
        verdict=verdict,
        verdict_says=(batch.thrown_out,) if batch.thrown_out else _explained(verdict, batch.dried),
        chain=tuple(map(_stage, chain(batch))),
        facts=tuple(_batch_facts(batch)),
        shelf=shelf.lines(standing[one.mark] for one in batch.containers if one.mark in standing),
        containers=tuple(
            shelf.row(standing[one.mark]) if one.mark in standing else container_row(one, batch, None, shelf.on)
            for one in batch.containers
        ),
        traces=tuple(sorted(one.value for one in batch.traces)),
        beside_raw=_beside_raw(run, batch),
        notes=batch.model.detail.notes,
        missing=tuple(common.MISSING.format(what=gap.what, missing=gap.missing) for gap in batch.gaps),
    )


def _beside_raw(run: RunSums, batch: BatchSums) -> tuple[Link, ...]:
    """Name the food that lay beside a batch in the dryer and must be cooked to be safe, where the batch need not be."""
    if batch.component.raw or run.dryer is None:
        return ()
    raw = {one.component.id: one.component.model.name for one in run.batches if one.component.raw}
    return tuple(Link(kind="component", id=id, name=name) for id, name in raw.items())


def verdict_of(batch: BatchSums) -> str:
    """Give the word for a batch's dryness, or where it is."""
    if batch.thrown_out:
        return words.THROWN_OUT
    if batch.verdict is not None:
        return batch.verdict.value
    return words.IN_THE_DRYER if batch.dry_g is None else words.MIXED


def _explained(verdict: str, held: Dried | None) -> Line:
    """Say what a verdict means, with its figures where there are any."""
    phrase = words.VERDICTS[verdict]
    if held is None:
        return () if "{" in phrase else (phrase,)
    percent = in_percent(held.limit)
    return common.set_line(
        phrase,
        {
            "solids": _grams(held.solids_g),
            "dry": _grams(held.dry_g),
            "limit": Printed((percent,), (percent,)),
            "lighter": _grams(held.lighter_g, UP),
            "goal": _grams(held.goal_g, DOWN),
        },
    )


def _stage(stage: Stage) -> StageRow:
    factor = ""
    if stage.share is not None:
        factor = words.FACTOR.format(share=in_percent(stage.share), before=words.STAGES[stage.before])
    return StageRow(
        label=words.STAGES[stage.name],
        metric=as_weighed(stage.weight_g),
        us=in_ounces(stage.weight_g),
        factor=factor,
    )


def _batch_facts(batch: BatchSums) -> Iterator[Fact]:
    detail, names = batch.model.detail, words.BATCH
    if detail.trays is not None:
        yield _same(names["trays"], str(detail.trays))
    if batch.tray_g is not None:
        yield weight(names["tray"], batch.tray_g)
    if detail.deep is not None:
        yield length(names["deep"], detail.deep.base)
    if detail.treated:
        yield treatments(names["treated"], detail.treated)
    if batch.dry_g is not None and batch.fresh_g is not None:
        tests = common.COMMA.join(words.TESTS[test.value] for test in detail.tested)
        yield _same(names["tested"], tests or words.NOT_TESTED)
    if batch.dried is not None:
        yield weight(names["solids"], batch.dried.solids_g)
        yield _moisture(batch.dried)
    if batch.removed_ml is not None:
        yield _volume(names["removed"], batch.removed_ml)
    if not batch.thrown_out:
        yield from _gives(batch)


def _gives(batch: BatchSums) -> Iterator[Fact]:
    """Set what a gram of a batch stands for, and the room that it takes."""
    if batch.fresh_per_dry is not None:
        yield weight(words.BATCH["stands_for"], batch.fresh_per_dry)
    bulk_ml = _bulk(batch)
    if bulk_ml is not None:
        yield _volume(words.BATCH["bulk"], bulk_ml)


def _bulk(batch: BatchSums) -> float | None:
    """Give the room that a batch takes: as it was weighed itself, or else as its component was."""
    if batch.dry_g is None:
        return None
    own = batch.grams_per.get(PER_ML)
    return bulk_of(batch.component, batch.dry_g) if own is None else batch.dry_g / own


def _moisture(held: Dried) -> Fact:
    estimate = held.moisture
    shares = (estimate.by_the_table, estimate.low, estimate.high)
    middle, low, high = (in_percent(max(LEAST_SHARE, share)) for share in shares)
    text = words.MOISTURE.format(middle=middle, low=low, high=high)
    return Fact(label=words.BATCH["moisture"], metric=text, us=text, source=words.BY_THE_TABLE)


def _volume(label: str, millilitres: float) -> Fact:
    return Fact(label=label, metric=in_ml(millilitres), us=spoons(millilitres))


def length(label: str, metres: float) -> Fact:
    """Set a small length in both systems."""
    return Fact(label=label, metric=in_millimetres(metres), us=in_inches(metres))


def treatments(label: str, treated: Sequence[Treated]) -> Fact:
    """Set what was done to a food before it was dried."""
    metric = common.COMMA.join(_treatment(one, in_celsius) for one in treated)
    us = common.COMMA.join(_treatment(one, in_fahrenheit) for one in treated)
    return Fact(label=label, metric=metric, us=us)


def _treatment(one: Treated, in_degrees: Callable[[float], str]) -> str:
    return one.treatment.value if one.to is None else words.HEATED_TO.format(degrees=in_degrees(one.to.base))


def hours(number: float) -> str:
    """Set hours of a dryer, to the half hour."""
    return words.HOURS.format(hours=f"{round(number * 2) / 2:g}")


def _same(label: str, text: str) -> Fact:
    return Fact(label=label, metric=text, us=text)
