"""A small trip among the demo's dishes: two days and one in reserve, four people who eat 3.8 portions.

Its meals are worked out by the real sums; packs, water, fuel, clock and stores are made by hand, so that every kind of
line of a booklet is there: what is inside a pack, a tub, food from the bag, a jar that does not hold enough, treated
water, sea and lake, a flame that is shared, a dish that stands ready.
"""

from collections.abc import Iterator
from dataclasses import fields
from datetime import date, timedelta
from functools import cache
from types import MappingProxyType

from tests.sheets.demo import FOLDERS, RECIPES

from packlarder.book.draw import Mark
from packlarder.book.read import read_book
from packlarder.book.stop import Fills, OtherWater, WaterTreatment
from packlarder.faults import has_errors
from packlarder.reckon.dish import printed_g
from packlarder.reckon.ledger import GIVES_WATER
from packlarder.reckon.records import PlannedPack
from packlarder.reckon.trip.journey import (
    Bearing,
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
from packlarder.reckon.trip.meals import plan_trip
from packlarder.reckon.trip.records import PlannedTrip, TripItem, TripMeal, TripPack, TripSums
from packlarder.reckon.trip.stores import Drawn, Fill, Stores
from packlarder.safety.whole import CheckedBook, CheckedTrip, check_book

ON = date(2027, 6, 1)
ID = "two-skerries"
TEXT = """
name: Two days among the skerries
about: Out with the evening, and home with the next.
starts: 2027-06-26
people:
  - Runa
  - Eskil: {appetite: 120 %}
  - Tove: {avoids: [tree nuts, peanut]}
  - Pim: {age: 8, appetite: 60 %, drinks: 2 L}
stoves: [canister burner]
pots: [big pot, small pot, pan]
on the move:
  - raisins: 25 g each
  - almonds: 20 g each
spare day:
  - supper: cod chowder
stops:
  - place: Gull skerry
    day: 1
    other water: sea
    meals:
      - lunch: crispbread board
      - supper: beef and leek noodles
      - breakfast: eggs and ham
  - place: the pilots' quay
    day: 2
    fills: to be treated
    treated by: filter and chlorine
    other water: lake
    meals:
      - lunch: crispbread board
      - supper: lentil rice from the heater
      - supper: chicken and pea rice
      - drink: cocoa
notes: The key of the boathouse hangs behind the stove.
"""


@cache
def book() -> CheckedBook:
    """Read and check the demo book with this trip in it."""
    paths = [path for folder in FOLDERS for path in RECIPES.glob(f"{folder}*.yaml")]
    files = {path.relative_to(RECIPES).as_posix(): path.read_bytes() for path in paths}
    read = read_book({**files, f"trips/{ID}.yaml": TEXT.encode()})
    assert read.book is not None
    assert not has_errors(read.faults), read.faults
    return check_book(read.book, ON)


@cache
def trip() -> TripSums:
    """Work out its meals, and put by hand what else there is of it."""
    checked = book()
    planned, faults = plan_trip(checked.book, checked.components, lambda id: checked.dishes[id].plan, ID)
    assert planned is not None, faults
    packs = tuple(_packs(planned))
    known = {field.name: getattr(planned, field.name) for field in fields(PlannedTrip)}
    return TripSums(**known, packs=packs, journey=_journey(planned, packs), stores=_stores(planned, packs))


def checked_trip() -> CheckedTrip:
    """Give it as held against no rule."""
    return CheckedTrip(sums=trip(), findings=())


def _packs(planned: PlannedTrip) -> Iterator[TripPack]:
    tubs: dict[str, list[tuple[TripMeal, TripItem]]] = {}
    for meal in planned.meals:
        for pack in meal.plan.packs:
            yield _pack(meal, pack, "")
            yield from (_pack(meal, inner, f"{meal.number}.{pack.number}") for inner in pack.inside)
        for index in meal.plan.loose:
            part = meal.plan.parts[index]
            tubs.setdefault(part.component.id, []).append((meal, _item(meal, index)))
    for day in sorted({ration.day for ration in planned.on_the_move}):
        rations = [ration for ration in planned.on_the_move if ration.day == day]
        items = tuple(
            TripItem(component=one.component, called=one.component.model.name, grams=one.dry_g, number=0)
            for one in rations
        )
        yield _bag(f"M{day}", day, rations[0].on, items, "", spare=rations[0].spare)
    for nth, held in enumerate(tubs.values(), 1):
        first, item = held[0]
        items = tuple(one for _, one in held)
        yield _bag(f"T{nth}", first.day, first.on, items, item.component.model.carried_in, spare=False)


def _pack(meal: TripMeal, pack: PlannedPack, inside: str) -> TripPack:
    return TripPack(
        mark=f"{meal.number}.{pack.number}",
        meal=meal.number,
        day=meal.day,
        on=meal.on,
        called=pack.called or meal.plan.model.name,
        items=tuple(_item(meal, index) for index in pack.parts),
        bearer="Runa" if meal.number % 2 else "Eskil",
        raw=any(meal.plan.parts[index].component.raw for index in pack.all_parts),
        sachet=pack.sachet,
        spare=meal.spare,
        inside=inside,
    )


def _item(meal: TripMeal, index: int) -> TripItem:
    part = meal.plan.parts[index]
    grams = printed_g(meal.sums.parts[index].dry_g)
    return TripItem(component=part.component, called=part.called, grams=grams, number=meal.number)


def _bag(mark: str, day: int, on: date, items: tuple[TripItem, ...], called: str, *, spare: bool) -> TripPack:
    return TripPack(
        mark=mark,
        meal=None,
        day=day,
        on=on,
        called=called,
        items=items,
        bearer="Tove",
        raw=False,
        sachet=False,
        spare=spare,
    )


def _journey(planned: PlannedTrip, packs: tuple[TripPack, ...]) -> Journey:
    home = LegWater(
        in_food_ml=1890, drained_away_ml=620, pot_ml=1040, boiled_off_ml=130, spare_ml=20,
        drinking_ml=11000, washing_ml=2000, margin_ml=1670,
    )  # fmt: skip  # 16.7 L and a tenth of it: 18.37 L
    quay = LegWater(
        in_food_ml=860, drink_ml=760, spare_ml=10, drinking_ml=10240, washing_ml=2000, spare_day_ml=1230, margin_ml=1520
    )
    legs = (_leg(1, None, 1, (0,), home, 0), _leg(2, 1, None, (1,), quay, 600))
    spot = LegWater(in_food_ml=200, spare_ml=10, washing_ml=500)
    return Journey(
        legs=legs,
        stops=(
            StopWater(stop=0, meals=home, on_the_spot=False, from_other=OtherWater.SEA, from_other_ml=0),
            StopWater(
                stop=1,
                meals=spot,
                on_the_spot=True,
                from_other=OtherWater.LAKE,
                from_other_ml=600,
                treated_ml=710,
                wait_min=30,
            ),
        ),
        fuels=(_fuel(),),
        clock=tuple(_clock(meal) for meal in planned.meals),
        days=(),
        bearing=tuple(_bearing(name, packs) for name in ("Runa", "Eskil", "Tove")),
        fed=(),
        kit=(
            KitItem(what="thermometer", count=1, why="for what is RAW"),
            KitItem(what="mug", count=4, why="one each"),
            KitItem(what="big pot", count=1, why=""),
        ),
        rubbish=Rubbish(packs=len(packs), heaters=4, cartridges=1, by_day=MappingProxyType({})),
    )


def _leg(nth: int, start: int | None, end: int | None, stops: tuple[int, ...], water: LegWater, other_ml: int) -> Leg:
    treated = start is not None
    return Leg(
        number=nth,
        from_stop=start,
        to_stop=end,
        first_day=nth,
        last_day=nth,
        stops=stops,
        water=water,
        from_other_ml=other_ml,
        fills=Fills.TREATED if treated else Fills.TAP,
        treated_by=WaterTreatment.FILTER_AND_CHLORINE if treated else None,
        treated_ml=water.carry_ml if treated else 0,
        wait_min=30 if treated else 0,
        short_ml=2370 if nth == 1 else 0,
    )


def _fuel() -> Fuel:
    stops = (
        StopFuel(stop=0, fuel="gas mix", cooking_g=71, treating_g=0, melting_g=0),
        StopFuel(stop=1, fuel="gas mix", cooking_g=24, treating_g=18, melting_g=0),
        StopFuel(stop=None, fuel="gas mix", cooking_g=29, treating_g=0, melting_g=0),
    )
    return Fuel(
        fuel="gas mix", stoves=("canister burner",), stops=stops, margin_g=29, in_hand_g=(85.0,), new_g=(100, 100)
    )


def _clock(meal: TripMeal) -> MealClock:
    """Let eggs and ham wait a quarter of an hour for a flame that noodles had before; soaks begin with their steps."""
    waits_min = 15 if meal.dish == "eggs-and-ham" else 0
    ready_at = meal.eat_at - timedelta(minutes=waits_min)
    start_at = ready_at - timedelta(minutes=meal.sums.clock.minutes)
    soaks = tuple(
        SoakStart(step=index, at=start_at + timedelta(minutes=int(step.start_min)), minutes=int(step.wait_min))
        for index, step in enumerate(meal.sums.steps)
        if step.wait_min and meal.plan.steps[index].verb in GIVES_WATER
    )
    return MealClock(
        number=meal.number,
        start_at=start_at,
        ready_at=ready_at,
        eat_at=meal.eat_at,
        waits_min=waits_min,
        soaks=soaks,
        after=None if meal.dish != "eggs-and-ham" else meal.number - 1,
    )


def _bearing(name: str, packs: tuple[TripPack, ...]) -> Bearing:
    own = [pack for pack in packs if pack.bearer == name]
    return Bearing(name=name, grams=sum(pack.grams for pack in own), packs=tuple(pack.mark for pack in own))


def _stores(planned: PlannedTrip, packs: tuple[TripPack, ...]) -> Stores:
    into: dict[str, list[tuple[str, float]]] = {}
    held = {}
    for pack in packs:
        for item in pack.items:
            held[item.component.id] = item.component
            into.setdefault(item.component.id, []).append((pack.mark, item.grams))
    fills = []
    for id, goes in sorted(into.items()):
        need_g = sum(grams for _, grams in goes)
        mark = Mark(run=f"2027-03-14-{id}", batch="a", number=1)
        short_g = 10.0 if id == "leek-rings" else 0.0
        drawn = Drawn(mark=mark, grams=need_g - short_g, use_by=date(2028, 3, 14))
        fills.append(
            Fill(
                component=held[id],
                need_g=need_g,
                drawn=(drawn,),
                bought_on_the_way_g=0.0,
                short_g=short_g,
                into=tuple(goes),
                first_on=planned.model.starts,
                last_on=planned.ends,
            )
        )
    return Stores(fills=tuple(fills))
