"""Figures and texts for other programs: numbers as the pages print them, plain spaces."""

from packlarder.measure import (
    NEAREST,
    NO_BREAK,
    Dimension,
    Quantity,
    Rounding,
    as_weighed,
    in_grams,
    parse,
)


def grams(weight_g: float) -> float:
    """Round a weight as the pages print it."""
    return read(in_grams(weight_g), Dimension.WEIGHT)


def known_grams(weight_g: float | None) -> float | None:
    """Round a weight as the pages print it, if there is one."""
    return None if weight_g is None else grams(weight_g)


def weighed(weight_g: float, rounding: Rounding = NEAREST) -> float:
    """Round a weight that was read off a scale as the pages print it."""
    return read(as_weighed(weight_g, rounding), Dimension.WEIGHT)


def known_weighed(weight_g: float | None) -> float | None:
    """Round a weight that was read off a scale as the pages print it, if there is one."""
    return None if weight_g is None else weighed(weight_g)


def read(text: str, dimension: Dimension) -> float:
    """Give the number behind a printed figure, so that data and page can not differ."""
    found = parse(text, (dimension,))
    if not isinstance(found, Quantity):
        return leading(text)
    return number(found.base, 2)


def leading(text: str) -> float:
    """Give the number that a printed figure begins with."""
    return number(float(text.partition(NO_BREAK)[0]), 2)


def number(value: float, digits: int = 0) -> float:
    """Round, and write whole numbers without a point."""
    rounded = round(value, digits)
    return int(rounded) if rounded == int(rounded) else rounded
