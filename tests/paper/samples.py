"""Field books made by hand.

A household paddles among islands without fresh water, walks from hut to hut, and takes a trailer to a lake. No figure
here is worked out; they are believable, and there to be set on paper.
"""

from dataclasses import replace
from datetime import date

from packlarder.sheets.book_sheet import FieldBook
from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.field_sheet import FieldFigure, FieldOpening, FieldPack, FieldStep, Span

USUAL = "Worked out at 0 m, air 15 °C, water 10 °C; canister stove, 16 cm pot with lid."
STOVE = "Stove outside, never in a tent: carbon monoxide."
TWO_HOURS = "Eat within 2 h of the water going in, 1 h above 32 °C."
RAW_HANDS = "Wash hands, spoon and mixing bag; what touched it is raw too."


def pack(number: str, holds: str, weight: str, *, raw: bool = False, sachet: bool = False) -> FieldPack:
    """Write down a pack."""
    return FieldPack(number=number, holds=holds, weight=weight, raw=raw, sachet=sachet)


def figures(*rows: tuple[str, str]) -> tuple[FieldFigure, ...]:
    """Write down the water and minutes; a label that starts with `of it` is part of the one above."""
    return tuple(FieldFigure(label=label, figure=figure, part_of=label.startswith("of it")) for label, figure in rows)


def line(text: str) -> tuple[Span, ...]:
    """Write down a line; words between stars are strong."""
    return tuple(Span(piece, strong=place % 2 == 1) for place, piece in enumerate(text.split("*")) if piece)


def steps(*rows: tuple[str, str, str]) -> tuple[FieldStep, ...]:
    """Write down steps as minute, verb, line."""
    return tuple(FieldStep(minute=minute, verb=verb, line=line(text)) for minute, verb, text in rows)


def opening(
    dish: str,
    name: str,
    heading: str,
    packs: tuple[FieldPack, ...],
    table: tuple[FieldFigure, ...],
    doing: tuple[FieldStep, ...],
    *,
    raw: str = "",
    done_when: str = "",
    cautions: tuple[str, ...] = (TWO_HOURS,),
    allergens: str = "",
    components: tuple[str, ...] = (),
) -> FieldOpening:
    """Write down a dish."""
    return FieldOpening(
        id=dish,
        name=name,
        heading=heading,
        packs=packs,
        figures=table,
        raw=line(raw) if raw else (),
        done_when=done_when,
        steps=doing,
        cautions=cautions,
        allergens=allergens,
        conditions=USUAL,
        components=components,
    )


EGG_PAN = opening(
    "egg-and-leek-pan",
    "Egg and leek pan",
    "breakfast · skillet · for 2",
    (
        pack("1", "Egg powder", "49 g", raw=True),
        pack("2", "Leek rings", "26 g", sachet=True),
        pack("", "Butter, from the tub", "20 g"),
    ),
    figures(("Water, cold", "300 mL"), ("of it for the egg", "120 mL"), ("From start to plate", "16 min")),
    steps(
        ("0", "Soak", "pack 2 in 150 mL cold water, 10 min. *Take out the sachet first.*"),
        ("3", "Mix", "pack 1 with 120 mL until no lump is left; leave 5 min."),
        ("10", "Drain", "the leeks, water away."),
        ("10", "Fry", "butter, leeks and egg 6 min, stirring, *until firm: no liquid egg*."),
        ("16", "", "Eat at once."),
    ),
    raw="egg powder: wet right through, then cook *until firm*, 71 °C.",
    done_when="the egg is firm all through and nothing runs when the pan is tilted.",
    cautions=("Mixed egg does not wait: cook it within the hour.", RAW_HANDS, STOVE),
    allergens="Contains egg, milk.",
    components=("Egg powder", "Leek rings", "Butter"),
)

NOODLES = opening(
    "beef-and-leek-noodles",
    "Beef and leek noodles",
    "supper · pot · for 2",
    (
        pack("1", "Beef crumbles, leek rings", "86 g", sachet=True),
        pack("2", "Noodles", "150 g"),
        pack("", "Oil, from the bottle", "30 mL"),
    ),
    figures(
        ("Water, hot", "450 mL"),
        ("of it to soak pack 1", "250 mL"),
        ("Water in the pot", "600 mL"),
        ("Start to soak before supper", "10 min"),
        ("From start to plate", "24 min"),
    ),
    steps(
        ("0", "Soak", "pack 1 in 250 mL hot water, 10 min. *Take out the sachet first.*"),
        ("10", "Drain", "pack 1 into the pot; keep beef and leeks aside."),
        ("10", "Boil", "600 mL with what was drained; lid on."),
        ("15", "Boil", "pack 2 in it, 8 min, *until soft to the bite*."),
        ("23", "Stir in", "beef, leeks and oil; warm 1 min."),
        ("24", "", "Taste for salt, and eat at once."),
    ),
    done_when="a noodle has no white core when bitten.",
    cautions=(TWO_HOURS, STOVE),
    allergens="Contains wheat, egg.",
    components=("Beef crumbles", "Leek rings", "Noodles", "Oil"),
)


def simple(dish: str, name: str, heading: str, parts: str, weight: str, water: str, minutes: str) -> FieldOpening:
    """Write down a dish of one pack: pour over, wait, eat."""
    return opening(
        dish,
        name,
        heading,
        (pack("1", parts.capitalize(), weight),),
        figures(("Water, boiling", water), ("From start to plate", minutes)),
        steps(
            ("0", "Pour over", f"pack 1 with {water} boiling water; stir to the corners."),
            ("7", "Stir", "once more; close; into the cosy."),
            (minutes.partition("\u00a0")[0], "", "Stir, taste, and eat at once."),
        ),
        done_when="nothing crunches.",
        components=tuple(part.strip().capitalize() for part in parts.split(",")),
    )


def long_supper(dish: str = "name-day-supper-of-everything") -> FieldOpening:
    """Give a dish too long for one opening: a name of 60 letters, 8 packs with 12 parts, 14 steps."""
    return opening(
        dish,
        "Name-day supper of everything dried that the larder can hold",
        "supper · pot and skillet · for 6",
        (
            pack("1", "Chicken dice, carrot dice, onion flakes", "318 g", sachet=True),
            pack("2", "Mushroom slices", "42 g"),
            pack("3", "Egg powder", "98 g", raw=True, sachet=True),
            pack("4", "Wheat flour for dumplings", "240 g", raw=True),
            pack("5", "Skim milk powder, salt, dried parsley", "61 g"),
            pack("6", "Potato flakes", "150 g"),
            pack("7", "Apple rings", "66 g"),
            pack("8", "Ginger crumbs in their own small bag", "90 g"),
            pack("", "Butter, from the tub", "60 g"),
        ),
        figures(
            ("Water to soak, cold", "900 mL"),
            ("of it for the apples", "200 mL"),
            ("Water, hot", "1.2 L"),
            ("Water to mix the dumplings", "350 mL"),
            ("Start to soak before supper", "45 min"),
            ("From start to plate", "1 h 35 min"),
        ),
        steps(
            ("0", "Soak", "pack 1 in 500 mL hot water, 20 min. *Take out the sachet first.*"),
            ("0", "Soak", "pack 7 in 200 mL cold water in the lid of the small pot."),
            ("2", "Soak", "pack 2 in 200 mL hot water, 10 min."),
            ("12", "Drain", "the mushrooms into the big pot."),
            ("15", "Mix", "pack 3 with 250 mL cold water until no lump is left; leave 5 min. *Take out the sachet.*"),
            ("20", "Drain", "pack 1 into the big pot; keep chicken and vegetables aside."),
            ("22", "Boil", "1.2 L with what was drained; lid on, out of the wind."),
            ("30", "Mix", "packs 4 and 5 with the wet egg and 100 mL cold water to a stiff dough."),
            ("35", "Simmer", "spoonfuls of dough, lid on, 15 min, *until dry inside when torn*, in three rounds."),
            ("80", "Lift out", "the dumplings and keep them warm in the lid."),
            ("82", "Stir in", "chicken, vegetables and mushrooms; simmer 5 min, *until steaming right through*."),
            ("87", "Stir in", "pack 6, off the flame, until thick."),
            ("90", "Fry", "apples in the butter, 4 min, and strew pack 8 over them."),
            ("95", "", "Share out, dumplings on top, apples after."),
        ),
        raw="egg powder and flour: wet right through, then simmer *until dry inside when torn*, 71 °C.",
        done_when="the largest dumpling, torn in two, is dry inside and too hot to hold.",
        cautions=(
            "Mixed egg does not wait: cook it within the hour.",
            RAW_HANDS,
            TWO_HOURS,
            STOVE,
            "Raw flour makes people ill as raw egg does: taste no dough.",
        ),
        allergens="Contains egg, milk, wheat.",
        components=(
            "Chicken dice",
            "Carrot dice",
            "Onion flakes",
            "Mushroom slices",
            "Egg powder",
            "Wheat flour",
            "Skim milk powder",
            "Potato flakes",
            "Apple rings",
            "Ginger crumbs",
            "Butter",
        ),
    )


def crowded(dish: str = "tern-rock-hotpot") -> FieldOpening:
    """Give a dish whose steps alone overrun their page."""
    words = "the next round in the big pot, lid on, *until it steams right through*, and keep it warm in the lid."
    return replace(
        NOODLES,
        id=dish,
        name="Tern Rock hotpot in rounds",
        steps=steps(*((str(4 * row), "Simmer", words) for row in range(11))),
    )


def twenty() -> tuple[FieldOpening, ...]:
    """Give twenty dishes of the household, two of them long."""
    return (
        EGG_PAN,
        simple(
            "oats-with-apple",
            "Oats with apple and walnut",
            "breakfast · pour over · for 2",
            "rolled oats, apple rings, walnuts, skim milk powder",
            "186 g",
            "420 mL",
            "10 min",
        ),
        simple(
            "rice-porridge",
            "Rice porridge with plums",
            "breakfast · pour over · for 2",
            "instant rice, plum halves, whole milk powder",
            "204 g",
            "480 mL",
            "15 min",
        ),
        opening(
            "skerry-flatbread",
            "Skerry flatbread",
            "breakfast · skillet · for 2",
            (pack("1", "Flatbread mix: flour, milk powder, salt", "220 g", raw=True), pack("", "Oil", "20 mL")),
            figures(("Water, cold", "140 mL"), ("From start to plate", "25 min")),
            steps(
                ("0", "Mix", "pack 1 with 140 mL to a dough that leaves the bag; rest 10 min."),
                ("10", "Fry", "four flat rounds in oil, 3 min a side, *until dry inside when torn*."),
                ("25", "", "Eat warm."),
            ),
            raw="flour: no tasting of dough; fry *until dry inside when torn*.",
            done_when="a round torn in two shows no wet streak.",
            cautions=(RAW_HANDS, STOVE),
            allergens="Contains wheat, milk.",
            components=("Flatbread mix", "Oil"),
        ),
        opening(
            "island-couscous",
            "Island couscous, cold",
            "lunch · no cooking · for 2",
            (pack("1", "Couscous, pepper dice, parsley", "172 g"), pack("2", "Feta crumbles", "40 g", sachet=True)),
            figures(("Water, cold", "260 mL"), ("Start before lunch", "30 min")),
            steps(
                ("0", "Moisten", "pack 1 with 230 mL cold water; close and shake."),
                ("20", "Moisten", "pack 2 with 30 mL. *Take out the sachet first.*"),
                ("30", "Stir in", "pack 2 and eat."),
            ),
            done_when="no grain is hard.",
            allergens="Contains wheat, milk.",
            components=("Couscous", "Pepper dice", "Parsley", "Feta crumbles"),
        ),
        simple(
            "pea-soup",
            "Green pea soup with ham",
            "lunch · pour over · for 2",
            "pea powder, ham crumbles, onion flakes",
            "148 g",
            "650 mL",
            "12 min",
        ),
        simple(
            "lentil-cups",
            "Red lentil cups",
            "lunch · pour over · for 2",
            "cooked red lentils, carrot dice, tomato powder",
            "166 g",
            "520 mL",
            "15 min",
        ),
        simple(
            "hut-tea",
            "Hut tea with ginger and milk",
            "drink · pour over · for 2",
            "black tea, ginger crumbs, whole milk powder, sugar",
            "62 g",
            "500 mL",
            "5 min",
        ),
        NOODLES,
        simple(
            "squash-stew",
            "Squash stew, dried whole",
            "supper · pour over · for 2",
            "squash stew",
            "220 g",
            "600 mL",
            "15 min",
        ),
        opening(
            "heater-chicken-rice",
            "Chicken and rice in the heater",
            "supper · ration heater · for 1",
            (
                pack("1", "Roast chicken dice, instant rice, peas", "118 g", sachet=True),
                pack("2", "Heater, in its own bag", "45 g"),
            ),
            figures(
                ("Water, fresh, cold", "250 mL"),
                ("Water for the heater, sea or lake", "60 mL"),
                ("Start to soak before heating", "25 min"),
                ("From start to plate", "40 min"),
            ),
            steps(
                ("0", "Soak", "pack 1 in 250 mL cold water, 25 min. *Take out the sachet first.*"),
                ("25", "Warm", "in the heater bag with pack 2, 12 min; about 46 °C, not hotter."),
                ("40", "", "Stir and eat at once. *It is warmed, not cooked.*"),
            ),
            done_when="it is warm in the middle; the chicken was cooked before drying.",
            cautions=("The heater gives hydrogen: no flame near, never in a closed tent.", TWO_HOURS),
            components=("Roast chicken dice", "Instant rice", "Peas"),
        ),
        opening(
            "three-bean-chilli",
            "Three-bean chilli",
            "supper · pot · for 4",
            (
                pack("1", "Cooked kidney, black and white beans", "260 g"),
                pack("2", "Beef crumbles", "120 g"),
                pack("3", "Tomato powder, pepper dice, onion flakes, spice", "96 g"),
                pack("3.1", "Chocolate, in its own wrap", "20 g"),
            ),
            figures(("Water, hot", "1.4 L"), ("From start to plate", "35 min")),
            steps(
                ("0", "Soak", "packs 1 and 2 in 900 mL hot water, 15 min."),
                ("15", "Boil", "them with their water, pack 3 and 500 mL more, lid on."),
                ("20", "Simmer", "15 min, stirring, *until the beans crush under a spoon*."),
                ("35", "Stir in", "the chocolate; eat."),
            ),
            done_when="a bean crushes under a spoon.",
            cautions=(TWO_HOURS, STOVE),
            components=("Beans, cooked", "Beef crumbles", "Tomato powder", "Pepper dice", "Onion flakes"),
        ),
        long_supper(),
        simple(
            "mushroom-risotto",
            "Mushroom risotto of the second hut",
            "supper · pour over · for 2",
            "instant rice, mushroom slices, hard cheese powder, onion flakes",
            "232 g",
            "620 mL",
            "20 min",
        ),
        opening(
            "raw-ham-potato-cake",
            "Potato cake with raw-dried bacon",
            "supper · skillet · for 2",
            (
                pack("1", "Bacon pieces, freeze-dried raw", "48 g", raw=True),
                pack("2", "Potato shreds, cooked", "130 g"),
                pack("", "Oil", "15 mL"),
            ),
            figures(("Water, hot", "350 mL"), ("of it for the bacon", "100 mL"), ("From start to plate", "30 min")),
            steps(
                ("0", "Soak", "pack 1 in 100 mL, 10 min; *keep it apart*."),
                ("0", "Soak", "pack 2 in 250 mL, 10 min; drain, water away."),
                ("10", "Fry", "bacon with its water till the water is gone and it has browned, 10 min."),
                ("20", "Fry", "potato on it, pressed flat, 5 min a side."),
            ),
            raw="bacon: wet right through, then fry *until browned*, 71 °C; its water only into the hot pan.",
            done_when="the bacon is brown, no piece is pink.",
            cautions=(RAW_HANDS, STOVE),
            components=("Bacon pieces", "Potato shreds", "Oil"),
        ),
        crowded(),
        simple(
            "trailer-goulash",
            "Trailer goulash",
            "supper · pot · for 4",
            "beef dice, potato dice, pepper dice, onion flakes",
            "384 g",
            "1.1 L",
            "25 min",
        ),
        simple(
            "fish-chowder",
            "Cod chowder",
            "supper · pour over · for 2",
            "cooked cod flakes, potato dice, leek rings, whole milk powder",
            "178 g",
            "560 mL",
            "15 min",
        ),
        opening(
            "pan-cake-bake",
            "Lake cake, baked in the lid",
            "sweet · bake · for 4",
            (
                pack("1", "Cake mix with flour and egg powder", "310 g", raw=True),
                pack("2", "Blueberries", "38 g"),
                pack("", "Butter, from the tub", "40 g"),
            ),
            figures(("Water, cold", "230 mL"), ("From start to plate", "45 min")),
            steps(
                ("0", "Mix", "pack 1 with 190 mL until no lump is left; leave 5 min."),
                ("2", "Moisten", "pack 2 with 40 mL."),
                ("8", "Bake", "in the buttered lid over the low flame, 30 min, *until a straw comes out dry*."),
                ("40", "", "Leave 5 min, then cut."),
            ),
            raw="cake mix: no tasting of dough; bake *until a straw comes out dry*.",
            done_when="a straw pushed into the middle comes out dry.",
            cautions=(RAW_HANDS, STOVE),
            allergens="Contains wheat, egg, milk.",
            components=("Cake mix", "Blueberries", "Butter"),
        ),
        simple(
            "plum-compote",
            "Plum compote",
            "sweet · pour over · for 2",
            "plum halves, sugar, cinnamon",
            "120 g",
            "240 mL",
            "20 min",
        ),
    )


GENERAL = (
    ("Wash hands before touching food, and the spoon after touching RAW.", "CDC, four steps to food safety"),
    ("RAW is raw: wet it right through, then cook it as the opening says.", "USDA FSIS, safe minimum temperatures"),
    ("Once wet, food keeps 2 h; 1 h where the air is above 32 °C.", "USDA FSIS, the two-hour rule; worked out"),
    ("Take out every sachet before water goes in.", "maker's directions; common practice"),
    ("Boil lake water 1 min, above 1,500 m for 3 min. Sea water never goes into food.", "EPA, emergency disinfection"),
    ("Stove and heater outside: carbon monoxide and hydrogen can not be smelt.", "CPSC, carbon monoxide"),
    ("A steeped meal is warmed, not cooked. Nothing RAW is ever steeped.", "worked out; USDA FSIS"),
    ("Hang or lock food away from animals, out of the tent.", "national park services, common practice"),
    ("Home-dried food is for the household; selling or giving it away may fall under local law.", "local codes"),
)


def field_book(openings: tuple[FieldOpening, ...] | None = None, *, title: str = "The Skerry Book") -> FieldBook:
    """Give a whole field book of some openings, the twenty unless told."""
    chosen = twenty() if openings is None else openings
    uses: dict[str, list[str]] = {}
    for dish in chosen:
        for component in dish.components:
            uses.setdefault(component, []).append(dish.id)
    return FieldBook(
        title=title,
        language="en",
        edition="7f3a9c",
        day="1 June 2027",
        on=date(2027, 6, 1),
        how_to_use=(
            "One opening is one dish: left, what to take in hand; right, what to do.",
            "Minutes count from the moment you start. Water is what you need at the stove.",
            "RAW in a box must be cooked to be safe. Nothing else bears that word.",
            "Write on the lines: what was too much, too little, too slow.",
        ),
        general_cautions=tuple(
            Caution(rule=f"general-{number}", severity="warning", text=text, source=source, standing="published")
            for number, (text, source) in enumerate(GENERAL, 1)
        ),
        openings=chosen,
        component_index=tuple((name, tuple(dishes)) for name, dishes in sorted(uses.items())),
    )
