"""A safety rule, and what it found: values that name their sources."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cache
from types import MappingProxyType
from typing import TypeAlias

from packlarder.faults import Fault, Place, Severity
from packlarder.figures.facts import FACTS, Fact
from packlarder.figures.figure import Standing
from packlarder.safety.case import ComponentCase, DishCase
from packlarder.safety.hit import Hit
from packlarder.safety.store_case import LarderCase, RunCase
from packlarder.safety.texts import FIRST_LANGUAGE, RuleText, texts_in
from packlarder.safety.trip_case import TripCase

Hits: TypeAlias = Iterable[Hit]

SURENESS = (
    Standing.PUBLISHED,
    Standing.COMPUTED,
    Standing.COPY,
    Standing.COMMON_PRACTICE,
    Standing.FROM_MEMORY,
)
"""Standings from the best known to the least known."""


class Subject(StrEnum):
    """What a rule is about."""

    COMPONENT = "component"
    DISH = "dish"
    RUN = "drying run"
    LARDER = "larder"
    TRIP = "trip"


class Shows(StrEnum):
    """Where a rule's text stands."""

    FIELD = "on the page and in the booklet"
    """Beside what it is about, and among the few cautions of a dish in the field booklet."""
    PAGE = "on the page"
    """Beside what it is about, where there is room to read."""
    BOTH = "on the page, and once at the front"
    """Beside what it is about where there is room, and as a general caution for the booklet."""
    FRONT = "once, at the front"
    """A general caution: at the front of the booklet and on one page of the site."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What all rules have in common. `facts` are ids of `figures.facts`: what the rule rests on, at least one."""

    id: str
    severity: Severity
    facts: tuple[str, ...]
    shows: Shows = Shows.PAGE

    @property
    def subject(self) -> Subject:
        """Tell what it is about."""
        return next(subject for kind, subject in _SUBJECTS if isinstance(self, kind))

    def said(self, language: str = FIRST_LANGUAGE) -> RuleText:
        """Give its texts in a language."""
        return texts_in(language)[self.id]

    @property
    def title(self) -> str:
        """Give its name for a heading."""
        return self.said().title

    @property
    def text(self) -> str:
        """Give what it says, in at most 25 words of ours."""
        return self.said().text

    @property
    def sources(self) -> tuple[Fact, ...]:
        """Give the facts it rests on."""
        return tuple(FACTS[id] for id in self.facts)

    @property
    def source(self) -> str:
        """Give who says so, and in what, as one phrase."""
        return source_of(self.facts)

    @property
    def standing(self) -> Standing:
        """Give how well it is known: as well as the least known of its facts."""
        return standing_of(self.facts)


@dataclass(frozen=True, slots=True, kw_only=True)
class ComponentRule(Rule):
    """A rule about a component."""

    check: Callable[[ComponentCase], Hits]


@dataclass(frozen=True, slots=True, kw_only=True)
class DishRule(Rule):
    """A rule about a dish. `of_raw` says that it can apply only where something is RAW: no other dish is asked."""

    check: Callable[[DishCase], Hits]
    of_raw: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RunRule(Rule):
    """A rule about a drying run."""

    check: Callable[[RunCase], Hits]


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderRule(Rule):
    """A rule about what stands in the larder."""

    check: Callable[[LarderCase], Hits]


@dataclass(frozen=True, slots=True, kw_only=True)
class TripRule(Rule):
    """A rule about a trip."""

    check: Callable[[TripCase], Hits]


_SUBJECTS: tuple[tuple[type[Rule], Subject], ...] = (
    (ComponentRule, Subject.COMPONENT),
    (DishRule, Subject.DISH),
    (RunRule, Subject.RUN),
    (LarderRule, Subject.LARDER),
    (TripRule, Subject.TRIP),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """A rule that applies: where, and with which words its detail is filled.

    The first place is the one to mend; the others are what it clashes with. `facts` are the rule's own, or those of the
    household's authority. `about` says of a rule about dishes which of a trip's it found; it leads what is said.
    """

    rule: Rule
    places: tuple[Place, ...]
    words: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    facts: tuple[str, ...]
    about: str = ""

    @property
    def severity(self) -> Severity:
        """Give how much it matters."""
        return self.rule.severity

    @property
    def text(self) -> str:
        """Give what it says of this case."""
        return self.said()

    @property
    def source(self) -> str:
        """Give who says so, and in what, as one phrase."""
        return source_of(self.facts)

    @property
    def standing(self) -> Standing:
        """Give how well it is known."""
        return standing_of(self.facts)

    def said(self, language: str = FIRST_LANGUAGE) -> str:
        """Give what it says of this case in a language; what the rule always says where the case adds no words."""
        said = self.rule.said(language)
        here = said.here.format_map(self.words) if said.here and self.words else said.text
        return f"{self.about}: {here}" if self.about else here

    @property
    def fault(self) -> Fault:
        """Give it as a fault at its first place, naming the others."""
        said = self.rule.said()
        place, *also = self.places
        return Fault(
            place=place,
            code=self.rule.id,
            message=self.text,
            help=said.help.format_map(self.words) if self.words else said.help,
            severity=self.severity,
            also=tuple(also),
        )


@cache
def source_of(facts: tuple[str, ...]) -> str:
    """Name the sources of facts in one phrase, each once."""
    return "; ".join(dict.fromkeys(FACTS[id].source for id in facts))


@cache
def standing_of(facts: tuple[str, ...]) -> Standing:
    """Give the standing of the least known of the facts."""
    return max((FACTS[id].standing for id in facts), key=SURENESS.index)
