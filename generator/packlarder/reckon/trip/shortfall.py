"""What the larder lacks for a trip, how it is come by, and the plan of the work: loads, tasks, what comes too late."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from packlarder.faults import Fault, Gap, Place
from packlarder.measure import in_grams
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.chain_back import ToDry, dried_at_home, is_mix, to_dry
from packlarder.reckon.trip.loads import loads_of
from packlarder.reckon.trip.overdue import done_now, under_way
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.records import PlannedTrip
from packlarder.reckon.trip.schedule import TimedLoad, timed
from packlarder.reckon.trip.shelf import tidy
from packlarder.reckon.trip.store_slips import no_dryer, starts_in_the_past
from packlarder.reckon.trip.stores import DryingLoad, Fill, Shortfall, Source, Task
from packlarder.reckon.trip.tasks import in_order, tasks_of_loads, tasks_without_dryer
from packlarder.reckon.trip.wants import Taken


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What is still to do before a trip, what of it nobody can work out, and what would have had to begin already."""

    shortfalls: tuple[Shortfall, ...]
    loads: tuple[DryingLoad, ...]
    tasks: tuple[Task, ...]
    gaps: tuple[Gap, ...]
    faults: tuple[Fault, ...]


def work_for(trip: PlannedTrip, fills: Sequence[Fill], taken: Sequence[Taken], pantry: Pantry) -> Work:
    """Plan how to get what is short; the dryers' time that it takes is gone for later trips.

    Of a trip that is under way, or over, nothing is planned any more.
    """
    if under_way(trip, pantry.on):
        return Work(shortfalls=(), loads=(), tasks=(), gaps=(), faults=())
    short = [fill for fill in fills if fill.short_g > 0]
    packing = pantry.packed_on(trip)
    foods = [to_dry(fill.component, fill.short_g, pantry) for fill in short if dried_at_home(fill.component)]
    loads = timed(loads_of(foods, pantry.book.household), packing, pantry)
    for_mixes_g = _for_mixes(taken)
    dried = {food.component.id: food for food in foods}
    shortfalls = tuple([_shortfall(fill, for_mixes_g, dried, loads, packing) for fill in short])
    tasks = [*tasks_of_loads(loads, foods), *tasks_without_dryer(shortfalls, packing, pantry)]
    return Work(
        shortfalls=shortfalls,
        loads=tuple([_drying_load(number, one) for number, one in enumerate(loads, 1)]),
        tasks=in_order(done_now(tasks, pantry.on)) if fills else (),
        gaps=tuple([_gap(food) for food in foods if food.trays is None]),
        faults=(
            *[starts_in_the_past(trip, one, pantry.on) for one in shortfalls if _late(one, pantry.on)],
            *[no_dryer(food, _first_line(food, taken)) for food in foods if food.card is None],
        ),
    )


def _for_mixes(taken: Iterable[Taken]) -> Mapping[str, float]:
    """Give for each component what of its shortfall goes into mixes."""
    short_g: dict[str, float] = defaultdict(float)
    for one in taken:
        if one.want.for_mix:
            short_g[one.want.component.id] += one.short_g
    return short_g


def _shortfall(
    fill: Fill, for_mixes_g: Mapping[str, float], dried: Mapping[str, ToDry], loads: Sequence[TimedLoad], packing: date
) -> Shortfall:
    component = fill.component
    food = dried.get(component.id)
    mine = [(number, one) for number, one in enumerate(loads, 1) if _lies_in(component, one)]
    source = Source.DRY if food else Source.MIX if is_mix(component) else Source.BUY
    bought_g = {Source.DRY: food.bought_g if food else None, Source.BUY: fill.short_g, Source.MIX: None}[source]
    begun_on = min([one.begun_on for _, one in mine], default=None)
    return Shortfall(
        component=component,
        source=source,
        short_g=fill.short_g,
        for_mixes_g=tidy(for_mixes_g.get(component.id, 0.0)),
        fresh_g=food.fresh_g if food else None,
        bought_g=bought_g,
        bought_as=food.bought_as if food else "",
        trays=food.trays if food else None,
        loads=tuple([number for number, _ in mine]),
        start_by=packing if source is Source.MIX else begun_on,
    )


def _first_line(food: ToDry, taken: Iterable[Taken]) -> Place:
    """Give the line that first wants what lacks of a food."""
    return next(one.want.line for one in taken if one.short_g > 0 and one.want.component.id == food.component.id)


def _lies_in(component: ComponentSums, one: TimedLoad) -> bool:
    return any(tray.component.id == component.id for tray in one.load.on_the_trays)


def _late(one: Shortfall, on: date) -> bool:
    return one.source is Source.DRY and one.start_by is not None and one.start_by < on


def _drying_load(number: int, one: TimedLoad) -> DryingLoad:
    return DryingLoad(
        number=number,
        dryer=one.load.dryer,
        on_the_trays=one.load.on_the_trays,
        starts=one.starts,
        ends=one.ends,
    )


def _gap(food: ToDry) -> Gap:
    """Say why nobody knows how and when something is dried."""
    name = food.component.model.name
    what = f"when to dry {in_grams(food.dry_g)} of {name.lower()}"
    if food.fresh_g is None:
        return Gap(what=what, missing="weigh it before and after drying and write `yields`")
    return Gap(what=what, missing=f"no dryer in book.yaml gives food that is {food.drying.value}")
