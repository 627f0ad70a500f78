"""What lies in the dryer together: trays shared out into loads, raw food apart from other food."""

import itertools
import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from packlarder.book.household import Household
from packlarder.book.stock import Dryer, Together
from packlarder.figures.before_a_trip import CONDITIONING, DRYING_HOURS, REST_HOURS
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Group, WentIn
from packlarder.reckon.card import DryingCard
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.chain_back import ToDry
from packlarder.reckon.trip.shelf import tidy
from packlarder.reckon.trip.stores import OnTrays

_SNAPS_OR_BENDS = frozenset({Group.FRUIT, Group.VEGETABLE})


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """A load before it has a time: what it takes, how long, and how long its dryer rests after it, in hours.

    `conditions` are the days for which something of it is conditioned afterwards, 0 for nothing. `leads` are the days
    before loading on which the first work on it is done, if people are at home then.
    """

    dryer: str
    drying: Drying
    on_the_trays: tuple[OnTrays, ...]
    hours: int
    rest_hours: float
    conditions: int
    leads: int


def loads_of(foods: Iterable[ToDry], household: Household) -> tuple[Load, ...]:
    """Share out what is to be dried into as few loads as can be; what no dryer dries is left out."""
    by_dryer: dict[str, list[ToDry]] = defaultdict(list)
    for food in foods:
        if food.card is not None and food.trays:
            by_dryer[food.card.dryer].append(food)
    return tuple(load for name, held in by_dryer.items() for load in _of_dryer(name, held, household))


def conditioned(component: ComponentSums) -> bool:
    """Tell whether a food is conditioned before it is packed: air-dried fruit and vegetables are."""
    of_plants = all(kind.rules.group in _SNAPS_OR_BENDS for kind in component.kinds)
    return component.model.dried is Drying.AIR_DRIED and of_plants


def cooked(component: ComponentSums) -> bool:
    """Tell whether a food is cooked for the dryer."""
    return component.model.went_in is WentIn.COOKED


def _of_dryer(name: str, foods: Sequence[ToDry], household: Household) -> Iterator[Load]:
    """Make the loads of one dryer: of the ways to share them out the first that takes fewest.

    Best, what is raw, what is conditioned and all the rest lie apart, and no food is parted. Raw and other food lie
    together only where that saves a load, and never where the household forbids it.
    """
    dryer = household.dryers[name]
    in_order = sorted(foods, key=lambda food: food.component.id)
    apart = _grouped(in_order, lambda food: food.component.raw)
    most = dryer.trays
    ways = [
        [load for group in _grouped(in_order, _class) for load in _unparted(group, most)],
        [load for group in apart for load in _unparted(group, most)],
        [load for group in apart for load in _one_after_another(group, most)],
    ]
    if household.larder.raw_with_cooked is not Together.NEVER:
        ways.append(list(_one_after_another([food for group in apart for food in group], most)))
    cards = {food.component.id: food.card for food in foods if food.card is not None}
    for trays in min(ways, key=len):
        yield _load(name, dryer, trays, cards)


def _class(food: ToDry) -> tuple[bool, bool]:
    return food.component.raw, conditioned(food.component)


def _grouped(foods: Sequence[ToDry], by: Callable[[ToDry], object]) -> list[list[ToDry]]:
    groups: dict[object, list[ToDry]] = defaultdict(list)
    for food in foods:
        groups[by(food)].append(food)
    return list(groups.values())


def _unparted(foods: Sequence[ToDry], most: int) -> list[tuple[OnTrays, ...]]:
    """Put each food into the first load that has room for all of it, the largest first; more than a load is parted."""
    loads: list[list[OnTrays]] = []
    for food in sorted(foods, key=lambda food: -(food.trays or 0)):
        for piece in _pieces(food, itertools.repeat(most)):
            room = (load for load in loads if sum(one.trays for one in load) + piece.trays <= most)
            load = next(room, None)
            if load is None:
                loads.append(load := [])
            load.append(piece)
    return [tuple(load) for load in loads]


def _one_after_another(foods: Sequence[ToDry], most: int) -> list[tuple[OnTrays, ...]]:
    """Fill every load before the next one is begun; what does not fit goes on in that."""
    loads: list[list[OnTrays]] = [[]]
    for food in foods:
        free = most - sum(one.trays for one in loads[-1])
        for piece in _pieces(food, itertools.chain([free] if free else [], itertools.repeat(most))):
            if sum(one.trays for one in loads[-1]) == most:
                loads.append([])
            loads[-1].append(piece)
    return [tuple(load) for load in loads]


def _pieces(food: ToDry, room: Iterable[int]) -> Iterator[OnTrays]:
    """Part a food by the trays that are free for it: full ones, and on the last of all what remains."""
    trays, fresh_g, dry_g = food.trays or 0, food.fresh_g or 0.0, food.dry_g
    tray_g = 0.0 if food.card is None else food.card.tray_g
    for free in room:
        if trays <= free:
            yield OnTrays(component=food.component, trays=trays, fresh_g=fresh_g, dry_g=dry_g)
            return
        share = tray_g * free / fresh_g
        part = OnTrays(component=food.component, trays=free, fresh_g=tidy(fresh_g * share), dry_g=tidy(dry_g * share))
        yield part
        trays, fresh_g, dry_g = trays - free, tidy(fresh_g - part.fresh_g), tidy(dry_g - part.dry_g)


def _load(name: str, dryer: Dryer, trays: tuple[OnTrays, ...], cards: dict[str, DryingCard]) -> Load:
    components = [one.component for one in trays]
    rest_h = REST_HOURS[dryer.dries].value if dryer.between is None else dryer.between.base / 60
    before = 2 if any(cooked(component) for component in components) else 1
    return Load(
        dryer=name,
        drying=dryer.dries,
        on_the_trays=trays,
        hours=max(_hours(cards[component.id], dryer.dries) for component in components),
        rest_hours=rest_h,
        conditions=int(CONDITIONING.value) if any(conditioned(component) for component in components) else 0,
        leads=before,
    )


def _hours(card: DryingCard, drying: Drying) -> int:
    """Give how long a food dries, in whole hours, rounded up: our runs, or what the dryer takes, or a figure."""
    if card.hours is not None:
        return math.ceil(card.hours.median)
    return math.ceil(DRYING_HOURS[drying].value if card.usual_hours is None else card.usual_hours)
