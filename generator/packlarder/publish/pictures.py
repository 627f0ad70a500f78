"""Where the lines and points of a page's pictures lie; what they show is the sheets' work.

Widths are shares of the picture's, in per cent, so that a picture is as wide as its place and the type in it keeps its
size. Heights are in pixels.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from packlarder.sheets.facts import Fact
from packlarder.sheets.store_sheet import Calendar, History, Stay, YieldPoint

PLOT_TOP, PLOT_FOOT, PLOT_HEIGHT = 16.0, 132.0, 158.0
PLOT_LEFT, PLOT_RIGHT = 22.0, 96.0
"""Left of its points a plot has room for two figures."""
LEAST_APART = 16.0
"""Figures nearer together than this are not both written."""
ROOM = 0.15
"""Free room above and below the points of a plot, as a share of their spread."""
LEAST_SPREAD = 0.2
"""A plot shows at least this share of its most, so that what is nearly alike looks so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """A straight line from values to places in a picture."""

    least: float
    most: float
    at_least: float
    at_most: float

    def __call__(self, value: float) -> float:
        """Give the place of a value."""
        share = (value - self.least) / (self.most - self.least)
        return round(self.at_least + share * (self.at_most - self.at_least), 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """An upright line where a quarter of a year begins, with the month's name; `year` where a year begins, or ""."""

    x: float
    month: str
    year: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """Containers that keep until one day; `count` is "" for a single one."""

    x: float
    count: str
    opened: bool
    past: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Strips:
    """One calendar for a column of narrow pictures, a component in each."""

    today: float
    ticks: tuple[Tick, ...]
    across: Scale

    def stops(self, stays: Sequence[Stay]) -> tuple[Stop, ...]:
        """Place the use-by days of a component."""
        return tuple(
            Stop(
                x=self.across(stay.until),
                count=str(stay.count) if stay.count > 1 else "",
                opened=stay.opened,
                past=stay.past,
            )
            for stay in stays
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Dot:
    """A batch's point."""

    x: float
    y: float
    point: YieldPoint


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A figure at the left edge of a plot."""

    y: float
    fact: Fact


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """A component's yields, laid out; `median` is the height of the line, None where nothing counts."""

    height: float
    foot: float
    median: float | None
    marks: tuple[Mark, ...]
    first: str
    last: str
    dots: tuple[Dot, ...]


def strips(calendar: Calendar) -> Strips:
    """Lay out the calendar that all strips of the larder share."""
    across = Scale(least=calendar.first, most=calendar.last, at_least=0.0, at_most=100.0)
    return Strips(
        today=across(calendar.today),
        ticks=tuple(Tick(x=across(one.day), month=one.month, year=one.year) for one in calendar.quarters),
        across=across,
    )


def plot(history: History) -> Plot | None:
    """Lay out a component's yields; None for fewer than two points, which show nothing that a figure would not."""
    points = history.points
    if len(points) < 2:
        return None
    values = [*(point.dry_per_kg for point in points), *([history.median] if history.median is not None else [])]
    up = _upright(min(values), max(values))
    days = [point.day for point in points]
    along = Scale(least=min(days) - 1, most=max(days) + 1, at_least=PLOT_LEFT, at_most=PLOT_RIGHT)
    return Plot(
        height=PLOT_HEIGHT,
        foot=PLOT_FOOT,
        median=None if history.median is None else up(history.median),
        marks=tuple(_marks(points, up)),
        first=points[0].day_text,
        last=points[-1].day_text if points[-1].day > points[0].day else "",
        dots=tuple(Dot(x=along(point.day), y=up(point.dry_per_kg), point=point) for point in points),
    )


def _upright(least: float, most: float) -> Scale:
    """Give the scale of a plot from the foot to the top."""
    spread = max((most - least) * (1 + 2 * ROOM), most * LEAST_SPREAD)
    middle = (least + most) / 2
    return Scale(least=middle - spread / 2, most=middle + spread / 2, at_least=PLOT_FOOT, at_most=PLOT_TOP)


def _marks(points: Sequence[YieldPoint], up: Scale) -> Iterator[Mark]:
    """Write the most and the least beside the plot, or the most alone where they lie close together."""
    most = max(points, key=lambda point: point.dry_per_kg)
    least = min(points, key=lambda point: point.dry_per_kg)
    yield Mark(y=up(most.dry_per_kg), fact=most.gave)
    if up(least.dry_per_kg) - up(most.dry_per_kg) >= LEAST_APART:
        yield Mark(y=up(least.dry_per_kg), fact=least.gave)
