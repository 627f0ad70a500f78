"""The heat and fuel of a whole dish against the steam tables and heats of combustion of other people's libraries."""

import chemicals
import pytest
from iapws import IAPWS97
from tests.sums.book_of import FUEL_MARGIN, dish_of

MEGAPASCAL = 0.101325
ISOBUTANE, PROPANE = "75-28-5", "74-98-6"


def lower_heat_mj_per_kg(cas: str) -> float:
    """Give the net heat of combustion of a gas; its liquid gives a little less, as it must boil first (about 0.36)."""
    formula = chemicals.search_chemical(cas)
    burnt = chemicals.combustion.combustion_data(formula=formula.formula, Hf=chemicals.reaction.Hfg(cas))
    return float(-burnt.LHV / formula.MW / 1000)


@pytest.mark.parametrize("water_ml", [250, 1000])
def test_fuel_for_boiled_water(water_ml: int) -> None:
    """Water from 10 °C to the boil: enthalpy by IAPWS-97, gas by its heats of combustion, half of it into the pot."""
    cold, hot = IAPWS97(P=MEGAPASCAL, T=283.15), IAPWS97(P=MEGAPASCAL, x=0)
    heat_kj = water_ml / 1000 * (hot.h - cold.h)
    sums = dish_of("salt: 1 g", f"{{mix: salt, with: {water_ml} mL boiling water}}").sums()
    assert sums.heat.energy_kj == pytest.approx(heat_kj, rel=0.005)
    gas = 0.7 * lower_heat_mj_per_kg(ISOBUTANE) + 0.3 * lower_heat_mj_per_kg(PROPANE)
    fuel_g = heat_kj / gas / 0.5 * (1 + FUEL_MARGIN)
    assert sums.heat.fuel_g == pytest.approx(fuel_g, abs=1)  # rounded up to whole grams
