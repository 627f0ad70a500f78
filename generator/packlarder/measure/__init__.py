"""Quantities: read from text, turned into base units, rounded for a kitchen, printed.

`parse` reads "1½ cups" into a `Quantity` with its size in the base unit; the `in_...` functions print bare numbers:
`in_grams(1247)` is 1.25 kg, `in_ml(246, UP)` is 250 mL. Fluids, cups and spoons are US customary.
"""

from packlarder.measure.customary import (
    in_cups,
    in_fahrenheit,
    in_feet,
    in_fluid_ounces,
    in_inches,
    in_ounces,
)
from packlarder.measure.fractions import with_fraction
from packlarder.measure.metric import (
    as_weighed,
    in_celsius,
    in_centimetres,
    in_grams,
    in_kcal,
    in_kj,
    in_metres,
    in_millimetres,
    in_minutes,
    in_ml,
    in_percent,
    kitchen_grams,
)
from packlarder.measure.nouns import for_number, plural, singular
from packlarder.measure.printing import MINUS, NARROW, NO_BREAK, as_typed
from packlarder.measure.quantity import Quantity, Unreadable, written
from packlarder.measure.reading import LONGEST, parse
from packlarder.measure.rounding import DOWN, NEAREST, UP, Rounding, rounded
from packlarder.measure.units import UNITS, Dimension, Unit

__all__ = [
    "DOWN",
    "LONGEST",
    "MINUS",
    "NARROW",
    "NEAREST",
    "NO_BREAK",
    "UNITS",
    "UP",
    "Dimension",
    "Quantity",
    "Rounding",
    "Unit",
    "Unreadable",
    "as_typed",
    "as_weighed",
    "for_number",
    "in_celsius",
    "in_centimetres",
    "in_cups",
    "in_fahrenheit",
    "in_feet",
    "in_fluid_ounces",
    "in_grams",
    "in_inches",
    "in_kcal",
    "in_kj",
    "in_metres",
    "in_millimetres",
    "in_minutes",
    "in_ml",
    "in_ounces",
    "in_percent",
    "kitchen_grams",
    "parse",
    "plural",
    "rounded",
    "singular",
    "with_fraction",
    "written",
]
