"""Heat: boiling points, energy, fuel, steeping, and how much longer things take at height or in cool water.

Pure sums on bare numbers with the unit in the name. Every constant comes from `figures` with its source and standing;
what is only guessed (steeping, stoves) is said to be so there. Heats are net (lower heating value) throughout.
"""

import math
from collections.abc import Sequence
from itertools import combinations_with_replacement

from packlarder.figures import air_and_water as water
from packlarder.figures import cooking, margins
from packlarder.figures.cooking import Shelter
from packlarder.figures.units import ABSOLUTE_ZERO

_KELVIN = -ABSOLUTE_ZERO.value
_CARTRIDGES_CHOSEN = 8
"""Of many cartridges, all but so many are of the largest size."""


def pressure_kpa(height_m: float) -> float:
    """The air pressure at a height above the sea (geometric), US Standard Atmosphere 1976, up to 11 km."""
    radius = water.EARTH_RADIUS.value
    geopotential_m = radius * height_m / (radius + height_m)
    warmth = 1 - water.LAPSE_RATE.value * geopotential_m / water.SEA_LEVEL_TEMPERATURE.value
    return water.SEA_LEVEL_PRESSURE.value * math.pow(warmth, water.PRESSURE_EXPONENT.value)


def boiling_point_at_pressure_c(pressure_kpa: float) -> float:
    """The temperature at which water boils under a pressure of 47 to 108 kPa; within 0.001 °C of the steam tables."""
    return water.ANTOINE_B.value / (water.ANTOINE_A.value - math.log(pressure_kpa)) - water.ANTOINE_C.value


def boiling_point_c(height_m: float) -> float:
    """The temperature at which water boils at a height, in the standard atmosphere.

    Weather moves it by 0.3 to 0.4 °C per 10 hPa: print whole or half degrees.
    """
    return boiling_point_at_pressure_c(pressure_kpa(height_m))


def gas_boils_at_c(sea_level_c: float, height_m: float) -> float:
    """The temperature below which a liquefied gas gives none, from its boiling point at sea level (Trouton's rule)."""
    fall = math.log(pressure_kpa(height_m) / water.SEA_LEVEL_PRESSURE.value)
    return (sea_level_c + _KELVIN) / (1 - water.GAS_CONSTANT.value / water.TROUTON.value * fall) - _KELVIN


def heat_capacity_kj_per_k(water_ml: float, food_g: float = 0.0) -> float:
    """What one degree takes for water with dry food in it."""
    water_g = water_ml * water.WATER_DENSITY.value
    return (water_g * water.WATER_HEAT.value + food_g * water.DRY_FOOD_HEAT.value) / 1000


def heat_to_boil_kj(water_ml: float, start_c: float, height_m: float, food_g: float = 0.0) -> float:
    """The heat that brings water, and dry food in it, from a temperature to the boil; none if it is hotter already."""
    return heat_capacity_kj_per_k(water_ml, food_g) * max(0.0, boiling_point_c(height_m) - start_c)


def melting_kj(water_ml: float, snow_c: float, water_c: float = 0.0) -> float:
    """The heat that turns snow into this much water of a temperature. Snow above 0 °C counts as at 0 °C."""
    warming_and_melting = water.ICE_HEAT.value * max(0.0, -snow_c) + water.MELTING.value
    melted_kg = water_ml * water.WATER_DENSITY.value / 1000
    return melted_kg * warming_and_melting + heat_capacity_kj_per_k(water_ml) * water_c


def snow_to_boil_kj(water_ml: float, snow_c: float, height_m: float) -> float:
    """The heat that turns snow into this much boiling water. Snow above 0 °C counts as at 0 °C."""
    return melting_kj(water_ml, snow_c) + heat_to_boil_kj(water_ml, 0.0, height_m)


def boil_off_g_per_min(pot_cm: float, *, lid: bool) -> float:
    """The water that leaves a gently simmering pot, by its diameter. Rough (factor 2); servings do not change it."""
    kg_per_hour = cooking.EVAPORATION.value * _top_m2(pot_cm) * _share_with(lid=lid)
    return kg_per_hour * 1000 / 60


def simmer_kw(pot_cm: float, *, lid: bool) -> float:
    """The heat that a pot must take in to go on simmering: boil-off, and what its top and wall lose besides."""
    boil_off_kw = boil_off_g_per_min(pot_cm, lid=lid) / 60 * water.BOILING_AWAY.value / 1000
    wall_m2 = 4 * cooking.FILLED_TO.value * _top_m2(pot_cm)  # pi d x (share of d) = 4 x share x pi d² / 4
    return boil_off_kw + cooking.SURFACE_LOSS.value * (_top_m2(pot_cm) + wall_m2)


def simmer_kj(pot_cm: float, minutes: float, *, lid: bool) -> float:
    """The heat that keeps a pot simmering for some minutes."""
    return simmer_kw(pot_cm, lid=lid) * minutes * 60


def minutes_to_heat(heat_kj: float, power_kw: float, efficiency: float) -> float:
    """The minutes in which a stove brings this heat into the pot."""
    return heat_kj / (power_kw * efficiency) / 60


def fuel_g(
    heat_kj: float, fuel_mj_per_kg: float, efficiency: float, margin: float = margins.FUEL_MARGIN.value
) -> float:
    """The fuel that brings this heat into the pot, with a margin on top. Net heat and efficiency of the same basis."""
    return heat_kj / (fuel_mj_per_kg * efficiency) * (1 + margin)


def cartridges_g(need_g: float, sizes_g: Sequence[int]) -> tuple[int, ...]:
    """The whole cartridges that hold this much fuel: the fewest, and of those the least fuel; the largest first.

    Empty for no need, and for a fuel that is not sold in cartridges. Two small ones hold more steel than a large one.
    """
    if need_g <= 0 or not sizes_g:
        return ()
    largest = max(sizes_g)
    count = math.ceil(need_g / largest)
    open_choices = min(count, _CARTRIDGES_CHOSEN)
    sure = (largest,) * (count - open_choices)
    choices = combinations_with_replacement(sorted(sizes_g, reverse=True), open_choices)
    return sure + min((choice for choice in choices if sum(sure) + sum(choice) >= need_g), key=sum)


def steep_start_c(water_ml: float, food_g: float, food_c: float, height_m: float) -> float:
    """The temperature just after water off the boil was poured on dry food: the mean of both by heat capacity."""
    poured_c = boiling_point_c(height_m) - cooking.POURING_LOSS.value
    return _mixed_c(poured_c, food_c, water_ml, food_g)


def steep_end_c(
    start_c: float, air_c: float, minutes: float, water_ml: float, food_g: float, shelter: Shelter
) -> float:
    """The temperature of a steeping meal after some minutes, by Newton's law of cooling.

    The loss in W/K is guessed for a meal of 410 g and grows with its surface (weight to the power 2/3); it is chosen to
    give about 77 °C in a cosy, 62 bare and still, 42 bare in wind after 15 min in air of 10 °C. Measure your own.
    """
    surface = ((water_ml + food_g) / cooking.STEEP_WEIGHT.value) ** (2 / 3)
    loss_kw_per_k = cooking.STEEP_LOSSES[shelter].value * surface / 1000
    left = math.exp(-loss_kw_per_k * minutes * 60 / heat_capacity_kj_per_k(water_ml, food_g))
    return air_c + (start_c - air_c) * left


def heater_end_c(water_ml: float, food_g: float, start_c: float, height_m: float = 0.0, heaters: int = 1) -> float:
    """The temperature that ration heaters bring a meal to: they warm, they do not cook. At most the boiling point."""
    rise_k = heaters * cooking.RATION_HEATER.value / heat_capacity_kj_per_k(water_ml, food_g)
    return min(start_c + rise_k, boiling_point_c(height_m))


def longer_at_height(height_m: float, z_k: float) -> float:
    """How many times as long uncooked food takes at a height, by its z value. Food cooked before drying only soaks."""
    cooler_k = max(0.0, boiling_point_c(0.0) - boiling_point_c(height_m))
    return math.pow(10.0, cooler_k / z_k)


def longer_soak_at_height(height_m: float, soak_kj_per_mol: float) -> float:
    """How many times as long a soak in boiling water takes at a height, against sea level; never shorter."""
    return max(1.0, _slower(boiling_point_c(height_m), boiling_point_c(0.0), soak_kj_per_mol))


def longer_soak_in(water_c: float, soak_kj_per_mol: float) -> float:
    """How many times as long a soak takes in cooler water, against a hot soak at 95 °C; never shorter."""
    return max(1.0, _slower(water_c, cooking.SOAK_REFERENCE.value, soak_kj_per_mol))


def _slower(water_c: float, reference_c: float, energy_kj_per_mol: float) -> float:
    """Arrhenius: the factor on time between two temperatures."""
    apart = 1 / (water_c + _KELVIN) - 1 / (reference_c + _KELVIN)
    return math.exp(energy_kj_per_mol / water.GAS_CONSTANT.value * apart)


def _mixed_c(water_c: float, food_c: float, water_ml: float, food_g: float) -> float:
    of_water, of_food = heat_capacity_kj_per_k(water_ml), heat_capacity_kj_per_k(0.0, food_g)
    return (of_water * water_c + of_food * food_c) / (of_water + of_food)


def _top_m2(pot_cm: float) -> float:
    return math.pi * (pot_cm / 100) ** 2 / 4


def _share_with(*, lid: bool) -> float:
    return cooking.LID.value if lid else 1.0
