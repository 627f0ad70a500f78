"""A small book of three trips, and the same with one change.

Two trips are planned and share a larder: the coast, whose egg comes from the first of two jars and whose 420 g of rice
empty the pouch of 320 g, and a week later the lake, which finds 60 g left in that jar of egg and no rice. A third trip
is gone.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from tests.sums.store_of import EGG, RICE, run_of
from tests.sums.trip_of import DISHES, Travelled, dish_text, trips_of

COAST = """\
starts: 2027-06-26
people: [Ada: {appetite: 100 %}, Bo: {carries: 0 %}]
stoves: [burner]
pots: [pot, pan]
drinking: 3 L
on the move: [raisins: 20 g each]
spare day: [supper: rice]
stops:
  - place: the shore
    day: 1
    meals: [supper: stew, breakfast: omelette]
  - place: the hut
    day: 2
    height: 500 m
    air: 8 °C
    water: 6 °C
    fills: tap
    meals: [supper: {dish: pasta, for: [Ada, Bo]}]
  - place: the bay
    day: 3
    meals: [supper: rice, lunch: heated rice]
"""
"""Meals 1 stew, 2 omelette, 3 pasta, 4 rice, 5 heated rice on day 4, 6 rice in reserve for day 5."""
LAKE = """\
starts: 2027-07-04
people: [Cai, Dee]
stoves: [burner]
pots: [pot]
stops: [{place: the lake, day: 1, meals: [supper: rice, breakfast: omelette]}]
"""
GONE = """\
starts: 2027-05-01
stands: gone
people: [Ada, Bo]
stoves: [burner]
pots: [pot]
stops: [{place: the shore, day: 1, meals: [supper: stew, lunch: rice]}]
"""
MORE_DISHES = {
    "heated-rice": dish_text(
        "rice: 50 g each",
        steps="{moisten: rice, with: 200 mL cold water}; {warm: rice, on: ration heater}",
        meal="lunch",
    ),
    "porridge": dish_text("rice: 50 g each", steps="moisten: rice"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """The texts of a book."""

    trips: Mapping[str, str]
    dishes: Mapping[str, str]
    runs: tuple[str, ...]


BOOK = Written(
    trips={"coast": COAST, "lake": LAKE, "gone": GONE},
    dishes={**DISHES, **MORE_DISHES},
    runs=(run_of(EGG), run_of(RICE)),
)


def trip(id: str, old: str, new: str) -> Written:
    """Give the book with other words in one trip."""
    return replace(BOOK, trips={**BOOK.trips, id: _reworded(BOOK.trips[id], old, new)})


def dish(id: str, old: str, new: str) -> Written:
    """Give the book with other words in one dish."""
    return replace(BOOK, dishes={**BOOK.dishes, id: _reworded(BOOK.dishes[id], old, new)})


def _reworded(text: str, old: str, new: str) -> str:
    assert text.count(old) == 1
    return text.replace(old, new)


def worked_out(book: Written) -> Travelled:
    """Work out all trips of a book."""
    return trips_of(book.trips, dishes=book.dishes, runs=book.runs)


@cache
def before() -> Travelled:
    """Work out the trips of the book as it was before the change."""
    return worked_out(BOOK)
