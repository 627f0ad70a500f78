"""What the cook's hands take: minutes at a step, water poured generously, heaters filled to the line."""

from packlarder.figures.figure import Figure, Standing

PLENTY = Figure(
    name="water offered to soak in, where the household names none",
    value=1.20,
    unit="of the water lost in drying",
    source="give plenty, it takes what it needs; our choice",
    standing=Standing.COMMON_PRACTICE,
)
HAND_MINUTES = Figure(
    name="time in hand for a step of pouring, mixing or draining",
    value=1.0,
    unit="min",
    source="our choice",
    standing=Standing.COMMON_PRACTICE,
)
HEATER_WATER = Figure(
    name="water for one ration heater",
    value=60.0,
    unit="mL",
    source="the larger of the amounts in use, 30 and 60 mL (safety facts T10-02, T10-03); the line on the pack rules",
    standing=Standing.COPY,
    low=30.0,
    high=60.0,
)
HEATER_MINUTES = Figure(
    name="time that a ration heater takes",
    value=12.0,
    unit="min",
    source="US military requirement, quoted (safety fact T10-01)",
    standing=Standing.COPY,
)
PAN_FLAME = Figure(
    name="flame kept under a pan that fries or bakes",
    value=0.40,
    unit="of the stove's power",
    source="our choice",
    standing=Standing.COMMON_PRACTICE,
    low=0.25,
    high=0.60,
)
"""Frying and baking hold a pan hot; they are counted as this share of the full flame for as long as they last."""
LONGER_TELLS = Figure(
    name="longer cooking at height from which it is told",
    value=1.03,
    unit="of the time at sea level",
    source="our choice: less is lost in any cook's minute",
    standing=Standing.COMMON_PRACTICE,
)
DRY_FOOD_ROOM = Figure(
    name="room that dry food takes under water",
    value=0.70,
    unit="mL per g",
    source="starch, protein and sugar weigh 1.3 to 1.6 g per mL; our choice for a line on a pack",
    standing=Standing.COMMON_PRACTICE,
    low=0.62,
    high=0.77,
)
