"""Nutrients: per gram, scaled by a yield, blended, summed. What is unknown stays unknown, never nought."""

from collections.abc import Callable, Sequence

from packlarder.figures.foods import Nutrients as Per100
from packlarder.reckon.records import Nutrients

NAMES = Nutrients._fields
UNKNOWN = Nutrients(**dict.fromkeys(NAMES))


def _made(value_of: Callable[[str], float | None]) -> Nutrients:
    return Nutrients(**{name: value_of(name) for name in NAMES})


def per_gram(per_100: Per100) -> Nutrients:
    """Turn a food's figures for 100 g into those of one gram."""

    def value_of(name: str) -> float | None:
        value: float | None = getattr(per_100, name)
        return None if value is None else value / 100

    return _made(value_of)


def scaled(one: Nutrients, factor: float | None) -> Nutrients:
    """Scale by a factor; everything is unknown where the factor is."""
    if factor is None:
        return UNKNOWN

    def value_of(name: str) -> float | None:
        value: float | None = getattr(one, name)
        return None if value is None else value * factor

    return _made(value_of)


def blended(parts: Sequence[Nutrients], shares: Sequence[float]) -> Nutrients:
    """Blend by shares of weight; a nutrient that is unknown for one part is unknown for all."""

    def value_of(name: str) -> float | None:
        total = 0.0
        for part, share in zip(parts, shares, strict=True):
            value: float | None = getattr(part, name)
            if value is None:
                return None
            total += value * share
        return total

    return _made(value_of)
