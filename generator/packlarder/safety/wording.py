"""Figures in the sentences of rules."""


def degrees(celsius: float) -> str:
    """Write a temperature on both scales, in whole degrees: `62 °C (144 °F)`."""
    return f"{celsius:.0f}\u00a0°C ({celsius * 9 / 5 + 32:.0f}\u00a0°F)"


def metres(height_m: float) -> str:
    """Write a height in both systems: `3,000 m (9,843 ft)`."""
    return f"{height_m:,.0f}\u00a0m ({height_m / 0.3048:,.0f}\u00a0ft)"
