"""Set one booklet: measure its blocks, settle its plan, lay it out by the plan.

Blocks are measured in small lots, so that a thick book needs little memory for it and a dish that must be set anew
costs no more than itself.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from hashlib import sha256
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from packlarder.faults import Place
from packlarder.publish.paper_plan import (
    AS_OTHERS,
    LINE_MM,
    Blocks,
    Extent,
    Fit,
    Plan,
    draft,
    halves,
    in_hand,
    settle,
)
from packlarder.publish.paper_words import bodies, booklet_words, how_to_print
from packlarder.publish.press import PX_PER_MM, Laid, Press
from packlarder.publish.sizes import Bed, PageSize, bed

LOT = 24
"""Dishes measured at a time."""

MOST_LAYOUTS = 3
"""One is the rule; a second where page numbers wrap a line of the index; more would be a slip of ours."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Booklet:
    """A booklet in one size, plain, and its plan."""

    pdf: bytes
    plan: Plan
    size: PageSize
    bed: Bed


@dataclass(frozen=True, slots=True, kw_only=True)
class Copy:
    """What is to be set, and what it comes from.

    `template` names the templates that set its `blocks` (`<template>.html`, `<template>.css`); they are `given` this
    besides what every booklet has. `title` and `edition` stand at the foot of each page. `names` and `places` are those
    of its dishes, by the ids that its blocks have; `place` is that of the whole.
    """

    template: str
    blocks: Blocks
    given: Mapping[str, object]
    title: str
    edition: str
    language: str
    on: date
    place: Place
    names: Mapping[str, str]
    places: Mapping[str, Place]


class Room:
    """The composing room: sets a booklet's HTML and CSS by a plan; only the blocks that the plan has are set."""

    def __init__(self, templates: Path, copy: Copy, size: PageSize) -> None:
        """Take the templates' folder, what to set, and the size to set it in."""
        loader = FileSystemLoader(templates)
        self._jinja = Environment(loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True)
        self._jinja.filters["css"] = _css_string
        self._jinja.filters["bodies"] = bodies
        self.copy = copy
        self.size = size
        self.bed = bed(size)
        words = booklet_words(templates, copy.language)
        self._given: dict[str, object] = {
            **copy.given,
            "title": copy.title,
            "edition": copy.edition,
            "size": size,
            "language": copy.language,
            "words": words,
            "how_to_print": how_to_print(words, size, self.bed),
            "made": copy.on.isoformat(),
            "line_mm": LINE_MM,
            "full_lines": int(size.text_height_mm // LINE_MM) - 1,
        }

    def set(self, plan: Plan) -> tuple[str, str]:
        """Give the HTML and the CSS."""
        given = {**self._given, "plan": plan}
        return (
            self._jinja.get_template(f"{self.copy.template}.html").render(given),
            self._jinja.get_template(f"{self.copy.template}.css").render(given),
        )


def print_booklet(copy: Copy, size: PageSize, theme: Path, press: Press) -> Booklet:
    """Print a booklet in one size. `theme` holds `print/`."""
    room = Room(theme / "print", copy, size)
    plan = plan_booklet(room, press)
    for _ in range(MOST_LAYOUTS):
        document = press.lay_out(*room.set(plan))
        firm = settle(copy.blocks, _measure(document, plan, size), room.bed.rows, plan.fits)
        if firm == plan:
            break
        plan = firm
    else:
        raise AssertionError(f"after {MOST_LAYOUTS} layouts the {size.name} booklet still strays from its plan")
    identifier = sha256(f"{copy.title} {copy.edition} {size.id}".encode()).hexdigest()[:32]
    return Booklet(pdf=press.write_pdf(document, identifier=identifier), plan=plan, size=size, bed=room.bed)


def plan_booklet(room: Room, press: Press) -> Plan:
    """Measure every block and settle the plan.

    A dish that overruns its opening is set in other ways too, each with less air than the one before, and stays in the
    first of those that cost it the fewest openings and keep what to take in hand on one page.
    """
    rows, blocks = room.bed.rows, room.copy.blocks
    extents = {name: Extent(pages=1, room_mm=0) for name in blocks.others}
    extents.update(_measure_dishes(room, press, dict.fromkeys(blocks.dishes, AS_OTHERS)))
    fits: dict[str, Fit] = {}
    for closer in (_snug, _run_on):
        before = settle(blocks, extents, rows)
        long = before.longer_than(1) if closer is _snug else before.longer_than(2)
        tried = {dish: closer(dish, extents) for dish in long}
        found = extents | _measure_dishes(room, press, tried)
        after = settle(blocks, found, rows)
        better = {dish: fit for dish, fit in tried.items() if _cost(dish, after) < _cost(dish, before)}
        extents.update({name: found[name] for name in halves(tuple(better))})
        fits.update(better)
    rough = settle(blocks, extents, rows, fits)
    extents.update(_lay_and_measure(room, press, draft(blocks.others, dish_pages=rough.dish_pages)))
    return settle(blocks, extents, rows, fits)


def _snug(dish: str, extents: Mapping[str, Extent]) -> Fit:
    """Save room on a dish, and take stove and pot from the left page if that is the one that overruns."""
    return Fit(snug=True, small_right=extents[in_hand(dish)].pages > 1)


def _run_on(dish: str, extents: Mapping[str, Extent]) -> Fit:  # noqa: ARG001 - chosen from like `_snug`
    """Save all the room there is: what to do begins on the page on which what to take in hand ends."""
    return Fit(snug=True, small_right=True, run_on=True)


def _cost(dish: str, plan: Plan) -> tuple[int, int]:
    """Give what a dish costs as it is planned: openings first, then pages in hand."""
    return plan.openings[dish], plan.blocks[in_hand(dish)].pages


def _measure_dishes(room: Room, press: Press, fits: Mapping[str, Fit]) -> dict[str, Extent]:
    """Measure both halves of some dishes, set as their fits say, a lot at a time."""
    dishes = tuple(fits)
    extents: dict[str, Extent] = {}
    for start in range(0, len(dishes), LOT):
        lot = halves(dishes[start : start + LOT])
        extents.update(_lay_and_measure(room, press, draft(lot, fits=fits)))
    return extents


def _lay_and_measure(room: Room, press: Press, plan: Plan) -> Mapping[str, Extent]:
    return _measure(press.lay_out(*room.set(plan)), plan, room.size)


def _measure(document: Laid, plan: Plan, size: PageSize) -> Mapping[str, Extent]:
    """See how many pages each block takes, and what is left on its last, by the anchors at its start and end."""
    found: dict[str, tuple[int, float]] = {}
    for number, page in enumerate(document.pages, 1):
        for name, anchor in page.anchors.items():
            found.setdefault(name, (number, anchor[1]))
    extents = {}
    before = 0
    for name in plan.blocks:
        first, (last, below_px) = found[name][0], found[f"end-{name}"]
        room_mm = size.height_mm - size.bottom_mm - below_px / PX_PER_MM
        extents[name] = Extent(pages=last - first + 1, room_mm=room_mm, joins=first == before)
        before = last
    return extents


def _css_string(text: str) -> str:
    """Write a text so that it can stand between double quotes in a style sheet, whatever is in it."""
    return "".join(letter if letter.isalnum() else f"\\{ord(letter):06x}" for letter in text)
