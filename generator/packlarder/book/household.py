"""book.yaml: what the book is called, and the household's kitchen and habits."""

from enum import StrEnum

from pydantic import Field

from packlarder.book.base import BookModel
from packlarder.book.defaults import known
from packlarder.book.fields import Day, Degrees, Length, Power, Prose, Share, Text, Volume, Whole, YesNo
from packlarder.book.names import FuelName, StoveKind, Texts
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

    holds: Volume
    """what it holds to the brim"""
    across: Length
    """its diameter; an open pot boils off by it"""
    lid: YesNo = True
    """whether it has a lid"""


class Stove(BookModel):
    """A stove."""

    fuel: FuelName
    """what it burns: a name from the table of fuels"""
    kind: StoveKind
    """its type, a name from the table of stoves"""
    power: Power | None = None
    """its power; left out, the table's for that kind"""
    efficiency: Share | None = None
    """how much of the heat reaches the pot, from your own weighed boils; left out, the table's"""


class Margins(BookModel):
    """What is added on the safe side."""

    fuel: Share = known("15 %")
    """added to the fuel worked out"""


class UsualConditions(BookModel):
    """The conditions under which a dish page is worked out; the page prints them."""

    height: Length = known("0 m")
    """height above the sea"""
    air: Degrees = known("10 °C")
    """temperature of the air"""
    water: Degrees = known("10 °C")
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
    servings: Whole = 2
    """for how many you usually cook"""
    measures: dict[Text, Volume] = Field(default_factory=dict)
    """your own mugs and handfuls, and what they hold"""
    booklet_measure: Text = ""
    """the mug of yours that the field booklet rounds water up to; left out, 50 mL"""
    stoves: dict[Text, Stove] = Field(min_length=1)
    """your stoves, each under a name of yours"""
    pots: dict[Text, Pot] = Field(min_length=1)
    """your pots and pans, each under a name of yours"""
    authority: Authority = DEFAULT_AUTHORITY
    """whose cooking temperatures you follow"""
    margins: Margins = Margins()
    """what is added on the safe side"""
    usual_conditions: UsualConditions
    """where and on what you usually cook"""
    print: Texts = ("a6", "quarter-letter")
    """the sizes of booklet you want"""

    def millilitres(self, noun: str) -> float | None:
        """Give what one of the household's own measures holds, or None."""
        found: Quantity | None = self.measures.get(noun)
        return None if found is None else found.base
