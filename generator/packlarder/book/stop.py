"""Where a trip stops: the place and its water, and what is cooked there."""

import re
from datetime import time
from enum import StrEnum
from typing import Annotated

from pydantic import Field, GetCoreSchemaHandler, field_validator, model_validator
from pydantic_core import CoreSchema, core_schema

from packlarder.book.base import BookModel, slip
from packlarder.book.dish import Meal
from packlarder.book.fields import Text, Written, YesNo, whole_between
from packlarder.book.limits import AirDegrees, ColdDegrees, HeatHours, Height
from packlarder.book.names import ComponentNames, DishName, Texts
from packlarder.book.pair import LONGEST, pair_schema
from packlarder.faults import Spot

MOST_DAYS = 60
"""Longer trips are filled up on the way, and planned in pieces."""


class Fills(StrEnum):
    """What water there is to fill up with."""

    TAP = "tap"
    TREATED = "to be treated"
    SNOW = "snow"


class WaterTreatment(StrEnum):
    """How water is made fit to drink."""

    BOILING = "boiling"
    FILTER = "filter"
    FILTER_AND_CHLORINE = "filter and chlorine"
    CHLORINE = "chlorine"
    CHLORINE_DIOXIDE = "chlorine dioxide"


class OtherWater(StrEnum):
    """Water that serves for heaters, cooling and washing, and is not drunk."""

    LAKE = "lake"
    SEA = "sea"


_CLOCK = re.compile(r"([0-9]{1,2})[:.]([0-9]{2})")


def _clock(text: str) -> time:
    found = _CLOCK.fullmatch(text)
    if not found:
        raise slip("not-a-time", f'"{text}" is not a time of day', "write it like 18:30")
    hour, minute = map(int, found.groups())
    if hour > 23 or minute > 59:
        raise slip("not-a-time", f"there is no {hour}:{minute:02} in a day", "write it like 18:30")
    return time(hour, minute)


TimeOfDay = Annotated[time, Written(_clock, time, {"type": ["string", "number"], "examples": ["18:30"]})]
"""A time of day: `18:30`."""
_DAYS_HELP = f"the first day is 1; a trip of more than {MOST_DAYS} days is written as two, one after the other"
DayNumber = Annotated[int, whole_between(1, MOST_DAYS, help=_DAYS_HELP)]
"""A day of the trip, the first being 1."""


class MealDetail(BookModel):
    """A dish that is cooked or eaten at a stop."""

    dish: DishName
    """one of your dishes"""
    for_: Texts = ()
    """who eats it, if not all: `[Ada, Bo]`"""
    at: TimeOfDay | None = None
    """when it is eaten, if not at the trip's usual time: `19:30`"""
    stove: Text = ""
    """which of the stoves along, if not the dish's or the first"""
    pot: Text = ""
    """which of the pots along, for a dish whose own stays at home"""

    @field_validator("for_", mode="before")
    @classmethod
    def _somebody(cls, value: object) -> object:
        if value == []:
            help = "name those who eat it, or leave `for` out: then all do"
            raise slip("empty-value", "nobody is named here", help)
        return value

    @model_validator(mode="before")
    @classmethod
    def _dish_alone(cls, value: object) -> object:
        return {"dish": value} if isinstance(value, str) else value


class MealLine:
    """One line of a stop: which meal, and its dish."""

    __slots__ = ("detail", "meal")

    def __init__(self, meal: Meal, detail: MealDetail) -> None:
        self.meal = meal
        self.detail = detail

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read `supper: squash stew`, one to a line."""
        pair = pair_schema(Meal, MealDetail, handler, make=cls, example="squash stew", wants="dish", alone="dish")
        return core_schema.no_info_before_validator_function(_says_which_meal, pair)


def _says_which_meal(value: object) -> object:
    """Let through what names a meal; raises slip(...) for a dish alone, and for several dishes behind one meal."""
    if isinstance(value, str) and value not in set(Meal):
        meal, _, rest = value.partition(" ")
        if meal in set(Meal):
            help = f"write it like `{meal}: {rest[:LONGEST]}`"
            raise slip("no-meal", f"a colon is missing after `{meal}`", help)
        dish = value[:LONGEST]
        raise slip("no-meal", f'it does not say at which meal "{dish}" is eaten', f"write it like `supper: {dish}`")
    for meal, dishes in value.items() if isinstance(value, dict) else ():
        if isinstance(dishes, list) and meal in set(Meal):
            each = ", ".join(f"`- {meal}: {str(dish)[:LONGEST]}`" for dish in dishes[:2]) or f"`- {meal}: squash stew`"
            raise slip("one-dish", "one dish is wanted here", f"write a line for each: {each}", at=(meal,))
    return value


class Stop(BookModel):
    """A place where meals are cooked or water is filled. What it does not say is as in the usual conditions."""

    place: Text
    """where it is"""
    day: DayNumber
    """the day of the trip on which it is reached; the first day is 1"""
    height: Height | None = None
    """height above the sea"""
    air: AirDegrees | None = None
    """temperature of the air when you cook"""
    water: ColdDegrees | None = None
    """temperature of the water before it is heated; of snow, leave it out"""
    windy: YesNo = False
    """whether the stove stands in the wind"""
    fills: Fills | None = None
    """what there is to fill up with: tap, to be treated, or snow; left out, nothing"""
    treated_by: WaterTreatment | None = None
    """how water is made fit to drink here: one of those ways; snow is boiled unless it says another"""
    other_water: OtherWater | None = None
    """lake or sea beside it, for heaters, cooling and washing"""
    to_buy: ComponentNames = ()
    """what can be bought here, and need not be carried this far"""
    in_heat: HeatHours | None = None
    """hours of hard work in heat on the way here: `3 h`"""
    meals: Annotated[tuple[MealLine, ...], Field(max_length=200)] = ()
    """what is eaten here, in order: `- supper: squash stew`; a breakfast after a supper is the next morning's"""

    @model_validator(mode="after")
    def _treated(self) -> "Stop":
        if self.fills is Fills.TREATED and self.treated_by is None:
            help = f"write `treated by:` and one of {', '.join(WaterTreatment)}"
            raise slip("not-treated", "it does not say how this water is treated", help, at=("fills",))
        if self.treated_by is not None and self.fills in (None, Fills.TAP):
            message = "`treated by` goes with water that is to be treated, or with snow"
            raise slip("nothing-to-treat", message, "write `fills: to be treated`", at=("treated by",), spot=Spot.KEY)
        return self

    @property
    def treatment(self) -> WaterTreatment | None:
        """Give how its water is made fit to drink: snow is boiled unless it says otherwise; None for a tap's."""
        if self.treated_by is None and self.fills is Fills.SNOW:
            return WaterTreatment.BOILING
        return self.treated_by
