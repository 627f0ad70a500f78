"""What the sums of a trip hand on, first part: people, stops, meals, packs, and a trip as a whole.

Weights are in g, waters in mL, times in minutes unless a moment is meant. Weights of food are those that are printed,
so that the packing list is the sum of all meals to the gram.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property

from packlarder.book.dish import Meal
from packlarder.book.person import PersonDetail
from packlarder.book.stop import Stop
from packlarder.book.trip import Stands, Trip
from packlarder.faults import Gap, Place
from packlarder.reckon.records import ComponentSums, Conditions, DishPlan, DishSums
from packlarder.reckon.settled import Settled
from packlarder.reckon.trip.journey import Journey
from packlarder.reckon.trip.stores import Stores


@dataclass(frozen=True, slots=True, kw_only=True)
class Eater:
    """Somebody who comes along. `portion` is their share of a serving, `burden` of the load; `drinks_ml` is a day's."""

    name: str
    model: PersonDetail
    portion: float
    burden: float
    drinks_ml: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StopSums:
    """A stop with all that it left unsaid filled in; `index` counts from 0. `on` is the date on which it is reached.

    `conditions` are what its dishes are worked out for: water of snow is taken to be at 0 °C once it is melted.
    """

    index: int
    model: Stop
    place: Place
    on: date
    conditions: Conditions


@dataclass(frozen=True, slots=True, kw_only=True)
class TripMeal:
    """A dish at a stop, worked out for those who eat it there.

    `number` counts all dishes of the trip from 1, in the order in which they are eaten; what is in reserve for a spare
    day comes last and has `stop` None. `eaters` are names, `portions` the sum of their appetites. `line` is where it is
    written. `instead[i]` is the component that stands in for part i. `settled` and `sums` are for its stop.
    `water_pot` is a second pot, in which its water gets hot while its own holds food, "" where none is wanted or along.
    """

    number: int
    stop: int | None
    day: int
    on: date
    eat_at: datetime
    meal: Meal
    dish: str
    line: Place
    eaters: tuple[str, ...]
    portions: float
    plan: DishPlan
    settled: Settled
    sums: DishSums
    instead: Mapping[int, ComponentSums]
    water_pot: str = ""

    @property
    def sitting(self) -> tuple[int, datetime]:
        """Give what dishes share that are eaten together: where, -1 for the spare day, and when."""
        return -1 if self.stop is None else self.stop, self.eat_at

    @property
    def spare(self) -> bool:
        """Tell whether it is in reserve."""
        return self.stop is None


@dataclass(frozen=True, slots=True, kw_only=True)
class MoveRation:
    """Food of one day that is eaten from the bag, of one component, for all; `on` is the day on which it is eaten."""

    day: int
    on: date
    component: ComponentSums
    dry_g: float
    spare: bool
    line: Place


@dataclass(frozen=True, slots=True, kw_only=True)
class TripItem:
    """A component in a pack, with the grams that are printed; `number` is that of its meal, 0 for food on the move."""

    component: ComponentSums
    called: str
    grams: float
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TripPack:
    """A pack that is filled for the trip.

    `mark` is written on it: the number of its meal, a stop and the number of the pack in it (`4.1`); `M2` for the food
    on the move of day 2; `T1` for a tub of its own that serves the whole trip (then `day` is its first, and `meal` is
    None). `bought_at` is the stop where it is bought, None for what comes from home; `bearer` is "" where nobody
    carries anything. A pack inside another is told by `inside`, the mark of the outer one.
    Food that is warmed or steeped in its pack has one for each eater: `for_` is their name, a letter tells their marks
    apart (`4.1a`, `4.1b`), and `water_ml` is their share of its water. Other packs are for all who eat: "" and 0.
    """

    mark: str
    meal: int | None
    day: int
    on: date
    called: str
    items: tuple[TripItem, ...]
    bearer: str
    raw: bool
    sachet: bool
    spare: bool
    bought_at: int | None = None
    inside: str = ""
    for_: str = ""
    water_ml: int = 0

    @property
    def grams(self) -> float:
        """Give what it weighs, as printed."""
        return sum(item.grams for item in self.items)


@dataclass(frozen=True, kw_only=True)
class PlannedTrip:
    """A trip with its meals worked out. `last_day` counts from 1, the spare day left out."""

    id: str
    model: Trip
    place: Place
    eaters: tuple[Eater, ...]
    stops: tuple[StopSums, ...]
    meals: tuple[TripMeal, ...]
    on_the_move: tuple[MoveRation, ...]
    last_day: int
    fuel_margin: float
    gaps: tuple[Gap, ...]

    @cached_property
    def by_number(self) -> Mapping[int, TripMeal]:
        """Give the meals by number."""
        return {meal.number: meal for meal in self.meals}

    @property
    def days(self) -> int:
        """Give for how many days food is carried, the spare one included."""
        return self.last_day + (1 if self.model.spare_day else 0)

    @property
    def ends(self) -> date:
        """Give the last day, the spare one left out."""
        return date.fromordinal(self.model.starts.toordinal() + self.last_day - 1)

    @property
    def gone(self) -> bool:
        """Tell whether it lies behind."""
        return self.model.stands is Stands.GONE


@dataclass(frozen=True, kw_only=True)
class TripSums(PlannedTrip):
    """A trip worked out.

    Packs are in the order in which they are opened. `journey` has water, fuel, clock, load and kit, `stores` what the
    larder gives and what is still to dry; a trip that is gone has empty stores.
    """

    packs: tuple[TripPack, ...]
    journey: Journey
    stores: Stores

    @property
    def grams(self) -> float:
        """Give the food in all, as printed."""
        return sum(pack.grams for pack in self.packs)
