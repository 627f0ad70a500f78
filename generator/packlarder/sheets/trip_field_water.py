"""The water card of a trip's booklet: what is filled into which containers, how it is treated, what it is for."""

from collections.abc import Iterator, Mapping

from packlarder.book.household import Household
from packlarder.book.stop import WaterTreatment
from packlarder.book.trip import WaterContainer
from packlarder.measure import for_number, in_percent
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.trip.journey import Leg, StopWater
from packlarder.reckon.trip.records import TripSums
from packlarder.sheets import series, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import trip_water_words as water_words
from packlarder.sheets.printed import System
from packlarder.sheets.trip_cards import volume
from packlarder.sheets.trip_field_sheet import Amount, LegCard, SpotCard
from packlarder.sheets.trip_names import day_called, days_called, leg_called, stop_called
from packlarder.sheets.trip_water import leg_ounces
from packlarder.sheets.words import ended, opened

IN_DISHES = ("in_food_ml", "drained_away_ml", "pot_ml", "boiled_off_ml", "spare_ml")
"""The pieces of a leg's water that the card tells as one."""


def leg_cards(trip: TripSums, household: Household, system: System) -> tuple[LegCard, ...]:
    """Give the water of each leg, as much as its page says."""
    ounces = (leg_ounces(trip, leg, household) for leg in trip.journey.legs)
    return tuple(_leg(trip, leg, whole, system) for leg, whole in zip(trip.journey.legs, ounces, strict=True))


def _leg(trip: TripSums, leg: Leg, ounces: int, system: System) -> LegCard:
    return LegCard(
        heading=opened(trip_words.LEG_HEADING.format(number=leg.number, leg=leg_called(trip, leg))),
        days=days_called(trip, leg),
        fill=series.whole_ounces(ounces) if system is System.US else series.whole_ml(leg.carry_ml),
        containers=filled(trip.model.water_containers, leg.carry_ml),
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


def spot_cards(trip: TripSums, system: System) -> tuple[SpotCard, ...]:
    """Give the water of fill points that no leg leaves: what of theirs is used there stands nowhere else."""
    left = {leg.from_stop for leg in trip.journey.legs}
    used = [one for one in trip.journey.stops if one.on_the_spot and one.meals.carry_ml and one.stop not in left]
    return tuple(_spot(trip, one, system) for one in used)


def _spot(trip: TripSums, water: StopWater, system: System) -> SpotCard:
    stop = trip.stops[water.stop].model
    notes = []
    if water.treated_ml and stop.treatment is not None:
        notes.append(_treated(trip, stop.treatment, water.treated_ml, water.wait_min, water, system))
    return SpotCard(
        place=opened(stop.place),
        day=day_called(trip, stop.day),
        water=volume(water.meals.carry_ml, system),
        notes=tuple(notes),
    )


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


def _potfuls(trip: TripSums, boiled: Leg | StopWater) -> str:
    """Say in how many fillings of the largest pot along water is boiled, and how long the flame burns for it."""
    pots = trip.meals[0].plan.pots if trip.meals else {}
    if not pots or not boiled.potfuls:
        return ""
    name = max(pots, key=lambda one: pots[one].holds.base)
    phrase = trip_words.POTFULS[boiled.potfuls != 1]
    return phrase.format(count=boiled.potfuls, pot=name, minutes=series.to_the_minute(boiled.boil_min))


def _leg_notes(trip: TripSums, leg: Leg, system: System) -> Iterator[str]:
    yield ended(opened(water_words.filled(trip, leg)))
    there = next((one for one in trip.journey.stops if one.stop == leg.from_stop and one.on_the_spot), None)
    if there is not None and there.meals.carry_ml:
        yield trip_words.IN_ALL_FILLED.format(
            place=stop_called(trip, there.stop),
            water=volume(leg.carry_ml + there.meals.carry_ml, system),
            there=volume(there.meals.carry_ml, system),
        )
    treated_ml = leg.treated_ml + (0 if there is None else there.treated_ml)
    if leg.treated_by is not None and treated_ml:
        yield _treated(trip, leg.treated_by, treated_ml, leg.wait_min, leg if there is None else there, system)
    if leg.water.spare_day_ml:
        yield _spare(trip, leg, system)
    if leg.from_other_ml:
        where = water_words.other_water(trip, leg)
        yield water_words.FROM_OTHER.format(water=volume(leg.from_other_ml, system), where=where)


def _treated(
    trip: TripSums, way: WaterTreatment, treated_ml: int, wait_min: int, there: Leg | StopWater, system: System
) -> str:
    """Say how water is made fit to drink, all of it in one figure.

    What is boiled leaves out what dishes boil anyway, and says in how many potfuls it is done.
    """
    if way is not WaterTreatment.BOILING:
        return water_words.treated(volume(treated_ml, system), way, wait_min)
    boiled_ml = there.boil_ml if isinstance(there, StopWater) else treated_ml
    told = water_words.treated(volume(boiled_ml, system), way, wait_min)
    return " ".join(filter(None, (told, _potfuls(trip, there))))


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
