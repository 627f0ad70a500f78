"""The sheets of labels: what a jar or pouch says of itself, and what a pack for a trip says."""

from collections.abc import Sequence
from dataclasses import dataclass

from packlarder.sheets.field_sheet import NotFor


@dataclass(frozen=True, slots=True, kw_only=True)
class JarLabel:
    """What stands on a jar or pouch, and in short on its lid. A text is "" where there is nothing to say.

    `file` is the book's file that it comes from, for faults. `mark` names the container, as it is drawn from.
    `state` is RAW (then `raw`), `cook before eating`, `cooked` or `ready`. `take_out` says that a sachet lies in it.
    `stands_for` is the fresh food, `bring_back` how it takes its water, `cook_to` the temperature it must reach inside.
    `keeping` says why `use_by` is what it is. `warning` is what must be known before it is stored or eaten.
    `contains` and `may_contain` are allergens alone, `dried` and `use_by` days alone, `cook_to` is such as `71 °C`,
    `nth` such as `2 of 3`: the paper puts its own words before them. `code_text` is what a QR code carries as plain
    text, what matters most in its first lines: a code with little room bears only those.
    """

    file: str
    mark: str
    name: str
    form: str
    raw: bool
    state: str
    take_out: str
    dried: str
    net: str
    stands_for: str
    bring_back: str
    cook_to: str
    contains: str
    may_contain: str
    use_by: str
    keeping: str
    nth: str
    warning: str
    code_text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TripPackLabel:
    """What stands on a pack that is filled for a trip.

    `when` is the day and meal, or a line to write them on where "" ; `number` says which pack of how many it is, and
    `order` when it is opened. `holds` are its parts with their weights. `water` is how much of which water goes in,
    `minutes` how long, `done` how to tell. `fill_mark` says how high the water stands, by volume. `file`, `contains`,
    `may_contain` and `code_text` are as on a jar. `net` is printed where it `holds` more than one part. `caution` says
    what must be known of RAW food. Of a trip, `bearer` is who carries it, `not_for` who must not eat its dish.
    """

    file: str
    dish: str
    servings: str
    when: str
    number: str
    order: str
    holds: tuple[str, ...]
    net: str
    raw: bool
    take_out: str
    water: str
    minutes: str
    done: str
    fill_mark: str
    contains: str
    code_text: str
    bearer: str = ""
    may_contain: str = ""
    caution: str = ""
    not_for: tuple[NotFor, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelSet:
    """Labels to be printed together; `with_code` asks for a QR code on each."""

    title: str
    language: str
    edition: str
    jars: Sequence[JarLabel] = ()
    packs: Sequence[TripPackLabel] = ()
    with_code: bool = True
