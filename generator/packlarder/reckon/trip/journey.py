"""What the sums of a trip hand on, third part: water by leg, fuel, the clock, what is carried, what it feeds, kit."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import NamedTuple

from packlarder.book.stop import Fills, OtherWater, WaterTreatment


class LegWater(NamedTuple):
    """The water of a leg, in whole mL; each drop stands in one field only, and they add up to what is carried.

    The first six are the pieces of its dishes. `spare_ml` is what their rounding up adds. `drinking_ml` is drunk plain:
    what people drink in a day less the drinks among the dishes. `margin_ml` holds the margin and the last rounding up.
    """

    in_food_ml: int = 0
    drained_away_ml: int = 0
    pot_ml: int = 0
    boiled_off_ml: int = 0
    drink_ml: int = 0
    heater_ml: int = 0
    spare_ml: int = 0
    drinking_ml: int = 0
    washing_ml: int = 0
    spare_day_ml: int = 0
    margin_ml: int = 0

    @property
    def carry_ml(self) -> int:
        """Give the total."""
        return sum(self)


NO_WATER = LegWater()


@dataclass(frozen=True, slots=True, kw_only=True)
class Leg:
    """The stretch from one fill point to the next, or to the end.

    `from_stop` is the stop where it is filled, None for home; `to_stop` the next fill point, None for the end. `stops`
    are those on the way whose meals it serves; the leg home from a last fill point has none. `from_other_ml` is what
    lake or sea serves there and nobody carries. `treated_ml` is what must be made fit to drink at its fill point,
    `wait_min` how long that water must stand before anybody drinks it. `short_ml` is what the containers lack, 0 where
    they hold it, None where none are named. `potfuls` and `boil_min` are how often the largest pot is filled to boil
    `treated_ml` on the first stove, and the minutes of flame in all, with the melting of snow; 0 where none is boiled.
    """

    number: int
    from_stop: int | None
    to_stop: int | None
    first_day: int
    last_day: int
    stops: tuple[int, ...]
    water: LegWater
    from_other_ml: int
    fills: Fills | None
    treated_by: WaterTreatment | None
    treated_ml: int
    wait_min: int
    short_ml: int | None
    potfuls: int = 0
    boil_min: int = 0

    @property
    def carry_ml(self) -> int:
        """Give what is carried away from its fill point."""
        return self.water.carry_ml


@dataclass(frozen=True, slots=True, kw_only=True)
class StopWater:
    """What is used at one stop: by its meals, plain drinking, washing; `on_the_spot` where it is a fill point.

    `on_the_way` is what is drunk plain, and before the first stop washed in, on the way to it: the leg that arrives
    there carries it, even to a fill point. `meals` holds what is drunk and washed in there as well.
    `treated_ml` is what of the water used on the spot must be made fit to drink, and `wait_min` how long any water that
    is filled here must stand; both 0 where nothing is treated.
    `boil_ml` is all that is boiled here to be safe, in `potfuls` of the largest pot on the first stove, which takes
    `boil_min` of flame: of `treated_ml` what no dish boils anyway, and what the leg that begins here carries on. Where
    it is snow, the minutes hold the melting of all that is used here or carried on. All are 0 where none is boiled.
    """

    stop: int
    meals: LegWater
    on_the_spot: bool
    from_other: OtherWater | None
    from_other_ml: int
    on_the_way: LegWater = NO_WATER
    treated_ml: int = 0
    wait_min: int = 0
    boil_ml: int = 0
    potfuls: int = 0
    boil_min: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class StopFuel:
    """The fuel of one stop, of one fuel, in whole g without margin: for its meals, to boil water safe, to melt snow.

    `stop` is None for the meals in reserve for a spare day; its water is boiled and melted where that takes the most.
    """

    stop: int | None
    fuel: str
    cooking_g: int
    treating_g: int
    melting_g: int

    @property
    def grams(self) -> int:
        """Give all of it."""
        return self.cooking_g + self.treating_g + self.melting_g


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel:
    """One fuel for the whole trip: its stops, its margin, and what is taken along.

    `need_g` = its stops + `margin_g`. `in_hand_g` are the part-used cartridges that are taken, the emptiest first,
    `new_g` the whole ones besides; both empty for what is poured or gathered.
    """

    fuel: str
    stoves: tuple[str, ...]
    stops: tuple[StopFuel, ...]
    margin_g: int
    in_hand_g: tuple[float, ...]
    new_g: tuple[int, ...]

    @property
    def need_g(self) -> int:
        """Give what is carried at least."""
        return sum(stop.grams for stop in self.stops) + self.margin_g


class StepTime(NamedTuple):
    """When a step of a dish begins and ends, and when its water boils and is poured, of the first round; by the clock.

    `step` is an index of the plan's. All moments of a dish are rounded up to whole minutes in one way, so that no step
    begins before the one that it waits for has ended, and none ends after the dish is ready. `boils_at` is None where
    nothing is brought to the boil; water that is given cold is poured at `begins`.
    """

    step: int
    begins: datetime
    boils_at: datetime | None
    ends: datetime

    @property
    def poured_at(self) -> datetime:
        """Give when food gets its water, hot or cold."""
        return self.begins if self.boils_at is None else self.boils_at


@dataclass(frozen=True, slots=True, kw_only=True)
class SoakStart:
    """A step in which food soaks or steeps by itself: when its water goes in. `step` is an index of the plan's."""

    step: int
    at: datetime
    minutes: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MealClock:
    """When a dish is begun so that it is on the plate in time. `number` is that of its meal.

    Where several dishes of one meal share the flame, they are cooked one after another: `ready_at` then lies before
    `eat_at`, and `waits_min` is how long it stands ready. `after` is the number of the dish that has the flame before.
    `flame_at` is when it first has the flame itself, None if it wants none. `steps` has the times of every step.
    `pot_after` is the number of a dish of the sitting that has one of its pots before, and would stand there until it
    is eaten: it must be put into bowls first. None where each has its own.
    """

    number: int
    start_at: datetime
    ready_at: datetime
    eat_at: datetime
    waits_min: int
    soaks: tuple[SoakStart, ...]
    after: int | None
    flame_at: datetime | None = None
    steps: tuple[StepTime, ...] = ()
    pot_after: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class DayLoad:
    """What is eaten on a day and carried on its morning; `volume_ml` counts what was ever weighed by the cup.

    `unmeasured` says that some of it never was. `food_g` is what is eaten on the day, `carried_g` what of the food is
    still carried when it begins; the spare day's food stays in it to the end.
    """

    day: int
    on: date
    food_g: float
    carried_g: float
    volume_ml: float
    unmeasured: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """What one person carries on the first morning, and the marks of their packs."""

    name: str
    grams: float
    packs: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fed:
    """What one person eats on one day; `complete` is false where some figure is unknown."""

    name: str
    day: int
    energy_kcal: float
    protein_g: float
    salt_g: float
    food_g: float
    complete: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KitItem:
    """A thing to take along, how many of it, and why; `what` is a key of the catalogue of words, or a name of ours."""

    what: str
    count: int
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Rubbish:
    """What is empty and carried out: packs, ration heaters, cartridges; by day, the packs emptied on it."""

    packs: int
    heaters: int
    cartridges: int
    by_day: Mapping[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Journey:
    """Water, fuel, clock, load, food and kit of a trip."""

    legs: tuple[Leg, ...]
    stops: tuple[StopWater, ...]
    fuels: tuple[Fuel, ...]
    clock: tuple[MealClock, ...]
    days: tuple[DayLoad, ...]
    bearing: tuple[Bearing, ...]
    fed: tuple[Fed, ...]
    kit: tuple[KitItem, ...]
    rubbish: Rubbish

    @property
    def heaviest(self) -> Leg | None:
        """Give the leg with the most water to carry."""
        return max(self.legs, key=lambda leg: leg.carry_ml, default=None)
