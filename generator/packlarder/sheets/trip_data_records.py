"""The records that other programs get of a trip, by the names that stand in the JSON.

Days are ISO dates, moments ISO date and time without a zone: clocks on the way are set by whoever goes there.
"""

from typing import TypedDict

from packlarder.sheets.data_records import Note
from packlarder.sheets.trip_store_records import FillData, LoadData, PackData, ShortfallData, TaskData

LegFrom = TypedDict("LegFrom", {"from": str})
"""Where a leg begins; `from` can not be written in a class."""


class PersonData(TypedDict):
    """Somebody who comes along; `portion` is their share of a serving, `burden` of the load."""

    name: str
    portion: float
    burden: float
    drinks_ml: float
    age: int | None
    at_risk: bool
    avoids: list[str]


class SoakData(TypedDict):
    """A step of the dish, counted from 1, in which food soaks by itself: when its water goes in, and how long."""

    step: int
    at: str
    minutes: int


class InsteadData(TypedDict):
    """A component, by id, that is taken for a part of a dish; `stands_in_for` is how the dish calls that part."""

    component: str
    raw: bool
    stands_in_for: str


class MealData(TypedDict):
    """A dish at a stop: who eats it, and when it is begun so that it is ready in time.

    `start_at` and `ready_at` are None where the clock is not known. `after` is the number of the dish that has the
    flame before it.
    """

    number: int
    meal: str
    dish: str
    name: str
    day: int
    date: str
    people: list[str]
    portions: float
    eat_at: str
    start_at: str | None
    ready_at: str | None
    waits_min: int
    soaks: list[SoakData]
    after: int | None
    instead: list[InsteadData]


class LegWaterData(TypedDict):
    """The water of a leg or a stop by kind; each drop stands in one field, and they add up to all of it."""

    in_food_ml: int
    drained_away_ml: int
    pot_ml: int
    boiled_off_ml: int
    drink_ml: int
    heater_ml: int
    spare_ml: int
    drinking_ml: int
    washing_ml: int
    spare_day_ml: int
    margin_ml: int


class TreatmentData(TypedDict):
    """What of some water must be made fit to drink where it is filled, how, and how long it then boils or stands."""

    treated_by: str
    treated_ml: int
    wait_min: int


class StopWaterData(TypedDict):
    """The water that is used at a stop, lake's and sea's apart; `on_the_spot` where it is filled there, not carried.

    `treatment` is that of what is used on the spot.
    """

    water_ml: LegWaterData
    on_the_spot: bool
    from_other_ml: int
    treatment: TreatmentData | None


class StopData(TypedDict):
    """A stop with the meals that are cooked there; `fuel_g` is what they take, by fuel, without margin.

    `used` is the water that is used there, None where it was not worked out.
    """

    number: int
    place: str
    day: int
    date: str
    height_m: float
    air_c: float
    water_c: float
    fills: str | None
    treated_by: str | None
    other_water: str | None
    used: StopWaterData | None
    meals: list[MealData]
    fuel_g: dict[str, int]


class LegData(LegFrom):
    """The way from one fill point to the next. `short_ml` is what the containers lack, None where none are named."""

    to: str
    number: int
    first_day: int
    last_day: int
    stops: list[int]
    fills: str | None
    water_ml: LegWaterData
    carry_ml: int
    from_other_ml: int
    treatment: TreatmentData | None
    short_ml: int | None


class FuelStopData(TypedDict):
    """The fuel of one stop, without margin; `stop` is None for the meals in reserve."""

    stop: int | None
    place: str
    cooking_g: int
    treating_g: int
    melting_g: int
    fuel_g: int


class CartridgesData(TypedDict):
    """The cartridges that come along, by what is in each."""

    part_used_g: list[float]
    whole_g: list[int]


class FuelData(TypedDict):
    """One fuel: its stops and its margin add up to `fuel_g`, which is carried at least."""

    fuel: str
    stoves: list[str]
    by_stop: list[FuelStopData]
    margin_g: int
    fuel_g: int
    cartridges: CartridgesData


class DayData(TypedDict):
    """What is carried of food when a day begins; `unmeasured` says that some of it was never weighed by the cup."""

    day: int
    date: str
    weight_g: float
    volume_l: float
    unmeasured: bool
    eaten_g: float


class FedData(TypedDict):
    """What one person eats on one day; where not `complete`, it is at least that."""

    person: str
    day: int
    energy_kcal: float
    protein_g: float
    salt_g: float
    food_g: float
    complete: bool


class BearerData(TypedDict):
    """What one person carries of the food on the first morning."""

    person: str
    weight_g: float
    packs: list[str]


class KitData(TypedDict):
    """A thing to take along, and why."""

    what: str
    count: int
    why: str


class RubbishData(TypedDict):
    """What is carried out empty; `packs_by_day` goes by the day's number."""

    packs: int
    heaters: int
    cartridges: int
    packs_by_day: dict[str, int]


class TripData(TypedDict):
    """A trip worked out. `ends` is its last day, the spare one left out; `missing` are sums that can not be made."""

    trip: str
    name: str
    edition: str
    day: str
    stands: str
    starts: str
    ends: str
    last_day: int
    people: list[PersonData]
    stops: list[StopData]
    spare_day: list[MealData]
    legs: list[LegData]
    packs: list[PackData]
    fills: list[FillData]
    shortfall: list[ShortfallData]
    loads: list[LoadData]
    plan: list[TaskData]
    fuel: list[FuelData]
    fuel_g: int
    days: list[DayData]
    fed: list[FedData]
    bearers: list[BearerData]
    weight_g: float
    kit: list[KitData]
    rubbish: RubbishData
    safety: list[Note]
    missing: list[str]
