"""Boiling points, energy, fuel, steeping and time at height. Outside figures are in tests/outside."""

from dataclasses import fields

import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.figures import air_and_water, cooking, fuels, margins, stoves, units
from packlarder.figures.constants import all_figures
from packlarder.figures.cooking import SOAK_ENERGIES, Z_VALUES, Shelter, Soaks, Softens
from packlarder.figures.figure import Figure, Standing
from packlarder.figures.fuels import FUELS, GAS_MIX
from packlarder.figures.stoves import STOVES
from packlarder.reckon.heat import (
    boil_off_g_per_min,
    boiling_point_at_pressure_c,
    boiling_point_c,
    cartridges_g,
    fuel_g,
    gas_boils_at_c,
    heat_capacity_kj_per_k,
    heat_to_boil_kj,
    heater_end_c,
    longer_at_height,
    longer_soak_at_height,
    longer_soak_in,
    minutes_to_heat,
    pressure_kpa,
    simmer_kj,
    simmer_kw,
    snow_to_boil_kj,
    steep_end_c,
    steep_start_c,
)

HEIGHTS = st.floats(min_value=-430, max_value=6000)
SIZES_G = (100, 230, 450)


@given(height_m=HEIGHTS, higher_m=st.floats(min_value=1, max_value=500))
def test_higher_is_thinner_and_cooler(height_m: float, higher_m: float) -> None:
    """Pressure and boiling point fall with every metre."""
    assert pressure_kpa(height_m + higher_m) < pressure_kpa(height_m)
    assert boiling_point_c(height_m + higher_m) < boiling_point_c(height_m)


@given(height_m=st.floats(min_value=0, max_value=6000))
def test_the_boiling_point_agrees_with_the_short_formula(height_m: float) -> None:
    """Two formulas fitted apart agree: T = 99.973 - 3.318 k - 0.0046 k², k in km, is within 0.002 of the tables."""
    k = height_m / 1000
    assert boiling_point_c(height_m) == pytest.approx(99.973 - 3.318 * k - 0.0046 * k**2, abs=0.005)


def test_a_copied_boiling_point_is_wrong() -> None:
    """At 4000 m water boils at 86.6 °C, not at the widely copied 87.3."""
    assert boiling_point_c(4000) == pytest.approx(86.63, abs=0.01)


def test_water_under_sea_level_pressure() -> None:
    """At 101.325 kPa water boils at 99.974 °C (IAPWS), not quite 100."""
    assert boiling_point_at_pressure_c(101.325) == pytest.approx(99.974, abs=0.002)


def test_a_litre_to_the_boil() -> None:
    """1 L from 10 °C takes 4.19 x (99.97 - 10) = 377 kJ at sea level, 4.19 x (89.98 - 10) = 335 kJ at 3000 m."""
    assert heat_to_boil_kj(1000, 10, 0) == pytest.approx(377, abs=0.5)
    assert heat_to_boil_kj(1000, 10, 3000) == pytest.approx(335, abs=0.5)


def test_food_in_the_water_takes_heat_too() -> None:
    """110 g of dry food at 1.7 kJ/(kg K) adds 0.11 x 1.7 x 89.97 = 16.8 kJ."""
    assert heat_to_boil_kj(300, 10, 0, 110) - heat_to_boil_kj(300, 10, 0) == pytest.approx(16.8, abs=0.05)
    assert heat_capacity_kj_per_k(300, 110) == pytest.approx(1.444)  # 0.3 x 4.19 + 0.11 x 1.7


def test_boiling_water_takes_no_more_heat() -> None:
    """Water that is at the boil already, or came hot in a flask from lower down, takes nothing."""
    assert heat_to_boil_kj(500, 95, 3000) == 0


def test_snow_takes_more_than_twice() -> None:
    """1 kg of snow at -10 °C to the boil at 3000 m: 20.6 + 333.5 + 4.19 x 89.98 = 731 kJ, 2.2 times water at 10 °C."""
    assert snow_to_boil_kj(1000, -10, 3000) == pytest.approx(731, abs=0.5)
    assert snow_to_boil_kj(1000, -10, 3000) / heat_to_boil_kj(1000, 10, 3000) == pytest.approx(2.2, abs=0.05)


def test_wet_snow_is_at_zero() -> None:
    """Snow above 0 °C counts as at 0 °C."""
    assert snow_to_boil_kj(1000, 5, 0) == snow_to_boil_kj(1000, 0, 0)


@pytest.mark.parametrize(("pot_cm", "grams"), [(12, 3.1), (16, 5.5), (20, 8.5)])
def test_an_open_pot_boils_off(pot_cm: float, grams: float) -> None:
    """16.29 kg/(h m²) on 0.0113, 0.0201 and 0.0314 m² is 3.1, 5.5 and 8.5 g/min; with the lid on about a quarter."""
    assert boil_off_g_per_min(pot_cm, lid=False) == pytest.approx(grams, abs=0.05)
    assert boil_off_g_per_min(pot_cm, lid=True) == pytest.approx(grams / 4, abs=0.02)


def test_a_simmer_is_mostly_boil_off_without_a_lid() -> None:
    """Open 16 cm pot: 5.46 g/min x 2256.5 J/g / 60 = 0.205 kW, and 3 x 0.0201 m² x 1.15 kW/m² = 0.069 kW besides."""
    assert simmer_kw(16, lid=False) == pytest.approx(0.205 + 0.069, abs=0.001)
    assert simmer_kw(16, lid=True) == pytest.approx(0.051 + 0.069, abs=0.001)
    assert simmer_kj(16, 10, lid=True) == pytest.approx(0.1207 * 600, rel=0.001)


def test_a_simmer_with_a_lid_takes_about_as_little_as_a_stove_can_give() -> None:
    """0.12 kW at 45 % from gas of 45.8 MJ/kg: 0.12 x 60 / (45.79 x 0.45) = 0.35 g/min (common practice: 0.3 to 0.5)."""
    assert fuel_g(simmer_kj(16, 1, lid=True), GAS_MIX.heat.value, 0.45, 0) == pytest.approx(0.351, abs=0.002)


def test_less_fuel_than_this_is_impossible() -> None:
    """At efficiency 1, a litre from 10 °C takes 377 / 45.7 = 8.2 g of gas or 377 / 26.8 = 14 g of ethanol."""
    heat_kj = heat_to_boil_kj(1000, 10, 0)
    assert fuel_g(heat_kj, 45.7, 1, 0) == pytest.approx(8.2, abs=0.06)
    assert fuel_g(heat_kj, 26.8, 1, 0) == pytest.approx(14.0, abs=0.1)


def test_fuel_has_a_margin() -> None:
    """377 kJ / (45.79 x 0.45) = 18.3 g, and a fifth more is 22.0 g."""
    heat_kj = heat_to_boil_kj(1000, 10, 0)
    assert fuel_g(heat_kj, GAS_MIX.heat.value, 0.45, 0) == pytest.approx(18.3, abs=0.05)
    assert fuel_g(heat_kj, GAS_MIX.heat.value, 0.45) == pytest.approx(22.0, abs=0.1)


@pytest.mark.parametrize(
    ("need_g", "cartridges"),
    [
        (0, ()),
        (50, (100,)),
        (100, (100,)),
        (100.1, (230,)),
        (300, (450,)),  # one of 450 rather than 230 + 100
        (451, (230, 230)),  # 460 g rather than 550
        (465, (450, 100)),
        (900, (450, 450)),
        (1000, (450, 450, 100)),
        (5000, (*(450,) * 11, 100)),
    ],
)
def test_whole_cartridges(need_g: float, cartridges: tuple[int, ...]) -> None:
    """The fewest cartridges that hold enough, and of those the least fuel."""
    assert cartridges_g(need_g, SIZES_G) == cartridges


def test_poured_fuel_has_no_cartridges() -> None:
    """Alcohol is poured, so there is nothing to count."""
    assert cartridges_g(120, ()) == ()


@given(need_g=st.floats(min_value=0.1, max_value=20_000))
def test_cartridges_hold_enough_and_not_one_too_many(need_g: float) -> None:
    """They hold what is needed, and without the last one they would not."""
    cartridges = cartridges_g(need_g, SIZES_G)
    assert sum(cartridges) >= need_g
    assert sum(cartridges[:-1]) < need_g
    assert list(cartridges) == sorted(cartridges, reverse=True)


def test_minutes_to_the_boil() -> None:
    """377 kJ at 2 kW x 0.45 = 0.9 kW takes 419 s = 7.0 min."""
    assert minutes_to_heat(377, 2.0, 0.45) == pytest.approx(6.98, abs=0.01)


@pytest.mark.parametrize(("height_m", "start_c"), [(0, 85), (3000, 76)])
def test_steeping_cools_at_once(height_m: float, start_c: float) -> None:
    """300 mL just off the boil on 110 g at 10 °C starts at about 85 °C at sea level and 76 °C at 3000 m.

    (1.257 x (99.97 - 4) + 0.187 x 10) / 1.444 = 84.8; (1.257 x (89.98 - 4) + 1.87) / 1.444 = 76.1
    """
    assert steep_start_c(300, 110, 10, height_m) == pytest.approx(start_c, abs=0.5)


@pytest.mark.parametrize(("shelter", "end_c"), [(Shelter.COSY, 77), (Shelter.STILL, 62), (Shelter.WIND, 42)])
def test_steeping_ends_by_shelter(shelter: Shelter, end_c: float) -> None:
    """After 15 min in air of 10 °C: about 77 °C in a cosy, 62 bare and still, 42 in wind (with guessed losses).

    10 + 74.84 x exp(-0.18 x 900 / 1444) = 76.9; with 0.59 W/K 61.8; with 1.37 W/K 41.9
    """
    start_c = steep_start_c(300, 110, 10, 0)
    assert steep_end_c(start_c, 10, 15, 300, 110, shelter) == pytest.approx(end_c, abs=0.5)


def test_a_larger_meal_keeps_its_heat_as_its_surface_allows() -> None:
    """Eight times the meal has four times the surface, so it takes twice as long to cool as far."""
    small_c = steep_end_c(85, 10, 15, 300, 110, Shelter.STILL)
    assert steep_end_c(85, 10, 30, 2400, 880, Shelter.STILL) == pytest.approx(small_c)


@given(
    minutes=st.floats(min_value=0, max_value=240),
    water_ml=st.floats(min_value=50, max_value=3000),
    air_c=st.floats(min_value=-20, max_value=35),
    shelter=st.sampled_from(Shelter),
)
def test_steeping_never_passes_the_air(minutes: float, water_ml: float, air_c: float, shelter: Shelter) -> None:
    """A meal cools towards the air and not below it, a larger one more slowly, a cosy never worse than none."""
    end_c = steep_end_c(85, air_c, minutes, water_ml, water_ml / 3, shelter)
    assert air_c <= end_c <= 85
    assert steep_end_c(85, air_c, minutes, 2 * water_ml, 2 * water_ml / 3, shelter) >= end_c
    assert steep_end_c(85, air_c, minutes, water_ml, water_ml / 3, Shelter.COSY) >= end_c


@pytest.mark.parametrize(("water_ml", "food_g", "end_c"), [(300, 110, 41), (200, 70, 57)])
def test_a_ration_heater_warms(water_ml: float, food_g: float, end_c: float) -> None:
    """45 kJ into 1.444 kJ/K is 31 K, into 0.957 kJ/K 47 K: from 10 °C to about 41 and 57 °C, far from cooked."""
    assert heater_end_c(water_ml, food_g, 10) == pytest.approx(end_c, abs=0.5)


def test_heaters_never_pass_the_boil() -> None:
    """Three heaters on a cup of tea stop at the boiling point of the place."""
    assert heater_end_c(100, 0, 10, 3000, heaters=3) == boiling_point_c(3000)


def test_two_heaters_give_twice_the_rise() -> None:
    """Two heaters under 600 mL and 220 g do what one does under half of it."""
    assert heater_end_c(600, 220, 10, heaters=2) == pytest.approx(heater_end_c(300, 110, 10))


@pytest.mark.parametrize(
    ("food", "factor"),
    [
        (Softens.DRY_LEGUMES, 3.36),  # 10^(9.997 / 19)
        (Softens.DENSE_VEGETABLES, 2.61),  # 10^(9.997 / 24)
        (Softens.RICE_AND_PASTA, 1.90),  # 10^(9.997 / 36)
        (Softens.BRAISED_MEAT, 1.56),  # 10^(9.997 / 52)
    ],
)
def test_cooking_takes_longer_at_3000_m(food: Softens, factor: float) -> None:
    """Water is 10.0 K cooler at 3000 m; how much longer that takes is the food's z value."""
    assert longer_at_height(3000, Z_VALUES[food].value) == pytest.approx(factor, abs=0.01)


def test_cooking_at_height_agrees_with_the_rule_of_the_mountains() -> None:
    """University of Wyoming Extension: 4 to 11 % longer per 1,000 ft. z 52 gives 4.6 %, z 24 gives 10.2 %."""
    for food in (Softens.DENSE_VEGETABLES, Softens.RICE_AND_PASTA, Softens.BRAISED_MEAT):
        assert 1.04 <= longer_at_height(304.8, Z_VALUES[food].value) <= 1.11


def test_soaking_takes_little_longer_at_height() -> None:
    """At 3000 m a soak takes 1.2 to 1.4 times as long: exp(19.2/R x (1/363.13 - 1/373.12)) = 1.19, with 36 1.38."""
    assert longer_soak_at_height(3000, SOAK_ENERGIES[Soaks.AIR_DRIED].value) == pytest.approx(1.19, abs=0.01)
    assert longer_soak_at_height(3000, SOAK_ENERGIES[Soaks.LEGUMES].value) == pytest.approx(1.38, abs=0.01)


def test_a_cold_soak_takes_hours() -> None:
    """A 10-minute hot soak becomes 1 to 3½ h at 20 °C for air-dried food, far less for freeze-dried."""
    minutes = {kind: 10 * longer_soak_in(20, SOAK_ENERGIES[kind].value) for kind in Soaks}
    assert 45 <= minutes[Soaks.AIR_DRIED] <= 65  # 10 x exp(19.2 / 0.008314 x 6.95e-4) = 50
    assert 190 <= minutes[Soaks.LEGUMES] <= 210  # 10 x exp(36 / 0.008314 x 6.95e-4) = 203
    assert minutes[Soaks.FREEZE_DRIED] < minutes[Soaks.AIR_DRIED] / 2


@given(height_m=HEIGHTS, water_c=st.floats(min_value=0, max_value=100), kind=st.sampled_from(Soaks))
def test_nothing_gets_quicker(height_m: float, water_c: float, kind: Soaks) -> None:
    """Published times are never shortened: not by hotter water, nor below sea level."""
    assert longer_soak_in(water_c, SOAK_ENERGIES[kind].value) >= 1
    assert longer_soak_at_height(height_m, SOAK_ENERGIES[kind].value) >= 1
    assert longer_at_height(height_m, 19) >= 1


def test_gas_boils_lower_at_height() -> None:
    """n-butane boils at -0.5 °C at sea level and near -9.8 °C at 3000 m, so height helps a cold cartridge a little."""
    assert gas_boils_at_c(-0.5, 0) == pytest.approx(-0.5)
    assert gas_boils_at_c(-0.5, 3000) == pytest.approx(-9.8, abs=0.3)


def test_every_figure_says_where_it_comes_from() -> None:
    """No constant without a name, a unit, a source and a standing, and none twice."""
    figures = all_figures()
    assert len(figures) > 80
    for figure in figures:
        assert figure.name.strip(), figure
        assert figure.unit.strip(), figure
        assert len(figure.source) >= 8, figure
        assert isinstance(figure.standing, Standing)
    assert len({figure.name for figure in figures}) == len(figures)


def test_every_figure_lies_between_its_bounds() -> None:
    """Bounds come in pairs and hold the value."""
    for figure in all_figures():
        assert (figure.low is None) == (figure.high is None), figure
        if figure.low is not None and figure.high is not None:
            assert figure.low <= figure.value <= figure.high, figure


@pytest.mark.parametrize("room", [units, air_and_water, fuels, stoves, cooking, margins])
def test_every_room_is_listed(room: object) -> None:
    """Each figure that a room names stands in the list, so that the page of constants is complete."""
    listed = set(all_figures())
    named = [thing for thing in vars(room).values() if isinstance(thing, Figure)]
    for thing in vars(room).values():
        if isinstance(thing, fuels.Fuel | stoves.Stove):
            named += [value for field in fields(thing) if isinstance(value := getattr(thing, field.name), Figure)]
    assert named or room is stoves
    assert set(named) <= listed


def test_stoves_and_fuels_are_plausible() -> None:
    """Efficiencies are shares, powers those of camp stoves, heats those of fuels; stove defaults are marked as such."""
    for stove in STOVES.values():
        assert 0.05 < stove.efficiency.value < 0.8
        assert 0.3 < stove.power.value < 10
        assert stove.efficiency.standing is stove.power.standing is Standing.COMMON_PRACTICE
    for fuel in FUELS.values():
        assert 14 < fuel.heat.value < 47
        assert (fuel.boils_at is not None) or not fuel.cartridges_g
