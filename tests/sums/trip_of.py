"""Trips worked out by the real reader and the real sums, from YAML texts that stand in the test.

Kitchen and store are those of `book_of` and `store_of`. Dishes are round: two people eat two servings of each, so a
meal weighs what its text says. Stew 120 g and 2 g of salt; omelette 60 g (RAW) and 9 g of oil; pasta 200 g; rice 160 g;
pancakes 200 g of batter (RAW), a mix of a quarter egg powder, a quarter milk powder and half flour; salad 160 g of rice
with a pack of 50 g of pasta in it, and 10 g of milk powder apart.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from textwrap import dedent, indent

from tests.sums.book_of import KITCHEN, Told, component_files, packs_of, told
from tests.sums.store_of import RUN, STORE

from packlarder.book.book import Book
from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.reckon.larder import reckon_larder
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.store import reckon_store
from packlarder.reckon.trip.journey import Fed, Fuel, Journey, Leg, MealClock, StopWater
from packlarder.reckon.trip.records import TripMeal, TripPack, TripSums
from packlarder.reckon.trip.stores import Fill, Shortfall
from packlarder.reckon.trip.trip import reckon_trips

TRIP = "trip"
ON = date(2027, 6, 1)
STARTS = "2027-06-26"


def dish_text(*parts: str, steps: str, serves: int = 2, meal: str = "supper", packs: tuple[str, ...] = ()) -> str:
    """Write a dish: parts in YAML's short form (`beef: 100 g`), steps parted by semicolons, packs in brackets."""
    items = "".join(f"  - {one}\n" for one in parts)
    to_do = "".join(f"  - {one.strip()}\n" for one in steps.split(";"))
    end = packs_of(*packs) if packs else ""
    return f"serves: {serves}\nmeal: {meal}\nparts:\n{items}steps:\n{to_do}{end}"


DISHES: Mapping[str, str] = {
    "stew": dish_text(
        "beef: 100 g",
        "onion: 20 g",
        "salt: 2 g",
        steps="soak: [beef, onion]; {boil: [beef, onion, salt], in: 300 mL, for: 10 min}",
    ),
    "omelette": dish_text(
        "egg powder: 50 g",
        "milk powder: 10 g",
        "oil: 10 mL",
        steps="mix: egg powder; mix: milk powder; {fry: [egg powder, milk powder, oil], for: 5 min, to: 71 °C}",
        meal="breakfast",
    ),
    "pasta": dish_text("pasta: 100 g each", steps="{boil: pasta, in: 800 mL, for: 10 min}"),
    "pancakes": dish_text("batter: 100 g each", steps="mix: batter; {fry: batter, for: 10 min, to: 71 °C}"),
    "rice": dish_text("rice: 80 g each", steps="moisten: rice", meal="lunch"),
    "salad": dish_text(
        "rice: 80 g each",
        "pasta: 50 g",
        "milk powder: 10 g",
        steps="moisten: rice; {stir in: [rice, pasta, milk powder]}",
        packs=("[rice, [pasta]]", "[milk powder]"),
    ),
}
"""Dishes that a trip may name without writing them out; `name` is filled in."""
COMPONENTS: Mapping[str, str] = {
    "batter": """\
        made of: [{egg powder: 50 g}, {milk powder: 50 g}, {"flour, wheat, white": 100 g}]
        contains: [egg, milk, wheat]
        form: powder
        bring back: {mix: 100 g, with: 150 mL cold water}
        """,
    "raisins": "was: raisins, seedless\ncontains: []\ndried: bought dry\nform: berries",
}
"""What a trip may name beside the components of `book_of.LARDER`: a mix, and something that is ready to eat."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Travelled:
    """A book with its trips worked out, by id; `faults` are empty unless some were expected.

    Most tests have one trip: what is not asked of another is of that one. It shows itself as its trips are `written`,
    for all sums together fill many pages.
    """

    written: tuple[str, ...]
    book: Book = field(repr=False)
    components: Mapping[str, ComponentSums] = field(repr=False)
    larder: LarderSums = field(repr=False)
    trips: Mapping[str, TripSums] = field(repr=False)
    faults: tuple[Told, ...]

    @property
    def trip(self) -> TripSums:
        """Give the one trip, or the first."""
        return self.trips[TRIP]

    @property
    def codes(self) -> list[str]:
        """Give the codes of the faults."""
        return [fault.code for fault in self.faults]

    @property
    def journey(self) -> Journey:
        """Give the journey."""
        return self.trip.journey

    @property
    def fuel(self) -> Fuel:
        """Give the only fuel."""
        (only,) = self.journey.fuels
        return only

    @property
    def kit(self) -> Mapping[str, int]:
        """Give what comes along, and how many of it."""
        return {str(item.what): item.count for item in self.journey.kit}

    def meal(self, number: int) -> TripMeal:
        """Give a meal by its number."""
        return self.trip.by_number[number]

    def leg(self, number: int) -> Leg:
        """Give a leg by its number."""
        return self.journey.legs[number - 1]

    def stop(self, index: int) -> StopWater:
        """Give the water of a stop."""
        return self.journey.stops[index]

    def clock(self, number: int) -> MealClock:
        """Give the clock of a meal."""
        return self.journey.clock[number - 1]

    def fed(self, name: str, day: int) -> Fed:
        """Give what somebody eats on a day."""
        return next(one for one in self.journey.fed if (one.name, one.day) == (name, day))

    def pack(self, mark: str, trip: str = TRIP) -> TripPack:
        """Give a pack by its mark."""
        return next(pack for pack in self.trips[trip].packs if pack.mark == mark)

    def fill(self, component: str, trip: str = TRIP) -> Fill:
        """Give all that a trip wants of one component."""
        return next(fill for fill in self.trips[trip].stores.fills if fill.component.id == component)

    def lacking(self, component: str, trip: str = TRIP) -> Shortfall:
        """Give what the larder lacks of one component."""
        return next(one for one in self.trips[trip].stores.shortfalls if one.component.id == component)


def trip_text(stops: str, *, starts: str = STARTS, people: str = "[Ada, Bo]", more: str = "") -> str:
    """Write a trip: `stops` is a list in YAML, indented as it likes, `more` are further keys."""
    head = f"starts: {starts}\npeople: {people}\nstoves: [burner]\npots: [pot, pan]\n"
    return f"{head}{dedent(more)}\nstops:\n{indent(dedent(stops).strip(), '  ')}\n"


def one_stop(*meals: str, place: str = "the shore", day: int = 1, more: str = "") -> str:
    """Write a stop; each meal as `supper: stew`, `more` further keys in YAML's short form (`fills: tap`)."""
    keys = f"place: {place}, day: {day}{', ' if more else ''}{more}"
    return f"- {{{keys}, meals: [{', '.join(f'{{{meal}}}' for meal in meals)}]}}\n"


def trip_of(
    stops: str, *, more: str = "", people: str = "[Ada, Bo]", starts: str = STARTS, **others: object
) -> Travelled:
    """Work out one trip, called `trip`; `others` are those of `trips_of`."""
    text = trip_text(stops, starts=starts, people=people, more=more)
    return trips_of({TRIP: text}, **others)  # type: ignore[arg-type]  # handed on as they came


def trips_of(
    trips: Mapping[str, str],
    *,
    dishes: Mapping[str, str] | None = None,
    runs: tuple[str, ...] = (),
    draws: tuple[str, ...] = (),
    store: str = STORE,
    larder: str = "",
    on: date = ON,
    fails: bool | None = False,
    components: Mapping[str, str] | None = None,
    kitchen: str = KITCHEN,
    instead: Mapping[str, bytes] | None = None,
) -> Travelled:
    """Work out trips on a day, with `DISHES` and further ones, drying runs (called `run`, `run-2`, ...) and draws.

    `store` has the household's dryers and containers, `larder` keys of its larder, `components` further components by
    id; `instead` are files by their paths, which take the place of others. Fails if there are faults, unless `fails`
    expects them; None takes what comes.
    """
    kept = f"larder:\n{indent(dedent(larder), '  ')}\n" if larder else ""
    run_ids = [RUN, *(f"{RUN}-{number}" for number in range(2, len(runs) + 1))]
    files = {"book.yaml": f"{kitchen}{store}{kept}".encode(), **component_files({**COMPONENTS, **(components or {})})}
    files |= {f"batches/{id}.yaml": run.encode() for id, run in zip(run_ids, runs, strict=False)}
    files |= {f"draws/{number:03}.yaml": text.encode() for number, text in enumerate(draws)}
    files |= {f"dishes/{id}.yaml": _named(id, text) for id, text in {**DISHES, **(dishes or {})}.items()}
    files |= {f"trips/{id}.yaml": _named(id, text) for id, text in trips.items()}
    return _worked_out({**files, **(instead or {})}, on, fails)


def _named(id: str, text: str) -> bytes:
    own = dedent(text)
    return (own if own.startswith("name:") else f"name: {id.replace('-', ' ').capitalize()}\n{own}").encode()


def _worked_out(files: Mapping[str, bytes], on: date, fails: bool | None) -> Travelled:
    read = read_book(files)
    assert read.book is not None, read.faults
    store = reckon_store(read.book, on)
    larder, _ = reckon_larder(read.book, store.components, store.runs, on)
    plans = {id: plan_dish(read.book, store.components, id) for id in read.book.dishes}
    wrong = [fault for plan, faults in plans.values() for fault in faults if has_errors([fault]) or plan is None]
    found = reckon_trips(read.book, store.components, lambda id: plans[id][0], larder, on)
    faults = tuple(told(files, fault) for fault in (*read.faults, *wrong, *found.faults))
    assert fails in (None, bool(faults)), faults or "faults were expected, and there are none"
    return Travelled(
        written=tuple(text.decode() for path, text in files.items() if path.startswith("trips/")),
        book=read.book,
        components=store.components,
        larder=larder,
        trips=found.trips,
        faults=faults,
    )
