"""A long trip for many people, made by a rule, over the large book of the bench with some of a larder."""

from collections.abc import Iterator, Mapping

from tests.bench.large_book import files as book_files
from tests.bench.large_larder import DRYER, runs

ID = "long-river"
PEOPLE, DAYS, MEALS_A_DAY = 12, 14, 4
BATCHES = 60
"""Batches in the larder: some of what the trip wants is there, the rest is to be dried."""
DAYS_A_STOP = 2
OTHER_DISHES = 37
"""The menu goes through the book in steps of so many dishes, and comes round after half of the trip."""

CAMP_POT = b"""\
pots:
  camp pot: {holds: 14 L, across: 32 cm}
"""
STRONG_STOVE = b"gas burner, power: 5 kW"
HEAD = """\
name: The long river
about: Down the long river with everybody.
starts: 2028-05-20
people:
{people}
stoves: [gas stove]
burners: 2
pots: [camp pot]
fuel in hand: [180 g, 95 g]
water containers:
  can: {{holds: 20 L, count: 12}}
on the move:
  - almonds: 30 g each
stops:
"""
PERSON = "  - Paddler {number}: {{appetite: {appetite} %}}"
STOP = """\
  - place: bend {number}
    day: {day}
    height: {height} m
    fills: tap
    meals:
"""
MEALS = ("breakfast", "lunch", "snack", "supper")


def files(dishes: int) -> Mapping[str, bytes]:
    """Give the files of the book by their paths in it, with so many dishes and one trip."""
    book = dict(book_files(dishes))
    kitchen = book["book.yaml"].replace(b"pots:\n", CAMP_POT, 1).replace(b"gas burner", STRONG_STOVE, 1)
    book["book.yaml"] = kitchen + DRYER.encode()
    larder = {path: text.encode() for path, text in runs(BATCHES)}
    return book | larder | {f"trips/{ID}.yaml": _trip(dishes).encode()}


def _trip(dishes: int) -> str:
    people = "\n".join(PERSON.format(number=one + 1, appetite=80 + 5 * (one % 9)) for one in range(PEOPLE))
    return HEAD.format(people=people) + "".join(_stops(dishes))


def _stops(dishes: int) -> Iterator[str]:
    for day in range(1, DAYS + 1):
        if (day - 1) % DAYS_A_STOP == 0:
            number = (day - 1) // DAYS_A_STOP + 1
            yield STOP.format(number=number, day=day, height=100 * (DAYS - day))
        for place, meal in enumerate(MEALS):
            at = (((day - 1) * MEALS_A_DAY + place) % (DAYS * MEALS_A_DAY // 2)) * OTHER_DISHES % dishes
            yield f"      - {meal}: {{dish: dish-{at + 1:04}, pot: camp pot}}\n"
