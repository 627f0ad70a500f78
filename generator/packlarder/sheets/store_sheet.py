"""The sheets of what is dried and kept: a run with its batches, the larder on a day, what is stored of a component."""

from dataclasses import dataclass

from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Line


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
class ShelfLine:
    """Containers of one batch that differ in nothing but their numbers and what they hold, as one line of a table.

    `first` speaks for all of them; `run` leads to their run by the name of all their marks, and `holds` is what they
    hold together.
    """

    first: ContainerRow
    count: int
    run: Link
    holds: Fact


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfGroup:
    """Lines of the larder below one heading; `count` containers hold `holds` together."""

    heading: str
    count: int
    holds: Fact
    lines: tuple[ShelfLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchRow:
    """A batch in its run. `verdict` is one of the four, or where it is; `verdict_says` explains it.

    `beside_raw` names the food that must be cooked to be safe and lay in the dryer with this one, which need not be.
    """

    component: Link
    raw: bool
    state: str
    verdict: str
    verdict_says: Line
    chain: tuple[StageRow, ...]
    facts: tuple[Fact, ...]
    shelf: tuple[ShelfLine, ...]
    containers: tuple[ContainerRow, ...]
    traces: tuple[str, ...]
    beside_raw: tuple[Link, ...]
    notes: tuple[str, ...]
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RunSheet:
    """A drying run as its page shows it; `summary` says what came of it."""

    id: str
    title: str
    day: str
    dryer: str
    summary: Line
    facts: tuple[Fact, ...]
    batches: tuple[BatchRow, ...]
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tray:
    """What lay on trays of a run, as lists of runs name it."""

    name: str
    raw: bool
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RunEntry:
    """A line of the list of runs: the weights are of all trays together, None where nothing was weighed yet."""

    link: Link
    trays: tuple[Tray, ...]
    day: str
    dryer: str
    fresh: Fact | None
    dry: Fact | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RunYear:
    """The runs that were loaded in one year, newest first."""

    year: str
    entries: tuple[RunEntry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RunIndex:
    """Every run of a book, newest first."""

    years: tuple[RunYear, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """The days that pictures of the larder stretch over, as ordinal days; `quarters` are first days with their names.

    `year` of a quarter is the number of the year that it begins, or "".
    """

    first: int
    last: int
    today: int
    quarters: tuple["Quarter", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Quarter:
    """The first day of a quarter of a year."""

    day: int
    month: str
    year: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Stay:
    """Containers of a component that are all open, or all not, and keep until the same day."""

    until: int
    count: int
    opened: bool
    past: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class LevelRow:
    """What there is of a component, and what the household wants to have (None where it named nothing).

    `until` is the first use-by day; `stays` are all of them, for a picture that `says` in words. `free` is what planned
    trips leave of `held`, None where they take nothing.
    """

    component: Link
    raw: bool
    containers: int
    held: Fact
    stands_for: Fact
    level: Fact | None
    short: bool
    eat_first: str
    until: str
    past: bool
    stays: tuple[Stay, ...]
    says: str
    free: Fact | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LarderSheet:
    """The larder on a day: the few figures looked for first, what to eat first, each component, and what is empty.

    `containers` are all that hold something, first to be eaten first. Each of them stands in one group: those of
    `first` are past their day, open, or to be eaten soon; those of `later` go by the month of their day.
    """

    day: str
    summary: Line
    strip: tuple[Fact, ...]
    containers: tuple[ContainerRow, ...]
    first: tuple[ShelfGroup, ...]
    later: tuple[ShelfGroup, ...]
    calendar: Calendar | None
    levels: tuple[LevelRow, ...]
    emptied: tuple[ContainerRow, ...]
    emptied_shelf: tuple[ShelfLine, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class YieldPoint:
    """One batch in the plot of a component's yields: its day, grams dry of a kilogram fresh, whether it counts."""

    run: Link
    day: int
    day_text: str
    dry_per_kg: float
    gave: Fact
    verdict: str
    counted: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """A component's batches: its yields as points, their median, what was learnt in words, and the drying card."""

    points: tuple[YieldPoint, ...]
    median: float | None
    says: Line
    card: tuple[Fact, ...]
    card_notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stored:
    """What was dried of a component, and what is left of it; None and nothing where there is none."""

    history: History | None
    level: LevelRow | None
    shelf: tuple[ShelfLine, ...]
