"""The water card of a trip's booklet: what is filled into which containers, how it is treated, what it is for."""

from collections.abc import Iterator, Mapping
from math import ceil

from packlarder.book.step import Verb
from packlarder.book.stop import Fills, WaterTreatment
from packlarder.book.trip import WaterContainer
from packlarder.figures.verbs import VERBS
from packlarder.measure import for_number, in_percent
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.trip.journey import Leg
from packlarder.reckon.trip.records import TripSums
from packlarder.sheets import series, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.ounces import OUNCE_ML
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import volume
from packlarder.sheets.trip_field_sheet import Amount, LegCard
from packlarder.sheets.trip_names import day_called, leg_called, stop_called
from packlarder.sheets.words import opened


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
        containers=filled(trip.model.water_containers, leg.carry_ml),
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


def filled(containers: Mapping[str, WaterContainer], water_ml: float) -> str:
    """Say which containers to fill: the largest first, and for what is left the smallest that takes it alone."""
    along = sorted(containers, key=lambda name: -containers[name].holds.base)
    free = {name: containers[name].count for name in along}
    taken = dict.fromkeys(along, 0)
    left_ml = water_ml
    while left_ml > 0 and any(free.values()):
        there = [name for name in along if free[name]]
        alone = [name for name in there if containers[name].holds.base >= left_ml]
        name = alone[-1] if alone else there[0]
        free[name] -= 1
        taken[name] += 1
        left_ml -= containers[name].holds.base
    return words.COMMA.join(_counted(name, count, containers[name].count) for name, count in taken.items() if count)


def _counted(name: str, count: int, along: int) -> str:
    if along == 1:
        return trip_words.THE_ONE.format(name=name)
    return trip_words.SOME.format(count=count, name=for_number(name, count))


def potfuls(trip: TripSums, water_ml: float) -> str:
    """Say in how many fillings of the largest pot along some water is boiled; "" where no pot is known.

    A pot at a rolling boil is filled no higher than one in which food boils.
    """
    pots = trip.meals[0].plan.pots if trip.meals else {}
    fill = VERBS[Verb.BOIL].fill
    if not pots or fill is None:
        return ""
    name = max(pots, key=lambda one: pots[one].holds.base)
    count = ceil(water_ml / (pots[name].holds.base * fill.value))
    return trip_words.POTFULS[count != 1].format(count=count, pot=name)


def _leg_notes(trip: TripSums, leg: Leg, system: System) -> Iterator[str]:
    there = next((one for one in trip.journey.stops if one.stop == leg.from_stop and one.on_the_spot), None)
    if there is not None and there.meals.carry_ml:
        yield trip_words.IN_ALL_FILLED.format(
            place=stop_called(trip, there.stop),
            water=volume(leg.carry_ml + there.meals.carry_ml, system),
            there=volume(there.meals.carry_ml, system),
        )
    if leg.fills in (Fills.TAP, Fills.SNOW):
        yield trip_words.FILLS[leg.fills]
    treated_ml = leg.treated_ml + (0 if there is None else there.treated_ml)
    if leg.treated_by is not None and treated_ml:
        yield _treated(trip, leg.treated_by, treated_ml, leg.wait_min, system)
    if leg.water.spare_day_ml:
        yield _spare(trip, leg, system)
    if leg.from_other_ml:
        kinds = {one.from_other for one in trip.journey.stops if one.stop in leg.stops and one.from_other is not None}
        where = next(iter(kinds)).value if len(kinds) == 1 else trip_words.LAKE_OR_SEA
        yield trip_words.FROM_OTHER.format(water=volume(leg.from_other_ml, system), where=where)


def _treated(trip: TripSums, way: WaterTreatment, treated_ml: int, wait_min: int, system: System) -> str:
    """Say how water is made fit to drink: all of it in one figure, how long it boils or stands, in how many potfuls."""
    phrase = trip_words.TREATED_AND_WAIT if wait_min else trip_words.TREATED
    told = phrase.format(
        deed=trip_words.TREATMENTS[way],
        water=volume(treated_ml, system),
        minutes=series.to_the_minute(wait_min),
    )
    if way is not WaterTreatment.BOILING:
        return told
    if wait_min:
        told = trip_words.BOILED.format(water=volume(treated_ml, system), minutes=series.to_the_minute(wait_min))
    return " ".join(filter(None, (told, potfuls(trip, treated_ml))))


def _spare(trip: TripSums, leg: Leg, system: System) -> str:
    """Say what to do with the water of a spare day: keep it to the last, and do not fill it twice."""
    water = volume(leg.water.spare_day_ml, system)
    following = next((one for one in trip.journey.legs if one.from_stop == leg.to_stop), None)
    if leg.to_stop is None or following is None:
        return trip_words.SPARE_TO_THE_END.format(water=water)
    phrase = trip_words.SPARE_GOES_ON if following.water.spare_day_ml else trip_words.SPARE_DONE
    return phrase.format(water=water, place=stop_called(trip, leg.to_stop))


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
