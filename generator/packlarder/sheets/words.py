"""The words of sheets: every sentence and label that is set around a figure, in one catalogue.

A phrase holds places in braces; `set_line` puts runs into them. A second language is a second catalogue.
"""

import re
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType

from packlarder.sheets.printed import Line, Run

_PLACE = re.compile(r"\{(\w+)\}")

STEPS: Mapping[str, str] = MappingProxyType(
    {
        "soak": "{parts} in {water} {warmth} water, {minutes}{cosy}",
        "mix": "{parts} with {water} {warmth} water until no dry lump is left{wait}",
        "moisten": "{parts} with {water} {warmth} water; leave {minutes}",
        "pour over": "{water} boiling water over {parts}; stir, close{cosy}, wait {minutes}{stir}",
        "into the pot": "{parts}: pour the water{about} into the {into}",
        "drunk": "{parts}: drink the water{about}",
        "away": "{parts}: pour the water{about} away",
        "boil": "{parts} in {lots}{pot}, {minutes}{lid}",
        "simmer": "{parts} in {lots}{pot}, {minutes}{lid}",
        "cook on": "{parts}{rounds}, {minutes}{lid}",
        "fry": "{parts}{rounds}, {minutes}",
        "bake": "{parts}{rounds}, {minutes}{lid}",
        "warm": "{parts}{rounds}, {minutes}",
        "heater": "{parts} in a ration heater for each, with {water} water in all, {minutes}",
        "stir in": "{parts}{shared}",
        "wait": "{minutes}",
    }
)
TAIL = "{until}{to}{warms}{say}"
FRESH_WATER = "{water} water"
MORE_WATER = "{water} more water"
DRAINED_WATER = "the water drained (about {water})"
WATER_THERE = "the water there"
ABOUT = " (about {water})"
SOAKED_WATER = "the water it soaked in (about {water})"
ROUNDS = " in {rounds} rounds, each {share} of it"
LOTS = "{rounds} rounds, each {share} of it in "
SHARED = ", shared out over the {rounds} rounds"
SHARES = ("all", "half", "a third", "a quarter", "a fifth", "a sixth", "a seventh", "an eighth", "a ninth", "a tenth")
SMALL_SHARE = "one part in {rounds}"
IN_POT = "in the {pot}: "
INTO_POT = "to the {pot}: "
IN_BOWL = "in a bowl or the pack: "
IN_BOWLS = "in {number} bowls or packs: "
IN_PARTS = "in {number} equal lots: "
A_POT = "pot"
ALL_IN = "everything in the {pot}"
VESSEL = r"(?i)\b(bowl|pot|pan|pack|bag|mug|cup|pouch|jar|kettle|tub|lid)(e?s)?\b"
ONLY_WARMS = ". It warms, it does not cook"
UNTIL = ", until {until}"
TO = ", to {degrees} inside"
SAY = ". {say}"
WAIT = "; leave {minutes}"
STIR = " in all, stir at {minutes}"
COSY = ", keep in a cosy"
LID_OFF = ", lid off"
LID_ON = ", lid on"
END = "."
AND = " and "
COMMA = ", "
OF = "{name} ({weight})"
OF_PACK = "{name} ({weight}, pack {number})"
PACK = "pack {number}"

RAW = "{parts}. Wet right through, then cook until done: {done}. Keep apart from what is ready to eat."
RAW_TO = "{done}: {degrees} inside"

STRIP: Mapping[str, str] = MappingProxyType(
    {
        "water": "Water to carry",
        "hot": "Of it heated",
        "clock": "Clock to plate",
        "fuel": "Fuel",
        "weight": "Carried",
    }
)
WATERS: Mapping[str, str] = MappingProxyType(
    {
        "in_food_ml": "in the food",
        "drained_away_ml": "drained away",
        "pot_ml": "stays in the pot",
        "boiled_off_ml": "boiled off",
        "drink_ml": "to drink",
        "heater_ml": "for ration heaters",
        "spare_ml": "spare, from rounding up",
    }
)
CLOCK: Mapping[str, str] = MappingProxyType(
    {
        "minutes": "from the first move to the plate",
        "soak": "soaking and waiting, partly at the same time",
        "heat": "on the flame, all rounds",
    }
)
HEAT: Mapping[str, str] = MappingProxyType(
    {
        "boils": "water boils at",
        "energy": "heat wanted",
        "fuel": "fuel, with margin",
        "longer": "cooks longer by a factor of",
    }
)
FEEDS: Mapping[str, str] = MappingProxyType(
    {
        "energy_kcal": "energy",
        "protein_g": "protein",
        "fat_g": "fat",
        "carbohydrate_g": "carbohydrate",
        "fibre_g": "fibre",
        "sugars_g": "of carbohydrate, sugars",
        "sodium_mg": "salt (sodium x 2.5)",
    }
)
CONTAINS = "Contains {allergens}."
MAY_CONTAIN = "May contain {allergens}."
ENERGY_PER_GRAM = "energy for its weight"
MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
METHODS: Mapping[str, str] = MappingProxyType(
    {
        "bake": "baked under a lid",
        "fry": "in the pan",
        "boil": "boiled in a pot",
        "heater": "in a ration heater",
        "warm": "warmed in a pot",
        "pour over": "hot water only",
        "cold": "cold water only",
        "none": "as it is",
    }
)
USUAL = "{height}, air {air}, water {water}"
ON_FIRE = "{usual}, {stove}, {pots}"
WARMTHS = (
    "cold water is as it comes, warm is hand-warm (about 40\u00a0°C, 105\u00a0°F), hot is just off the boil, "
    "boiling still bubbles"
)
HEATER_FROM = "For ration heaters, from the {where}"
NOT_CARRIED = "{water}, not carried"
HEATER_WATER = "water for ration heaters taken from the {where}, not carried"
ORIGINS: Mapping[str, str] = MappingProxyType(
    {
        "our batches": "{name}: from {batches}, {dry} dry from 1 kg{apart}{table}.",
        "what we wrote down": "{name}: as we wrote it down, {dry} dry from 1 kg{table}.",
        "food table": "{name}: by the food table, {dry} dry from 1 kg.",
    }
)
TABLE_SAYS = "; the food table would give {dry}"
GIVES_BACK = "{name}: its water gives back {share} of what was lost in drying ({given} of {lost} for 10 g dry)."
ASSUMED = "{name}: nobody wrote down its water; {water} for 10 g dry is our rule of thumb from what it lost in drying."
WATER_BANDS = ("no water", "up to 250 mL", "up to 500 mL", "up to 1 L", "more than 1 L")
INDEX_COLUMNS = ("water", "clock", "weight")
INDEXES: Mapping[str, str] = MappingProxyType(
    {
        "meals": "Dishes by meal",
        "methods": "Dishes by cooking method",
        "water": "Dishes by water to carry",
        "components": "Dishes by component",
    }
)
FIGURES: Mapping[str, str] = MappingProxyType(
    {
        "constants": "Constants of the sums",
        "temperatures": "Cooking temperatures, in the middle of the food",
        "facts": "Safety facts",
        "foods": "Foods, per 100 g",
    }
)
ANYTHING = "all foods"
UNKNOWN = "unknown"
FOOD_VALUE = "water {water}, {energy}"
STATES: Mapping[str, str] = MappingProxyType({"to be safe": "RAW", "to be edible": "cook before eating", "no": "ready"})
"""What a label bears, by whether a component must be cooked. RAW is for what must be cooked to be safe, and for nothing
else."""
MIXED = "mixed from dry components"
SACHET = "TAKE OUT THE SACHET before water goes in"
OUR_SCALE = "our own scale"
FOOD_TABLE = "food table"
FROM_BATCHES = "{count} of our batches"
FROM_A_BATCH = "one of our batches"
APART = " (the median of {least} to {most})"
COMPONENT: Mapping[str, str] = MappingProxyType(
    {
        "was": "was",
        "went_in": "went in",
        "dried": "dried",
        "form": "form",
        "carried_in": "carried in",
        "sachet": "sachet",
        "dry_per_kg": "1 kg fresh gives, dry",
        "stands_for": "100 g dry stands for, fresh",
        "lost": "water lost for 100 g dry",
        "dry_water": "water left in it",
        "one_is": "1 {noun} is, dry",
        "offered": "water offered to 100 g",
        "absorbed": "absorbed by 100 g",
        "drained": "drained from 100 g",
    }
)
BRING_BACK: Mapping[str, str] = MappingProxyType(
    {
        "soak": "soak {amount}in {water}{warmth} water{takes}{wait}, drain",
        "mix": "mix {amount}with {water}{warmth} water{wait}",
        "moisten": "moisten {amount}with {water}{warmth} water{wait}",
        "pour over": "pour {water}{warmth} water over {amount}{stir}{wait}{cosy}",
        "in the pot": "{amount}dry into the pot{takes}{wait}",
    }
)
TAKES = ", it takes {water}"
STIR_AT = ", stir at {minutes}"
WAIT_FOR = ", wait {minutes}"
MISSING = "{what}: {missing}."


def set_line(phrase: str, runs: Mapping[str, "Run | Line"]) -> Line:
    """Put runs into the places of a phrase; neighbouring words are joined, empty ones dropped."""
    return _merged(filled(phrase, runs))


def filled(phrase: str, runs: Mapping[str, "Run | Line"]) -> Line:
    """Put runs into the places of a phrase that stands in another, which joins neighbouring words."""
    pieces, end = _pieces(phrase)
    found: list[Run] = []
    for words, place in pieces:
        found.append(words)
        there = runs[place]
        found += there if isinstance(there, tuple) else (there,)
    return (*found, end)


@cache
def _pieces(phrase: str) -> tuple[tuple[tuple[str, str], ...], str]:
    """Split a phrase into words with the place behind them, and the words at its end."""
    *pieces, end = _PLACE.split(phrase)
    return tuple(zip(pieces[::2], pieces[1::2], strict=True)), end


def _merged(runs: Line) -> Line:
    """Join neighbouring words and drop empty ones."""
    pieces: list[Run] = []
    text = ""
    for run in runs:
        if isinstance(run, str):
            text += run
        else:
            pieces += (text, run) if text else (run,)
            text = ""
    return (*pieces, text) if text else tuple(pieces)


def joined(lines: "list[Line] | tuple[Line, ...]") -> Line:
    """List lines as words are listed, a, b and c, for a place of a phrase."""
    runs: list[Run] = []
    for index, line in enumerate(lines):
        if index:
            runs.append(AND if index == len(lines) - 1 else COMMA)
        runs += line
    return tuple(runs)


def lowered(text: str) -> str:
    """Give a name as it stands inside a sentence: brown sugar, but UHT milk."""
    return text if text[:2].isupper() else text[:1].lower() + text[1:]


def ended(text: str) -> str:
    """Give a text with a stop at its end, unless it has one."""
    return text if not text or text.endswith((".", "!", "?")) else f"{text}{END}"


def opened(text: str) -> str:
    """Give a text with a capital at its start."""
    return text[:1].upper() + text[1:]
