"""The cards of a trip's booklet that are looked at in the field: water by leg, fuel, and what is to be minded."""

from collections.abc import Iterator, Sequence

from packlarder.book.household import Household
from packlarder.book.stop import Stop
from packlarder.figures.allergens import Allergen, concerns
from packlarder.measure import in_percent
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.journey import Fuel, Leg, StopFuel, StopWater
from packlarder.reckon.trip.records import Eater, TripSums
from packlarder.safety import Finding, in_the_booklet
from packlarder.sheets import series, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import trip_water_words as water_words
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.ounces import in_whole_ounces
from packlarder.sheets.printed import System
from packlarder.sheets.sources import front_cautions
from packlarder.sheets.trip_field_sheet import Amount, AvoidLine, DishRef, FuelCard, LegCard, SafetyCard, SpotCard
from packlarder.sheets.trip_figures import fuel as fuel_weight
from packlarder.sheets.trip_names import SPARE_DAY, cartridges, day_called, days_called, leg_called, stop_called
from packlarder.sheets.trip_water import leg_ounces
from packlarder.sheets.words import ended, opened

MOST_FINDINGS = 12
IN_DISHES = ("in_food_ml", "drained_away_ml", "pot_ml", "boiled_off_ml", "spare_ml")
"""The pieces of a leg's water that the card tells as one."""


def weight(grams: float, system: System) -> str:
    """Print a weight that is rounded already."""
    return series.total_weights((grams,)).text(system, 0)


def volume(millilitres: float, system: System) -> str:
    """Print a water, rounded up."""
    return series.whole_ounces(in_whole_ounces(millilitres)) if system is System.US else series.whole_ml(millilitres)


def leg_cards(trip: TripSums, household: Household, system: System) -> tuple[LegCard, ...]:
    """Give the water of each leg, as much as its page says."""
    ounces = (leg_ounces(trip, leg, household) for leg in trip.journey.legs)
    return tuple(_leg(trip, leg, whole, system) for leg, whole in zip(trip.journey.legs, ounces, strict=True))


def _leg(trip: TripSums, leg: Leg, ounces: int, system: System) -> LegCard:
    return LegCard(
        heading=opened(trip_words.LEG_HEADING.format(number=leg.number, leg=leg_called(trip, leg))),
        days=days_called(trip, leg),
        fill=series.whole_ounces(ounces) if system is System.US else series.whole_ml(leg.carry_ml),
        made_of=tuple(_made_of(leg, ounces, system)),
        notes=tuple(_leg_notes(trip, leg, system)),
        short=water_words.LACKS.format(water=volume(leg.short_ml, system)) if leg.short_ml else "",
    )


def _made_of(leg: Leg, ounces: int, system: System) -> Iterator[Amount]:
    """Give the pieces of a leg's water in short, so printed that they add up to what is filled."""
    pieces = leg.water._asdict()
    dishes = sum(pieces.pop(key) for key in IN_DISHES)
    told = {trip_words.IN_DISHES: dishes, **{water_words.PIECES[key]: piece for key, piece in pieces.items()}}
    for (label, millilitres), whole in zip(told.items(), share_out(ounces, list(told.values())), strict=True):
        if millilitres:
            figure = series.whole_ounces(whole) if system is System.US else series.whole_ml(millilitres)
            yield Amount(label=label, figure=figure)


def _leg_notes(trip: TripSums, leg: Leg, system: System) -> Iterator[str]:
    yield ended(opened(water_words.filled(trip, leg)))
    if leg.treated_ml and leg.treated_by is not None:
        yield water_words.treated(volume(leg.treated_ml, system), leg.treated_by, leg.wait_min)
    if leg.from_other_ml:
        where = water_words.other_water(trip, leg)
        yield water_words.FROM_OTHER.format(water=volume(leg.from_other_ml, system), where=where)


def spot_cards(trip: TripSums, system: System) -> tuple[SpotCard, ...]:
    """Give the water that is used at each stop where it is filled, which no leg carries."""
    used = [stop for stop in trip.journey.stops if stop.on_the_spot and stop.meals.carry_ml]
    return tuple(_spot(trip, stop, trip.stops[stop.stop].model, system) for stop in used)


def _spot(trip: TripSums, water: StopWater, stop: Stop, system: System) -> SpotCard:
    notes = []
    if water.treated_ml and stop.treatment is not None:
        notes.append(water_words.treated(volume(water.treated_ml, system), stop.treatment, water.wait_min))
    return SpotCard(
        place=opened(stop.place),
        day=day_called(trip, stop.day),
        water=volume(water.meals.carry_ml, system),
        notes=tuple(notes),
    )


def water_notes(trip: TripSums, system: System) -> tuple[str, ...]:
    """Say how much each person drinks a day, and what the margin is."""
    amounts: dict[float, list[str]] = {}
    for one in trip.eaters:
        amounts.setdefault(one.drinks_ml, []).append(one.name)
    told = [
        trip_words.DRINKS.format(names=words.COMMA.join(names), water=volume(drunk_ml, system))
        for drunk_ml, names in amounts.items()
    ]
    return (
        trip_words.DRINKING.format(each="; ".join(told)),
        trip_words.WATER_MARGIN.format(share=in_percent(trip.model.margins.water.base)),
    )


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
        findings=tuple(dict.fromkeys(opened(one.text) for one in in_the_booklet(findings, MOST_FINDINGS))),
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
        says = _holds(eater.model.avoided, [part.component for part in meal.plan.parts])
        if says:
            id = ids[meal.number]
            found.setdefault((id, ""), DishRef(name=meal.plan.model.name, opening=id, says=says))
    for ration in trip.on_the_move:
        says = _holds(eater.model.avoided, [ration.component])
        if says:
            found.setdefault(
                ("", ration.component.id), DishRef(name=ration.component.model.name, opening="", says=says)
            )
    avoids = words.COMMA.join(one.value for one in eater.model.avoided)
    return AvoidLine(name=eater.name, avoids=avoids, dishes=tuple(found.values()))


def _holds(avoided: Sequence[Allergen], components: Sequence[ComponentSums]) -> str:
    """Say what of the avoided some components contain, and of what they may hold traces; "" for nothing."""
    held = frozenset[Allergen]().union(*[one.allergens for one in components])
    traces = frozenset[Allergen]().union(*[one.traces for one in components]) - held
    told = ((trip_words.CONTAINS, held), (trip_words.MAY_CONTAIN, traces))
    return words.COMMA.join(
        phrase.format(allergens=words.COMMA.join(met)) for phrase, there in told if (met := _met(avoided, there))
    )


def _met(avoided: Sequence[Allergen], there: frozenset[Allergen]) -> list[str]:
    return sorted({one.value for word in avoided for one in concerns(word, there)})
