"""Where the bars of a trip's pictures lie: water by leg, weight and energy by day; what they show is the sheets' work.

Widths are shares of the picture's, in per cent; heights are in pixels (see `pictures`). Bars of one kind are drawn
alike, by hatching and not by colour.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from packlarder.publish.pictures import Scale
from packlarder.sheets.printed import Printed
from packlarder.sheets.trip_journey_sheet import DayRow
from packlarder.sheets.trip_sheet import TripSheet
from packlarder.sheets.trip_words import DRAWN

COLUMNS_TOP, COLUMNS_FOOT, COLUMNS_HEIGHT = 22.0, 142.0, 164.0
LEFT = 13.0
"""Left of its columns a picture has room for a figure of the scale."""
MOST_WIDTH, SHARE = 11.0, 0.62
"""A column is at most so wide, and takes at most this share of its day."""
MOST_LABELS = 7
"""More days than this do not all bear their figures: on a phone these would run into each other."""
ROOM = 1.04


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """A piece of a lying bar."""

    kind: str
    x: float
    width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterBars:
    """A bar for each leg, all to one scale, and what the kinds are called that occur in them.

    `holds` is where the containers are full, None where none are named.
    """

    bars: tuple[tuple[Segment, ...], ...]
    kinds: tuple[tuple[str, str], ...]
    holds: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A piece of an upright bar."""

    kind: str
    y: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """The bar of a day: its figure stands above it and its number below, both where there is room for them."""

    x: float
    width: float
    middle: float
    boxes: tuple[Box, ...]
    top: float
    figure: Printed
    name: str
    named: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line across all columns, with the figure it stands for."""

    y: float
    figure: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """A picture of upright bars, a day each."""

    height: float
    foot: float
    left: float
    columns: tuple[Column, ...]
    lines: tuple[Line, ...]


def water_bars(trip: TripSheet) -> WaterBars | None:
    """Lay out the water of each leg against what the containers hold; None without legs."""
    most = max([*(leg.ml for leg in trip.legs), trip.containers.ml])
    if not trip.legs or not most:
        return None
    across = Scale(least=0, most=most, at_least=0.0, at_most=100.0)
    each = [dict.fromkeys(DRAWN, 0) for _ in trip.legs]
    for sums, leg in zip(each, trip.legs, strict=True):
        for piece in leg.pieces:
            sums[piece.kind] += piece.ml
    return WaterBars(
        bars=tuple(_segments(sums, across) for sums in each),
        kinds=tuple((kind, label) for kind, label in DRAWN.items() if any(sums[kind] for sums in each)),
        holds=across(trip.containers.ml) if trip.containers.ml else None,
    )


def _segments(sums: dict[str, int], across: Scale) -> tuple[Segment, ...]:
    ends = accumulate(sums.values())
    return tuple(
        Segment(kind=kind, x=across(end - ml), width=round(across(end) - across(end - ml), 2))
        for (kind, ml), end in zip(sums.items(), ends, strict=True)
        if ml
    )


def weight_columns(days: Sequence[DayRow]) -> Columns | None:
    """Lay out the food carried each morning, and what of it is eaten that day; None for fewer than two days."""
    most = max((day.carried_g for day in days), default=0.0)
    if len(days) < 2 or not most:
        return None
    up = _upright(most)
    return _columns(
        [(day, _stacked([("rest", max(0.0, day.carried_g - day.food_g)), ("eaten", _eaten(day))], up)) for day in days],
        [day.carried_short for day in days],
        (),
    )


def _eaten(day: DayRow) -> float:
    """Give what of the food carried is eaten that day; more may be bought on the way."""
    return min(day.food_g, day.carried_g)


def energy_columns(trip: TripSheet) -> Columns | None:
    """Lay out what a day feeds one person, between the lines of the planning range; None for fewer than two days."""
    fed = trip.fed
    if fed is None or len(trip.days) < 2:
        return None
    up = _upright(max(fed.most_kcal, *(day.kcal for day in trip.days)))
    return _columns(
        [(day, _stacked([("eaten", day.kcal)], up)) for day in trip.days],
        [day.energy_short for day in trip.days],
        (Line(y=up(fed.least_kcal), figure=fed.least), Line(y=up(fed.most_kcal), figure=fed.most)),
    )


def _upright(most: float) -> Scale:
    return Scale(least=0, most=most * ROOM, at_least=COLUMNS_FOOT, at_most=COLUMNS_TOP)


def _stacked(pieces: Sequence[tuple[str, float]], up: Scale) -> tuple[Box, ...]:
    """Put pieces on top of each other, the first at the foot."""
    ends = accumulate(amount for _, amount in pieces)
    return tuple(
        Box(kind=kind, y=up(end), height=round(up(end - amount) - up(end), 2))
        for (kind, amount), end in zip(pieces, ends, strict=True)
        if amount
    )


def _columns(
    days: Sequence[tuple[DayRow, tuple[Box, ...]]], figures: Sequence[Printed], lines: tuple[Line, ...]
) -> Columns:
    left = LEFT if lines else 0.0
    room = (100.0 - left) / len(days)
    width = min(MOST_WIDTH, room * SHARE)
    step = -(-len(days) // MOST_LABELS)
    return Columns(
        height=COLUMNS_HEIGHT,
        foot=COLUMNS_FOOT,
        left=left,
        columns=tuple(
            Column(
                x=round(left + room * (at + 0.5) - width / 2, 2),
                width=round(width, 2),
                middle=round(left + room * (at + 0.5), 2),
                boxes=boxes,
                top=min([box.y for box in boxes], default=COLUMNS_FOOT),
                figure=figure,
                name=day.short_day,
                named=at % step == 0,
            )
            for at, ((day, boxes), figure) in enumerate(zip(days, figures, strict=True))
        ),
        lines=lines,
    )
