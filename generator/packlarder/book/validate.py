"""From plain data to a model, or to faults: what pydantic found, in the author's words and at the author's keys."""

from collections.abc import Hashable, Sequence
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import cache
from typing import Any, TypeVar, cast, get_args

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails, core_schema

from packlarder.book.base import CARRIED_THROUGH
from packlarder.book.meant import closest
from packlarder.book.trail import Trail, follow
from packlarder.book.wording import (
    SHAPES,
    Said,
    Words,
    in_plain_words,
    missing_key,
    unknown_key,
    wrong_shape,
)
from packlarder.faults import Fault, Key, KeyPath, Place, Spot

T = TypeVar("T")

ROUNDS = 4
"""How often keys that are carried through are taken out; once is enough unless they hide in alternatives."""

KNOWN_KINDS = frozenset(get_args(core_schema.ErrorType))
"""pydantic's own types of error; others are codes of our validators."""


def validate(kind: type[T], file: str, value: object) -> T | tuple[Fault, ...]:
    """Make a model of what was read from a file, or say all that is wrong with it.

    Only the keys of the file are known here (`went in`), not the names of fields. Keys that begin with `x-` are left
    out.
    """
    adapter = _adapter(cast("Hashable", kind))
    for _ in range(ROUNDS):
        try:
            return cast("T", adapter.validate_python(value, by_alias=True, by_name=False))
        except ValidationError as error:
            complaints = [_Complaint.of(details, adapter) for details in error.errors(include_url=False)]
        carried = {one.trail.path for one in complaints if one.is_carried}
        if not carried:
            break
        value = _without(value, carried)
    return tuple(_faults(file, _settle(complaints)))


@cache
def _adapter(kind: Hashable) -> TypeAdapter[object]:
    return TypeAdapter(cast("type[object]", kind))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Complaint:
    """One error of pydantic's, with the place it belongs to."""

    kind: str
    trail: Trail
    value: object
    facts: dict[str, Any]  # Any: facts are numbers, texts and more
    message: str
    shapes: tuple[str, ...] = ()

    @classmethod
    def of(cls, details: ErrorDetails, adapter: TypeAdapter[object]) -> "_Complaint":
        return cls(
            kind=details["type"],
            trail=follow(adapter.core_schema, details["loc"]),
            value=details["input"],
            facts=details.get("ctx", {}),
            message=details["msg"],
            shapes=(SHAPES[details["type"]],) if details["type"] in SHAPES else (),
        )

    @property
    def is_carried(self) -> bool:
        return self.kind == "extra_forbidden" and str(self.trail.path[-1]).startswith(CARRIED_THROUGH)


def _without(value: object, carried: set[KeyPath]) -> object:
    """Copy plain data without the keys at these paths."""
    copy = deepcopy(value)
    for path in carried:
        _take_out(copy, path)
    return copy


def _take_out(inside: object, path: KeyPath) -> None:
    """Take a key out; steps that only a model's shorthand knows (a list for a whole mapping) are passed over."""
    *steps, last = path
    for step in steps:
        if isinstance(inside, dict):
            inside = inside.get(step, inside)
        elif isinstance(inside, list) and isinstance(step, int):
            inside = inside[step]
    if isinstance(inside, dict):
        inside.pop(last, None)


def _settle(complaints: Sequence[_Complaint], level: int = 0) -> list[_Complaint]:
    """Where a value may be one of several things, keep what is said of the one it comes closest to."""
    settled = [one for one in complaints if len(one.trail.turns) <= level]
    turning = [one for one in complaints if len(one.trail.turns) > level]
    for place in dict.fromkeys(one.trail.turns[level].path for one in turning):
        here = [one for one in turning if one.trail.turns[level].path == place]
        choices = dict.fromkeys(one.trail.turns[level].choice for one in here)
        ways = [_settle([one for one in here if one.trail.turns[level].choice == name], level + 1) for name in choices]
        possible = [way for way in ways if not _is_other_shape(way, place)]
        best: list[_Complaint] = min(possible, key=len) if possible else _merged(ways)
        settled.extend(best)
    return settled


def _is_other_shape(way: Sequence[_Complaint], place: KeyPath) -> bool:
    return any(one.shapes and one.trail.path == place for one in way)


def _merged(ways: Sequence[Sequence[_Complaint]]) -> list[_Complaint]:
    """Make one complaint of several that each want another shape at the same place."""
    shapes = [shape for way in ways for one in way for shape in one.shapes]
    return [replace(ways[0][0], shapes=tuple(dict.fromkeys(shapes)))]


def _faults(file: str, complaints: Sequence[_Complaint]) -> list[Fault]:
    missing = {one.trail.path: one for one in complaints if one.kind == "missing"}
    unknown = [_unknown(file, one, missing) for one in complaints if one.kind == "extra_forbidden"]
    others = [one for one in complaints if one.kind not in ("missing", "extra_forbidden")]
    real = [one for one in others if not _follows_from(one, complaints)]
    return [*unknown, *(_missing(file, path) for path in missing), *(_wrong(file, one) for one in real)]


def _follows_from(complaint: _Complaint, others: Sequence[_Complaint]) -> bool:
    """Tell whether a list is too short only because what stands in it is wrong."""
    path = complaint.trail.path
    inside = (one for one in others if one is not complaint and one.trail.path[: len(path)] == path)
    return complaint.kind == "too_short" and any(inside)


def _unknown(file: str, complaint: _Complaint, missing: dict[KeyPath, _Complaint]) -> Fault:
    """Make the fault of a key that is not known; if it stands for one that is missing, that one is taken out."""
    *around, last = complaint.trail.path
    key, known_keys = str(last), complaint.trail.known_keys
    tight = key.partition(":")[0]
    lacking = [str(path[-1]) for path in missing if path[:-1] == tuple(around)]
    meant = tight if tight in known_keys else closest(key, lacking) or closest(key, known_keys)
    missing.pop((*around, meant or ""), None)
    words = unknown_key(key, complaint.value, meant, known_keys)
    return _fault(Place(file=file, path=complaint.trail.path, spot=Spot.KEY), words)


def _missing(file: str, path: KeyPath) -> Fault:
    return _fault(Place(file=file, path=path, spot=Spot.KEY), missing_key(str(path[-1])))


def _wrong(file: str, complaint: _Complaint) -> Fault:
    trail, facts = complaint.trail, complaint.facts
    place = Place(file=file, path=trail.path, spot=trail.spot)
    if complaint.shapes:
        words = wrong_shape(complaint.shapes, complaint.value, trail.inner_keys, may_be_left_out=trail.may_be_left_out)
        return _fault(place, words)
    if complaint.kind in KNOWN_KINDS:
        return _fault(place, in_plain_words(complaint.kind, Said(complaint.value, facts)))
    at: tuple[Key, ...] = facts.get("at", ())
    if trail.spot is Spot.VALUE:
        place = place.at(*at, spot=facts.get("spot", Spot.VALUE))
    also = tuple(Place(file=file, path=(*trail.path, *keys), spot=place.spot) for keys in facts.get("also", ()))
    return _fault(place, Words(complaint.kind, facts.get("message", complaint.message), facts.get("help", "")), also)


def _fault(place: Place, words: Words, also: tuple[Place, ...] = ()) -> Fault:
    return Fault(place=place, code=words.code, message=words.message, help=words.help, also=also)
