"""Dishes made by hand: one with everything, one with next to nothing, one with gaps, one that is too long."""

from fractions import Fraction

from tests.site.sample_figures import COUNT, GAP, NONE, clock, cups, each_count, grams, millilitres
from tests.site.sample_rows import dish, pack, part, step

from packlarder.sheets.dish_sheet import (
    Caution,
    FoodRow,
    Lesson,
    Reading,
    WaterRow,
)
from packlarder.sheets.printed import Printed, Strong, same

EGG = Caution(
    rule="egg-dishes",
    severity="note",
    text=f"Egg dishes: 71{GAP}°C right through.",
    source="USDA FSIS",
    standing="published",
)
HANDS = Caution(
    rule="raw-hands",
    severity="note",
    text="Wash hands and the mixing bag; they are raw too.",
    source="NCHFP",
    standing="from memory",
)


EGG_POWDER = part(
    "Egg powder",
    24.5,
    raw=True,
    way="mix",
    measure=cups(Fraction(1, 4)),
    fresh=each_count(lambda n: f"{2 * n} eggs", lambda n: f"{2 * n} eggs"),
    water=(60, 60),
)
LEEK_RINGS = part(
    "Leek rings",
    13,
    way="soak",
    measure=cups(Fraction(7, 8)),
    fresh=grams(75),
    water=(75, 55),
    instead=("leek flakes",),
)
BUTTER = part("Butter", 10, measure=each_count(lambda n: f"{2 * n}{GAP}tsp", lambda n: f"{2 * n}{GAP}tsp"))
NOODLES = part("Noodles", 75, must="to be edible", way="in the pot")

RICH = dish(
    "egg-and-leek-pan",
    "Egg and leek pan",
    meal="breakfast",
    method="in the skillet",
    about="For a beach with wind and no hurry.",
    strip=(
        Reading(key="carry", label="Water to carry", figure=millilitres(135)),
        Reading(key="hot", label="Of it hot", figure=same(f"0{GAP}mL", COUNT)),
        Reading(key="clock", label="Clock to plate", figure=clock(12, each=2)[0]),
        Reading(key="fuel", label="Fuel", figure=grams(4.5)),
        Reading(key="carried", label="Carried", figure=grams(47.5)),
    ),
    raw_parts=("Egg powder",),
    raw=(
        "egg powder. Wet it right through, then cook ",
        Strong("until it is firm all over"),
        ": ",
        Printed((f"71{GAP}°C",) * COUNT, (f"160{GAP}°F",) * COUNT),
        ". Keep it in its own pack.",
    ),
    parts=(EGG_POWDER, LEEK_RINGS, BUTTER),
    packs=(
        pack("1", EGG_POWDER, weight=24.5, sachet=True),
        pack("2", LEEK_RINGS, weight=13),
        pack("", BUTTER, where="from the tub", weight=10),
    ),
    steps=(
        step(0, "soak", "Leek rings (", grams(13), ") in ", millilitres(75), " cold water, 10 min."),
        step(
            3,
            "mix",
            "Egg powder (",
            grams(24.5),
            ") with ",
            millilitres(60),
            " cold water until no lump is left, 5 min.",
        ),
        step(10, "drain", "The leeks; pour the water away."),
        step(
            10,
            "fry",
            "Butter (",
            grams(10),
            "), then leeks and egg, stirring, ",
            Strong("until firm, no liquid egg"),
            ".",
        ),
        step(12, "eat", "At once.", each=2),
    ),
    done_when="Firm all over, and no liquid egg when the pan is tilted.",
    waters=(
        WaterRow(key="in_food", label="In the food", figure=millilitres(115)),
        WaterRow(key="drained_away", label="Drained away", figure=millilitres(20)),
        WaterRow(key="spare", label="Spare", figure=same(f"0{GAP}mL", COUNT)),
    ),
    water_total=millilitres(135),
    clock=(
        Reading(key="soak", label="Start the soak before cooking", figure=same("10 min", COUNT)),
        Reading(key="heat", label="On the stove", figure=same("6 min", COUNT)),
    ),
    heat=(
        Reading(
            key="boiling", label="Water boils at", figure=Printed((f"100{GAP}°C",) * COUNT, (f"212{GAP}°F",) * COUNT)
        ),
        Reading(key="fuel", label="Fuel, with a fifth to spare", figure=grams(4.5)),
    ),
    conditions=(f"0{GAP}m", f"air and water at 10{GAP}°C", "a canister stove", "lid off"),
    cautions=(EGG, HANDS),
    feeds=(
        FoodRow(label="Energy", figure=same("310 kcal", COUNT), complete=True),
        FoodRow(label="Protein", figure=same("21 g", COUNT), complete=True),
        FoodRow(label="Fibre", figure=same("1.8 g", COUNT), complete=False),
    ),
    allergens=("egg", "milk"),
    traces=("celery",),
    origins=(
        f"Egg powder: three of our batches, 245{GAP}g dry per kg. "
        f"One to one by volume gives back 79{GAP}% of the water that was lost.",
        "Leek rings: two of our batches.",
    ),
    tried=("Tried at home, 12 March 2027.",),
    learnt=(Lesson(day="11 April 2027", change=f"leek rings 50{GAP}g → 75{GAP}g", why="thin"),),
    notes=("A flat stone keeps the wind off the pan.",),
    photo="egg-and-leek-pan.png",
)

MINIMAL = dish("hot-berry-cup", "Hot berry cup", meal="", method="", servings=(1,), usual=0)

GAPS = dish(
    "shore-soup",
    "Shore soup",
    method="poured over",
    strip=(
        Reading(key="carry", label="Water to carry", figure=NONE),
        Reading(key="carried", label="Carried", figure=grams(60)),
    ),
    missing=(
        "Water to carry: nobody has written how much water the sea lettuce takes.",
        "Energy: the food table knows no sea lettuce.",
    ),
    parts=(part("Sea lettuce flakes", 60, measure=NONE),),
    steps=(step(0, "pour over", "Boiling water, as much as it takes."),),
    allergens=(),
)

LONG_NAME = "Slowly simmered mountain barley with smoked roots and cheese"
"""60 characters."""

_FOODS = (
    "Barley grains",
    "Carrot cubes",
    "Parsnip slices",
    "Minced venison crumbles",
    "Onion rings",
    "Red lentil grains",
    "Celeriac cubes",
    "Beetroot cubes",
    "Kale flakes",
    "Apple rings",
    "Hard cheese powder",
    "Horseradish and mountain herb mixture",
)
_MANY = tuple(
    part(
        food,
        7 + number,
        raw=number == 3,
        must="to be edible" if number == 5 else "no",
        way=("soak", "mix", "in the pot")[number % 3],
        measure=cups(Fraction(1, 8) + Fraction(number, 12)),
        fresh=grams(40 + number),
        water=(30 + number, 20 + number),
    )
    for number, food in enumerate(_FOODS)
)
LONG = dish(
    "mountain-barley",
    LONG_NAME,
    about="Twelve parts and fourteen steps, for the evening when the weather will not let anyone out of the hut.",
    strip=(
        Reading(key="carry", label="Water to carry", figure=millilitres(640, steady=200)),
        Reading(key="hot", label="Of it hot", figure=millilitres(300, steady=100)),
        Reading(key="clock", label="Clock to plate", figure=clock(95, each=5)[0]),
        Reading(key="fuel", label="Fuel", figure=grams(22)),
        Reading(key="carried", label="Carried", figure=grams(160)),
    ),
    raw_parts=("Minced venison crumbles",),
    raw=("minced venison crumbles. Boil them through: ", Strong("no pink inside"), "."),
    parts=_MANY,
    packs=(
        pack(
            "1",
            *_MANY[:3],
            *_MANY[4:8],
            weight=90,
            inside=(pack("1.1", _MANY[8], weight=8), pack("1.2", _MANY[9], weight=9)),
        ),
        pack("2", _MANY[3], weight=10),
        pack("3", *_MANY[10:], where="opened last, at the table", weight=30),
    ),
    steps=tuple(
        step(
            7 * number,
            ("soak", "in the pot", "stir in", "simmer", "pour over", "wait", "drain")[number % 7],
            f"{_MANY[number % 12].name} (",
            _MANY[number % 12].dry,
            ") in ",
            millilitres(30 + number),
            " water",
            " with the lid on, stirring now and then so that nothing catches at the bottom."
            if number % 4 == 1
            else ".",
            each=number // 5,
        )
        for number in range(14)
    ),
    waters=tuple(
        WaterRow(key=key, label=label, figure=millilitres(each))
        for key, label, each in (
            ("in_food", "In the food", 380),
            ("pot", "In the pot", 120),
            ("boiled_off", "Boiled off", 90),
            ("drink", "Drinks", 50),
        )
    ),
    water_total=millilitres(640),
    cautions=(EGG, HANDS),
    allergens=("gluten (barley)", "milk", "celery"),
)
