"""Packs that are one eater's: what is warmed in a heater or steeped in its pack is divided at home, not at camp."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from string import ascii_lowercase

from packlarder.book.step import Verb
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import PlannedPack, PlannedStep
from packlarder.reckon.trip.records import Eater, TripItem, TripMeal, TripPack
from packlarder.reckon.trip.shelf import tidy

POURED_BY_ML = 10
"""Shares of water are told in steps of this, where all of it is a multiple of it."""
FINE_BELOW_G = 10
"""Shares that are smaller on the average are weighed to a tenth of a gram."""


def is_for_each(meal: TripMeal, pack: PlannedPack) -> bool:
    """Tell whether a pack is filled for each eater: what a heater warms, and single servings that steep in their pack.

    What is wetted together with another pack is not: its water could not be shared out.
    """
    wetted = _wetted(meal, pack)
    if pack.inside or wetted is None or set(meal.plan.wetted_by(wetted)) != set(pack.parts):
        return False
    warmed = any(step.heater and set(pack.parts) <= set(step.parts) for step in meal.plan.steps)
    return warmed or (meal.plan.model.serves == 1 and wetted.verb is Verb.POUR_OVER)


def one_for_each(meal: TripMeal, planned: PlannedPack, pack: TripPack, eaters: Sequence[Eater]) -> Iterator[TripPack]:
    """Give a pack for each eater, with their share of every item and of its water; shares add up to the whole."""
    portions = {one.name: one.portion for one in eaters}
    shares = [portions[name] for name in meal.eaters]
    wetted = _wetted(meal, planned)
    water_ml = 0 if wetted is None else round(meal.sums.steps[wetted.index].water_ml)
    waters = share_out(water_ml, shares, 1 if water_ml % POURED_BY_ML else POURED_BY_ML)
    grams = [_grams(item, shares) for item in pack.items]
    letters = ascii_lowercase if len(shares) > 1 else ("",)
    for at, (name, letter) in enumerate(zip(meal.eaters, letters, strict=False)):
        items = tuple([replace(item, grams=each[at]) for item, each in zip(pack.items, grams, strict=True)])
        yield replace(pack, mark=f"{pack.mark}{letter}", items=items, for_=name, water_ml=waters[at])


def _wetted(meal: TripMeal, pack: PlannedPack) -> PlannedStep | None:
    """Give the one step that wets all of a pack."""
    steps = {meal.plan.wetted_in[part] for part in pack.parts}
    only = steps.pop() if len(steps) == 1 else None
    return None if only is None else meal.plan.steps[only]


def _grams(item: TripItem, shares: Sequence[float]) -> Sequence[float]:
    """Share out the printed weight: in whole grams, or in tenths where it has some or is little."""
    whole = item.grams == int(item.grams) and item.grams >= FINE_BELOW_G * len(shares)
    step = 10 if whole else 1
    return [tidy(tenths / 10) for tenths in share_out(round(item.grams * 10), shares, step)]
