"""What is carried: the food of each day, its volume, and who bears which packs."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import timedelta
from typing import NamedTuple

from packlarder.reckon.dish import printed_g
from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.journey import Bearing, DayLoad
from packlarder.reckon.trip.records import PlannedTrip, TripPack


class Eaten(NamedTuple):
    """Some printed grams of a component that are eaten on a day."""

    component: ComponentSums
    grams: float
    day: int


def day_loads(planned: PlannedTrip, packs: Sequence[TripPack]) -> tuple[DayLoad, ...]:
    """Give what is eaten on each day and carried on its morning; the spare day is the last, where there is one."""
    eaten = [*_of_meals(planned), *_on_the_move(planned)]
    return tuple([_day_load(planned, eaten, packs, day) for day in range(1, planned.days + 1)])


def bearings(planned: PlannedTrip, packs: Sequence[TripPack]) -> tuple[Bearing, ...]:
    """Give what everybody carries when they leave home, also who carries nothing."""
    found: list[Bearing] = []
    for eater in planned.eaters:
        theirs = [pack for pack in packs if pack.bearer == eater.name and pack.bought_at is None]
        grams = sum(pack.grams for pack in theirs)
        found.append(Bearing(name=eater.name, grams=grams, packs=tuple([pack.mark for pack in theirs])))
    return tuple(found)


def _of_meals(planned: PlannedTrip) -> Iterator[Eaten]:
    for meal in planned.meals:
        for part, sums in zip(meal.plan.parts, meal.sums.parts, strict=True):
            component = meal.instead.get(part.index, part.component)
            yield Eaten(component, printed_g(sums.dry_g), meal.day)


def _on_the_move(planned: PlannedTrip) -> Iterator[Eaten]:
    for ration in planned.on_the_move:
        yield Eaten(ration.component, ration.dry_g, ration.day)


def _day_load(planned: PlannedTrip, eaten: Sequence[Eaten], packs: Sequence[TripPack], day: int) -> DayLoad:
    carried = _carried(planned, eaten, packs, day)
    per_ml = {component.id: component.grams_per.get(PER_ML) for component, _ in carried.values()}
    volumes = [grams / weight for id, (_, grams) in carried.items() if (weight := per_ml[id])]
    return DayLoad(
        day=day,
        on=planned.model.starts + timedelta(days=day - 1),
        food_g=sum(one.grams for one in eaten if one.day == day),
        carried_g=sum(grams for _, grams in carried.values()),
        volume_ml=sum(volumes),
        unmeasured=not all(per_ml.values()),
    )


def _carried(
    planned: PlannedTrip, eaten: Sequence[Eaten], packs: Sequence[TripPack], day: int
) -> Mapping[str, tuple[ComponentSums, float]]:
    """Give by component what is carried on a morning: all that is still to be eaten, but for what is bought later."""
    grams: defaultdict[str, float] = defaultdict(float)
    components = {one.component.id: one.component for one in eaten}
    for one in eaten:
        if one.day >= day:
            grams[one.component.id] += one.grams
    for pack in packs:
        if pack.bought_at is not None and planned.stops[pack.bought_at].model.day > day:
            for item in pack.items:
                grams[item.component.id] -= item.grams
    return {id: (components[id], amount) for id, amount in grams.items() if round(amount, 6) > 0}
