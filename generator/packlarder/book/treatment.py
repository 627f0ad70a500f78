"""What was done to food for the dryer's sake."""

import re
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated

from packlarder.book.base import slip
from packlarder.book.fields import Written
from packlarder.book.meant import did_you_mean
from packlarder.measure import Dimension, Quantity, Unreadable, parse, written


class Treatment(StrEnum):
    """The ways of preparing food for the dryer, or of finishing it."""

    BLANCHED = "blanched"
    ACID_DIP = "acid dip"
    HEATED = "heated"
    FROZEN_FIRST = "frozen first"


@dataclass(frozen=True, slots=True)
class Treated:
    """A treatment, and for heat how hot the food became inside."""

    treatment: Treatment
    to: Quantity | None = None


_HEATED = re.compile(r"heated(?:\s+to)?\s+(?P<degrees>.+)")
_HEATED_HELP = "write it like `heated to 74 °C`"
_LEAST_C, _MOST_C = 30, 250
_BARE = (Treatment.BLANCHED, Treatment.ACID_DIP, Treatment.FROZEN_FIRST)


def _treated(text: str) -> Treated:
    if found := _HEATED.fullmatch(text):
        degrees = parse(found["degrees"], Dimension.TEMPERATURE)
        if isinstance(degrees, Unreadable):
            raise slip("unreadable-quantity", degrees.message, _HEATED_HELP)
        if not _LEAST_C <= degrees.base <= _MOST_C:
            raise slip("out-of-range", f"{written(degrees)} can not be meant here", "from 30 °C to 250 °C fits here")
        return Treated(Treatment.HEATED, degrees)
    if text in _BARE:
        return Treated(Treatment(text))
    if text == Treatment.HEATED:
        raise slip("heated-to-what", "it does not say how hot it became inside", _HEATED_HELP)
    hint = did_you_mean(text, _BARE)
    known = f"the words are: {', '.join(_BARE)}, and `heated to 74 °C`"
    raise slip("unknown-treatment", f'"{text}" is no treatment that is known here', f"{hint}{known}")


TreatedField = Annotated[Treated, Written(_treated, Treated, {"examples": ["blanched", "heated to 74 °C"]})]
"""What was done to it: `blanched`, `acid dip`, `frozen first`, `heated to 74 °C`."""
