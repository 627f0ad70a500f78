"""The booklet of a trip: everything that is printed to take along, set in one system of units.

A text is "" where there is nothing to say. `opening` and `openings` are ids of the openings that a reader is led to.
"""

from dataclasses import dataclass
from datetime import date

from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.field_sheet import FieldOpening


@dataclass(frozen=True, slots=True, kw_only=True)
class Goer:
    """Somebody who comes along: what matters of them, and what they must not eat."""

    name: str
    about: str
    avoids: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuLine:
    """A dish of the menu: when it is begun and eaten, and who eats it if not all.

    `number` is that of the meal, with which the marks of its packs begin.
    """

    number: str
    dish: str
    raw: bool
    opening: str
    begins: str
    eaten: str
    who: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuPlace:
    """The dishes of one place, in the order in which they are begun; `place` is "" where any will do."""

    place: str
    lines: tuple[MenuLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuDay:
    """A day of the menu; `on_the_move` names the packs that are eaten from all day."""

    heading: str
    on_the_move: str
    places: tuple[MenuPlace, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """An amount with what it is of."""

    label: str
    figure: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LegCard:
    """The water of a leg: what is filled into which containers, and what it is made up of, which adds up to it.

    `notes` say what to mind, `short` what the containers lack.
    """

    heading: str
    days: str
    fill: str
    containers: str
    made_of: tuple[Amount, ...]
    notes: tuple[str, ...]
    short: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotCard:
    """The water that is used at a stop where it is filled, which nobody carries; `notes` say how it is treated."""

    place: str
    day: str
    water: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FuelCard:
    """One fuel: what each stop burns, the margin, what all of it comes to, and what is taken along."""

    heading: str
    stops: tuple[Amount, ...]
    need: str
    taken: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PackLine:
    """A pack of the packing list; `holds` names its parts with their weights, `notes` say what to mind."""

    mark: str
    called: str
    holds: str
    weight: str
    bearer: str
    raw: bool
    sachet: bool
    is_inside: bool
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PackDay:
    """The packs of a day, in the order in which they are opened; `weight` says what it counts."""

    heading: str
    weight: str
    packs: tuple[PackLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BearerLine:
    """What one person carries of the packs on the first morning."""

    name: str
    weight: str
    packs: str


@dataclass(frozen=True, slots=True, kw_only=True)
class JarLine:
    """What is taken from one jar, or what must be got elsewhere; `use_by` is the day on its label."""

    mark: str
    weight: str
    use_by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FillLine:
    """One component: all that the trip wants of it, from which jars, and how much of it goes into which pack."""

    component: str
    raw: bool
    need: str
    jars: tuple[JarLine, ...]
    into: tuple[Amount, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KitLine:
    """A thing to take along, how many of it, and why."""

    count: str
    what: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DishRef:
    """A dish that a reader is led to, and what is said of it there."""

    name: str
    opening: str
    says: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AvoidLine:
    """Somebody who avoids something, and the dishes of the trip that hold it, whoever eats them."""

    name: str
    avoids: str
    dishes: tuple[DishRef, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetyCard:
    """What to mind on this trip: what the rules found, what is RAW, who avoids what, and the general cautions."""

    findings: tuple[str, ...]
    raw: tuple[DishRef, ...]
    people: tuple[AvoidLine, ...]
    general: tuple[Caution, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TripBook:
    """The booklet of a trip. `on` is the day that `day` prints, on which it was worked out; `file` the trip's."""

    id: str
    file: str
    name: str
    about: str
    dates: str
    language: str
    edition: str
    day: str
    on: date
    people: tuple[Goer, ...]
    how_to_use: tuple[str, ...]
    menu: tuple[MenuDay, ...]
    legs: tuple[LegCard, ...]
    on_the_spot: tuple[SpotCard, ...]
    water_notes: tuple[str, ...]
    fuels: tuple[FuelCard, ...]
    fuel_notes: tuple[str, ...]
    packing: tuple[PackDay, ...]
    packed: str
    cooled: str
    bearers: tuple[BearerLine, ...]
    fills: tuple[FillLine, ...]
    kit: tuple[KitLine, ...]
    rubbish: str
    openings: tuple[FieldOpening, ...]
    safety: SafetyCard
    notes: tuple[str, ...]
