"""The words of trips, in one catalogue; a second language is a second one. Days and times: `trip_names`."""

from collections.abc import Mapping
from types import MappingProxyType

DATES = "{first} to {last}"
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
IN_THE_LIST = ("days", "food", "water", "energy")
"""Which figures of the strip stand in the list of trips."""
DAYS_AND_SPARE = "{days} + 1 spare"
AT_LEAST = "at least {figure}"
EVERYBODY = "all"
ALL_BUT = "all but {names}"
AND = " and "
COMMA = ", "

INFANT = "infant"
AGE = "{years} years old"
AT_RISK = "at risk from germs"
CARRIES = "carries {share}"
CARRIES_NOTHING = "carries nothing"
DRINKS = "drinks {water} a day"

FILLS: Mapping[str, str] = MappingProxyType({"tap": "tap", "to be treated": "to be treated", "snow": "snow"})
TREATED_BY = "{fills}, by {way}"
FILLED_AT_HOME = "filled at home"
FILLED = "filled at {place}: {fills}"

FOR_ONE = "{called}, for {name}"
PORTION_ONE = "1 portion"
PORTIONS = "{count} portions"
COOKED_ON = "{stove}, {pot}"
AFTER = "on the flame after {dish}"
STANDS_READY = "ready at {clock}, stands {minutes}"
INSTEAD = "{instead} in place of {part}"

WATERS: Mapping[str, str] = MappingProxyType(
    {
        "in_food_ml": "in the food",
        "drained_away_ml": "drained away",
        "pot_ml": "stays in the pot",
        "boiled_off_ml": "boiled off",
        "drink_ml": "drinks that are dishes",
        "heater_ml": "for ration heaters",
        "spare_ml": "spare, from rounding dishes up",
        "drinking_ml": "drunk plain",
        "washing_ml": "washing",
        "spare_day_ml": "spare day",
        "margin_ml": "margin",
    }
)
"""The pieces of a leg's water, in the order of the records."""
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
TREAT = "{water} must be made fit to drink: {way}."
TREAT_AND_WAIT = "{water} must be made fit to drink: {way}, and wait {minutes} before anybody drinks it."
TREATMENTS: Mapping[str, str] = MappingProxyType(
    {
        "boiling": "boil it",
        "filter": "filter it",
        "filter and chlorine": "filter it, then chlorine",
        "chlorine": "chlorine",
        "chlorine dioxide": "chlorine dioxide",
    }
)
MELT = "melt the snow"
FROM_OTHER = "{water} more for heaters, cooling and washing comes from lake or sea, and is not carried."
OTHERS: Mapping[str, str] = MappingProxyType({"lake": "from the lake", "sea": "from the sea"})
LACKS = "The containers lack {water}."
CONTAINER = "{count} × {name}, {holds}"
CONTAINER_ONE = "{name}, {holds}"

RESERVE = "in reserve"
PART_USED = "part used, {figure}"
NEW = "{count} × {figure}"
NEW_ONE = "{figure}, whole"

PERSON_FOOD = "A day of food is planned at {least} to {most} a person; children and days under way lie below."
WITHIN = "within"
BELOW = "below"
ABOVE = "above"

SOURCES: Mapping[str, str] = MappingProxyType(
    {"dry": "To dry at home", "mix": "To mix", "buy": "To buy as it is carried"}
)
LOAD = "load {number}"
TRAYS = "{count} trays"
TRAY = "1 tray"
NO_DRYER = "no dryer of ours dries it"
TASKS: Mapping[str, str] = MappingProxyType(
    {
        "buy": "Buy",
        "cook": "Cook",
        "freeze first": "Freeze first",
        "dry": "Dry",
        "weigh again": "Weigh again",
        "let the dryer rest": "Let the dryer rest",
        "condition": "Condition",
        "mix": "Mix",
        "pack": "Pack",
    }
)
UNTIL = "until {end}"
MOMENT = "{day}, {clock}"
NO_DAY = "no day known"
USE_BY = "use by {day}"
RUBBISH: Mapping[str, str] = MappingProxyType(
    {"packs": "empty packs", "heaters": "used ration heaters", "cartridges": "empty cartridges"}
)
RUBBISH_ON = "packs emptied on {day}"
