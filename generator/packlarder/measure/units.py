"""Units that a book may be written in."""

from dataclasses import dataclass
from enum import StrEnum

from packlarder.figures import units as sizes
from packlarder.figures.figure import Figure


class Dimension(StrEnum):
    """What a quantity is a quantity of."""

    WEIGHT = "weight"
    VOLUME = "volume"
    COUNT = "count"
    TIME = "time"
    TEMPERATURE = "temperature"
    LENGTH = "length"
    SHARE = "share"
    ENERGY = "energy"
    POWER = "power"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """One unit: its size in the base unit of its dimension (g, mL, piece, min, °C, m, 1, kcal, kW), and its words.

    `name` is printed after a number (`plural` after more than one), `words` are read. `zero` is what the base unit's
    zero reads in this unit (32 for °F). `in_fractions` says that cooks write ½ of it, not 0.5.
    """

    name: str
    dimension: Dimension
    figure: Figure
    plural: str = ""
    words: tuple[str, ...] = ()
    zero: float = 0.0
    in_fractions: bool = False

    @property
    def size(self) -> float:
        """Size in the base unit."""
        return self.figure.value

    @property
    def source(self) -> str:
        """Who says so, and whether it is exact."""
        return self.figure.source


def _weight(name: str, figure: Figure, *words: str) -> Unit:
    return Unit(name=name, dimension=Dimension.WEIGHT, figure=figure, words=words, in_fractions=name in ("oz", "lb"))


def _metric_volume(name: str, figure: Figure, *words: str) -> Unit:
    return Unit(name=name, dimension=Dimension.VOLUME, figure=figure, words=words)


def _us_volume(name: str, figure: Figure, *words: str, plural: str = "") -> Unit:
    return Unit(name=name, dimension=Dimension.VOLUME, figure=figure, plural=plural, words=words, in_fractions=True)


def _time(name: str, figure: Figure, *words: str, plural: str = "") -> Unit:
    return Unit(name=name, dimension=Dimension.TIME, figure=figure, plural=plural, words=words)


def _length(name: str, figure: Figure, *words: str) -> Unit:
    return Unit(name=name, dimension=Dimension.LENGTH, figure=figure, words=words, in_fractions=name == "in")


MILLIGRAM = _weight("mg", sizes.MILLIGRAM, "milligram", "milligrams")
GRAM = _weight("g", sizes.GRAM, "gram", "grams")
KILOGRAM = _weight("kg", sizes.KILOGRAM, "kilogram", "kilograms", "kilo", "kilos")
OUNCE = _weight("oz", sizes.OUNCE, "ounce", "ounces")
POUND = _weight("lb", sizes.POUND, "lbs", "pound", "pounds")

MILLILITRE = _metric_volume("mL", sizes.MILLILITRE, "ml", "millilitre", "millilitres", "milliliter", "milliliters")
CENTILITRE = _metric_volume("cL", sizes.CENTILITRE, "cl", "centilitre", "centilitres", "centiliter", "centiliters")
DECILITRE = _metric_volume("dL", sizes.DECILITRE, "dl", "decilitre", "decilitres", "deciliter", "deciliters")
LITRE = _metric_volume("L", sizes.LITRE, "l", "litre", "litres", "liter", "liters")
TEASPOON = _us_volume("tsp", sizes.TEASPOON, "teaspoon", "teaspoons")
TABLESPOON = _us_volume("tbsp", sizes.TABLESPOON, "tablespoon", "tablespoons")
FLUID_OUNCE = _us_volume("fl oz", sizes.FLUID_OUNCE, "fluid ounce", "fluid ounces")
CUP = _us_volume("cup", sizes.CUP, plural="cups")
PINT = _us_volume("pint", sizes.PINT, "pt", plural="pints")
QUART = _us_volume("quart", sizes.QUART, "qt", plural="quarts")
GALLON = _us_volume("gallon", sizes.GALLON, "gal", plural="gallons")

PIECE = Unit(name="piece", dimension=Dimension.COUNT, figure=sizes.PIECE, in_fractions=True)
"""The unit of every count; the quantity's noun says of what."""

SECOND = _time("s", sizes.SECOND, "sec", "secs", "second", "seconds")
MINUTE = _time("min", sizes.MINUTE, "mins", "minute", "minutes")
HOUR = _time("h", sizes.HOUR, "hr", "hrs", "hour", "hours")
DAY = _time("day", sizes.DAY, plural="days")

CELSIUS = Unit(name="°C", dimension=Dimension.TEMPERATURE, figure=sizes.CELSIUS, words=("C", "celsius"))
FAHRENHEIT = Unit(
    name="°F",
    dimension=Dimension.TEMPERATURE,
    figure=sizes.FAHRENHEIT,
    words=("F", "fahrenheit"),
    zero=sizes.FAHRENHEIT_ZERO.value,
)

MILLIMETRE = _length("mm", sizes.MILLIMETRE, "millimetre", "millimetres", "millimeter", "millimeters")
CENTIMETRE = _length("cm", sizes.CENTIMETRE, "centimetre", "centimetres", "centimeter", "centimeters")
METRE = _length("m", sizes.METRE, "metre", "metres", "meter", "meters")
KILOMETRE = _length("km", sizes.KILOMETRE, "kilometre", "kilometres", "kilometer", "kilometers")
INCH = _length("in", sizes.INCH, "inch", "inches")
FOOT = _length("ft", sizes.FOOT, "foot", "feet")

PERCENT = Unit(name="%", dimension=Dimension.SHARE, figure=sizes.PERCENT, words=("per cent", "percent"))
KILOCALORIE = Unit(name="kcal", dimension=Dimension.ENERGY, figure=sizes.KILOCALORIE)
KILOJOULE = Unit(name="kJ", dimension=Dimension.ENERGY, figure=sizes.KILOJOULE)
WATT = Unit(name="W", dimension=Dimension.POWER, figure=sizes.WATT, words=("watt", "watts"))
KILOWATT = Unit(name="kW", dimension=Dimension.POWER, figure=sizes.KILOWATT)

UNITS: tuple[Unit, ...] = (
    *(GRAM, KILOGRAM, MILLIGRAM, OUNCE, POUND),
    *(MILLILITRE, LITRE, CENTILITRE, DECILITRE, CUP, TABLESPOON, TEASPOON, FLUID_OUNCE, PINT, QUART, GALLON),
    *(MINUTE, HOUR, SECOND, DAY),
    *(CELSIUS, FAHRENHEIT),
    *(MILLIMETRE, CENTIMETRE, METRE, KILOMETRE, INCH, FOOT),
    *(PERCENT, KILOCALORIE, KILOJOULE, WATT, KILOWATT),
)
"""Every unit with a word of its own, the usual ones of a dimension first."""
