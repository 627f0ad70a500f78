"""What the sums of a trip hand on, second part: what the larder gives, what is bought, and what is still to dry."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from packlarder.book.draw import Mark
from packlarder.reckon.records import ComponentSums


class Source(StrEnum):
    """How what the larder lacks is come by."""

    DRY = "dry"
    """It is bought or fetched fresh, and dried at home."""
    MIX = "mix"
    """It is mixed from other components."""
    BUY = "buy"
    """It is bought as it is carried."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """What a trip takes from one container of the larder; `use_by` is None where no rule and no figure speaks of it."""

    mark: Mark
    grams: float
    use_by: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """All that a trip wants of one component, so that each jar is opened once.

    `drawn` is in the order in which jars are emptied, `into` are the marks of packs with what goes into each, in the
    order of packs. `for_mixes_g` goes into mixes that are made for the trip. `need_g` = what goes into packs +
    `for_mixes_g` = what is drawn + `bought_on_the_way_g` + `short_g`. `first_on` is the day on which it is first eaten,
    `last_on` on which last.
    """

    component: ComponentSums
    need_g: float
    drawn: tuple[Drawn, ...]
    bought_on_the_way_g: float
    short_g: float
    into: tuple[tuple[str, float], ...]
    first_on: date
    last_on: date
    for_mixes_g: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortfall:
    """What of a component the larder lacks, and what that takes: dry, loaded, bought, trays, loads.

    `fresh_g` is what is loaded into the dryer and `bought_g` what is bought for it, None where no yield tells, both
    rounded up as a kitchen weighs; `bought_as` says in words what factor that rests on. `trays` is None without a
    dryer of the household's. `loads` are numbers of `DryingLoad`s. `start_by` is the day of its first task, None for
    what is only bought. `for_mixes_g` is what of `short_g` goes into mixes that are made for the trip.
    """

    component: ComponentSums
    source: Source
    short_g: float
    for_mixes_g: float
    fresh_g: float | None
    bought_g: float | None
    bought_as: str
    trays: int | None
    loads: tuple[int, ...]
    start_by: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class OnTrays:
    """What of one component lies on the trays of one load."""

    component: ComponentSums
    trays: int
    fresh_g: float
    dry_g: float


@dataclass(frozen=True, slots=True, kw_only=True)
class DryingLoad:
    """One run of a dryer that is still to be made; `number` counts from 1 over the whole trip, in order of time.

    `ends` is when it is taken out, after it was weighed a second time.
    """

    number: int
    dryer: str
    on_the_trays: tuple[OnTrays, ...]
    starts: datetime
    ends: datetime

    @property
    def raw(self) -> bool:
        """Tell whether something raw that must be cooked to be safe lies on its trays."""
        return any(one.component.raw for one in self.on_the_trays)


class TaskKind(StrEnum):
    """The work before a trip, in the order in which a food goes through it."""

    SHOP = "buy"
    COOK = "cook"
    FREEZE = "freeze first"
    DRY = "dry"
    WEIGH_AGAIN = "weigh again"
    DEFROST = "let the dryer rest"
    CONDITION = "condition"
    MIX = "mix"
    PACK = "pack"


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """Something to do before a trip: from when to when. `load` is the drying load it belongs to, 0 for none.

    `grams` is what is bought, cooked, loaded or mixed, None where that says nothing. What is bought for a mix are its
    ingredients that are no components. `whole_day` says that only the days matter, not the times: then `starts` and
    `ends` are its first and its last day, which is the same where it takes one. `overdue` says that it would have had
    to begin before today: then it stands on today, to be done at once. `foods` are the foods of what is made of
    several, with their grams: those that are bought for it, each rounded up, or all that are mixed.
    """

    kind: TaskKind
    starts: datetime
    ends: datetime
    whole_day: bool
    components: tuple[ComponentSums, ...]
    grams: float | None
    load: int
    overdue: bool = False
    foods: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Stores:
    """What the larder gives and what is still to get: fills by component's name, shortfalls, loads, dated tasks."""

    fills: tuple[Fill, ...] = ()
    shortfalls: tuple[Shortfall, ...] = ()
    loads: tuple[DryingLoad, ...] = ()
    tasks: tuple[Task, ...] = ()
