"""The sheets of what is dried and kept: a run with its batches, the larder on a day, a component's history."""

from collections.abc import Sequence
from dataclasses import dataclass

from packlarder.sheets.component_sheet import Fact, Link
from packlarder.sheets.dish_sheet import Caution


@dataclass(frozen=True, slots=True, kw_only=True)
class StageRow:
    """A weight on the way from the shop to the jar, and its share of the one before ("" for the first)."""

    label: str
    metric: str
    us: str
    factor: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ContainerRow:
    """A container: what its label bears, what it is, what it holds, where it stands.

    `state` is what became of it (sealed, open since, empty), `use_by` its day and `keeping` why that day. `past` says
    that the day is over.
    """

    mark: str
    component: Link
    raw: bool
    size: str
    holds: Fact
    stands: str
    state: str
    use_by: str
    keeping: str
    past: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchRow:
    """A batch in its run. `verdict` is one of the four, or where it is; `verdict_says` explains it."""

    component: Link
    raw: bool
    state: str
    verdict: str
    verdict_says: str
    chain: tuple[StageRow, ...]
    facts: tuple[Fact, ...]
    containers: tuple[ContainerRow, ...]
    traces: tuple[str, ...]
    notes: tuple[str, ...]
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSheet:
    """A drying run as its page shows it. `day` is for indexes, newest first; `summary` says what came of it."""

    id: str
    title: str
    day: str
    dryer: str
    summary: str
    facts: tuple[Fact, ...]
    batches: tuple[BatchRow, ...]
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A container in the larder's picture, from the day it was filled to its use-by day, as ordinal days."""

    mark: str
    says: str
    filled: int
    opened: int | None
    until: int
    past: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfRow:
    """A component in the larder's picture, with what there is of it and a bar for each container."""

    component: Link
    raw: bool
    holds: Fact
    bars: tuple[Bar, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfPicture:
    """What stands and how long it keeps, along a calendar; `ticks` are its months, `today` the larder's day."""

    first: int
    last: int
    today: int
    today_text: str
    ticks: tuple[tuple[int, str], ...]
    rows: tuple[ShelfRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelRow:
    """What there is of a component, and what the household wants to have ("" where it named nothing)."""

    component: Link
    raw: bool
    containers: int
    held: Fact
    stands_for: Fact
    level: Fact | None
    short: bool
    eat_first: str
    until: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderSheet:
    """The larder on a day: a picture, every container (first to be eaten first), each component, and what is empty."""

    day: str
    summary: str
    picture: ShelfPicture | None
    containers: tuple[ContainerRow, ...]
    levels: tuple[LevelRow, ...]
    emptied: tuple[ContainerRow, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class YieldPoint:
    """One batch in the plot of a component's yields: its day, grams dry of a kilogram fresh, whether it counts."""

    run: Link
    day: int
    day_text: str
    dry_per_kg: float
    text: str
    verdict: str
    counted: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """A component's batches: its yields as points, their median, and what was learnt in words."""

    points: Sequence[YieldPoint]
    median: float | None
    says: str
    card: tuple[Fact, ...]
    card_notes: tuple[str, ...]
