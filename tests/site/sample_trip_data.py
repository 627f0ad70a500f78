"""A trip for the tests of its data: meals by the real sums of a small book, all else made by hand.

Two people, three days from 2 July 2027; the plan before it runs over the end of June. Its texts hold what tables and
calendars must quote: commas, quotes, semicolons, letters beyond ASCII, and a place that begins like a formula.
"""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime
from functools import cache
from types import MappingProxyType

from tests.sums.book_of import KITCHEN, component_files

from packlarder.book.book import Book
from packlarder.book.draw import Mark
from packlarder.book.read import read_book
from packlarder.book.stop import Fills, WaterTreatment
from packlarder.faults import Gap
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip import journey, stores
from packlarder.reckon.trip.records import TripItem, TripPack, TripSums
from packlarder.reckon.trip.stores import TaskKind
from packlarder.safety import RULES, Finding
from packlarder.safety.whole import CheckedTrip, check_components, check_dishes, check_trips

ON = date(2027, 6, 1)
ID = "shore"
DISHES = {
    "rice": """\
name: "Rice, \\"red\\"; hot"
meal: supper
serves: 2
parts: [rice: 160 g, salt: 2 g]
steps: [moisten: rice]
""",
    "omelette": """\
name: Omelette
meal: breakfast
serves: 2
parts: [egg powder: 50 g, oil: 10 mL]
steps:
  - mix: egg powder
  - {fry: [egg powder, oil], for: 5 min, to: 71 °C}
""",
}
TRIP = """\
name: Along the shore, over Øya; out and back
about: A short one.
starts: 2027-07-02
people:
  - Ada
  - Bo: {appetite: 150 %, avoids: [peanut]}
stoves: [burner]
pots: [pot, pan]
on the move: [milk powder: 20 g each]
spare day: [supper: rice]
notes: Tide tables lie in the boat.
stops:
  - place: '=1+1, the "old" quay'
    day: 1
    fills: tap
    meals: [{supper: {dish: rice, for: Ada}}, breakfast: omelette]
  - place: the inner bay
    day: 2
    fills: to be treated
    treated by: filter and chlorine
    meals: [supper: rice]
  - {place: home again, day: 3}
"""
QUAY, BAY = 0, 1


@cache
def book() -> Book:
    """Read the book with the trip in it."""
    files = {"book.yaml": KITCHEN.encode(), **component_files({}), f"trips/{ID}.yaml": TRIP.encode()}
    files |= {f"dishes/{id}.yaml": text.encode() for id, text in DISHES.items()}
    read = read_book(files)
    assert read.book is not None
    assert read.faults == ()
    return read.book


@cache
def checked_trip() -> CheckedTrip:
    """Give the trip with all that was made by hand."""
    components = check_components(book(), ON)
    dishes = check_dishes(components, book().dishes)
    [(_, worked)] = check_trips(components, dishes.dishes, ON).trips.items()
    hand = _Hand(components.sums)
    packs = hand.packs()
    gap = Gap(what="when to dry rice", missing="no dryer in book.yaml gives\u00a0it")
    made = replace(worked.sums, packs=packs, journey=JOURNEY, stores=hand.provided(), gaps=(gap,))
    rule = next(rule for rule in RULES if rule.id == "hands-after-raw")
    return CheckedTrip(sums=made, findings=(Finding(rule=rule, places=(made.place,), facts=rule.facts),))


def trip() -> TripSums:
    """Give the sums of the trip."""
    return checked_trip().sums


def at(month: int, day: int, hour: int = 0, minute: int = 0) -> datetime:
    """Give a moment of the year."""
    return datetime(2027, month, day, hour, minute)  # noqa: DTZ001 - the household's own clock


class _Hand:
    """Makes packs and stores of the book's components.

    Meals: 1 rice for Ada (80 g, 1 g salt), 2 omelette for 2½ (62 g egg, 11 g oil), 3 rice for 2½ (200 g, 2.5 g), 4 the
    same in reserve. On the move: 50 g milk powder a day, in four packs.
    """

    def __init__(self, components: Mapping[str, ComponentSums]) -> None:
        self.of = components

    def packs(self) -> tuple[TripPack, ...]:
        moved = tuple(
            self._pack(f"M{day}", None, day, (("milk-powder", 50, 0),), bearer="Bo", spare=day == 4)
            for day in (1, 2, 3, 4)
        )
        salt = (("salt", 1, 1), ("salt", 2.5, 3), ("salt", 2.5, 4))
        return (
            self._pack("T1", None, 1, salt, bearer="Ada"),
            moved[0],
            self._pack("1.1", 1, 1, (("rice", 80, 1),), bearer="Ada"),
            moved[1],
            self._pack("2.1", 2, 2, (("oil", 11, 2),), bearer="Ada"),
            replace(self._pack("2.1.1", 2, 2, (("egg-powder", 62, 2),), bearer="Ada"), inside="2.1", sachet=True),
            replace(self._pack("3.1", 3, 2, (("rice", 200, 3),), bearer="Bo"), bought_at=QUAY),
            moved[2],
            self._pack("4.1", 4, 4, (("rice", 200, 4),), bearer="Bo", spare=True),
            moved[3],
        )

    def _pack(
        self,
        mark: str,
        meal: int | None,
        day: int,
        items: tuple[tuple[str, float, int], ...],
        *,
        bearer: str,
        spare: bool = False,
    ) -> TripPack:
        held = tuple(
            TripItem(component=self.of[id], called=self.of[id].model.name, grams=grams, number=number)
            for id, grams, number in items
        )
        return TripPack(
            mark=mark,
            meal=meal,
            day=day,
            on=date(2027, 7, day + 1),
            called=held[0].called,
            items=held,
            bearer=bearer,
            raw=any(one.component.raw for one in held),
            sachet=False,
            spare=spare,
        )

    def provided(self) -> stores.Stores:
        rice, egg = self.of["rice"], self.of["egg-powder"]
        return stores.Stores(
            fills=(
                stores.Fill(
                    component=egg,
                    need_g=62,
                    drawn=(),
                    bought_on_the_way_g=0,
                    short_g=62,
                    into=(("2.1.1", 62),),
                    first_on=date(2027, 7, 3),
                    last_on=date(2027, 7, 3),
                ),
                stores.Fill(
                    component=rice,
                    need_g=480,
                    drawn=(stores.Drawn(mark=Mark("2027-04-10-rice", "a", 2), grams=150, use_by=date(2028, 4, 10)),),
                    bought_on_the_way_g=200,
                    short_g=130,
                    into=(("1.1", 80), ("3.1", 200), ("4.1", 200)),
                    first_on=date(2027, 7, 2),
                    last_on=date(2027, 7, 5),
                ),
            ),
            shortfalls=(self._short(egg, 62, 250, 284), self._short(rice, 130, 400, 150)),
            loads=(
                stores.DryingLoad(
                    number=1,
                    dryer="machine",
                    on_the_trays=(
                        stores.OnTrays(component=rice, trays=1, fresh_g=400, dry_g=130),
                        stores.OnTrays(component=egg, trays=1, fresh_g=250, dry_g=62),
                    ),
                    starts=at(6, 29, 20),
                    ends=at(7, 1, 2),
                ),
            ),
            tasks=self._tasks(),
        )

    def _short(self, component: ComponentSums, short_g: float, fresh_g: float, bought_g: float) -> stores.Shortfall:
        return stores.Shortfall(
            component=component,
            source=stores.Source.DRY,
            short_g=short_g,
            for_mixes_g=0,
            fresh_g=fresh_g,
            bought_g=bought_g,
            bought_as="as we wrote it down",
            trays=1,
            loads=(1,),
            start_by=date(2027, 6, 28),
        )

    def _tasks(self) -> tuple[stores.Task, ...]:
        rice, egg = self.of["rice"], self.of["egg-powder"]
        both = (rice, egg)
        return (
            _task(TaskKind.SHOP, at(6, 28), at(6, 28), both, grams=434),
            _task(TaskKind.COOK, at(6, 29, 16), at(6, 29, 17), (rice,), grams=400, load=1, timed=True),
            _task(TaskKind.DRY, at(6, 29, 20), at(7, 1), both, grams=650, load=1, timed=True),
            _task(TaskKind.WEIGH_AGAIN, at(7, 1, 2), at(7, 1, 2), both, load=1, timed=True),
            _task(TaskKind.CONDITION, at(6, 30), at(7, 1), (rice,)),
            _task(TaskKind.PACK, at(7, 1), at(7, 1), ()),
        )


def _task(
    kind: TaskKind,
    starts: datetime,
    ends: datetime,
    components: tuple[ComponentSums, ...],
    *,
    grams: float | None = None,
    load: int = 0,
    timed: bool = False,
) -> stores.Task:
    return stores.Task(
        kind=kind,
        starts=starts,
        ends=ends,
        whole_day=not timed,
        components=components,
        grams=grams,
        load=load,
    )


def _leg(number: int, stop: int | None, goal: int | None, water: journey.LegWater, **more: object) -> journey.Leg:
    known: dict[str, object] = {
        "first_day": number,
        "last_day": number + 1,
        "stops": (QUAY if stop is None else BAY,),
        "from_other_ml": 0,
        "fills": None,
        "treated_by": None,
        "treated_ml": 0,
        "wait_min": 0,
        "short_ml": 0,
    }
    return journey.Leg(number=number, from_stop=stop, to_stop=goal, water=water, **{**known, **more})  # type: ignore[arg-type]  # keywords by name


JOURNEY = journey.Journey(
    legs=(
        _leg(
            1,
            None,
            BAY,
            journey.LegWater(
                in_food_ml=520,
                pot_ml=0,
                spare_ml=10,
                drinking_ml=6000,
                washing_ml=1000,
                spare_day_ml=400,
                margin_ml=800,
            ),
            short_ml=1730,
        ),
        _leg(
            2,
            BAY,
            None,
            journey.LegWater(in_food_ml=400, boiled_off_ml=30, drinking_ml=3000, margin_ml=350),
            fills=Fills.TREATED,
            treated_by=WaterTreatment.FILTER_AND_CHLORINE,
            treated_ml=3780,
            wait_min=30,
            from_other_ml=900,
            short_ml=None,
        ),
    ),
    stops=(
        journey.StopWater(
            stop=BAY,
            meals=journey.LegWater(in_food_ml=400, heater_ml=100, washing_ml=500),
            on_the_spot=True,
            from_other=None,
            from_other_ml=0,
            treated_ml=900,
            wait_min=30,
        ),
    ),
    fuels=(
        journey.Fuel(
            fuel="gas mix",
            stoves=("burner",),
            stops=(
                journey.StopFuel(stop=QUAY, fuel="gas mix", cooking_g=9, treating_g=0, melting_g=0),
                journey.StopFuel(stop=BAY, fuel="gas mix", cooking_g=6, treating_g=4, melting_g=0),
                journey.StopFuel(stop=None, fuel="gas mix", cooking_g=6, treating_g=0, melting_g=0),
            ),
            margin_g=4,
            in_hand_g=(20.5,),
            new_g=(100,),
        ),
    ),
    clock=(
        journey.MealClock(
            number=1,
            start_at=at(7, 2, 18, 10),
            ready_at=at(7, 2, 18, 25),
            eat_at=at(7, 2, 18, 30),
            waits_min=5,
            soaks=(journey.SoakStart(step=0, at=at(7, 2, 18, 15), minutes=8),),
            after=None,
        ),
    ),
    days=tuple(
        journey.DayLoad(
            day=day,
            on=date(2027, 7, day + 1),
            food_g=eaten,
            carried_g=carried,
            volume_ml=1234.5,
            unmeasured=day == 1,
        )
        for day, eaten, carried in ((1, 131, 759), (2, 325.5, 628), (3, 50, 302.5))
    ),
    bearing=(
        journey.Bearing(name="Ada", grams=159, packs=("T1", "1.1", "2.1", "2.1.1")),
        journey.Bearing(name="Bo", grams=400, packs=("M1", "M2", "M3", "4.1", "M4")),
    ),
    fed=tuple(
        journey.Fed(
            name=name,
            day=day,
            energy_kcal=energy,
            protein_g=20.04,
            salt_g=1.5,
            food_g=100,
            complete=name == "Ada",
        )
        for name, day, energy in (("Ada", 1, 420), ("Ada", 2, 911.6), ("Bo", 1, 500), ("Bo", 2, 500))
    ),
    kit=(journey.KitItem(what="mug", count=2, why="one each"),),
    rubbish=journey.Rubbish(packs=10, heaters=0, cartridges=1, by_day=MappingProxyType({1: 2, 2: 4})),
)
