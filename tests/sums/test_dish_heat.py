"""The fuel of whole dishes followed by hand: what is heated once, what is kept hot, what the stove makes of it."""

import math

import pytest
from tests.sums.book_of import dish_of

BOIL_C = 99.97  # at sea level, steam tables
WATER_KJ, FOOD_KJ = 4.19, 1.7  # kJ/(kg K), numbers.md section 5; dry food as figures has it
GAS_MJ_PER_KG = 45.8  # isobutane/propane 70/30, lower heating value (numbers.md, section 5)
SIMMER_LOSS_KW = 11.36  # kW/m² of open water at the boil (Engineering ToolBox): 10.21 boil-off, 1.15 besides


def grams_of_gas(heat_kj: float) -> int:
    """Half of the heat reaches the pot, and 15 % are carried on top."""
    return math.ceil(heat_kj / 1000 / (GAS_MJ_PER_KG * 0.5) * 1.15 * 1000)


def simmer_kj(minutes: float, across_cm: float, lid_share: float) -> float:
    """Boil-off times the lid's share, and 1.15 kW/m² from top and wall (half as deep as wide: twice the top)."""
    top_m2 = math.pi * (across_cm / 100) ** 2 / 4
    return ((SIMMER_LOSS_KW - 1.15) * lid_share * top_m2 + 1.15 * 3 * top_m2) * minutes * 60


def test_fuel_of_a_pot_of_pasta() -> None:
    """100 g of pasta in 1 L, lid off, ten minutes: each litre is heated once, whoever takes it up."""
    sums = dish_of("pasta: 100 g", "{boil: pasta, in: 1 L, for: 10 min, lid: off}").sums()
    water = 1.0 * WATER_KJ * (BOIL_C - 10)  # 377.0 kJ
    food = 0.1 * FOOD_KJ * (BOIL_C - 10)  # 15.3 kJ
    kept = simmer_kj(10, 16, 1.0)  # (10.21 + 3 x 1.15) x 0.0201 x 600 = 164.8 kJ
    assert sums.heat.energy_kj == pytest.approx(water + food + kept, rel=0.002)
    assert sums.heat.fuel_g == grams_of_gas(water + food + kept) == 28  # 557 / 22.9 x 1.15


def test_drained_and_soaked_things_are_heated_once() -> None:
    """Beef is soaked hot (400 mL), its 250 mL go into the pot with 200 fresh, and it simmers there with its own 150.

    Warmed again it needs no more heat than to keep the pot warm.
    """
    sums = dish_of(
        "beef: 100 g",
        "soak: beef",
        "drain: into the pot",
        "{simmer: beef, in: 450 mL, for: 5 min}",
        "{warm: beef, for: 2 min}",
    ).sums()
    kelvin = BOIL_C - 10
    assert sums.steps[0].heat_kj == pytest.approx(0.4 * WATER_KJ * kelvin, rel=0.002)
    simmered = (0.2 + 0.25 + 0.15) * WATER_KJ * kelvin + 0.1 * FOOD_KJ * kelvin + simmer_kj(5, 16, 0.25)
    assert sums.steps[2].heat_kj == pytest.approx(simmered, rel=0.002)
    assert sums.steps[3].heat_kj == pytest.approx(simmer_kj(2, 16, 0.25), rel=0.002)


def test_what_was_stirred_in_cold_is_warmed() -> None:
    """Rice moistened beside the pot and stirred in is heated when the pot is warmed."""
    sums = dish_of(
        "rice: 100 g, beef: 50 g",
        "{moisten: rice, with: 200 mL cold water}",
        "{simmer: beef, in: 300 mL, for: 5 min}",
        "stir in: rice",
        "{warm: beef, for: 2 min}",
    ).sums()
    kelvin = BOIL_C - 10
    rice = 0.2 * WATER_KJ * kelvin + 0.1 * FOOD_KJ * kelvin  # 75.4 + 15.3 kJ
    assert sums.steps[3].heat_kj == pytest.approx(rice + simmer_kj(2, 16, 0.25), rel=0.002)


def test_a_pan_takes_a_share_of_the_flame() -> None:
    """Frying counts 0.4 of the full flame: of 2 kW half reaches the pan, 0.4 kW for 3 min are 72 kJ; 10 g of oil."""
    sums = dish_of("oil: 10 g", "{fry: oil, for: 3 min, pot: pan}").sums()
    assert sums.heat.energy_kj == pytest.approx(72 + 0.01 * FOOD_KJ * (BOIL_C - 10), rel=0.002)


def test_higher_up_water_boils_sooner_and_colder() -> None:
    """1 L from 10 °C takes 335 kJ at 3000 m (numbers.md, section 5)."""
    worked = dish_of("salt: 1 g", "{mix: salt, with: 1 L boiling water}")
    assert worked.sums().heat.energy_kj == pytest.approx(377, abs=0.5)
    high = worked.sums(height_m=3000.0).heat
    assert high.energy_kj == pytest.approx(335, abs=0.5)
    assert high.boiling_point_c == pytest.approx(89.97, abs=0.05)


def test_cold_dishes_burn_nothing() -> None:
    """A cold mix needs no fuel and no flame."""
    heat = dish_of("milk powder: 20 g", "mix: milk powder").sums().heat
    assert (heat.fuel_g, heat.energy_kj) == (0, 0)


def test_the_stove_of_the_dish() -> None:
    """A spirit burner without figures of its own takes the table's: 0.48 of denatured alcohol's 24.7 MJ/kg.

    500 mL x 4.19 x 89.97 = 188.5 kJ; / (24.7 x 0.48) x 1.15 = 18.3 g.
    """
    sums = dish_of("salt: 1 g", "{mix: salt, with: 500 mL hot water}", more="stove: spirit\n").sums()
    assert (sums.heat.fuel, sums.heat.fuel_g) == ("denatured alcohol", 19)


def test_a_heater_burns_no_fuel() -> None:
    """A ration heater brings its own heat."""
    sums = dish_of("rice: 100 g", "{moisten: rice, with: 200 mL cold water}", "{warm: rice, on: ration heater}").sums()
    assert sums.heat.fuel_g == 0


@pytest.mark.parametrize(
    ("servings", "water", "grams", "ends_c"),
    [(1, "300 mL", 110, 41), (1, "200 mL", 70, 57)],
)
def test_end_of_a_heater_meal(servings: int, water: str, grams: int, ends_c: float) -> None:
    """300 mL + 110 g from 10 °C end at about 41 °C, 200 mL + 70 g at about 57 (numbers.md, section 5, worked out)."""
    worked = dish_of(
        f"rice: {grams} g",
        f"{{moisten: rice, with: {water} cold water}}",
        "{warm: rice, on: ration heater}",
        serves=servings,
    )
    assert worked.sums().steps[1].steeped_c == pytest.approx(ends_c, abs=1.5)


@pytest.mark.parametrize(("cosy", "ends_c"), [("yes", 77), ("no", 62)])
def test_end_of_a_steep(cosy: str, ends_c: float) -> None:
    """300 mL on 110 g in air of 10 °C are at about 77 °C in a cosy after 15 min, 62 bare and still (numbers.md)."""
    step = f"{{pour over: rice, with: 300 mL boiling water, for: 15 min, cosy: {cosy}}}"
    worked = dish_of("rice: 110 g", step, serves=1)
    assert worked.sums().steps[0].steeped_c == pytest.approx(ends_c, abs=1)
