"""Sizes of units. US customary means the US legal cup of 236.6 mL.

The metric cup (250 mL) and the nutrition-label cup (240 mL) stand here only so that nobody adds them by mistake: no
unit of ours is built on them.
"""

from packlarder.figures.figure import Figure, Standing

_NIST = "NIST Handbook 44, appendix C, exact; as pint 0.25.3 gives it"
_SI = "SI prefix or unit accepted with the SI, exact; as pint 0.25.3 gives it"
_LABEL = "21 CFR 101.9(b)(5)(viii)"


def _exact(name: str, value: float, unit: str, source: str = _SI) -> Figure:
    return Figure(name=name, value=value, unit=unit, source=source, standing=Standing.COMPUTED)


# Weight, in grams
MILLIGRAM = _exact("milligram", 0.001, "g")
GRAM = _exact("gram", 1.0, "g")
KILOGRAM = _exact("kilogram", 1000.0, "g")
OUNCE = _exact("ounce, avoirdupois", 28.349523125, "g", _NIST)
POUND = _exact("pound, avoirdupois", 453.59237, "g", _NIST)

# Volume, in millilitres
MILLILITRE = _exact("millilitre", 1.0, "mL")
CENTILITRE = _exact("centilitre", 10.0, "mL")
DECILITRE = _exact("decilitre", 100.0, "mL")
LITRE = _exact("litre", 1000.0, "mL")
TEASPOON = _exact("teaspoon, US", 4.92892159375, "mL", _NIST)
TABLESPOON = _exact("tablespoon, US", 14.78676478125, "mL", _NIST)
FLUID_OUNCE = _exact("fluid ounce, US", 29.5735295625, "mL", _NIST)
CUP = _exact("cup, US", 236.5882365, "mL", _NIST)
PINT = _exact("liquid pint, US", 473.176473, "mL", _NIST)
QUART = _exact("liquid quart, US", 946.352946, "mL", _NIST)
GALLON = _exact("gallon, US", 3785.411784, "mL", _NIST)

LABEL_CUP = Figure(
    name="nutrition-label cup (not used by us)",
    value=240.0,
    unit="mL",
    source=_LABEL,
    standing=Standing.PUBLISHED,
)

# Time, in minutes
SECOND = _exact("second", 1 / 60, "min")
MINUTE = _exact("minute", 1.0, "min")
HOUR = _exact("hour", 60.0, "min")
DAY = _exact("day", 1440.0, "min")

# Temperature: degrees Celsius = (number - zero) x size
CELSIUS = _exact("degree Celsius", 1.0, "°C")
FAHRENHEIT = _exact("degree Fahrenheit", 5 / 9, "°C", _NIST)
FAHRENHEIT_ZERO = _exact("0 °C on the Fahrenheit scale", 32.0, "°F", _NIST)
ABSOLUTE_ZERO = _exact("absolute zero", -273.15, "°C")

# Length, in metres
MILLIMETRE = _exact("millimetre", 0.001, "m")
CENTIMETRE = _exact("centimetre", 0.01, "m")
METRE = _exact("metre", 1.0, "m")
KILOMETRE = _exact("kilometre", 1000.0, "m")
INCH = _exact("inch", 0.0254, "m", _NIST)
FOOT = _exact("foot", 0.3048, "m", _NIST)

# Share of a whole, energy in food (kcal), power (kW)
PERCENT = _exact("per cent", 0.01, "of the whole")
KILOCALORIE = _exact("kilocalorie", 1.0, "kcal")
KILOJOULE = _exact("kilojoule", 1 / 4.184, "kcal", "thermochemical calorie of 4.184 J; as pint 0.25.3 gives it")
WATT = _exact("watt", 0.001, "kW")
KILOWATT = _exact("kilowatt", 1.0, "kW")

# Counting
PIECE = _exact("piece", 1.0, "piece", "counting")
SALT_PER_SODIUM = Figure(
    name="salt that sodium stands for",
    value=2.5,
    unit="g per g of sodium",
    source="58.44 / 22.99 = 2.54, by the rule of food labels in Europe taken as 2.5",
    standing=Standing.FROM_MEMORY,
)
