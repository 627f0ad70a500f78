"""The flame that water is boiled and snow is melted on: the first stove that comes along, with its largest pot."""

import math
from collections.abc import Iterable
from typing import NamedTuple

from packlarder.book.household import Household, Pot
from packlarder.book.step import Verb
from packlarder.book.trip import Trip
from packlarder.figures.fuels import FUELS
from packlarder.figures.verbs import VERBS
from packlarder.reckon import heat
from packlarder.reckon.flame import efficiency_of, power_of
from packlarder.reckon.records import Conditions
from packlarder.reckon.trip.camp import in_wind


class Burner(NamedTuple):
    """A stove by what it burns, in wind or out of it, and the pot that stands on it."""

    fuel: str
    power_kw: float
    efficiency: float
    pot: Pot

    def grams(self, heat_kj: float) -> float:
        """Give the fuel that brings this heat into the pot, without margin."""
        return heat.fuel_g(heat_kj, FUELS[self.fuel].heat.value, self.efficiency, 0.0)

    def minutes(self, heat_kj: float) -> float:
        """Give the minutes in which it brings this heat into the pot."""
        return heat.minutes_to_heat(heat_kj, self.power_kw, self.efficiency)


def first_burner(trip: Trip, household: Household, *, windy: bool) -> Burner:
    """Give the burner for water: the first stove along and the pot or pan along that holds the most."""
    stove = household.stoves[trip.stoves[0]]
    efficiency = efficiency_of(stove)
    return Burner(
        fuel=stove.fuel,
        power_kw=power_of(stove),
        efficiency=in_wind(efficiency, stove) if windy else efficiency,
        pot=household.pots[largest_pot(trip.pots, household)],
    )


def largest_pot(names: Iterable[str], household: Household) -> str:
    """Give the name of the pot that holds the most, the earlier of equals."""
    return max(names, key=lambda name: household.pots[name].holds.base)


def boiling_safe_kj(water_ml: float, conditions: Conditions, pot: Pot, minutes: float) -> float:
    """Give the heat that brings water to the boil and keeps each potful of it there for some minutes."""
    to_the_boil = heat.heat_to_boil_kj(water_ml, conditions.water_c, conditions.height_m)
    return to_the_boil + potfuls(water_ml, pot) * heat.simmer_kj(pot.across.base * 100, minutes, lid=pot.lid)


def potfuls(water_ml: float, pot: Pot) -> int:
    """Give how many times a pot is filled to boil this much water; nobody fills it to the brim."""
    fill = VERBS[Verb.BOIL].fill
    return math.ceil(water_ml / (pot.holds.base * (1.0 if fill is None else fill.value)))


def melting_kj(water_ml: float, conditions: Conditions) -> float:
    """Give the heat that melts this much snow, as cold as the air, to water as cold as the cook will find it."""
    return heat.melting_kj(water_ml, conditions.air_c, conditions.water_c)
