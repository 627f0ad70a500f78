"""The opening of a dish in a booklet: only what a tired cook needs, at one number of servings, one system.

The field booklet and the booklet of a trip share it; what only a trip knows, days, people and times of day, is empty in
the field booklet.
"""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Span:
    """A piece of a line; `strong` words must not be missed."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldPack:
    """A pack in the order of opening; `number` is empty for what travels in its own tub.

    On a trip `number` is the mark that it bears; where the opening serves several meals, `marks` are those of each.
    """

    number: str
    holds: str
    weight: str
    raw: bool
    sachet: bool
    is_inside: bool = False
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldFigure:
    """A line of the water and minutes table: `Water, cold` and `300 mL`; `part_of` marks a line of the one above it."""

    label: str
    figure: str
    part_of: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldStep:
    """A step: the minute it starts, its verb, what to do.

    On a trip `at` is its time of day, and then `minute` is ""; `raw` says that it handles something RAW.
    """

    minute: str
    verb: str
    line: tuple[Span, ...]
    at: str = ""
    raw: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldMeal:
    """A meal of a trip at which the dish of an opening is eaten, with its times of day; "" where there is none.

    `begins` is the first move, `soaks` when the water goes onto what soaks by itself, in the order of the opening's
    `soaks`, `ready` when it is done where it then stands until it is `eaten`. `note` says what has the flame before it.
    `marks` are those of its packs, where the opening serves other meals too.
    """

    called: str
    where: str
    begins: str
    soaks: tuple[str, ...]
    ready: str
    eaten: str
    note: str
    marks: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class NotFor:
    """Somebody who must not eat a dish, `NOT FOR TOVE`, and why: `tree nuts: may hold almond`."""

    name: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """How something is shared out: what, and how much for `each`: `Runa 460 mL, Eskil 550 mL`."""

    what: str
    each: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldOpening:
    """The two facing pages of a dish: in hand on the left, to do on the right.

    `raw` is empty unless a part must be cooked to be safe. `done_when` says how to tell it is done. Of a trip: `meals`
    at which it is eaten, `soaks` says what each of their times of soaking is for, `for_whom` who eats how many
    portions, `not_for` who on the trip must not eat it, `shares` how it is shared out, `notes` what stands in for
    something else; `short` says that one page is enough for it.
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
    for_whom: str = ""
    meals: tuple[FieldMeal, ...] = ()
    soaks: tuple[str, ...] = ()
    not_for: tuple[NotFor, ...] = ()
    shares: tuple[Share, ...] = ()
    short: bool = False
    notes: tuple[str, ...] = ()
