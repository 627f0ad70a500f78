"""What lies in the dryer together: trays shared out into loads, each food whole, raw food apart from other food."""

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """The loads of one dryer, with raw food apart; and with raw and other food together, where that saves a load.

    `together` is empty where it saves none, or where the household forbids it.
    """

    dryer: str
    apart: tuple[Load, ...]
    together: tuple[Load, ...]


def loads_of(foods: Iterable[ToDry], household: Household) -> tuple[Shared, ...]:
    """Share out what is to be dried into few loads, dryer by dryer; what no dryer dries is left out."""
    by_dryer: dict[str, list[ToDry]] = defaultdict(list)
    for food in foods:
        if food.card is not None and food.trays:
            by_dryer[food.card.dryer].append(food)
    return tuple([_of_dryer(name, held, household) for name, held in by_dryer.items()])


def conditioned(component: ComponentSums) -> bool:
    """Tell whether a food is conditioned before it is packed: air-dried fruit and vegetables are."""
    of_plants = all(kind.rules.group in _SNAPS_OR_BENDS for kind in component.kinds)
    return component.model.dried is Drying.AIR_DRIED and of_plants


def cooked(component: ComponentSums) -> bool:
    """Tell whether a food is cooked for the dryer."""
    return component.model.went_in is WentIn.COOKED


def _of_dryer(name: str, foods: Sequence[ToDry], household: Household) -> Shared:
    """Make the loads of one dryer. What is conditioned lies apart from what is not, where that costs no load."""
    dryer = household.dryers[name]
    in_order = sorted(foods, key=lambda food: food.component.id)
    cards = {food.component.id: food.card for food in foods if food.card is not None}

    def ways(by: Callable[[ToDry], object]) -> tuple[Load, ...]:
        filled = [load for group in _grouped(in_order, by) for load in _filled(group, dryer.trays)]
        return tuple([_load(name, dryer, trays, cards) for trays in filled])

    apart = min(ways(_class), ways(lambda food: food.component.raw), key=len)
    together = ways(lambda _: True) if household.larder.raw_with_cooked is not Together.NEVER else apart
    return Shared(dryer=name, apart=apart, together=together if len(together) < len(apart) else ())


def _class(food: ToDry) -> tuple[bool, bool]:
    return food.component.raw, conditioned(food.component)


def _grouped(foods: Sequence[ToDry], by: Callable[[ToDry], object]) -> list[list[ToDry]]:
    groups: dict[object, list[ToDry]] = defaultdict(list)
    for food in foods:
        groups[by(food)].append(food)
    return list(groups.values())


def _filled(foods: Sequence[ToDry], most: int) -> list[tuple[OnTrays, ...]]:
    """Put each food into the first load that has room for all of it, the largest first; more than a load is parted."""
    loads: list[list[OnTrays]] = []
    for food in sorted(foods, key=lambda food: -(food.trays or 0)):
        for piece in _pieces(food, most):
            room = (load for load in loads if sum(one.trays for one in load) + piece.trays <= most)
            load = next(room, None)
            if load is None:
                loads.append(load := [])
            load.append(piece)
    return [tuple(load) for load in loads]


def _pieces(food: ToDry, most: int) -> Iterator[OnTrays]:
    """Part a food that takes more than a load into full ones, and what remains."""
    trays, fresh_g, dry_g = food.trays or 0, food.fresh_g or 0.0, food.dry_g
    tray_g = 0.0 if food.card is None else food.card.tray_g
    while trays > most:
        share = tray_g * most / fresh_g
        part = OnTrays(component=food.component, trays=most, fresh_g=tidy(fresh_g * share), dry_g=tidy(dry_g * share))
        yield part
        trays, fresh_g, dry_g = trays - most, tidy(fresh_g - part.fresh_g), tidy(dry_g - part.dry_g)
    yield OnTrays(component=food.component, trays=trays, fresh_g=fresh_g, dry_g=dry_g)


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
