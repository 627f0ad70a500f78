"""What a measure of a component weighs, and how an author's amount becomes grams."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from packlarder.measure import Dimension, Quantity, Unreadable, parse

PER_ML = "mL"
"""The word under which the weight of a millilitre stands; every other word is a noun, in the form for one."""


def grams_per(weighed: Iterable[tuple[str, float]]) -> Mapping[str, float]:
    """Give grams per mL and per piece from weighed measures such as `("1 tbsp", 6.1)`; the first of a word wins.

    Measures that can not be read as a volume or a count are left out.
    """
    found: dict[str, float] = {}
    for measure, grams in weighed:
        quantity = read_measure(measure)
        if quantity is not None and quantity.base > 0:
            found.setdefault(_word(quantity), grams / quantity.base)
    return MappingProxyType(found)


def read_measure(text: str) -> Quantity | None:
    """Read the measure that something weighs: `1 tbsp`, `2 eggs`, `portion`; None for neither volume nor count."""
    for wording in (text, f"1 {text}"):
        quantity = parse(wording, (Dimension.VOLUME, Dimension.COUNT))
        if not isinstance(quantity, Unreadable):
            return quantity
    return None


def in_grams(quantity: Quantity, per: Mapping[str, float]) -> float | None:
    """Turn an amount into grams; None where no weight of its measure is known."""
    if quantity.dimension is Dimension.WEIGHT:
        return quantity.base
    weight = per.get(_word(quantity))
    return None if weight is None else weight * quantity.base


def _word(quantity: Quantity) -> str:
    return PER_ML if quantity.dimension is Dimension.VOLUME else quantity.noun
