"""The sheet of a drying run, built from its sums and the safety rules' findings."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date

from packlarder.book.draw import Mark
from packlarder.book.treatment import Treated
from packlarder.measure import (
    DOWN,
    UP,
    as_weighed,
    in_celsius,
    in_fahrenheit,
    in_inches,
    in_millimetres,
    in_ml,
    in_ounces,
    in_percent,
)
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.card import bulk_of
from packlarder.reckon.chain import Stage, chain
from packlarder.reckon.drying import Dried
from packlarder.reckon.kitchen import spoons
from packlarder.reckon.larder_records import Standing
from packlarder.reckon.measures import PER_ML
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.component_sheet import Fact, Link
from packlarder.sheets.dish import caution, day
from packlarder.sheets.store_sheet import BatchRow, ContainerRow, RunSheet, StageRow

LEAST_SHARE = 0.0
"""No food holds less than no water: below it an estimate is printed as nought."""


def run_sheet(run: RunSums, findings: Sequence[Finding], standing: Mapping[Mark, Standing], on: date) -> RunSheet:
    """Build the sheet of a run; `standing` are the larder's containers by their marks."""
    return RunSheet(
        id=run.id,
        title=words.RUN_TITLE.format(what=_what(run), day=day(run.model.loaded.date())),
        day=run.model.loaded.date().isoformat(),
        dryer=run.model.dryer or words.NO_DRYER,
        summary=_summary(run),
        facts=tuple(_facts(run)),
        batches=tuple(_batch(batch, standing, on) for batch in run.batches),
        cautions=tuple(caution(finding) for finding in on_the_page(findings)),
        notes=run.model.notes,
    )


def _what(run: RunSums) -> str:
    """Name what lay on the trays: all of it, or the first and how many more."""
    names = [batch.component.model.name for batch in run.batches]
    if len(names) > 2:
        return words.MANY.format(first=names[0], rest=len(names) - 1)
    return common.COMMA.join(names) or run.id


def _summary(run: RunSums) -> str:
    dry_g = sum(batch.dry_g or 0.0 for batch in run.batches)
    if any(batch.dry_g is None for batch in run.batches):
        return words.SUMMARY_RUNNING
    if run.dryer is None:
        return words.SUMMARY_MIXED.format(dry=as_weighed(dry_g))
    return words.SUMMARY_DRY.format(fresh=as_weighed(run.fresh_g), dry=as_weighed(dry_g), water=in_ml(run.removed_ml))


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


def _batch(batch: BatchSums, standing: Mapping[Mark, Standing], on: date) -> BatchRow:
    component = batch.component
    verdict = verdict_of(batch)
    return BatchRow(
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        state=common.STATES[component.must_be_cooked.value],
        verdict=verdict,
        verdict_says=_explained(verdict, batch.dried),
        chain=tuple(map(_stage, chain(batch))),
        facts=tuple(_batch_facts(batch)),
        containers=tuple(container_row(one, batch, standing.get(one.mark), on) for one in batch.containers),
        traces=tuple(sorted(one.value for one in batch.traces)),
        notes=batch.model.detail.notes,
        missing=tuple(common.MISSING.format(what=gap.what, missing=gap.missing) for gap in batch.gaps),
    )


def verdict_of(batch: BatchSums) -> str:
    """Give the word for a batch's dryness, or where it is."""
    if batch.verdict is not None:
        return batch.verdict.value
    return words.IN_THE_DRYER if batch.dry_g is None else words.MIXED


def _explained(verdict: str, held: Dried | None) -> str:
    """Say what a verdict means, with its figures where there are any."""
    if held is None:
        return "" if "{" in words.VERDICTS[verdict] else words.VERDICTS[verdict]
    return words.VERDICTS[verdict].format(
        solids=as_weighed(held.solids_g),
        dry=as_weighed(held.dry_g),
        limit=in_percent(held.limit),
        lighter=as_weighed(held.lighter_g, UP),
        goal=as_weighed(held.goal_g, DOWN),
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
    if batch.fresh_per_dry is not None:
        yield weight(names["stands_for"], batch.fresh_per_dry)
    bulk_ml = _bulk(batch)
    if bulk_ml is not None:
        yield _volume(names["bulk"], bulk_ml)


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


def container_row(container: FilledContainer, batch: BatchSums, standing: Standing | None, on: date) -> ContainerRow:
    """Set a container as it stands on a day; `standing` is None before it was filled."""
    filled, component = container.filled, batch.component
    left_g = container.dry_g if standing is None else standing.left_g
    keeps = None if standing is None else standing.use_by
    return ContainerRow(
        mark=str(container.mark),
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        size=filled.in_,
        holds=weight("", left_g),
        stands=filled.stands,
        state=container_state(container, standing),
        use_by="" if keeps is None else day(keeps.day),
        keeping=keeping(standing),
        past=standing is not None and standing.past(on) and not standing.empty,
    )


def container_state(container: FilledContainer, standing: Standing | None) -> str:
    """Say what became of a container."""
    filled = container.filled
    if standing is not None and standing.empty:
        return words.EMPTY
    state = words.VACUUM if filled.vacuum else words.SEALED
    if standing is not None and standing.opened_on is not None:
        state = words.OPEN_SINCE.format(day=day(standing.opened_on))
    return words.WITH_SACHET.format(state=state, sachet=filled.sachet.value) if filled.sachet else state


def keeping(standing: Standing | None) -> str:
    """Say why a use-by day is what it is."""
    keeps = None if standing is None else standing.use_by
    if standing is None or keeps is None:
        return words.NO_DAY
    if keeps.own:
        return words.OWN_RULE_WHY.format(why=keeps.says) if keeps.says else words.OWN_RULE
    return keeps.says or words.OWN_PACK


def weight(label: str, grams: float) -> Fact:
    """Set a weight in both systems."""
    return Fact(label=label, metric=as_weighed(grams), us=in_ounces(grams))


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
