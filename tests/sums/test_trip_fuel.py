"""The fuel of a trip: by stop, for cooking, boiling water safe and melting snow; margin, cartridges, part-used ones.

The burner of the tests burns gas mix (45.79 MJ/kg) and brings half of it into the pot: 22,895 kJ of every kg.
"""

import math

import pytest
from tests.sums.book_of import KITCHEN
from tests.sums.journey_of import journey_of
from tests.sums.trip_of import Travelled

from packlarder.figures import air_and_water as water
from packlarder.reckon.heat import boiling_point_c, heat_to_boil_kj, simmer_kj, snow_to_boil_kj
from packlarder.reckon.trip.fuel import cartridges_for
from packlarder.reckon.trip.journey import StopFuel

KJ_PER_G = 45.79 * 0.5
SPIRIT_KJ_PER_G = 24.7 * 0.48
SIZES_G = (100, 230, 450)
TREATED = "{place: A, day: 1, fills: to be treated, treated by: boiling%s}\n{place: B, day: 2}"


def stop_fuel(trip: Travelled, stop: int | None) -> StopFuel:
    """Give the fuel of one stop, of the only fuel."""
    return next(one for one in trip.fuel.stops if one.stop == stop)


def test_cooking_by_stop() -> None:
    """Rice for two: 0.4 L from 10 °C takes 150.8 kJ, so 6.59 g and 7 in whole grams; at B twice, 13.2 and so 14."""
    trip = journey_of(
        "{place: A, day: 1, meals: [supper: rice]}\n{place: B, day: 2, meals: [lunch: rice, supper: rice]}"
    )
    rice_g = heat_to_boil_kj(400, 10, 0) / KJ_PER_G
    assert rice_g == pytest.approx(6.59, abs=0.01)
    assert [(stop.stop, stop.cooking_g) for stop in trip.fuel.stops] == [(0, 7), (1, 14)]
    assert trip.fuel.margin_g == math.ceil(21 * 0.15)
    assert trip.fuel.need_g == 21 + 4
    assert (trip.fuel.fuel, trip.fuel.stoves, trip.fuel.new_g, trip.fuel.in_hand_g) == (
        "gas mix",
        ("burner",),
        (100,),
        (),
    )


def test_a_stop_without_fire_burns_nothing() -> None:
    """A pinch and milk take no heat, so no fuel is listed at all."""
    assert journey_of("{place: A, day: 1, meals: [snack: a pinch, drink: milk]}").journey.fuels == ()


def test_each_stove_burns_its_own_fuel() -> None:
    """Rice on the spirit burner: 150.8 kJ / 11.86 kJ per g = 12.7 g; poured, so no cartridges; the stoves' order."""
    trip = journey_of(
        "{place: A, day: 1, meals: [supper: {dish: rice, stove: spirit}, breakfast: rice]}",
        more="stoves: [burner, spirit]\nfuel in hand: [80 g]\nmargins: {fuel: 0 %}",
    )
    gas, spirit = trip.journey.fuels
    assert (spirit.fuel, spirit.need_g, spirit.in_hand_g, spirit.new_g) == ("denatured alcohol", 13, (), ())
    spirit_g = 150.8 / SPIRIT_KJ_PER_G
    assert spirit_g == pytest.approx(12.7, abs=0.05)
    assert (gas.fuel, gas.need_g, gas.in_hand_g, gas.new_g) == ("gas mix", 7, (80.0,), ())


def test_what_is_in_hand_is_used_once() -> None:
    """80 g in hand are gas for the first burner that has cartridges; the second, of isobutane, wants a new one."""
    trip = journey_of(
        "{place: A, day: 1, meals: [supper: {dish: rice, stove: other}, supper: rice]}",
        more="stoves: [spirit, burner, other]\nfuel in hand: [80 g]\nspare day: [supper: {dish: rice, stove: burner}]",
        kitchen=KITCHEN.replace("pots:\n", "  other: {fuel: isobutane, kind: gas burner}\npots:\n"),
    )
    assert [(fuel.fuel, fuel.in_hand_g, fuel.new_g) for fuel in trip.journey.fuels] == [
        ("denatured alcohol", (), ()),
        ("gas mix", (80.0,), ()),
        ("isobutane", (), (100,)),
    ]


def test_wind_takes_more() -> None:
    """The least share found for gas burners is 0.30 beside the usual 0.45: half as much again of the fuel."""
    calm, windy = (
        journey_of(f"{{place: A, day: 1, windy: {word}, meals: [supper: rice, lunch: rice, supper: rice]}}")
        for word in ("no", "yes")
    )
    assert stop_fuel(calm, 0).cooking_g == math.ceil(3 * 6.586)
    assert stop_fuel(windy, 0).cooking_g == math.ceil(3 * 6.586 * 1.5)


def test_the_spare_day_burns_too() -> None:
    """Its rice stands at no stop, and comes last."""
    trip = journey_of("{place: A, day: 1, meals: [supper: rice]}", more="spare day: [supper: rice]")
    assert [(stop.stop, stop.cooking_g) for stop in trip.fuel.stops] == [(0, 7), (None, 7)]


def test_water_that_is_boiled_to_be_safe() -> None:
    """7.7 L of the leg and 1 L of washing at A: 8.7 L, and six pots of 1.5 L a minute on the boil each.

    377 kJ/L (numbers.md, section 5) are 3,280 kJ, so 143.3 g; six minutes of simmering under a lid are 2 g more.
    """
    trip = journey_of(TREATED % "")
    kept_boiling_kj = 6 * simmer_kj(16, 1, lid=True)
    assert kept_boiling_kj / KJ_PER_G == pytest.approx(1.9, abs=0.1)
    assert stop_fuel(trip, 0).treating_g == math.ceil((heat_to_boil_kj(8700, 10, 0) + kept_boiling_kj) / KJ_PER_G)
    assert stop_fuel(trip, 0).treating_g == pytest.approx(8.7 * 377 / KJ_PER_G, abs=3)
    assert stop_fuel(trip, 0).cooking_g == 0


def test_what_a_meal_boils_anyway_is_not_boiled_twice() -> None:
    """Rice at A takes 400 mL hot: no more to treat; milk takes 360 mL cold, which are."""
    plain = stop_fuel(journey_of(TREATED % ""), 0).treating_g
    with_rice = journey_of(TREATED % ", meals: [supper: rice]")
    assert (stop_fuel(with_rice, 0).treating_g, stop_fuel(with_rice, 0).cooking_g) == (plain, 7)
    with_milk = stop_fuel(journey_of(TREATED % ", meals: [supper: milk]"), 0)
    milk_kj = heat_to_boil_kj(8700 + 360, 10, 0) + 7 * simmer_kj(16, 1, lid=True)  # 9.06 L are seven potfuls
    assert with_milk.treating_g == math.ceil(milk_kj / KJ_PER_G)


BOILED = "{place: A, day: 1, fills: to be treated, treated by: boiling%s}\n{place: B, day: 2, fills: tap}"
"""No stop lies between A and B, so the leg carries no water of a spare day."""
RICE_IN_RESERVE = "spare day: [supper: rice]"


def test_how_many_pots_that_takes_and_how_long() -> None:
    """6.6 L of the leg are five pots of 1.5 L, with 1 L of washing at A they are 7.6 L and six.

    1 kJ a second: 7.6 L from 10 °C take 7600 * 0.377 = 2,865 s, and six minutes on the boil: 53.8 min, so 54.
    """
    trip = journey_of(BOILED % "")
    leg, stop = trip.leg(2), trip.stop(0)
    assert (leg.treated_ml, leg.potfuls, stop.boil_ml, stop.potfuls, stop.boil_min) == (6600, 5, 7600, 6, 54)
    assert leg.boil_min == math.ceil(6600 * 0.377 / 60 + 5)
    filtered = journey_of(BOILED.replace("boiling", "filter") % "")
    assert (filtered.leg(2).potfuls, filtered.stop(0).potfuls, filtered.stop(0).boil_min) == (0, 0, 0)


SNOW = "{place: A, day: 1, air: -10 °C, fills: snow%s}\n{place: B, day: 2, fills: tap}"
"""Snow of -10 °C: 10 * 2.06 + 333.5 = 354.1 kJ/kg to melt it, 419 more to the boil. Left unsaid, it is boiled."""
CHLORINE = ", treated by: chlorine"


@pytest.mark.parametrize("said", ["", ", treated by: boiling"])
def test_snow_is_melted_before_it_boils(said: str) -> None:
    """7.6 L of snow: 354.1 kJ/kg to melt, 419 to boil, 1 kJ a second, and six minutes: 97.9 + 6, so 104 min."""
    trip = journey_of(SNOW % said)
    seconds = 7.6 * (354.1 + 419)
    assert (trip.stop(0).boil_ml, trip.stop(0).potfuls) == (7600, 6)
    assert trip.stop(0).boil_min == math.ceil(seconds / 60 + 6) == 104
    assert trip.leg(2).boil_min == math.ceil(6.6 * (354.1 + 419) / 60 + 5)


def test_snow_that_is_not_boiled_is_only_melted() -> None:
    """With chlorine no water is boiled for itself: 7.6 L * 354.1 kJ/kg are 2,691 kJ, 117.5 g, for the melting."""
    trip = journey_of(SNOW % CHLORINE)
    assert (trip.stop(0).boil_ml, trip.stop(0).potfuls) == (0, 0)
    assert (stop_fuel(trip, 0).treating_g, stop_fuel(trip, 0).melting_g) == (0, math.ceil(7.6 * 354.1 / KJ_PER_G))


def test_snow_for_a_dish_is_melted_with_the_rest_and_boiled_by_the_dish() -> None:
    """8 L are melted, 400 mL of them for rice: 7.6 L go to the boil as water, 0.4 L on the flame of the rice.

    Melting 8 * 354.1 = 2,833 kJ, 123.7 g; boiling 7.6 * 419 = 3,184 kJ, 139.1 g, with six minutes on the boil 140.95;
    the rice 0.4 * 419 = 168 kJ, 7.3 g. The flame gives 1 kJ a second, so 2,833 + 3,184 s and six minutes: 107 min.
    """
    trip = journey_of(SNOW % ", meals: [supper: rice]")
    at_a = stop_fuel(trip, 0)
    boiled_kj = heat_to_boil_kj(7600, 0, 0) + 6 * simmer_kj(16, 1, lid=True)
    assert (at_a.melting_g, at_a.cooking_g) == (math.ceil(8 * 354.1 / KJ_PER_G), math.ceil(0.4 * 419 / KJ_PER_G))
    assert at_a.treating_g == math.ceil(boiled_kj / KJ_PER_G) == 141
    assert (trip.stop(0).boil_ml, trip.stop(0).potfuls) == (7600, 6)
    assert trip.stop(0).boil_min == math.ceil((8 * 354.1 + 7.6 * 419) / 60 + 6) == 107


def test_what_dishes_boil_is_in_no_pot_of_its_own() -> None:
    """Rice takes 400 mL that it boils anyway: of 1.4 L used at A one litre is boiled for itself."""
    trip = journey_of(BOILED % ", meals: [supper: rice]")
    assert (trip.stop(0).treated_ml, trip.stop(0).boil_ml) == (1400, 6600 + 1000)


def test_the_spare_days_water_is_boiled_too() -> None:
    """6 L to drink, 1 L of washing and 400 mL for rice, which boils them: 7 L more in five pots of 1.5 L.

    377 kJ/L are 2,639 kJ, 115.3 g, and five minutes on the boil 1.6 g.
    """
    spare = stop_fuel(journey_of(BOILED % "", more=RICE_IN_RESERVE), None)
    heat_kj = heat_to_boil_kj(7000, 10, 0) + 5 * simmer_kj(16, 1, lid=True)
    assert (spare.cooking_g, spare.treating_g, spare.melting_g) == (7, math.ceil(heat_kj / KJ_PER_G), 0)
    assert spare.treating_g == pytest.approx(117, abs=1)


@pytest.mark.parametrize(("said", "boiled_ml", "pots"), [("", 7000, 5), (CHLORINE, 0, 0)])
def test_the_spare_days_snow_is_melted(said: str, boiled_ml: int, pots: int) -> None:
    """All 7.4 L are melted, 354.1 kJ/kg: 2,620 kJ, 114.5 g. Without chlorine 7 L are boiled, but not those of the rice.

    7 * 419 = 2,933 kJ are 128.1 g, five pots kept on the boil 1.6 g; the rice boils its 0.4 L itself: 7.3 g.
    """
    spare = stop_fuel(journey_of(SNOW % said, more=RICE_IN_RESERVE), None)
    boiled_kj = heat_to_boil_kj(boiled_ml, 0, 0) + pots * simmer_kj(16, 1, lid=True)
    assert spare.melting_g == math.ceil(7.4 * 354.1 / KJ_PER_G)
    assert spare.treating_g == math.ceil(boiled_kj / KJ_PER_G)
    assert spare.cooking_g == math.ceil(0.4 * 419 / KJ_PER_G)


def test_the_hardest_place_counts_for_the_spare_day() -> None:
    """Boiling at A, snow and boiling at C: the day is counted as if it were sat out at C."""
    snow = "{place: C, day: 3, air: -10 °C, fills: snow, treated by: boiling}\n{place: D, day: 3, fills: tap}"
    both = f"{BOILED % ''}\n{snow}"
    spare = stop_fuel(journey_of(both, more=RICE_IN_RESERVE), None)
    boiled_kj = snow_to_boil_kj(7000, -10, 0) + 5 * simmer_kj(16, 1, lid=True) + 0.4 * 354.1
    assert spare.treating_g + spare.melting_g == pytest.approx(boiled_kj / KJ_PER_G, abs=2)


def test_water_for_the_spare_day_is_made_fit_once() -> None:
    """From A a leg with a stop between carries the spare day's water, and its fuel is counted at A."""
    spare = stop_fuel(journey_of(TREATED % "", more=RICE_IN_RESERVE), None)
    assert (spare.treating_g, spare.melting_g) == (0, 0)


def test_no_spare_day_no_water() -> None:
    """Without a day in reserve nothing is listed for one."""
    assert [one.stop for one in journey_of(BOILED % "").fuel.stops] == [0]


def test_high_up_it_boils_longer_but_is_sooner_there() -> None:
    """At 2000 m water boils at 93.3 °C and is kept there for 3 min."""
    trip = journey_of(TREATED % ", height: 2000 m")
    heat_kj = 8.7 * 4.19 * (boiling_point_c(2000) - 10) + 6 * simmer_kj(16, 3, lid=True)
    assert boiling_point_c(2000) == pytest.approx(93.3, abs=0.1)
    assert stop_fuel(trip, 0).treating_g == pytest.approx(heat_kj / KJ_PER_G, abs=1)


def test_it_is_boiled_on_the_first_stove_in_the_wind() -> None:
    """The spirit burner comes first: treating burns spirit, cooking gas; 0.48 falls to 0.40 in the wind."""
    trip = journey_of(
        TREATED % ", windy: yes, meals: [supper: {dish: rice, stove: burner}]", more="stoves: [spirit, burner]"
    )
    spirit, gas = trip.journey.fuels
    assert [(stop.treating_g > 0, stop.cooking_g > 0) for stop in spirit.stops] == [(True, False)]
    assert [(stop.treating_g > 0, stop.cooking_g > 0) for stop in gas.stops] == [(False, True)]
    assert spirit.stops[0].treating_g == pytest.approx(8.7 * 377 / (24.7 * 0.40), rel=0.02)


def test_a_filter_burns_nothing() -> None:
    """Filtered and chlorinated water takes no fuel."""
    assert journey_of(TREATED.replace("boiling", "filter and chlorine") % "").journey.fuels == ()


def test_all_water_of_a_snow_stop_is_melted() -> None:
    """At -10 °C: rice 0.4 L and washing 1 L at A, 7.7 L for the leg, 354 kJ/kg each; cooking counts from 0 °C."""
    trip = journey_of(
        "{place: A, day: 1, air: -10 °C, fills: snow, treated by: chlorine, meals: [supper: rice]}\n{place: B, day: 2}"
    )
    melting_kj = 9.1 * (20.6 + 333.5)
    assert stop_fuel(trip, 0).melting_g == math.ceil(melting_kj / KJ_PER_G)
    assert stop_fuel(trip, 0).cooking_g == math.ceil(heat_to_boil_kj(400, 0, 0) / KJ_PER_G)
    assert stop_fuel(trip, 0).treating_g == 0


def test_snow_that_is_boiled_as_well() -> None:
    """Melting and boiling together are what the sums say of snow that is brought to the boil, as it is unsaid."""
    snow = "{place: A, day: 1, air: -10 °C, fills: snow%s}\n{place: B, day: 2}"
    trip = journey_of(snow % "")
    assert trip.journey.fuels == journey_of(snow % ", treated by: boiling").journey.fuels
    at_a = stop_fuel(trip, 0)
    boiled_kj = snow_to_boil_kj(8700, -10, 0) + 6 * simmer_kj(16, 1, lid=True)
    assert at_a.melting_g + at_a.treating_g == pytest.approx(boiled_kj / KJ_PER_G, abs=2)


def test_snow_that_is_warmed_to_a_temperature() -> None:
    """Somebody who says that the melted water has 5 °C pays for them: 4.19 kJ more for each kg and degree."""
    snow = "{place: A, day: 1, air: 0 °C, fills: snow%s}\n{place: B, day: 2}"
    cold, warmer = (stop_fuel(journey_of(snow % word), 0).melting_g for word in ("", ", water: 5 °C"))
    assert warmer - cold == pytest.approx(8.7 * water.WATER_HEAT.value * 5 / KJ_PER_G, abs=1)


@pytest.mark.parametrize(
    ("need_g", "in_hand_g", "taken", "new"),
    [
        (0, (180, 95), (), ()),
        (200, (), (), (230,)),
        (90, (180, 95), (95,), ()),  # the emptier one is enough
        (150, (180, 95), (95, 180), ()),  # the emptiest first: 95 are not enough, both are
        (240, (20,), (20,), (230,)),  # 20 g spare a step from 230 to 450
        (210, (20,), (), (230,)),  # 20 g spare nothing
        (700, (180, 95), (95, 180), (450,)),  # 700 - 275 = 425
        (1000, (), (), (450, 450, 100)),
    ],
)
def test_cartridges(
    need_g: float, in_hand_g: tuple[float, ...], taken: tuple[float, ...], new: tuple[int, ...]
) -> None:
    """Part-used cartridges first, the emptiest first, only as many as help; the fewest whole ones for the rest."""
    assert cartridges_for(need_g, in_hand_g, SIZES_G) == (taken, new)
    assert sum(taken) + sum(new) >= need_g


def test_what_is_poured_has_no_cartridges() -> None:
    """Spirit is bought in bottles, wood is gathered."""
    assert cartridges_for(300, (100,), ()) == ((), ())
