"""The words of runs, larder and labels, in one catalogue; a second language is a second one."""

from collections.abc import Mapping
from types import MappingProxyType

RUN_TITLE = "{what}, {day}"
MANY = "{first} and {rest} more"
SUMMARY_DRY = "{fresh} fresh gave {dry} dry: {water} of water taken out."
SUMMARY_MIXED = "{dry} mixed or filled."
SUMMARY_RUNNING = "Still in the dryer."
RUN: Mapping[str, str] = MappingProxyType(
    {
        "loaded": "loaded",
        "dryer": "dryer",
        "took": "took",
        "fresh": "fresh, all trays",
        "removed": "water taken out",
        "per_tray": "on each tray",
        "per_hour": "water an hour",
    }
)
NO_DRYER = "without a dryer"
STAGES: Mapping[str, str] = MappingProxyType(
    {"bought": "bought", "trimmed": "trimmed", "cooked": "cooked", "fresh": "loaded", "dry": "dry"}
)
FACTOR = "{share} of {before}"
BATCH: Mapping[str, str] = MappingProxyType(
    {
        "trays": "trays",
        "tray": "on each tray",
        "deep": "depth",
        "treated": "before drying",
        "tested": "tested",
        "solids": "solids in it",
        "removed": "water taken out",
        "moisture": "water left, estimated",
        "stands_for": "1 g stands for",
        "bulk": "room it takes",
    }
)
NOT_TESTED = "not tested"
TESTS: Mapping[str, str] = MappingProxyType(
    {
        "no lighter": "two hours more in the dryer, no lighter",
        "snaps cold": "cold, it snapped or crumbled",
    }
)
HEATED_TO = "heated to {degrees}"
MOISTURE = "{middle} ({low} to {high})"
BY_THE_TABLE = "by the food table, give or take a point of the fresh food's water"
IN_THE_DRYER = "in the dryer"
MIXED = "mixed"
THROWN_OUT = "thrown out"
VERDICTS: Mapping[str, str] = MappingProxyType(
    {
        "can not be right": "The fresh food held {solids} of solids; {dry} is less than can be left. Weigh again.",
        "not dry yet": "At most {limit} water is dry. It must get {lighter} lighter, to {goal}; then two hours "
        "more, and weigh again.",
        "can not tell": "Weights alone can not tell that food is dry. Dry it two hours more and weigh it again.",
        "dry": "By our own test. Weights alone would not have told.",
        IN_THE_DRYER: "It has not been weighed yet.",
        MIXED: "Mixed or filled from what was dry before.",
        THROWN_OUT: "",
    }
)
SEALED = "sealed"
VACUUM = "sealed, in vacuum"
OPEN_SINCE = "open since {day}"
EMPTY = "empty"
WITH_SACHET = "{state}, with {sachet}"
NO_DAY = "no day: not known to be dry"
UNTESTED = "not tested, so no longer than an opened jar"
OWN_PACK = "the day on its pack"
OWN_RULE = "our own rule"
OWN_RULE_WHY = "our own rule: {why}"
LARDER_SUMMARY_ONE = "{containers} container with {weight} of dry food, which stands for {fresh} fresh."
LARDER_SUMMARY = "{containers} containers with {weight} of dry food, which stands for {fresh} fresh."
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "June", "July", "Aug", "Sep", "Oct", "Nov", "Dec")
"""Months as a calendar's edge has them."""
LARDER_EMPTY = "Nothing stands in the larder."
STRIP: Mapping[str, str] = MappingProxyType(
    {
        "containers": "Containers",
        "dry": "Dry food",
        "fresh": "Worth fresh",
        "open": "Open",
        "past": "Past their day",
        "short": "Run short",
    }
)
FIRST: Mapping[str, str] = MappingProxyType(
    {
        "wet": "Not dry: not for keeping",
        "past": "Past its day",
        "open": "Open",
        "soon": "Within four weeks",
    }
)
"""Why a container is to be looked at first, the most pressing before all."""
DATELESS = "Without a day"
SPAN = "{first} to {last}"
NO_DAYS = "No container has a day."
PICTURE_OPEN = "{count} open"
PICTURE_SEALED = "{count} sealed"
PICTURE_DAY = "{says}: {first}"
PICTURE_DAYS = "{says}: {first} to {last}"
HISTORY: Mapping[str, str] = MappingProxyType(
    {
        "several": "The median of {count} batches that were dry by our own test: 1 kg fresh gives {dry} dry "
        "({least} to {most}).",
        "one": "One batch that was dry by our own test: 1 kg fresh gave {dry} dry.",
        "none": "No batch yet that was dry by our own test.",
    }
)
CARD: Mapping[str, str] = MappingProxyType(
    {
        "dryer": "dryer",
        "treated": "before drying",
        "tray": "fresh on each tray",
        "deep": "depth on the tray",
        "last_hours": "hours last time",
        "usual_hours": "hours it usually takes",
        "hours": "hours, all runs",
        "dry_per_tray": "expect dry, each tray",
        "full_fresh": "a full load of {trays} trays, fresh",
        "full_dry": "a full load gives, dry",
        "bulk": "and takes the room of",
        "fills": "which fills",
    }
)
HOURS = "{hours}\u00a0h"
SPREAD = "{median} ({least} to {most})"
FILLS = "{count}\u00a0×\u00a0{size}"
OR = " or "

NET = "{weight} ({ounces})"
STANDS_FOR = "{weight} fresh ({ounces})"
STANDS_FOR_COUNT = "{count}, {weight} fresh"
COMMA_STANDS_FOR = "{net}, stands for {fresh}"
COOK_TO = "Cook it through, to {degrees} inside."
COOK_BY_EYE = "Cook it through: {done}."
NTH = "{nth} of {of}"
BEST_BEFORE = "use by {day}"
COOKED = "cooked"
ONCE_OPENED = "{keeping}. Once opened: {span}."
FILLED_ON = "filled {day}"
NOT_DRY = "Do not store it: {verdict}."
NOT_TESTED_LABEL = "Not tested: dry it two hours more and weigh it again."
BESIDE_RAW = "Dried beside raw {names}."
CONTAINS = "contains: {allergens}"
MAY_CONTAIN = "may contain: {allergens}"
RAW_PACK = "Wet right through, then cook until done. Keep apart from what is ready to eat."
DRIED = "{mark}, dried {day}"
PACK_NUMBER = "pack {nth} of {count}"
INSIDE = "pack {nth}, inside pack {outer}"
PACK_INSIDE = "pack {nth}"
OPENED_AT = "open at {clock}"
SERVINGS = "for {count}"
PACK_WATER = "{water} {warmth} water"
TOGETHER = "{water}, together with pack {others}"
POT_WATER = "{water} water in the pot"
EACH_ROUND = "{rounds} rounds, {minutes} each"
INSIDE_TO = "{degrees} inside"
FILL_MARK = "{water}, food and water"
PART = "{weight} {name}"
