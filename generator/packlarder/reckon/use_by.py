"""How long a container keeps, and by which rule: the household's own, a published figure, or a starting point of ours.

The earliest of the household's rule and the published figure holds, and of several foods in one component the earliest
of theirs: a rule about fruit says nothing of the milk beside it. Where nothing is published for a food, the household's
rule stands alone, marked as its own; without one, the cautious starting point in figures/keeping.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from packlarder.book.batch import Filled
from packlarder.book.book import spoken
from packlarder.book.household import Household
from packlarder.book.stock import ContainerKind, ContainerSize, KeepingRule
from packlarder.figures.dryness import Drying
from packlarder.figures.figure import Standing
from packlarder.figures.keeping import Keeping, Kept, keeping_of
from packlarder.figures.kinds import Group, Kind
from packlarder.reckon.drying import DRIED_AT_HOME
from packlarder.reckon.records import ComponentSums

ROOM_C = 21.0
"""How warm a store is taken to be that the household does not tell of: an ordinary room."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UseBy:
    """A use-by day and what it rests on. `says` is the rule in words, "" for the day on a bought pack.

    `own` says that it is the household's rule; `fact` is an id of `figures.facts`, or "".
    """

    day: date
    kept: Kept
    says: str
    own: bool
    fact: str = ""
    standing: Standing = Standing.COMMON_PRACTICE


def use_by(
    component: ComponentSums,
    household: Household,
    filled: Filled,
    size: ContainerSize | None,
    *,
    dried_on: date,
    opened_on: date | None,
    best_before: date | None = None,
) -> UseBy | None:
    """Give the day until which a container keeps; None where no rule and no figure speaks of its food."""
    is_bag = size is not None and size.kind is ContainerKind.BAG
    store = household.larder.stores.get(filled.stands)
    store_c = ROOM_C if store is None else store.base
    starts = [(Kept.TRIP_PACK if is_bag else Kept.SEALED, dried_on)]
    if opened_on is not None:
        starts.append((Kept.OPENED, opened_on))
    found = [one for kept, start in starts for one in _candidates(component, household, kept, start, store_c)]
    if best_before is not None:
        found.append(UseBy(day=best_before, kept=Kept.SEALED, says="", own=False))
    return min(found, key=lambda one: one.day, default=None)


def _candidates(
    component: ComponentSums, household: Household, kept: Kept, start: date, store_c: float
) -> Iterator[UseBy]:
    """Give the days that a way of keeping asks for: of each kind of food in it the household's, and the figure's."""
    for kind in sorted(component.kinds):
        rule = rule_for(component, kind, household.larder.keeping, kept)
        figure = figure_for(component, kind, kept, store_c)
        if rule is not None:
            yield UseBy(day=rule.for_.after(start), kept=kept, says=rule.why, own=True)
        if figure is not None and (rule is None or figure.standing is not Standing.COMMON_PRACTICE):
            yield UseBy(
                day=start + timedelta(days=figure.days),
                kept=kept,
                says=figure.says,
                own=False,
                fact=figure.fact,
                standing=figure.standing,
            )


def figure_for(component: ComponentSums, kind: Kind, kept: Kept, store_c: float) -> Keeping | None:
    """Give the figure for one kind of food in a component: that of a store no cooler than it is where it stands."""
    drying = component.model.dried or Drying.AIR_DRIED  # of a mix, the shorter
    return _for_store(keeping_of(kind.rules.group, drying, kept), store_c)


def _for_store(figures: Iterable[Keeping], store_c: float) -> Keeping | None:
    """Take the figure for the next warmer store; in a warmer one than any, the shortest."""
    by_warmth = sorted(figures, key=lambda one: one.at_c or 0.0)
    fitting = [one for one in by_warmth if one.at_c is None or one.at_c >= store_c]
    return next(iter(fitting or by_warmth[-1:]), None)


def rule_for(component: ComponentSums, kind: Kind, rules: Iterable[KeepingRule], kept: Kept) -> KeepingRule | None:
    """Find the household's closest rule for one kind of food in a component; of several as close, the shortest.

    A rule about the component itself is closest, then one about the kind, its group, anything.
    """
    ranked = [
        (rank, rule)
        for rule in rules
        if rule.kept is kept
        and rule.dried in (None, component.model.dried)
        and (rank := _closeness(component, kind, rule.what)) is not None
    ]
    return min(ranked, key=lambda one: (one[0], one[1].for_.length_days))[1] if ranked else None


def _closeness(component: ComponentSums, kind: Kind, what: str) -> int | None:
    named = spoken(what)
    model = component.model
    whole_meal = len(model.made_of) > 1 and model.dried in DRIED_AT_HOME
    circles = (
        {spoken(component.id), spoken(model.name), *map(spoken, model.formerly)},
        {kind.value},
        {kind.rules.group.value, *((Group.MEAL.value,) if whole_meal else ())},
        {""},
    )
    return next((rank for rank, circle in enumerate(circles) if named in circle), None)
