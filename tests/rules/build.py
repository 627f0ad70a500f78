"""Cases for the rules: small files, read and worked out by the real reader and the real sums.

A case is a YAML file with some of these keys:

    why:         what it shows, one sentence
    book:        keys of book.yaml that it writes anew (`usual conditions` is merged)
    components:  components that it adds to those of larder.yaml, or writes anew
    component:   the component that the rule is held against, or
    dish:        the dish; `parts`, `steps` and what else it says; name, meal and servings are filled in, or
    run:         a drying run, called `run`; the day it was loaded and its dryer, `freezer`, are filled in
    draws:       what was drawn from it: files of draws, one to an item; with `on` the larder is held against the rule
    on:          the day on which the larder is looked at
    trip:        a trip, called `trip`; name, start, people (Ann and Ben), stoves and pots are filled in; with it
    earlier:     another trip of the same book, with the same filled in
    dishes:      its dishes by id; name, meal, servings and `tried` are filled in
    legs, clock, fed:  what the sums of its journey hand on, made by hand: see `tests/rules/journeys.py`
    says:        words that the finding must say (only in a case that fires)
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import TypeAlias

import yaml
from tests.rules.journeys import with_journey

from packlarder.book.book import Book
from packlarder.book.household import Household
from packlarder.book.read import read_book
from packlarder.faults import has_errors
from packlarder.reckon.batch_records import RunSums
from packlarder.reckon.components import reckon_components
from packlarder.reckon.dish import usual_conditions, work_out
from packlarder.reckon.larder import reckon_larder
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import ComponentSums, DishPlan, DishSums
from packlarder.reckon.store import reckon_store
from packlarder.reckon.trip.records import TripSums
from packlarder.safety import (
    RULES,
    ComponentRule,
    DishRule,
    Finding,
    LarderRule,
    Rule,
    RunRule,
    TripRule,
    check_component,
    check_dish,
    check_larder,
    check_run,
    check_trip,
)
from packlarder.safety.case import ComponentCase, DishCase
from packlarder.safety.hit import Hit
from packlarder.safety.store_case import LarderCase, RunCase
from packlarder.safety.trip_case import TripCase, eaten_on
from packlarder.safety.whole import CheckedBook, at_home, check_book

HERE = Path(__file__).parent
CASES = HERE / "cases"
DISH, RUN, TRIP = "dish", "run", "trip"
TRIPS = (TRIP, "earlier")
STARTS = "2027-06-26"
KNOWN_ON = date(2027, 3, 1)
"""So long before a trip that there is time to dry for it."""
LOADED = "2027-03-12"
FUEL_MARGIN = 0.2

Tree: TypeAlias = Mapping[str, "Tree | list[Tree] | str"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A case, worked out: a component, a dish with its sums, a drying run, the larder on a day, or a trip."""

    household: Household
    component: ComponentSums | None = None
    plan: DishPlan | None = None
    sums: DishSums | None = None
    run: RunSums | None = None
    larder: LarderSums | None = None
    trip: TripSums | None = None
    book: CheckedBook | None = None
    says: str = ""

    def findings(self) -> tuple[Finding, ...]:
        """Hold it against all rules."""
        if self.component is not None:
            return check_component(self.component, self.household)
        if self.larder is not None:
            return check_larder(self.larder, self.household)
        if self.run is not None:
            return check_run(self.run, self.household)
        if self.trip is not None:
            assert self.book is not None
            return check_trip(self.trip, self.household, at_home(self.book.dishes), self.eaten_before())
        assert self.plan is not None
        return check_dish(DishCase(self.plan, self.sums, self.household))

    def hits(self, rule: Rule) -> list[Hit]:
        """Hold it against one rule."""
        if isinstance(rule, ComponentRule):
            assert self.component is not None, f"{rule.id} is about components: the case must name one"
            return list(rule.check(ComponentCase(self.component, self.household)))
        if isinstance(rule, RunRule):
            assert self.run is not None, f"{rule.id} is about drying runs: the case must hold one"
            return list(rule.check(RunCase(self.run, self.household)))
        if isinstance(rule, LarderRule):
            assert self.larder is not None, f"{rule.id} is about the larder: the case must say on what day"
            return list(rule.check(LarderCase(self.larder, self.household)))
        if isinstance(rule, TripRule):
            assert self.trip is not None, f"{rule.id} is about trips: the case must hold one"
            return list(rule.check(TripCase(self.trip, self.household, self.eaten_before())))
        assert isinstance(rule, DishRule)
        assert self.plan is not None, f"{rule.id} is about dishes: the case must hold one"
        return list(rule.check(DishCase(self.plan, self.sums, self.household)))

    def eaten_before(self) -> frozenset[str]:
        """Give what was eaten on trips of the book that are gone."""
        return frozenset() if self.book is None else eaten_on(one.sums for one in self.book.trips.values())

    def fired(self) -> set[str]:
        """Give the ids of the rules that apply."""
        return {finding.rule.id for finding in self.findings()}


def read_case(path: Path) -> Case:
    """Read and work out the case in a file."""
    return build(path.read_text("utf-8"))


def build(text: str) -> Case:
    """Work out a case from its text; fails if its files have faults that the reader or the planner calls errors."""
    written = _load(text)
    book = _book(written)
    components, faults = reckon_components(book)
    assert not has_errors(faults), faults
    says = str(written.get("says", ""))
    if "component" in written:
        return Case(household=book.household, component=components[str(written["component"])], says=says)
    if "run" in written:
        return _stored(book, str(written.get("on", "")), says)
    if "trip" in written:
        return _travelled(book, written, says)
    plan, faults = plan_dish(book, components, DISH)
    assert plan is not None, faults
    assert not has_errors(faults), faults
    sums = work_out(plan, plan.model.serves, usual_conditions(book.household), FUEL_MARGIN)
    return Case(household=book.household, plan=plan, sums=sums, says=says)


def _stored(book: Book, on: str, says: str) -> Case:
    """Work out a drying run, and the larder if there is a day to look at it; wet food is no slip of a case."""
    store = reckon_store(book, date.fromisoformat(on) if on else date.max)
    slips = [fault for fault in store.faults if fault.code != "not-dry-yet"]
    assert not slips, slips
    larder = None
    if on:
        larder, faults = reckon_larder(book, store.components, store.runs, date.fromisoformat(on))
        assert not has_errors(faults), faults
    return Case(household=book.household, run=store.runs[RUN], larder=larder, says=says)


def _travelled(book: Book, written: Tree, says: str) -> Case:
    """Work out a trip in a book that is checked as a whole; errors are the rules' own."""
    checked = check_book(book, KNOWN_ON)
    slips = [fault for fault in checked.faults if fault.severity == "error" and fault.code not in _OWN]
    assert not slips, slips
    sums = with_journey(checked.trips[TRIP].sums, written)
    return Case(household=book.household, trip=sums, book=checked, says=says)


_OWN = frozenset(rule.id for rule in RULES)


def check(text: str) -> CheckedBook:
    """Check the book of a case as a whole, from its text; what is wrong in it stands among its faults."""
    return check_book(_book(_load(text)), date.max)


def _book(written: Tree) -> Book:
    components = {**_larder(), **_mapping(written, "components")}
    files = {"book.yaml": _bytes(_household(_mapping(written, "book")))}
    files |= {f"components/{id}.yaml": _bytes(one) for id, one in components.items()}
    if "dish" in written:
        dish = {"name": "Dish", "meal": "supper", "serves": "2", **_mapping(written, "dish")}
        files[f"dishes/{DISH}.yaml"] = _bytes(dish)
    if "trip" in written:
        trip = {
            "name": "Trip",
            "starts": STARTS,
            "people": ["Ann", "Ben"],
            "stoves": ["burner"],
            "pots": ["pot", "pan"],
        }
        files |= {f"trips/{id}.yaml": _bytes({**trip, **_mapping(written, id)}) for id in TRIPS if id in written}
        for id, one in _mapping(written, "dishes").items():
            assert isinstance(one, Mapping)
            made = {
                "name": id.capitalize().replace("-", " "),
                "meal": "supper",
                "serves": "2",
                "tried": "at home",
                **one,
            }
            files[f"dishes/{id}.yaml"] = _bytes({key: value for key, value in made.items() if value})
    if "run" in written:
        run = {"loaded": LOADED, "dryer": "freezer", **_mapping(written, "run")}
        files[f"batches/{RUN}.yaml"] = _bytes({key: value for key, value in run.items() if value})
    draws = written.get("draws", [])
    files |= {f"draws/{number:02}.yaml": _bytes(one) for number, one in enumerate(draws)}
    read = read_book(files)
    assert read.book is not None, read.faults
    assert not has_errors(read.faults), read.faults
    return read.book


def _household(own: Tree) -> Tree:
    base = _load((HERE / "book.yaml").read_text("utf-8"))
    usual = {**_mapping(base, "usual conditions"), **_mapping(own, "usual conditions")}
    return {**base, **own, "usual conditions": usual}


@cache
def _larder() -> Tree:
    return _load((HERE / "larder.yaml").read_text("utf-8"))


def _mapping(tree: Tree, key: str) -> Tree:
    found = tree.get(key, {})
    assert isinstance(found, Mapping), f"`{key}` must hold keys"
    return found


def _load(text: str) -> Tree:
    loaded = yaml.load(text, Loader=yaml.BaseLoader)  # noqa: S506 - the plainest loader: every scalar is text
    assert isinstance(loaded, dict)
    return loaded


def _bytes(tree: object) -> bytes:
    return yaml.safe_dump(tree, allow_unicode=True, sort_keys=False).encode()


def case_files() -> list[Path]:
    """Give the files of all cases."""
    return sorted(CASES.rglob("*.yaml"))
