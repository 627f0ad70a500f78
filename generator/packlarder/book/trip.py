"""trips/*.yaml: who goes where, what they eat there, and what they cook it on."""

from enum import StrEnum
from typing import Annotated

from pydantic import (
    BeforeValidator,
    Field,
    GetCoreSchemaHandler,
    ValidationInfo,
    field_validator,
    model_validator,
)
from pydantic_core import CoreSchema

from packlarder.book.base import BookModel, slip
from packlarder.book.came_home import CameHome
from packlarder.book.defaults import known
from packlarder.book.dish import Meal
from packlarder.book.fields import Day, Prose, Text, Whole, whole_between
from packlarder.book.limits import CanVolume, DayWater, Drinking, FuelWeights, Margin
from packlarder.book.names import ComponentName, Texts
from packlarder.book.pair import pair_schema
from packlarder.book.part import Take, TakeField
from packlarder.book.person import Person, with_bare_names
from packlarder.book.stop import MealLine, Stop, TimeOfDay
from packlarder.faults import Spot
from packlarder.measure import Quantity


class Stands(StrEnum):
    """How far a trip has come."""

    PLANNED = "planned"
    GONE = "gone"


class OnTheMove:
    """Food that is eaten from the bag each day, ready as it is; `name` is as the author wrote it."""

    __slots__ = ("name", "take")

    def __init__(self, name: str, take: Take) -> None:
        self.name = name
        self.take = take

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `component: amount`, one to a line."""
        return pair_schema(ComponentName, TakeField, handler, make=cls, example="40 g each")


MOST_BURNERS = 12
Burners = Annotated[
    int, whole_between(1, MOST_BURNERS, help="write how many pots can stand on the flame at once: `burners: 2`")
]
"""How many pots can stand on the flame at once."""


class WaterContainer(BookModel):
    """A bottle, bag or can for water."""

    holds: CanVolume
    """what it holds"""
    count: Whole = 1
    """how many of them come along"""

    @model_validator(mode="before")
    @classmethod
    def _volume_alone(cls, value: object) -> object:
        return {"holds": value} if isinstance(value, str) else value

    @property
    def in_all_ml(self) -> float:
        """Give what all of them hold."""
        return self.holds.base * self.count


class Cooler(BookModel):
    """A box with ice."""

    keeps_cold: Whole
    """for how many days it keeps its food cold"""
    holds: CanVolume | None = None
    """what it holds"""


class TripMargins(BookModel):
    """What is carried beyond what was worked out."""

    water: Margin = known("10 %")
    """added to the water of each leg"""
    fuel: Margin | None = None
    """added to the fuel; left out, as the household does"""


_BY_NAME = {
    "water_containers": (
        "each container by a name of yours, with what it holds,",
        "water containers: {water bag: 10 L, bottle: {holds: 1 L, count: 4}}",
    ),
    "mealtimes": ("each meal with its time", "mealtimes: {breakfast: 7:00, supper: 18:30}"),
}
"""What stands behind keys that hold names, and how it is written."""


class Trip(BookModel):
    """A trip: people, stops, meals, and what comes along to cook on."""

    name: Text
    """what it is called"""
    about: Text = ""
    """a few words under its name"""
    stands: Stands = Stands.PLANNED
    """planned, or gone: a trip that is gone takes nothing from the larder any more"""
    starts: Day
    """the day of departure"""
    people: Annotated[tuple[Person, ...], BeforeValidator(with_bare_names), Field(min_length=1, max_length=24)]
    """who comes along: a name, or a name with what matters of them"""
    stops: Annotated[tuple[Stop, ...], Field(min_length=1)]
    """where meals are cooked or water is filled, in order"""
    on_the_move: tuple[OnTheMove, ...] = ()
    """eaten each day from the bag, ready as it is: `- almonds: 30 g each`"""
    drinks: Texts = ()
    """dishes that are drunk, made once every day for all"""
    spare_day: tuple[MealLine, ...] = ()
    """the meals of a day in reserve, for weather; its food, its fuel, and where you stop without water its water"""
    stoves: Texts = ()
    """which of your stoves come along, the one that is used first; left out, none, and nothing is cooked"""
    burners: Burners = 1
    """how many pots can stand on the flame at once"""
    pots: Texts = ()
    """which of your pots and pans come along; left out, none"""
    fuel_in_hand: FuelWeights = ()
    """part-used cartridges or fuel that you have, by what is left in each: `[180 g, 95 g]`"""
    water_containers: dict[Text, WaterContainer] = Field(default_factory=dict)
    """what water is carried in: `{water bag: 10 L, bottle: {holds: 1 L, count: 4}}`"""
    cooler: Cooler | None = None
    """a cooler, if one comes along"""
    drinking: Drinking = known("3 L")
    """what each person drinks in a day, drinks that are dishes included"""
    washing: DayWater = known("0.5 L")
    """water for hands and pots, for each person and day"""
    mealtimes: dict[Meal, TimeOfDay] = Field(default_factory=dict)
    """when you eat: `{breakfast: 7:00, supper: 19:00}`"""
    margins: TripMargins = TripMargins()
    """what is carried beyond what was worked out"""
    notes: Prose = ()
    """anything else worth knowing"""
    came_home: CameHome | None = None
    """of a trip that is gone: when it came home, and what was left; the command `home` writes it"""

    @field_validator("people", "stops", mode="before")
    @classmethod
    def _something(cls, value: object) -> object:
        if value is None or value == []:
            raise slip("empty-value", "nothing stands here", "write at least one entry")
        return value

    @model_validator(mode="after")
    def _each_once(self) -> "Trip":
        names = [person.name.casefold() for person in self.people]
        for index, name in enumerate(names):
            if name in names[:index]:
                message = f'two people are called "{self.people[index].name}"'
                at = ("people", index, self.people[index].name)
                raise slip("called-alike", message, "give one of them another name", at=at, spot=Spot.KEY)
        for index, stop in enumerate(self.stops[1:], 1):
            if stop.day < self.stops[index - 1].day:
                message = f"day {stop.day} comes before day {self.stops[index - 1].day} of the stop above"
                raise slip("out-of-order", message, "write the stops in the order of days", at=("stops", index, "day"))
        return self

    @field_validator("water_containers", "mealtimes", mode="before")
    @classmethod
    def _by_name(cls, value: object, info: ValidationInfo) -> object:
        if isinstance(value, str | list):
            wanted, example = _BY_NAME[info.field_name or ""]
            raise slip("wrong-shape", f"{wanted} is wanted here", f"write it like `{example}`")
        return value

    @field_validator("stoves", "pots")
    @classmethod
    def _named_once(cls, names: tuple[str, ...]) -> tuple[str, ...]:
        for index, name in enumerate(names):
            if name in names[:index]:
                raise slip("named-twice", f'"{name}" stands here twice', "take one of them out", at=(index,))
        return names

    @model_validator(mode="after")
    def _gone_before_home(self) -> "Trip":
        if self.came_home is None:
            return self
        if self.stands is not Stands.GONE:
            message = "a trip that came home is gone"
            raise slip("not-gone", message, "write `stands: gone`", at=("came home",), spot=Spot.KEY)
        if self.came_home.date < self.starts:
            message = f"it came home before it starts, on {self.starts.isoformat()}"
            raise slip("out-of-order", message, "is it another day, or another year?", at=("came home", "date"))
        return self

    @property
    def fuel_in_hand_g(self) -> tuple[float, ...]:
        """Give what is left in each part-used cartridge."""
        weights: tuple[Quantity, ...] = self.fuel_in_hand
        return tuple(weight.base for weight in weights)
