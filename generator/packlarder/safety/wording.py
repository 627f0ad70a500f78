"""Figures in the sentences of rules."""

from collections.abc import Iterable

from packlarder.figures.units import FOOT, GALLON
from packlarder.measure import UP, Rounding, rounded

HOME = "home"
THE_END = "the end"
"""Where the first leg of a trip begins, and the last one ends."""
THE_WATER = "the water that must be melted or boiled"


def degrees(celsius: float) -> str:
    """Write a temperature on both scales, in whole degrees: `62 °C (144 °F)`."""
    return f"{celsius:.0f}\u00a0°C ({celsius * 9 / 5 + 32:.0f}\u00a0°F)"


def lasting(minutes: float) -> str:
    """Write how long something lasts: `10 s` below a minute, otherwise `1.5 min`."""
    return f"{minutes * 60:.0f}\u00a0s" if minutes < 1 else f"{minutes:g}\u00a0min"


def metres(height_m: float) -> str:
    """Write a height in both systems, feet to the nearest hundred: `3,000 m (9,800 ft)`."""
    return f"{height_m:,.0f}\u00a0m ({round(height_m / FOOT.value, -2):,.0f}\u00a0ft)"


def litres(ml: float, rounding: Rounding = UP) -> str:
    """Write a volume of water in both systems, to 0.1: `18.4 L (4.9 gal)`; up, or down for what there is."""
    metric, us = rounded(ml / 1000, 0.1, rounding), rounded(ml / GALLON.value, 0.1, rounding)
    return f"{metric:.1f}\u00a0L ({us:.1f}\u00a0gal)"


def days(numbers: Iterable[int]) -> str:
    """Write days of a trip as a list to read: `day 2`, `days 2, 3, 5`."""
    each = sorted(set(numbers))
    return f"day{'s' if len(each) > 1 else ''} {', '.join(map(str, each))}"
