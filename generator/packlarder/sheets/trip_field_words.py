"""The words of a trip's booklet and of the labels of its packs, in one catalogue; a second language is a second one."""

from collections.abc import Mapping
from types import MappingProxyType

from packlarder.book.stop import Fills, WaterTreatment

DATES = "{first} to {last} {year}"
ONE_DATE = "{first} {year}"
DAY_AND_DATE = "{day}, {date}"
DAYS_OF_LEG = "{first} to {last}"

YEARS = "{years} years old"
INFANT = "infant"
EATS = "eats {share}"
AT_RISK = "at risk"
HOW_TO_USE = (
    "The menu leads to each dish. Left page: when to begin, what to take in hand. Right page: what to do. All of it is "
    "for those who eat and for where they eat.",
    "Pack 4.1 is the first that is opened for meal 4 of the menu. M2: for day 2, on the move. T1: a tub for the whole "
    "trip.",
    "RAW in a box must be cooked to be safe. Wet it right through first, cook it through, wash what it touched.",
    "Cold water is as it comes; warm is hand-warm, about 40\u00a0°C (105\u00a0°F); hot is just off the boil; boiling "
    "still bubbles.",
)

MEAL_OF_DAY = "{day} · {meal}"
MENU_OF_DAY = "{day} · {date}"
EATERS = "{portions}: {names}"
SHARE = "{name} {share}"
PORTION = "{count}\u00a0portion"
PORTIONS = "{count}\u00a0portions"
COOKED_AGAIN = "{meal}, made {count} times"
POURED_ON = "pour on {what}"
THE_PACK = "it"
OR = " or "
PUT = "Put"
POUR = "Pour"
ON_THE_FLAME = "{water} on the flame, {pot}."
BOILS_AT = " Boils at about {clock}."
BOILS_FIRST_AT = " Boils first at about {clock}."
BOILS_AFTER = " Boils after about {minutes}."
WATER_ALL_HEATED = "Water, all of it heated"
SOAK_FROM = "Soak {what} from {clock}"
SOAK = "Soak"
SHARE_OUT = "Share out, about"
SHARE_BESIDE = "{what}, about"
SHARE_OF = "{name} {amount}"
NOT_FOR = "not for {name}"
OF = "{avoided}: {holds}"
HOLDS = "holds {allergens}"
MAY_HOLD = "may hold {allergens}"
AFTER = "The flame is free when {dish} is done."
STANDS_IN = "{other} stands in for {part}."
AT_PLACE = "{conditions} {height}, air {air}, water {water}."
AT_PLACE_ALONE = "At {height}, air {air}, water {water}."
ON_THE_MOVE = "for the day, on the move"
ALL_DAY = "{marks} on the move"
BOUGHT_AT = "{holds}, bought at {place}"

LEG_HEADING = "{number}: {leg}"
MADE_OF: Mapping[str, str] = MappingProxyType(
    {
        "dishes": "in dishes, steps and pots",
        "drink": "in drinks that are dishes",
        "heater": "for ration heaters",
        "drinking": "to drink plain",
        "washing": "for hands and pots",
        "spare_day": "for the spare day",
        "margin": "margin, rounding included",
    }
)
FILLS: Mapping[Fills | None, str] = MappingProxyType(
    {Fills.TAP: "Filled at the tap.", Fills.TREATED: "", Fills.SNOW: "Melted from snow.", None: ""}
)
TREATMENTS: Mapping[WaterTreatment, str] = MappingProxyType(
    {
        WaterTreatment.BOILING: "Boil",
        WaterTreatment.FILTER: "Filter",
        WaterTreatment.FILTER_AND_CHLORINE: "Filter and chlorinate",
        WaterTreatment.CHLORINE: "Chlorinate",
        WaterTreatment.CHLORINE_DIOXIDE: "Treat with chlorine dioxide",
    }
)
TREATED = "{deed} {water} of it before anybody drinks it."
TREATED_AND_WAIT = "{deed} {water} of it, and wait {minutes} before anybody drinks it."
BOILED = "Boil {water} of it before anybody drinks it: {minutes} at a rolling boil."
IN_ALL_FILLED = "In all {water} at {place}: {there} of it is used there, the rest is carried on."
THE_ONE = "the {name}"
SOME = "{count}\u00a0{name}"
POTFULS = ("In {count} potful of the {pot}.", "In {count} potfuls of the {pot}.")
SPARE_GOES_ON = "{water} of it is for the spare day: use it last. Fill less at {place} by what is left of it."
SPARE_DONE = "{water} of it is for the spare day: use it last. From {place} on it is not needed any more."
SPARE_TO_THE_END = "{water} of it is for the spare day: use it last, and keep it until the end is in sight."
FROM_OTHER = "Besides, {water} from the {where}, for heaters, cooling and washing: never to drink."
LAKE_OR_SEA = "lake or sea"
SHORT = "The containers hold {water} less than this."
DRINKS = "{names} {water}"
DRINKING = "To drink each day, drinks that are dishes included: {each}."
WATER_MARGIN = "Water: {share} more than was worked out."
FUEL_MARGIN = "Fuel: {share} more, for wind, cold and a spilt pot."
FUEL_HEADING = "{fuel}, for {stoves}"
FUEL_MARGIN_ROW = "margin"
TREATING = "{weight} of it to boil water safe"
MELTING = "{weight} of it to melt snow"
IN_HAND = "part-used: {weights}"
NEW = "new: {weights}"
WHOLE = "{count}\u00a0×\u00a0{weight}"
POURED = "at least {weight}"

TUB = "T"
"""What the mark of a tub begins with."""
PACKS_WEIGH = "its packs {weight}"
WITH_INNER = "{weight} in all"
INTO_THE_COOLER = "Into the cooler."
COOLED = (
    "Into the cooler, which keeps cold for {days} day: {marks}.",
    "Into the cooler, which keeps cold for {days} days: {marks}.",
)
FOR_THE_WHOLE_TRIP = "For the whole trip"
FOR = "for {names}"
PART = "{name} {weight}"
BOUGHT = "Bought at {place}."
IN_ALL = "{count} packs, {weight} of food in all, tubs included"
BUY_ON_THE_WAY = "bought on the way"
FOR_MIXES = "mixes"
STILL_TO_GET = "still to be got"
NO_DAY = "no day"
USE_BY = "use by {day}"
KIT_COUNT = "{count}\u00a0×"
RUBBISH = "To carry out: {what}."
EMPTY_PACKS = ("{count} empty pack", "{count} empty packs")
HEATERS = ("{count} spent heater", "{count} spent heaters")
CARTRIDGES = ("{count} cartridge", "{count} cartridges")

CONTAINS = "contains {allergens}"
MAY_CONTAIN = "may contain {allergens}"
LABEL_WHEN = "{day}, {meal}"
LABEL_PACK = "{mark}, pack {nth} of {count}"
LABEL_INSIDE = "{mark}, inside {outer}"
LABEL_PORTIONS = "for {portions}"
LABEL_EATERS = "for {names}: {portions}"
LABEL_TUB = "for the whole trip"
OPEN_AT = "open at {clock}"
