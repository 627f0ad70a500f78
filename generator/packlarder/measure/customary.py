"""Amounts in US customary units, rounded for a kitchen. What goes in is metric, as everywhere else.

Every function raises ValueError for an amount below zero.
"""

import math

from packlarder.measure.fractions import with_fraction
from packlarder.measure.printing import NARROW, NO_BREAK, amount, plain, remembered
from packlarder.measure.rounding import DOWN, NEAREST, NOISE, UP, Ladder, Rounding, on_ladder, rounded
from packlarder.measure.units import CUP, FAHRENHEIT, FLUID_OUNCE, FOOT, INCH, OUNCE

_OUNCES: Ladder = ((0.1, 0.01), (1, 0.1), (16, 0.25), (64, 0.5), (math.inf, 1))
_FLUID_OUNCES: Ladder = ((0.1, 0.01), (1, 0.1), (4, 0.25), (16, 0.5), (math.inf, 1))
_FEET: Ladder = ((100, 1), (math.inf, 10))
_INCHES: Ladder = ((4, 0.25), (math.inf, 0.5))

_CUP_MARKS = (0, 3, 4, 6, 8, 9, 12)
"""Twelfths of a cup that a measuring cup shows: 0, ¼, ⅓, ½, ⅔, ¾, 1."""
_LEAST_CUPS = 0.25 - NOISE
_CUPS_BY_MARK = 4
_CUPS_BY_HALF = 16


@remembered
def in_ounces(grams: float, rounding: Rounding = NEAREST) -> str:
    """Print a weight: to 0.01 oz below 0.1 oz, 0.1 below 1, ¼ below 1 lb; in lb and oz to ½ oz below 4 lb, then 1."""
    count, step = on_ladder(grams / OUNCE.size, _OUNCES, rounding)
    ounces = count * step
    if ounces < 16:
        return amount(_with_fraction(ounces), "oz")
    pounds, rest = divmod(ounces, 16)
    spoken = amount(pounds, "lb")
    return f"{spoken}{NO_BREAK}{amount(_with_fraction(rest), 'oz')}" if rest else spoken


@remembered
def in_fluid_ounces(millilitres: float, rounding: Rounding = NEAREST) -> str:
    """Print a volume: to 0.01 fl oz below 0.1, 0.1 below 1, ¼ below 4, ½ below 16, then 1."""
    count, step = on_ladder(millilitres / FLUID_OUNCE.size, _FLUID_OUNCES, rounding)
    return amount(_with_fraction(count * step), f"fl{NARROW}oz")


@remembered
def in_cups(millilitres: float, rounding: Rounding = NEAREST) -> str:
    """Print a volume: to the marks of a measuring cup (¼ ⅓ ½ ⅔ ¾) below 4 cups, ½ cup below 16, then ¼ quart.

    What is less than ¼ cup is given in fluid ounces; `reckon.kitchen` gives spoons.
    """
    cups = millilitres / CUP.size
    if not _LEAST_CUPS <= cups < math.inf:
        return in_fluid_ounces(millilitres, rounding)
    if cups < _CUPS_BY_MARK:
        return _named("cup", _to_mark(cups, rounding))
    halves = rounded(cups, 0.5, rounding)
    return _named("cup", halves) if halves < _CUPS_BY_HALF else _named("quart", rounded(cups, 1, rounding) / 4)


@remembered
def in_fahrenheit(celsius: float, rounding: Rounding = NEAREST, step: float = 1.0) -> str:
    """Print a temperature given in °C, to whole °F or to the step given."""
    return amount(rounded(celsius / FAHRENHEIT.size + FAHRENHEIT.zero, step, rounding), "°F")


@remembered
def in_feet(metres: float, rounding: Rounding = NEAREST) -> str:
    """Print a height: to 1 ft below 100 ft, then 10 ft."""
    count, step = on_ladder(metres / FOOT.size, _FEET, rounding)
    return amount(count * step, "ft")


@remembered
def in_inches(metres: float, rounding: Rounding = NEAREST) -> str:
    """Print a small length: to ¼ in below 4 in, then ½ in."""
    count, step = on_ladder(metres / INCH.size, _INCHES, rounding)
    return amount(_with_fraction(count * step), "in")


def _to_mark(cups: float, rounding: Rounding) -> float:
    """Round cups to what a measuring cup shows."""
    whole = math.floor(cups + NOISE)
    rest = (cups - whole) * 12
    if rounding is UP:
        mark = next(mark for mark in _CUP_MARKS if mark >= rest - NOISE)
    elif rounding is DOWN:
        mark = next(mark for mark in reversed(_CUP_MARKS) if mark <= rest + NOISE)
    else:
        mark = min(reversed(_CUP_MARKS), key=lambda mark: abs(mark - rest))
    return whole + mark / 12


def _named(unit: str, number: float) -> str:
    return amount(_with_fraction(number), unit if 0 < number <= 1 else f"{unit}s")


def _with_fraction(number: float) -> str:
    return with_fraction(number) or plain(number)
