"""Every constant of ours in one list, so that a page can show them and a test can look them over."""

from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass

from packlarder.figures import (
    air_and_water,
    cooking,
    dryness,
    fuels,
    hands,
    margins,
    soaking,
    stoves,
    units,
    verbs,
)
from packlarder.figures.figure import Figure

_ROOMS = (units, air_and_water, fuels, stoves, cooking, margins, hands, verbs, soaking, dryness)


def all_figures() -> tuple[Figure, ...]:
    """Give every figure of the rooms above, in the order in which they stand there, each once."""
    things = (thing for room in _ROOMS for name, thing in vars(room).items() if not name.startswith("__"))
    return tuple(dict.fromkeys(figure for thing in things for figure in _figures_in(thing)))


def _figures_in(thing: object) -> Iterator[Figure]:
    if isinstance(thing, Figure):
        yield thing
    elif isinstance(thing, Mapping):
        for value in thing.values():
            yield from _figures_in(value)
    elif is_dataclass(thing) and not isinstance(thing, type):
        for field in fields(thing):
            yield from _figures_in(getattr(thing, field.name))
