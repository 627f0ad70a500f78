"""Amounts in metric units, rounded for a kitchen.

`in_...` is for what is worked out: to a few parts in a hundred. `as_weighed` is for what somebody read off a scale or
wrote down: the figure they know comes back to them. Below zero is a ValueError, save for heights and temperatures.
"""

import math

from packlarder.measure.printing import NO_BREAK, amount, remembered
from packlarder.measure.rounding import NEAREST, Ladder, Rounding, on_ladder, rounded

_GRAMS: Ladder = ((1, 0.1), (10, 0.5), (100, 1), (1000, 5), (math.inf, 10))
_WEIGHED: Ladder = ((10, 0.1), (10_000, 1), (math.inf, 10))
_MILLILITRES: Ladder = ((1, 0.1), (5, 0.5), (15, 1), (100, 5), (math.inf, 10))
_MINUTES: Ladder = ((1, 1 / 12), (60, 1), (600, 5), (4320, 30), (math.inf, 720))
_CENTIMETRES: Ladder = ((10, 0.5), (math.inf, 1))
_ENERGY: Ladder = ((10, 1), (100, 5), (math.inf, 10))
_PERCENT: Ladder = ((1, 0.1), (math.inf, 1))


@remembered
def in_grams(grams: float, rounding: Rounding = NEAREST) -> str:
    """Print a weight that was worked out: to 0.1 g below 1 g, 0.5 below 10, 1 below 100, 5 below 1 kg, then 0.01 kg."""
    count, step = on_ladder(grams, _GRAMS, rounding)
    return _grams_or_kilograms(count * step, kilograms_from=1000)


def kitchen_grams(grams: float, rounding: Rounding = NEAREST) -> float:
    """Round a weight to what `in_grams` prints, so that a total of printed weights can be printed."""
    count, step = on_ladder(grams, _GRAMS, rounding)
    return count * step


@remembered
def as_weighed(grams: float, rounding: Rounding = NEAREST) -> str:
    """Print a weight that was read off a scale: to 0.1 g below 10 g, 1 g below 10 kg, then 0.01 kg."""
    count, step = on_ladder(grams, _WEIGHED, rounding)
    return _grams_or_kilograms(count * step, kilograms_from=10_000)


@remembered
def in_ml(millilitres: float, rounding: Rounding = NEAREST) -> str:
    """Print a volume: to 0.1 mL below 1 mL, 0.5 below 5, 1 below 15, 5 below 100, 10 below 1 L, then 0.01 L."""
    count, step = on_ladder(millilitres, _MILLILITRES, rounding)
    volume = count * step
    return f"{volume / 1000:.2f}{NO_BREAK}L" if volume >= 1000 else amount(volume, "mL")


@remembered
def in_minutes(minutes: float, rounding: Rounding = NEAREST) -> str:
    """Print a time: to 5 s below a minute, 1 min below an hour, 5 min below 10 h, ½ h below 3 days, then ½ day."""
    count, step = on_ladder(minutes, _MINUTES, rounding)
    whole = count * step
    if 0 < whole < 1:
        return amount(5.0 * count, "s")
    if whole >= 4320:
        days, half = divmod(round(whole / 720), 2)
        return amount(f"{days}½" if half else str(days), "days")
    hours, rest = divmod(round(whole), 60)
    spoken = [amount(hours, "h")] if hours else []
    return NO_BREAK.join([*spoken, amount(rest, "min")] if rest or not hours else spoken)


@remembered
def in_celsius(celsius: float, rounding: Rounding = NEAREST, step: float = 1.0) -> str:
    """Print a temperature, to whole degrees or to the step given (½ for boiling points)."""
    return amount(rounded(celsius, step, rounding), "°C")


@remembered
def in_metres(metres: float, rounding: Rounding = NEAREST) -> str:
    """Print a height above the sea, to whole metres; below the sea it is below zero."""
    return amount(rounded(metres, 1, rounding), "m")


@remembered
def in_centimetres(metres: float, rounding: Rounding = NEAREST) -> str:
    """Print a small length given in metres: to ½ cm below 10 cm, then 1 cm."""
    count, step = on_ladder(metres * 100, _CENTIMETRES, rounding)
    return amount(count * step, "cm")


@remembered
def in_millimetres(metres: float, rounding: Rounding = NEAREST) -> str:
    """Print the depth of food on a tray, given in metres: to 1 mm."""
    return amount(rounded(metres * 1000, 1, rounding), "mm")


@remembered
def in_percent(share: float, rounding: Rounding = NEAREST) -> str:
    """Print a share (1 is the whole): to 0.1 % below 1 %, then 1 %."""
    count, step = on_ladder(share * 100, _PERCENT, rounding)
    return amount(count * step, "%")


@remembered
def in_kcal(kcal: float, rounding: Rounding = NEAREST) -> str:
    """Print the energy of food: to 1 kcal below 10, 5 below 100, then 10."""
    count, step = on_ladder(kcal, _ENERGY, rounding)
    return amount(count * step, "kcal")


@remembered
def in_kj(kilojoules: float, rounding: Rounding = NEAREST) -> str:
    """Print an amount of heat: to 1 kJ below 10, 5 below 100, then 10."""
    count, step = on_ladder(kilojoules, _ENERGY, rounding)
    return amount(count * step, "kJ")


def _grams_or_kilograms(grams: float, kilograms_from: float) -> str:
    return f"{grams / 1000:.2f}{NO_BREAK}kg" if grams >= kilograms_from else amount(grams, "g")
