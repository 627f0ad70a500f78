"""All rules in one tuple, and what comes of holding a book against them."""

from collections.abc import Iterable, Sequence

from packlarder.book.household import Household
from packlarder.faults import Fault, Severity
from packlarder.figures.kinds import Kind
from packlarder.reckon.batch_records import RunSums
from packlarder.reckon.larder_records import LarderSums
from packlarder.reckon.records import ComponentSums, DishPlan, DishSums
from packlarder.safety import beans_and_grains, cooking, drying, field, people, raw, sachets, store, water
from packlarder.safety.case import ComponentCase, DishCase
from packlarder.safety.hit import Hit
from packlarder.safety.rule import ComponentRule, DishRule, Finding, LarderRule, Rule, RunRule, Shows
from packlarder.safety.store_case import LarderCase, RunCase

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
)
"""Every rule, each file's together, what matters most to a cook first."""

_OF_COMPONENTS = tuple(rule for rule in RULES if isinstance(rule, ComponentRule))
_OF_DISHES = tuple(rule for rule in RULES if isinstance(rule, DishRule))
_OF_RUNS = tuple(rule for rule in RULES if isinstance(rule, RunRule))
_OF_THE_LARDER = tuple(rule for rule in RULES if isinstance(rule, LarderRule))


def check_component(sums: ComponentSums, household: Household) -> tuple[Finding, ...]:
    """Hold a component against the rules."""
    case = ComponentCase(sums, household)
    return tuple(_finding(rule, hit) for rule in _OF_COMPONENTS for hit in rule.check(case))


def check_dish(plan: DishPlan, sums: DishSums | None, household: Household) -> tuple[Finding, ...]:
    """Hold a dish against the rules, general cautions that apply to it included.

    `sums` is None where the dish could not be worked out; then rules that need its clock or heat keep still.
    """
    case = DishCase(plan, sums, household)
    return tuple(_finding(rule, hit) for rule in _OF_DISHES for hit in rule.check(case))


def check_run(run: RunSums, household: Household) -> tuple[Finding, ...]:
    """Hold a drying run against the rules."""
    case = RunCase(run, household)
    return tuple(_finding(rule, hit) for rule in _OF_RUNS for hit in rule.check(case))


def check_larder(larder: LarderSums, household: Household) -> tuple[Finding, ...]:
    """Hold what stands in the larder against the rules."""
    case = LarderCase(larder, household)
    return tuple(_finding(rule, hit) for rule in _OF_THE_LARDER for hit in rule.check(case))


def check_larger(plan: DishPlan, each: Sequence[DishSums], household: Household) -> tuple[Finding, ...]:
    """Give what a dish does only for more people than the usual, told once, from how many on.

    `each` are its sums in rising order of servings, the usual ones among them; what holds for those `check_dish` tells.
    """
    usual = next((sums for sums in each if sums.servings == household.servings), None)
    more = [sums for sums in each if sums.servings > household.servings]
    return (*_egg_for_many(plan, usual, more, household), *_long_for_many(plan, usual, more, household))


def _egg_for_many(
    plan: DishPlan, usual: DishSums | None, more: Sequence[DishSums], household: Household
) -> tuple[Finding, ...]:
    """Find from how many servings on raw egg is to be mixed by shares; nothing where that holds for the usual ones."""
    if not any(Kind.EGG in part.component.uncooked for part in plan.parts):
        return ()
    for sums in (usual, *more):
        hits = tuple(water.egg_by_shares(DishCase(plan, sums, household)))
        if hits:
            return () if sums is usual else tuple(_finding(water.EGG_BY_SHARES, hit) for hit in hits)
    return ()


def _long_for_many(
    plan: DishPlan, usual: DishSums | None, more: Sequence[DishSums], household: Household
) -> tuple[Finding, ...]:
    """Find from how many servings on a dish takes over two hours; nothing where that holds for the usual ones."""
    long = [sums for sums in more if sums.clock.minutes >= water.wet_limit_min(sums.conditions.air_c)]
    if not long:
        return ()
    case = DishCase(plan, usual, household)
    if any(water.over_two_hours(case)):
        return ()
    return tuple(_finding(water.OVER_TWO_HOURS, hit) for hit in water.over_two_hours_from(case, long))


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
