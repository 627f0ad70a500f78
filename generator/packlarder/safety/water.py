"""Water: what it warms, how long food may stand in it, and what may be drunk."""

import math
from collections.abc import Iterable, Iterator

from packlarder.book.step import Verb
from packlarder.faults import Severity
from packlarder.figures.kinds import Group, Kind
from packlarder.figures.trips import BOIL_LONGER_ABOVE
from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import DishSums, PlannedPart, PlannedStep
from packlarder.safety.case import DishCase, ready_at
from packlarder.safety.heat import groups_of
from packlarder.safety.hit import Hit
from packlarder.safety.limits import (
    EGG_IDLE,
    EGG_TIME,
    HOT_DAY,
    SOAK_TIME,
    WET_TIME,
    WET_TIME_HOT,
)
from packlarder.safety.rule import DishRule, Shows
from packlarder.safety.wording import degrees

_GIVES_WATER = frozenset(Verb(word) for word, does in VERBS.items() if does.gives_water)
ON_STOVE = tuple(Verb(word) for word, does in VERBS.items() if does.on_stove)


def steeping_only_warms(case: DishCase) -> Iterator[Hit]:
    """Say how warm poured-on water leaves the food."""
    if Verb.POUR_OVER in case.verbs:
        poured = [step for step in case.plan.steps if step.verb is Verb.POUR_OVER and not step.heater]
        yield from _ends_at(case, poured)


def heater_only_warms(case: DishCase) -> Iterator[Hit]:
    """Say how warm a ration heater leaves the food."""
    yield from _ends_at(case, list(case.heater_steps))


def eat_within_two_hours(case: DishCase) -> Iterator[Hit]:
    """Ask to eat perishable food soon once it is wet."""
    if not _hot(case) and _wet_perishable(case):
        yield case.here


def hot_day(case: DishCase) -> Iterator[Hit]:
    """Ask to eat perishable food sooner on a hot day."""
    if _hot(case) and _wet_perishable(case):
        yield case.here


def stands_too_long(case: DishCase) -> Iterator[Hit]:
    """Find perishable food that stands wet too long before it is heated or eaten, by the dish's own clock."""
    limit = wet_limit_min(case.air_c)
    if case.sums is None or case.ready_at <= limit:  # nothing stands for longer than the dish takes
        return
    for part in case.perishable:
        minutes = stands_min(case, part, case.sums)
        if minutes > limit:
            yield case.hit(part, case.journey(part).wet_at, minutes=f"{minutes:.0f}", limit=f"{limit:g}")


def over_two_hours(case: DishCase) -> Iterator[Hit]:
    """Find perishable food that takes over two hours from its water to the plate, heat and rounds counted."""
    return over_two_hours_from(case, () if case.sums is None else (case.sums,))


def over_two_hours_from(case: DishCase, each: Iterable[DishSums]) -> Iterator[Hit]:
    """Find the first of several sums of a dish, in rising order of servings, that takes so long."""
    first = next((sums for sums in each if _over_limit(case, sums)), None)
    if first is not None:
        yield case.note(servings=str(first.servings), limit=f"{wet_limit_min(case.air_c) / 60:g}\u00a0h")


def _over_limit(case: DishCase, sums: DishSums) -> bool:
    """Tell whether perishable food takes longer from its water to the plate than it may."""
    limit = wet_limit_min(case.air_c)
    if sums.clock.minutes < limit:  # from the first move on, rounded up
        return False
    starts = min([sums.steps[index].start_min for index in case.wets_perishable], default=math.inf)
    return ready_at(sums) - starts > limit


def wet_limit_min(air_c: float) -> float:
    """Give how long perishable food may stand wet in that air, in minutes."""
    return (WET_TIME_HOT if air_c > HOT_DAY.value else WET_TIME).value


def long_soak(case: DishCase) -> Iterator[Hit]:
    """Find soaks that outlast what is safe without a refrigerator; beans that are boiled afterwards may soak longer."""
    for step in case.plan.steps:
        if step.verb is not Verb.SOAK or case.minutes(step) <= SOAK_TIME.value:
            continue
        parts = [case.plan.parts[index] for index in step.parts]
        if any(groups_of(part.component.kinds) != _LEGUMES or not case.journey(part).cooked for part in parts):
            minutes, limit = f"{case.minutes(step):.0f}", f"{SOAK_TIME.value:g}"
            yield Hit(places=(case.step_place(step.index),), words={"minutes": minutes, "limit": limit})


_LEGUMES = frozenset({Group.LEGUME})


def mix_egg_late(case: DishCase) -> Iterator[Hit]:
    """Ask to mix raw egg just before it is cooked."""
    eggs = list(case.raw_with(Kind.EGG))
    if eggs:
        yield case.here


def egg_stands(case: DishCase) -> Iterator[Hit]:
    """Find raw egg that stands mixed for long before it is cooked."""
    if case.sums is not None:
        for part, wet_at, minutes, limit in _standing_egg(case, case.sums):
            yield case.hit(part, wet_at, minutes=f"{minutes:.0f}", limit=f"{limit:g}")


def egg_by_shares(case: DishCase) -> Iterator[Hit]:
    """Ask to mix raw egg a share at a time where so many eat that the last of it would stand too long."""
    return egg_by_shares_from(case, () if case.sums is None else (case.sums,))


def egg_by_shares_from(case: DishCase, each: Iterable[DishSums]) -> Iterator[Hit]:
    """Find the first of several sums of a dish, in rising order of servings, that keeps raw egg for so long."""
    for sums in each:
        standing = list(_standing_egg(case, sums))
        for part, _, minutes, _ in standing:
            yield case.note(part=part.called.lower(), servings=str(sums.servings), minutes=f"{minutes:.0f}")
        if standing:
            return


def _standing_egg(case: DishCase, sums: DishSums) -> Iterator[tuple[PlannedPart, int, float, float]]:
    """Give each raw egg that stands mixed too long: the part, the step that wets it, its minutes, and the limit."""
    for part in case.raw_with(Kind.EGG):
        wet_at = case.journey(part).wet_at
        if wet_at is None:
            continue
        minutes = stands_min(case, part, sums)
        limit = min(case.minutes(case.plan.steps[wet_at]) + EGG_IDLE.value, EGG_TIME.value)
        if minutes > limit:
            yield part, wet_at, minutes, limit


def treat_the_water(case: DishCase) -> Iterator[Hit]:
    """Ask for treated water where some of it reaches a mouth without a boil."""
    if case.unboiled:
        yield case.here


def filters_let_through(case: DishCase) -> Iterator[Hit]:
    """Say what a filter lets through, for dishes whose water is not boiled."""
    if case.unboiled:
        yield case.here


def boil_longer_up_high(case: DishCase) -> Iterator[Hit]:
    """Ask to boil wild water longer at height."""
    if case.height_m > BOIL_LONGER_ABOVE.value and _takes_water(case):
        yield case.here


def wild_water(case: DishCase) -> Iterator[Hit]:
    """Ask to treat wild water."""
    if _takes_water(case):
        yield case.here


def sea_water(case: DishCase) -> Iterator[Hit]:
    """Keep sea water out of food."""
    if _takes_water(case):
        yield case.here


def _ends_at(case: DishCase, steps: list[PlannedStep]) -> Iterator[Hit]:
    """Make one hit for steps that only warm, with the lowest temperature at which one of them ends, if it is known."""
    if not steps:
        return
    places = tuple(case.step_place(step.index) for step in steps)
    ends = [] if case.sums is None else [case.sums.steps[step.index].steeped_c for step in steps]
    known = [end for end in ends if end is not None]
    yield Hit(places=places, words={"degrees": degrees(min(known))} if known else {})


def _hot(case: DishCase) -> bool:
    return case.air_c > HOT_DAY.value


def _takes_water(case: DishCase) -> bool:
    return not _GIVES_WATER.isdisjoint(case.verbs)


def _wet_perishable(case: DishCase) -> bool:
    return bool(case.wets_perishable)


def stands_min(case: DishCase, part: PlannedPart, sums: DishSums) -> float:
    """Give how long a part stands wet: from when its water goes in until the stove heats it, or until the plate.

    What is cooked in rounds waits for the last of them, unless it goes dry into the pot.
    """
    wet_at = case.journey(part).wet_at
    if wet_at is None:
        return 0.0
    heated = (step.index for step in case.steps_with(part.index, *ON_STOVE) if step.index >= wet_at)
    first = next(heated, None)
    starts = sums.steps[wet_at].start_min
    if first is None:
        return ready_at(sums) - starts
    heat = sums.steps[first]
    others_min = (heat.boil_up_min + heat.cook_min) * (1 - 1 / heat.rounds) if first > wet_at else 0.0
    return heat.start_min + others_min - starts


OVER_TWO_HOURS = DishRule(id="over-two-hours", severity=Severity.NOTE, facts=("T2-18", "T2-02"), check=over_two_hours)
EGG_BY_SHARES = DishRule(
    id="egg-by-shares", severity=Severity.NOTE, facts=("T2-15", "T2-16"), check=egg_by_shares, of_raw=True
)
RULES = (
    DishRule(
        id="steeping-only-warms",
        severity=Severity.NOTE,
        facts=("T1-11", "T6-11"),
        shows=Shows.FIELD,
        check=steeping_only_warms,
    ),
    DishRule(
        id="heater-only-warms",
        severity=Severity.NOTE,
        facts=("T10-09", "T10-02"),
        shows=Shows.FIELD,
        check=heater_only_warms,
    ),
    DishRule(id="stands-too-long", severity=Severity.WARNING, facts=("T2-18", "T2-02"), check=stands_too_long),
    OVER_TWO_HOURS,
    DishRule(id="long-soak", severity=Severity.WARNING, facts=("T6-09", "T6-07"), check=long_soak),
    EGG_BY_SHARES,
    DishRule(id="egg-stands", severity=Severity.WARNING, facts=("T2-15", "T2-16"), check=egg_stands, of_raw=True),
    DishRule(id="hot-day", severity=Severity.NOTE, facts=("T2-02", "T2-18"), shows=Shows.FIELD, check=hot_day),
    DishRule(
        id="mix-egg-late",
        severity=Severity.NOTE,
        facts=("T2-15", "T2-16"),
        shows=Shows.FIELD,
        check=mix_egg_late,
        of_raw=True,
    ),
    DishRule(
        id="treat-the-water",
        severity=Severity.NOTE,
        facts=("T8-14", "T6-11"),
        shows=Shows.FIELD,
        check=treat_the_water,
    ),
    DishRule(id="boil-longer-up-high", severity=Severity.NOTE, facts=("T8-03", "T8-02"), check=boil_longer_up_high),
    DishRule(
        id="eat-within-two-hours",
        severity=Severity.NOTE,
        facts=("T2-02", "T2-18"),
        shows=Shows.FRONT,
        check=eat_within_two_hours,
    ),
    DishRule(id="wild-water", severity=Severity.NOTE, facts=("T8-15", "T8-03"), shows=Shows.FRONT, check=wild_water),
    DishRule(
        id="filters-let-through",
        severity=Severity.NOTE,
        facts=("T8-12", "T8-13"),
        shows=Shows.FRONT,
        check=filters_let_through,
    ),
    DishRule(id="sea-water", severity=Severity.NOTE, facts=("T8-07",), shows=Shows.FRONT, check=sea_water),
)
