"""Packs, larder and drying plan of a trip as records for other programs; second part of `trip_data`."""

from datetime import date, datetime

from packlarder.measure import as_typed
from packlarder.reckon.trip.records import TripItem, TripPack, TripSums
from packlarder.reckon.trip.stores import DryingLoad, Fill, OnTrays, Shortfall, Task
from packlarder.sheets.data_figures import number
from packlarder.sheets.trip_names import stop_called
from packlarder.sheets.trip_store_records import (
    DrawnData,
    FillData,
    FoodData,
    IngredientData,
    IntoData,
    ItemData,
    LoadData,
    OnTraysData,
    PackData,
    ShortfallData,
    TaskData,
)

FINE = 2
"""Places after the point: finer than any weight is printed, so that weights still add up."""


def grams(weight_g: float) -> float:
    """Give a weight as it is printed, without the noise of sums."""
    return number(weight_g, FINE)


def known_grams(weight_g: float | None) -> float | None:
    """Give a weight as it is printed, if there is one."""
    return None if weight_g is None else grams(weight_g)


def moment(at: datetime) -> str:
    """Give a moment in ISO's way, to the minute."""
    return at.isoformat(timespec="minutes")


def pack_data(trip: TripSums, pack: TripPack) -> PackData:
    """Give a pack with what is in it."""
    return PackData(
        mark=pack.mark,
        called=as_typed(pack.called),
        for_whom=pack.for_ or None,
        water_ml=pack.water_ml,
        meal=pack.meal,
        day=pack.day,
        date=pack.on.isoformat(),
        bearer=pack.bearer or None,
        inside=pack.inside or None,
        raw=pack.raw,
        sachet=pack.sachet,
        spare=pack.spare,
        bought_at=None if pack.bought_at is None else stop_called(trip, pack.bought_at),
        grams=grams(pack.grams),
        items=[_item(item) for item in pack.items],
    )


def _item(item: TripItem) -> ItemData:
    return ItemData(
        component=item.component.id,
        name=item.component.model.name,
        raw=item.component.raw,
        grams=grams(item.grams),
        meal=item.number or None,
    )


def fill_data(fill: Fill) -> FillData:
    """Give all that a trip wants of a component."""
    return FillData(
        component=fill.component.id,
        name=fill.component.model.name,
        raw=fill.component.raw,
        need_g=grams(fill.need_g),
        drawn=[DrawnData(mark=str(one.mark), grams=grams(one.grams), use_by=_day(one.use_by)) for one in fill.drawn],
        bought_on_the_way_g=grams(fill.bought_on_the_way_g),
        short_g=grams(fill.short_g),
        into=[IntoData(pack=mark, grams=grams(weight_g)) for mark, weight_g in fill.into],
        for_mixes_g=grams(fill.for_mixes_g),
        first_on=fill.first_on.isoformat(),
        last_on=fill.last_on.isoformat(),
    )


def shortfall_data(short: Shortfall) -> ShortfallData:
    """Give what the larder lacks of a component."""
    return ShortfallData(
        component=short.component.id,
        name=short.component.model.name,
        raw=short.component.raw,
        source=short.source.value,
        short_g=grams(short.short_g),
        for_mixes_g=grams(short.for_mixes_g),
        fresh_g=known_grams(short.fresh_g),
        bought_g=known_grams(short.bought_g),
        bought_as=as_typed(short.bought_as) or None,
        trays=short.trays,
        loads=list(short.loads),
        start_by=_day(short.start_by),
    )


def load_data(load: DryingLoad) -> LoadData:
    """Give a run of a dryer that is still to be made."""
    return LoadData(
        number=load.number,
        dryer=load.dryer,
        raw=load.raw,
        starts=moment(load.starts),
        ends=moment(load.ends),
        on_the_trays=[_on_trays(one) for one in load.on_the_trays],
    )


def _on_trays(one: OnTrays) -> OnTraysData:
    return OnTraysData(
        component=one.component.id,
        name=one.component.model.name,
        raw=one.component.raw,
        trays=one.trays,
        fresh_g=grams(one.fresh_g),
        dry_g=grams(one.dry_g),
    )


def task_data(task: Task) -> TaskData:
    """Give something to do before a trip."""
    tell = _whole_day if task.whole_day else moment
    return TaskData(
        what=task.kind.value,
        starts=tell(task.starts),
        ends=tell(task.ends),
        whole_day=task.whole_day,
        components=[FoodData(component=one.id, name=one.model.name, raw=one.raw) for one in task.components],
        grams=known_grams(task.grams),
        load=task.load or None,
        foods=[IngredientData(name=name, grams=grams(weight)) for name, weight in task.foods],
    )


def _whole_day(at: datetime) -> str:
    return at.date().isoformat()


def _day(on: date | None) -> str | None:
    return None if on is None else on.isoformat()
