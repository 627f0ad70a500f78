"""The figures that the rules measure by, each taken from a fact."""

from packlarder.figures.facts import FACTS, from_fact
from packlarder.figures.figure import Figure, Standing

WET_TIME = from_fact("longest time that perishable food stands wet", 120, "min", "T2-18")
WET_TIME_HOT = from_fact("longest time that perishable food stands wet on a hot day", 60, "min", "T2-18")
HOT_DAY = from_fact("air temperature above which a day counts as hot", 32, "°C", "T2-02")
SOAK_TIME = from_fact("longest soak without a refrigerator", 120, "min", "T6-09")
EGG_IDLE = Figure(
    name="longest time that mixed raw egg stands beyond its own wait",
    value=10,
    unit="min",
    source=f"{FACTS['T2-16'].source}: used at once; our choice of what that is at camp",
    standing=Standing.COMMON_PRACTICE,
)
EGG_TIME = from_fact("longest time that raw egg stands mixed", 60, "min", "T2-16")
RICE_TIME = from_fact("longest time that cooked rice stands warm", 60, "min", "T7-08")

KIDNEY_SOAK = from_fact("soak of kidney beans, at least", 300, "min", "T7-02")
KIDNEY_BOIL = from_fact("boil of kidney beans, at least", 30, "min", "T7-02")

COOK_LONGER_ABOVE = from_fact("height above which meat takes noticeably longer", 914, "m", "T14-01")
LEGUMES_ABOVE = Figure(
    name="height above which dry legumes take more than three times as long",
    value=3000,
    unit="m",
    source="10^((99.97 - T)/z) with z = 19 K and water boiling at about 90 °C: 3.4 times",
    standing=Standing.COMPUTED,
)
PIECES_LEAST = Figure(
    name="shortest time that is believed to cook raw meat or fish, in pieces or crumbles, right through",
    value=5,
    unit="min",
    source="our choice, for pieces that were wetted right through first",
    standing=Standing.COMMON_PRACTICE,
)
MEASURED_SHARE = Figure(
    name="share of the shortest cooking time that is believed where a temperature is measured",
    value=0.5,
    unit="of that time",
    source="heat takes its time to the middle of the thinnest layer; our choice",
    standing=Standing.COMMON_PRACTICE,
)
HEAT_STEP = from_fact("heat step of meat before it is dried in warm air, at least", 71.1, "°C", "T4-01")
HEAT_STEP_POULTRY = from_fact("heat step of poultry before it is dried in warm air, at least", 73.9, "°C", "T4-01")
SAME_DEGREES = Figure(
    name="difference below which two temperatures are the same figure, rounded in °F or in °C",
    value=0.25,
    unit="°C",
    source="160 °F is 71.1 °C and printed as 71; 145 °F is 62.8 and printed as 63",
    standing=Standing.COMPUTED,
)
OILY_ABOVE = Figure(
    name="share of fat above which a dried food counts as oily",
    value=0.20,
    unit="of the weight",
    source="dried 80/20 beef holds 37 % and dried egg 44 %, dried lean meat under 15 %; our choice",
    standing=Standing.COMMON_PRACTICE,
)
AT_RISK_FROM = from_fact("age from which germs in food harm more", 65, "years", "T3-19")
AT_RISK_BELOW = from_fact("age below which germs in food harm more", 5, "years", "T3-19")
SPARE_DAY_ABOVE = Figure(
    name="length of a trip above which a day in reserve is worth a note",
    value=3,
    unit="days",
    source=f"{FACTS['T15-05'].source}; our choice of how long",
    standing=Standing.COMMON_PRACTICE,
)
