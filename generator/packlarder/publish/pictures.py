"""Where the lines and points of a page's pictures lie, in units of their SVG; what they show is the sheets' work."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from packlarder.sheets.store_sheet import Bar, History, ShelfPicture, ShelfRow, YieldPoint

WIDTH = 360.0
"""Units across every picture: as many pixels as a phone has, so that type in it is as large as it says."""
SHELF_HEAD, SHELF_NAME, SHELF_BAR, SHELF_GAP = 30.0, 16.0, 7.0, 9.0
"""Heights of the shelf's picture: its months, a name, a bar, the room below a row."""
LEAST_TICK = 34.0
"""Months nearer together than this are named by turns."""
PLOT_HEIGHT, PLOT_LEFT, PLOT_TOP, PLOT_FOOT = 130.0, 44.0, 12.0, 24.0
PLOT_RIGHT, PLOT_ROOM = 12.0, 10.0
ROOM = 0.15
"""Free room above and below the points of a plot, as a share of their spread."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A mark at the edge of a picture; `text` is "" where a neighbour's name takes its room."""

    x: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnBar:
    """A container's line: from `filled` to `until`, heavy from `now` on; `opened` is where it was opened."""

    y: float
    filled: float
    now: float
    until: float
    opened: float | None
    past: bool
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnRow:
    """A component's lines below its name, whose foot stands at `y`."""

    y: float
    row: ShelfRow
    bars: tuple[DrawnBar, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """The larder's picture, laid out."""

    width: float
    height: float
    today: float
    ticks: tuple[Tick, ...]
    rows: tuple[DrawnRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Dot:
    """A batch's point."""

    x: float
    y: float
    point: YieldPoint


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A figure beside the upright edge of a plot."""

    y: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Plot:
    """A component's yields, laid out; `median` is the height of the line, None where nothing counts."""

    width: float
    height: float
    left: float
    foot: float
    right: float
    median: float | None
    marks: tuple[Mark, ...]
    first: str
    last: str
    dots: tuple[Dot, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Scale:
    """A straight line from values to units of a picture."""

    least: float
    most: float
    at_least: float
    at_most: float

    def __call__(self, value: float) -> float:
        share = (value - self.least) / (self.most - self.least)
        return round(self.at_least + share * (self.at_most - self.at_least), 1)


def shelf(picture: ShelfPicture) -> Shelf:
    """Lay out the larder's picture."""
    across = _Scale(least=picture.first, most=picture.last, at_least=0.0, at_most=WIDTH)
    rows: list[DrawnRow] = []
    y = SHELF_HEAD
    for row in picture.rows:
        y += SHELF_NAME
        rows.append(DrawnRow(y=y, row=row, bars=tuple(_bars(row.bars, y, across, picture.today))))
        y += len(row.bars) * SHELF_BAR + SHELF_GAP
    return Shelf(
        width=WIDTH,
        height=y,
        today=across(picture.today),
        ticks=tuple(_ticks([(across(at), name) for at, name in picture.ticks])),
        rows=tuple(rows),
    )


def _bars(bars: Sequence[Bar], y: float, across: _Scale, today: int) -> Iterator[DrawnBar]:
    for nth, bar in enumerate(bars):
        yield DrawnBar(
            y=y + (nth + 1) * SHELF_BAR,
            filled=across(bar.filled),
            now=across(min(today, bar.until)),
            until=across(bar.until),
            opened=None if bar.opened is None else across(bar.opened),
            past=bar.past,
            says=bar.says,
        )


def _ticks(months: Sequence[tuple[float, str]]) -> Iterator[Tick]:
    """Name as many months as there is room for."""
    named = -LEAST_TICK
    for x, name in months:
        has_room = x - named >= LEAST_TICK and x <= WIDTH - LEAST_TICK
        named = x if has_room else named
        yield Tick(x=x, text=name if has_room else "")


def plot(history: History) -> Plot | None:
    """Lay out a component's yields; None where there is no point."""
    points = history.points
    if not points:
        return None
    values = [*(point.dry_per_kg for point in points), *([history.median] if history.median is not None else [])]
    room = ROOM * (max(values) - min(values)) or ROOM * max(values)
    up = _Scale(least=min(values) - room, most=max(values) + room, at_least=PLOT_HEIGHT - PLOT_FOOT, at_most=PLOT_TOP)
    days = [point.day for point in points]
    along = _Scale(
        least=min(days) - 1, most=max(days) + 1, at_least=PLOT_LEFT + PLOT_ROOM, at_most=WIDTH - PLOT_RIGHT - PLOT_ROOM
    )
    least, most = (pick(points, key=lambda point: point.dry_per_kg) for pick in (min, max))
    return Plot(
        width=WIDTH,
        height=PLOT_HEIGHT,
        left=PLOT_LEFT,
        foot=PLOT_HEIGHT - PLOT_FOOT,
        right=WIDTH - PLOT_RIGHT,
        median=None if history.median is None else up(history.median),
        marks=tuple(Mark(y=up(one.dry_per_kg), text=one.text) for one in dict.fromkeys((least, most))),
        first=points[0].day_text,
        last=points[-1].day_text if len(points) > 1 else "",
        dots=tuple(Dot(x=along(point.day), y=up(point.dry_per_kg), point=point) for point in points),
    )
