"""Who eats: infants, people at risk, and those who avoid an allergen."""

from collections.abc import Iterator
from functools import cache

from packlarder.faults import Severity
from packlarder.figures.allergens import Allergen, Comparison, allergens_meant, compare
from packlarder.figures.kinds import Kind
from packlarder.safety.case import ComponentCase, DishCase, listed
from packlarder.safety.hit import Hit
from packlarder.safety.rule import ComponentRule, DishRule, Rule, Shows


def honey_and_infants(case: DishCase) -> Iterator[Hit]:
    """Find honey."""
    if Kind.HONEY in case.kinds:
        yield case.here


def people_at_risk(case: DishCase) -> Iterator[Hit]:
    """Find RAW in a dish that people at risk may eat."""
    if case.raw:
        yield case.here


def allergens(case: DishCase) -> Iterator[Hit]:
    """List the allergens of a dish."""
    if case.allergens:
        yield case.note(allergens=_list(case.allergens))


def traces(case: DishCase) -> Iterator[Hit]:
    """List the allergens that a dish may hold traces of."""
    found = frozenset().union(*[part.component.traces for part in case.plan.parts]) - case.allergens
    if found:
        yield case.note(traces=_list(found))


def allergen_missing(case: ComponentCase) -> Iterator[Hit]:
    """Find allergens that a component's foods carry and its `contains` does not name."""
    missing = _compared(case).missing
    if missing:
        yield case.hit("contains", allergens=_list(frozenset(missing)), all=_list(_declared(case).union(missing)))


def allergen_named_broadly(case: ComponentCase) -> Iterator[Hit]:
    """Find allergens that a component names by a wider word only."""
    broadly = _compared(case).named_broadly
    if broadly:
        yield case.hit("contains", allergens=_list(frozenset(broadly)))


def _compared(case: ComponentCase) -> Comparison:
    return compare(_declared(case), case.sums.allergens)


def _declared(case: ComponentCase) -> frozenset[Allergen]:
    """Give the allergens that a component declares; a word that is none is the reader's to tell."""
    return frozenset(one for word in case.model.contains for one in allergens_meant(word)[:1])


@cache
def _list(held: frozenset[Allergen]) -> str:
    return listed(one.value for one in Allergen if one in held)


RULES: tuple[Rule, ...] = (
    ComponentRule(id="allergen-missing", severity=Severity.ERROR, facts=("T11-01", "T11-05"), check=allergen_missing),
    ComponentRule(
        id="allergen-named-broadly", severity=Severity.WARNING, facts=("T11-03",), check=allergen_named_broadly
    ),
    DishRule(
        id="honey-and-infants",
        severity=Severity.NOTE,
        facts=("T12-01", "T12-02"),
        shows=Shows.FIELD,
        check=honey_and_infants,
    ),
    DishRule(id="allergens", severity=Severity.NOTE, facts=("T11-01", "T11-05"), check=allergens),
    DishRule(id="traces", severity=Severity.NOTE, facts=("T11-04",), check=traces),
    DishRule(
        id="people-at-risk",
        severity=Severity.NOTE,
        facts=("T3-19", "T12-07"),
        shows=Shows.BOTH,
        check=people_at_risk,
        of_raw=True,
    ),
)
