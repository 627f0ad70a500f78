"""The journey of the sample trip: three legs, two fuels, snow to melt, four days; made by hand."""

from collections.abc import Sequence
from datetime import timedelta

from packlarder.book.stop import Fills, OtherWater, WaterTreatment
from packlarder.reckon.trip.journey import (
    Bearing,
    DayLoad,
    Fed,
    Fuel,
    Journey,
    KitItem,
    Leg,
    LegWater,
    MealClock,
    Rubbish,
    SoakStart,
    StopFuel,
    StopWater,
)
from packlarder.reckon.trip.records import PlannedTrip, TripMeal, TripPack

DISHES = LegWater._fields[:7]


def journey_of(trip: PlannedTrip, packs: Sequence[TripPack]) -> Journey:
    """Give the journey; waters of dishes and weights are those of its meals and packs, the rest is made up."""
    return Journey(
        legs=_legs(trip),
        stops=(
            StopWater(
                stop=0,
                meals=_water(trip, 0, 6300, 1000),
                on_the_spot=False,
                from_other=OtherWater.SEA,
                from_other_ml=1000,
            ),
            StopWater(
                stop=1,
                meals=_water(trip, 1, 6300, 0),
                on_the_spot=True,
                from_other=OtherWater.LAKE,
                from_other_ml=2160,
                treated_ml=11_090,
                wait_min=30,
            ),
            StopWater(stop=2, meals=_water(trip, 2, 9450, 2000), on_the_spot=True, from_other=None, from_other_ml=0),
        ),
        fuels=(
            Fuel(
                fuel="gas mix",
                stoves=("canister burner",),
                stops=(
                    StopFuel(stop=0, fuel="gas mix", cooking_g=41, treating_g=0, melting_g=0),
                    StopFuel(stop=1, fuel="gas mix", cooking_g=38, treating_g=17, melting_g=0),
                    StopFuel(stop=2, fuel="gas mix", cooking_g=52, treating_g=0, melting_g=121),
                    StopFuel(stop=None, fuel="gas mix", cooking_g=24, treating_g=0, melting_g=0),
                ),
                margin_g=59,
                in_hand_g=(85.0,),
                new_g=(230, 230),
            ),
            Fuel(
                fuel="denatured alcohol",
                stoves=("spirit burner",),
                stops=(StopFuel(stop=1, fuel="denatured alcohol", cooking_g=22, treating_g=0, melting_g=0),),
                margin_g=5,
                in_hand_g=(),
                new_g=(),
            ),
        ),
        clock=tuple(_clock(meal) for meal in trip.meals),
        days=_days(trip, packs),
        bearing=tuple(
            Bearing(
                name=name,
                grams=sum(pack.grams for pack in packs if pack.bearer == name),
                packs=tuple(pack.mark for pack in packs if pack.bearer == name),
            )
            for name in ("Runa", "Eskil", "Tove")
        ),
        fed=tuple(_fed(trip)),
        kit=(
            KitItem(what="thermometer", count=1, why="to tell that RAW food is done"),
            KitItem(what="mug", count=4, why="one for each"),
            KitItem(what="big pot", count=1, why="chicken and pea rice"),
        ),
        rubbish=Rubbish(packs=len(packs), heaters=4, cartridges=2, by_day={1: 4, 2: 9, 3: 7, 4: 3}),
    )


def _water(trip: PlannedTrip, stop: int | None, drinking_ml: int, washing_ml: int) -> LegWater:
    """Add up the waters of the dishes of a stop, with what is drunk plain and washed with."""
    meals = [meal for meal in trip.meals if meal.stop == stop]
    pieces = {key: sum(getattr(meal.sums.water, key) for meal in meals) for key in DISHES}
    return LegWater(**pieces, drinking_ml=drinking_ml, washing_ml=washing_ml)


def _leg(number: int, stop: int, days: tuple[int, int], water: LegWater, **more: object) -> Leg:
    known = {
        "from_stop": None if stop == 0 else stop,
        "to_stop": stop + 1 if stop < 2 else None,
        "from_other_ml": 0,
        "fills": None,
        "treated_by": None,
        "treated_ml": 0,
        "wait_min": 0,
        "short_ml": 0,
    }
    # Fields left out are those of a leg from a tap that lacks nothing.
    return Leg(number=number, first_day=days[0], last_day=days[1], stops=(stop,), water=water, **{**known, **more})  # type: ignore[arg-type]  # see above


def _legs(trip: PlannedTrip) -> tuple[Leg, ...]:
    reserve_ml = sum(meal.sums.water.carry_ml for meal in trip.meals if meal.spare) + 12_000
    first = _water(trip, 0, 9870, 2000)._replace(margin_ml=1750)
    second = _water(trip, 1, 12_130, 0)._replace(margin_ml=1380)
    third = _water(trip, 2, 9450, 2000)._replace(spare_day_ml=reserve_ml, margin_ml=3530)
    return (
        _leg(1, 0, (1, 2), first, from_other_ml=1000),
        _leg(
            2,
            1,
            (2, 3),
            second,
            from_other_ml=2160,
            fills=Fills.TREATED,
            treated_by=WaterTreatment.CHLORINE,
            treated_ml=second.carry_ml,
            wait_min=30,
        ),
        _leg(
            3,
            2,
            (3, 4),
            third,
            fills=Fills.SNOW,
            treated_by=WaterTreatment.BOILING,
            treated_ml=third.carry_ml,
            wait_min=1,
            short_ml=7850,
        ),
    )


def _clock(meal: TripMeal) -> MealClock:
    start = meal.eat_at - timedelta(minutes=meal.sums.clock.minutes)
    waits = zip(meal.plan.steps, meal.sums.steps, strict=True)
    return MealClock(
        number=meal.number,
        start_at=start,
        ready_at=meal.eat_at,
        eat_at=meal.eat_at,
        waits_min=12 if meal.number == 5 else 0,
        soaks=tuple(
            SoakStart(
                step=step.index, at=start + timedelta(minutes=round(sums.start_min)), minutes=round(sums.wait_min)
            )
            for step, sums in waits
            if sums.wait_min and sums.water_ml
        ),
        after=meal.number + 1 if meal.number == 5 else None,
    )


def _days(trip: PlannedTrip, packs: Sequence[TripPack]) -> tuple[DayLoad, ...]:
    eaten = {day: sum(pack.grams for pack in packs if pack.day == day) for day in range(1, trip.last_day + 2)}
    return tuple(
        DayLoad(
            day=day,
            on=trip.model.starts + timedelta(days=day - 1),
            food_g=eaten[day],
            carried_g=sum(grams for later, grams in eaten.items() if later >= day),
            volume_ml=2.1 * eaten[day],
            unmeasured=day == 2,
        )
        for day in eaten
    )


def _fed(trip: PlannedTrip) -> list[Fed]:
    each = {1: 1210.0, 2: 3120.0, 3: 2870.0, 4: 1680.0}
    return [
        Fed(
            name=one.name,
            day=day,
            energy_kcal=kcal * one.portion,
            protein_g=kcal * one.portion / 28,
            salt_g=kcal * one.portion / 400,
            food_g=kcal * one.portion / 4.3,
            complete=one.name != "Pim",
        )
        for one in trip.eaters
        for day, kcal in each.items()
    ]
