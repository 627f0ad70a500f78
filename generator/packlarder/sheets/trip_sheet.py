"""The sheet of a trip: what its page shows, in the order in which people plan, pack, and cook on the way.

Each figure is printed for both systems of units; bare numbers (`ml`, `grams`, `kcal`) are for pictures alone.
"""

from dataclasses import dataclass

from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Line, Printed
from packlarder.sheets.trip_journey_sheet import Containers, DayRow, FedTable, FuelSheet, KitRow, LegRow, StopWaterRow
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
