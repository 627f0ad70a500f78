"""A number with its unit."""

from dataclasses import dataclass
from decimal import Decimal

from packlarder.measure.fractions import with_fraction
from packlarder.measure.nouns import for_number
from packlarder.measure.printing import MINUS, NARROW, NO_BREAK
from packlarder.measure.units import Dimension, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """A number with its unit, as it was written. `noun` says of what a count is, in the form for one: egg."""

    number: float
    unit: Unit
    noun: str = ""

    @property
    def dimension(self) -> Dimension:
        """What it is a quantity of."""
        return self.unit.dimension

    @property
    def base(self) -> float:
        """Its size in g, mL, pieces, min, °C, m, of the whole, kcal or kW."""
        return (self.number - self.unit.zero) * self.unit.size


@dataclass(frozen=True, slots=True, kw_only=True)
class Unreadable:
    """Why a text is no quantity, and what to write in its place."""

    message: str
    help: str


def written(quantity: Quantity) -> str:
    """Write a quantity as it stands, unrounded; `parse` reads it back as the same quantity."""
    number = _number(quantity)
    if quantity.unit.dimension is Dimension.COUNT:
        return f"{number}{NO_BREAK}{for_number(quantity.noun, quantity.number)}"
    word = quantity.unit.plural if quantity.unit.plural and quantity.number > 1 else quantity.unit.name
    return f"{number}{NO_BREAK}{word.replace(' ', NARROW)}"


def _number(quantity: Quantity) -> str:
    if quantity.unit.in_fractions or quantity.number.is_integer():
        nice = with_fraction(quantity.number)
        if nice is not None:
            return nice.replace("-", MINUS)
    return format(Decimal(repr(quantity.number)), "f").replace("-", MINUS)
