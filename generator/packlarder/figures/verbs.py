"""What each verb of a step does to food, water and pot: one row a verb.

The words are those of a dish's steps. Whether a step really wets or cooks hangs on its pot as well: what a row grants,
`safety.food` follows through the steps.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.figure import Figure, Standing


class Wets(StrEnum):
    """Whether a verb wets its parts right through."""

    YES = "wets right through"
    IN_THE_POT = "wets what goes into a pot that holds water"
    NO = "leaves dry what is dry"


class Heats(StrEnum):
    """What the heat of a verb does to food."""

    COOKS = "cooks"
    WARMS = "only warms"
    NOT = "does not heat"


@dataclass(frozen=True, slots=True, kw_only=True)
class VerbFigures:
    """What one verb does.

    `gives_water`: fresh water goes to its parts, by weight or in the pot. `on_stove`: it takes the stove, pot or pan.
    `lid_on`: whether the lid is on where a step says nothing. `boils_off`: whether its water boils away while it lasts.
    `below_boil` is how far its water stays below the boil (K), for verbs that heat in water; `pan` how hot its pan gets
    (°C), for those that heat without. `fill` is the share of a pot's brim that one round fills. `least` is the shortest
    time (min) after which it is believed to have cooked thin or small food right through.
    """

    word: str
    wets: Wets = Wets.NO
    heats: Heats = Heats.NOT
    gives_water: bool = False
    on_stove: bool = False
    lid_on: bool = False
    boils_off: bool = False
    below_boil: Figure | None = None
    pan: Figure | None = None
    fill: Figure | None = None
    least: Figure | None = None

    @property
    def cooks(self) -> bool:
        """Tell whether it can cook what is raw."""
        return self.heats is Heats.COOKS

    @property
    def dry_heat(self) -> bool:
        """Tell whether it heats in a pan or oven, without water around the food."""
        return self.pan is not None


_KITCHEN = "kitchen practice; our choice"


def _figure(name: str, value: float, unit: str) -> Figure:
    return Figure(name=name, value=value, unit=unit, source=_KITCHEN, standing=Standing.COMMON_PRACTICE)


def _below_boil(verb: str, kelvin: float) -> Figure:
    return _figure(f"water of `{verb}` stays below the boil by", kelvin, "K")


def _pan(verb: str, celsius: float) -> Figure:
    return _figure(f"how hot a pan gets to {verb}", celsius, "°C")


def _fill(verb: str, share: float) -> Figure:
    return _figure(f"how full a pot is made to {verb}", share, "of what it holds to the brim")


def _least(verb: str, minutes: float) -> Figure:
    return _figure(f"shortest time to {verb} that is believed to cook thin or small food", minutes, "min")


_ROWS = (
    VerbFigures(word="soak", wets=Wets.YES, gives_water=True),
    VerbFigures(word="mix", wets=Wets.YES, gives_water=True),
    VerbFigures(word="moisten", wets=Wets.YES, gives_water=True),
    VerbFigures(word="pour over", wets=Wets.YES, heats=Heats.WARMS, gives_water=True, lid_on=True),
    VerbFigures(word="drain"),
    VerbFigures(
        word="boil",
        wets=Wets.IN_THE_POT,
        heats=Heats.COOKS,
        gives_water=True,
        on_stove=True,
        boils_off=True,
        below_boil=_below_boil("boil", 0.0),
        fill=_fill("boil", 0.75),
        least=_least("boil", 1.0),
    ),
    VerbFigures(
        word="simmer",
        wets=Wets.IN_THE_POT,
        heats=Heats.COOKS,
        gives_water=True,
        on_stove=True,
        lid_on=True,
        boils_off=True,
        below_boil=_below_boil("simmer", 4.0),
        fill=_fill("simmer", 0.85),
        least=_least("simmer", 2.0),
    ),
    VerbFigures(
        word="fry",
        heats=Heats.COOKS,
        on_stove=True,
        pan=_pan("fry", 180.0),
        fill=_fill("fry", 0.35),
        least=_least("fry", 2.0),
    ),
    VerbFigures(
        word="bake",
        heats=Heats.COOKS,
        on_stove=True,
        lid_on=True,
        pan=_pan("bake", 180.0),
        fill=_fill("bake", 0.6),
        least=_least("bake", 8.0),
    ),
    VerbFigures(
        word="warm",
        heats=Heats.WARMS,
        on_stove=True,
        lid_on=True,
        below_boil=_below_boil("warm", 20.0),
        fill=_fill("warm", 0.85),
    ),
    VerbFigures(word="stir in", wets=Wets.IN_THE_POT),
    VerbFigures(word="wait"),
)

VERBS: Mapping[str, VerbFigures] = MappingProxyType({row.word: row for row in _ROWS})
"""Every verb by its word, in the order in which the format lists them."""
