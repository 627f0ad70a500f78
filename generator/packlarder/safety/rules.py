"""All rules in one tuple, and what comes of holding a book against them."""

from collections.abc import Iterable

from packlarder.book.household import Household
from packlarder.faults import Fault, Severity
from packlarder.reckon.batch_records import RunSums
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.records import ComponentSums, DishSums
from packlarder.reckon.trip.records import TripSums
from packlarder.safety import (
    beans_and_grains,
    cooking,
    drying,
    field,
    people,
    raw,
    sachets,
    store,
    trip_keeping,
    trip_loads,
    trip_people,
    trip_stove,
    trip_water,
    water,
)
from packlarder.safety.case import ComponentCase, DishCase
from packlarder.safety.hit import Hit
from packlarder.safety.rule import ComponentRule, DishRule, Finding, LarderRule, Rule, RunRule, Shows, TripRule
from packlarder.safety.store_case import LarderCase, RunCase
from packlarder.safety.trip_case import TripCase
from packlarder.safety.trip_dishes import AtHomeOf, new_at_meals

RULES: tuple[Rule, ...] = (
    *raw.RULES,
    *people.RULES,
    *cooking.RULES,
    *sachets.RULES,
    *field.RULES,
    *water.RULES,
    *beans_and_grains.RULES,
    *drying.RULES,
    *store.RULES,
    *trip_people.RULES,
    *trip_water.RULES,
    *trip_keeping.RULES,
    *trip_loads.RULES,
    *trip_stove.RULES,
)
"""Every rule, each file's together, what matters most to a cook first."""

_OF_COMPONENTS = tuple(rule for rule in RULES if isinstance(rule, ComponentRule))
_OF_DISHES = tuple(rule for rule in RULES if isinstance(rule, DishRule))
_WITHOUT_RAW = tuple(rule for rule in _OF_DISHES if not rule.of_raw)
_OF_RUNS = tuple(rule for rule in RULES if isinstance(rule, RunRule))
_OF_THE_LARDER = tuple(rule for rule in RULES if isinstance(rule, LarderRule))
_OF_TRIPS = tuple(rule for rule in RULES if isinstance(rule, TripRule))


def check_component(sums: ComponentSums, household: Household) -> tuple[Finding, ...]:
    """Hold a component against the rules."""
    case = ComponentCase(sums, household)
    return tuple(_finding(rule, hit) for rule in _OF_COMPONENTS for hit in rule.check(case))


def check_dish(case: DishCase) -> tuple[Finding, ...]:
    """Hold a dish against the rules, general cautions that apply to it included.

    Rules that need its clock or heat keep still where it could not be worked out.
    """
    rules = _OF_DISHES if case.raw else _WITHOUT_RAW
    return tuple([_finding(rule, hit) for rule in rules for hit in rule.check(case)])


def check_run(run: RunSums, household: Household) -> tuple[Finding, ...]:
    """Hold a drying run against the rules."""
    case = RunCase(run, household)
    return tuple(_finding(rule, hit) for rule in _OF_RUNS for hit in rule.check(case))


def check_larder(larder: LarderSums, household: Household) -> tuple[Finding, ...]:
    """Hold what stands in the larder against the rules."""
    case = LarderCase(larder, household)
    return tuple(_finding(rule, hit) for rule in _OF_THE_LARDER for hit in rule.check(case))


def check_trip(
    sums: TripSums, household: Household, at_home_of: AtHomeOf, eaten_before: frozenset[str] = frozenset()
) -> tuple[Finding, ...]:
    """Hold a trip against the rules, and its meals against those about dishes; what lies behind is held against none.

    Of its dishes only what is new beside their own pages is told. `eaten_before` are dishes of trips that are gone.
    """
    if sums.gone:
        return ()
    case = TripCase(sums, household, eaten_before)
    found = tuple([_finding(rule, hit) for rule in _OF_TRIPS for hit in rule.check(case)])
    return (*found, *new_at_meals(case, at_home_of, check_dish))


def check_larger(case: DishCase, each: Iterable[DishSums]) -> tuple[Finding, ...]:
    """Give what a dish does only for more people than the case's own sums are for, told once, from how many on.

    `each` are its sums in rising order of servings; what holds for the case's own `check_dish` tells.
    """
    if case.sums is None:
        return ()
    usual = case.sums.servings
    more = [sums for sums in each if sums.servings > usual]
    return (
        *_for_many(water.EGG_BY_SHARES, case, water.egg_by_shares_from(case, more)),
        *_for_many(water.OVER_TWO_HOURS, case, water.over_two_hours_from(case, more)),
    )


def _for_many(rule: DishRule, case: DishCase, hits: Iterable[Hit]) -> tuple[Finding, ...]:
    """Give what a rule finds for more people; nothing where it holds for the case itself."""
    if rule.of_raw and not case.raw:
        return ()
    found = tuple([_finding(rule, hit) for hit in hits])
    return () if found and any(rule.check(case)) else found


def general_cautions() -> tuple[Rule, ...]:
    """Give the rules that stand once, at the front of the booklet and on one page of the site."""
    return tuple(rule for rule in RULES if rule.shows in _AT_THE_FRONT)


def on_the_page(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Give the findings that a page or label shows beside what it is about, the gravest first."""
    own = [finding for finding in findings if finding.rule.shows is not Shows.FRONT]
    return tuple(sorted(own, key=lambda finding: _GRAVEST.index(finding.severity)))


def in_the_booklet(findings: Iterable[Finding], most: int = 4) -> tuple[Finding, ...]:
    """Give the few findings that a tired cook needs in the field, in the order of `RULES`; at most `most`."""
    return tuple(finding for finding in findings if finding.rule.shows is Shows.FIELD)[:most]


def faults_of(findings: Iterable[Finding]) -> tuple[Fault, ...]:
    """Give as faults what is to be mended: errors and warnings. A note is for the page, there is nothing to mend."""
    return tuple(finding.fault for finding in findings if finding.severity is not Severity.NOTE)


_AT_THE_FRONT = frozenset({Shows.FRONT, Shows.BOTH})
_GRAVEST = (Severity.ERROR, Severity.WARNING, Severity.NOTE)


def _finding(rule: Rule, hit: Hit) -> Finding:
    return Finding(rule=rule, places=hit.places, words=hit.words, facts=hit.facts or rule.facts)
