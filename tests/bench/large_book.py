"""A large book made by a rule: dishes of ten parts that a cook would follow, for timings and for tests of size."""

from collections.abc import Iterator, Mapping

PARTS = 10
"""Parts of every dish."""

BOOK = """\
packlarder: 1
title: The long shelf
about: As many suppers as there are days in a thousand.
on: 2027-06-01
servings: 2
stoves:
  gas stove: {fuel: gas mix, kind: gas burner}
pots:
  big pot: {holds: 3 L, across: 20 cm}
usual conditions: {height: 500 m, air: 12 °C, water: 10 °C, stove: gas stove, pot: big pot}
print: [a6]
"""

COMPONENT = """\
name: {name}
about: Dried by the tray in the autumn, for the year.
was: {was}
{went_in}contains: [{contains}]
dried: {dried}
form: {form}
weighs: {{1 cup: {cup_g} g}}
{bring_back}{carried}to dry:
  - Cook it until it is done, and let it drip.
  - Spread it thinly and freeze it first.
  - Dry two hours more and weigh again; no lighter is dry.
"""

DISH = """\
name: {name}
about: Number {number} on the shelf.
meal: {meal}
serves: 2
parts:
  - {protein}: 60 g
  - {first}: worth 150 g fresh
  - {second}: worth 100 g fresh
  - {third}: worth 80 g fresh
  - onion rings: worth 60 g fresh
  - {starch}: 75 g each
  - {powder}: 15 g
  - {topping}: 20 g
  - olive oil: 2 tbsp
  - salt: 3 g
packs:
  - [{protein}, {first}, {second}, {third}, onion rings]
  - [{starch}, {powder}, salt]
  - [{topping}]
steps:
  - soak: [{protein}, {first}, {second}, {third}, onion rings]
  - drain: into the pot
  - boil: [{protein}, {first}, {second}, {third}, onion rings, {starch}, {powder}, salt]
    in: 900 mL
    for: 10 min
    to: 74 °C
    until: it steams right through and the {starch} is soft
  - stir in: [{topping}, olive oil]
  - Taste for salt, and eat at once.
tried: at home, 2027-03-12
learnt:
  - {{date: 2027-03-12, change: "{first} 100 g -> 150 g", why: it was the best of it}}
"""

# name, food of the table, allergens, form, grams to a cup
PROTEINS = (
    ("chicken dice", "chicken breast, roasted", "", "dice", 50),
    ("turkey mince", "turkey, ground, 93% lean, browned", "", "crumbles", 55),
    ("beef crumbles", "beef, ground, 93% lean, browned", "", "crumbles", 62),
    ("ham dice", "ham, cured, extra lean, roasted", "", "dice", 52),
    ("pork strips", "pork tenderloin, lean, roasted", "", "strips", 48),
    ("venison crumbles", "venison, ground, browned", "", "crumbles", 60),
    ("lamb crumbles", "lamb, ground, broiled", "", "crumbles", 58),
    ("black beans", "black beans, boiled", "", "split", 80),
    ("chickpeas", "chickpeas, boiled", "", "whole", 75),
    ("pinto beans", "pinto beans, boiled", "", "split", 78),
)
VEGETABLES = (
    ("leek rings", "leek, boiled", "", "rings", 8),
    ("carrot dice", "carrot, boiled", "", "dice", 22),
    ("peas", "peas, green, frozen, boiled", "", "whole", 28),
    ("sweet corn", "sweet corn, frozen, boiled", "", "whole", 30),
    ("green beans", "green beans, boiled", "", "cut", 14),
    ("mushroom slices", "mushroom, white, boiled", "", "slices", 9),
    ("spinach", "spinach, boiled", "", "leaves", 6),
    ("cabbage shreds", "cabbage, boiled", "", "shreds", 8),
    ("broccoli", "broccoli, boiled", "", "florets", 9),
    ("parsnip dice", "parsnip, boiled", "", "dice", 24),
    ("pumpkin dice", "pumpkin, boiled", "", "dice", 12),
    ("cauliflower", "cauliflower, boiled", "", "florets", 8),
    ("beet dice", "beet, boiled", "", "dice", 20),
    ("turnip dice", "turnip, boiled", "", "dice", 12),
)
STARCHES = (
    ("pasta", "pasta, dry", "wheat", "tubes", 95),
    ("egg noodles", "noodles, egg, dry", "wheat, egg", "ribbons", 70),
    ("rice", "rice, white, dry", "", "grains", 185),
    ("instant rice", "rice, instant, dry", "", "grains", 95),
    ("couscous", "couscous, dry", "wheat", "grains", 173),
    ("bulgur", "bulgur, dry", "wheat", "grains", 140),
    ("quinoa", "quinoa, dry", "", "grains", 170),
    ("millet", "millet, dry", "", "grains", 200),
    ("buckwheat", "buckwheat, roasted, dry", "", "grains", 164),
    ("red lentils", "lentils, red, dry", "", "split", 192),
)
POWDERS = (
    ("tomato powder", "tomato paste", "", "powder", 120),
    ("pumpkin powder", "pumpkin, boiled", "", "powder", 90),
    ("pea powder", "split peas, boiled", "", "powder", 110),
)
TOPPINGS = (
    ("parmesan", "cheese, parmesan, grated", "milk", "grated", 100),
    ("almonds", "almonds", "almond", "chopped", 110),
    ("walnuts", "walnuts", "walnut", "chopped", 105),
    ("pumpkin seeds", "pumpkin seeds", "", "whole", 120),
    ("sunflower seeds", "sunflower seeds", "", "whole", 125),
)
MEALS = ("supper", "lunch")
Row = tuple[str, str, str, str, int]


def files(dishes: int) -> Mapping[str, bytes]:
    """Give the files of a book with so many dishes, by their paths in the book; the same number gives the same book."""
    texts = {"book.yaml": BOOK, **dict(_components()), **dict(map(_dish, range(dishes)))}
    return {path: text.encode() for path, text in texts.items()}


def _components() -> Iterator[tuple[str, str]]:
    soaked = "bring back: {soak: hot water, wait: 10 min}\n"
    in_the_pot = "bring back: {in the pot: 100 g, takes: 180 mL, wait: 10 min}\n"
    mixed = "bring back: {mix: 10 g, with: 25 mL hot water}\n"
    for row in (*PROTEINS, *VEGETABLES, ("onion rings", "onion, raw", "", "rings", 12)):
        yield _component(row, dried="freeze-dried", bring_back=soaked, went_in="raw" if "raw" in row[1] else "cooked")
    for row in STARCHES:
        yield _component(row, dried="bought dry", bring_back=in_the_pot)
    for row in POWDERS:
        yield _component(row, dried="freeze-dried", bring_back=mixed, went_in="cooked")
    for row in (*TOPPINGS, ("salt", "salt", "", "fine", 290)):
        yield _component(row, dried="bought dry")
    yield _component(("olive oil", "oil, olive", "", "liquid", 216), dried="not dried", carried="the oil bottle")


def _component(row: Row, *, dried: str, bring_back: str = "", went_in: str = "", carried: str = "") -> tuple[str, str]:
    name, was, contains, form, cup_g = row
    text = COMPONENT.format(
        name=name.capitalize(),
        was=was,
        contains=contains,
        form=form,
        cup_g=cup_g,
        dried=dried,
        bring_back=bring_back,
        went_in=f"went in: {went_in}\n" if went_in else "",
        carried=f"carried in: {carried}\n" if carried else "",
    )
    return f"components/{name.replace(' ', '-')}.yaml", text


def _dish(number: int) -> tuple[str, str]:
    """Write one dish; the first thousand differ in what they are made of, later ones in more than that."""
    protein = PROTEINS[number % len(PROTEINS)][0]
    starch = STARCHES[number // len(PROTEINS) % len(STARCHES)][0]
    lead = number // (len(PROTEINS) * len(STARCHES))
    first, second, third = (
        VEGETABLES[(lead + 3 * place + (place > 0) * number) % len(VEGETABLES)][0] for place in range(3)
    )
    if len({first, second, third}) < 3:
        second, third = (VEGETABLES[(VEGETABLES_AT[first] + step) % len(VEGETABLES)][0] for step in (1, 2))
    text = DISH.format(
        name=f"{protein.capitalize()}, {first} and {starch}, {number + 1}",
        number=number + 1,
        meal=MEALS[number % len(MEALS)],
        protein=protein,
        first=first,
        second=second,
        third=third,
        starch=starch,
        powder=POWDERS[number % len(POWDERS)][0],
        topping=TOPPINGS[number % len(TOPPINGS)][0],
    )
    return f"dishes/dish-{number + 1:04}.yaml", text


VEGETABLES_AT = {row[0]: place for place, row in enumerate(VEGETABLES)}
