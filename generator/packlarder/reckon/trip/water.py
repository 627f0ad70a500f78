"""The water of a trip: what is used at each stop, and what is carried on each leg."""

import math
from collections.abc import Sequence

from packlarder.book.stop import Fills
from packlarder.reckon.dish import ALMOST
from packlarder.reckon.records import DishSums
from packlarder.reckon.trip.journey import Leg, LegWater, StopWater
from packlarder.reckon.trip.legs import Stretch, stretches, together
from packlarder.reckon.trip.plain_water import PlainWater, drinking_ml
from packlarder.reckon.trip.records import PlannedTrip, StopSums
from packlarder.reckon.trip.spare_day import spare_day_ml
from packlarder.reckon.trip.treating import is_treated, wait_min

LEG_STEP_ML = 100
"""Nobody fills a can to the millilitre: a leg's water is rounded up to steps of this, as part of its margin."""


def stop_waters(planned: PlannedTrip) -> tuple[StopWater, ...]:
    """Give what is used at every stop, in order."""
    plain = PlainWater(planned)
    return tuple([_stop_water(planned, stop, plain) for stop in planned.stops])


def leg_waters(planned: PlannedTrip, stops: Sequence[StopWater]) -> tuple[Leg, ...]:
    """Give what is carried on every leg, from what is used at the stops."""
    return tuple([_leg(planned, stretch, stops) for stretch in stretches(planned)])


def of_dish(sums: DishSums) -> LegWater:
    """Give the water of a dish in the pieces of a leg's."""
    water = sums.water
    return LegWater(
        in_food_ml=water.in_food_ml,
        drained_away_ml=water.drained_away_ml,
        pot_ml=water.pot_ml,
        boiled_off_ml=water.boiled_off_ml,
        drink_ml=water.drink_ml,
        heater_ml=water.heater_ml,
        spare_ml=water.spare_ml,
    )


def _stop_water(planned: PlannedTrip, stop: StopSums, plain: PlainWater) -> StopWater:
    """Add up a stop; where lake or sea lies beside it, heaters and washing take their water from there."""
    sums = [meal.sums for meal in planned.meals if meal.stop == stop.index]
    used = together([*map(of_dish, sums), plain.there[stop.index]])
    from_other_ml = 0
    if stop.model.other_water is not None:
        heaters = sum(step.heater_ml for dish in sums for step in dish.steps)
        from_other_ml = used.washing_ml + math.ceil(heaters - ALMOST)
        used = used._replace(washing_ml=0)
    on_the_spot = stop.model.fills is not None
    return StopWater(
        stop=stop.index,
        meals=used,
        on_the_spot=on_the_spot,
        from_other=stop.model.other_water,
        from_other_ml=from_other_ml,
        on_the_way=plain.on_the_way[stop.index],
        treated_ml=used.carry_ml - used.heater_ml if is_treated(stop) else 0,
        wait_min=wait_min(stop),
    )


def _leg(planned: PlannedTrip, stretch: Stretch, stops: Sequence[StopWater]) -> Leg:
    water = _carried(planned, stretch, stops)
    origin = None if stretch.from_stop is None else planned.stops[stretch.from_stop]
    treated = origin is not None and is_treated(origin)
    return Leg(
        number=stretch.number,
        from_stop=stretch.from_stop,
        to_stop=stretch.to_stop,
        first_day=_first_day(planned, stretch),
        last_day=planned.last_day if stretch.to_stop is None else planned.stops[stretch.to_stop].model.day,
        stops=stretch.between,
        water=water,
        from_other_ml=sum(stops[index].from_other_ml for index in stretch.between),
        fills=Fills.TAP if origin is None else origin.model.fills,
        treated_by=None if origin is None else origin.model.treatment,
        treated_ml=water.carry_ml if treated else 0,
        wait_min=0 if origin is None else wait_min(origin),
        short_ml=_short_ml(planned, water),
    )


def _first_day(planned: PlannedTrip, stretch: Stretch) -> int:
    """Give the day on which the first stop of a leg is reached; the last where it leads home without any."""
    if stretch.from_stop is None:
        return 1
    return planned.stops[stretch.reached[0]].model.day if stretch.reached else planned.last_day


def _carried(planned: PlannedTrip, stretch: Stretch, stops: Sequence[StopWater]) -> LegWater:
    """Add up what is used between two fill points and drunk on the way, with the spare day and the margin."""
    homeward_ml = 0 if stretch.reached else drinking_ml(planned, planned.last_day)
    used = together(
        [
            *[stops[index].meals for index in stretch.between],
            *[stops[index].on_the_way for index in stretch.reached],
            LegWater(drinking_ml=homeward_ml),
        ]
    )
    whole = used._replace(spare_day_ml=_spare_day_ml(planned, stretch, stops))
    return whole._replace(margin_ml=_margin_ml(whole.carry_ml, planned.model.margins.water.base))


def _spare_day_ml(planned: PlannedTrip, stretch: Stretch, stops: Sequence[StopWater]) -> int:
    """Give a day's water in reserve, for a leg on which people stop: bad weather is sat out at a stop.

    Where no stop lies between two fill points, they wait at one of those. They wash in lake or sea if it is near.
    """
    if not stretch.between:
        return 0
    return spare_day_ml(planned, washing=any(stops[index].from_other is None for index in stretch.between))


def _margin_ml(used_ml: int, margin: float) -> int:
    """Give the margin with what rounding up adds."""
    steps = math.ceil(used_ml * (1 + margin) / LEG_STEP_ML - ALMOST)
    return steps * LEG_STEP_ML - used_ml


def _short_ml(planned: PlannedTrip, water: LegWater) -> int | None:
    """Give what the containers lack; None where none are named."""
    containers = planned.model.water_containers.values()
    if not containers:
        return None
    return max(0, math.ceil(water.carry_ml - sum(one.in_all_ml for one in containers) - ALMOST))
