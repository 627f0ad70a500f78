"""Heat, held against steam tables, standard atmospheres, heats of combustion and the table of check values."""

import csv
import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import chemicals
import fluids
import iapws
import pytest
from ambiance import Atmosphere
from CoolProp.CoolProp import PropsSI

from packlarder.figures import air_and_water as water
from packlarder.figures import cooking, fuels, stoves
from packlarder.figures.cooking import SOAK_ENERGIES, Z_VALUES, Soaks, Softens
from packlarder.figures.figure import Figure
from packlarder.reckon.heat import (
    boil_off_g_per_min,
    boiling_point_at_pressure_c,
    boiling_point_c,
    fuel_g,
    gas_boils_at_c,
    heat_to_boil_kj,
    longer_at_height,
    longer_soak_in,
    pressure_kpa,
    snow_to_boil_kj,
)

TABLE = Path(__file__).parent / "data" / "physics_checks.csv"
FOOT_M = 0.3048
INCH_OF_MERCURY_KPA = 3.386389  # the table's own row "1 inHg"
HEIGHTS_M = [*range(0, 6001, 250), -430]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One check value of the table."""

    check: str
    inputs: str
    expected: str
    tolerance: str

    def number(self, pattern: str) -> float:
        """The number that stands in the inputs where the pattern has its group."""
        found = re.search(pattern, self.inputs)
        assert found, (pattern, self.inputs)
        return float(found[1])

    @property
    def height_m(self) -> float:
        """The height that the inputs name, in metres."""
        if found := re.search(r"altitude=(\d+) ft", self.inputs):
            return float(found[1]) * FOOT_M
        return self.number(r"(?:altitude=|boiling at )(\d+) m")


def table() -> list[Row]:
    """Every row of the table."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        return [
            Row(check=row["check"], inputs=row["inputs"], expected=row["expected"], tolerance=row["tolerance"])
            for row in csv.DictReader(file)
        ]


def fahrenheit(celsius: float) -> float:
    """Degrees Fahrenheit."""
    return celsius * 1.8 + 32


def worst_c(formula: Callable[[float], float]) -> float:
    """The largest distance of a formula of height in km from our boiling point, 0 to 6 km."""
    return max(abs(formula(h / 1000) - boiling_point_c(h)) for h in range(0, 6001, 100))


def worst_against_steam_tables_c() -> float:
    """The largest distance of our boiling point under a pressure from IAPWS-IF97, 47 to 101.3 kPa."""
    apart = (boiling_point_at_pressure_c(p) - (iapws.iapws97._TSat_P(p / 1000) - 273.15) for p in range(47, 102))
    return float(max(abs(degrees) for degrees in apart))


def net_heat(row: Row) -> float:
    """The net heat that we have for a fuel of the table."""
    by_name = {
        "propane": fuels.PROPANE,
        "n-butane": fuels.BUTANE,
        "isobutane": fuels.ISOBUTANE,
        "70/30 isobutane/propane by mass": fuels.GAS_MIX,
        "ethanol pure": fuels.ETHANOL,
        "ethanol": fuels.ETHANOL,
        "methanol": fuels.METHANOL,
        "n-heptane (naphtha/white-gas surrogate)": fuels.WHITE_GAS,
    }
    return by_name[row.inputs.rsplit(", ", 1)[0]].heat.value


def of_wood(row: Row) -> float:
    """Wood at a moisture: dry heat less what its water takes."""
    moist = row.number(r"moisture=(\d+)") / 100
    return fuels.DRY_WOOD.value * (1 - moist) - fuels.WATER_IN_WOOD.value * moist


def fuel_of(row: Row) -> float:
    """The fuel of a row, without margin."""
    efficiency, heat = row.number(r"efficiency=([\d.]+)"), row.number(r"LHV ([\d.]+)")
    return fuel_g(heat_to_boil_kj(1000, 10, 0), heat, efficiency, 0)


def gas_boils(row: Row) -> float:
    """The boiling point of a fuel gas at the height of a row."""
    assert fuels.BUTANE.boils_at
    return gas_boils_at_c(fuels.BUTANE.boils_at.value, row.height_m)


def sea_level_boil(row: Row) -> float:
    """The boiling point of a fuel gas by its name."""
    gas = next(fuel for fuel in (fuels.BUTANE, fuels.ISOBUTANE, fuels.PROPANE) if fuel.name == row.inputs)
    assert gas.boils_at
    return gas.boils_at.value


Compute = Callable[[Row], float]
Within = Callable[[float], float]


def relative(share: float) -> Within:
    """A tolerance as a share of what is expected."""
    return lambda expected: share * abs(expected)


def absolute(size: float) -> Within:
    """A tolerance in the unit of the row."""
    return lambda _: size


CHECKS: dict[str, tuple[Compute, Within]] = {
    "isa_pressure": (lambda row: pressure_kpa(row.height_m), relative(0.0001)),  # the row allows 0.1 %
    "boiling_point_altitude": (lambda row: boiling_point_c(row.height_m), absolute(0.01)),  # the row allows 0.05
    "boiling_point_altitude_ft": (lambda row: fahrenheit(boiling_point_c(row.height_m)), absolute(0.1)),
    "tsat_from_pressure": (lambda row: boiling_point_at_pressure_c(row.number(r"p=([\d.]+) kPa")), absolute(0.01)),
    "boiling_point_published_csu": (lambda row: fahrenheit(boiling_point_c(row.height_m)), absolute(1)),
    "boiling_point_published_usda_canning": (lambda row: boiling_point_c(row.height_m), absolute(0.2)),
    "boiling_point_forbes_measured": (
        lambda row: fahrenheit(boiling_point_at_pressure_c(row.number(r"p=([\d.]+) inHg") * INCH_OF_MERCURY_KPA)),
        absolute(0.5),
    ),
    "closed_formula_quadratic": (lambda _: worst_c(lambda k: 99.973 - 3.318 * k - 0.0046 * k**2), absolute(0.001)),
    "closed_formula_linear": (lambda _: worst_c(lambda k: 99.995 - 3.346 * k), absolute(0.001)),
    "closed_formula_antoine_p": (lambda _: worst_against_steam_tables_c(), absolute(0.0005)),
    "weather_sensitivity": (
        lambda _: boiling_point_at_pressure_c(102.325) - boiling_point_at_pressure_c(101.325),
        absolute(0.02),
    ),
    "cp_water": (lambda _: water.WATER_HEAT.value, relative(0.007)),  # one mean for 10 to 99 °C
    "latent_heat_vaporisation": (lambda _: water.BOILING_AWAY.value, relative(0.016)),  # one value for all heights
    "latent_heat_fusion": (lambda _: water.MELTING.value, relative(0.002)),
    "cp_ice": (lambda _: water.ICE_HEAT.value, relative(0.01)),
    "energy_to_boil_1L": (
        lambda row: heat_to_boil_kj(1000, row.number(r"at (\d+) degC"), row.height_m),
        relative(0.005),
    ),
    "energy_snow_to_boil": (lambda row: snow_to_boil_kj(1000, -10, row.height_m), relative(0.005)),
    "LHV": (net_heat, relative(0.005)),
    "LHV_published": (net_heat, relative(0.01)),
    "LHV_denatured": (lambda _: fuels.DENATURED_ALCOHOL.heat.value, relative(0.03)),
    "LHV_wood": (of_wood, relative(0.001)),
    "normal_boiling_point": (sea_level_boil, absolute(0.2)),
    "butane_boiling_point_altitude": (gas_boils, absolute(0.3)),
    "fuel_model": (fuel_of, relative(0.01)),
    "fuel_model_ethanol": (fuel_of, relative(0.01)),
    "time_factor_z": (
        lambda row: longer_at_height(row.height_m, row.number(r"z=([\d.]+) degC")),
        relative(0.01),
    ),
    "time_factor_meat_CSU": (
        lambda _: longer_at_height(5000 * FOOT_M, Z_VALUES[Softens.BRAISED_MEAT].value),
        relative(0.01),
    ),
    "evap_rate_gentle_simmer": (
        lambda row: boil_off_g_per_min(row.number(r"diameter (\d+) cm"), lid=False),
        relative(0.02),
    ),
    "evap_rate_power": (lambda _: 0.1 * 60 / water.BOILING_AWAY.value * 1000, relative(0.01)),
    "evap_flux_open_surface": (lambda _: cooking.EVAPORATION.value, relative(0.001)),
    "surface_loss_open": (
        lambda _: 1000 * (cooking.EVAPORATION.value / 3600 * water.BOILING_AWAY.value + cooking.SURFACE_LOSS.value),
        relative(0.001),
    ),
    "efficiency_domestic_gas": (lambda _: stoves.GAS_BURNER.efficiency.value * 100, absolute(5)),
    "Ea_rehydration": (lambda _: SOAK_ENERGIES[Soaks.AIR_DRIED].value, absolute(0)),
    "time_to_equilibrium": (
        lambda row: 10 * soak_factor(row.number(r"(\d+) degC")) / soak_factor(25),  # from the 10 h at 25 °C
        relative(0.20),
    ),
}
"""What we have for each kind of row, and how close it must be."""

NOT_OURS = {
    ("LHV", "80/20 isobutane/propane by mass, gas"),
    ("LHV_published", "LPG (US mix)"),
    ("LHV_published", "gasoline"),
    ("evap_flux_open_surface", "water 160 degF (71.1 degC), still air 15.6 degC"),
    ("evap_flux_open_surface", "water 180 degF (82.2 degC), still air 15.6 degC"),
    ("evap_flux_open_surface", "water 200 degF (93.3 degC), still air 15.6 degC"),
    ("surface_loss_open", "water 160 degF, evaporation+radiation"),
    ("surface_loss_open", "water 180 degF, evaporation+radiation"),
    ("surface_loss_open", "water 200 degF, evaporation+radiation"),
}
"""Single rows of these kinds for fuels that we do not list and water that does not simmer."""

RANGES: dict[tuple[str, str], Figure] = {
    ("z_value_softening", "black beans"): Z_VALUES[Softens.DRY_LEGUMES],
    ("z_value_softening", "brown beans"): Z_VALUES[Softens.DRY_LEGUMES],
    ("z_value_softening", "soybeans"): Z_VALUES[Softens.DRY_LEGUMES],
    ("z_value_softening", "dried peas"): Z_VALUES[Softens.DRY_LEGUMES],
    ("z_value_hardness", "white beans"): Z_VALUES[Softens.DENSE_VEGETABLES],
    ("z_value_hardness", "green peas"): Z_VALUES[Softens.DENSE_VEGETABLES],
    ("Ea_hydration", "chickpea k1, 12-36 degC"): SOAK_ENERGIES[Soaks.LEGUMES],
}
"""Measured values that must lie within the bounds of a figure of ours."""

ELSEWHERE = {
    *("Ea_hydration", "Ea_rice_cooking", "HHV", "HHV_published", "Q10_rice", "bubble_point_mix"),
    *("efficiency_LPG_pot_shape", "efficiency_gain_fins", "efficiency_gain_skirt"),
    *("if97_region4_backward", "lid_saving_to_boil", "vapour_pressure", "z_value_hardness", "z_value_softening"),
    # drinking water, soaking, units, paper, colours and codes: other tests
    *("boil_time_CDC", "boil_time_CDC_Yellow_Book", "boil_time_EPA", "boil_time_EPA_1998_memo"),
    *("boil_time_Health_Canada", "boil_time_WHO", "pathogen_kill_temperature"),
    *("equilibrium_uptake", "freeze_dried_fruit_uptake", "freeze_dried_pork", "peleg_k1", "peleg_k2"),
    *("peleg_uptake_chickpea_20C", "rehydration_ratio_mushroom", "rehydration_time_mushroom"),
    *("unit_exact", "unit_nist_kitchen", "unit_nutrition_label_US", "paper_size", "imposition_16", "type_size"),
    *("qr_dots_per_module", "qr_module_size", "qr_printed_size", "qr_quiet_zone", "wcag_contrast"),
}
"""Kinds of row that no sum of ours gives, or that are tested in their own place."""


def soak_factor(water_c: float) -> float:
    """How much longer beans soak in water of a temperature than in a hot soak."""
    return longer_soak_in(water_c, SOAK_ENERGIES[Soaks.LEGUMES].value)


OURS = [row for row in table() if row.check in CHECKS and (row.check, row.inputs) not in NOT_OURS]


@pytest.mark.parametrize("row", OURS, ids=lambda row: f"{row.check}: {row.inputs}")
def test_check_values(row: Row) -> None:
    """Each check value that concerns heat comes out of our sums."""
    compute, within = CHECKS[row.check]
    expected = float(row.expected)
    assert compute(row) == pytest.approx(expected, abs=within(expected))


def test_every_row_is_accounted_for() -> None:
    """Every kind of row is checked here or named as belonging elsewhere, and every exception is a row of the table."""
    rows = table()
    assert len(rows) == 229
    assert {row.check for row in rows} == CHECKS.keys() | ELSEWHERE
    assert {(row.check, row.inputs) for row in rows} >= NOT_OURS | RANGES.keys()
    assert len(OURS) > 85


@pytest.mark.parametrize("row", [row for row in table() if (row.check, row.inputs) in RANGES], ids=str)
def test_measured_values_lie_within_our_bounds(row: Row) -> None:
    """What was measured for one food lies within the bounds of the figure for its class."""
    figure = RANGES[row.check, row.inputs]
    assert figure.low is not None
    assert figure.high is not None
    assert figure.low <= float(row.expected) <= figure.high


def test_pot_shapes_lie_within_the_bounds_of_a_burner() -> None:
    """Kadam and Shete 2017 measured 29.6 to 53.2 % with pots of five shapes."""
    efficiency = stoves.GAS_BURNER.efficiency
    assert efficiency.low == pytest.approx(0.296, abs=0.01)
    assert efficiency.high == pytest.approx(0.532, abs=0.02)


def test_the_z_value_of_rice_comes_from_its_activation_energy() -> None:
    """Z = ln(10) R T² / Ea with Ea = 71.1 kJ/mol at 95 °C is 36.5 K."""
    z_k = math.log(10) * water.GAS_CONSTANT.value * (95 + 273.15) ** 2 / 71.1
    figure = Z_VALUES[Softens.RICE_AND_PASTA]
    assert z_k == pytest.approx(36.5, abs=0.1)
    assert figure.value == pytest.approx(z_k, abs=0.6)


@pytest.mark.parametrize("height_m", HEIGHTS_M)
def test_pressure_against_two_atmospheres(height_m: float) -> None:
    """Fluids (US Standard Atmosphere 1976) and ambiance (ICAO) give our pressure within 0.01 %."""
    assert pressure_kpa(height_m) == pytest.approx(fluids.ATMOSPHERE_1976(height_m).P / 1000, rel=1e-4)
    assert pressure_kpa(height_m) == pytest.approx(float(Atmosphere(height_m).pressure[0]) / 1000, rel=1e-4)


@pytest.mark.parametrize("height_m", HEIGHTS_M)
def test_boiling_point_against_two_steam_tables(height_m: float) -> None:
    """IAPWS-IF97 on ambiance and CoolProp (IAPWS-95) on fluids give our boiling point within 0.01 °C."""
    by_iapws_c = iapws.iapws97._TSat_P(float(Atmosphere(height_m).pressure[0]) / 1e6) - 273.15
    by_coolprop_c = PropsSI("T", "P", fluids.ATMOSPHERE_1976(height_m).P, "Q", 0, "Water") - 273.15
    assert boiling_point_c(height_m) == pytest.approx(by_iapws_c, abs=0.01)
    assert boiling_point_c(height_m) == pytest.approx(by_coolprop_c, abs=0.01)


@pytest.mark.parametrize("start_c", [1, 5, 10, 20, 40])
@pytest.mark.parametrize("height_m", [0, 1500, 3000, 6000])
def test_heat_against_steam_tables(start_c: float, height_m: float) -> None:
    """Heating a kilogram of water as CoolProp has it takes what we say within 0.5 %."""
    pressure_pa = pressure_kpa(height_m) * 1000
    start, end = (
        PropsSI("H", "T", celsius + 273.15, "P", pressure_pa, "Water") / 1000
        for celsius in (start_c, boiling_point_c(height_m) - 0.001)
    )
    assert heat_to_boil_kj(1000, start_c, height_m) == pytest.approx(end - start, rel=0.005)


@pytest.mark.parametrize(
    ("fuel", "cas", "phase"),
    [
        (fuels.PROPANE, "74-98-6", "g"),
        (fuels.BUTANE, "106-97-8", "g"),
        (fuels.ISOBUTANE, "75-28-5", "g"),
        (fuels.ETHANOL, "64-17-5", "l"),
        (fuels.METHANOL, "67-56-1", "l"),
        (fuels.WHITE_GAS, "142-82-5", "l"),  # n-heptane in its place
    ],
    ids=lambda case: getattr(case, "name", str(case)),
)
def test_net_heats_against_heats_of_formation(fuel: fuels.Fuel, cas: str, phase: str) -> None:
    """Chemicals works out the net heat of combustion from the heat of formation; ours is within 0.1 %."""
    assert net_heat_of(cas, phase) == pytest.approx(fuel.heat.value, rel=0.001)


def test_mixtures_by_weight() -> None:
    """Gas is 70 % isobutane, denatured alcohol 85 % ethanol, 10 % methanol, 5 % water, wood 20 % water."""
    gas = 0.7 * net_heat_of("75-28-5", "g") + 0.3 * net_heat_of("74-98-6", "g")
    assert fuels.GAS_MIX.heat.value == pytest.approx(gas, rel=0.001)
    assert fuels.WOOD.heat.value == pytest.approx(
        0.8 * fuels.DRY_WOOD.value - 0.2 * fuels.WATER_IN_WOOD.value, rel=0.001
    )
    alcohol = 0.85 * net_heat_of("64-17-5", "l") + 0.10 * net_heat_of("67-56-1", "l") - 0.05 * 2.44
    assert fuels.DENATURED_ALCOHOL.heat.value == pytest.approx(alcohol, rel=0.005)


def net_heat_of(cas: str, phase: str) -> float:
    """The net heat of combustion in MJ/kg."""
    formation = chemicals.Hfg(cas) if phase == "g" else chemicals.Hfl(cas)
    formula, molar_g = chemicals.search_chemical(cas).formula, chemicals.MW(cas)
    burnt = chemicals.combustion.combustion_data(formula=formula, Hf=formation, MW=molar_g, method="Stoichiometry")
    return float(-burnt.LHV / molar_g / 1000)


@pytest.mark.parametrize("gas", [fuels.PROPANE, fuels.BUTANE, fuels.ISOBUTANE], ids=lambda gas: gas.name)
@pytest.mark.parametrize("height_m", [0, 1500, 3000, 4500])
def test_gas_boiling_points_against_coolprop(gas: fuels.Fuel, height_m: float) -> None:
    """Trouton's rule gives the boiling point of a fuel gas at height within 0.5 °C."""
    names = {"propane": "n-Propane", "n-butane": "n-Butane", "isobutane": "IsoButane"}
    theirs_c = PropsSI("T", "P", pressure_kpa(height_m) * 1000, "Q", 0, names[gas.name]) - 273.15
    assert gas.boils_at
    assert gas_boils_at_c(gas.boils_at.value, height_m) == pytest.approx(theirs_c, abs=0.5)
