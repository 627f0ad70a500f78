"""A dish of a trip as its opening and its labels see it: at its stop, its packs under the marks that they bear."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from string import ascii_lowercase

from packlarder.book.household import HeaterWater, Household
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.records import PlannedPack
from packlarder.reckon.trip.journey import MealClock
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.safety import DishCase, Finding, check_dish
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.dish_series import DishSeries

OPENING = "meal-{number}"


def served_alike(trip: TripSums) -> tuple[tuple[TripMeal, ...], ...]:
    """Group the meals that one opening serves: the same dish for the same people, cooked in the same way.

    Groups are in the order of their first meals, and meals in theirs. What is in reserve, and what something is bought
    for on the way, stands for itself.
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
        (one.dish, one.eaters, one.portions, one.spare) == (other.dish, other.eaters, other.portions, other.spare)
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
    return pack.mark.startswith(trip_words.TUB)


def opening_id(group: Sequence[TripMeal]) -> str:
    """Name the opening that serves some meals."""
    return OPENING.format(number=group[0].number)


def mark(meal: TripMeal, number: str) -> str:
    """Give what is written on a pack: `4.1` for the first of meal 4, `4.1.1` for one inside it."""
    return f"{meal.number}.{number}"


def at_its_stop(meal: TripMeal, trip: TripSums, household: Household, *, marked: bool) -> DishSeries:
    """Give the dish of a meal for its portions; `marked`, its packs are called by their marks."""
    usual = household.usual_conditions.model_copy(update={"heater_water": _heater_water(meal, trip)})
    packs = tuple(_marked(pack, meal) for pack in meal.plan.packs) if marked else meal.plan.packs
    return DishSeries(
        plan=replace(meal.plan, packs=packs),
        household=household.model_copy(update={"usual_conditions": usual}),
        sums=(meal.sums,),
        usual=0,
    )


def check_meal(meal: TripMeal, household: Household, *, marked: bool) -> tuple[Finding, ...]:
    """Hold the dish of a meal against the rules, as it is cooked there; `marked`, packs are told by their marks."""
    findings = check_dish(DishCase(meal.plan, meal.sums, household))
    if not marked:
        return findings
    packs = [one.number for pack in meal.plan.packs for one in (pack, *pack.inside)]
    called = {words.PACK.format(number=one): words.PACK.format(number=mark(meal, one)) for one in packs}
    return tuple(
        replace(one, words={key: _called(said, called) for key, said in one.words.items()}) for one in findings
    )


def _called(said: str, called: Mapping[str, str]) -> str:
    """Put other names for some of what is listed."""
    return words.COMMA.join(called.get(one, one) for one in said.split(words.COMMA))


def _marked(pack: PlannedPack, meal: TripMeal) -> PlannedPack:
    inside = tuple(_marked(inner, meal) for inner in pack.inside)
    return replace(pack, number=mark(meal, pack.number), inside=inside)


def clock_of(meal: TripMeal, trip: TripSums) -> MealClock | None:
    """Give when a meal is begun and eaten; None where that could not be worked out."""
    return next((one for one in trip.journey.clock if one.number == meal.number), None)


def moments(meal: TripMeal, trip: TripSums) -> Iterator[datetime | None]:
    """Give when each step of a meal begins, in the order of steps: at the minutes that are printed beside it."""
    known = clock_of(meal, trip)
    for step in meal.sums.steps:
        yield None if known is None else known.start_at + timedelta(minutes=whole_minutes(step.start_min))
