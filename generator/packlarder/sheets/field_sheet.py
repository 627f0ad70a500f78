"""The opening of a dish in the field booklet: only what a tired cook needs, at one number of servings, one system."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """A piece of a line; `strong` words must not be missed."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldPack:
    """A pack in the order of opening; `number` is empty for what travels in its own tub."""

    number: str
    holds: str
    weight: str
    raw: bool
    sachet: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldFigure:
    """A line of the water and minutes table: `Water, cold` and `300 mL`; `part_of` marks a line of the one above it."""

    label: str
    figure: str
    part_of: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldStep:
    """A step: the minute it starts, its verb, what to do."""

    minute: str
    verb: str
    line: tuple[Span, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldOpening:
    """The two facing pages of a dish: in hand on the left, to do on the right.

    `raw` is empty unless a part must be cooked to be safe. `done_when` says how to tell it is done.
    """

    id: str
    name: str
    heading: str
    packs: tuple[FieldPack, ...]
    figures: tuple[FieldFigure, ...]
    raw: tuple[Span, ...]
    done_when: str
    steps: tuple[FieldStep, ...]
    cautions: tuple[str, ...]
    allergens: str
    conditions: str
    components: tuple[str, ...]
