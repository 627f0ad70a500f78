"""A trip as far as its meals, from a YAML text that stands in the test, by the real reader and the real sums.

The kitchen is that of `book_of`: sea level, air and water of 10 °C; a gas burner that brings half of its heat into the
pot, a spirit burner; a pot of 2 L, a little pot of 1 L, a pan. The dishes are for one.
"""

from collections.abc import Mapping
from textwrap import dedent

from tests.sums.book_of import KITCHEN, Told, component_files, told

from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.reckon.components import reckon_components
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import DishPlan
from packlarder.reckon.trip.meals import plan_trip
from packlarder.reckon.trip.records import PlannedTrip

DISHES: Mapping[str, str] = {
    "rice": "meal: supper\nparts: [{rice: 100 g}]\nsteps: [moisten: rice]",
    "noodles": "meal: supper\nparts: [{pasta: 100 g}]\nsteps: [{boil: pasta, in: 500 mL, for: 10 min}]",
    "fried beef": """\
        meal: supper
        pot: pan
        stove: spirit
        parts: [{beef: 50 g}]
        steps:
          - soak: beef
          - drain: away
          - {fry: beef, for: 5 min, to: 74 °C}
        """,
    "cold rice": "meal: lunch\nparts: [{rice: 100 g}]\nsteps: [{moisten: rice, with: 200 mL cold water}]",
    "milk": "meal: drink\nparts: [{milk powder: 20 g}]\nsteps: [mix: milk powder]",
}
HEAD: Mapping[str, str] = {
    "name": "Trip",
    "starts": "2027-06-26",
    "people": "[Ada, Bo]",
    "stoves": "[burner, spirit]",
    "pots": "[pot, pan]",
}
RAISINS = "was: raisins, seedless\ncontains: []\ndried: bought dry\nform: berries\n"


def trip_text(stops: str, **keys: str) -> str:
    """Write a trip: its stops as a list, and further keys (an underscore is a blank) beside those filled in."""
    head = {**HEAD, **{key.replace("_", " "): value for key, value in keys.items()}}
    return "".join(f"{key}: {value}\n" for key, value in head.items()) + f"stops:\n{dedent(stops)}"


def menu_of(stops: str, **keys: str) -> PlannedTrip:
    """Give a trip with its meals; fails if anything is wrong in it."""
    planned, faults = planned_of(trip_text(stops, **keys))
    assert not faults, faults
    assert planned is not None
    return planned


def faults_in(stops: str, **keys: str) -> tuple[Told, ...]:
    """Give what is wrong in a trip, as its author sees it."""
    return planned_of(trip_text(stops, **keys))[1]


def planned_of(text: str, spoilt: Mapping[str, bytes] | None = None) -> tuple[PlannedTrip | None, tuple[Told, ...]]:
    """Read and plan a trip; give it, or None, and what is wrong in it; `spoilt` are files to replace."""
    files = {"book.yaml": KITCHEN.encode(), "trips/trip.yaml": text.encode()}
    files |= component_files({"raisins": RAISINS})
    for name, dish in DISHES.items():
        files[f"dishes/{name.replace(' ', '-')}.yaml"] = f"name: {name}\nserves: 1\n{dedent(dish)}".encode()
    files |= spoilt or {}
    read = read_book(files)
    assert read.book is not None, read.faults
    wrong = tuple(told(files, fault) for fault in read.faults)
    if has_errors(read.faults) and not spoilt:
        return None, wrong
    book = read.book
    components, faults = reckon_components(book)
    assert not faults, faults
    plans: dict[str, DishPlan | None] = {id: plan_dish(book, components, id)[0] for id in book.dishes}
    planned, faults = plan_trip(book, components, plans.get, "trip")
    return planned, (*wrong, *(told(files, fault) for fault in faults))
