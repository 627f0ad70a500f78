"""A whole book, worked out and held against every rule."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from packlarder.book.book import Book
from packlarder.faults import Fault
from packlarder.reckon.components import reckon_components
from packlarder.reckon.dish import usual_conditions, work_out_each
from packlarder.reckon.pack_slips import pack_slips
from packlarder.reckon.plan import plan_dish
from packlarder.reckon.records import ComponentSums, DishPlan, DishSums
from packlarder.reckon.settled import Settled, settle
from packlarder.reckon.water_slips import component_slips, water_slips
from packlarder.safety.case import DishCase
from packlarder.safety.rule import Finding
from packlarder.safety.rules import check_component, check_dish, faults_of


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckedBook:
    """A book with its sums at the usual servings, what the rules found, and all that is wrong. Mappings go by id.

    What could not be worked out is missing from the mappings, and `faults` says why.
    """

    book: Book
    components: Mapping[str, ComponentSums]
    plans: Mapping[str, DishPlan]
    settled: Mapping[str, Settled]
    usual: Mapping[str, DishSums]
    cases: Mapping[str, DishCase]
    component_findings: Mapping[str, tuple[Finding, ...]]
    dish_findings: Mapping[str, tuple[Finding, ...]]
    faults: tuple[Fault, ...]


def check_book(book: Book) -> CheckedBook:
    """Work out every component and dish of a book and hold them against the rules."""
    household = book.household
    components, found = reckon_components(book)
    faults = list(found)
    faults += [slip for sums in components.values() for slip in component_slips(sums)]
    component_findings = {id: check_component(sums, household) for id, sums in components.items()}
    conditions = usual_conditions(household)
    plans: dict[str, DishPlan] = {}
    settled: dict[str, Settled] = {}
    usual: dict[str, DishSums] = {}
    cases: dict[str, DishCase] = {}
    dish_findings: dict[str, tuple[Finding, ...]] = {}
    for id in book.dishes:
        plan, wrong = plan_dish(book, components, id)
        faults += wrong
        if plan is not None:
            plans[id] = plan
            settled[id] = settle(plan, conditions)
            (usual[id],) = work_out_each(settled[id], (household.servings,), household.margins.fuel.base)
            faults += _slips(plan, usual[id], wrong)
            cases[id] = DishCase(plan, usual[id], household)
            dish_findings[id] = check_dish(cases[id])
    for findings in (*component_findings.values(), *dish_findings.values()):
        faults += faults_of(findings)
    return CheckedBook(
        book=book,
        components=components,
        plans=MappingProxyType(plans),
        settled=MappingProxyType(settled),
        usual=MappingProxyType(usual),
        cases=MappingProxyType(cases),
        component_findings=MappingProxyType(component_findings),
        dish_findings=MappingProxyType(dish_findings),
        faults=tuple(faults),
    )


def _slips(plan: DishPlan, sums: DishSums, told: Iterable[Fault]) -> list[Fault]:
    """Find the slips that a planned dish shows, but for places and packs of which the planner has told one already."""
    places = {fault.place for fault in told}
    torn = any(fault.code in ("packed-twice", "unknown-part") for fault in told)
    slips = (*(() if torn else pack_slips(plan)), *water_slips(plan, sums))
    return [slip for slip in slips if slip.place not in places]
