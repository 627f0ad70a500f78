"""Labels made by hand: no figure here is worked out; they are believable, and there to be set on paper."""

from dataclasses import replace

from packlarder.sheets.label_sheet import JarLabel, LabelSet, TripPackLabel

SACHET = "Take out the sachet"

EGG = JarLabel(
    file="batches/2027-03-12-egg.yaml",
    mark="2027-03-12-eggs/2",
    name="Egg powder",
    form="freeze-dried powder",
    raw=True,
    state="RAW",
    take_out=SACHET,
    dried="12 March 2027",
    net="226\u00a0g",
    stands_for="18 large eggs",
    bring_back="Mix 1 tbsp with 1 tbsp cold water for half an egg; leave 5\u00a0min.",
    cook_to="71\u00a0°C",
    contains="egg",
    may_contain="milk",
    use_by="12 March 2032",
    keeping="our household's rule for a sealed jar",
    nth="2 of 3",
    warning="",
    code_text=(
        "Egg powder, RAW\nTake out the sachet.\nMix 1 tbsp with 1 tbsp cold water × 5 min.\nCook until firm, 71 °C.\n"
        "Contains egg; may contain milk.\n226 g, stands for 18 large eggs.\nUse by 12 March 2032.\n2027-03-12-eggs/2"
    ),
)

BEEF = replace(
    EGG,
    file="batches/2027-04-03-beef.yaml",
    mark="2027-04-03-beef/1",
    name="Beef crumbles",
    form="freeze-dried crumbles",
    raw=False,
    state="cooked",
    cook_to="",
    contains="",
    may_contain="",
    bring_back="Soak in plenty of hot water, 10\u00a0min; drain.",
    stands_for="1.2\u00a0kg browned beef",
    code_text="Beef crumbles, cooked\nTake out the sachet.\nSoak in plenty of hot water, 10 min; drain.",
)

LEEK = replace(
    BEEF,
    file="batches/2027-09-20-leek.yaml",
    mark="2027-09-20-leeks/1",
    name="Leek rings",
    form="air-dried rings",
    state="ready",
    take_out="",
    dried="20 September 2027",
    use_by="20 September 2028",
    code_text="Leek rings, ready\nSoak in cold water, 15 min.",
)

HARD = replace(
    EGG,
    file="batches/2027-10-02-everything.yaml",
    mark="2027-10-02-a-bit-of-everything/12",
    name="Name-day supper of everything dried that the larder can hold",
    form="whole meal, freeze-dried, crumbled by hand",
    contains="wheat, barley, milk, egg, celery, mustard, fish, crab, peanut, soya, sesame, hazelnut",
    may_contain="lupin, molluscs",
    bring_back=(
        "Pour 350\u00a0mL boiling water over one portion of 110\u00a0g, stir to the corners, close, stir again at "
        "7\u00a0min, and leave it in a cosy for 25\u00a0min in all."
    ),
    stands_for="6 portions of 480\u00a0g",
    warning="Not researched for home drying: eat within the year.",
    keeping="whole meals are not researched; our own rule is one year in a sealed jar",
    nth="12 of 14",
)
"""A name of 60 letters, 12 allergens and 2 traces, a long line to bring it back, a warning, RAW, a sachet."""

PAN = TripPackLabel(
    file="dishes/egg-and-leek-pan.yaml",
    dish="Egg and leek pan",
    servings="for 2",
    when="Saturday, breakfast",
    number="Pack 1 of 2",
    order="open first",
    holds=("Egg powder 49\u00a0g",),
    net="49\u00a0g",
    raw=True,
    take_out="",
    water="120\u00a0mL cold water",
    minutes="leave 5\u00a0min, fry 6\u00a0min",
    done="firm all through, nothing runs",
    fill_mark="150\u00a0mL",
    contains="egg",
    code_text="Egg and leek pan, pack 1 of 2, RAW\n120 mL cold water, leave 5 min\nFry 6 min until firm.",
)

HARD_PACK = replace(
    PAN,
    file="dishes/name-day-supper.yaml",
    dish=HARD.name,
    when="",
    order="open second, at minute 12",
    holds=("Chicken dice 120\u00a0g", "Leek rings 52\u00a0g", "Carrot shreds 30\u00a0g", "Barley dumplings 90\u00a0g"),
    net="292\u00a0g",
    take_out=SACHET,
    minutes="soak 20\u00a0min, simmer 15\u00a0min",
    done="no dumpling has a white core and no dice is hard",
    contains=HARD.contains,
)

LABELS = LabelSet(
    title="The Skerry Book",
    language="en",
    edition="7f3a9c",
    jars=(EGG, BEEF, LEEK, HARD),
    packs=(PAN, HARD_PACK),
)


def jar_texts(label: JarLabel) -> list[str]:
    """Give every text that the label of a jar must bear."""
    return [
        label.name, label.form, label.state, label.take_out, label.bring_back, label.cook_to, label.net,
        label.stands_for, label.contains, label.may_contain, label.warning, label.dried, label.use_by, label.keeping,
        label.mark, label.nth, "opened", "left",
    ]  # fmt: skip  # in the order in which they stand


def lid_texts(label: JarLabel) -> list[str]:
    """Give every text that a lid must bear."""
    return [label.state, label.name, label.use_by, label.dried, label.mark, label.nth]


def pack_texts(label: TripPackLabel) -> list[str]:
    """Give every text that the label of a pack must bear."""
    return [
        label.dish, label.servings, label.when or "day and meal", label.number, label.order, label.take_out,
        label.water, label.minutes, label.done, label.fill_mark, *label.holds, label.contains,
        "RAW" if label.raw else "", label.net if len(label.holds) > 1 else "", label.may_contain, label.caution,
        *(text for one in label.not_for for text in (one.name, one.why)),
    ]  # fmt: skip  # in the order in which they stand
