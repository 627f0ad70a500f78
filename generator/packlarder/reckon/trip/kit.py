"""What comes along besides food, water and fuel, and what is carried out empty."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from enum import StrEnum
from types import MappingProxyType

from packlarder.book.household import Household
from packlarder.book.stop import Fills, WaterTreatment
from packlarder.figures.trips import LIGHTERS
from packlarder.measure import in_grams
from packlarder.reckon.records import DishPlan
from packlarder.reckon.trip.burner import largest_pot
from packlarder.reckon.trip.camp import heats_water, on_flame, wants_stove
from packlarder.reckon.trip.journey import Fuel, KitItem, Rubbish
from packlarder.reckon.trip.pot_use import dry_heated
from packlarder.reckon.trip.records import PlannedTrip, TripMeal, TripPack
from packlarder.reckon.trip.treating import is_boiled


class Kit(StrEnum):
    """The catalogue of things, in the order in which they are listed; stoves, pots and containers have your names."""

    LID = "lid"
    CARTRIDGE = "cartridge"
    PART_USED = "part-used cartridge"
    MUG = "mug"
    BOWL = "bowl or plate"
    SPOON = "spoon"
    KNIFE = "knife"
    LADLE = "ladle"
    TURNER = "turner"
    JUG = "measuring jug"
    MEASURING_SPOONS = "measuring spoons"
    LIGHTER = "lighter"
    HEATER = "ration heater"
    COSY = "cosy"
    THERMOMETER = "food thermometer"
    SACHET_BAG = "bag for sachets"
    COOLER = "cooler"
    FILTER = "water filter"
    CHLORINE = "chlorine"
    CHLORINE_DIOXIDE = "chlorine dioxide tablets"
    SOAP = "soap"
    RUBBISH_BAG = "rubbish bag"


class Why(StrEnum):
    """The catalogue of reasons."""

    EACH = "one for each person"
    UNDER_A_LID = "one for each pot or pan that cooks or boils under it"
    BURNT = "{fuel}, {grams}"
    CUTS = "opens packs and cuts"
    SERVES = "shares out what is cooked in a pot"
    TURNS = "something is fried or baked"
    MEASURES = "water is measured"
    BY_THE_SPOON = "for what is taken from tubs"
    COOKS = "dishes are cooked on it"
    FOR_WATER = "water is boiled or snow is melted with it"
    IN_RESERVE = "in reserve: no dish asks for it"
    COOKED_IN = "dishes are cooked in it"
    WARMS = "warms one serving each"
    KEEPS_WARM = "food keeps hot in it while it soaks"
    TEMPERATURE = "a dish asks for a temperature"
    RAW = "RAW food is along: measure that it is cooked through"
    SACHETS = "sachets come out before water goes in, and are carried home"
    KEEPS_COLD = "keeps its food cold"
    HOLDS_WATER = "holds water"
    TREATS = "makes water fit to drink"
    ONE_GETS_WET = "one gets wet"
    HANDS = "hands before cooking and after RAW food"
    CARRIED_OUT = "everything empty is carried out"


_TREATED_WITH: dict[WaterTreatment, tuple[Kit, ...]] = {
    WaterTreatment.BOILING: (),
    WaterTreatment.FILTER: (Kit.FILTER,),
    WaterTreatment.FILTER_AND_CHLORINE: (Kit.FILTER, Kit.CHLORINE),
    WaterTreatment.CHLORINE: (Kit.CHLORINE,),
    WaterTreatment.CHLORINE_DIOXIDE: (Kit.CHLORINE_DIOXIDE,),
}


def kit_of(
    planned: PlannedTrip, packs: Sequence[TripPack], fuels: Sequence[Fuel], household: Household
) -> tuple[KitItem, ...]:
    """Give everything to take along, stoves and pots first."""
    return (
        *_stoves(planned),
        *_cartridges(fuels),
        *_pots(planned, household),
        *_lids(planned, household),
        *_for_people(planned),
        *_for_the_cook(planned),
        *_for_dishes(planned, packs),
        *_for_water(planned),
        *_in_camp(),
    )


def rubbish_of(planned: PlannedTrip, packs: Sequence[TripPack], fuels: Sequence[Fuel]) -> Rubbish:
    """Count what is carried out empty. The spare day's packs come home full; what it emptied would add to this."""
    by_day = Counter(_emptied_on(planned, pack) for pack in packs if not pack.spare)
    return Rubbish(
        packs=by_day.total(),
        heaters=sum(_heaters(meal) for meal in planned.meals if not meal.spare),
        cartridges=sum(len(fuel.in_hand_g) + len(fuel.new_g) for fuel in fuels),
        by_day=MappingProxyType(dict(sorted(by_day.items()))),
    )


def _emptied_on(planned: PlannedTrip, pack: TripPack) -> int:
    """Give the day of the last meal that takes from a pack: a tub serves several."""
    meals = [planned.by_number[item.number] for item in pack.items if item.number]
    return max([meal.day for meal in meals if not meal.spare], default=pack.day)


def _item(what: str, why: str, count: int = 1) -> KitItem:
    return KitItem(what=what, count=count, why=why)


def _stoves(planned: PlannedTrip) -> Iterator[KitItem]:
    cooked_on = {meal.plan.stove_name for meal in planned.meals if wants_stove(meal.plan)}
    for name in dict.fromkeys(planned.model.stoves):
        if name in cooked_on:
            yield _item(name, Why.COOKS)
        else:
            for_water = name == planned.model.stoves[0] and _heats_water(planned)
            yield _item(name, Why.FOR_WATER if for_water else Why.IN_RESERVE)


def _cartridges(fuels: Sequence[Fuel]) -> Iterator[KitItem]:
    """Give the cartridges that the fuel is in, as they are counted there."""
    for fuel in fuels:
        for grams in fuel.in_hand_g:
            yield _item(Kit.PART_USED, Why.BURNT.format(fuel=fuel.fuel, grams=in_grams(grams)))
        for size, count in Counter(fuel.new_g).items():
            yield _item(Kit.CARTRIDGE, Why.BURNT.format(fuel=fuel.fuel, grams=in_grams(size)), count)


def _lids(planned: PlannedTrip, household: Household) -> Iterator[KitItem]:
    under_a_lid = {
        step.pot
        for meal in planned.meals
        for step in meal.plan.steps
        if (on_flame(step) and step.lid_on) or heats_water(meal.plan, step)
    }
    if _heats_water(planned):
        under_a_lid.add(largest_pot(planned.model.pots, household))
    count = sum(household.pots[pot].lid for pot in under_a_lid)
    if count:
        yield _item(Kit.LID, Why.UNDER_A_LID, count)


def _pots(planned: PlannedTrip, household: Household) -> Iterator[KitItem]:
    """Give the pots that some dish uses; those that none does stay at home, but for the one that water wants."""
    cooked_in = {pot for meal in planned.meals for pot in _pots_of(meal.plan)}
    for_water = largest_pot(planned.model.pots, household) if _heats_water(planned) else ""
    for name in dict.fromkeys(planned.model.pots):
        if name in cooked_in:
            yield _item(name, Why.COOKED_IN)
        elif name == for_water:
            yield _item(name, Why.FOR_WATER)


def _pots_of(plan: DishPlan) -> Iterator[str]:
    """Give the pots of food on the flame, and those in which water gets hot to be poured."""
    for step in plan.steps:
        if on_flame(step) or heats_water(plan, step):
            yield step.pot


def _heats_water(planned: PlannedTrip) -> bool:
    """Tell whether water is boiled to make it safe, or snow is melted, somewhere."""
    return any(stop.model.fills is Fills.SNOW or is_boiled(stop) for stop in planned.stops)


def _for_people(planned: PlannedTrip) -> Iterator[KitItem]:
    yield _item(Kit.MUG, Why.EACH, len(planned.eaters))
    yield _item(Kit.BOWL, Why.EACH, len(planned.eaters))
    yield _item(Kit.SPOON, Why.EACH, len(planned.eaters))


def _for_the_cook(planned: PlannedTrip) -> Iterator[KitItem]:
    steps = [step for meal in planned.meals for step in meal.plan.steps]
    if planned.meals:
        yield _item(Kit.KNIFE, Why.CUTS)
    if any(on_flame(step) and not dry_heated(step) for step in steps):
        yield _item(Kit.LADLE, Why.SERVES)
    if any(map(dry_heated, steps)):
        yield _item(Kit.TURNER, Why.TURNS)
    if any(step.water_ml for meal in planned.meals for step in meal.sums.steps):
        yield _item(Kit.JUG, Why.MEASURES)
    if any(meal.plan.loose for meal in planned.meals):
        yield _item(Kit.MEASURING_SPOONS, Why.BY_THE_SPOON)


def _for_dishes(planned: PlannedTrip, packs: Sequence[TripPack]) -> Iterator[KitItem]:
    plans = [meal.plan for meal in planned.meals]
    if _heats_water(planned) or any(map(wants_stove, plans)):
        yield _item(Kit.LIGHTER, Why.ONE_GETS_WET, int(LIGHTERS.value))
    heaters = sum(map(_heaters, planned.meals))
    if heaters:
        yield _item(Kit.HEATER, Why.WARMS, heaters)
    if any(map(_keeps_in_cosy, plans)):
        yield _item(Kit.COSY, Why.KEEPS_WARM)
    if any(part.component.raw for plan in plans for part in plan.parts):
        yield _item(Kit.THERMOMETER, Why.RAW)
    elif any(step.to_c is not None for plan in plans for step in plan.steps):
        yield _item(Kit.THERMOMETER, Why.TEMPERATURE)
    if any(pack.sachet for pack in packs):
        yield _item(Kit.SACHET_BAG, Why.SACHETS)


def _heaters(meal: TripMeal) -> int:
    """Give the ration heaters of a meal: each step that has one warms every serving in one of its own."""
    return math.ceil(meal.sums.servings) * sum(step.heater for step in meal.plan.steps)


def _keeps_in_cosy(plan: DishPlan) -> bool:
    """Tell whether a step says that it waits in a cosy, or a component that gets its water in one does."""
    own = [plan.parts[index].component.water for step in plan.steps for index in plan.wetted_by(step)]
    return any(step.cosy for step in plan.steps) or any(water is not None and water.cosy for water in own)


def _for_water(planned: PlannedTrip) -> Iterator[KitItem]:
    for name, container in planned.model.water_containers.items():
        yield _item(name, Why.HOLDS_WATER, container.count)
    treated_by = [stop.model.treatment for stop in planned.stops if stop.model.treatment is not None]
    needed = {what for by in treated_by for what in _TREATED_WITH[by]}
    for what in (one for one in Kit if one in needed):
        yield _item(what, Why.TREATS)
    if planned.model.cooler is not None:
        yield _item(Kit.COOLER, Why.KEEPS_COLD)


def _in_camp() -> Iterator[KitItem]:
    yield _item(Kit.SOAP, Why.HANDS)
    yield _item(Kit.RUBBISH_BAG, Why.CARRIED_OUT)
