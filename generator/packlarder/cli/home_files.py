"""The files that change when a trip came home: a new one of draws, the trip, and the dishes that were learnt about."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from difflib import unified_diff

from packlarder.book.amend import as_written, with_first, with_key, with_value
from packlarder.book.book import DRAWS_FOLDER, Book, dish_place, draws_place
from packlarder.book.nodes import Node, read_yaml
from packlarder.book.trip import Stands
from packlarder.cli import texts
from packlarder.cli.draw import HEAD
from packlarder.cli.home_said import LearntSaid, LeftSaid
from packlarder.cli.new_file import free_id
from packlarder.cli.options import Misuse
from packlarder.measure import as_typed, as_weighed
from packlarder.reckon.trip.home import TakenOut
from packlarder.reckon.trip.records import TripSums

TAKE = "take"
AROUND = 1
"""Lines shown around a change."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Changed:
    """The files of a book before and after; what is new stands only in `after`."""

    before: Mapping[str, bytes]
    after: Mapping[str, bytes]

    @property
    def new(self) -> tuple[str, ...]:
        """Name the files that were not there."""
        return tuple(file for file in self.after if file not in self.before)

    def diff(self) -> list[str]:
        """Show what changes in files that are there, line by line."""
        lines: list[str] = []
        for file, data in self.before.items():
            former, now = (one.decode().splitlines() for one in (data, self.after[file]))
            lines += unified_diff(former, now, file, file, lineterm="", n=AROUND)
        return lines


def changed_files(
    trip: TripSums,
    book: Book,
    held: Mapping[str, bytes],
    *,
    day: date,
    taken: Sequence[TakenOut],
    left: Sequence[LeftSaid],
    learnt: Sequence[LearntSaid],
) -> Changed:
    """Work out all that changes. Raises Misuse for a file in which that can not be done by a splice."""
    before: dict[str, bytes] = {}
    after: dict[str, bytes] = {}
    if taken:
        after[draws_place(_draws_id(trip, book, held, taken)).file] = draws_text(trip, taken).encode()
    file = trip.place.file
    before[file] = held[file]
    after[file] = _or_refuse(came_home(held[file], day, left), file)
    for one in learnt:
        file = dish_place(one.dish).file
        before[file] = held[file]
        after[file] = _or_refuse(with_lesson(after.get(file, held[file]), one, day), file)
    return Changed(before=before, after=after)


def draws_text(trip: TripSums, taken: Sequence[TakenOut]) -> str:
    """Write the file of what was drawn: on the day of departure, for the trip."""
    lines = [f"date: {trip.model.starts.isoformat()}", f"for: {as_written(trip.model.name)}", "drawn:"]
    deeds = [f"  - {{from: {one.mark}, took: {_took(one)}}}" for one in taken]
    width = max(map(len, deeds))
    lines += [f"{deed:<{width}}  # {one.component.model.name}" for deed, one in zip(deeds, taken, strict=True)]
    return HEAD + "".join(f"{line}\n" for line in lines)


def _took(one: TakenOut) -> str:
    """Give what was taken; where nothing was left, all: a jar that was emptied holds no tenth of a gram more."""
    return "all" if one.emptied else as_typed(as_weighed(one.grams))


def _draws_id(trip: TripSums, book: Book, held: Mapping[str, bytes], taken: Sequence[TakenOut]) -> str:
    """Name the file so that it is read after all others of that day and those containers."""
    marks = {one.mark for one in taken}
    starts = trip.model.starts
    before = [
        id
        for id, draws in book.draws.items()
        if draws.date == starts and any(one.from_ in marks for one in draws.drawn)
    ]
    names = {file.removeprefix(f"{DRAWS_FOLDER}/").partition(".")[0] for file in held if file.startswith(DRAWS_FOLDER)}
    return free_id(f"{starts.isoformat()}-{trip.id}", names, after=max(before, default=""))


def came_home(data: bytes, day: date, left: Sequence[LeftSaid]) -> bytes | None:
    """Mark a trip gone in its file, and say when it came home and what was left; None where that can not be done."""
    read = read_yaml("", data).value or {}
    stands = Stands.GONE.value
    gone = (
        with_value(data, ("stands",), stands) if "stands" in read else with_key(data, "stands", stands, after="starts")
    )
    told: dict[str, Node] = {"date": day.isoformat()}
    if left:
        told["left"] = [_left_line(one) for one in left]
    return None if gone is None else with_key(gone, "came home", told)


def _left_line(one: LeftSaid) -> Node:
    detail: dict[str, Node] = {"weight": one.weight, "why": one.why}
    return {one.component.model.name.lower(): detail if one.why else one.weight}


def with_lesson(data: bytes, learnt: LearntSaid, day: date) -> bytes | None:
    """Change the amount of a part in a dish's file, and tell of it; None where that can not be done."""
    amount = with_value(data, learnt.path, learnt.new) or with_value(data, (*learnt.path, TAKE), learnt.new)
    entry = {"date": day.isoformat(), "change": learnt.change} | ({"why": learnt.why} if learnt.why else {})
    return None if amount is None else with_first(amount, "learnt", entry)


def _or_refuse(data: bytes | None, file: str) -> bytes:
    if data is None:
        raise Misuse(texts.BY_HAND.format(file=file))
    return data
