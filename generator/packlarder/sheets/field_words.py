"""The words of the field booklet, in one catalogue; a second language is a second one."""

from collections.abc import Mapping
from types import MappingProxyType

HEADING = "{meal} · {method} · for {servings}"
CALLED = "{called}: {holds}"
NO_WATER = "none"
MUGS = "{mugs} ({water})"
FIELD_CONDITIONS = "On {stove}; {pots}."
FROM = "{name}, from {where}"
FIELD: Mapping[str, str] = MappingProxyType(
    {
        "water": "Water",
        "hot": "of it heated",
        "minutes": "From start to plate",
        "soak": "Soak, {minutes} before eating",
    }
)
HOW_WARM = (
    "Cold water is as it comes; warm is hand-warm, about 40\u00a0°C (105\u00a0°F); hot is just off the boil; boiling "
    "still bubbles."
)
RAW_IN_A_BOX = (
    "RAW in a box must be cooked to be safe. Wet it right through first, cook it through, wash what it touched."
)
HOW_TO_USE = (
    "Left page: what to take in hand. Right page: what to do, and at which minute.",
    "Water is all that the dish takes of water fit to drink. Of it heated: what is heated before it goes onto food, "
    "and what cooks in the pot. Water for ration heaters stands apart where it comes from lake or sea.",
    HOW_WARM,
    "Packs are numbered in the order in which they are opened.",
    RAW_IN_A_BOX,
    "All amounts are for the servings at the head of the page, worked out for {conditions}. Higher up or colder, it "
    "takes more time and fuel.",
)
