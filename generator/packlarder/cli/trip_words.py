"""The words around the figures of a trip on the terminal."""

from collections.abc import Mapping
from types import MappingProxyType

FROM_TO = "{first} to {last} {year}"
PERSON = "1 person"
PEOPLE = "{count} people"
HEADING = "{dates} · {people} · {stands}"
MENU = "Menu"
WATER = "Water to carry, leg by leg"
FUEL = "Fuel"
TO_GET = "Still to get"
PLAN = "What to do before"
CARRIED = "Food carried in the morning"
FEEDS = "A day feeds"

AT_STOP = "{day}, {date}: {place}"
START = "start {clock}"
SOAK = "water on at {clock} for {minutes}"
AFTER = "after {dish}"
READY = "ready {clock}"
FOR = "for {names}"
INSTEAD = "{taken} for {named}"

DAY = "day {number}"
DAYS = "days {first} to {last}"
LEG = "{leg}, {days}"
LEG_WATERS: Mapping[str, str] = MappingProxyType(
    {
        "in_food_ml": "in the food",
        "drained_away_ml": "drained away",
        "pot_ml": "stays in the pot",
        "boiled_off_ml": "boiled off",
        "drink_ml": "in drinks that are dishes",
        "heater_ml": "for ration heaters",
        "spare_ml": "spare, from rounding up",
        "drinking_ml": "drunk plain",
        "washing_ml": "for washing",
        "spare_day_ml": "for the spare day",
        "margin_ml": "margin",
    }
)
"""The pieces of a leg's water, in the order of the record."""
PIECE = "{water} {kind}"
TREATED = "{water} to be made fit to drink: {way}"
TREATED_WAIT = "{water} to be made fit to drink: {way}, then wait {minutes}"
OTHER = "{water} more from lake or sea, not carried"
LACKS = "YOUR CONTAINERS LACK {water}"

NEED = "{weight} with margin"
PART_USED = "{weight} part used"
WHOLE = "{count} × {weight} whole"

SHORT = "{weight} short"
SOURCES: Mapping[str, str] = MappingProxyType({"dry": "to dry", "mix": "to mix", "buy": "to buy as it is carried"})
BUY = "buy {weight}"
LOADED = "{weight} into the dryer"
TRAY = "{count} tray"
TRAYS = "{count} trays"
LOAD = "load {number}"
LOADS = "loads {number}"
START_BY = "start by {day}"

TASK_OF = "{what}: {names}"
FOOD = "{name} {weight}"
BETWEEN_FOODS = "; "
"""Names of foods hold commas."""
MADE_OF = "{task} ({foods})"
UNTIL = "until {day}"
AT = "{date} {clock}"
SPAN = "{least} to {most}"
