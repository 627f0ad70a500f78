"""Tells in which fields two trips differ, by names that people can read: `meals[2].sums.water`, `packs[1.1].items`.

What is written in the book is not compared, for that is what a test changes; nor what is behind a component, which is
known by its id. In a row each thing goes by what it is known by: a meal by its number, a pack by its mark, a fill by
its component. Things that are the same in another order are told by the name of their row.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass
from itertools import product

from packlarder.book.base import BookModel
from packlarder.reckon.records import ComponentSums, PlannedPack
from packlarder.reckon.trip import journey, records, stores

KNOWN_BY: Mapping[type, tuple[str, ...]] = {
    PlannedPack: ("number",),
    records.Eater: ("name",),
    records.StopSums: ("index",),
    records.TripMeal: ("number",),
    records.MoveRation: ("component", "day"),
    records.TripItem: ("component", "number"),
    records.TripPack: ("mark",),
    journey.Leg: ("number",),
    journey.StopWater: ("stop",),
    journey.StopFuel: ("stop",),
    journey.Fuel: ("fuel",),
    journey.SoakStart: ("step",),
    journey.MealClock: ("number",),
    journey.DayLoad: ("day",),
    journey.Bearing: ("name",),
    journey.Fed: ("name", "day"),
    journey.KitItem: ("what",),
    stores.Drawn: ("mark",),
    stores.Fill: ("component",),
    stores.Shortfall: ("component",),
    stores.OnTrays: ("component",),
    stores.DryingLoad: ("number",),
    stores.Task: ("kind", "components"),
}
"""What a thing is known by in its row; others go by where they stand in it."""
WHOLE = ("settled",)
"""What is not told in pieces: the workings of a meal, all of which show in its sums."""
DEEPEST = 3
"""A name has at most so many parts; what lies deeper goes by the field that holds it."""


def changed_in(before: records.TripSums, after: records.TripSums) -> set[str]:
    """Name every field in which a trip is not what it was."""
    return {_name(path) for path in _differ(before, after)}


def named(text: str) -> set[str]:
    """Read names as a test writes them, a line for each thing: `meals[1 2].sums: water heat` are four.

    What stands in brackets are things of one row, with hyphens for blanks; what stands after the colon are fields. A
    line without a colon names a thing that came or went, or changed as a whole.
    """
    return {name for line in text.strip().splitlines() for name in _in_line(line.strip())}


def _in_line(line: str) -> Iterator[str]:
    head, _, tail = line.partition(": ")
    row, _, rest = head.partition("[")
    ids, _, more = rest.partition("]")
    for id, field in product(ids.split() or [""], tail.split() or [""]):
        yield row + (f"[{id}]" if id else "") + more + (f".{field}" if field else "")


def _name(path: Sequence[str]) -> str:
    """Put a path into a name, cut off where it becomes too deep to read: after a thing's field, row or not."""
    kept: list[str] = []
    for part in path[:DEEPEST]:
        field, _, key = part.partition("[")
        in_a_thing = any("[" in one for one in kept)
        kept.append(field if in_a_thing else part)
        if field in WHOLE or (in_a_thing and key):
            break
    return ".".join(kept)


def _differ(before: object, after: object) -> Iterator[tuple[str, ...]]:
    """Give the paths to all that differs; an empty one where it differs itself."""
    if isinstance(before, ComponentSums) and isinstance(after, ComponentSums):
        before, after = before.id, after.id
    if isinstance(before, BookModel) and isinstance(after, BookModel):
        return
    old, new = _row(before), _row(after)
    if old is not None and new is not None:
        yield from _differ_in_row(old, new)
    elif type(before) is type(after) and _field_names(before):
        for name in _field_names(before):
            for path in _differ(getattr(before, name), getattr(after, name)):
                yield (name + path[0], *path[1:]) if path and path[0].startswith("[") else (name, *path)
    elif before != after:
        yield ()


def _differ_in_row(old: Mapping[str, object], new: Mapping[str, object]) -> Iterator[tuple[str, ...]]:
    """Give what differs in things of a row, what came and what went, and the row itself if its order changed."""
    if [key for key in old if key in new] != [key for key in new if key in old]:
        yield ()
    for key in dict.fromkeys([*old, *new]):
        if key in old and key in new:
            yield from ((f"[{key}]", *path) for path in _differ(old[key], new[key]))
        else:
            yield (f"[{key}]",)


def _row(value: object) -> Mapping[str, object] | None:
    """Give the things of a row by what they are known by; None for what is no row."""
    if isinstance(value, Mapping):
        return {str(key): one for key, one in value.items()}
    if not isinstance(value, tuple) or _field_names(value) or not all(map(_field_names, value)):
        return None
    found = {"+".join(_known_by(index, one)): one for index, one in enumerate(value)}
    assert len(found) == len(value), "two things of a row are known by the same"
    return found


def _known_by(index: int, one: object) -> Iterator[str]:
    if type(one) not in KNOWN_BY:
        yield str(index)
    for name in KNOWN_BY.get(type(one), ()):
        value = getattr(one, name)
        keys = [key.id if isinstance(key, ComponentSums) else str(key) for key in _each(value)]
        yield from (key.replace(" ", "-") for key in sorted(keys))


def _each(value: object) -> Sequence[object]:
    return value if isinstance(value, tuple) and not _field_names(value) else (value,)


def _field_names(value: object) -> Sequence[str]:
    """Give the names of a record's fields; none for anything else."""
    names: Sequence[str] = getattr(value, "_fields", ())
    return [field.name for field in fields(value)] if is_dataclass(value) else names
