"""Water that no dish takes: what people drink plain and wash in, by day and by where they do so."""

import math

from packlarder.figures.trips import HEAT_DRINKING
from packlarder.reckon.dish import ALMOST
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.trip.journey import NO_WATER, LegWater
from packlarder.reckon.trip.legs import sets_out_from_water
from packlarder.reckon.trip.records import PlannedTrip, StopSums


class PlainWater:
    """The plain water of a trip while its days are gone through: on the way to each stop, and at each stop.

    What is drunk on the way home from a last fill point is no stop's.
    """

    def __init__(self, planned: PlannedTrip) -> None:
        """Go through all days of a trip, those included on which nothing is listed."""
        self.on_the_way = [NO_WATER for _ in planned.stops]
        self.there = [NO_WATER for _ in planned.stops]
        for day in range(1, planned.last_day + 1):
            self._drunk(planned, day)
            self._washed(planned, day)
        for stop in planned.stops:
            self._on_the_way(stop.index, drinking_ml=in_heat_ml(planned, stop))

    def _drunk(self, planned: PlannedTrip, day: int) -> None:
        """Share a day's drinking out to the ways to the stops of that day; without any, it is drunk where one stays."""
        if day == planned.last_day and sets_out_from_water(planned):
            return
        amount = drinking_ml(planned, day)
        reached = [stop.index for stop in planned.stops if stop.model.day == day]
        stays = stays_at(planned, day)
        if not reached and stays is not None:
            self._there(stays, drinking_ml=amount)
            return
        ways = reached or [0]
        for index, share in zip(ways, share_out(amount, [1] * len(ways)), strict=True):
            self._on_the_way(index, drinking_ml=share)

    def _washed(self, planned: PlannedTrip, day: int) -> None:
        stays = stays_at(planned, day)
        if stays is None:
            self._on_the_way(0, washing_ml=washing_ml(planned))
        else:
            self._there(stays, washing_ml=washing_ml(planned))

    def _on_the_way(self, stop: int, *, drinking_ml: int = 0, washing_ml: int = 0) -> None:
        self.on_the_way[stop] = _more(self.on_the_way[stop], drinking_ml, washing_ml)

    def _there(self, stop: int, *, drinking_ml: int = 0, washing_ml: int = 0) -> None:
        self.there[stop] = _more(self.there[stop], drinking_ml, washing_ml)


def stays_at(planned: PlannedTrip, day: int) -> int | None:
    """Give the stop where people are at the end of a day; None before they reached any."""
    return max((stop.index for stop in planned.stops if stop.model.day <= day), default=None)


def drinking_ml(planned: PlannedTrip, day: int) -> int:
    """Give what all drink plain on a day: each their own, less their share of the drinks among its dishes."""
    drunk = dict.fromkeys((eater.name for eater in planned.eaters), 0.0)
    portion = {eater.name: eater.portion for eater in planned.eaters}
    for meal in planned.meals:
        if meal.day == day and meal.sums.water.drink_ml:
            for name in meal.eaters:
                drunk[name] += meal.sums.water.drink_ml * portion[name] / meal.portions
    plain = [max(0.0, eater.drinks_ml - drunk[eater.name]) for eater in planned.eaters]
    return math.ceil(sum(plain) - ALMOST)


def washing_ml(planned: PlannedTrip) -> int:
    """Give what all wash in on a day."""
    return math.ceil(planned.model.washing.base * len(planned.eaters) - ALMOST)


def in_heat_ml(planned: PlannedTrip, stop: StopSums) -> int:
    """Give what all drink beyond their day's for the hours of hard work in heat on the way to a stop."""
    if stop.model.in_heat is None:
        return 0
    hours = stop.model.in_heat.base / 60
    return math.ceil(hours * HEAT_DRINKING.value * 1000 * len(planned.eaters) - ALMOST)


def _more(water: LegWater, drinking_ml: int, washing_ml: int) -> LegWater:
    return water._replace(drinking_ml=water.drinking_ml + drinking_ml, washing_ml=water.washing_ml + washing_ml)
