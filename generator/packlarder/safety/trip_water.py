"""The water of a trip: whether the containers hold a leg of it, and how it is made fit to drink."""

from collections.abc import Iterator

from packlarder.book.stop import Fills, OtherWater, WaterTreatment
from packlarder.faults import Place, Severity
from packlarder.figures.trips import BOIL_LONGER_ABOVE
from packlarder.measure import DOWN, UP
from packlarder.reckon.trip.journey import Leg
from packlarder.reckon.trip.records import StopSums
from packlarder.safety.hit import Hit
from packlarder.safety.rule import Rule, Shows, TripRule
from packlarder.safety.trip_case import TripCase
from packlarder.safety.wording import HOME, THE_END, litres

_CHLORINE = frozenset({WaterTreatment.CHLORINE, WaterTreatment.CHLORINE_DIOXIDE})


def leg_outruns_containers(case: TripCase) -> Iterator[Hit]:
    """Find legs whose water the containers do not hold."""
    for leg in case.sums.journey.legs:
        if leg.short_ml:
            yield Hit(
                places=(case.sums.place.at("water containers"), *_filled_at(case, leg)),
                words={
                    **_ends(case, leg),
                    "carry": litres(leg.carry_ml, UP),
                    "holds": litres(leg.carry_ml - leg.short_ml, DOWN),
                    "short": litres(leg.short_ml, UP),
                },
            )


def no_containers_named(case: TripCase) -> Iterator[Hit]:
    """Find a trip that names nothing to carry water in, and tell how much its heaviest leg takes."""
    heaviest = case.sums.journey.heaviest
    if heaviest is not None and heaviest.short_ml is None and heaviest.carry_ml:
        yield case.hit(carry=litres(heaviest.carry_ml, UP), **_ends(case, heaviest))


def _filled_at(case: TripCase, leg: Leg) -> tuple[Place, ...]:
    return () if leg.from_stop is None else (case.sums.stops[leg.from_stop].place,)


def _ends(case: TripCase, leg: Leg) -> dict[str, str]:
    stops = case.sums.stops
    return {
        "origin": HOME if leg.from_stop is None else stops[leg.from_stop].model.place,
        "goal": THE_END if leg.to_stop is None else stops[leg.to_stop].model.place,
    }


def filter_alone(case: TripCase) -> Iterator[Hit]:
    """Find water that only runs through a filter."""
    yield from _at(
        case, [stop for stop in case.sums.stops if stop.model.treatment is WaterTreatment.FILTER], "treated by"
    )


def chlorine_alone(case: TripCase) -> Iterator[Hit]:
    """Find water that gets nothing but chlorine."""
    yield from _at(case, [stop for stop in case.sums.stops if stop.model.treatment in _CHLORINE], "treated by")


def boil_longer_here(case: TripCase) -> Iterator[Hit]:
    """Find wild water that is boiled so high up that a minute is too short."""
    high = [stop for stop in case.sums.stops if stop.conditions.height_m > BOIL_LONGER_ABOVE.value]
    yield from _at(case, [stop for stop in high if stop.model.treatment is WaterTreatment.BOILING], "fills")


def sea_beside(case: TripCase) -> Iterator[Hit]:
    """Find stops by the sea."""
    yield from _at(case, [stop for stop in case.sums.stops if stop.model.other_water is OtherWater.SEA], "other water")


def snow_is_wild_water(case: TripCase) -> Iterator[Hit]:
    """Find snow of which the trip does not say how it is treated: it is reckoned as boiled, so it must be."""
    snow = [stop for stop in case.sums.stops if stop.model.fills is Fills.SNOW and stop.model.treated_by is None]
    yield from _at(case, snow, "fills")


def hard_work_in_heat(case: TripCase) -> Iterator[Hit]:
    """Find hours of hard work in heat."""
    yield from _at(case, [stop for stop in case.sums.stops if stop.model.in_heat is not None], "in heat")


def _at(case: TripCase, stops: list[StopSums], key: str) -> Iterator[Hit]:
    """Make one hit for all stops of a sort."""
    if stops:
        yield case.at_lines([stop.place.at(key) for stop in stops], places=case.places(stop.index for stop in stops))


RULES: tuple[Rule, ...] = (
    TripRule(
        id="leg-outruns-containers",
        severity=Severity.ERROR,
        facts=("T8-15", "T8-16"),
        check=leg_outruns_containers,
    ),
    TripRule(id="filter-alone", severity=Severity.WARNING, facts=("T8-12",), shows=Shows.FIELD, check=filter_alone),
    TripRule(id="chlorine-alone", severity=Severity.NOTE, facts=("T8-13",), shows=Shows.FIELD, check=chlorine_alone),
    TripRule(
        id="boil-longer-here",
        severity=Severity.NOTE,
        facts=("T8-03", "T8-02"),
        shows=Shows.FIELD,
        check=boil_longer_here,
    ),
    TripRule(
        id="snow-is-wild-water",
        severity=Severity.NOTE,
        facts=("T8-15", "T8-03"),
        shows=Shows.FIELD,
        check=snow_is_wild_water,
    ),
    TripRule(id="sea-beside", severity=Severity.NOTE, facts=("T8-07",), shows=Shows.FIELD, check=sea_beside),
    TripRule(
        id="hard-work-in-heat",
        severity=Severity.NOTE,
        facts=("T8-22", "T8-24"),
        shows=Shows.FIELD,
        check=hard_work_in_heat,
    ),
    TripRule(id="no-containers-named", severity=Severity.NOTE, facts=("T8-15",), check=no_containers_named),
)
