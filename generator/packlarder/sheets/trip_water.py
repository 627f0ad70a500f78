"""The water of a trip as printed: leg by leg with every piece, stop by stop, and what it is carried in."""

import math
from collections.abc import Iterator, Mapping, Sequence

from packlarder.book.household import Household
from packlarder.book.stop import WaterTreatment
from packlarder.book.trip import WaterContainer
from packlarder.measure import written
from packlarder.measure.units import FLUID_OUNCE
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.trip.journey import Leg, LegWater, StopWater
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.sheets import trip_names as names
from packlarder.sheets import trip_words as words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.ounces import OUNCE_ML
from packlarder.sheets.printed import Line, Printed, Run, System
from packlarder.sheets.series import to_the_minute
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
        days=_days(trip, leg),
        fills=_filled(trip, leg),
        heaviest=heaviest,
        pieces=pieces,
        total=total,
        treated=_leg_treated(leg, total),
        other=_other(leg),
        short=_short(leg),
        known=leg.short_ml is not None,
        says=_says(total, pieces),
        ml=leg.carry_ml,
    )


def _days(trip: TripSums, leg: Leg) -> str:
    first, last = (names.day_called(trip, day) for day in (leg.first_day, leg.last_day))
    return first if first == last else words.DATES.format(first=first, last=last.lower())


def _filled(trip: TripSums, leg: Leg) -> str:
    if leg.from_stop is None:
        return words.FILLED_AT_HOME
    fills = "" if leg.fills is None else words.FILLS[leg.fills.value]
    return words.FILLED.format(place=names.stop_called(trip, leg.from_stop), fills=fills)


def _pieces(legs: LegWater, ounces: int) -> tuple[WaterPiece, ...]:
    """Set the pieces of a leg's water that are there; printed, they add up to it."""
    metric = dict(zip(PIECES, _in_millilitres(legs), strict=True))
    us = dict(zip(PIECES, _in_ounces(legs, ounces), strict=True))
    return tuple(
        WaterPiece(
            key=key,
            kind=words.KINDS[key],
            label=words.WATERS[key],
            figure=water(metric[key], us[key]),
            ml=getattr(legs, key),
        )
        for key in words.WATERS
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
    return _treated(total if leg.treated_ml == leg.carry_ml else up(leg.treated_ml), leg.treated_by, leg.wait_min)


def _treated(water_there: Printed, by: WaterTreatment, wait_min: int) -> Line:
    """Say what must be made fit to drink and how."""
    phrase = words.TREAT_AND_WAIT if wait_min else words.TREAT
    if by is WaterTreatment.BOILING:
        phrase = words.BOIL_FOR
    runs: dict[str, Run | Line] = {
        "water": water_there,
        "way": words.TREATMENTS[by.value],
        "minutes": to_the_minute(wait_min),
    }
    return set_line(phrase, runs)


def _other(leg: Leg) -> Line:
    return set_line(words.FROM_OTHER, {"water": up(leg.from_other_ml)}) if leg.from_other_ml else ()


def _short(leg: Leg) -> Line:
    return set_line(words.LACKS, {"water": up(leg.short_ml)}) if leg.short_ml else ()


def up(millilitres: float) -> Printed:
    """Print a water that stands by itself, in fluid ounces rounded up."""
    return water(millilitres, math.ceil(millilitres / FLUID_OUNCE.size - _ALMOST))


def _says(total: Printed, pieces: Sequence[WaterPiece]) -> Printed:
    """Say in words what the picture of a leg shows, in both systems."""
    drawn = {kind: sum(piece.ml for piece in pieces if piece.kind == kind) for kind in words.DRAWN}
    told = [(words.DRAWN[kind], up(millilitres)) for kind, millilitres in drawn.items() if millilitres]

    def say(system: System) -> str:
        each = [words.LEG_PIECE.format(figure=figure.text(system, 0), kind=kind) for kind, figure in told]
        return words.LEG_SAYS.format(total=total.text(system, 0), pieces=words.COMMA.join(each))

    return Printed((say(System.METRIC),), (say(System.US),))


def stop_water_rows(trip: TripSums) -> tuple[StopWaterRow, ...]:
    """Set what is used at each stop, whether carried there or not."""
    return tuple(_stop(trip, stop) for stop in trip.journey.stops)


def _stop(trip: TripSums, stop: StopWater) -> StopWaterRow:
    used, treated_by = stop.meals, trip.stops[stop.stop].model.treatment
    return StopWaterRow(
        place=names.stop_called(trip, stop.stop),
        dishes=up(sum(getattr(used, key) for key in OF_DISHES)),
        drinking=up(used.drinking_ml),
        washing=up(used.washing_ml),
        on_the_spot=stop.on_the_spot,
        other=up(stop.from_other_ml) if stop.from_other_ml else NO_FIGURE,
        other_from="" if stop.from_other is None else words.OTHERS[stop.from_other.value],
        treated=_treated(up(stop.treated_ml), treated_by, stop.wait_min) if stop.treated_ml and treated_by else (),
    )


def containers_of(trip: TripSums) -> Containers:
    """Set what water is carried in; what all of it holds is rounded down in fluid ounces."""
    carried = trip.model.water_containers
    holds_ml = sum(one.in_all_ml for one in carried.values())
    return Containers(
        each=tuple(_each(carried)),
        hold=water(round(holds_ml), math.floor(holds_ml / OUNCE_ML + _ALMOST)) if carried else None,
        ml=holds_ml,
    )


def _each(carried: Mapping[str, WaterContainer]) -> Iterator[str]:
    for name, one in carried.items():
        phrase = words.CONTAINER if one.count > 1 else words.CONTAINER_ONE
        yield phrase.format(count=one.count, name=name, holds=written(one.holds))
