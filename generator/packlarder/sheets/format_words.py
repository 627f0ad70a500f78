"""The words of the format reference, in one catalogue. What a key means stands with the key, in the models."""

from collections.abc import Mapping
from types import MappingProxyType

SECTIONS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "writing": (
            "How to write a file",
            "A file is lines of a key, a colon, a space and what the key holds. What belongs to a key stands beneath "
            "it, two spaces in, or in { } behind it; a list has a line with a hyphen for each thing, or stands in [ ]. "
            "A # after a space begins a note to people. A text goes into quotes where it begins with a bracket or a "
            "quote, or holds a colon or a # with a space beside it. Keys that begin with x- are yours: they may stand "
            "anywhere, and are kept and never looked at. A file's own name is its id, of small letters, "
            "figures and hyphens; foods and components may be spoken of by id or by name.",
        ),
        "amounts": (
            "Amounts",
            "An amount is a number, a space and a unit: 60 g, 1 1/2 cups, 2 tbsp + 1 tsp, 1 h 30 min. "
            "The point is the decimal sign. Cups and spoons are those of the United States.",
        ),
        "book": (
            "book.yaml",
            "The one file that every book has: what it is called, and the kitchen of the household that keeps it.",
        ),
        "stove": ("Stove", "One of the stoves of book.yaml, under a name of yours."),
        "pot": ("Pot", "One of the pots and pans of book.yaml, under a name of yours."),
        "dryer": ("Dryer", "One of the dryers of book.yaml, under a name of yours."),
        "container": ("Container", "One of the sizes of jar, pouch and bag of book.yaml, under a name of yours."),
        "larder": ("Larder", "Where and how long the household keeps what it dries, and what it wants to have."),
        "keeping": (
            "Keeping rule",
            "How long you keep something. The rule that speaks of it most closely counts; where a published figure is "
            "shorter, that one holds.",
        ),
        "margins": ("Margins", "What book.yaml adds on the safe side."),
        "usual-conditions": (
            "Usual conditions",
            "Where and on what you usually cook: every dish page is worked out for this, and prints it.",
        ),
        "foods": (
            "foods.yaml",
            "Foods that the food table lacks, and packets bought with a label. Each stands under an id of its own, "
            "with its figures for 100 g beneath it. What a label does not say is left out: unknown is not nothing.",
        ),
        "component": (
            "components/*.yaml",
            "A file for each food in one form, as it is carried: rings, powder, a whole dried stew, oil as it is. "
            "It names either the one food that it was, or all that it was made of.",
        ),
        "yields": ("Yields", "What drying gave, weighed before and after."),
        "bring-back": (
            "Bring back",
            "How a component takes its water: one way of water, and what goes with it.",
        ),
        "dish": (
            "dishes/*.yaml",
            "A file for each dish: its parts, what is packed together, and what to do at camp.",
        ),
        "part": (
            "Part",
            "A line under parts: a component and how much of it. Where there is more to say, keys stand in { }.",
        ),
        "pack": (
            "Pack",
            "A pouch, bag or jar that is filled before the trip; packs are listed in the order in which they are "
            "opened. Mostly the parts in [ ] are enough; where there is more to say, keys stand in { }.",
        ),
        "step": (
            "Step",
            "What to do at camp: one verb with its parts, and what goes with it, or a plain sentence. Amounts, water "
            "and minutes that a component brings along need not be written.",
        ),
        "lesson": ("Lesson", "What was learnt by cooking a dish."),
        "run": (
            "batches/*.yaml",
            "A file for each run of a dryer, and for each mix: when, how long, and what lay on the trays. "
            "Its name is part of what the labels bear, so it stays.",
        ),
        "batch": (
            "Batch",
            "An entry under on the trays: one component, from shop to jar. What you did not weigh is left out.",
        ),
        "filled": ("Filled container", "A line under put in: one jar, pouch or bag."),
        "draws": (
            "draws/*.yaml",
            "A file for each time that something was taken, opened, given away, thrown out or counted. Nothing in "
            "batches/ is changed for it; the command draw writes such files.",
        ),
        "draw": ("Draw", "A line under drawn: one container, and what happened to it."),
        "trip": (
            "trips/*.yaml",
            "A file for each trip: who goes, where you stop, what is eaten there, and what comes along. Packs, water, "
            "fuel, times and what is still to dry follow from it.",
        ),
        "person": (
            "Person",
            "A line under people: a name, and what matters of them. Of whom there is nothing to say, the name alone.",
        ),
        "stop": (
            "Stop",
            "An entry under stops: a place where you cook or fill up with water. What it does not say is as in the "
            "usual conditions.",
        ),
        "meal-line": (
            "Meal",
            "A line under meals: which meal, and a dish. Where there is more to say, keys stand in { }. A breakfast "
            "after a supper is the next morning’s.",
        ),
        "water-container": (
            "Water container",
            "A line under water containers, under a name of yours: what it holds. Where there are several, keys stand "
            "in { }.",
        ),
        "cooler": ("Cooler", "A box with ice: what is bought or carried cold keeps in it for some days."),
        "trip-margins": ("Margins of a trip", "What a trip carries beyond what was worked out."),
        "came-home": (
            "Came home",
            "How a trip ended. What came home is not put back into a jar: it lay open in a trip pack.",
        ),
        "left": ("Left", "A line under left: a component, what came home of it, and why."),
        "pages": (
            "pages/*.md",
            "Whatever else deserves a page, written in Markdown. A first line that begins with # is its title. "
            "Headings, lists, tables, links, and pictures out of photos/ are set; tags of HTML are shown as typed.",
        ),
        "ways": ("Ways of water", "How a component takes its water. Each is a key under bring back."),
        "verbs": ("Verbs", "What a step can do. The checker follows every part through them, from pack to plate."),
        "kinds": ("Kinds of food", "The word by which every safety rule is decided, for the foods of foods.yaml."),
        "allergens": ("Allergens", "The words for what a food holds. A part stands for the whole it is part of, too."),
        "fuels": ("Fuels", "What a stove can burn."),
        "stove-kinds": ("Kinds of stove", "What is taken where you have not weighed your own boils."),
        "authorities": ("Authorities", "Whose cooking temperatures can be followed."),
        "meals": ("Meals", "What a dish can be eaten as."),
    }
)
"""Title and introduction of each section, in the order of the page."""

TAKES: Mapping[str, str] = MappingProxyType(
    {
        "text": "one line of text",
        "texts": "one line of text, or a list of them",
        "prose": "text; an empty line begins a new paragraph",
        "id": "an id: small letters, figures and hyphens",
        "ids": "a list of ids",
        "day": "a day like 2027-03-12",
        "yes or no": "yes or no",
        "whole": "a whole number",
        "weight": "a weight like 60 g",
        "nutrient": "a weight like 5 g; 0 g says: none in it",
        "volume": "a volume like 300 mL",
        "minutes": "a time like 10 min",
        "degrees": "a temperature like 74 °C",
        "length": "a length like 13 cm or 1200 m",
        "share": "a share like 15 %",
        "energy": "an energy like 350 kcal",
        "power": "a power like 2 kW",
        "amount": "an amount like 60 g, 30 mL or 2 eggs",
        "take": "an amount like 60 g, worth 150 g fresh, or 75 g each",
        "moment": "a day like 2027-03-12, with or without a time of day like 08:30",
        "span": "a span like 18 months, 2 years or 10 days",
        "weight or count": "a weight like 900 g, or a count like 18 eggs",
        "treated": "blanched, acid dip, frozen first, or heated to a temperature; or several in [ ]",
        "tests": "no lighter, snaps cold, or both in [ ]",
        "mark": "what the label bears, like 2027-03-12-egg/a2",
        "gone": "a weight like 60 g, or all",
        "left": "a weight like 85 g; 0 g says: it is empty",
        "water": "water like 300 mL boiling water: cold, warm, hot or boiling",
        "given": "an amount like 1 tbsp, or the water alone like hot water",
        "food": "a food's name or id",
        "components": "a component's name, or several in [ ]",
        "ingredients": "a list: on each line a food or component, and its weight",
        "allergens": "an allergen, or several in [ ]; [] for none",
        "day of a trip": "a whole number; the first day of the trip is 1",
        "time of day": "a time of day like 18:30",
        "mealtimes": "for each meal, a time of day like 18:30",
        "dish": "a dish’s name or id",
        "rations": "a list: on each line a component, and its amount like 30 g each",
        "weights": "a weight like 180 g, or several in [ ]",
        "held": "a list of parts by name; a pack inside the pack in [ ] of its own",
    }
)
"""What a key takes, by the kind of value."""

SEE = "keys of its own, see “{title}”"
LIST_SEE = "a list, see “{title}”"
FOR_EACH = "for each name, {one}"
ONE_OF = "one of: {words}"
WORD_OF = "a word of “{title}”"
LEFT_OUT = "Left out: {default}."

AMOUNTS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "weight": ("What scales show.", "60 g"),
        "volume": ("What measures hold.", "1/2 cup"),
        "count": ("A number of things, by a plain noun.", "2 eggs"),
        "time": ("How long.", "1 h 30 min"),
        "temperature": ("How hot.", "74 °C"),
        "length": ("Heights and widths.", "13 cm"),
        "share": ("A part of the whole.", "15 %"),
        "energy": ("What food gives.", "350 kcal"),
        "power": ("How strong a flame is.", "2 kW"),
    }
)
"""What each kind of amount is for, and an example."""
ANY_NOUN = "any noun"

WAYS: Mapping[str, str] = MappingProxyType(
    {
        "soak": "Give plenty of water: it takes what it needs, and the rest is drained.",
        "mix": "Stir it with a measured amount of water: all of it stays in.",
        "moisten": "Wet it and wait: it is given only what it takes up.",
        "pour over": "Pour measured boiling water over it in its pack, and wait. It warms, it does not cook.",
        "in the pot": "It goes dry into the pot, and takes its water there.",
    }
)

LID_ON = "lid on unless you say off"
BOILS_OFF = "some of its water boils away"

UNCOOKED: Mapping[str, str] = MappingProxyType(
    {
        "to be safe": "RAW until cooked",
        "to be edible": "cooked to be edible",
        "no": "need not be cooked",
    }
)
DONE = "Done: {done}."
DRYERS = "Freeze-dryer: {freeze_dry}. Air dryer: {air_dry}."

PART_OF = "part of {whole}"
ALSO_READ = "Also read: {words}."

HEAT = "{heat} MJ/kg"
FUELS: Mapping[str, str] = MappingProxyType(
    {
        "gas mix": "The screw-on cartridge of most outdoor shops: isobutane with propane.",
        "propane": "The heavy refillable bottle; gives gas in hard frost.",
        "n-butane": "Cheap cartridges for warm days: near freezing they give no gas.",
        "isobutane": "Cartridges of isobutane alone.",
        "denatured alcohol": "Spirit made undrinkable, out of a bottle.",
        "ethanol": "Alcohol of wine and grain, nearly free of water.",
        "methanol": "Wood alcohol. It is poisonous, on the skin too.",
        "white gas": "Clean petrol for liquid-fuel burners.",
        "kerosene": "Lamp oil; in Britain paraffin.",
        "wood": "Dry sticks from around the camp.",
    }
)

EFFICIENCY = "{share} of the heat reaches the pot, {power}"
STOVES: Mapping[str, str] = MappingProxyType(
    {
        "gas burner": "A burner on a cartridge or bottle, under a plain pot.",
        "gas burner with heat-exchanger pot": "A burner under a pot with fins that catch the heat.",
        "alcohol burner with screen": "A spirit burner inside a wind screen.",
        "liquid-fuel burner": "A burner with a pump and a bottle, preheated.",
        "wood fire": "An open fire between stones.",
    }
)

AUTHORITIES: Mapping[str, str] = MappingProxyType(
    {
        "USDA FSIS": "The food safety inspectors of the United States Department of Agriculture.",
        "Health Canada": "The department of health of Canada.",
        "UK FSA": "The Food Standards Agency of the United Kingdom.",
        "WHO": "The World Health Organization.",
    }
)

MEALS: Mapping[str, str] = MappingProxyType(
    {
        "breakfast": "What a day begins with.",
        "lunch": "At midday, often cold and on the way.",
        "supper": "The big meal, when camp is up.",
        "sweet": "After the meal.",
        "snack": "Out of the hand, between meals.",
        "bread": "Baked or fried at camp, to go with the rest.",
        "drink": "Out of a mug.",
    }
)
