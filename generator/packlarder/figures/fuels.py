"""Fuels: net heat content, the temperature below which a gas stays liquid, and the sizes it is sold in.

All heats are net (lower heating value: the steam of burning leaves unused), as is every efficiency in `stoves`. Some
standards use the gross value; the two must never be mixed.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from packlarder.figures.figure import Figure, Standing

_CHEMICALS = "chemicals 1.5.2, net heat of combustion"
_COOLPROP = "CoolProp 8.0.0"
_CARTRIDGE_G = (100, 230, 450)
"""Ordinary net weights of screw-on gas cartridges (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel:
    """One fuel.

    `boils_at` is at sea-level pressure, and None where the fuel is not used as a gas under its own pressure.
    `cartridges_g` are the net weights it is sold in; empty where it is poured or gathered.
    """

    name: str
    heat: Figure
    boils_at: Figure | None = None
    cartridges_g: tuple[int, ...] = ()


def _heat(name: str, value: float, source: str = _CHEMICALS, standing: Standing = Standing.COMPUTED) -> Figure:
    return Figure(name=f"net heat content of {name}", value=value, unit="MJ/kg", source=source, standing=standing)


def _boils(name: str, value: float, source: str = _COOLPROP) -> Figure:
    return Figure(
        name=f"boiling point of {name} at sea level",
        value=value,
        unit="°C",
        source=source,
        standing=Standing.COMPUTED,
    )


PROPANE = Fuel(name="propane", heat=_heat("propane", 46.34), boils_at=_boils("propane", -42.1))
BUTANE = Fuel(
    name="n-butane",
    heat=_heat("n-butane", 45.72),
    boils_at=_boils("n-butane", -0.5),
    cartridges_g=_CARTRIDGE_G,
)
ISOBUTANE = Fuel(
    name="isobutane",
    heat=_heat("isobutane", 45.55),
    boils_at=_boils("isobutane", -11.7),
    cartridges_g=_CARTRIDGE_G,
)
GAS_MIX = Fuel(
    name="gas mix",
    heat=_heat("gas mix (isobutane/propane 70/30 by weight)", 45.79),
    boils_at=_boils(
        "gas mix (taken as its isobutane, which is left when the propane is gone)",
        -11.7,
        f"{_COOLPROP}; a fresh cartridge gives gas down to about -23 °C",
    ),
    cartridges_g=_CARTRIDGE_G,
)
ETHANOL = Fuel(name="ethanol", heat=_heat("ethanol", 26.82))
METHANOL = Fuel(name="methanol", heat=_heat("methanol", 19.93))
DENATURED_ALCOHOL = Fuel(
    name="denatured alcohol",
    heat=Figure(
        name="net heat content of denatured alcohol",
        value=24.7,
        unit="MJ/kg",
        source="chemicals 1.5.2: 85 % ethanol, 10 % methanol, 5 % water by weight, less 2.44 MJ/kg for the water",
        standing=Standing.COMPUTED,
        low=24.0,
        high=25.4,
    ),
)
WHITE_GAS = Fuel(
    name="white gas",
    heat=Figure(
        name="net heat content of white gas",
        value=44.56,
        unit="MJ/kg",
        source="chemicals 1.5.2, n-heptane in its place",
        standing=Standing.COMPUTED,
        low=44.4,
        high=44.9,
    ),
)
KEROSENE = Fuel(
    name="kerosene",
    heat=_heat("kerosene", 43.1, "commonly given, not checked", Standing.FROM_MEMORY),
)
DRY_WOOD = Figure(
    name="net heat content of wood without water",
    value=19.0,
    unit="MJ/kg",
    source="net heat of wood, 18.5 to 19 MJ/kg (cfnielsen.com)",
    standing=Standing.PUBLISHED,
    low=18.5,
    high=19.0,
)
WATER_IN_WOOD = Figure(
    name="heat lost to each kilogram of water in wood",
    value=2.44,
    unit="MJ/kg",
    source="cfnielsen.com",
    standing=Standing.PUBLISHED,
)
WOOD = Fuel(
    name="wood",
    heat=_heat(
        "wood at 20 % moisture",
        14.71,
        "19.0 x (1 - 0.20) - 2.44 x 0.20, figures of cfnielsen.com",
        Standing.COMPUTED,
    ),
)

FUELS: Mapping[str, Fuel] = MappingProxyType(
    {
        fuel.name: fuel
        for fuel in (
            GAS_MIX,
            PROPANE,
            BUTANE,
            ISOBUTANE,
            DENATURED_ALCOHOL,
            ETHANOL,
            METHANOL,
            WHITE_GAS,
            KEROSENE,
            WOOD,
        )
    }
)
"""Every fuel by its name, in the order in which they are listed to a reader."""

COLD_CARTRIDGE = Figure(
    name="air temperature below which a butane cartridge wants a warning",
    value=10.0,
    unit="°C",
    source="n-butane boils at -0.5 °C and a cartridge cools as it gives; our margin",
    standing=Standing.COMMON_PRACTICE,
)
