"""A trip's meals: days by the order of meals, who eats how much, and each dish worked out for where it is cooked."""

from datetime import date, datetime, time

import pytest
from tests.sums.journey_of import menu_of

from packlarder.reckon.trip.records import PlannedTrip, TripMeal

CAMP = """\
    - place: camp
      day: 1
"""


def days(trip: PlannedTrip) -> list[tuple[int, str, str]]:
    """Give day, hour and dish of every meal in order."""
    return [(meal.day, f"{meal.eat_at:%H:%M}", meal.dish) for meal in trip.meals]


def one(stops: str, **keys: str) -> TripMeal:
    """Give the only meal of a trip."""
    (meal,) = menu_of(stops, **keys).meals
    return meal


# --- days and hours --------------------------------------------------------------------------------------------------


def test_a_breakfast_after_a_supper_is_the_next_mornings() -> None:
    """Three nights at one stop: a meal of earlier in the day than the one before it begins a new day."""
    trip = menu_of("""\
        - place: camp
          day: 2
          meals: [supper: rice, breakfast: noodles, supper: rice, lunch: cold rice, breakfast: rice]
    """)
    assert days(trip) == [
        (2, "18:30", "rice"),
        (3, "07:30", "noodles"),
        (3, "18:30", "rice"),
        (4, "12:30", "cold-rice"),
        (5, "07:30", "rice"),
    ]
    assert [meal.on for meal in trip.meals] == [date(2027, 6, 27 + nights) for nights in (0, 1, 1, 2, 3)]  # 26 is day 1
    assert [meal.number for meal in trip.meals] == [1, 2, 3, 4, 5]
    assert trip.last_day == 5
    assert trip.ends == date(2027, 6, 30)  # 26 + 4


def test_two_dishes_of_one_meal_are_eaten_on_one_day() -> None:
    """A supper after a supper is the same supper; a sweet or a drink goes with the meal before it, hour and day."""
    trip = menu_of(
        f"{CAMP}      meals: [supper: rice, supper: noodles, sweet: cold rice, drink: milk, breakfast: rice]\n"
    )
    assert [(day, hour) for day, hour, _ in days(trip)] == [*[(1, "18:30")] * 4, (2, "07:30")]


def test_what_goes_with_no_meal_is_eaten_in_the_afternoon() -> None:
    """A snack that begins a stop has no meal before it: 15:00, between lunch and supper."""
    assert days(menu_of(f"{CAMP}      meals: [snack: rice, supper: rice]\n"))[0] == (1, "15:00", "rice")


def test_hours_are_the_lines_or_the_trips_or_the_usual_ones() -> None:
    """`at` in the line counts first, then the trip's mealtimes, then common practice; a sweet follows its meal."""
    trip = menu_of(
        f'{CAMP}      meals: [lunch: rice, supper: {{dish: rice, at: "21:15"}}, sweet: milk, breakfast: rice]\n',
        mealtimes='{breakfast: "6:45"}',
    )
    assert [hour for _, hour, _ in days(trip)] == ["12:30", "21:15", "21:15", "06:45"]
    assert trip.meals[1].eat_at == datetime.combine(date(2027, 6, 26), time(21, 15))


def test_meals_are_numbered_as_they_are_eaten() -> None:
    """A supper that is eaten at noon comes before that day's lunch at one; equal hours keep the order of the file."""
    trip = menu_of(f"{CAMP}      meals: [lunch: {{dish: rice, at: 13.00}}, supper: {{dish: noodles, at: 12.00}}]\n")
    assert days(trip) == [(1, "12:00", "noodles"), (1, "13:00", "rice")]
    same = menu_of(f"{CAMP}      meals: [supper: noodles, supper: rice, supper: cold rice]\n")
    assert [name for _, _, name in days(same)] == ["noodles", "rice", "cold-rice"]


def test_two_stops_of_one_day() -> None:
    """Lunch at the first and supper at the second, both on day 1; each meal knows its stop."""
    trip = menu_of("""\
        - {place: quay, day: 1, meals: [lunch: rice]}
        - {place: skerry, day: 1, meals: [supper: noodles, breakfast: rice]}
    """)
    assert [(meal.stop, meal.day) for meal in trip.meals] == [(0, 1), (1, 1), (1, 2)]


def test_a_stop_after_the_last_meal_is_the_last_day() -> None:
    """Home harbour is reached on day 4, two days after the last supper; the drinks of those days are made underway."""
    trip = menu_of(
        """\
        - {place: quay, day: 1, meals: [supper: rice]}
        - {place: skerry, day: 2, meals: [supper: rice]}
        - {place: harbour, day: 4}
        """,
        drinks="milk",
    )
    assert trip.last_day == 4
    assert [(meal.day, meal.stop) for meal in trip.meals if meal.dish == "milk"] == [(1, 0), (2, 1), (3, 1), (4, 2)]


def test_drinks_are_made_every_day_with_its_first_meal_and_on_the_spare_day() -> None:
    """Two days and one in reserve: three pots of milk, at the hour of breakfast where there is one."""
    trip = menu_of(
        f"{CAMP}      meals: [supper: rice, breakfast: rice, lunch: rice]\n",
        drinks="[milk]",
        spare_day="[lunch: rice]",
    )
    drinks = [meal for meal in trip.meals if meal.dish == "milk"]
    assert [(meal.day, f"{meal.eat_at:%H:%M}", meal.stop) for meal in drinks] == [
        (1, "18:30", 0),
        (2, "07:30", 0),
        (3, "12:30", None),
    ]
    assert {meal.portions for meal in drinks} == {2}
    assert {meal.meal.value for meal in drinks} == {"drink"}
    assert trip.last_day == 2


def test_a_spare_day_comes_last_under_the_hardest_conditions() -> None:
    """It may fall anywhere: the greatest height, the coldest air and water of all stops, every drop carried."""
    trip = menu_of(
        """\
        - {place: pass, day: 1, height: 2000 m, air: 5 °C, water: 8 °C, other water: lake, windy: yes}
        - {place: valley, day: 2, height: 500 m, air: 15 °C, water: 4 °C, other water: lake, meals: [supper: noodles]}
        """,
        spare_day="[supper: noodles]",
    )
    there, spare = trip.meals
    assert (spare.number, spare.day, spare.stop, spare.spare) == (2, 3, None, True)
    assert spare.on == date(2027, 6, 28)
    hard = spare.sums.conditions
    assert (hard.height_m, hard.air_c, hard.water_c, hard.heater_water_carried) == (2000, 5, 4, True)
    assert there.sums.conditions.heater_water_carried is False
    assert spare.settled.efficiency < there.settled.efficiency  # one stop is windy
    assert trip.last_day == 2


# --- who eats how much -----------------------------------------------------------------------------------------------


def test_portions_are_the_sum_of_appetites() -> None:
    """1 + 1.2 + 0.6 = 2.8 servings of 100 g are 280 g; the milk is for Bo alone, 1.2 x 20 g = 24 g."""
    trip = menu_of(
        f"{CAMP}      meals: [supper: rice, supper: {{dish: milk, for: bo}}]\n",
        people="[Ada, Bo: {appetite: 120 %}, Cia: {appetite: 60 %, age: 8}]",
    )
    rice, milk = trip.meals
    assert rice.portions == pytest.approx(2.8)
    assert rice.sums.servings == pytest.approx(2.8)
    assert rice.sums.parts[0].dry_g == pytest.approx(280)
    assert rice.eaters == ("Ada", "Bo", "Cia")
    assert (milk.eaters, milk.portions) == (("Bo",), 1.2)  # names are found in capitals or not
    assert milk.sums.parts[0].dry_g == pytest.approx(24)


def test_whole_portions_are_whole_numbers() -> None:
    """0.5 + 0.7 + 0.8 are 2 servings to the last digit, so that nothing prints 2.0000000000000004."""
    meal = one(
        f"{CAMP}      meals: [supper: rice]\n",
        people="[Ada: {appetite: 50 %}, Bo: {appetite: 70 %}, Cia: {appetite: 80 %}]",
    )
    assert str(meal.sums.servings) == "2"


def test_an_infant_without_appetite_eats_nothing() -> None:
    """It has no share of any meal and is named for none, but comes along, and carries nothing."""
    trip = menu_of(f"{CAMP}      meals: [supper: rice]\n", people="[Ada, Ida: {age: 0, appetite: 0 %}]")
    (meal,) = trip.meals
    assert (meal.eaters, meal.portions) == (("Ada",), 1)
    assert [eater.name for eater in trip.eaters] == ["Ada", "Ida"]
    assert trip.eaters[1].burden == 0


def test_burdens_and_drinks_of_people() -> None:
    """Children under twelve carry nothing unless it is said; each drinks what the trip says, or what they say."""
    trip = menu_of(
        CAMP,
        people="[Ada, Bo: {age: 11}, Cia: {age: 12}, Dag: {age: 8, carries: 30 %, drinks: 1.5 L}]",
        drinking="2.5 L",
    )
    assert [eater.burden for eater in trip.eaters] == [1, 0, 1, pytest.approx(0.3)]
    assert [eater.drinks_ml for eater in trip.eaters] == [2500, 2500, 2500, 1500]


def test_food_on_the_move_is_eaten_every_day() -> None:
    """25 g each for 1 + 0.6 appetites are 40 g a day, on two days and the one in reserve; 30 g for all stay 30 g."""
    trip = menu_of(
        f"{CAMP}      meals: [supper: rice, breakfast: rice]\n",
        people="[Ada, Bo: {appetite: 60 %}]",
        on_the_move="[raisins: 25 g each, raisins: 30 g]",
        spare_day="[supper: rice]",
    )
    assert [(ration.day, ration.dry_g, ration.spare) for ration in trip.on_the_move] == [
        (1, 40, False),
        (2, 40, False),
        (3, 40, True),
        (1, 30, False),
        (2, 30, False),
        (3, 30, True),
    ]
    assert [ration.on.day for ration in trip.on_the_move[:3]] == [26, 27, 28]


def test_without_a_spare_day_none_is_packed_for() -> None:
    """Two days of food for two days."""
    trip = menu_of(f"{CAMP}      meals: [supper: rice, breakfast: rice]\n", on_the_move="[raisins: 25 g each]")
    assert [ration.day for ration in trip.on_the_move] == [1, 2]


# --- where it is cooked ----------------------------------------------------------------------------------------------


def test_what_a_stop_does_not_say_is_as_usual() -> None:
    """Height, air and water of the household; sea level and 0 °C are said, not left out."""
    trip = menu_of("""\
        - {place: a, day: 1, meals: [supper: noodles]}
        - {place: b, day: 2, height: 0 m, air: 0 °C, water: 0 °C, meals: [supper: noodles]}
    """)
    usual, said = (stop.conditions for stop in trip.stops)
    assert (usual.height_m, usual.air_c, usual.water_c, usual.heater_water_carried) == (0, 10, 10, True)
    assert (said.height_m, said.air_c, said.water_c) == (0, 0, 0)
    assert [stop.on.day for stop in trip.stops] == [26, 27]


def test_water_of_snow_is_at_nought_when_it_is_melted() -> None:
    """Snow without a temperature: 0 °C. Where one is said, as of melted snow that stood in the sun, it counts."""
    trip = menu_of("""\
        - {place: a, day: 1, fills: snow, meals: [supper: noodles]}
        - {place: b, day: 2, fills: snow, water: 3 °C, meals: [supper: noodles]}
    """)
    assert [stop.conditions.water_c for stop in trip.stops] == [0, 3]
    melted, stood = trip.meals
    # two servings boil in 950 mL, 2 x 500 less what boils off but once: 0.95 kg x 3 K x 4.19 kJ/(kg K) = 11.9 kJ more
    assert melted.sums.heat.energy_kj - stood.sums.heat.energy_kj == pytest.approx(11.9, abs=0.1)


def test_high_up_water_boils_cooler_and_pasta_takes_longer() -> None:
    """At 3,000 m water boils at 90 °C: 99.973 - 3.318 x 3 - 0.0046 x 9 = 89.98."""
    meal = one("- {place: hut, day: 1, height: 3000 m, meals: [supper: noodles]}\n")
    assert meal.sums.heat.boiling_point_c == pytest.approx(89.98, abs=0.01)
    assert meal.sums.heat.time_factor > 1.5


def test_wind_takes_of_the_stoves_heat() -> None:
    """A gas burner gives 0.30 instead of 0.45 in the worst case of the table; ours brings 0.50: 0.50 x 0.30 / 0.45."""
    still = one("- {place: a, day: 1, meals: [supper: noodles]}\n")
    wind = one("- {place: a, day: 1, windy: yes, meals: [supper: noodles]}\n")
    assert still.settled.efficiency == pytest.approx(0.50)
    assert wind.settled.efficiency == pytest.approx(0.50 * 0.30 / 0.45)
    still_g, wind_g = still.sums.heat.fuel_g, wind.sums.heat.fuel_g
    assert still_g is not None
    assert wind_g is not None
    assert wind_g > still_g


def test_the_line_chooses_the_stove_then_the_dish_then_the_first_along() -> None:
    """Noodles name none: the trip's first. Fried beef wants spirit; its line may say burner."""
    trip = menu_of(
        f"{CAMP}      meals: [supper: noodles, supper: fried beef, supper: {{dish: fried beef, stove: burner}}]\n"
    )
    assert [meal.plan.stove_name for meal in trip.meals] == ["burner", "spirit", "burner"]
    assert [meal.sums.heat.fuel for meal in trip.meals] == ["gas mix", "denatured alcohol", "gas mix"]
    spirit_left = menu_of(f"{CAMP}      meals: [supper: fried beef]\n", stoves="[burner]")
    assert spirit_left.meals[0].plan.stove_name == "burner"


def test_a_pot_in_the_line_stands_in_for_one_that_stays_at_home() -> None:
    """Noodles want the pot, which stays at home: the little one takes two servings in more rounds."""
    meal = one(f"{CAMP}      meals: [supper: {{dish: noodles, pot: little pot}}]\n", pots="[pan, little pot]")
    assert [step.pot for step in meal.plan.steps] == ["little pot"]
    assert meal.plan.pot_name == "little pot"
    assert meal.sums.steps[0].rounds > one(f"{CAMP}      meals: [supper: noodles]\n").sums.steps[0].rounds


def test_a_bowl_is_not_missed() -> None:
    """Rice takes its water without a flame: any pot along will hold it, and none is missed."""
    assert one(f"{CAMP}      meals: [supper: rice]\n", pots="[pan]").plan.pot_name == "pan"


def test_a_dish_at_like_stops_is_settled_once() -> None:
    """Fourteen times the same dish under the same sky: one plan, one settlement."""
    meals = ", ".join(["supper: noodles"] * 14)
    trip = menu_of(f"{CAMP}      meals: [{meals}]\n")
    assert len({id(meal.settled) for meal in trip.meals}) == 1


def test_gaps_of_dishes_are_those_of_the_trip() -> None:
    """What nobody knows of a dish is told once of the trip; noodles leave nothing open."""
    assert menu_of(f"{CAMP}      meals: [supper: noodles]\n").gaps == ()


def test_an_empty_trip_has_a_day_and_no_meals() -> None:
    """A stop where nothing is eaten."""
    trip = menu_of(CAMP)
    assert (trip.meals, trip.on_the_move, trip.last_day) == ((), (), 1)
    assert trip.fuel_margin == pytest.approx(0.15)


def test_the_trips_own_margin_of_fuel() -> None:
    """It outranks the household's 15 %."""
    trip = menu_of(f"{CAMP}      meals: [supper: noodles]\n", margins="{fuel: 30 %}")
    assert trip.fuel_margin == pytest.approx(0.30)
