"""Runs and the larder as records for other programs: what `show batch` and `show larder` print with `--json`."""

from typing import TypedDict

from packlarder.measure import UP, as_typed
from packlarder.reckon.batch_records import BatchSums, FilledContainer, RunSums
from packlarder.reckon.chain import chain
from packlarder.reckon.drying import Dried
from packlarder.reckon.larder_records import InStore, LarderSums, Standing
from packlarder.sheets.data_figures import known_weighed, number, weighed
from packlarder.sheets.data_records import Note
from packlarder.sheets.larder import stands_for
from packlarder.sheets.run import verdict_of
from packlarder.sheets.shelf import container_state, keeping
from packlarder.sheets.store_sheet import RunSheet


class StageData(TypedDict):
    """A weight on the way from the shop to the jar; `share` is of the stage before."""

    stage: str
    weight_g: float
    share: float | None


class MoistureData(TypedDict):
    """Water left, in per cent of the dry weight: by the food table, and its bounds. Below nought is possible."""

    by_the_table_percent: float
    low_percent: float
    high_percent: float
    limit_percent: float


class ContainerData(TypedDict):
    """A container as it stands on the day."""

    mark: str
    component: str
    raw: bool
    container: str
    state: str
    sachet: str | None
    stands: str | None
    filled_g: float
    left_g: float
    fresh_equivalent_g: float
    filled_on: str | None
    opened_on: str | None
    use_by: str | None
    keeping: str
    past: bool


class BatchData(TypedDict):
    """One component of a run."""

    component: str
    name: str
    must_be_cooked: str
    fresh_g: float | None
    dry_g: float | None
    water_removed_g: float | None
    fresh_per_dry: float | None
    chain: list[StageData]
    moisture: MoistureData | None
    verdict: str
    lighter_g: float | None
    use_by: str | None
    traces: list[str]
    containers: list[ContainerData]
    missing: list[str]


class RunData(TypedDict):
    """A drying run."""

    batch: str
    edition: str
    day: str
    loaded: str
    dryer: str | None
    hours: float | None
    components: list[BatchData]
    safety: list[Note]


class InStoreData(TypedDict):
    """All there is of one component; `good_g` leaves out what is past its day."""

    component: str
    name: str
    must_be_cooked: str
    held_g: float
    good_g: float
    level_g: float | None
    short: bool
    containers: list[str]


class LarderData(TypedDict):
    """The larder on a day."""

    day: str
    edition: str
    containers: list[ContainerData]
    components: list[InStoreData]
    emptied: list[str]


def run_data(run: RunSums, sheet: RunSheet, larder: LarderSums, *, edition: str) -> RunData:
    """Give a run as data; `sheet` must have been built from `run`."""
    standing = larder.by_mark
    return RunData(
        batch=run.id,
        edition=edition,
        day=larder.on.isoformat(),
        loaded=run.model.loaded.isoformat(timespec="minutes"),
        dryer=run.model.dryer or None,
        hours=None if run.hours is None else number(run.hours, 2),
        components=[
            _batch(batch, [standing[one.mark] for one in batch.containers if one.mark in standing], larder)
            for batch in run.batches
        ],
        safety=[
            Note(
                rule=one.rule,
                severity=one.severity,
                text=as_typed(one.text),
                source=one.source,
                standing=one.standing,
            )
            for one in sheet.cautions
        ],
    )


def _batch(batch: BatchSums, standing: list[Standing], larder: LarderSums) -> BatchData:
    component = batch.component
    days = [one.use_by.day for one in standing if one.use_by is not None and not one.empty]
    ratio = batch.fresh_per_dry
    return BatchData(
        component=component.id,
        name=component.model.name,
        must_be_cooked=component.must_be_cooked.value,
        fresh_g=known_weighed(batch.fresh_g),
        dry_g=known_weighed(batch.dry_g),
        water_removed_g=known_weighed(batch.removed_ml),
        fresh_per_dry=None if ratio is None else number(ratio, 2),
        chain=[
            StageData(
                stage=stage.name,
                weight_g=weighed(stage.weight_g),
                share=None if stage.share is None else number(stage.share, 3),
            )
            for stage in chain(batch)
        ],
        moisture=None if batch.dried is None else _moisture(batch.dried),
        verdict=verdict_of(batch),
        lighter_g=None if batch.dried is None else weighed(batch.dried.lighter_g, UP),
        use_by=min(days).isoformat() if days else None,
        traces=sorted(one.value for one in batch.traces),
        containers=[_container(one.container, batch, one, larder) for one in standing],
        missing=[f"{gap.what}: {gap.missing}" for gap in batch.gaps],
    )


def _moisture(held: Dried) -> MoistureData:
    estimate = held.moisture
    return MoistureData(
        by_the_table_percent=number(estimate.by_the_table * 100, 1),
        low_percent=number(estimate.low * 100, 1),
        high_percent=number(estimate.high * 100, 1),
        limit_percent=number(held.limit * 100, 1),
    )


def _container(container: FilledContainer, batch: BatchSums, one: Standing, larder: LarderSums) -> ContainerData:
    filled = container.filled
    return ContainerData(
        mark=str(container.mark),
        component=batch.component.id,
        raw=batch.component.raw,
        container=filled.in_,
        state=container_state(container, one),
        sachet=None if filled.sachet is None else filled.sachet.value,
        stands=filled.stands or None,
        filled_g=weighed(container.dry_g),
        left_g=weighed(one.left_g),
        fresh_equivalent_g=weighed(one.left_g * stands_for(one)),
        filled_on=None if batch.dried_on is None else batch.dried_on.isoformat(),
        opened_on=None if one.opened_on is None else one.opened_on.isoformat(),
        use_by=None if one.use_by is None else one.use_by.day.isoformat(),
        keeping=as_typed(keeping(one)),
        past=one.past(larder.on),
    )


def larder_data(larder: LarderSums, *, edition: str) -> LarderData:
    """Give the larder as data."""
    return LarderData(
        day=larder.on.isoformat(),
        edition=edition,
        containers=[_container(one.container, one.batch, one, larder) for one in larder.standing],
        components=[_in_store(id, one) for id, one in larder.in_store.items()],
        emptied=[str(one.mark) for one in larder.emptied],
    )


def _in_store(id: str, one: InStore) -> InStoreData:
    return InStoreData(
        component=id,
        name=one.component.model.name,
        must_be_cooked=one.component.must_be_cooked.value,
        held_g=weighed(one.held_g),
        good_g=weighed(one.good_g),
        level_g=known_weighed(one.level_g),
        short=one.short,
        containers=[str(standing.mark) for standing in one.standing],
    )
