"""The air above a place, and what it takes to warm, melt and boil water."""

from packlarder.figures.figure import Figure, Standing

_ATMOSPHERE = "US Standard Atmosphere 1976"
_COOLPROP = "CoolProp 8.0.0 (IAPWS-95)"
_FIT = "fitted to the steam tables of CoolProp 8.0.0, 47 to 101.3 kPa; within 0.001 °C"

SEA_LEVEL_PRESSURE = Figure(
    name="pressure at sea level",
    value=101.325,
    unit="kPa",
    source=_ATMOSPHERE,
    standing=Standing.COMPUTED,
)
SEA_LEVEL_TEMPERATURE = Figure(
    name="air temperature at sea level",
    value=288.15,
    unit="K",
    source=_ATMOSPHERE,
    standing=Standing.COMPUTED,
)
LAPSE_RATE = Figure(
    name="fall of temperature with height, up to 11 km",
    value=0.0065,
    unit="K/m",
    source=_ATMOSPHERE,
    standing=Standing.COMPUTED,
)
PRESSURE_EXPONENT = Figure(
    name="exponent of the barometric formula, g M / (R L)",
    value=5.255876,
    unit="1",
    source=f"{_ATMOSPHERE}: 9.80665 x 0.0289644 / (8.31432 x 0.0065)",
    standing=Standing.COMPUTED,
)
EARTH_RADIUS = Figure(
    name="radius of the earth, for geopotential height",
    value=6_356_766.0,
    unit="m",
    source=_ATMOSPHERE,
    standing=Standing.COMPUTED,
)

ANTOINE_A = Figure(
    name="Antoine A of water near its boiling point, natural logarithm, kPa and °C",
    value=16.2833,
    unit="1",
    source=_FIT,
    standing=Standing.COMPUTED,
)
ANTOINE_B = Figure(
    name="Antoine B of water near its boiling point",
    value=3811.97,
    unit="°C",
    source=_FIT,
    standing=Standing.COMPUTED,
)
ANTOINE_C = Figure(
    name="Antoine C of water near its boiling point",
    value=226.813,
    unit="°C",
    source=_FIT,
    standing=Standing.COMPUTED,
)

WATER_HEAT = Figure(
    name="specific heat of water, mean from 10 °C to the boil",
    value=4.19,
    unit="kJ/(kg K)",
    source=_COOLPROP,
    standing=Standing.COMPUTED,
    low=4.179,
    high=4.215,
)
WATER_DENSITY = Figure(
    name="density of water, as poured",
    value=1.0,
    unit="g/mL",
    source="0.9997 at 10 °C and 0.9982 at 20 °C (CoolProp 8.0.0), taken as 1",
    standing=Standing.COMPUTED,
    low=0.9982,
    high=1.0,
)
BOILING_AWAY = Figure(
    name="latent heat of boiling, at sea level",
    value=2256.5,
    unit="kJ/kg",
    source=_COOLPROP,
    standing=Standing.COMPUTED,
    low=2256.0,
    high=2291.0,
)
MELTING = Figure(
    name="latent heat of melting ice",
    value=333.5,
    unit="kJ/kg",
    source="iapws 1.5.5",
    standing=Standing.COMPUTED,
)
ICE_HEAT = Figure(
    name="specific heat of ice and snow, mean from -10 to 0 °C",
    value=2.06,
    unit="kJ/(kg K)",
    source="iapws 1.5.5: 20.6 kJ/kg from -10 to 0 °C",
    standing=Standing.COMPUTED,
)
DRY_FOOD_HEAT = Figure(
    name="specific heat of dried food",
    value=1.7,
    unit="kJ/(kg K)",
    source="between carbohydrate 1.55 and protein or fat 2.0 (Choi and Okos 1986)",
    standing=Standing.FROM_MEMORY,
    low=1.5,
    high=2.0,
)
GAS_CONSTANT = Figure(
    name="molar gas constant",
    value=8.314462618e-3,
    unit="kJ/(mol K)",
    source="SI 2019, exact; as pint 0.25.3 gives it",
    standing=Standing.COMPUTED,
)
TROUTON = Figure(
    name="entropy of boiling of a liquefied fuel gas (Trouton's rule)",
    value=0.088,
    unit="kJ/(mol K)",
    source="Trouton's rule, 0.085 to 0.088; n-butane at 3000 m agrees with CoolProp 8.0.0 within 0.3 °C",
    standing=Standing.COMPUTED,
    low=0.085,
    high=0.088,
)
