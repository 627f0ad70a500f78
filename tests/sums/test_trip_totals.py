"""The totals of any trip agree: nothing is lost and nothing counted twice between meals, packs, jars, legs and days."""

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from itertools import pairwise

import pytest
from hypothesis import given, settings
from tests.sums.random_trips import random_trips
from tests.sums.trip_of import Travelled

from packlarder.reckon.dish import printed_g
from packlarder.reckon.trip.records import Eater, TripSums

OF_DISHES = ("in_food_ml", "drained_away_ml", "pot_ml", "boiled_off_ml", "drink_ml", "heater_ml", "spare_ml")

any_trip = given(random_trips())
many = settings(max_examples=60, deadline=None)


def totals(pairs: Iterable[tuple[str, float]]) -> dict[str, float]:
    """Add up grams by component."""
    found: dict[str, float] = defaultdict(float)
    for id, grams in pairs:
        found[id] += grams
    return {id: round(grams, 6) for id, grams in found.items()}


def eaten_g(trip: TripSums) -> dict[str, float]:
    """Give what all meals and all food on the move want of each component, to the gram that is printed."""
    of_meals = [
        (part.component.id, printed_g(sums.dry_g))
        for meal in trip.meals
        for part, sums in zip(meal.plan.parts, meal.sums.parts, strict=True)
    ]
    return totals([*of_meals, *((ration.component.id, ration.dry_g) for ration in trip.on_the_move)])


@any_trip
@many
def test_packs_are_meals_and_food_on_the_move(found: Travelled) -> None:
    """To the gram, in all and of each component; each pack has a mark of its own, and RAW packs hold what is RAW."""
    trip = found.trip
    assert totals((item.component.id, item.grams) for pack in trip.packs for item in pack.items) == eaten_g(trip)
    in_meals_g = sum(meal.sums.weight_g for meal in trip.meals) + sum(one.dry_g for one in trip.on_the_move)
    assert trip.grams == pytest.approx(in_meals_g, abs=1e-6)
    for meal in trip.meals:
        items = [item.grams for pack in trip.packs for item in pack.items if item.number == meal.number]
        assert sum(items) == pytest.approx(meal.sums.weight_g, abs=1e-6)
    marks = {pack.mark for pack in trip.packs}
    assert len(marks) == len(trip.packs)
    assert all(pack.inside in marks for pack in trip.packs if pack.inside)
    assert all(item.component.raw for pack in trip.packs if pack.raw for item in pack.items)


@any_trip
@many
def test_fills_are_packs_and_mixes(found: Travelled) -> None:
    """What a trip wants of a component goes into packs and mixes, and is drawn, bought on the way, or short."""
    trip = found.trip
    into = totals((fill.component.id, grams) for fill in trip.stores.fills for _, grams in fill.into)
    assert {id: grams for id, grams in into.items() if grams} == eaten_g(trip)
    weighs = {pack.mark: pack for pack in trip.packs}
    for fill in trip.stores.fills:
        for mark, grams in fill.into:
            items = [item.grams for item in weighs[mark].items if item.component.id == fill.component.id]
            assert grams == pytest.approx(sum(items), abs=1e-6)
        into_packs_g = sum(grams for _, grams in fill.into)
        assert fill.need_g == pytest.approx(into_packs_g + fill.for_mixes_g, abs=1e-6)
        drawn_g = sum(one.grams for one in fill.drawn)
        assert fill.need_g == pytest.approx(drawn_g + fill.bought_on_the_way_g + fill.short_g, abs=1e-6)
    bought_g = totals(
        (item.component.id, item.grams) for pack in trip.packs if pack.bought_at is not None for item in pack.items
    )
    on_the_way = {fill.component.id: fill.bought_on_the_way_g for fill in trip.stores.fills}
    assert bought_g == {id: round(grams, 6) for id, grams in on_the_way.items() if grams}
    lacking = {fill.component.id: fill.short_g for fill in trip.stores.fills if fill.short_g}
    assert lacking == {one.component.id: one.short_g for one in trip.stores.shortfalls}


@any_trip
@many
def test_the_load_falls_from_all_food_to_the_spare_days(found: Travelled) -> None:
    """Each morning less by what was eaten and more by what was bought; on the last there is what is eaten on it.

    Where there is a day in reserve, it is the last, and its food is carried from the first morning on.
    """
    trip = found.trip
    days = trip.journey.days
    bought_g: dict[int, float] = defaultdict(float)
    for pack in trip.packs:
        if pack.bought_at is not None:
            bought_g[trip.stops[pack.bought_at].model.day] += pack.grams
    from_home_g = trip.grams - sum(bought_g.values())
    assert days[0].carried_g == pytest.approx(from_home_g + bought_g[1], abs=1e-6)
    for today, tomorrow in pairwise(days):
        assert tomorrow.carried_g == pytest.approx(today.carried_g - today.food_g + bought_g[tomorrow.day], abs=1e-6)
    assert days[-1].carried_g == pytest.approx(days[-1].food_g, abs=1e-6)
    in_reserve_g = sum(meal.sums.weight_g for meal in trip.meals if meal.spare)
    in_reserve_g += sum(ration.dry_g for ration in trip.on_the_move if ration.spare)
    assert in_reserve_g == pytest.approx(days[-1].food_g if trip.model.spare_day else 0, abs=1e-6)
    assert len(days) == trip.last_day + bool(trip.model.spare_day)


@any_trip
@many
def test_what_people_bear_is_what_comes_from_home(found: Travelled) -> None:
    """Everybody's packs together are all that was not bought on the way; where nobody can carry, nobody does."""
    trip = found.trip
    from_home = [pack for pack in trip.packs if pack.bought_at is None]
    borne = [mark for one in trip.journey.bearing for mark in one.packs]
    somebody = any(eater.burden for eater in trip.eaters)
    assert sorted(borne) == sorted(pack.mark for pack in from_home if somebody)
    borne_g = sum(one.grams for one in trip.journey.bearing)
    assert borne_g == pytest.approx(sum(pack.grams for pack in from_home) if somebody else 0, abs=1e-6)


@any_trip
@many
def test_people_eat_what_meals_hold(found: Travelled) -> None:
    """Energy, protein, salt and food of all people on a day are those of its meals and of its food on the move."""
    trip = found.trip
    days = {day.day: day for day in trip.journey.days}
    for number, day in days.items():
        fed = [one for one in trip.journey.fed if one.day == number]
        assert sum(one.food_g for one in fed) == pytest.approx(day.food_g, abs=1e-6)
        meals = [meal.sums for meal in trip.meals if meal.day == number]
        rations = [one for one in trip.on_the_move if one.day == number]
        for name, told in (("energy_kcal", 1.0), ("protein_g", 1.0), ("sodium_mg", 2.5 / 1000)):  # salt is sodium x 2.5
            held = [(getattr(sums.per_serving, name) or 0) * sums.servings for sums in meals]
            held += [(getattr(one.component.nutrients, name) or 0) * one.dry_g for one in rations]
            own = "salt_g" if name == "sodium_mg" else name
            assert sum(getattr(one, own) for one in fed) == pytest.approx(told * sum(held), abs=1e-6)
    assert {one.day for one in trip.journey.fed} == set(days)


@any_trip
@many
def test_every_drop_is_counted_once(found: Travelled) -> None:
    """The pieces of each leg are those of the dishes eaten between its ends, and add up with what is drunk and washed.

    The margin takes the leg to the next 100 mL; no piece is less than nothing.
    """
    trip = found.trip
    margin = trip.model.margins.water.base
    for leg in trip.journey.legs:
        served = [meal.sums.water for meal in trip.meals if meal.stop in leg.stops]
        for name in OF_DISHES:
            assert getattr(leg.water, name) == sum(getattr(water, name) for water in served)
        of_meals = sum(water.carry_ml for water in served)
        rest = of_meals + leg.water.drinking_ml + leg.water.washing_ml + leg.water.spare_day_ml
        assert leg.carry_ml == rest + leg.water.margin_ml
        assert leg.carry_ml % 100 == 0
        assert rest * (1 + margin) <= leg.carry_ml + 1e-6 < rest * (1 + margin) + 100
        assert min(leg.water) >= 0
        assert leg.treated_ml == (0 if leg.treated_by is None else leg.carry_ml)
    served_by = [stop for leg in trip.journey.legs for stop in leg.stops]
    served_by += [stop.stop for stop in trip.journey.stops if stop.on_the_spot]
    assert sorted(served_by) == [stop.index for stop in trip.stops]


@any_trip
@many
def test_all_drinking_and_washing_is_found_again(found: Travelled) -> None:
    """What all drink and wash in over the trip is carried on legs, taken on the spot at fill points, or from lakes."""
    trip = found.trip
    on_the_spot = [stop.meals for stop in trip.journey.stops if stop.on_the_spot]
    waters = [*(leg.water for leg in trip.journey.legs), *on_the_spot]
    assert sum(water.drinking_ml for water in waters) == all_drunk_ml(trip)
    assert sum(water.washing_ml for water in waters) == all_washed_ml(trip)
    for leg in trip.journey.legs:
        assert leg.water.spare_day_ml == (spare_day_ml(trip, leg.stops) if trip.model.spare_day and leg.stops else 0)


@any_trip
@many
def test_fuel_by_stop_is_the_fuel_to_carry(found: Travelled) -> None:
    """Stops and margin are the need; cooking at a stop is what its meals burn, rounded up; cartridges hold it all."""
    trip = found.trip
    for fuel in trip.journey.fuels:
        assert fuel.need_g == sum(stop.grams for stop in fuel.stops) + fuel.margin_g
        assert fuel.margin_g == math.ceil(sum(stop.grams for stop in fuel.stops) * trip.fuel_margin - 1e-9)
        assert sum(fuel.new_g) + sum(fuel.in_hand_g) >= fuel.need_g
        for stop in fuel.stops:
            meals = [meal for meal in trip.meals if meal.stop == stop.stop and meal.sums.heat.fuel == fuel.fuel]
            burnt_g = sum(
                meal.sums.heat.energy_kj / (meal.settled.fuel_mj_per_kg * meal.settled.efficiency) for meal in meals
            )
            assert burnt_g <= stop.cooking_g + 1e-6 < burnt_g + 1
    cooked = {(meal.stop, meal.sums.heat.fuel) for meal in trip.meals if meal.sums.heat.energy_kj}
    assert cooked <= {(stop.stop, fuel.fuel) for fuel in trip.journey.fuels for stop in fuel.stops}


def all_drunk_ml(trip: TripSums) -> int:
    """Give what all drink plain: each day and person their own less their milk, and two hours in heat at 950 mL."""
    plain = sum(math.ceil(sum(plain_ml(trip, eater, day) for eater in trip.eaters) - 1e-6) for day in days_of(trip))
    hot = sum(1 for stop in trip.stops if stop.model.in_heat)
    return plain + hot * 2 * 950 * len(trip.eaters)


def plain_ml(trip: TripSums, eater: Eater, day: int) -> float:
    """Give what one person drinks plain on a day."""
    milk = sum(
        meal.sums.water.drink_ml * eater.portion / meal.portions
        for meal in trip.meals
        if meal.day == day and eater.name in meal.eaters
    )
    return max(0.0, eater.drinks_ml - milk)


def all_washed_ml(trip: TripSums) -> int:
    """Give what all wash in, half a litre each, but for the days that end beside a lake."""
    reached = [[stop for stop in trip.stops if stop.model.day <= day] for day in days_of(trip)]
    washed_in = [stops[-1].model.other_water if stops else None for stops in reached]
    return 500 * len(trip.eaters) * washed_in.count(None)


def spare_day_ml(trip: TripSums, stops: Sequence[int]) -> int:
    """Give what a day in reserve takes: its meals, plain drinking, and washing unless all stops lie beside a lake."""
    meals_ml = sum(meal.sums.water.carry_ml for meal in trip.meals if meal.spare)
    drunk_ml = math.ceil(sum(plain_ml(trip, eater, trip.last_day + 1) for eater in trip.eaters) - 1e-6)
    inland = any(trip.stops[index].model.other_water is None for index in stops)
    return meals_ml + drunk_ml + (500 * len(trip.eaters) if inland else 0)


def days_of(trip: TripSums) -> range:
    """Give the days of a trip, the one in reserve left out."""
    return range(1, trip.last_day + 1)
