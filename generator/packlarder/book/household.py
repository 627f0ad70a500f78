"""book.yaml: what the book is called, and the household's kitchen and habits."""

from enum import StrEnum

from pydantic import Field, field_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.defaults import known
from packlarder.book.fields import Day, Prose, Text, Volume, YesNo
from packlarder.book.limits import (
    AirDegrees,
    ColdDegrees,
    Efficiency,
    Height,
    Margin,
    PotVolume,
    PotWidth,
    Servings,
    StovePower,
)
from packlarder.book.names import FuelName, StoveKind, Texts
from packlarder.book.stock import ContainerSize, Dryer, LarderRules
from packlarder.figures.temperatures import DEFAULT_AUTHORITY, Authority
from packlarder.measure import Quantity


class Units(StrEnum):
    """The system of units that is shown first."""

    METRIC = "metric"
    US = "us"


class FormatVersion(StrEnum):
    """The version of the file format that the book is written in."""

    ONE = "1"


class HeaterWater(StrEnum):
    """Where the water of ration heaters comes from when a dish is worked out alone."""

    CARRIED = "carried"
    LAKE = "lake"
    SEA = "sea"


class Pot(BookModel):
    """A pot or pan."""

    holds: PotVolume
    """what it holds to the brim"""
    across: PotWidth
    """how wide it is; what boils off an open pot goes by that"""
    lid: YesNo = True
    """whether it has a lid"""


class Stove(BookModel):
    """A stove."""

    fuel: FuelName
    """what it burns: a name from the table of fuels"""
    kind: StoveKind
    """its type, a name from the table of stoves"""
    power: StovePower | None = None
    """its power; left out, the table's for that kind"""
    efficiency: Efficiency | None = None
    """how much of the heat reaches the pot, from your own weighed boils; left out, the table's"""


class Margins(BookModel):
    """What is added on the safe side."""

    fuel: Margin = known("15 %")
    """added to the fuel worked out"""


class UsualConditions(BookModel):
    """The conditions under which a dish page is worked out; the page prints them."""

    height: Height = known("0 m")
    """height above the sea"""
    air: AirDegrees = known("10 °C")
    """temperature of the air"""
    water: ColdDegrees = known("10 °C")
    """temperature of the water before it is heated"""
    stove: Text
    """one of the stoves above"""
    pot: Text
    """one of the pots above"""
    heater_water: HeaterWater = HeaterWater.CARRIED
    """whether the water of ration heaters is carried, or taken from lake or sea"""


class Household(BookModel):
    """The book and the kitchen of the household that keeps it."""

    packlarder: FormatVersion
    """the version of this file format; 1 today"""
    title: Text
    """the title of the book"""
    about: Prose = ()
    """a few words for the front page"""
    language: Text = "en"
    """the language it is written in, as in `en`"""
    address: Text = ""
    """the site's address, if it has one"""
    on: Day | None = None
    """the day everything is worked out for; left out, today"""
    units: Units = Units.METRIC
    """the units shown first: metric or us"""
    servings: Servings = 2
    """for how many you usually cook"""
    measures: dict[Text, Volume] = Field(default_factory=dict)
    """your own mugs and handfuls, and what they hold"""
    booklet_measure: Text = ""
    """the mug of yours in whose quarters the field booklet counts water, rounded up; left out, it counts in 50 mL"""
    stoves: dict[Text, Stove] = Field(min_length=1)
    """your stoves, each under a name of yours"""
    pots: dict[Text, Pot] = Field(min_length=1)
    """your pots and pans, each under a name of yours"""
    dryers: dict[Text, Dryer] = Field(default_factory=dict)
    """your dryers, each under a name of yours"""
    containers: dict[Text, ContainerSize] = Field(default_factory=dict)
    """your sizes of jar, pouch and bag, each under a name of yours"""
    larder: LarderRules = LarderRules()
    """where and how long you keep what you dried"""
    authority: Authority = DEFAULT_AUTHORITY
    """whose cooking temperatures you follow"""
    margins: Margins = Margins()
    """what is added on the safe side"""
    usual_conditions: UsualConditions
    """where and on what you usually cook"""
    print: Texts = ("a6", "quarter-letter")
    """the sizes of booklet you want"""

    @field_validator("packlarder", mode="before")
    @classmethod
    def _known_format(cls, value: object) -> object:
        if isinstance(value, str) and value not in list(FormatVersion):
            message = f'this book is written in format "{value}", which is not known here'
            raise slip("unknown-format", message, "write `packlarder: 1`, or read it with a newer Packlarder")
        return value

    def millilitres(self, noun: str) -> float | None:
        """Give what one of the household's own measures holds, or None."""
        found: Quantity | None = self.measures.get(noun)
        return None if found is None else found.base
