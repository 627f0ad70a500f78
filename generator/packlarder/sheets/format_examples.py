"""The whole examples of the format reference: each is what may really stand in a file, and is read by the tests.

There is one for each section: a whole file, or a nested group of keys with the key that it stands under.
"""

from collections.abc import Mapping
from types import MappingProxyType

from packlarder.sheets.format_trips import TRIP_WHOLE

WHOLE: Mapping[str, str] = MappingProxyType(
    {
        "writing": """\
# Apples from the tree behind the house
name: Apple rings
about: "Sweet ones: they are gone first."
was: apple, with skin, raw
went in: raw
contains: []
dried: air-dried
form: rings
weighs: {1 cup: 60 g}
to dry:
  - Core them and cut rings of 5 mm.
  - Turn them once, half-way.
""",
        "book": """\
packlarder: 1
title: What we dry
about: >-
  Suppers for two, by car, by boat and on foot.

  Everything in it was eaten by somebody hungry.
units: metric
servings: 2
measures:
  mug: 300 mL
booklet measure: mug
stoves:
  gas ring:
    fuel: gas mix
    kind: gas burner
pots:
  small pot: {holds: 1 L, across: 13 cm}
  pan: {holds: 1.2 L, across: 22 cm, lid: no}
dryers:
  shed dryer: {dries: freeze-dried, trays: 5, a tray: 1 kg, takes: 36 h}
containers:
  half-litre jar: {kind: jar, holds: 500 mL}
larder:
  stores: {cellar shelf: 15 °C}
  at least: {beetroot cubes: 50 g}
authority: USDA FSIS
margins: {fuel: 20 %}
usual conditions:
  height: 900 m
  air: 8 °C
  water: 6 °C
  stove: gas ring
  pot: small pot
print: [a6]
""",
        "stove": """\
stoves:
  gas ring: {fuel: gas mix, kind: gas burner, efficiency: 48 %}
  beach fire: {fuel: wood, kind: wood fire}
""",
        "pot": """\
pots:
  small pot: {holds: 1 L, across: 13 cm}
  pan: {holds: 1.2 L, across: 22 cm, lid: no}
""",
        "dryer": """\
dryers:
  shed dryer: {dries: freeze-dried, trays: 5, a tray: 1 kg, deep: 15 mm, takes: 36 h, between: 4 h}
  rack dryer: {dries: air-dried, trays: 8, a tray: 500 g}
""",
        "container": """\
containers:
  half-litre jar: {kind: jar, holds: 500 mL}
  pouch: {kind: pouch, holds: 1 L}
""",
        "larder": """\
larder:
  stores: {cellar shelf: 15 °C, kitchen cupboard: 24 °C}
  keeping:
    - {what: fruit, dried: freeze-dried, for: 18 months, why: ours were still crisp then}
  at least: {beetroot cubes: 50 g}
  raw with cooked: never
""",
        "keeping": """\
larder:
  keeping:
    - {what: fruit, dried: freeze-dried, for: 18 months, why: ours were still crisp then}
    - {kept: opened, for: 10 days}
""",
        "margins": """\
margins:
  fuel: 20 %
""",
        "usual-conditions": """\
usual conditions:
  height: 900 m
  air: 8 °C
  water: 6 °C
  stove: gas ring
  pot: small pot
  heater water: lake
""",
        "foods": """\
seed-bar:
  name: bar, seeds and oats
  kind: sweet
  state: ready
  contains: [oats, sesame]
  water: 8 %
  energy: 452 kcal
  protein: 12 g
  fat: 22 g
  carbohydrate: 48 g
  weighs: {1 bar: 40 g}
""",
        "component": """\
name: Beetroot cubes
about: They colour everything they meet.
was: beet, boiled
went in: cooked
contains: []
dried: freeze-dried
form: cubes
counts: {1 beet: 90 g}
weighs: {1 cup: 14 g}
yields: {from: 800 g, gives: 108 g}
bring back: {soak: 1 cup, with: 1/2 cup hot water, takes: 70 mL, wait: 8 min}
to dry:
  - Boil them whole, peel them, cut cubes of 1 cm.
  - Freeze the trays hard before they go in.
""",
        "yields": """\
yields: {from: 800 g, gives: 108 g}
""",
        "bring-back": """\
bring back: {pour over: 1 portion, with: 400 mL boiling water, stir at: 7 min, wait: 15 min, cosy: yes}
""",
        "dish": """\
name: Beef and leek noodles
about: For the evening when the tent went up in the rain.
meal: supper
serves: 2
parts:
  - beef crumbles: 60 g
  - leek rings: worth 150 g fresh
  - quick noodles: 75 g each
  - olive oil: 1 tbsp
packs:
  - [beef crumbles, leek rings]
  - [quick noodles]
steps:
  - soak: [beef crumbles, leek rings]
  - drain: into the pot
  - boil: quick noodles
    in: 700 mL
    for: 5 min
    until: no white core is left
  - stir in: [beef crumbles, leek rings, olive oil]
  - Taste for salt, and eat at once.
tried: at home, 2027-03-12
learnt:
  - {date: 2027-03-12, change: leek rings 100 g -> 150 g, why: thin}
""",
        "part": """\
parts:
  - pancake mix: 2 cups
  - ghee: {take: 3 tbsp, stays in: 2 tbsp, instead: olive oil}
  - salt: {take: 1 g, fixed: yes}
""",
        "pack": """\
packs:
  - [beef crumbles, leek rings]
  - {holds: [quick noodles, [stock powder, salt]], called: Noodles and broth}
""",
        "step": """\
steps:
  - soak: [beef crumbles, leek rings]
  - drain: into the pot
  - simmer: [beef crumbles, leek rings]
    in: 500 mL
    for: 10 min
    until: the crumbs are soft right through
  - wait: 3 min
  - Taste for salt, and eat at once.
""",
        "lesson": """\
learnt:
  - {date: 2027-04-11, change: leek rings 100 g -> 150 g, why: thin}
""",
        "run": """\
loaded: 2027-03-12 08:30
dryer: shed dryer
took: 30 h
on the trays:
  - beetroot cubes:
      bought: 1 kg
      fresh: 800 g
      treated: frozen first
      trays: 2
      deep: 12 mm
      dry: 104 g
      tested: [no lighter, snaps cold]
      put in:
        - {in: half-litre jar, holds: 52 g, stands: cellar shelf}
        - {in: half-litre jar, holds: 52 g, sachet: desiccant, stands: cellar shelf}
notes: The small tray dries first.
""",
        "batch": """\
on the trays:
  - beetroot cubes: {fresh: 800 g, trays: 2, dry: 104 g, tested: no lighter}
""",
        "filled": """\
on the trays:
  - beetroot cubes:
      fresh: 800 g
      trays: 2
      dry: 104 g
      put in:
        - {in: half-litre jar, holds: 52 g, vacuum: yes, stands: cellar shelf}
""",
        "draws": """\
date: 2027-04-01
for: supper on the skerries
drawn:
  - {from: 2027-03-12-beetroot/a1, took: 20 g}
  - {from: 2027-03-12-beetroot/a2, opened: yes}
""",
        "draw": """\
drawn:
  - {from: 2027-03-12-beetroot/a1, took: 20 g}
  - {from: 2027-03-12-beetroot/a2, threw out: all, why: the lid was loose}
""",
        **TRIP_WHOLE,
        "pages": """\
# How we pack

Cooked food first, **raw food last**, each in a bag of its own.

| what     | travels in    |
|----------|---------------|
| olive oil | its bottle    |
| salt     | a small tube  |
""",
    }
)
