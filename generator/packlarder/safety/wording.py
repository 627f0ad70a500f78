"""Figures in the sentences of rules."""

from packlarder.figures.units import FOOT


def degrees(celsius: float) -> str:
    """Write a temperature on both scales, in whole degrees: `62 °C (144 °F)`."""
    return f"{celsius:.0f}\u00a0°C ({celsius * 9 / 5 + 32:.0f}\u00a0°F)"


def lasting(minutes: float) -> str:
    """Write how long something lasts: `10 s` below a minute, otherwise `1.5 min`."""
    return f"{minutes * 60:.0f}\u00a0s" if minutes < 1 else f"{minutes:g}\u00a0min"


def metres(height_m: float) -> str:
    """Write a height in both systems, feet to the nearest hundred: `3,000 m (9,800 ft)`."""
    return f"{height_m:,.0f}\u00a0m ({round(height_m / FOOT.value, -2):,.0f}\u00a0ft)"
