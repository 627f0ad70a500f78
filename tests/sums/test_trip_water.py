"""The water of a trip by leg: what dishes take, what is drunk and washed in, what is treated, and what it is kept in.

Two people drink 3 L and wash in 0.5 L a day each; the waters of the dishes are those of `journey_of.DISHES`.
"""

import math
from collections.abc import Sequence
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.journey_of import DISHES, Travelled, journey_of

from packlarder.book.stop import Fills, OtherWater, WaterTreatment
from packlarder.figures import trips
from packlarder.figures.facts import FACTS
from packlarder.reckon.trip.journey import LegWater
from packlarder.safety.limits import BOIL_LONGER_ABOVE

TWO_FILLS = """\
    {place: A, day: 1, fills: tap, meals: [supper: rice, breakfast: noodles]}
    {place: B, day: 2, meals: [supper: beef, lunch: heated rice]}
    {place: C, day: 4, fills: tap, meals: [lunch: rice]}
    """


def test_a_whole_leg_by_hand() -> None:
    """Pieces field by field: beef on day 2, heated rice and milk on day 3; drinking of days 2 to 4; washing of two."""
    leg = journey_of(TWO_FILLS, more="drinks: [milk]").leg(2)
    assert (leg.from_stop, leg.to_stop, leg.first_day, leg.last_day, leg.stops) == (0, 2, 2, 4, (1,))
    assert leg.water == LegWater(
        in_food_ml=2 * 75 + 2 * 200,  # of the beef's 200 mL 75 stay in
        drained_away_ml=2 * 125,
        drink_ml=2 * 180,  # day 3 only: the milk of day 2 is drunk with breakfast at the tap
        heater_ml=2 * 60,
        drinking_ml=3 * (6000 - 360),  # day 2 on the way to B, day 3 at B, day 4 on the way to C
        washing_ml=2 * 1000,  # days 2 and 3; on day 4 they wash at the tap
        margin_ml=22_300 - 20_200,  # 20,200 and a tenth is 22,220, in steps of 100 is 22,300
    )
    assert leg.carry_ml == 22_300
    assert leg.fills is Fills.TAP


def test_what_is_eaten_at_a_fill_point_is_not_carried() -> None:
    """Rice, noodles and the milk of days 1 and 2 are served at A: no leg has them, its stop has."""
    trip = journey_of(TWO_FILLS, more="drinks: [milk]")
    at_a = trip.stop(0)
    assert at_a.on_the_spot
    assert at_a.meals.drink_ml == 2 * 360
    assert (
        at_a.meals.in_food_ml + at_a.meals.pot_ml + at_a.meals.boiled_off_ml
        == 2 * 200 + trip.meal(3).sums.water.carry_ml
    )
    assert trip.leg(1).water._replace(drinking_ml=0, margin_ml=0) == LegWater()


def test_legs_run_from_tap_to_tap() -> None:
    """From home to A, to C, and none after C; where C is no fill point, the second leg runs to the end."""
    legs = journey_of(TWO_FILLS).journey.legs
    assert [(leg.number, leg.from_stop, leg.to_stop, leg.stops) for leg in legs] == [(1, None, 0, ()), (2, 0, 2, (1,))]
    open_end = journey_of(TWO_FILLS.replace("day: 4, fills: tap", "day: 4")).journey.legs
    assert [(leg.from_stop, leg.to_stop, leg.stops) for leg in open_end] == [(None, 0, ()), (0, None, (1, 2))]
    dry = journey_of("{place: A, day: 1}\n{place: B, day: 2}").journey.legs
    assert [(leg.from_stop, leg.to_stop, leg.stops, leg.first_day) for leg in dry] == [(None, None, (0, 1), 1)]


def test_a_day_is_drunk_in_equal_shares_on_the_way_to_its_stops() -> None:
    """6 L on a day with three stops: 2 L on each way; the third way ends at a tap and is carried all the same."""
    trip = journey_of(
        "{place: A, day: 1}\n{place: B, day: 1}\n{place: C, day: 1, fills: tap}\n{place: D, day: 2, fills: tap}"
    )
    assert [stop.on_the_way.drinking_ml for stop in trip.journey.stops] == [2000, 2000, 2000, 6000]
    assert [leg.water.drinking_ml for leg in trip.journey.legs] == [6000, 6000]
    assert trip.leg(1).water.washing_ml == 0  # at the tap, where the day ends


def test_shares_that_do_not_come_out_even_add_up() -> None:
    """2 x 2.5 L less nothing on three ways: 1667 + 1667 + 1666 mL."""
    trip = journey_of("{place: A, day: 1}\n{place: B, day: 1}\n{place: C, day: 1}", more="drinking: 2.5 L")
    assert [stop.on_the_way.drinking_ml for stop in trip.journey.stops] == [1667, 1667, 1666]


def test_days_without_a_stop_are_drunk_where_one_stays() -> None:
    """Days 2 and 3 at A: from its lake if it is a fill point, else out of the cans; the days before A on the way."""
    resting = journey_of("{place: A, day: 1}\n{place: B, day: 4, fills: tap}")
    assert resting.stop(0).meals.drinking_ml == 2 * 6000
    assert resting.leg(1).water.drinking_ml == 4 * 6000
    assert resting.leg(1).water.washing_ml == 3 * 1000
    at_a_tap = journey_of("{place: A, day: 1, fills: tap}\n{place: B, day: 4, fills: tap}")
    assert at_a_tap.stop(0).meals.drinking_ml == 2 * 6000
    assert [leg.water.drinking_ml for leg in at_a_tap.journey.legs] == [6000, 6000]
    late = journey_of("{place: A, day: 3, fills: tap}")
    assert (late.leg(1).water.drinking_ml, late.leg(1).water.washing_ml) == (3 * 6000, 2 * 1000)


def test_drinks_are_counted_once() -> None:
    """Bo drinks 100 mL a day and 180 mL of milk: nothing is left of his day, and Ada's loses only her own share."""
    trip = journey_of(
        "{place: A, day: 1, meals: [breakfast: milk]}\n{place: B, day: 2, fills: tap}",
        more="people: [Ada, Bo: {drinks: 100 mL}]",
    )
    assert trip.stop(0).on_the_way.drinking_ml == 3000 - 180
    assert trip.stop(1).on_the_way.drinking_ml == 3000 + 100
    assert trip.leg(1).water.drink_ml == 2 * 180


def test_only_those_who_drink_it_drink_less_plain_water() -> None:
    """Milk of 20 g in 180 mL for Ada alone, half a serving of which is 90 mL."""
    trip = journey_of(
        "{place: A, day: 1, meals: [breakfast: {dish: milk, for: Ada}]}", more="people: [Ada: {appetite: 50 %}, Bo]"
    )
    assert trip.leg(1).water.drink_ml == 90
    assert trip.leg(1).water.drinking_ml == 6000 - 90


def test_work_in_heat() -> None:
    """Three hours on the way to B: 3 x 0.95 L for each of two more than the day's; NIOSH allows at most 1.4 L."""
    trip = journey_of("{place: A, day: 1, fills: tap}\n{place: B, day: 2, in heat: 3 h}")
    assert trip.stop(1).on_the_way.drinking_ml == 6000 + 5700
    assert trip.leg(2).water.drinking_ml == 6000 + 5700
    assert trips.HEAT_DRINKING.value <= 1.4
    assert "not over 48 oz (1.4 L)" in FACTS["T8-22"].figures


def test_lake_and_sea_serve_washing_and_heaters() -> None:
    """1 L of washing and 2 x 60 mL of heaters come from the sea: told, not carried. Food and drink never do."""
    stop = "{{place: A, day: 1{}, meals: [lunch: heated rice]}}"
    dry, sea = journey_of(stop.format("")), journey_of(stop.format(", other water: sea"))
    assert (dry.leg(1).water.washing_ml, dry.leg(1).water.heater_ml, dry.leg(1).from_other_ml) == (1000, 120, 0)
    assert (sea.leg(1).water.washing_ml, sea.leg(1).water.heater_ml, sea.leg(1).from_other_ml) == (0, 0, 1120)
    assert sea.leg(1).water.in_food_ml == dry.leg(1).water.in_food_ml == 400
    assert (sea.stop(0).from_other, sea.stop(0).from_other_ml) == (OtherWater.SEA, 1120)


def test_a_spare_day_is_carried_where_people_stop_without_water() -> None:
    """Rice 400 mL, drinking 6 L, washing 1 L: 7.4 L; with milk among its meals people drink less plain.

    On the way to the first fill point nobody stops: bad weather is sat out where there is water.
    """
    trip = journey_of(TWO_FILLS, more="spare day: [supper: rice]")
    assert [leg.water.spare_day_ml for leg in trip.journey.legs] == [0, 7400]
    with_milk = journey_of(TWO_FILLS, more="spare day: [supper: rice, breakfast: milk]")
    assert [leg.water.spare_day_ml for leg in with_milk.journey.legs] == [0, 7400]


def test_a_spare_day_washes_in_the_sea_only_where_all_stops_lie_by_water() -> None:
    """Between two taps lie B by the sea and C; without C 1 L less is carried."""
    by_the_sea = "{place: A, day: 1, fills: tap}\n{place: B, day: 2, other water: sea}\n"
    spare = "spare day: [supper: rice]"
    assert journey_of(by_the_sea + "{place: D, day: 3, fills: tap}", more=spare).leg(2).water.spare_day_ml == 6400
    inland = by_the_sea + "{place: C, day: 2}\n{place: D, day: 3, fills: tap}"
    assert journey_of(inland, more=spare).leg(2).water.spare_day_ml == 7400


@pytest.mark.parametrize(("margin", "carried"), [("0 %", 7000), ("10 %", 7700), ("1 %", 7100), ("50 %", 10_500)])
def test_margin_and_rounding(margin: str, carried: int) -> None:
    """7 L of drinking and washing, with the margin, rounded up to 100 mL: 7,070 becomes 7,100."""
    leg = journey_of("{place: A, day: 1}", more=f"margins: {{water: {margin}}}").leg(1)
    assert leg.carry_ml == carried
    assert leg.water.margin_ml == carried - 7000


def test_containers() -> None:
    """7.7 L against 5 L + 2 x 1 L lacks 700 mL; 8 L hold it; nothing is said where none are named."""
    stop = "{place: A, day: 1}"
    assert journey_of(stop).leg(1).short_ml is None
    short = journey_of(stop, more="water containers: {can: 5 L, bottle: {holds: 1 L, count: 2}}")
    assert short.leg(1).short_ml == 700
    assert journey_of(stop, more="water containers: {bag: 8 L}").leg(1).short_ml == 0


@pytest.mark.parametrize(
    ("how", "where", "minutes"),
    [
        ("boiling", "height: 1500 m", 1),
        ("boiling", "height: 1510 m", 3),
        ("filter", "", 0),
        ("chlorine", "", 30),
        ("chlorine", "water: 6 °C", 30),
        ("chlorine", "water: 5 °C", 60),
        ("filter and chlorine", "water: 12 °C", 30),
        ("chlorine dioxide", "", 240),
    ],
)
def test_how_long_treated_water_waits(how: str, where: str, minutes: int) -> None:
    """Boiling 1 min, 3 min above 1,500 m (CDC, EPA); chlorine 30 min (EPA), the double where very cold; a filter 0."""
    more = f", {where}" if where else ""
    trip = journey_of(f"{{place: A, day: 1, fills: to be treated, treated by: {how}{more}}}\n{{place: B, day: 2}}")
    leg = trip.leg(2)
    assert (leg.wait_min, leg.treated_by) == (minutes, WaterTreatment(how))
    assert leg.treated_ml == leg.carry_ml == 7700
    assert (trip.leg(1).treated_ml, trip.leg(1).wait_min) == (0, 0)
    assert trip.stop(0).wait_min == minutes


def test_what_is_used_on_the_spot_is_treated_too() -> None:
    """Rice 400 mL, cold rice 400 without its heaters' 120, a litre of washing: EPA asks treated water for all of it."""
    stop = "{place: A, day: 1, fills: to be treated, treated by: filter, meals: [supper: rice, supper: heated rice]}"
    assert journey_of(stop).stop(0).treated_ml == 400 + 400 + 1000
    assert journey_of(stop.replace("to be treated, treated by: filter", "tap")).stop(0).treated_ml == 0


def test_the_way_home_from_a_last_fill_point_is_a_leg() -> None:
    """Breakfast at B on day 3, then home: that day's 6 L and a tenth are carried, the meals and washing are B's."""
    trip = journey_of("{place: A, day: 1}\n{place: B, day: 2, fills: tap, meals: [supper: rice, breakfast: rice]}")
    home = trip.leg(2)
    assert (home.from_stop, home.to_stop, home.stops, home.first_day, home.last_day) == (1, None, (), 3, 3)
    assert home.water == LegWater(drinking_ml=6000, margin_ml=600)
    assert trip.stop(1).meals.drinking_ml == 0
    assert trip.stop(1).meals.washing_ml == 2 * 1000


def test_no_leg_leads_home_from_a_fill_point_of_the_last_day() -> None:
    """B is reached on day 2 and nothing is eaten after that day."""
    trip = journey_of("{place: A, day: 1}\n{place: B, day: 2, fills: tap, meals: [supper: rice]}")
    assert [(leg.from_stop, leg.to_stop) for leg in trip.journey.legs] == [(None, 1)]


def test_snow_is_boiled_unless_it_says_otherwise() -> None:
    """Melted snow is 0 °C cold, so chlorine takes its hour; without a word it is boiled, for a minute at sea level."""
    snow = "{{place: A, day: 1, fills: snow{}}}\n{{place: B, day: 2}}"
    plain, treated = journey_of(snow.format("")), journey_of(snow.format(", treated by: chlorine"))
    assert (plain.leg(2).treated_ml, plain.leg(2).wait_min, plain.leg(2).fills) == (7700, 1, Fills.SNOW)
    assert plain.leg(2).treated_by is WaterTreatment.BOILING
    assert (treated.leg(2).treated_ml, treated.leg(2).wait_min) == (7700, 60)


def test_the_height_is_the_one_that_dishes_go_by() -> None:
    """Dishes and trips boil longer from the same height."""
    assert trips.BOIL_LONGER_ABOVE.value == BOIL_LONGER_ABOVE.value


def test_the_heaviest_leg() -> None:
    """The second leg has 22.3 L, the first 6.6."""
    journey = journey_of(TWO_FILLS).journey
    assert journey.heaviest is journey.legs[1]


MEALS = ("breakfast", "lunch", "supper", "snack", "drink")
meals = st.lists(st.tuples(st.sampled_from(MEALS), st.sampled_from([*DISHES])), max_size=3)
random_stops = st.lists(
    st.tuples(
        st.integers(2, 4),
        st.sampled_from(["", "", ", fills: tap", ", fills: snow", ", fills: to be treated, treated by: boiling"]),
        st.sampled_from(["", "", ", other water: lake"]),
        st.sampled_from(["", "", ", in heat: 2 h"]),
        meals,
    ),
    min_size=1,
    max_size=6,
)
random_mores = st.tuples(
    st.lists(st.sampled_from([0, 30, 55, 100, 140]), min_size=1, max_size=4),
    st.sampled_from(["", "drinks: [milk]\n"]),
    st.sampled_from(["", "spare day: [supper: beef, drink: milk]\n"]),
    st.integers(0, 40),
    st.sampled_from(["2 L", "3 L", "130 mL"]),
)


def random_trip(
    stops: Sequence[tuple[int, str, str, str, Sequence[tuple[str, str]]]],
    mores: tuple[Sequence[int], str, str, int, str],
) -> Travelled:
    """Make a trip; stops lie so many days apart that their meals, next mornings included, can be had there."""
    lines, day = [], 1
    for apart, fills, other, heat, eaten in stops:
        told = ", ".join(f"{meal}: {dish}" for meal, dish in eaten)
        lines.append(f"{{place: P, day: {day}{fills}{other}{heat}, meals: [{told}]}}")
        day += apart
    appetites, drinks, spare, margin, drinking = mores
    people = ", ".join(
        f"P{number}: {{appetite: {share} %, drinks: {drinking}}}" for number, share in enumerate([*appetites, 100])
    )
    more = f"people: [{people}]\n{drinks}{spare}margins: {{water: {margin} %}}\nburners: 1\n"
    return journey_of("\n".join(lines), more=more)


@given(random_stops, random_mores)
@settings(max_examples=80, deadline=None)
def test_every_drop_is_counted_once(
    stops: Sequence[tuple[int, str, str, str, Sequence[tuple[str, str]]]],
    mores: tuple[Sequence[int], str, str, int, str],
) -> None:
    """The pieces of each leg are those of the dishes eaten between its ends, and add up with what is drunk and washed.

    What all drink and wash in over the trip is found again on legs, on the spot at fill points, and in lakes.
    """
    trip = random_trip(stops, mores)
    for leg in trip.journey.legs:
        served = [meal.sums.water for meal in trip.planned.meals if meal.stop in leg.stops]
        for name in ("in_food_ml", "drained_away_ml", "pot_ml", "boiled_off_ml", "drink_ml", "heater_ml", "spare_ml"):
            assert getattr(leg.water, name) == sum(getattr(water, name) for water in served)
        of_meals = sum(water.carry_ml for water in served)
        rest = of_meals + leg.water.drinking_ml + leg.water.washing_ml + leg.water.spare_day_ml
        assert leg.carry_ml == rest + leg.water.margin_ml
        assert leg.carry_ml % 100 == 0
        assert rest * (1 + mores[3] / 100) <= leg.carry_ml + 1e-6 < rest * (1 + mores[3] / 100) + 100
        assert min(leg.water) >= 0
    on_the_spot = [stop for stop in trip.journey.stops if stop.on_the_spot]
    for name, whole in (("drinking_ml", all_drunk_ml(trip)), ("washing_ml", all_washed_ml(trip))):
        carried = sum(getattr(leg.water, name) for leg in trip.journey.legs)
        assert carried + sum(getattr(stop.meals, name) for stop in on_the_spot) == whole


def all_drunk_ml(trip: Travelled) -> int:
    """Give what all drink plain: each day and person their own less their milk, and the hours in heat."""
    whole = 0
    for day in range(1, trip.planned.last_day + 1):
        plain = 0.0
        for eater in trip.planned.eaters:
            milk = sum(
                meal.sums.water.drink_ml * eater.portion / meal.portions
                for meal in trip.planned.meals
                if meal.day == day and eater.name in meal.eaters
            )
            plain += max(0.0, eater.drinks_ml - milk)
        whole += math.ceil(plain - 1e-6)
    hot = sum(1 for stop in trip.planned.stops if stop.model.in_heat)
    return whole + hot * math.ceil(2 * 950 * len(trip.planned.eaters))


def all_washed_ml(trip: Travelled) -> int:
    """Give what all wash in, but for the days that end beside a lake."""
    days = range(1, trip.planned.last_day + 1)
    ends = [
        max((stop for stop in trip.planned.stops if stop.model.day <= day), key=lambda stop: stop.index) for day in days
    ]
    return sum(500 * len(trip.planned.eaters) for stop in ends if stop.model.other_water is None)


def test_the_dates_are_those_of_the_trip() -> None:
    """A trip of the tests begins on 26 June 2027, and its fourth day is the 29th."""
    trip = journey_of(TWO_FILLS)
    assert (trip.planned.stops[2].on, trip.planned.ends) == (date(2027, 6, 29), date(2027, 6, 29))
