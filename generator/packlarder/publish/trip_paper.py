"""The booklet of a trip on paper."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from packlarder.faults import Fault, Place
from packlarder.publish import file_names
from packlarder.publish.paper_binding import write_booklets
from packlarder.publish.paper_plan import Blocks, in_hand, to_do
from packlarder.publish.paper_setting import Copy
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.trip_field_sheet import TripBook

MENU = "menu"
BEFORE = ("front", MENU, "water", "packing", "filling", "kit")
BEHIND = ("safety", "writing")
PAIR = "{left}-and-{right}"
BOTH = "{left}; {right}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Two facing pages: a dish, in hand on the left and to do on the right, or two short dishes, a page each."""

    id: str
    left: FieldOpening
    right: FieldOpening | None = None

    @property
    def name(self) -> str:
        """Name what stands on it."""
        return self.left.name if self.right is None else BOTH.format(left=self.left.name, right=self.right.name)


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Where an opening is found: the block that it begins, and how many pages after the first of its spread."""

    block: str
    spread: str
    after: int


def build_trip_booklets(trip: TripBook, *, sizes: tuple[str, ...], theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `trip-<id>-<size>.pdf` and `trip-<id>-<size>-imposed-<sheet>.pdf` into `out` for each size.

    Faults are those of `write_booklets`, at the trip's file.
    """
    return write_booklets(trip_copy(trip), file_names.TRIP.format(id=trip.id), sizes=sizes, theme=theme, out=out)


def trip_copy(trip: TripBook) -> Copy:
    """Give what there is to set of a trip's booklet; its menu lies open at once."""
    spreads = spreads_of(trip.openings)
    names = {spread.id: spread.name for spread in spreads}
    place = Place(file=trip.file)
    blocks = Blocks(before=BEFORE, dishes=tuple(names), behind=BEHIND, on_the_left=frozenset({MENU}))
    return Copy(
        template="trip",
        blocks=blocks,
        given={"trip": trip, "spreads": spreads, "found": _found(spreads), "chapters": (*BEFORE[1:], *BEHIND)},
        title=trip.name,
        edition=trip.edition,
        language=trip.language,
        on=trip.on,
        place=place,
        names=names,
        places=dict.fromkeys(names, place),
    )


def spreads_of(openings: Sequence[FieldOpening]) -> tuple[Spread, ...]:
    """Give the spreads of a booklet: whole dishes in their order, then short ones two by two."""
    whole = [Spread(id=one.id, left=one) for one in openings if not one.short]
    short = [one for one in openings if one.short]
    pairs = [_pair(left, right) for left, right in zip(short[::2], short[1::2], strict=False)]
    last = [Spread(id=one.id, left=one) for one in short[2 * len(pairs) :]]
    return (*whole, *pairs, *last)


def _pair(left: FieldOpening, right: FieldOpening) -> Spread:
    return Spread(id=PAIR.format(left=left.id, right=right.id), left=left, right=right)


def _found(spreads: Sequence[Spread]) -> Mapping[str, Found]:
    found = {}
    for spread in spreads:
        found[spread.left.id] = Found(block=in_hand(spread.id), spread=spread.id, after=0)
        if spread.right is not None:
            found[spread.right.id] = Found(block=to_do(spread.id), spread=spread.id, after=1)
    return found
