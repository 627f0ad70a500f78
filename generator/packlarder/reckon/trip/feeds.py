"""What a trip feeds: energy, protein, salt and food of every person and day, beside what a day should come to."""

from collections.abc import Sequence
from enum import StrEnum
from typing import NamedTuple

from packlarder.figures import trips
from packlarder.figures.trips import DayRange
from packlarder.figures.units import SALT_PER_SODIUM
from packlarder.reckon.records import Nutrients
from packlarder.reckon.trip.journey import Fed
from packlarder.reckon.trip.records import Eater, MoveRation, PlannedTrip, TripMeal

_TOLD = frozenset({"energy_kcal", "protein_g", "sodium_mg"})
"""The nutrients that are told of a day."""


class Beside(StrEnum):
    """How a day stands beside a range."""

    BELOW = "below"
    WITHIN = "within"
    ABOVE = "above"


class FedBeside(NamedTuple):
    """A day beside the ranges; None where some figure is not known, and where nothing was eaten to take a share of."""

    energy: Beside | None
    food: Beside
    protein: Beside | None
    salt: Beside | None


class _Share(NamedTuple):
    """Somebody's share of one meal, or of one food on the move."""

    nutrients: Nutrients
    times: float
    food_g: float
    complete: bool


def fed(planned: PlannedTrip) -> tuple[Fed, ...]:
    """Give what everybody eats, day by day; the spare day is the last, where there is one."""
    return tuple([_fed_on(planned, eater, day) for day in range(1, planned.days + 1) for eater in planned.eaters])


def beside_ranges(one: Fed) -> FedBeside:
    """Hold a day against the ranges. They are those of grown people, whatever somebody's appetite or age."""
    protein_share = one.protein_g * trips.PROTEIN_ENERGY.value / one.energy_kcal if one.energy_kcal else None
    return FedBeside(
        energy=_known(one, beside(one.energy_kcal, trips.DAY_ENERGY)),
        food=beside(one.food_g, trips.DAY_FOOD),
        protein=None if protein_share is None or not one.complete else beside(protein_share, trips.PROTEIN_SHARE),
        salt=_known(one, beside(one.salt_g, trips.DAY_SALT)),
    )


def beside(value: float, ends: DayRange) -> Beside:
    """Tell whether a value lies below, within or above a range; its ends belong to it."""
    if value > ends.most.value:
        return Beside.ABOVE
    return Beside.BELOW if ends.least is not None and value < ends.least.value else Beside.WITHIN


def _known(one: Fed, found: Beside) -> Beside | None:
    """Keep to what can be said where some figure is missing: what is above with what is known is above."""
    return found if one.complete or found is Beside.ABOVE else None


def _fed_on(planned: PlannedTrip, eater: Eater, day: int) -> Fed:
    meals = [meal for meal in planned.meals if meal.day == day and eater.name in meal.eaters]
    rations = [ration for ration in planned.on_the_move if ration.day == day]
    everybody = sum(one.portion for one in planned.eaters)
    shares = [_of_meal(meal, eater) for meal in meals]
    shares += [_of_ration(ration, eater.portion / everybody) for ration in rations if everybody]
    return Fed(
        name=eater.name,
        day=day,
        energy_kcal=_total(shares, "energy_kcal"),
        protein_g=_total(shares, "protein_g"),
        salt_g=_total(shares, "sodium_mg") * SALT_PER_SODIUM.value / 1000,
        food_g=sum(share.food_g for share in shares),
        complete=all(share.complete for share in shares),
    )


def _of_meal(meal: TripMeal, eater: Eater) -> _Share:
    share = eater.portion / meal.portions
    return _Share(
        nutrients=meal.sums.per_serving,
        times=meal.sums.servings * share,
        food_g=meal.sums.weight_g * share,
        complete=meal.sums.incomplete.isdisjoint(_TOLD),
    )


def _of_ration(ration: MoveRation, share: float) -> _Share:
    nutrients = ration.component.nutrients
    complete = all(getattr(nutrients, name) is not None for name in _TOLD)
    return _Share(nutrients=nutrients, times=ration.dry_g * share, food_g=ration.dry_g * share, complete=complete)


def _total(shares: Sequence[_Share], nutrient: str) -> float:
    """Add up what is known of a nutrient."""
    known = [(getattr(share.nutrients, nutrient), share.times) for share in shares]
    return sum([value * times for value, times in known if value is not None], 0.0)
