"""Values that know their bounds: outside of them a unit, a point or a nought has slipped."""

from typing import Annotated

from pydantic import AfterValidator, BeforeValidator, WithJsonSchema

from packlarder.book.base import slip
from packlarder.book.defaults import known
from packlarder.book.fields import Degrees, Length, Minutes, Power, Share, Volume, VolumeOrNone, Weight, Whole
from packlarder.book.names import as_list
from packlarder.measure import Quantity, written

MOST_SERVINGS = 24
"""Larger parties cook in several pots, and that is several dishes."""


def _servings(value: object) -> object:
    number = str(value).strip()
    if number.isdecimal() and not 1 <= int(number[:9]) <= MOST_SERVINGS:
        help = f"write a number from 1 to {MOST_SERVINGS}; for more people, cook it several times"
        raise slip("out-of-range", f"{number[:9]} can not be meant here", help)
    return value


def _between(low: str, high: str) -> AfterValidator:
    least, most = known(low).base, known(high).base

    def check(quantity: Quantity) -> Quantity:
        if not least <= quantity.base <= most:
            raise slip("out-of-range", f"{written(quantity)} can not be meant here", f"from {low} to {high} fits here")
        return quantity

    return AfterValidator(check)


def _like(example: str) -> WithJsonSchema:
    """Offer an example of the size that is meant: a length can be a mountain's or a crumb's."""
    return WithJsonSchema({"type": ["string", "number"], "examples": [example]})


Servings = Annotated[
    Whole,
    BeforeValidator(_servings),
    WithJsonSchema({"type": ["integer", "string"], "minimum": 1, "maximum": MOST_SERVINGS}),
]
"""For how many."""
Height = Annotated[Length, _between("0 m", "6000 m")]
"""A height above the sea at which the boiling point is known (figures/air_and_water)."""
AirDegrees = Annotated[Degrees, _between("-60 °C", "60 °C")]
"""How warm air is where people cook."""
ColdDegrees = Annotated[Degrees, _between("0 °C", "60 °C")]
"""How warm water is before it is heated."""
InsideDegrees = Annotated[Degrees, _between("30 °C", "250 °C")]
"""How hot food gets inside, or under a lid."""
PotVolume = Annotated[Volume, _between("100 mL", "50 L")]
"""What a pot holds."""
PotWidth = Annotated[Length, _between("4 cm", "80 cm"), _like("16 cm")]
"""How wide a pot is."""
StovePower = Annotated[Power, _between("0.05 kW", "30 kW")]
"""How strong a stove is."""
Efficiency = Annotated[Share, _between("1 %", "100 %")]
"""How much of a stove's heat reaches the pot."""
Margin = Annotated[Share, _between("0 %", "200 %")]
"""What is added on the safe side."""
WaterShare = Annotated[Share, _between("0 %", "100 %")]
"""How much of a food is water."""
DryWaterShare = Annotated[Share, _between("0 %", "60 %")]
"""How much of a dry food is water; what holds more is not dry."""
DryerHours = Annotated[Minutes, _between("10 min", "240 h")]
"""How long a drying run takes, or a dryer rests between two."""
TrayWeight = Annotated[Weight, _between("50 g", "20 kg")]
"""What goes on one tray."""
TrayDepth = Annotated[Length, _between("1 mm", "10 cm"), _like("12 mm")]
"""How deep food lies on a tray."""
RunWeight = Annotated[Weight, _between("1 g", "100 kg")]
"""A weight of food in one drying run."""
StoredWeight = Annotated[Weight, _between("1 g", "100 kg")]
"""A weight of dry food that is kept in store."""
JarVolume = Annotated[Volume, _between("20 mL", "20 L")]
"""What a jar, pouch or bag holds."""
RoomDegrees = Annotated[Degrees, _between("-30 °C", "45 °C")]
"""How warm it is where food is kept."""
Appetite = Annotated[Share, _between("0 %", "300 %")]
"""How much of a serving somebody eats."""
Burden = Annotated[Share, _between("0 %", "300 %")]
"""How much somebody carries, beside others."""
Drinking = Annotated[Volume, _between("1 L", "15 L")]
"""What grown-ups drink in a day; with less a point has slipped, or the whole trip goes thirsty."""
DayWater = Annotated[VolumeOrNone, _between("0 L", "15 L")]
"""Water for one person and day: none for an infant at the breast, or for washing where there is none."""
CanVolume = Annotated[Volume, _between("100 mL", "200 L")]
"""What a container for water, or a cooler, holds."""
_WEIGHT = {"type": ["string", "number"], "examples": ["180 g"]}
FuelWeight = Annotated[Weight, _between("1 g", "20 kg")]
"""Fuel that is left in a cartridge, bottle or can."""
FuelWeights = Annotated[
    tuple[FuelWeight, ...],
    BeforeValidator(as_list),
    WithJsonSchema({"anyOf": [_WEIGHT, {"type": "array", "items": _WEIGHT}]}),
]
"""What is left in one of them, or in several in brackets."""
HeatHours = Annotated[Minutes, _between("15 min", "16 h")]
"""Hours of hard work in heat."""
