"""The sums of a trip, held against steam tables, heats of combustion, published rules, and a leg worked out by hand."""

import chemicals
import iapws
import pytest
from ambiance import Atmosphere
from tests.sums.journey_of import journey_of
from tests.sums.trip_of import Travelled

from packlarder.figures.facts import FACTS
from packlarder.figures.trips import HEAT_DRINKING
from packlarder.reckon.trip.burner import melting_kj
from packlarder.reckon.trip.journey import LegWater

HUTS = """\
    {place: the car, day: 1, fills: tap}
    {place: the pass, day: 1, height: 2000 m, meals: [lunch: heated rice, supper: beef, breakfast: noodles]}
    {place: the ridge, day: 2, height: 3000 m, in heat: 2 h, meals: [supper: rice]}
    {place: the hut, day: 3, height: 2500 m, fills: to be treated, treated by: chlorine, meals: [supper: rice]}
    """
ISOBUTANE, PROPANE = "75-28-5", "74-98-6"


def net_heat_kj_per_g(cas: str) -> float:
    """The net heat of combustion of a gas, from its heat of formation."""
    formula, molar_g = chemicals.search_chemical(cas).formula, chemicals.MW(cas)
    burnt = chemicals.combustion.combustion_data(
        formula=formula, Hf=chemicals.Hfg(cas), MW=molar_g, method="Stoichiometry"
    )
    return float(-burnt.LHV / molar_g / 1000)


def enthalpy_kj_per_kg(celsius: float, height_m: float) -> float:
    """The enthalpy of liquid water at a temperature and the pressure of a height (IAPWS-IF97, ICAO atmosphere)."""
    pressure_mpa = float(Atmosphere(height_m).pressure[0]) / 1e6
    return float(iapws.IAPWS97(T=celsius + 273.15, P=pressure_mpa).h)


def to_the_boil_kj_per_kg(start_c: float, height_m: float) -> float:
    """The heat that brings a kilogram of water to the boil at a height, by the steam tables alone."""
    pressure_mpa = float(Atmosphere(height_m).pressure[0]) / 1e6
    boiling = float(iapws.IAPWS97(P=pressure_mpa, x=0).h)
    return boiling - enthalpy_kj_per_kg(start_c, height_m)


def test_a_whole_leg_of_water() -> None:
    """From the car to the hut, three people who drink 3, 3 and 2 L; milk every morning; a spare day; 15 % margin.

    What each dish takes for one is in `journey_of.DISHES`; only what noodles boil off is the dish's own sum.
    """
    trip = journey_of(
        HUTS,
        more="people: [Ada, Bo, Cai: {drinks: 2 L}]\ndrinks: [milk]\nspare day: [supper: rice]\nmargins: {water: 15 %}",
    )
    noodles = next(meal.sums.water for meal in trip.trip.meals if meal.dish == "noodles")
    leg = trip.leg(2)
    assert (leg.from_stop, leg.to_stop, leg.stops) == (0, 3, (1, 2))
    in_food_ml = (
        3 * 200  # heated rice, day 1 at the pass
        + 3 * 75  # beef: 200 mL offered for 50 g, of which 100 g take 150
        + 3 * 140  # noodles: 100 g take 140 mL out of their pot
        + 3 * 200  # rice on the ridge, day 2
    )
    milk_ml = 3 * 180
    # Milk of day 1 goes with lunch at the pass, of day 2 with breakfast there, of day 3 with supper at the hut: two are
    # carried. A day's plain drinking: 3 + 3 + 2 L less the milk = 7460 mL; half of day 1's is drunk on the way to the
    # car, which leg 1 carries.
    drinking_ml = 7460 // 2 + 7460 + 7460 + 2 * 3 * 950  # two hours of heat for three, NIOSH's upper 0.95 L an hour
    spare_day_ml = 3 * 200 + 8000 + 3 * 500  # rice, drinking, washing
    rest_ml = (
        in_food_ml
        + 3 * 125  # what the beef leaves is poured away
        + (noodles.pot_ml + noodles.boiled_off_ml)
        + 2 * milk_ml
        + 3 * 60  # heaters; no lake to fill them from
        + noodles.spare_ml
        + sum(meal.sums.water.spare_ml for meal in trip.trip.meals if meal.stop in (1, 2) and meal.dish != "noodles")
        + drinking_ml
        + 2 * 3 * 500  # washing on days 1 and 2; on day 3 they are at the hut
        + spare_day_ml
    )
    carried_ml = -(-rest_ml * 115 // 10_000) * 100  # with 15 %, rounded up to 100 mL
    assert leg.water.in_food_ml == in_food_ml
    assert leg.water.drinking_ml == drinking_ml
    assert leg.water == LegWater(
        in_food_ml=in_food_ml,
        drained_away_ml=375,
        pot_ml=noodles.pot_ml,
        boiled_off_ml=noodles.boiled_off_ml,
        drink_ml=2 * milk_ml,
        heater_ml=180,
        spare_ml=leg.water.spare_ml,
        drinking_ml=drinking_ml,
        washing_ml=3000,
        spare_day_ml=spare_day_ml,
        margin_ml=carried_ml - rest_ml,
    )
    assert leg.carry_ml == carried_ml


def test_drinking_in_heat_is_the_upper_figure_of_niosh() -> None:
    """NIOSH: 24 to 32 oz, 0.7 to 0.95 L an hour, never above 48 oz, 1.4 L."""
    assert "(0.7-0.95 L) per h; not over 48 oz (1.4 L) per h" in FACTS["T8-22"].figures
    assert pytest.approx(32 * 0.0295735, rel=0.01) == HEAT_DRINKING.value
    assert HEAT_DRINKING.value <= 1.4


def cooking_g(trip: Travelled, stop: int) -> int:
    """The fuel for the dishes of a stop."""
    return next(one.cooking_g for one in trip.journey.fuels[0].stops if one.stop == stop)


@pytest.mark.parametrize("height_m", [0, 2000, 3000, 4500])
def test_fuel_of_a_stop_at_height(height_m: int) -> None:
    """Five suppers of rice for two, 2 L in all, from 4 °C to the boil at that height on gas of 70 % isobutane.

    Heat by IAPWS-IF97, net heat of combustion by `chemicals`; half of it reaches the pot. Rounded up to whole grams.
    """
    suppers = ", ".join(["supper: rice"] * 5)
    trip = journey_of(f"{{place: A, day: 1, height: {height_m} m, water: 4 °C, meals: [{suppers}]}}")
    gas_kj_per_g = 0.7 * net_heat_kj_per_g(ISOBUTANE) + 0.3 * net_heat_kj_per_g(PROPANE)
    expected_g = 2.0 * to_the_boil_kj_per_kg(4, height_m) / (gas_kj_per_g * 0.5)
    assert cooking_g(trip, 0) == pytest.approx(
        expected_g + 0.5, abs=0.5 + 0.005 * expected_g
    )  # rounded up; 0.5 % of heat
    assert 29 < expected_g < 37


def test_snow_at_3000_m_takes_731_kj() -> None:
    """1 kg of snow of -10 °C to the boil at 3000 m takes 731 kJ (numbers.md section 5); ice and melting by iapws.

    iapws 1.5.5: 20.6 kJ/kg from -10 to 0 °C, 333.5 kJ/kg to melt. On the stove: rice 0.4 L for two, and 1 L of washing.
    """
    trip = journey_of("{place: A, day: 1, height: 3000 m, air: -10 °C, fills: snow, meals: [supper: rice]}")
    there = trip.trip.stops[0].conditions
    by_iapws_kj = iapws._iapws._Ice(273.15, 0.101325)["h"] - iapws._iapws._Ice(263.15, 0.101325)["h"] + 333.5
    assert melting_kj(1000, there) == pytest.approx(by_iapws_kj, rel=0.005)
    assert melting_kj(1000, there) + to_the_boil_kj_per_kg(0.01, 3000) == pytest.approx(731, rel=0.005)
    fuel = trip.journey.fuels[0].stops[0]
    gas_kj_per_g = 45.79 * 0.5
    assert fuel.melting_g == pytest.approx(1.4 * 354.1 / gas_kj_per_g + 0.5, abs=0.6)  # 21.7, so 22
    assert fuel.cooking_g == pytest.approx(0.4 * to_the_boil_kj_per_kg(0.01, 3000) / gas_kj_per_g + 0.5, abs=0.6)
