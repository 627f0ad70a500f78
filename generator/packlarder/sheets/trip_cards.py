"""The cards of a trip's booklet that are looked at in the field: water by leg, fuel, and what is to be minded."""

from collections import Counter
from collections.abc import Iterator, Sequence
from math import ceil

from packlarder.book.stop import Fills, WaterTreatment
from packlarder.figures.allergens import Allergen, concerns
from packlarder.measure import in_percent
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.journey import Fuel, Leg, StopFuel
from packlarder.reckon.trip.records import Eater, TripSums
from packlarder.safety import Finding, in_the_booklet
from packlarder.sheets import series, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.ounces import OUNCE_ML
from packlarder.sheets.printed import System
from packlarder.sheets.sources import front_cautions
from packlarder.sheets.trip_field_sheet import Amount, AvoidLine, DishRef, FuelCard, LegCard, SafetyCard
from packlarder.sheets.trip_names import SPARE_DAY, day_called, leg_called, stop_called
from packlarder.sheets.words import opened

MOST_FINDINGS = 12


def weight(grams: float, system: System) -> str:
    """Print a weight that is rounded already."""
    return series.total_weights((grams,)).text(system, 0)


def volume(millilitres: float, system: System) -> str:
    """Print a water, rounded up."""
    return series.whole_ounces(ceil(millilitres / OUNCE_ML)) if system is System.US else series.whole_ml(millilitres)


def leg_cards(trip: TripSums, system: System) -> tuple[LegCard, ...]:
    """Give the water of each leg."""
    return tuple(_leg(trip, leg, system) for leg in trip.journey.legs)


def _leg(trip: TripSums, leg: Leg, system: System) -> LegCard:
    first, last = day_called(trip, leg.first_day), day_called(trip, leg.last_day)
    days = first if first == last else trip_words.DAYS_OF_LEG.format(first=first, last=last)
    heading = trip_words.LEG_HEADING.format(number=leg.number, leg=leg_called(trip, leg))
    return LegCard(
        heading=opened(heading),
        days=days,
        fill=volume(leg.carry_ml, system),
        made_of=tuple(_made_of(leg, system)),
        notes=tuple(_leg_notes(trip, leg, system)),
        short=trip_words.SHORT.format(water=volume(leg.short_ml, system)) if leg.short_ml else "",
    )


def _made_of(leg: Leg, system: System) -> Iterator[Amount]:
    """Give the pieces of a leg's water in short, so printed that they add up to what is filled."""
    water = leg.water
    dishes = water.in_food_ml + water.drained_away_ml + water.pot_ml + water.boiled_off_ml + water.spare_ml
    pieces = {
        "dishes": dishes,
        "drink": water.drink_ml,
        "heater": water.heater_ml,
        "drinking": water.drinking_ml,
        "washing": water.washing_ml,
        "spare_day": water.spare_day_ml,
        "margin": water.margin_ml,
    }
    ounces = share_out(ceil(leg.carry_ml / OUNCE_ML), list(pieces.values()))
    for (key, millilitres), whole in zip(pieces.items(), ounces, strict=True):
        if millilitres:
            figure = series.whole_ounces(whole) if system is System.US else series.whole_ml(millilitres)
            yield Amount(label=trip_words.MADE_OF[key], figure=figure)


def _leg_notes(trip: TripSums, leg: Leg, system: System) -> Iterator[str]:
    if leg.fills in (Fills.TAP, Fills.SNOW):
        yield trip_words.FILLS[leg.fills]
    if leg.treated_by is not None and leg.treated_ml:
        yield _treated(leg, leg.treated_by, system)
    yield from _used_on_the_spot(trip, leg, system)
    if leg.from_other_ml:
        kinds = {one.from_other for one in trip.journey.stops if one.stop in leg.stops and one.from_other is not None}
        where = next(iter(kinds)).value if len(kinds) == 1 else trip_words.LAKE_OR_SEA
        yield trip_words.FROM_OTHER.format(water=volume(leg.from_other_ml, system), where=where)


def _treated(leg: Leg, way: WaterTreatment, system: System) -> str:
    """Say how the water of a leg is made fit to drink, and how long it must boil or stand."""
    phrase = trip_words.TREATED_AND_WAIT if leg.wait_min else trip_words.TREATED
    if way is WaterTreatment.BOILING and leg.wait_min:
        phrase = trip_words.BOILED
    return phrase.format(
        deed=trip_words.TREATMENTS[way],
        water=volume(leg.treated_ml, system),
        minutes=series.to_the_minute(leg.wait_min),
    )


def _used_on_the_spot(trip: TripSums, leg: Leg, system: System) -> Iterator[str]:
    """Say how much water is used where a leg is filled, which nobody carries."""
    for stop in trip.journey.stops:
        if stop.stop == leg.from_stop and stop.on_the_spot and stop.meals.carry_ml:
            phrase = trip_words.ON_THE_SPOT if leg.treated_by is not None else trip_words.ON_THE_SPOT_TAP
            place = stop_called(trip, stop.stop)
            yield phrase.format(water=volume(stop.meals.carry_ml, system), place=place)


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
    stops = [Amount(label=_burnt_at(trip, stop, system), figure=weight(stop.grams, system)) for stop in fuel.stops]
    margin = Amount(label=trip_words.FUEL_MARGIN_ROW, figure=weight(fuel.margin_g, system))
    stoves = words.COMMA.join(fuel.stoves)
    return FuelCard(
        heading=opened(trip_words.FUEL_HEADING.format(fuel=fuel.fuel, stoves=stoves)),
        stops=(*stops, margin) if fuel.margin_g else tuple(stops),
        need=weight(fuel.need_g, system),
        taken=_taken(fuel, system),
    )


def _burnt_at(trip: TripSums, stop: StopFuel, system: System) -> str:
    place = SPARE_DAY if stop.stop is None else opened(stop_called(trip, stop.stop))
    besides = [
        phrase.format(weight=weight(grams, system))
        for phrase, grams in ((trip_words.TREATING, stop.treating_g), (trip_words.MELTING, stop.melting_g))
        if grams
    ]
    return words.COMMA.join((place, *besides))


def _taken(fuel: Fuel, system: System) -> tuple[str, ...]:
    """Say which cartridges are taken along, or how much of what is poured."""
    if not fuel.in_hand_g and not fuel.new_g:
        return (trip_words.POURED.format(weight=weight(fuel.need_g, system)),)
    used = words.COMMA.join(weight(grams, system) for grams in fuel.in_hand_g)
    whole = words.COMMA.join(
        trip_words.WHOLE.format(count=count, weight=weight(grams, system))
        for grams, count in Counter(fuel.new_g).items()
    )
    told = ((trip_words.IN_HAND, used), (trip_words.NEW, whole))
    return tuple(phrase.format(weights=weights) for phrase, weights in told if weights)


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
