"""How amounts of a trip are printed, in both systems of units, so that the pieces printed add up to their total."""

from collections.abc import Iterable, Sequence

from packlarder.measure import NARROW, NO_BREAK, UP, as_weighed, in_cups, in_kcal, in_ml, in_ounces
from packlarder.measure.printing import amount
from packlarder.measure.units import POUND, QUART
from packlarder.reckon.kitchen import share_out
from packlarder.sheets.ounces import OUNCE_ML
from packlarder.sheets.printed import NOTHING, Printed
from packlarder.sheets.series import whole_ml

HEAVY_G = 10_000
"""From here on weights are told in kilograms, as exactly as before."""
OUNCES_IN_QUART = round(QUART.size / OUNCE_ML)
IN_QUARTS_OZ = 2 * OUNCES_IN_QUART
"""From here on waters are told in quarts and ounces."""
STEP_G = 0.1
NO_FIGURE = Printed((NOTHING,), (NOTHING,))


def alike(text: str) -> Printed:
    """Print a text that is the same in both systems; an empty one is no figure."""
    return Printed((text,), (text,)) if text else NO_FIGURE


def weight(grams: float | None) -> Printed:
    """Print a weight as it adds up, to 0.1 g however heavy it is."""
    if not grams:
        return NO_FIGURE
    return Printed((in_whole_grams(grams),), (in_ounces(grams),))


def fuel(grams: float | None) -> Printed:
    """Print a weight of fuel, which is whole grams already; ounces are rounded up, so that there is enough."""
    return Printed((in_whole_grams(grams),), (in_ounces(grams, UP),)) if grams else NO_FIGURE


def in_whole_grams(grams: float) -> str:
    """Print grams that were rounded where they were weighed out."""
    if grams < HEAVY_G:
        return amount(f"{round(grams, 1):g}", "g")
    tenths = round(grams / STEP_G)
    return f"{tenths / 10_000:.{4 if tenths % 10 else 3}f}{NO_BREAK}kg"


def weights(total: float, parts: Sequence[float]) -> tuple[Printed, ...]:
    """Print the parts of a weight so that they add up to it as printed, in metric units."""
    tenths = round(round(total, 1) / STEP_G)
    if not tenths or not any(parts):
        return tuple(NO_FIGURE for _ in parts)
    return tuple(weight(round(share * STEP_G, 1)) for share in share_out(tenths, parts))


def heavy(grams: float) -> Printed:
    """Print a weight in few signs: kilograms and pounds, to a tenth."""
    return Printed((amount(f"{grams / 1000:.1f}", "kg"),), (amount(f"{grams / POUND.size:.1f}", "lb"),))


def scales(grams: float | None) -> Printed:
    """Print a weight of fresh food, as a household's scale shows it."""
    return NO_FIGURE if not grams else Printed((as_weighed(grams),), (in_ounces(grams),))


def water(millilitres: float, ounces: int) -> Printed:
    """Print a water to carry, each system by a number of its own, so that printed pieces add up."""
    metric = whole_ml(millilitres) if millilitres else NOTHING
    return Printed((metric,), (in_quarts(ounces) if ounces else NOTHING,))


def in_quarts(ounces: int) -> str:
    """Print whole fluid ounces; from two quarts on in quarts and ounces: 3 qt 12 fl oz."""
    if ounces < IN_QUARTS_OZ:
        return amount(ounces, f"fl{NARROW}oz")
    quarts, rest = divmod(ounces, OUNCES_IN_QUART)
    spoken = [amount(quarts, "qt"), *([amount(rest, f"fl{NARROW}oz")] if rest else [])]
    return NO_BREAK.join(spoken)


def bulk(millilitres: float) -> Printed:
    """Print the room that dry food takes."""
    return NO_FIGURE if not millilitres else Printed((in_ml(millilitres),), (in_cups(millilitres),))


def energy(kcal: float) -> str:
    """Print the energy of food; nought where there is none."""
    return in_kcal(kcal)


def within(phrase: str, figure: Printed) -> Printed:
    """Put each text of a figure into the place `figure` of a phrase."""

    def put(texts: Iterable[str]) -> tuple[str, ...]:
        return tuple(phrase.format(figure=text) for text in texts)

    return Printed(put(figure.metric), put(figure.us))
