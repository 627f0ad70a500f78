"""The examples of the format reference for trips: one for each key, and one whole for each section."""

from collections.abc import Mapping
from types import MappingProxyType

TRIP_KEYS: Mapping[str, str] = MappingProxyType(
    {
        "trip": """\
name: Over the ridge
about: Two nights, two valleys.
stands: gone
starts: 2027-06-19
people: [Ada, {Bo: {appetite: 120 %}}]
stops:
  - {place: the upper hut, day: 1, height: 1900 m, fills: tap}
on the move:
  - almonds: 30 g each
drinks: [milk coffee]
spare day:
  - supper: squash stew in the cosy
stoves: gas ring
burners: 2
pots: [small pot, pan]
fuel in hand: [180 g, 95 g]
water containers: {water bag: 10 L, bottle: {holds: 1 L, count: 4}}
cooler: {keeps cold: 2}
drinking: 3.5 L
washing: 1 L
mealtimes: {breakfast: 7:00, supper: 19:00}
margins: {water: 15 %}
notes: The bus back leaves at four.
came home: {date: 2027-06-21}
""",
        "person": """\
appetite: 120 %
age: 8
avoids: [tree nuts, peanut]
at risk: yes
carries: 50 %
drinks: 2 L
""",
        "stop": """\
place: the upper hut
day: 1
height: 1900 m
air: 6 °C
water: 4 °C
windy: yes
fills: to be treated
treated by: boiling
other water: lake
to buy: [oats, milk powder]
in heat: 3 h
meals:
  - supper: beef and leek noodles
  - breakfast: apple porridge
""",
        "meal-line": """\
dish: squash stew in the cosy
for: [Ada, Bo]
at: 19:30
stove: gas ring
pot: pan
""",
        "water-container": """\
holds: 1 L
count: 4
""",
        "cooler": """\
keeps cold: 2
holds: 20 L
""",
        "trip-margins": """\
water: 15 %
fuel: 25 %
""",
        "came-home": """\
date: 2027-06-21
left:
  - beef crumbles: 40 g
""",
        "left": """\
weight: 40 g
why: nobody was hungry after the rain
""",
    }
)
"""An example of each key, by section: every key of its model once, in the model's order."""

TRIP_WHOLE: Mapping[str, str] = MappingProxyType(
    {
        "trip": """\
name: Over the ridge
about: Two nights, two valleys.
starts: 2027-06-19
people:
  - Ada
  - Bo: {appetite: 120 %, avoids: peanut}
  - Kit: {age: 8, appetite: 60 %, drinks: 2 L}
stoves: gas ring
pots: [small pot, pan]
fuel in hand: 95 g
water containers:
  water bag: {holds: 10 L, count: 3}
  bottle: {holds: 1 L, count: 4}
on the move:
  - almonds: 30 g each
spare day:
  - supper: beef and leek noodles
stops:
  - place: the car park
    day: 1
    fills: tap
  - place: the tarn
    day: 1
    height: 1400 m
    other water: lake
    meals:
      - supper: beef and leek noodles
  - place: the upper hut
    day: 2
    height: 1900 m
    fills: to be treated
    treated by: boiling
    meals:
      - supper: {dish: beef and leek noodles, at: 19:30}
mealtimes: {supper: 18:30}
""",
        "person": """\
people:
  - Ada
  - Bo: {appetite: 120 %, carries: 130 %}
  - Kit: {age: 8, appetite: 60 %, avoids: [tree nuts, peanut]}
""",
        "stop": """\
stops:
  - place: the car park
    day: 1
    fills: tap
  - place: the tarn
    day: 1
    height: 1400 m
    other water: lake
    meals:
      - supper: beef and leek noodles
""",
        "meal-line": """\
spare day:
  - supper: {dish: beef and leek noodles, for: [Ada, Bo]}
  - supper: beef and leek noodles
""",
        "water-container": """\
water containers:
  water bag: {holds: 10 L, count: 3}
  bottle: {holds: 1 L, count: 4}
""",
        "cooler": """\
cooler: {keeps cold: 2, holds: 20 L}
""",
        "trip-margins": """\
margins:
  water: 15 %
  fuel: 25 %
""",
        "came-home": """\
stands: gone
came home:
  date: 2027-06-21
  left:
    - beef crumbles: {weight: 40 g, why: nobody was hungry after the rain}
""",
        "left": """\
stands: gone
came home:
  date: 2027-06-21
  left:
    - beef crumbles: {weight: 40 g, why: nobody was hungry after the rain}
    - almonds: 25 g
""",
    }
)
"""An example of each section, as it may stand in a file."""
