"""Keys with nothing behind them: where a model would take that for a key left out, it is a slip all the same."""

from collections.abc import Iterator

from packlarder.book.base import CARRIED_THROUGH
from packlarder.book.nodes import Node
from packlarder.faults import Fault, KeyPath, Place, Spot

FOLLOWING = frozenset({"one-verb", "one-way", "one-origin", "missing-key"})
"""What is said of a mapping, or of a key, that has nothing behind one of its keys."""

MIXED_UP = frozenset({"sentence-with-signs", "two-in-one"})
"""What is said of lines that YAML takes for keys, or of keys that stand beside a name instead of behind it."""


def with_empty_values(file: str, value: Node, told: tuple[Fault, ...], allowed: frozenset[str]) -> tuple[Fault, ...]:
    """Add a fault for each empty value to what a model said of a file, and leave out what only follows from one.

    `allowed` are keys of the file itself that may stand empty.
    """
    empty = set(_empty(value, ())) - {(key,) for key in allowed}
    empty -= {fault.place.path for fault in told if fault.code not in FOLLOWING}
    mixed_up = {fault.place.path[:-1] for fault in told if fault.code in MIXED_UP}
    empty = {path for path in empty if path[:-1] not in mixed_up}
    around = {path[:-1] for path in empty} | empty
    kept = (fault for fault in told if not (fault.code in FOLLOWING and fault.place.path in around))
    return (*kept, *(_nothing(file, path) for path in sorted(empty, key=repr)))


def _empty(value: Node, path: KeyPath) -> Iterator[KeyPath]:
    if isinstance(value, dict):
        for key, inner in value.items():
            if not key.startswith(CARRIED_THROUGH):
                yield from [(*path, key)] if inner is None else _empty(inner, (*path, key))
    elif isinstance(value, list):
        for index, inner in enumerate(value):
            yield from _empty(inner, (*path, index))


def _nothing(file: str, path: KeyPath) -> Fault:
    return Fault(
        place=Place(file=file, path=path, spot=Spot.KEY),
        code="empty-value",
        message=f"nothing stands after `{path[-1]}`",
        help="write its value, or leave the whole line out",
    )
