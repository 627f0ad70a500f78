"""Numbers for every number of servings, printed in both systems."""

from collections.abc import Callable, Sequence
from functools import cache

from packlarder.measure import (
    NARROW,
    NO_BREAK,
    UP,
    as_weighed,
    in_celsius,
    in_cups,
    in_fahrenheit,
    in_fluid_ounces,
    in_grams,
    in_kcal,
    in_minutes,
    in_ml,
    in_ounces,
    kitchen_grams,
    rounded,
)
from packlarder.measure.printing import amount, remembered
from packlarder.measure.rounding import steps
from packlarder.measure.units import CUP, TABLESPOON
from packlarder.reckon.kitchen import in_halves, spoons
from packlarder.sheets import words
from packlarder.sheets.printed import NOTHING, Printed, kept, same

NEAR = 0.25
"""A count may be off by this share of itself."""
Numbers = tuple[float | None, ...]
HEAVY_G = 10_000
"""From here on totals are told in kilograms."""
SLACK, SLACK_MIN = 0.02, 0.25
"""Minutes are rounded up, but for what no cook would wait: a fiftieth of them, at most a quarter of a minute."""


@kept
def weights(grams: Numbers) -> Printed:
    """Print weights in g and oz; what is not there is a dot."""
    return _both(grams, in_grams, in_ounces)


@kept
def total_weights(grams: Numbers) -> Printed:
    """Print totals of weights that are rounded already, so that what is printed adds up."""
    return _both(grams, _in_all, in_ounces)


def _in_all(grams: float) -> str:
    return amount(round(grams, 1), "g") if grams < HEAVY_G else as_weighed(grams)


@kept
def pours(millilitres: Numbers) -> Printed:
    """Print waters that a cook pours, which are whole mL already, in mL and in spoons and cups."""
    return _both(millilitres, whole_ml, spoons)


@kept
def about(millilitres: Numbers) -> Printed:
    """Print waters that nobody pours but that are there, such as what is drained, rounded for a kitchen."""
    return _both(millilitres, _about_ml, _about_cups)


@kept
def waters(millilitres: Numbers) -> Printed:
    """Print waters of a part that nobody pours, in whole mL and in fl oz: what it takes up, what is left."""
    return _both(millilitres, whole_ml, in_fluid_ounces)


def carried(millilitres: Numbers, ounces: Numbers) -> Printed:
    """Print waters to carry, whole in both systems, each by a row of its own so that printed pieces add up."""
    return Printed(_texts(millilitres, whole_ml), _texts(ounces, whole_ounces))


@kept
def measures(grams: tuple[float, ...], per_ml: float) -> Printed:
    """Print the volume of a dry component in spoons and cups, in both systems alike: they are what people own."""
    return _same(tuple([dry_g / per_ml for dry_g in grams]), spoons)


def is_near_a_half(number: float) -> bool:
    """Tell whether to count in halves says what is meant: 0.21 of a pepper is told by its weight."""
    return number >= 1 or abs(rounded(number, 0.5) - number) <= NEAR * number


@kept
def counts(numbers: Numbers, noun: str) -> Printed:
    """Print counts of fresh food: 4 eggs."""

    def counted(number: float) -> str:
        return in_halves(number, noun).text

    return _same(numbers, counted)


@kept
def minutes(numbers: Numbers) -> Printed:
    """Print minutes of a step, rounded up: food that is given longer is not undone."""
    return _same(numbers, minutes_up)


@kept
def whole_minutes(numbers: tuple[int, ...]) -> Printed:
    """Print minutes to the minute, however many: 1 h 6 min, as the clock has it."""
    return _same(numbers, to_the_minute)


@kept
def clocks(minutes: tuple[int, ...]) -> Printed:
    """Print times against the clock: 0:07, 1:15."""
    return alike([f"{number // 60}:{number % 60:02d}" for number in minutes])


@kept
def bare_minutes(minutes: tuple[int, ...]) -> Printed:
    """Print times against the clock as bare minutes: 75."""
    return alike([str(number) for number in minutes])


@remembered
def to_the_minute(minutes: float) -> str:
    """Print whole minutes as hours and minutes: 1 h 6 min."""
    hours, rest = divmod(int(minutes), 60)
    spoken = [amount(hours, "h")] if hours else []
    return NO_BREAK.join([*spoken, amount(rest, "min")] if rest or not hours else spoken)


@kept
def degrees(celsius: float, count: int) -> Printed:
    """Print a temperature that must be reached, in whole degrees as authorities do, the same for all servings."""
    return Printed((in_celsius(celsius),) * count, (in_fahrenheit(celsius),) * count)


def energies(kcal: Numbers) -> Printed:
    """Print energy of food in kcal."""
    return _same(kcal, in_kcal)


def nutrients(grams: Numbers) -> Printed:
    """Print grams of a nutrient, in both systems alike as labels do."""
    return _same(grams, in_grams)


@kept
def printed_grams(grams: tuple[float, ...]) -> tuple[float, ...]:
    """Give weights as `weights` prints them, which are what adds up."""
    return tuple([kitchen_grams(value) for value in grams])


def alike(texts: Sequence[str]) -> Printed:
    """Print texts that are the same in both systems."""
    found = tuple(texts)
    return Printed(found, found)


def each_in(figure: Printed, phrase: str) -> Printed:
    """Put each text of a figure into the place `water` of a phrase; nothing stays nothing."""
    before, _, behind = phrase.partition("{water}")

    def within(texts: Sequence[str]) -> tuple[str, ...]:
        return tuple(["" if text == NOTHING else f"{before}{text}{behind}" for text in texts])

    return Printed(within(figure.metric), within(figure.us))


def both_of(one: Printed, other: Printed) -> Printed:
    """Join two figures where both are there: this and that; else give the one that is."""

    def joined(ones: Sequence[str], others: Sequence[str]) -> tuple[str, ...]:
        pairs = zip(ones, others, strict=True)
        return tuple([f"{this}{words.AND}{that}" if this and that else this or that for this, that in pairs])

    return Printed(joined(one.metric, other.metric), joined(one.us, other.us))


def or_else(figure: Printed, text: str) -> Printed:
    """Put a text where a figure has none."""
    return Printed(tuple([one or text for one in figure.metric]), tuple([one or text for one in figure.us]))


@kept
def fixed(text: str, count: int) -> Printed:
    """Print a text that never changes."""
    return same(text, count)


@remembered
def whole_ml(millilitres: float) -> str:
    """Print whole millilitres, unrounded, so that printed pieces add up: 240 mL, 1.24 L, 1.245 L."""
    whole = round(millilitres)
    if whole < 1000:
        return amount(whole, "mL")
    return amount(f"{whole / 1000:.3f}" if whole % 10 else f"{whole / 1000:.2f}", "L")


@remembered
def whole_ounces(ounces: float) -> str:
    """Print whole fluid ounces."""
    return amount(ounces, f"fl{NARROW}oz")


def minutes_up(minutes: float) -> str:
    """Print the minutes of a step as a cook keeps them."""
    return in_minutes(_kept(minutes), UP)


def bare_minutes_up(minutes: float) -> str:
    """Print the same as bare minutes, however many: 75 min."""
    return amount(steps(_kept(minutes), 1, UP), "min")


def _kept(minutes: float) -> float:
    return minutes - min(SLACK_MIN, SLACK * minutes)


@remembered
def _about_ml(millilitres: float) -> str:
    return whole_ml(rounded(millilitres, 10)) if millilitres >= 1000 else in_ml(millilitres)


@remembered
def _about_cups(millilitres: float) -> str:
    """Print to a cup's marks; less than ¼ cup in whole tablespoons, less than one in spoons."""
    if millilitres >= CUP.size / 4 or millilitres < TABLESPOON.size:
        return in_cups(millilitres) if millilitres >= TABLESPOON.size else spoons(millilitres)
    return spoons(rounded(millilitres, TABLESPOON.size))


@cache
def _nothing(count: int) -> Printed:
    return same(NOTHING, count)


def _both(values: Numbers, metric: Callable[[float], str], us: Callable[[float], str]) -> Printed:
    if not any(values):
        return _nothing(len(values))
    return Printed(_texts(values, metric), _texts(values, us))


def _same(values: Numbers, text: Callable[[float], str]) -> Printed:
    if not any(values):
        return _nothing(len(values))
    return alike(_texts(values, text))


def _texts(values: Numbers, text: Callable[[float], str]) -> tuple[str, ...]:
    return tuple([text(value) if value else NOTHING for value in values])
