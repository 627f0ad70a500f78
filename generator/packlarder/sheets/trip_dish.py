"""A dish of a trip as its opening and its labels see it: at its stop, its packs under the marks that they bear."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from string import ascii_lowercase

from packlarder.book.household import HeaterWater, Household
from packlarder.reckon.records import PlannedPack
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.safety import DishCase, Finding, check_dish
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.dish_series import DishSeries

OPENING = "meal-{number}"
TUB = "T"
"""What the mark of a tub begins with, as `reckon.trip.packing` writes it."""


def served_alike(trip: TripSums) -> tuple[tuple[TripMeal, ...], ...]:
    """Group the meals that one opening serves: the same dish of one step for the same people, made in the same way.

    Groups are in the order of their first meals, and meals in theirs. A dish of several steps stands for itself each
    time, so that its steps have times of day; so does what is in reserve, and what something is bought for on the way.
    """
    groups: list[list[TripMeal]] = []
    for meal in trip.meals:
        same = next((group for group in groups if _alike(group[0], meal, trip)), None)
        if same is None:
            groups.append([meal])
        else:
            same.append(meal)
    return tuple(tuple(group) for group in groups)


def _alike(one: TripMeal, other: TripMeal, trip: TripSums) -> bool:
    return (
        len(one.plan.steps) == 1
        and (one.dish, one.eaters, one.portions, one.spare) == (other.dish, other.eaters, other.portions, other.spare)
        and one.settled == other.settled
        and (_heater_water(one, trip) == _heater_water(other, trip) or not any(step.heater for step in one.plan.steps))
        and not any(pack.bought_at is not None for meal in (one, other) for pack in packs_of(meal, trip))
    )


def _heater_water(meal: TripMeal, trip: TripSums) -> HeaterWater:
    """Tell where the water of ration heaters comes from at a meal's stop."""
    other = None if meal.stop is None else trip.stops[meal.stop].model.other_water
    return HeaterWater.CARRIED if other is None else HeaterWater(other.value)


def packs_of(meal: TripMeal, trip: TripSums) -> tuple[TripPack, ...]:
    """Give the packs of a meal, without tubs that serve the whole trip."""
    return tuple(pack for pack in trip.packs if pack.meal == meal.number)


def tub_of(meal: TripMeal, component: str, trip: TripSums) -> TripPack | None:
    """Give the tub from which a meal takes a component."""
    tubs = (pack for pack in trip.packs if pack.meal is None)
    return next(
        (tub for tub in tubs for item in tub.items if (item.number, item.component.id) == (meal.number, component)),
        None,
    )


def bought_besides(mark: str, trip: TripSums) -> tuple[TripPack, ...]:
    """Give what is bought on the way for a pack that comes from home: it bears its mark with a letter more."""
    return tuple(
        pack for pack in trip.packs if pack.bought_at is not None and pack.mark[:-1] == mark and pack.mark[-1].isalpha()
    )


def one_for_each(meal: TripMeal, number: str, trip: TripSums) -> tuple[TripPack, ...]:
    """Give the packs of each eater for a pack of a dish, where it is filled so: its mark with a letter more."""
    whole = mark(meal, number)
    return tuple(pack for pack in packs_of(meal, trip) if pack.for_ and pack.mark.rstrip(ascii_lowercase) == whole)


def is_tub(pack: TripPack) -> bool:
    """Tell whether a pack is a tub that serves the whole trip."""
    return pack.mark.startswith(TUB)


def opening_id(group: Sequence[TripMeal]) -> str:
    """Name the opening that serves some meals."""
    return OPENING.format(number=group[0].number)


def mark(meal: TripMeal, number: str) -> str:
    """Give what is written on a pack: `4.1` for the first of meal 4, `4.1.1` for one inside it."""
    return f"{meal.number}.{number}"


def marks_told(group: Sequence[TripMeal], number: str) -> str:
    """Give what a pack is called where some meals are cooked from one opening: `2.1`, or `2.1, 6.1 or 11.1`."""
    *others, last = (mark(meal, number) for meal in group)
    return trip_words.OR.join(filter(None, (words.COMMA.join(others), last)))


def at_its_stop(group: Sequence[TripMeal], trip: TripSums, household: Household) -> DishSeries:
    """Give the dish of some meals that are alike for their portions; its packs are called by their marks."""
    first = group[0]
    usual = household.usual_conditions.model_copy(update={"heater_water": _heater_water(first, trip)})
    packs = tuple(_marked(pack, group) for pack in first.plan.packs)
    return DishSeries(
        plan=replace(first.plan, packs=packs),
        household=household.model_copy(update={"usual_conditions": usual}),
        sums=(first.sums,),
        usual=0,
    )


def check_meals(group: Sequence[TripMeal], household: Household) -> tuple[Finding, ...]:
    """Hold the dish of some meals that are alike against the rules, as it is cooked there; packs by their marks."""
    first = group[0]
    findings = check_dish(DishCase(first.plan, first.sums, household))
    packs = [one.number for pack in first.plan.packs for one in (pack, *pack.inside)]
    called = {words.PACK.format(number=one): words.PACK.format(number=marks_told(group, one)) for one in packs}
    return tuple(
        replace(one, words={key: _called(said, called) for key, said in one.words.items()}) for one in findings
    )


def _called(said: str, called: Mapping[str, str]) -> str:
    """Put other names for some of what is listed."""
    return words.COMMA.join(called.get(one, one) for one in said.split(words.COMMA))


def _marked(pack: PlannedPack, group: Sequence[TripMeal]) -> PlannedPack:
    inside = tuple(_marked(inner, group) for inner in pack.inside)
    return replace(pack, number=marks_told(group, pack.number), inside=inside)
