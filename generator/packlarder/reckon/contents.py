"""What is left of one container, draw after draw."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from packlarder.book.draw import Deed, Draw
from packlarder.faults import Fault, Place
from packlarder.reckon.batch_records import FilledContainer
from packlarder.reckon.draw_slips import before_it_was_filled, more_counted, more_than_left
from packlarder.reckon.larder_records import Drawn

ROUND_G = 0.5
"""Draws are weighed to the gram: as much more than is left is still all of it, as much less counted no opened jar."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """A draw with its day, what it was for, and where it is written."""

    day: date
    draw: Draw
    what_for: str
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Contents:
    """What is left of a container, since when it is open (None: sealed), and all that happened to it."""

    left_g: float
    opened_on: date | None = None
    drawn: tuple[Drawn, ...] = ()


def follow(container: FilledContainer, events: Iterable[Event], on: date) -> tuple[Contents, tuple[Fault, ...]]:
    """Go through the draws of a container in the order of days; those after `on` can be at fault and count not yet.

    What was filled from another container stood open on that day, and counts as opened then.
    """
    contents = then = Contents(left_g=container.dry_g, opened_on=container.filled.on)
    faults: list[Fault] = []
    for event in events:
        if container.filled_on is not None and event.day < container.filled_on:
            faults.append(before_it_was_filled(event.place, event.draw, container.filled_on))
        contents, wrong = _after(contents, event)
        faults += wrong
        if event.day <= on:
            then = contents
    return then, tuple(faults)


def _after(before: Contents, event: Event) -> tuple[Contents, list[Fault]]:
    draw = event.draw
    faults: list[Fault] = []
    if draw.counted is not None:
        left_g = draw.counted.base
        if left_g > before.left_g + ROUND_G:
            faults.append(more_counted(event.place, draw, left_g, before.left_g))
    elif draw.share is None or draw.share.weight is None:
        left_g = before.left_g if draw.share is None else 0.0
    else:
        left_g = max(0.0, before.left_g - draw.share.weight.base)
        if draw.share.weight.base > before.left_g + ROUND_G:
            faults.append(more_than_left(event.place, draw, draw.share.weight.base, before.left_g))
    drawn = Drawn(
        day=event.day,
        deed=draw.deed,
        went_g=before.left_g - left_g,
        left_g=left_g,
        reason=draw.why or event.what_for,
    )
    opens = draw.deed in (Deed.OPENED, Deed.TOOK) or abs(left_g - before.left_g) > ROUND_G
    opened_on = event.day if opens and before.opened_on is None else before.opened_on
    return Contents(left_g=left_g, opened_on=opened_on, drawn=(*before.drawn, drawn)), faults
