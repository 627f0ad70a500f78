"""The sheet of a trip: what its page shows, in the order in which people plan, pack, and cook on the way.

Each figure is printed for both systems of units; bare numbers (`ml`, `grams`, `kcal`) are for pictures alone.
"""

from dataclasses import dataclass

from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Line, Printed
from packlarder.sheets.trip_stores_sheet import FillRow, LoadRow, PlanDay, ShortGroup


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonRow:
    """Somebody who comes along: appetite beside a serving, what they avoid, what else matters of them."""

    name: str
    appetite: str
    avoids: tuple[str, ...]
    says: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class StopRow:
    """A stop: when it is reached, how high and how cold it is there, which water it has, what can be bought."""

    place: str
    day: str
    on: str
    height: Printed
    air: Printed
    water: Printed
    windy: bool
    fills: str
    other_water: str
    to_buy: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SoakRow:
    """Food that soaks by itself: when its water goes in, and the step in words."""

    clock: str
    verb: str
    line: Line


@dataclass(frozen=True, slots=True, kw_only=True)
class MealRow:
    """A dish of the menu.

    `waits` says what it waits for or how long it stands ready, `instead` what stands in for what; `water` is what is
    carried for it, `not_carried` what lake or sea serves.
    """

    number: int
    meal: str
    place: str
    dish: Link
    raw: tuple[str, ...]
    for_whom: str
    portions: str
    eat_at: str
    start_at: str
    minutes: str
    water: Printed
    not_carried: Printed
    soaks: tuple[SoakRow, ...]
    cooked_on: str
    waits: tuple[str, ...]
    instead: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MenuDay:
    """The dishes of a day; `on` is "" for what is in reserve. `move` is what is eaten from the bag."""

    day: str
    on: str
    meals: tuple[MealRow, ...]
    move: tuple["PackedItem", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PackedItem:
    """A component in a pack."""

    component: Link
    called: str
    raw: bool
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class TripPackRow:
    """A pack: its mark, what it is for, what is in it, who carries it; `bought_at` is where, "" if it is from home."""

    mark: str
    called: str
    items: tuple[PackedItem, ...]
    weight: Printed
    raw: bool
    sachet: bool
    bearer: str
    bought_at: str
    inside: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PackDay:
    """The packs of a day and what they weigh together; `on` is "" for what is in reserve."""

    day: str
    on: str
    packs: tuple[TripPackRow, ...]
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class BearerRow:
    """What somebody carries on the first morning, and the marks of their packs."""

    name: str
    weight: Printed
    packs: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterPiece:
    """A piece of a leg's water; pieces of one `kind` are drawn alike."""

    key: str
    kind: str
    label: str
    figure: Printed
    ml: int


@dataclass(frozen=True, slots=True, kw_only=True)
class LegRow:
    """A leg and its water: the pieces printed add up to the total printed, in both systems.

    `fills` says where it is filled, `treated` how and how much is made fit to drink, `other` what lake or sea serves.
    `short` is empty where the containers hold it; `known` is false where no containers are named.
    """

    title: str
    days: str
    fills: str
    heaviest: bool
    pieces: tuple[WaterPiece, ...]
    total: Printed
    treated: Line
    other: Line
    short: Line
    known: bool
    says: Printed
    ml: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StopWaterRow:
    """The water of one stop: for its dishes, to drink plain, to wash, and what lake or sea serves.

    `treated` says what of it must be made fit to drink there, () where nothing must.
    """

    place: str
    dishes: Printed
    drinking: Printed
    washing: Printed
    on_the_spot: bool
    other: Printed
    other_from: str
    treated: Line


@dataclass(frozen=True, slots=True, kw_only=True)
class Containers:
    """What water is carried in, as the trip names it, and all it holds (None where nothing is named)."""

    each: tuple[str, ...]
    hold: Printed | None
    ml: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StopFuelRow:
    """The fuel of one stop: for dishes, to boil water safe, to melt snow, and in all."""

    place: str
    cooking: Printed
    treating: Printed
    melting: Printed
    weight: Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class FuelSheet:
    """One fuel: on which stoves, stop by stop, with its margin, and what is taken along. Its rows add up to `need`."""

    fuel: str
    stoves: str
    stops: tuple[StopFuelRow, ...]
    margin: Printed
    need: Printed
    taken: tuple[Printed, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DayRow:
    """What is eaten on a day and carried on its morning, and what the day feeds one person on average.

    The short figures are for columns of a picture, which are narrow.
    """

    day: str
    on: str
    food: Printed
    carried: Printed
    volume: Printed
    energy: Printed
    carried_short: Printed
    energy_short: Printed
    short_day: str
    food_g: float
    carried_g: float
    kcal: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FedRow:
    """What somebody eats in a day on average; `beside` says where it lies beside the planning range."""

    name: str
    energy: str
    protein: str
    salt: str
    food: Printed
    beside: str
    complete: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FedTable:
    """What people eat, person by person, and the energy of each day; `most` and `least` are the planning range.

    `by_day` are rows of a day and the energy of each person on it, in the order of `rows`.
    """

    rows: tuple[FedRow, ...]
    by_day: tuple[tuple[str, tuple[str, ...]], ...]
    least: Printed
    most: Printed
    least_kcal: float
    most_kcal: float
    planning: Line
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KitRow:
    """A thing to take along and why; `count` is "" for a single one."""

    what: str
    count: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TripSheet:
    """A trip as its page shows it; of one that is `gone`, what was to be filled, dried and done is left out."""

    id: str
    name: str
    about: str
    gone: bool
    dates: str
    strip: tuple[Fact, ...]
    people: tuple[PersonRow, ...]
    stops: tuple[StopRow, ...]
    menu: tuple[MenuDay, ...]
    packing: tuple[PackDay, ...]
    food_weight: Printed
    bearing: tuple[BearerRow, ...]
    fills: tuple[FillRow, ...]
    shortfall: tuple[ShortGroup, ...]
    loads: tuple[LoadRow, ...]
    plan: tuple[PlanDay, ...]
    legs: tuple[LegRow, ...]
    stop_waters: tuple[StopWaterRow, ...]
    containers: Containers
    fuels: tuple[FuelSheet, ...]
    days: tuple[DayRow, ...]
    fed: FedTable | None
    kit: tuple[KitRow, ...]
    rubbish: tuple[Fact, ...]
    cautions: tuple[Caution, ...]
    missing: tuple[str, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TripEntry:
    """A line of the list of trips. `figures` are those of the trip's strip, none where another process has them."""

    link: Link
    dates: str
    people: str
    gone: bool
    figures: tuple[Fact, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TripIndex:
    """Every trip of a book: planned ones in the order of their start, then those that are gone, the latest first.

    `next` is the planned trip that comes first after the book's day, or is under way.
    """

    planned: tuple[TripEntry, ...]
    gone: tuple[TripEntry, ...]
    next: TripEntry | None
