"""An example of each key of the format reference, by section; the tests read each with the model that has the key.

A section's text holds every key of its model once, in the model's order. Keys that never stand together stand together
here: each is shown alone.
"""

from collections.abc import Mapping
from types import MappingProxyType

from packlarder.sheets.format_trips import TRIP_KEYS

KEYS: Mapping[str, str] = MappingProxyType(
    {
        "book": """\
packlarder: 1
title: What we dry
about: Suppers for two, by car, by boat and on foot.
language: en
address: https://larder.example/
on: 2027-06-01
units: us
servings: 3
measures: {mug: 300 mL, handful: 60 mL}
booklet measure: mug
stoves:
  gas ring: {fuel: gas mix, kind: gas burner}
pots:
  small pot: {holds: 1 L, across: 13 cm}
dryers:
  shed dryer: {dries: air-dried, trays: 8, a tray: 500 g}
containers:
  litre jar: {kind: jar, holds: 1 L}
larder: {at least: {leek rings: 100 g}}
authority: Health Canada
margins: {fuel: 20 %}
usual conditions: {height: 900 m, stove: gas ring, pot: small pot}
print: [a6, quarter-letter]
""",
        "stove": """\
fuel: gas mix
kind: gas burner
power: 2 kW
efficiency: 48 %
""",
        "pot": """\
holds: 1.2 L
across: 22 cm
lid: no
""",
        "dryer": """\
dries: freeze-dried
trays: 5
a tray: 1 kg
deep: 15 mm
takes: 36 h
between: 4 h
""",
        "container": """\
kind: jar
holds: 1 L
""",
        "larder": """\
stores: {cellar shelf: 15 °C, kitchen cupboard: 24 °C}
keeping:
  - {what: fruit, dried: freeze-dried, for: 18 months}
at least: {egg powder: 200 g}
raw with cooked: never
code on labels: no
""",
        "keeping": """\
what: egg
dried: freeze-dried
kept: opened
for: 10 days
why: it smelt old after a fortnight
""",
        "margins": """\
fuel: 20 %
""",
        "usual-conditions": """\
height: 900 m
air: 8 °C
water: 6 °C
stove: gas ring
pot: small pot
heater water: lake
""",
        "foods": """\
name: bar, seeds and oats
kind: sweet
state: ready
contains: [oats, sesame]
water: 8 %
energy: 452 kcal
protein: 12 g
fat: 22 g
carbohydrate: 48 g
fibre: 6 g
sugars: 25 g
sodium: 120 mg
weighs: {1 bar: 40 g}
source: label
""",
        "component": """\
name: Beetroot cubes
about: They colour everything they meet.
was: beet, boiled
made of:
  - rice, white, boiled: 900 g
  - lentils, boiled: 700 g
went in: cooked
contains: [milk, celery]
may contain: sesame
dried: freeze-dried
form: cubes
counts: {1 beet: 90 g}
weighs: {1 cup: 14 g, 1 portion: 40 g}
yields: {from: 800 g, gives: 108 g}
dry water: 3 %
bring back: {soak: hot water, wait: 8 min}
must be cooked: to be edible
sachet: yes
carried in: the oil bottle
heat step: yes
to dry: [Boil them whole., Cut cubes of 1 cm.]
notes: The last tray dries a day longer.
formerly: [beetroot]
""",
        "yields": """\
from: 800 g
gives: 108 g
""",
        "bring-back": """\
soak: hot water
mix: 1 tbsp
moisten: 1 cup
pour over: 1 portion
in the pot: 100 g
with: 400 mL boiling water
takes: 150 mL
wait: 15 min
stir at: 7 min
cosy: yes
""",
        "dish": """\
name: Beef and leek noodles
about: For the evening when the tent went up in the rain.
meal: supper
serves: 2
parts:
  - beef crumbles: 60 g
  - leek rings: worth 150 g fresh
packs:
  - [beef crumbles, leek rings]
steps:
  - soak: [beef crumbles, leek rings]
  - Eat it as it is.
stove: gas ring
pot: pan
tried: [at home 2027-03-12, by the lake 2027-05-04]
learnt:
  - {date: 2027-04-11, change: more leek, why: thin}
notes: Stands an hour without harm.
photo: noodles.jpg
formerly: [beef-noodles]
""",
        "part": """\
take: worth 150 g fresh
stays in: 2 tbsp
fixed: yes
instead: [onion flakes, onion rings]
called: leeks for the top
""",
        "pack": """\
holds: [beef crumbles, [stock powder, salt]]
called: Broth
sachet: yes
""",
        "step": """\
soak: [beef crumbles, leek rings]
mix: egg powder
moisten: instant rice
pour over: squash stew
drain: into the pot
boil: quick noodles
simmer: [red lentils, onion flakes]
fry: [pancake mix, ghee]
bake: pan bread mix
warm: beef ragù
stir in: [olive oil, cheddar crumbs]
wait: 5 min
in: 700 mL
with: 330 mL cold water
for: 12 min
until: no white core is left
to: 74 °C
on: ration heater
pot: pan
lid: on
cosy: yes
say: Stir, or it sticks.
""",
        "lesson": """\
date: 2027-04-11
change: leek rings 100 g -> 150 g
why: thin
""",
        "run": """\
loaded: 2027-03-12 08:30
dryer: shed freeze-dryer
took: 36 h
on the trays:
  - egg powder: {fresh: 18 eggs, trays: 2, dry: 221 g}
notes: [The door seal was new.]
""",
        "batch": """\
bought: 1.4 kg
trimmed: 1.2 kg
cooked: 900 g
fresh: 18 eggs
treated: [frozen first, heated to 74 °C]
trays: 2
deep: 12 mm
dry: 221 g
tested: [no lighter, snaps cold]
best before: 2027-11-30
weighs: {1 tbsp: 6.1 g}
put in:
  - {in: half-litre jar, holds: 110 g, stands: cellar shelf}
traces: [almond]
thrown out: the power failed, and it had thawed
notes: Two hours more would have done.
""",
        "filled": """\
in: half-litre jar
holds: 110 g
vacuum: yes
sachet: oxygen absorber
stands: cellar shelf
from: 2027-03-12-egg/a1
on: 2027-05-02
""",
        "draws": """\
date: 2027-04-01
for: hut walk
drawn:
  - {from: 2027-03-12-egg/a2, took: 60 g}
""",
        "draw": """\
from: 2027-03-12-egg/a2
took: 60 g
gave away: 40 g
threw out: all
opened: yes
counted: 85 g
why: it smelt stale
""",
        **TRIP_KEYS,
    }
)
