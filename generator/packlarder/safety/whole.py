"""A whole book, worked out and held against every rule."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType

from packlarder.book.book import Book
from packlarder.faults import Fault
from packlarder.lazily import Kept
from packlarder.reckon.batch_records import RunSums
from packlarder.reckon.dish import usual_conditions, work_out_each
from packlarder.reckon.larder import reckon_larder
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.learnt import Learnt
from packlarder.reckon.pack_slips import pack_slips
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import ComponentSums, DishPlan, DishSums
from packlarder.reckon.settled import Settled, settle
from packlarder.reckon.store import StoreSums, reckon_store
from packlarder.reckon.trip.records import TripSums
from packlarder.reckon.trip.trip import reckon_trips
from packlarder.reckon.water_slips import component_slips, water_slips
from packlarder.safety.case import DishCase
from packlarder.safety.rule import Finding
from packlarder.safety.rules import check_component, check_dish, check_larder, check_run, check_trip, faults_of
from packlarder.safety.trip_case import eaten_on
from packlarder.safety.trip_dishes import AtHome, AtHomeOf


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedDish:
    """A dish with its sums at the usual servings, what other sums of it go on from, and what the rules found."""

    plan: DishPlan
    settled: Settled
    usual: DishSums
    case: DishCase
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DishFaults:
    """What is wrong with a dish, by itself and against the rules; `planned` tells whether it could be worked out."""

    slips: tuple[Fault, ...]
    against_rules: tuple[Fault, ...]
    planned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedStore:
    """Drying runs, what they taught, and the larder on a day, with what the rules found; mappings go by id."""

    runs: Mapping[str, RunSums]
    learnt: Mapping[str, Learnt]
    larder: LarderSums
    run_findings: Mapping[str, tuple[Finding, ...]]
    larder_findings: tuple[Finding, ...]
    faults: tuple[Fault, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedComponents:
    """The components of a book, which all its dishes build on, and what is stored of them; mappings go by id."""

    book: Book
    store: CheckedStore
    sums: Mapping[str, ComponentSums]
    findings: Mapping[str, tuple[Finding, ...]]
    slips: tuple[Fault, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedDishes:
    """Some dishes of a book: those that could be worked out, and what is wrong with each. Mappings go by id."""

    dishes: Mapping[str, CheckedDish]
    faults: Mapping[str, DishFaults]


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedTrip:
    """A trip with its sums, and what the rules found."""

    sums: TripSums
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedTrips:
    """The trips that could be worked out, by id, and what is wrong with all of them, by themselves and by the rules."""

    trips: Mapping[str, CheckedTrip]
    faults: tuple[Fault, ...]


NO_TRIPS = CheckedTrips(trips=MappingProxyType({}), faults=())


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedBook:
    """A book with its sums at the usual servings, what the rules found, and all that is wrong. Mappings go by id.

    What could not be worked out is missing from the mappings, and `faults` says why.
    """

    book: Book
    store: CheckedStore
    components: Mapping[str, ComponentSums]
    component_findings: Mapping[str, tuple[Finding, ...]]
    dishes: Mapping[str, CheckedDish]
    trips: Mapping[str, CheckedTrip]
    faults: tuple[Fault, ...]


def check_book(book: Book, on: date) -> CheckedBook:
    """Work out everything in a book for a day and hold it against the rules."""
    components = check_components(book, on)
    checked = check_dishes(components, book.dishes)
    return whole_book(components, checked.dishes, checked.faults, trips_on=on)


def check_components(book: Book, on: date) -> CheckedComponents:
    """Work out components, drying runs and the larder of a book for a day, and hold them against the rules."""
    store = reckon_store(book, on)
    return CheckedComponents(
        book=book,
        store=_checked_store(book, store, on),
        sums=store.components,
        findings={id: check_component(sums, book.household) for id, sums in store.components.items()},
        slips=(*store.faults, *(slip for sums in store.components.values() for slip in component_slips(sums))),
    )


def _checked_store(book: Book, store: StoreSums, on: date) -> CheckedStore:
    larder, wrong = reckon_larder(book, store.components, store.runs, on)
    of_runs = {id: check_run(run, book.household) for id, run in store.runs.items()}
    of_the_larder = check_larder(larder, book.household)
    told = (fault for findings in (*of_runs.values(), of_the_larder) for fault in faults_of(findings))
    return CheckedStore(
        runs=store.runs,
        learnt=store.learnt,
        larder=larder,
        run_findings=MappingProxyType(of_runs),
        larder_findings=of_the_larder,
        faults=(*wrong, *told),
    )


def check_dishes(components: CheckedComponents, ids: Iterable[str]) -> CheckedDishes:
    """Work out dishes of a book and hold them against the rules."""
    household = components.book.household
    conditions = usual_conditions(household)
    dishes: dict[str, CheckedDish] = {}
    faults: dict[str, DishFaults] = {}
    for id in ids:
        plan, wrong = plan_dish(components.book, components.sums, id)
        if plan is None:
            faults[id] = DishFaults(slips=tuple(wrong), against_rules=(), planned=False)
            continue
        settled = settle(plan, conditions)
        (usual,) = work_out_each(settled, (household.servings,), household.margins.fuel.base)
        slips = (*wrong, *_slips(plan, usual, wrong))
        case = DishCase(plan, usual, household)
        findings = check_dish(case)
        dishes[id] = CheckedDish(plan=plan, settled=settled, usual=usual, case=case, findings=findings)
        faults[id] = DishFaults(slips=slips, against_rules=tuple(faults_of(findings)), planned=True)
    return CheckedDishes(dishes=dishes, faults=faults)


def check_trips(components: CheckedComponents, dishes: Mapping[str, CheckedDish], on: date) -> CheckedTrips:
    """Work out the trips of a book and hold them against the rules. `dishes` may lack what could not be planned."""
    if not components.book.trips:
        return NO_TRIPS
    household = components.book.household

    def plan_of(id: str) -> DishPlan | None:
        return dishes[id].plan if id in dishes else None

    found = reckon_trips(components.book, components.sums, plan_of, components.store.larder, on)
    eaten = eaten_on(found.trips.values())
    checked = {
        id: CheckedTrip(sums=sums, findings=check_trip(sums, household, at_home(dishes), eaten))
        for id, sums in found.trips.items()
    }
    told = (fault for one in checked.values() for fault in faults_of(one.findings))
    return CheckedTrips(trips=MappingProxyType(checked), faults=(*found.faults, *told))


def at_home(dishes: Mapping[str, CheckedDish]) -> AtHomeOf:
    """Give what the page of each dish says, to tell what is new on a trip."""
    return lambda id: AtHome(plan=dishes[id].plan, sums=dishes[id].usual, findings=dishes[id].findings)


def whole_book(
    components: CheckedComponents,
    dishes: Mapping[str, CheckedDish],
    faults: Mapping[str, DishFaults],
    *,
    trips_on: date | None,
) -> CheckedBook:
    """Put a book together when the faults of all its dishes are known, with its trips if there is a day for them.

    A dish that is not among `dishes`, but could be worked out, is made when somebody asks for it.
    """
    told = [faults[id] for id in components.book.dishes]
    all_dishes = Kept(
        [id for id in components.book.dishes if faults[id].planned],
        lambda id: check_dishes(components, (id,)).dishes[id],
        made=dishes,
    )
    trips = NO_TRIPS if trips_on is None else check_trips(components, all_dishes, trips_on)
    return CheckedBook(
        book=components.book,
        store=components.store,
        components=components.sums,
        component_findings=MappingProxyType(components.findings),
        dishes=all_dishes,
        trips=trips.trips,
        faults=(
            *components.slips,
            *(fault for one in told for fault in one.slips),
            *(fault for findings in components.findings.values() for fault in faults_of(findings)),
            *(fault for one in told for fault in one.against_rules),
            *components.store.faults,
            *trips.faults,
        ),
    )


def _slips(plan: DishPlan, sums: DishSums, told: Iterable[Fault]) -> list[Fault]:
    """Find the slips that a planned dish shows, but for places and packs of which the planner has told one already."""
    places = {fault.place for fault in told}
    torn = any(fault.code in ("packed-twice", "unknown-part") for fault in told)
    slips = (*(() if torn else pack_slips(plan)), *water_slips(plan, sums))
    return [slip for slip in slips if slip.place not in places]
