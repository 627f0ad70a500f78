"""Kidney beans and their kin, and rice, pasta and grain that stand warm."""

from collections.abc import Iterator

from packlarder.book.step import Fate, Verb
from packlarder.faults import Severity
from packlarder.figures.kinds import Cooking, Group, Kind
from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import PlannedPart, PlannedStep
from packlarder.safety.case import DishCase
from packlarder.safety.heat import groups_of
from packlarder.safety.hit import Hit
from packlarder.safety.limits import KIDNEY_BOIL, KIDNEY_SOAK, LEGUMES_ABOVE, RICE_TIME
from packlarder.safety.rule import DishRule, Shows
from packlarder.safety.wording import metres

_COOKED_GRAIN = frozenset({Kind.RICE, Kind.PASTA, Kind.GRAIN, Kind.READY_STARCH})
_SOME_POISON = frozenset({Kind.DRY_BEAN, Kind.GREEN_BEAN})


def kidney_beans_not_boiled(case: DishCase) -> Iterator[Hit]:
    """Find raw kidney beans that no step boils; a simmer is not enough."""
    for part in case.raw_with(Kind.KIDNEY_BEAN):
        if _boil(case, part) is None:
            yield case.hit(part, case.journey(part).last)


def kidney_beans_boiled_short(case: DishCase) -> Iterator[Hit]:
    """Find raw kidney beans that boil for less than half an hour."""
    for part in case.raw_with(Kind.KIDNEY_BEAN):
        boil = _boil(case, part)
        if boil is not None and case.minutes(boil) < KIDNEY_BOIL.value:
            yield case.hit(part, boil.index, minutes=f"{case.minutes(boil):g}", least=f"{KIDNEY_BOIL.value:g}")


def kidney_beans_not_soaked(case: DishCase) -> Iterator[Hit]:
    """Find raw kidney beans that boil without a long soak whose water is poured away."""
    for part in case.raw_with(Kind.KIDNEY_BEAN):
        boil = _boil(case, part)
        if boil is not None and not _soaked_and_drained(case, part, boil):
            yield case.hit(part, boil.index, least=f"{KIDNEY_SOAK.value / 60:g}")


def beans_not_boiled(case: DishCase) -> Iterator[Hit]:
    """Find other uncooked beans that hold some of the same poison and that no step boils or simmers."""
    if not _SOME_POISON & case.kinds:
        return
    for part in case.plan.parts:
        uncooked = part.component.must_be_cooked is Cooking.TO_BE_EDIBLE and _SOME_POISON & part.component.kinds
        if uncooked and not any(case.steps_with(part.index, Verb.BOIL, Verb.SIMMER)) and not case.journey(part).cooked:
            yield case.hit(part, case.journey(part).last)


def rice_stands(case: DishCase) -> Iterator[Hit]:
    """Find rice, pasta or grain that stands wet and warm for long before it is eaten."""
    if case.ready_at <= RICE_TIME.value:  # nothing stands for longer than the dish takes
        return
    for part, minutes in grain_stands(case):
        if minutes > RICE_TIME.value:
            yield case.hit(part, case.journey(part).wet_at, minutes=f"{minutes:.0f}", limit=f"{RICE_TIME.value:g}")


def grain_stands(case: DishCase) -> Iterator[tuple[PlannedPart, float]]:
    """Give each part of rice, pasta or grain that gets wet, with the minutes from its water or heat to the plate."""
    if case.sums is None or not _COOKED_GRAIN & case.kinds:
        return
    for part in case.plan.parts:
        wet_at = case.journey(part).wet_at
        if wet_at is None or not _COOKED_GRAIN & part.component.kinds:
            continue
        last = max((step.index for step in case.steps_with(part.index, *_COOKS)), default=wet_at)
        from_min = case.sums.steps[wet_at].start_min if last == wet_at else case.sums.steps[last].end_min
        yield part, case.ready_at - from_min


def rice_at_once(case: DishCase) -> Iterator[Hit]:
    """Ask to keep no cooked rice, pasta or grain."""
    if _COOKED_GRAIN & case.kinds:
        yield case.here


def legumes_at_height(case: DishCase) -> Iterator[Hit]:
    """Find uncooked legumes in a dish that is cooked high up."""
    if case.height_m <= LEGUMES_ABOVE.value:
        return
    for part in case.plan.parts:
        uncooked = part.component.must_be_cooked is not Cooking.NO
        if uncooked and Group.LEGUME in groups_of(part.component.kinds):
            yield case.hit(part, None, height=metres(case.height_m))


_COOKS = tuple(Verb(word) for word, does in VERBS.items() if does.cooks)


def _boil(case: DishCase, part: PlannedPart) -> PlannedStep | None:
    """Give the longest boil of a part."""
    return max(case.steps_with(part.index, Verb.BOIL), key=case.minutes, default=None)


def _soaked_and_drained(case: DishCase, part: PlannedPart, boil: PlannedStep) -> bool:
    for soak in case.steps_with(part.index, Verb.SOAK):
        if case.minutes(soak) < KIDNEY_SOAK.value:
            continue
        after = case.plan.steps[soak.index + 1 : boil.index]
        return next((step.fate for step in after if step.verb is Verb.DRAIN), None) is Fate.AWAY
    return False


RULES = (
    DishRule(
        id="kidney-beans-not-boiled",
        severity=Severity.ERROR,
        facts=("T7-01", "T7-02", "T7-05", "T7-07"),
        check=kidney_beans_not_boiled,
        of_raw=True,
    ),
    DishRule(
        id="kidney-beans-boiled-short",
        severity=Severity.ERROR,
        facts=("T7-02", "T7-03"),
        check=kidney_beans_boiled_short,
        of_raw=True,
    ),
    DishRule(
        id="kidney-beans-not-soaked",
        severity=Severity.ERROR,
        facts=("T7-02", "T6-10"),
        check=kidney_beans_not_soaked,
        of_raw=True,
    ),
    DishRule(id="beans-not-boiled", severity=Severity.WARNING, facts=("T7-06", "T7-07"), check=beans_not_boiled),
    DishRule(id="rice-stands", severity=Severity.WARNING, facts=("T7-08", "T7-10"), check=rice_stands),
    DishRule(id="legumes-at-height", severity=Severity.WARNING, facts=("T14-08", "T14-10"), check=legumes_at_height),
    DishRule(id="rice-at-once", severity=Severity.NOTE, facts=("T7-09", "T7-10"), shows=Shows.PAGE, check=rice_at_once),
)
