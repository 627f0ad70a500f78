"""The sheet of a dish: everything its page, its opening in the booklet and its data need."""

from dataclasses import dataclass

from packlarder.sheets.facts import Link
from packlarder.sheets.printed import Line, Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A figure that people look for, with its label: the strip at the head of a page."""

    key: str
    label: str
    figure: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """A safety note: at most 25 words of ours, where its figure comes from and how well that is known."""

    rule: str
    severity: str
    text: str
    source: str
    standing: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """One part: what it is, how much, and its waters."""

    name: str
    component: str
    raw: bool
    must_be_cooked: str
    way: str
    measure: Printed
    dry: Printed
    fresh: Printed
    offered: Printed
    absorbed: Printed
    drained: Printed
    yield_from: str
    instead: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PackItem:
    """A part inside a pack."""

    name: str
    component: str
    raw: bool
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class PackRow:
    """A pack: `number` is `1`, `2`, ... in order of opening, `1.1` inside pack 1, empty for a tub of its own."""

    number: str
    items: tuple[PackItem, ...]
    weight: Printed
    raw: bool
    sachet: bool
    where: str
    inside: "tuple[PackRow, ...]" = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRow:
    """A step against the clock: `clock` as `0:10`, `minute` as `10`. The booklet has a shorter line of its own."""

    clock: Printed
    minute: Printed
    verb: str
    line: Line


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterRow:
    """A piece of the water to carry; the pieces printed add up to the total printed."""

    key: str
    label: str
    figure: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class FoodRow:
    """What a serving feeds: a nutrient and its amount; `complete` is false where some part's figure is unknown."""

    label: str
    figure: Printed
    complete: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Lesson:
    """What was learnt from cooking it once."""

    day: str
    change: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DishSheet:
    """A dish, worked out for each of `servings` under the conditions it names.

    `usual` is the index of the usual servings. `raw` is empty unless a part must be cooked to be safe; then it names
    the parts and says what to do. `done_when` says how to tell that it is done. `missing` lists the sums that could not
    be made. `eaten_on` are the planned trips on which it is eaten.
    """

    id: str
    name: str
    meal: str
    method: str
    about: str
    servings: tuple[float, ...]
    usual: int
    strip: tuple[Reading, ...]
    raw_parts: tuple[str, ...]
    raw: Line
    done_when: str
    parts: tuple[PartRow, ...]
    packs: tuple[PackRow, ...]
    steps: tuple[StepRow, ...]
    waters: tuple[WaterRow, ...]
    water_total: Printed
    clock: tuple[Reading, ...]
    heat: tuple[Reading, ...]
    conditions: tuple[str, ...]
    cautions: tuple[Caution, ...]
    feeds: tuple[FoodRow, ...]
    allergens: tuple[str, ...]
    traces: tuple[str, ...]
    origins: tuple[str, ...]
    missing: tuple[str, ...]
    tried: tuple[str, ...]
    learnt: tuple[Lesson, ...]
    notes: tuple[str, ...]
    photo: str
    eaten_on: tuple[Link, ...] = ()
