"""The words of a trip's booklet and of the labels of its packs, in one catalogue; a second language is a second one.

What page and plain text say too stands in `trip_names` and `trip_water_words`.
"""

from packlarder.sheets.field_words import HOW_WARM, RAW_IN_A_BOX

DAY_AND_DATE = "{day}, {date}"

EATS = "eats {share}"
HOW_TO_USE = (
    "The menu leads to each dish. Left page: when to begin, what to take in hand. Right page: what to do. All of it is "
    "for those who eat and for where they eat.",
    "Pack 4.1 is the first that is opened for meal 4 of the menu. M2: for day 2, on the move. T1: a tub for the whole "
    "trip.",
    RAW_IN_A_BOX,
    HOW_WARM,
)

MEAL_OF_DAY = "{day} · {meal}"
MENU_OF_DAY = "{day} · {date}"
EATERS = "{portions}: {names}"
SHARE = "{name} {share}"
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
AT_PLACE = "{conditions} {height}, air {air}, water {water}."
AT_PLACE_ALONE = "At {height}, air {air}, water {water}."
FOR_ONE_WITH = "{pack}: {water}"
MARKS_OF_EACH = "{first} to {last}"
ALL_DAY = "{marks} on the move"
BOUGHT_AT = "{holds}, bought at {place}"

LEG_HEADING = "{number}: {leg}"
IN_DISHES = "in dishes, steps and pots"
IN_ALL_FILLED = "In all {water} at {place}: {there} of it is used there, the rest is carried on."
THE_ONE = "the {name}"
SOME = "{count}\u00a0{name}"
POTFULS = (
    "In {count} potful of the {pot}, {minutes} on the flame.",
    "In {count} potfuls of the {pot}, {minutes} on the flame in all.",
)
SPARE_GOES_ON = "{water} of it is for the spare day: use it last. Fill less at {place} by what is left of it."
SPARE_DONE = "{water} of it is for the spare day: use it last. From {place} on it is not needed any more."
SPARE_TO_THE_END = "{water} of it is for the spare day: use it last, and keep it until the end is in sight."
DRINKS = "{names} {water}"
DRINKING = "To drink each day, drinks that are dishes included: {each}."
WATER_MARGIN = "Water: {share} more than was worked out."
FUEL_MARGIN = "Fuel: {share} more, for wind, cold and a spilt pot."
FUEL_HEADING = "{fuel}, for {stoves}"
FUEL_MARGIN_ROW = "margin"
TREATING = "{weight} of it to boil water safe"
MELTING = "{weight} of it to melt snow"
POURED = "at least {weight}"

PACKS_WEIGH = "its packs {weight}"
WITH_INNER = "{weight} in all"
INTO_THE_COOLER = "Into the cooler."
COOLED = (
    "Into the cooler, which keeps cold for {days} day: {marks}.",
    "Into the cooler, which keeps cold for {days} days: {marks}.",
)
FOR_THE_WHOLE_TRIP = "For the whole trip"
PART = "{name} {weight}"
BOUGHT = "Bought at {place}."
IN_ALL = "{count} packs, {weight} of food in all, tubs included"
BUY_ON_THE_WAY = "bought on the way"
FOR_MIXES = "mixes"
STILL_TO_GET = "still to be got"
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
