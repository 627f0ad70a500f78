"""The water of a trip as printed: leg by leg with every piece, stop by stop, and what it is carried in."""

import math
from collections.abc import Iterator, Mapping, Sequence

from packlarder.book.household import Household
from packlarder.book.stop import WaterTreatment
from packlarder.book.trip import WaterContainer
from packlarder.measure import written
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.trip.journey import Leg, LegWater, StopWater
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_water_words as water_words
from packlarder.sheets import trip_words, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.ounces import OUNCE_ML, in_whole_ounces
from packlarder.sheets.printed import Line, Printed, System
from packlarder.sheets.trip_figures import NO_FIGURE, water
from packlarder.sheets.trip_journey_sheet import Containers, LegRow, StopWaterRow, WaterPiece
from packlarder.sheets.water_rows import IN_LITRES_ML, LITRE_STEP_ML
from packlarder.sheets.words import opened, set_line

PIECES = LegWater._fields
ROUNDED_UP = "spare_ml"
"""The piece that bears what rounding up adds, in each system its own."""
OF_DISHES = PIECES[: PIECES.index(ROUNDED_UP) + 1]
_ALMOST = 1e-6


def meal_ounces(meal: TripMeal, household: Household) -> int:
    """Give the fluid ounces to carry for a meal: as much as its cook pours in cups."""
    return DishSeries(plan=meal.plan, household=household, sums=(meal.sums,), usual=0).ounces.carry[0]


def meal_water(meal: TripMeal, household: Household) -> Printed:
    """Print what is carried for a meal."""
    return water(meal.sums.water.carry_ml, meal_ounces(meal, household))


def leg_rows(trip: TripSums, household: Household) -> tuple[LegRow, ...]:
    """Set the legs of a trip."""
    heaviest = trip.journey.heaviest
    return tuple(_leg(trip, leg, household, heaviest=leg is heaviest) for leg in trip.journey.legs)


def leg_total(trip: TripSums, leg: Leg, household: Household) -> Printed:
    """Print what is carried away from the fill point of a leg."""
    return water(leg.carry_ml, leg_ounces(trip, leg, household))


def leg_ounces(trip: TripSums, leg: Leg, household: Household) -> int:
    """Give the fluid ounces of a leg: its millilitres, and what its cooks pour more because they pour cups.

    Each dish is rounded up by itself, as its own page prints it.
    """
    meals = (meal for meal in trip.meals if _on_leg(meal, leg))
    more = sum(max(0.0, meal_ounces(meal, household) - meal.sums.water.carry_ml / OUNCE_ML) for meal in meals)
    return math.ceil(leg.carry_ml / OUNCE_ML + more - _ALMOST)


def _on_leg(meal: TripMeal, leg: Leg) -> bool:
    return leg.water.spare_day_ml > 0 if meal.stop is None else meal.stop in leg.stops


def _leg(trip: TripSums, leg: Leg, household: Household, *, heaviest: bool) -> LegRow:
    total = leg_total(trip, leg, household)
    pieces = _pieces(leg.water, leg_ounces(trip, leg, household))
    return LegRow(
        title=opened(names.leg_called(trip, leg)),
        days=names.days_called(trip, leg),
        fills=water_words.filled(trip, leg),
        heaviest=heaviest,
        pieces=pieces,
        total=total,
        treated=_leg_treated(leg, total),
        other=_other(trip, leg),
        short=_short(leg),
        says=_says(total, pieces),
        ml=leg.carry_ml,
    )


def _pieces(legs: LegWater, ounces: int) -> tuple[WaterPiece, ...]:
    """Set the pieces of a leg's water that are there; printed, they add up to it."""
    metric = dict(zip(PIECES, _in_millilitres(legs), strict=True))
    us = dict(zip(PIECES, _in_ounces(legs, ounces), strict=True))
    return tuple(
        WaterPiece(
            key=key,
            kind=trip_words.KINDS[key],
            label=water_words.PIECES[key],
            figure=water(metric[key], us[key]),
            ml=getattr(legs, key),
        )
        for key in water_words.PIECES
        if metric[key] or us[key]
    )


def _in_millilitres(pieces: LegWater) -> tuple[int, ...]:
    """Give the pieces as printed: to the millilitre, or to 10 mL once they are told in litres."""
    whole = pieces.carry_ml
    if whole < IN_LITRES_ML or whole % LITRE_STEP_ML:
        return tuple(pieces)
    return share_out(whole, pieces, LITRE_STEP_ML)


def _in_ounces(pieces: LegWater, ounces: int) -> tuple[int, ...]:
    """Give the pieces in whole fluid ounces; what pouring in cups adds is spare."""
    at = PIECES.index(ROUNDED_UP)
    needed = [0 if index == at else piece for index, piece in enumerate(pieces)]
    least = math.floor((pieces.carry_ml - pieces.spare_ml) / OUNCE_ML + 0.5)
    shared = list(share_out(min(least, ounces), needed) if any(needed) else (0,) * len(needed))
    shared[at] = ounces - sum(shared)
    return tuple(shared)


def _leg_treated(leg: Leg, total: Printed) -> Line:
    if not leg.treated_ml or leg.treated_by is None:
        return ()
    water_there = total if leg.treated_ml == leg.carry_ml else up(leg.treated_ml)
    return _treated(water_there, leg.treated_by, leg.wait_min)


def _treated(water_there: Printed, by: WaterTreatment, wait_min: int) -> Line:
    """Say what must be made fit to drink and how."""
    return set_line(water_words.TREATED, {"water": water_there, "way": water_words.way(by, wait_min)})


def _other(trip: TripSums, leg: Leg) -> Line:
    if not leg.from_other_ml:
        return ()
    return set_line(
        water_words.FROM_OTHER, {"water": up(leg.from_other_ml), "where": water_words.other_water(trip, leg)}
    )


def _short(leg: Leg) -> Line:
    return set_line(water_words.LACKS, {"water": up(leg.short_ml)}) if leg.short_ml else ()


def up(millilitres: float) -> Printed:
    """Print a water that stands by itself, in fluid ounces rounded up."""
    return water(millilitres, in_whole_ounces(millilitres))


def _says(total: Printed, pieces: Sequence[WaterPiece]) -> Printed:
    """Say in words what the picture of a leg shows, in both systems."""
    drawn = {kind: sum(piece.ml for piece in pieces if piece.kind == kind) for kind in trip_words.DRAWN}
    told = [(trip_words.DRAWN[kind], up(millilitres)) for kind, millilitres in drawn.items() if millilitres]

    def say(system: System) -> str:
        each = [trip_words.LEG_PIECE.format(figure=figure.text(system, 0), kind=kind) for kind, figure in told]
        return trip_words.LEG_SAYS.format(total=total.text(system, 0), pieces=words.COMMA.join(each))

    return Printed((say(System.METRIC),), (say(System.US),))


def stop_water_rows(trip: TripSums) -> tuple[StopWaterRow, ...]:
    """Set what is used at each stop, whether carried there or not."""
    return tuple(_stop(trip, stop) for stop in trip.journey.stops)


def _stop(trip: TripSums, stop: StopWater) -> StopWaterRow:
    used, by = stop.meals, trip.stops[stop.stop].model.treatment
    where = "" if stop.from_other is None else trip_words.FROM.format(where=water_words.OTHERS[stop.from_other])
    return StopWaterRow(
        place=names.stop_called(trip, stop.stop),
        dishes=up(sum(getattr(used, key) for key in OF_DISHES)),
        drinking=up(used.drinking_ml),
        washing=up(used.washing_ml),
        on_the_spot=stop.on_the_spot,
        other=up(stop.from_other_ml) if stop.from_other_ml else NO_FIGURE,
        other_from=where,
        treated=_treated(up(stop.treated_ml), by, stop.wait_min) if stop.treated_ml and by is not None else (),
    )


def containers_of(trip: TripSums) -> Containers:
    """Set what water is carried in; what all of it holds is rounded down."""
    carried = trip.model.water_containers
    holds_ml = sum(one.in_all_ml for one in carried.values())
    return Containers(
        each=tuple(_each(carried)),
        hold=water(math.floor(holds_ml + _ALMOST), math.floor(holds_ml / OUNCE_ML + _ALMOST)) if carried else None,
        ml=holds_ml,
    )


def _each(carried: Mapping[str, WaterContainer]) -> Iterator[str]:
    for name, one in carried.items():
        phrase = trip_words.CONTAINER if one.count > 1 else trip_words.CONTAINER_ONE
        yield phrase.format(count=one.count, name=name, holds=written(one.holds))
