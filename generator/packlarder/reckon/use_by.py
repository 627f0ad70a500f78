"""How long a container keeps, and by which rule: the household's own, a published figure, or a starting point of ours.

The earliest of the household's rule and the published figure holds, and of several foods in one component the earliest
of theirs: a rule about fruit says nothing of the milk beside it. Where nothing is published for a food, the household's
rule stands alone, marked as its own; without one, the cautious starting point in figures/keeping.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from packlarder.book.batch import Filled
from packlarder.book.book import spoken
from packlarder.book.days import Span
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
class Limit:
    """How long something keeps, and what that rests on. `says` is the rule in words, `own` that it is the household's.

    `fact` is an id of `figures.facts`, or "".
    """

    span: Span
    says: str
    own: bool
    fact: str = ""
    standing: Standing = Standing.COMMON_PRACTICE


@dataclass(frozen=True, slots=True, kw_only=True)
class UseBy:
    """A use-by day and what it rests on; `limit` is None for the day on a bought pack.

    `untested` says that the day is an opened jar's because nobody can tell whether the food is dry.
    """

    day: date
    kept: Kept
    limit: Limit | None
    untested: bool = False

    @property
    def says(self) -> str:
        """Give the rule in words, "" for the day on a bought pack."""
        return "" if self.limit is None else self.limit.says

    @property
    def own(self) -> bool:
        """Tell whether it is the household's rule."""
        return self.limit is not None and self.limit.own

    @property
    def fact(self) -> str:
        """Give an id of `figures.facts`, or ""."""
        return "" if self.limit is None else self.limit.fact

    @property
    def standing(self) -> Standing:
        """Tell how well it is known."""
        return Standing.COMMON_PRACTICE if self.limit is None else self.limit.standing


class KeepingTimes:
    """Gives the use-by days of one household; what holds for one jar of a component holds for the next."""

    def __init__(self, household: Household) -> None:
        self._larder = household.larder
        self._known: dict[tuple[str, Kept, float], tuple[Limit, ...]] = {}

    def use_by(
        self,
        component: ComponentSums,
        filled: Filled,
        size: ContainerSize | None,
        *,
        dried_on: date,
        filled_on: date,
        opened_on: date | None,
        best_before: date | None = None,
        untested: bool = False,
    ) -> UseBy | None:
        """Give the day until which a container keeps; None where no rule and no figure speaks of its food.

        A bag keeps as a trip pack from when it was filled, and never longer than a jar of the same food. What is
        `untested` keeps no longer than a jar that was opened on the day when it was dried; the household's rules for
        opened jars, made for dry food, do not lengthen that.
        """
        is_bag = size is not None and size.kind is ContainerKind.BAG
        store = self._larder.stores.get(filled.stands)
        store_c = ROOM_C if store is None else store.base
        starts = [(Kept.TRIP_PACK, filled_on)] if is_bag else []
        starts.append((Kept.SEALED, dried_on))
        if opened_on is not None:
            starts.append((Kept.OPENED, opened_on))
        found = [
            UseBy(day=limit.span.after(start), kept=kept, limit=limit)
            for kept, start in starts
            for limit in self._limits(component, kept, store_c)
        ]
        if untested:
            limits = (*self._limits(component, Kept.OPENED, store_c), *limits_of(component, (), Kept.OPENED, store_c))
            found += [UseBy(day=one.span.after(dried_on), kept=Kept.OPENED, limit=one, untested=True) for one in limits]
        if best_before is not None:
            found.append(UseBy(day=best_before, kept=Kept.SEALED, limit=None))
        return min(found, key=lambda one: one.day, default=None)

    def once_opened(self, component: ComponentSums, filled: Filled) -> Span | None:
        """Give how long a container keeps from the day on which it is opened, whatever its day; None if nobody says."""
        store = self._larder.stores.get(filled.stands)
        limits = self._limits(component, Kept.OPENED, ROOM_C if store is None else store.base)
        return min((limit.span for limit in limits), key=lambda span: span.length_days, default=None)

    def _limits(self, component: ComponentSums, kept: Kept, store_c: float) -> tuple[Limit, ...]:
        asked = component.id, kept, store_c
        if asked not in self._known:
            self._known[asked] = tuple(limits_of(component, self._larder.keeping, kept, store_c))
        return self._known[asked]


def limits_of(component: ComponentSums, rules: Sequence[KeepingRule], kept: Kept, store_c: float) -> Iterator[Limit]:
    """Give what a way of keeping asks for: of each kind of food in a component the household's rule, and the figure."""
    for kind in sorted(component.kinds):
        rule = rule_for(component, kind, rules, kept)
        figure = figure_for(component, kind, kept, store_c)
        if rule is not None:
            yield Limit(span=rule.for_, says=rule.why, own=True)
        if figure is not None and (rule is None or figure.standing is not Standing.COMMON_PRACTICE):
            span = Span(days=figure.days)
            yield Limit(span=span, says=figure.says, own=False, fact=figure.fact, standing=figure.standing)


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
