"""A small trip made of a YAML text that stands in the test, and its journey, by the real reader and the real sums.

The kitchen is that of `book_of`: sea level, air and water of 10 °C, a gas burner that brings half of its heat into the
pot, a pot of 2 L, a pan, fuel margin 15 %. The dishes are for one, and their waters are round.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from textwrap import dedent

from tests.sums.book_of import KITCHEN, component_files

from packlarder.book.book import Book
from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.reckon.components import reckon_components
from packlarder.reckon.dish import printed_g
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import DishPlan
from packlarder.reckon.trip.journey import Fed, Fuel, Journey, Leg, MealClock, StopWater
from packlarder.reckon.trip.meals import plan_trip
from packlarder.reckon.trip.records import PlannedTrip, TripItem, TripMeal, TripPack
from packlarder.reckon.trip.travel import travel

DISHES: Mapping[str, str] = {
    "rice": """\
        meal: supper
        parts: [{rice: 100 g}]
        steps: [moisten: rice]
        """,
    "noodles": """\
        meal: supper
        parts: [{pasta: 100 g}]
        steps: [{boil: pasta, in: 500 mL, for: 10 min}]
        """,
    "beef": """\
        meal: supper
        parts: [{beef: 50 g}]
        steps:
          - soak: beef
          - drain: away
          - {fry: beef, for: 5 min, to: 74 °C}
        """,
    "heated rice": """\
        meal: lunch
        parts: [{rice: 100 g}]
        steps:
          - {moisten: rice, with: 200 mL cold water}
          - {warm: rice, on: ration heater}
        """,
    "milk": """\
        meal: drink
        parts: [{milk powder: 20 g}]
        steps: [mix: milk powder]
        """,
    "a pinch": """\
        meal: snack
        parts: [{salt: 5 g}]
        steps: [Eat.]
        """,
}
"""Rice takes 200 mL boiling water, noodles 500 mL in the pot, beef 200 mL hot of which 125 mL are poured away, milk 180
mL cold. The heated rice takes 200 mL cold, and 60 mL for its heater. A pinch takes nothing."""
HEAD = """\
name: Trip
starts: 2027-06-26
people: [Ada, Bo]
stoves: [burner]
pots: [pot, pan]
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Travelled:
    """A trip with its journey."""

    book: Book
    planned: PlannedTrip
    packs: tuple[TripPack, ...]
    journey: Journey

    def leg(self, number: int) -> Leg:
        """Give a leg by its number."""
        return self.journey.legs[number - 1]

    def stop(self, index: int) -> StopWater:
        """Give the water of a stop."""
        return self.journey.stops[index]

    def meal(self, number: int) -> TripMeal:
        """Give a meal by its number."""
        return self.planned.by_number[number]

    def clock(self, number: int) -> MealClock:
        """Give the clock of a meal."""
        return self.journey.clock[number - 1]

    @property
    def fuel(self) -> Fuel:
        """Give the only fuel."""
        (only,) = self.journey.fuels
        return only

    def fed(self, name: str, day: int) -> Fed:
        """Give what somebody eats on a day."""
        return next(one for one in self.journey.fed if (one.name, one.day) == (name, day))

    @property
    def kit(self) -> Mapping[str, int]:
        """Give what comes along, and how many of it."""
        return {str(item.what): item.count for item in self.journey.kit}


def journey_of(
    stops: str,
    *,
    more: str = "",
    dishes: Mapping[str, str] = DISHES,
    bearer: str = "Ada",
    kitchen: str = KITCHEN,
) -> Travelled:
    """Work out a trip of two from its stops, one to a line: `{place: A, day: 1, meals: [supper: rice]}`.

    `more` are further keys of the trip; `people` and the like may be others than those of `HEAD`. Each dish has one
    pack, which one person bears.
    """
    own = f"{dedent(more).strip()}\n" if more else ""
    given = {line.split(":")[0] for line in own.splitlines() if line[:1].isalpha()}
    head = "".join(f"{line}\n" for line in HEAD.splitlines() if line.split(":")[0] not in given)
    lines = "".join(f"  - {line.strip()}\n" for line in stops.strip().splitlines())
    return written(f"{head}{own}stops:\n{lines}", dishes, bearer, kitchen)


def written(trip: str, dishes: Mapping[str, str], bearer: str, kitchen: str) -> Travelled:
    """Read and work out a trip as it stands in its file."""
    files = {"book.yaml": kitchen.encode(), "trips/trip.yaml": trip.encode(), **component_files({})}
    for name, text in dishes.items():
        told = f"name: {name.capitalize()}\nserves: 1\n{dedent(text)}"
        files[f"dishes/{name.replace(' ', '-')}.yaml"] = told.encode()
    read = read_book(files)
    assert read.book is not None, read.faults
    assert not read.faults, [(fault.place, fault.message, fault.help) for fault in read.faults]
    book = read.book
    components, _ = reckon_components(book)

    def plan_of(id: str) -> DishPlan | None:
        plan, wrong = plan_dish(book, components, id)
        assert not has_errors(wrong), wrong
        return plan

    planned, wrong = plan_trip(book, components, plan_of, "trip")
    assert planned is not None, [(fault.place, fault.message) for fault in wrong]
    packs = packs_of(planned, bearer)
    return Travelled(book=book, planned=planned, packs=packs, journey=travel(planned, packs, book.household))


def packs_of(planned: PlannedTrip, bearer: str) -> tuple[TripPack, ...]:
    """Pack each dish by itself, and the food on the move by itself."""
    dishes = [
        TripPack(
            mark=f"{meal.number}.1",
            meal=meal.number,
            day=meal.day,
            on=meal.on,
            called=meal.plan.model.name,
            items=tuple(
                TripItem(component=part.component, called=part.called, grams=printed_g(sums.dry_g), number=meal.number)
                for part, sums in zip(meal.plan.parts, meal.sums.parts, strict=True)
            ),
            bearer=bearer,
            raw=False,
            sachet=False,
            spare=meal.spare,
        )
        for meal in planned.meals
    ]
    moved = [
        TripPack(
            mark=f"M{ration.day}",
            meal=None,
            day=ration.day,
            on=ration.on,
            called=ration.component.model.name,
            items=(TripItem(component=ration.component, called="", grams=ration.dry_g, number=0),),
            bearer=bearer,
            raw=False,
            sachet=False,
            spare=ration.spare,
        )
        for ration in planned.on_the_move
    ]
    return (*dishes, *moved)
