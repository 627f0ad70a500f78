"""The words of a trip's page, in one catalogue; a second language is a second one.

What booklet and plain text say too stands in `trip_names` and `trip_water_words`.
"""

from collections.abc import Mapping
from types import MappingProxyType

from packlarder.reckon.trip.feeds import Beside

STRIP: Mapping[str, str] = MappingProxyType(
    {
        "days": "Days",
        "people": "People",
        "water": "Water, heaviest leg",
        "fuel": "Fuel",
        "fuel_of": "Fuel, {fuel}",
        "food": "Food",
        "energy": "A day, each",
    }
)
DAYS_AND_SPARE = "{days} + 1 spare"
AT_LEAST = "at least {figure}"
EVERYBODY = "all"
ALL_BUT = "all but {names}"

CARRIES = "carries {share}"
CARRIES_NOTHING = "carries nothing"
DRINKS = "drinks {water} a day"
TREATED_BY = "{fills}: {way}"

COOKED_ON = "{stove}, {pot}"
STANDS_READY = "ready at {clock}, stands {minutes}"

KINDS: Mapping[str, str] = MappingProxyType(
    {
        "in_food_ml": "dishes",
        "drained_away_ml": "dishes",
        "pot_ml": "dishes",
        "boiled_off_ml": "dishes",
        "drink_ml": "drinking",
        "heater_ml": "heaters",
        "spare_ml": "margin",
        "drinking_ml": "drinking",
        "washing_ml": "washing",
        "spare_day_ml": "reserve",
        "margin_ml": "margin",
    }
)
"""How each piece is drawn: pieces of one kind alike."""
DRAWN: Mapping[str, str] = MappingProxyType(
    {
        "dishes": "for dishes",
        "drinking": "to drink",
        "heaters": "for ration heaters",
        "washing": "for washing",
        "reserve": "for the spare day",
        "margin": "as a margin",
    }
)
"""What each kind is called, in the order in which they are drawn."""
LEG_SAYS = "{total} in all: {pieces}."
LEG_PIECE = "{figure} {kind}"
FROM = "from the {where}"
CONTAINER = "{count} × {name}, {holds}"
CONTAINER_ONE = "{name}, {holds}"
RESERVE = "in reserve"

PERSON_FOOD = (
    "A day of food is planned at {least} to {most} a person, {protein} of its energy from protein, at most {salt} of "
    "salt; children and days under way lie below."
)
BESIDE: Mapping[Beside | None, str] = MappingProxyType(
    {Beside.WITHIN: "within", Beside.BELOW: "below", Beside.ABOVE: "above", None: ""}
)
"""How a day stands beside a planning range; "" where too little is known."""

RUBBISH: Mapping[str, str] = MappingProxyType(
    {"packs": "empty packs", "heaters": "used ration heaters", "cartridges": "empty cartridges"}
)
RUBBISH_ON = "packs emptied on {day}"
