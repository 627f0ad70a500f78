"""The booklet of a trip on paper."""

from pathlib import Path

from packlarder.faults import Fault, Place
from packlarder.publish import file_names
from packlarder.publish.paper_binding import write_booklets
from packlarder.publish.paper_plan import Blocks
from packlarder.publish.paper_setting import Copy
from packlarder.sheets.trip_field_sheet import TripBook

MENU = "menu"
BEFORE = ("front", MENU, "water", "packing", "filling", "kit")
BEHIND = ("safety", "writing")


def build_trip_booklets(trip: TripBook, *, sizes: tuple[str, ...], theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `trip-<id>-<size>.pdf` and `trip-<id>-<size>-imposed-<sheet>.pdf` into `out` for each size.

    Faults are those of `write_booklets`, at the trip's file.
    """
    return write_booklets(trip_copy(trip), file_names.TRIP.format(id=trip.id), sizes=sizes, theme=theme, out=out)


def trip_copy(trip: TripBook) -> Copy:
    """Give what there is to set of a trip's booklet; its menu lies open at once."""
    names = {opening.id: opening.name for opening in trip.openings}
    place = Place(file=trip.file)
    blocks = Blocks(before=BEFORE, dishes=tuple(names), behind=BEHIND, on_the_left=frozenset({MENU}))
    return Copy(
        template="trip",
        blocks=blocks,
        given={"trip": trip, "chapters": (*BEFORE[1:], *BEHIND)},
        title=trip.name,
        edition=trip.edition,
        language=trip.language,
        on=trip.on,
        place=place,
        names=names,
        places=dict.fromkeys(names, place),
    )
