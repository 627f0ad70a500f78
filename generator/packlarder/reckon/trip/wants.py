"""What a trip wants of each component, meal by meal, to the gram that is printed."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from packlarder.faults import Place
from packlarder.reckon.dish import printed_g
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import MoveRation, TripMeal
from packlarder.reckon.trip.shops import Shops
from packlarder.reckon.trip.stores import Drawn


@dataclass(frozen=True, slots=True, kw_only=True)
class Want:
    """So much of a component, eaten on a day; `line` is where it is written.

    `bought_at` is the stop where it is bought, None for what comes from home. `for_mix` says that it goes into a mix
    that is made before the trip, which is last eaten on that day.
    """

    component: ComponentSums
    grams: float
    on: date
    line: Place
    bought_at: int | None = None
    for_mix: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What the larder gave for a want, and what it lacks."""

    want: Want
    drawn: tuple[Drawn, ...]
    short_g: float


def wants_of_meal(meal: TripMeal, shops: Shops) -> Iterator[Want]:
    """Give what a meal wants, part by part."""
    for part, sums in zip(meal.plan.parts, meal.sums.parts, strict=True):
        yield Want(
            component=part.component,
            grams=printed_g(sums.dry_g),
            on=meal.on,
            line=meal.line,
            bought_at=shops.for_meal(part.component, meal),
        )


def want_of_ration(ration: MoveRation, shops: Shops) -> Want:
    """Give what the food on the move of a day wants of one component."""
    return Want(
        component=ration.component,
        grams=ration.dry_g,
        on=ration.on,
        line=ration.line,
        bought_at=shops.for_ration(ration.component, ration),
    )
