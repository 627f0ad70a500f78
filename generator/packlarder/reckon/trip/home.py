"""What a trip that came home took from the larder, and what of it was left."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from packlarder.book.draw import Mark
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import TripSums


@dataclass(frozen=True, slots=True, kw_only=True)
class TakenOut:
    """What a trip took from one container; `emptied` says that nothing was left in it."""

    mark: Mark
    component: ComponentSums
    grams: float
    emptied: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class StayedShut:
    """What a trip was to take from a container that stayed shut: it is not booked."""

    mark: Mark
    component: ComponentSums
    grams: float


@dataclass(frozen=True, slots=True, kw_only=True)
class NotInStore:
    """What a trip wanted and the larder had not: it came from elsewhere, and is not booked."""

    component: ComponentSums
    grams: float


def taken_out(trip: TripSums, left_g: Mapping[Mark, float], not_taken: Collection[Mark] = ()) -> tuple[TakenOut, ...]:
    """Give what a trip took from each container, by component and then in the order in which they were emptied.

    `left_g` is what each container held before the trip; `not_taken` were opened for nobody after all.
    """
    grams: dict[Mark, float] = {}
    whose: dict[Mark, ComponentSums] = {}
    for fill in trip.stores.fills:
        for drawn in fill.drawn:
            grams[drawn.mark] = grams.get(drawn.mark, 0.0) + drawn.grams
            whose.setdefault(drawn.mark, fill.component)
    return tuple(
        TakenOut(mark=mark, component=whose[mark], grams=took, emptied=took >= left_g.get(mark, took) - CRUMB_G)
        for mark, took in grams.items()
        if mark not in not_taken and took > 0
    )


def stayed_shut(trip: TripSums, not_taken: Collection[Mark]) -> tuple[StayedShut, ...]:
    """Give what was planned to be taken from containers that nobody opened after all."""
    return tuple(
        StayedShut(mark=drawn.mark, component=fill.component, grams=drawn.grams)
        for fill in trip.stores.fills
        for drawn in fill.drawn
        if drawn.mark in not_taken
    )


CRUMB_G = 0.05
"""Less than what kitchen scales show."""


def not_in_store(trip: TripSums) -> tuple[NotInStore, ...]:
    """Give what the larder lacked for a trip."""
    return tuple(
        NotInStore(component=fill.component, grams=fill.short_g) for fill in trip.stores.fills if fill.short_g > CRUMB_G
    )


def came_along(trip: TripSums) -> Mapping[str, ComponentSums]:
    """Give the components that a trip carried or bought, by id."""
    return {one.id: one for one in _carried(trip)}


def _carried(trip: TripSums) -> Iterator[ComponentSums]:
    for meal in trip.meals:
        yield from (part.component for part in meal.plan.parts)
        yield from meal.instead.values()
    yield from (ration.component for ration in trip.on_the_move)
