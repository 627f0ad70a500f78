"""A trip as a record for other programs: what `show trip --json` prints. Its figures are those of the page."""

from collections.abc import Iterable

from packlarder.book.stop import WaterTreatment
from packlarder.measure import as_typed
from packlarder.reckon.trip.journey import (
    DayLoad,
    Fed,
    Fuel,
    Journey,
    Leg,
    LegWater,
    MealClock,
    Rubbish,
    StopFuel,
    StopWater,
)
from packlarder.reckon.trip.records import Eater, StopSums, TripMeal, TripSums
from packlarder.safety import Finding, on_the_page
from packlarder.sheets.data_figures import number
from packlarder.sheets.data_records import Note
from packlarder.sheets.trip_data_records import (
    BearerData,
    CartridgesData,
    DayData,
    FedData,
    FuelData,
    FuelStopData,
    InsteadData,
    KitData,
    LegData,
    LegWaterData,
    MealData,
    PersonData,
    RubbishData,
    SoakData,
    StopData,
    StopWaterData,
    TreatmentData,
    TripData,
)
from packlarder.sheets.trip_names import SPARE_DAY, goal_called, stop_called
from packlarder.sheets.trip_store_data import (
    fill_data,
    grams,
    load_data,
    moment,
    pack_data,
    shortfall_data,
    task_data,
)


def trip_data(trip: TripSums, findings: Iterable[Finding], *, edition: str, day: str) -> TripData:
    """Give a trip as data, with what the rules found."""
    journey, clock = trip.journey, {one.number: one for one in trip.journey.clock}
    meals = [(meal, _meal(meal, clock.get(meal.number))) for meal in trip.meals]
    return TripData(
        trip=trip.id,
        name=trip.model.name,
        edition=edition,
        day=day,
        stands=trip.model.stands.value,
        starts=trip.model.starts.isoformat(),
        ends=trip.ends.isoformat(),
        last_day=trip.last_day,
        people=[_person(eater) for eater in trip.eaters],
        stops=[_stop(one, [told for meal, told in meals if meal.stop == one.index], journey) for one in trip.stops],
        spare_day=[told for meal, told in meals if meal.spare],
        legs=[_leg(trip, leg) for leg in journey.legs],
        packs=[pack_data(trip, pack) for pack in trip.packs],
        fills=[fill_data(fill) for fill in trip.stores.fills],
        shortfall=[shortfall_data(short) for short in trip.stores.shortfalls],
        loads=[load_data(load) for load in trip.stores.loads],
        plan=[task_data(task) for task in trip.stores.tasks],
        fuel=[_fuel(trip, fuel) for fuel in journey.fuels],
        fuel_g=sum(fuel.need_g for fuel in journey.fuels),
        days=[_day_load(one) for one in journey.days],
        fed=[_fed(one) for one in journey.fed],
        bearers=[
            BearerData(person=one.name, weight_g=grams(one.grams), packs=list(one.packs)) for one in journey.bearing
        ],
        weight_g=grams(trip.grams),
        kit=[KitData(what=one.what, count=one.count, why=as_typed(one.why)) for one in journey.kit],
        rubbish=_rubbish(journey.rubbish),
        safety=[_note(finding) for finding in on_the_page(findings)],
        missing=[as_typed(f"{gap.what}: {gap.missing}") for gap in trip.gaps],
    )


def _person(eater: Eater) -> PersonData:
    return PersonData(
        name=eater.name,
        portion=number(eater.portion, 3),
        burden=number(eater.burden, 3),
        drinks_ml=number(eater.drinks_ml),
        age=eater.model.age,
        at_risk=eater.model.at_risk,
        avoids=[allergen.value for allergen in eater.model.avoided],
    )


def _meal(meal: TripMeal, clock: MealClock | None) -> MealData:
    soaks = () if clock is None else clock.soaks
    return MealData(
        number=meal.number,
        meal=meal.meal.value,
        dish=meal.dish,
        name=meal.plan.model.name,
        day=meal.day,
        date=meal.on.isoformat(),
        people=list(meal.eaters),
        portions=number(meal.portions, 3),
        eat_at=moment(meal.eat_at),
        start_at=None if clock is None else moment(clock.start_at),
        ready_at=None if clock is None else moment(clock.ready_at),
        waits_min=0 if clock is None else clock.waits_min,
        soaks=[SoakData(step=one.step + 1, at=moment(one.at), minutes=one.minutes) for one in soaks],
        after=None if clock is None else clock.after,
        instead=[
            InsteadData(component=taken.id, raw=taken.raw, stands_in_for=meal.plan.parts[index].called)
            for index, taken in meal.instead.items()
        ],
    )


def _stop(stop: StopSums, meals: list[MealData], journey: Journey) -> StopData:
    model, conditions = stop.model, stop.conditions
    burnt = [(fuel.fuel, one) for fuel in journey.fuels for one in fuel.stops if one.stop == stop.index]
    return StopData(
        number=stop.index + 1,
        place=model.place,
        day=model.day,
        date=stop.on.isoformat(),
        height_m=number(conditions.height_m),
        air_c=number(conditions.air_c),
        water_c=number(conditions.water_c),
        fills=None if model.fills is None else model.fills.value,
        treated_by=None if model.treatment is None else model.treatment.value,
        other_water=None if model.other_water is None else model.other_water.value,
        used=next((_used(one, model.treatment) for one in journey.stops if one.stop == stop.index), None),
        meals=meals,
        fuel_g={fuel: one.grams for fuel, one in burnt},
    )


def _used(stop: StopWater, treated_by: WaterTreatment | None) -> StopWaterData:
    return StopWaterData(
        water_ml=_water(stop.meals),
        on_the_spot=stop.on_the_spot,
        from_other_ml=stop.from_other_ml,
        treatment=_treatment(treated_by, stop),
    )


def _leg(trip: TripSums, leg: Leg) -> LegData:
    return {
        "number": leg.number,
        "from": stop_called(trip, leg.from_stop),
        "to": goal_called(trip, leg),
        "first_day": leg.first_day,
        "last_day": leg.last_day,
        "stops": [index + 1 for index in leg.stops],
        "fills": None if leg.fills is None else leg.fills.value,
        "water_ml": _water(leg.water),
        "carry_ml": leg.carry_ml,
        "from_other_ml": leg.from_other_ml,
        "treatment": _treatment(leg.treated_by, leg),
        "short_ml": leg.short_ml,
    }


def _water(water: LegWater) -> LegWaterData:
    return LegWaterData(
        in_food_ml=water.in_food_ml,
        drained_away_ml=water.drained_away_ml,
        pot_ml=water.pot_ml,
        boiled_off_ml=water.boiled_off_ml,
        drink_ml=water.drink_ml,
        heater_ml=water.heater_ml,
        spare_ml=water.spare_ml,
        drinking_ml=water.drinking_ml,
        washing_ml=water.washing_ml,
        spare_day_ml=water.spare_day_ml,
        margin_ml=water.margin_ml,
    )


def _treatment(by: WaterTreatment | None, filled: Leg | StopWater) -> TreatmentData | None:
    if by is None:
        return None
    return TreatmentData(treated_by=by.value, treated_ml=filled.treated_ml, wait_min=filled.wait_min)


def _fuel(trip: TripSums, fuel: Fuel) -> FuelData:
    return FuelData(
        fuel=fuel.fuel,
        stoves=list(fuel.stoves),
        by_stop=[_fuel_stop(trip, one) for one in fuel.stops],
        margin_g=fuel.margin_g,
        fuel_g=fuel.need_g,
        cartridges=CartridgesData(part_used_g=[grams(one) for one in fuel.in_hand_g], whole_g=list(fuel.new_g)),
    )


def _fuel_stop(trip: TripSums, one: StopFuel) -> FuelStopData:
    return FuelStopData(
        stop=None if one.stop is None else one.stop + 1,
        place=SPARE_DAY if one.stop is None else stop_called(trip, one.stop),
        cooking_g=one.cooking_g,
        treating_g=one.treating_g,
        melting_g=one.melting_g,
        fuel_g=one.grams,
    )


def _day_load(one: DayLoad) -> DayData:
    return DayData(
        day=one.day,
        date=one.on.isoformat(),
        weight_g=grams(one.carried_g),
        volume_l=number(one.volume_ml / 1000, 2),
        unmeasured=one.unmeasured,
        eaten_g=grams(one.food_g),
    )


def _fed(one: Fed) -> FedData:
    return FedData(
        person=one.name,
        day=one.day,
        energy_kcal=number(one.energy_kcal),
        protein_g=number(one.protein_g, 1),
        salt_g=number(one.salt_g, 1),
        food_g=number(one.food_g, 1),
        complete=one.complete,
    )


def _rubbish(rubbish: Rubbish) -> RubbishData:
    return RubbishData(
        packs=rubbish.packs,
        heaters=rubbish.heaters,
        cartridges=rubbish.cartridges,
        packs_by_day={str(day): packs for day, packs in rubbish.by_day.items()},
    )


def _note(finding: Finding) -> Note:
    return Note(
        rule=finding.rule.id,
        severity=finding.severity.value,
        text=as_typed(finding.text),
        source=finding.source,
        standing=finding.standing.value,
    )
