"""The cards of a trip's booklet that are looked at in the field: water by leg, fuel, and what is to be minded."""

from collections.abc import Iterator, Sequence

from packlarder.reckon.trip.journey import Fuel, StopFuel
from packlarder.reckon.trip.records import Eater, TripSums
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import series, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.ounces import in_whole_ounces
from packlarder.sheets.printed import System
from packlarder.sheets.sources import front_cautions
from packlarder.sheets.trip_field_people import components_of, holds_of
from packlarder.sheets.trip_field_sheet import Amount, AvoidLine, DishRef, FuelCard, SafetyCard
from packlarder.sheets.trip_figures import fuel as fuel_weight
from packlarder.sheets.trip_names import SPARE_DAY, cartridges, stop_called
from packlarder.sheets.words import opened


def weight(grams: float, system: System) -> str:
    """Print a weight that is rounded already."""
    return series.total_weights((grams,)).text(system, 0)


def volume(millilitres: float, system: System) -> str:
    """Print a water, rounded up."""
    return series.whole_ounces(in_whole_ounces(millilitres)) if system is System.US else series.whole_ml(millilitres)


def fuel_cards(trip: TripSums, system: System) -> tuple[FuelCard, ...]:
    """Give each fuel with its stops."""
    return tuple(_fuel(trip, fuel, system) for fuel in trip.journey.fuels)


def _fuel(trip: TripSums, fuel: Fuel, system: System) -> FuelCard:
    stops = [
        Amount(label=_burnt_at(trip, stop, system), figure=fuel_weight(stop.grams).text(system, 0))
        for stop in fuel.stops
    ]
    margin = Amount(label=trip_words.FUEL_MARGIN_ROW, figure=fuel_weight(fuel.margin_g).text(system, 0))
    stoves = words.COMMA.join(fuel.stoves)
    return FuelCard(
        heading=opened(trip_words.FUEL_HEADING.format(fuel=fuel.fuel, stoves=stoves)),
        stops=(*stops, margin) if fuel.margin_g else tuple(stops),
        need=fuel_weight(fuel.need_g).text(system, 0),
        taken=_taken(fuel, system),
    )


def _burnt_at(trip: TripSums, stop: StopFuel, system: System) -> str:
    place = SPARE_DAY if stop.stop is None else opened(stop_called(trip, stop.stop))
    besides = [
        phrase.format(weight=fuel_weight(grams).text(system, 0))
        for phrase, grams in ((trip_words.TREATING, stop.treating_g), (trip_words.MELTING, stop.melting_g))
        if grams
    ]
    return words.COMMA.join((place, *besides))


def _taken(fuel: Fuel, system: System) -> tuple[str, ...]:
    """Say which cartridges are taken along, or how much of what is poured."""
    if not fuel.in_hand_g and not fuel.new_g:
        return (trip_words.POURED.format(weight=fuel_weight(fuel.need_g).text(system, 0)),)
    return cartridges(fuel, lambda grams: weight(grams, system))


def safety_card(
    trip: TripSums, findings: Sequence[Finding], openings: Sequence[FieldOpening], ids: dict[int, str]
) -> SafetyCard:
    """Give what is to be minded; `ids` are those of the openings by the number of a meal."""
    return SafetyCard(
        findings=tuple(dict.fromkeys(opened(one.text) for one in on_the_page(findings))),
        raw=tuple(_raw(trip, openings, ids)),
        people=tuple(_avoider(one, trip, ids) for one in trip.eaters if one.model.avoided),
        general=front_cautions(),
    )


def _raw(trip: TripSums, openings: Sequence[FieldOpening], ids: dict[int, str]) -> Iterator[DishRef]:
    """Give the dishes that hold something RAW, with what of them it is."""
    told: dict[str, DishRef] = {}
    names = {opening.id: opening.name for opening in openings}
    for meal in trip.meals:
        raw = [part.called for part in meal.plan.parts if part.component.raw]
        if raw:
            id = ids[meal.number]
            told.setdefault(id, DishRef(name=names[id], opening=id, says=words.COMMA.join(raw)))
    yield from told.values()


def _avoider(eater: Eater, trip: TripSums, ids: dict[int, str]) -> AvoidLine:
    """Give the dishes, and what is eaten from the bag, that somebody must not eat, whoever they are for."""
    found: dict[tuple[str, str], DishRef] = {}
    for meal in trip.meals:
        says = holds_of(eater.model.avoided, components_of(meal))
        if says:
            id = ids[meal.number]
            found.setdefault((id, ""), DishRef(name=meal.plan.model.name, opening=id, says=says))
    for ration in trip.on_the_move:
        says = holds_of(eater.model.avoided, [ration.component])
        if says:
            found.setdefault(
                ("", ration.component.id), DishRef(name=ration.component.model.name, opening="", says=says)
            )
    avoids = words.COMMA.join(one.value for one in eater.model.avoided)
    return AvoidLine(name=eater.name, avoids=avoids, dishes=tuple(found.values()))
