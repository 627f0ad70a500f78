"""The work before a trip with its days and hours, from the shop to the pack."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, datetime, time, timedelta

from packlarder.figures.before_a_trip import CONDITIONING, FROZEN_FROM
from packlarder.figures.dryness import Drying
from packlarder.measure import UP, kitchen_grams
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.chain_back import ToDry
from packlarder.reckon.trip.ingredients import Foods, foods_of_a_meal, foods_of_a_mix, into_a_mix
from packlarder.reckon.trip.loads import conditioned, cooked
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.schedule import TimedLoad
from packlarder.reckon.trip.shelf import tidy
from packlarder.reckon.trip.stores import OnTrays, Shortfall, Source, Task, TaskKind

ORDER = tuple(TaskKind)
AFTER_ALL = frozenset({TaskKind.CONDITION, TaskKind.MIX, TaskKind.PACK})
"""Work of whole days that begins when all else on its first day is done."""


def in_order(tasks: Iterable[Task]) -> tuple[Task, ...]:
    """Give tasks in the order of days and hours; of whole days, what comes before the dryer first, the rest last."""
    return tuple(sorted(tasks, key=_rank))


def _rank(task: Task) -> tuple[date, bool, datetime, int, int, tuple[str, ...]]:
    names = tuple([one.model.name for one in task.components])
    return task.starts.date(), task.kind in AFTER_ALL, task.starts, ORDER.index(task.kind), task.load, names


def tasks_of_loads(loads: Sequence[TimedLoad], foods: Iterable[ToDry]) -> Iterator[Task]:
    """Give the work on each load, from shopping to conditioning; loads are numbered from 1."""
    bought = _Bought(foods)
    last = {one.load.dryer: number for number, one in enumerate(loads, 1)}
    for number, one in enumerate(loads, 1):
        yield from _before(one, number, bought)
        yield from _in_the_dryer(one, number, rests=last[one.load.dryer] != number)
        soft = tuple(tray.component for tray in one.load.on_the_trays if conditioned(tray.component))
        if soft:
            until = one.ends.date() + timedelta(days=CONDITIONING.value)
            yield _by_day(TaskKind.CONDITION, one.ends.date(), until, soft, None, number)


def tasks_without_dryer(shortfalls: Iterable[Shortfall], packed_on: date, pantry: Pantry) -> Iterator[Task]:
    """Give what is only bought or mixed, and the packing itself.

    Shops are for the last day at home before packing, if that lies not behind already.
    """
    eve = pantry.at_home(packed_on - timedelta(days=1))
    shopped_on = packed_on if eve < pantry.on else eve
    for one in shortfalls:
        if one.source is Source.BUY:
            yield _by_day(TaskKind.SHOP, shopped_on, shopped_on, (one.component,), one.short_g, 0)
        if one.source is Source.MIX:
            foods = foods_of_a_mix(one.component, one.short_g, pantry)
            if foods:
                foods_g = tidy(sum(grams for _, grams in foods))
                yield _by_day(TaskKind.SHOP, shopped_on, shopped_on, (one.component,), foods_g, 0, foods)
            mixed = into_a_mix(one.component, one.short_g, pantry)
            yield _by_day(TaskKind.MIX, packed_on, packed_on, (one.component,), one.short_g, 0, mixed)
    yield _by_day(TaskKind.PACK, packed_on, packed_on, (), None, 0)


def _before(one: TimedLoad, number: int, bought: "_Bought") -> Iterator[Task]:
    """Give what is done before loading: the day before food is cooked and frozen; before that it is bought."""
    eve = one.eve
    for tray in one.load.on_the_trays:
        food = tray.component
        shop = one.begun_on if cooked(food) else eve
        bought_g = bought.share_g(tray)
        yield _by_day(TaskKind.SHOP, shop, shop, (food,), bought_g, number, foods_of_a_meal(food, bought_g))
        if cooked(food):
            yield _by_day(TaskKind.COOK, eve, eve, (food,), tray.fresh_g, number)
    if one.load.drying is Drying.FREEZE_DRIED:
        evening = datetime.combine(eve, time(int(FROZEN_FROM.value)))
        yield _by_hour(TaskKind.FREEZE, evening, one.starts, one, number, weighed=True)


def _in_the_dryer(one: TimedLoad, number: int, *, rests: bool) -> Iterator[Task]:
    yield _by_hour(TaskKind.DRY, one.starts, one.dry_at, one, number, weighed=True)
    yield _by_hour(TaskKind.WEIGH_AGAIN, one.dry_at, one.ends, one, number)
    if rests:
        yield _by_hour(TaskKind.DEFROST, one.ends, one.rested_at, one, number)


class _Bought:
    """Shares out what is bought of each component over its loads, so that the shares add up to it."""

    def __init__(self, foods: Iterable[ToDry]) -> None:
        self._left = {food.component.id: (food.bought_g or 0.0, food.fresh_g or 0.0) for food in foods}

    def share_g(self, tray: OnTrays) -> float:
        bought_g, fresh_g = self._left[tray.component.id]
        whole = tray.fresh_g >= fresh_g
        share_g = bought_g if whole else min(bought_g, kitchen_grams(bought_g * tray.fresh_g / fresh_g, UP))
        self._left[tray.component.id] = tidy(bought_g - share_g), tidy(fresh_g - tray.fresh_g)
        return share_g


def _by_day(
    kind: TaskKind,
    first: date,
    last: date,
    components: tuple[ComponentSums, ...],
    grams: float | None,
    load: int,
    foods: Foods = (),
) -> Task:
    return Task(
        kind=kind,
        starts=datetime.combine(first, time()),
        ends=datetime.combine(last, time()),
        whole_day=True,
        components=components,
        grams=grams,
        load=load,
        foods=foods,
    )


def _by_hour(
    kind: TaskKind, starts: datetime, ends: datetime, one: TimedLoad, number: int, *, weighed: bool = False
) -> Task:
    trays = one.load.on_the_trays
    return Task(
        kind=kind,
        starts=starts,
        ends=ends,
        whole_day=False,
        components=tuple([tray.component for tray in trays]),
        grams=tidy(sum(tray.fresh_g for tray in trays)) if weighed else None,
        load=number,
    )
