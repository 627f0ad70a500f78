"""Stoves of a type: what share of the fuel's net heat reaches the pot, and how strong the flame is.

No published standard figure was found for either. They are defaults: a household's own weighed boils outrank them.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from packlarder.figures.figure import Figure, Standing

_BOILS = "worked out from weighed boils, with lid and out of the wind; no published standard figure found"
_FLAME = "ordinary flame of the type, no published figure found; measure your own"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stove:
    """One type of stove. `efficiency` is a share of the net heat; `power` is what the fuel gives, before losses."""

    name: str
    efficiency: Figure
    power: Figure


def _stove(name: str, efficiency: tuple[float, float, float], power_kw: tuple[float, float, float]) -> Stove:
    share, least_share, most_share = efficiency
    power, least_power, most_power = power_kw
    return Stove(
        name=name,
        efficiency=Figure(
            name=f"efficiency of a {name}",
            value=share,
            unit="of the net heat",
            source=_BOILS,
            standing=Standing.COMMON_PRACTICE,
            low=least_share,
            high=most_share,
        ),
        power=Figure(
            name=f"power of a {name}",
            value=power,
            unit="kW",
            source=_FLAME,
            standing=Standing.COMMON_PRACTICE,
            low=least_power,
            high=most_power,
        ),
    )


GAS_BURNER = _stove("gas burner", (0.45, 0.30, 0.55), (2.0, 1.2, 3.0))
HEAT_EXCHANGER = _stove("gas burner with heat-exchanger pot", (0.62, 0.50, 0.70), (1.8, 1.2, 2.6))
ALCOHOL_BURNER = _stove("alcohol burner with screen", (0.48, 0.40, 0.60), (0.9, 0.5, 1.5))
LIQUID_BURNER = _stove("liquid-fuel burner", (0.45, 0.30, 0.55), (2.5, 1.5, 3.5))
WOOD_FIRE = _stove("wood fire", (0.12, 0.08, 0.25), (5.0, 2.0, 10.0))

STOVES: Mapping[str, Stove] = MappingProxyType(
    {stove.name: stove for stove in (GAS_BURNER, HEAT_EXCHANGER, ALCOHOL_BURNER, LIQUID_BURNER, WOOD_FIRE)}
)
"""Every type by its name, in the order in which they are listed to a reader."""
