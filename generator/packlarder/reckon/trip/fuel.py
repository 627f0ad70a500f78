"""The fuel of a trip: by stop for cooking, for boiling water safe and for melting snow; in all, with cartridges."""

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence

from packlarder.book.household import Household
from packlarder.figures.fuels import FUELS
from packlarder.reckon.dish import ALMOST
from packlarder.reckon.heat import cartridges_g, fuel_g
from packlarder.reckon.trip.burner import Burner, boiling_safe_kj, first_burner, melting_kj
from packlarder.reckon.trip.journey import Fuel, Leg, StopFuel, StopWater
from packlarder.reckon.trip.records import PlannedTrip, StopSums
from packlarder.reckon.trip.spare_day import spare_fuel
from packlarder.reckon.trip.treating import is_melted, wants_flame

Burnt = dict[tuple[int | None, str], float]
"""Grams by stop (None for the spare day) and fuel."""


def fuels_of(
    planned: PlannedTrip, household: Household, stops: Sequence[StopWater], legs: Sequence[Leg]
) -> tuple[Fuel, ...]:
    """Give every fuel that is burnt, in the order of the stoves that come along."""
    treating = _for_water(planned, household, lambda stop, burner: _boiled_kj(stop, burner, stops))
    melting = _for_water(planned, household, lambda stop, _: _melted_kj(stop, stops, legs))
    spare = spare_fuel(planned, household, legs)
    if spare is not None:
        treating[None, spare.fuel], melting[None, spare.fuel] = spare.treating_g, spare.melting_g
    by_stop = _by_stop(planned, _cooking(planned), treating, melting)
    burnt = {stop.fuel for stop in by_stop}
    named = dict.fromkeys(household.stoves[name].fuel for name in planned.model.stoves)
    in_hand = planned.model.fuel_in_hand_g
    found: list[Fuel] = []
    for fuel in (one for one in named if one in burnt):
        sold = FUELS[fuel].cartridges_g
        found.append(_fuel(planned, household, fuel, by_stop, in_hand if sold else ()))
        in_hand = () if sold else in_hand
    return tuple(found)


def cartridges_for(
    need_g: float, in_hand_g: Iterable[float], sizes_g: Sequence[int]
) -> tuple[tuple[float, ...], tuple[int, ...]]:
    """Give the part-used cartridges to take, the emptiest first, and the new ones besides.

    So many part-used ones are taken as it needs to buy the least; one that saves nothing stays at home.
    """
    if not sizes_g:
        return (), ()
    emptiest = sorted(in_hand_g)
    choices = [tuple(emptiest[:count]) for count in range(len(emptiest) + 1)]
    pairs = [(taken, cartridges_g(need_g - sum(taken), sizes_g)) for taken in choices]
    return min(pairs, key=lambda pair: (sum(pair[1]), len(pair[0])))


def _cooking(planned: PlannedTrip) -> Burnt:
    """Burn what the meals take, each on its own stove and, where it is windy, in the wind."""
    grams: Burnt = defaultdict(float)
    for meal in planned.meals:
        heat = meal.sums.heat
        if heat.energy_kj:
            settled = meal.settled
            grams[meal.stop, heat.fuel] += fuel_g(heat.energy_kj, settled.fuel_mj_per_kg, settled.efficiency, 0.0)
    return grams


def _for_water(planned: PlannedTrip, household: Household, heat_kj: Callable[[StopSums, Burner], float]) -> Burnt:
    """Burn for water alone what brings some heat into a pot at each stop that wants a flame: there is a stove then."""
    grams: Burnt = {}
    for stop in filter(wants_flame, planned.stops):
        burner = first_burner(planned.model, household, windy=stop.model.windy)
        needed = heat_kj(stop, burner)
        if needed:
            grams[stop.index, burner.fuel] = burner.grams(needed)
    return grams


def _boiled_kj(stop: StopSums, burner: Burner, stops: Sequence[StopWater]) -> float:
    """Give the heat that boils the water of a stop safe."""
    used = stops[stop.index]
    return boiling_safe_kj(used.boil_ml, stop.conditions, burner.pot, used.wait_min)


def _melted_kj(stop: StopSums, stops: Sequence[StopWater], legs: Sequence[Leg]) -> float:
    """Give the heat that melts all water of a stop where there is only snow; to the boil it is counted elsewhere."""
    if not is_melted(stop):
        return 0.0
    carried = sum(leg.carry_ml for leg in legs if leg.from_stop == stop.index)
    return melting_kj(stops[stop.index].meals.carry_ml + carried, stop.conditions)


def _by_stop(planned: PlannedTrip, cooking: Burnt, treating: Burnt, melting: Burnt) -> tuple[StopFuel, ...]:
    """Round up by stop and fuel, in the order of stops, the spare day last."""
    keys = {*cooking, *treating, *melting}
    return tuple(
        [
            StopFuel(
                stop=stop,
                fuel=fuel,
                cooking_g=_whole_g(cooking.get((stop, fuel), 0.0)),
                treating_g=_whole_g(treating.get((stop, fuel), 0.0)),
                melting_g=_whole_g(melting.get((stop, fuel), 0.0)),
            )
            for stop, fuel in sorted(keys, key=lambda key: (len(planned.stops) if key[0] is None else key[0], key[1]))
        ]
    )


def _fuel(
    planned: PlannedTrip, household: Household, fuel: str, by_stop: Sequence[StopFuel], in_hand: Sequence[float]
) -> Fuel:
    stops = tuple([stop for stop in by_stop if stop.fuel == fuel])
    burnt_g = sum(stop.grams for stop in stops)
    margin_g = _whole_g(burnt_g * planned.fuel_margin)
    in_hand_g, new_g = cartridges_for(burnt_g + margin_g, in_hand, FUELS[fuel].cartridges_g)
    return Fuel(
        fuel=fuel,
        stoves=tuple([name for name in planned.model.stoves if household.stoves[name].fuel == fuel]),
        stops=stops,
        margin_g=margin_g,
        in_hand_g=in_hand_g,
        new_g=new_g,
    )


def _whole_g(grams: float) -> int:
    """Round up to a whole gram."""
    return math.ceil(grams - ALMOST)
