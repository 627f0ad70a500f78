"""How a component comes back: the way of water, its amounts and minutes."""

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from pydantic import model_validator

from packlarder.book.base import BookModel, slip
from packlarder.book.fields import Minutes, Volume, Written, YesNo
from packlarder.faults import Spot
from packlarder.measure import Dimension, Quantity, Unreadable, parse


class Way(StrEnum):
    """The ways of giving water to a dried food."""

    SOAK = "soak"
    MIX = "mix"
    MOISTEN = "moisten"
    POUR_OVER = "pour over"
    IN_THE_POT = "in the pot"


class Warmth(StrEnum):
    """How warm the water is when it is given."""

    COLD = "cold"
    WARM = "warm"
    HOT = "hot"
    BOILING = "boiling"


@dataclass(frozen=True, slots=True)
class WaterGiven:
    """Water as an author writes it: `300 mL boiling water`, `1 tbsp cold water`, `hot water`."""

    quantity: Quantity | None
    warmth: Warmth


_WATER = re.compile(r"(?:(?P<amount>.*?)\s+)??(?:(?P<warmth>cold|warm|hot|boiling)\s+)?water", re.IGNORECASE)


def read_water(text: str) -> WaterGiven:
    """Read water given; raises slip(...) for a text that is none."""
    found = _WATER.fullmatch(text)
    if not found:
        raise slip(
            "not-water", f'"{text}" is not an amount of water', "write it like `300 mL boiling water`, or `hot water`"
        )
    warmth = Warmth((found["warmth"] or "cold").lower())
    if not found["amount"]:
        return WaterGiven(None, warmth)
    quantity = parse(found["amount"], Dimension.VOLUME)
    if isinstance(quantity, Unreadable):
        raise slip("unreadable-quantity", quantity.message, quantity.help)
    return WaterGiven(quantity, warmth)


Water = Annotated[WaterGiven, Written(read_water, WaterGiven, {"type": "string", "examples": ["300 mL boiling water"]})]
"""An amount of water with its warmth."""


@dataclass(frozen=True, slots=True)
class Given:
    """What stands after a way of water: an amount of the component (`1 tbsp`), or only the water (`hot water`)."""

    amount: Quantity | None
    water: WaterGiven | None


def _given(text: str) -> Given:
    if _WATER.fullmatch(text):
        return Given(None, read_water(text))
    amount = parse(text, (Dimension.WEIGHT, Dimension.VOLUME, Dimension.COUNT))
    if isinstance(amount, Unreadable):
        raise slip("unreadable-quantity", amount.message, amount.help or "write an amount like `1 cup`, or `hot water`")
    return Given(amount, None)


GivenField = Annotated[Given, Written(_given, Given, {"type": "string", "examples": ["hot water", "1 tbsp"]})]


class BringBack(BookModel):
    """One way of water and what goes with it: `{mix: 1 tbsp, with: 1 tbsp cold water, wait: 5 min}`."""

    soak: GivenField | None = None
    """give plenty, it takes what it needs, the rest is drained: `hot water`, or an amount to go with `with`"""
    mix: GivenField | None = None
    """a measured amount of water, all of it stays in"""
    moisten: GivenField | None = None
    """wet and wait: only what is absorbed is given"""
    pour_over: GivenField | None = None
    """measured boiling water into the pack, then wait"""
    in_the_pot: GivenField | None = None
    """goes dry into the pot and takes its water there: an amount to go with `takes`"""
    with_: Water | None = None
    """the water for the amount named"""
    takes: Volume | None = None
    """how much of it the amount named takes up, if you measured it"""
    wait: Minutes | None = None
    """how long until it is ready"""
    stir_at: Minutes | None = None
    """when to stir in between"""
    cosy: YesNo = False
    """whether the pack waits in an insulated cosy"""

    @model_validator(mode="after")
    def _one_way(self) -> "BringBack":
        named = [way for way in Way if self._given(way) is not None]
        if not named:
            raise slip("one-way", "no way of water is named", f"name one of {', '.join(f'`{way}`' for way in Way)}")
        if len(named) > 1:
            message = f"one way of water is wanted here, this names {' and '.join(f'`{way}`' for way in named)}"
            also = tuple((way,) for way in named[:1])
            raise slip("one-way", message, "take all but one out", at=(named[1],), spot=Spot.KEY, also=also)
        return self

    @model_validator(mode="after")
    def _fitting_water(self) -> "BringBack":
        given = self._given(self.way)
        if given is not None and given.water and self.with_:
            message = f"water is named twice: after `{self.way}` and after `with`"
            help = f"write an amount of the food after `{self.way}`, like `{self.way}: 50 g`"
            raise slip("water-twice", message, help, at=(self.way,))
        if self.amount is not None and self.with_ is None and self.takes is None:
            message = "it does not say how much water goes with this amount"
            raise slip("no-water-named", message, "add `with: 300 mL hot water`, or what you measured", at=(self.way,))
        says_water = self.with_ is not None or self.amount is None
        if self.way is Way.POUR_OVER and says_water and self.water.warmth is not Warmth.BOILING:
            help = "write `boiling water`, or name another way: soak, mix, moisten"
            at = "with" if self.with_ else self.way
            raise slip("not-boiling", "`pour over` takes boiling water", help, at=(at,))
        return self

    def _given(self, way: Way) -> Given | None:
        found: Given | None = getattr(self, way.replace(" ", "_"))
        return found

    @property
    def way(self) -> Way:
        """Give the way of water that is named."""
        return next(way for way in Way if self._given(way) is not None)

    @property
    def amount(self) -> Quantity | None:
        """Give the amount of the component that `with` and `takes` go with; None where only water is named."""
        given = self._given(self.way)
        return None if given is None else given.amount

    @property
    def water(self) -> WaterGiven:
        """Give the water, cold where nothing is said."""
        given = self._given(self.way)
        return self.with_ or (given.water if given else None) or WaterGiven(None, Warmth.COLD)
