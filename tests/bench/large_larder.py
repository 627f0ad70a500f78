"""A large larder made by a rule, for the book of the bench: runs of two batches, and draws from their jars."""

from collections.abc import Iterator, Mapping
from datetime import date, timedelta

from tests.bench.large_book import PROTEINS, VEGETABLES
from tests.bench.large_book import files as book_files

BATCHES_A_RUN, CONTAINERS_A_BATCH = 2, 2
LAST_RUN = date(2027, 5, 28)
"""The runs end here, one every other day; the book's day is 2027-06-01."""
EVERY = 3
"""Of each so many containers one was opened, and of each so many one was used up."""

DRYER = """\
dryers:
  freeze-dryer: {dries: freeze-dried, trays: 5, a tray: 900 g, deep: 10 mm, takes: 36 h}
containers:
  large jar: {kind: jar, holds: 4 L}
larder:
  stores: {cellar shelf: 15 °C}
  keeping:
    - {dried: freeze-dried, for: 60 months, why: we dry more than we eat}
    - {kept: opened, for: 60 months, why: closed at once}
"""

RUN = """\
loaded: {day} 20:00
dryer: freeze-dryer
took: 36 h
on the trays:
{batches}"""

BATCH = """\
  - {name}:
      bought: {bought_g} g
      fresh: {fresh_g} g
      treated: frozen first
      trays: 2
      deep: 8 mm
      dry: {dry_g} g
      tested: no lighter
      put in:
        - {{in: large jar, holds: {jar_g} g, stands: cellar shelf}}
        - {{in: large jar, holds: {jar_g} g, stands: cellar shelf}}
"""

DRAWN = """\
date: {day}
for: supper
drawn:
  - {{from: {run}/a1, took: {took}}}
"""

SOLIDS_G: Mapping[str, int] = {
    "chicken dice": 347,
    "turkey mince": 390,
    "beef crumbles": 392,
    "ham dice": 323,
    "pork strips": 306,
    "venison crumbles": 358,
    "lamb crumbles": 449,
    "black beans": 343,
    "chickpeas": 398,
    "pinto beans": 370,
    "leek rings": 92,
    "carrot dice": 98,
    "peas": 205,
    "sweet corn": 230,
    "green beans": 108,
    "mushroom slices": 89,
    "spinach": 88,
    "cabbage shreds": 74,
    "broccoli": 108,
    "parsnip dice": 198,
    "pumpkin dice": 63,
    "cauliflower": 70,
    "beet dice": 129,
    "turnip dice": 64,
}
"""What a kilogram of each food holds besides water, in g, by the food table."""


def files(batches: int) -> Mapping[str, bytes]:
    """Give the files of a book with so many batches, by their paths in the book; the same number, the same book."""
    small = dict(book_files(1))
    small["book.yaml"] += DRYER.encode()
    texts = dict(runs(batches))
    return small | {path: text.encode() for path, text in texts.items()}


def runs(batches: int) -> Iterator[tuple[str, str]]:
    """Give the runs of so many batches, and the draws from them, by their paths."""
    foods = (*PROTEINS, *VEGETABLES)
    in_all = batches // BATCHES_A_RUN
    for number in range(in_all):
        day = LAST_RUN - timedelta(days=2 * (in_all - 1 - number))
        id = f"{day}-run-{number + 1}"
        pair = (foods[(number * BATCHES_A_RUN + place) % len(foods)][0] for place in range(BATCHES_A_RUN))
        yield f"batches/{id}.yaml", RUN.format(day=day, batches="".join(_batch(name, number) for name in pair))
        if number % EVERY:
            took = "all" if number % EVERY == 1 else "20 g"
            drawn = day + timedelta(days=3)
            yield f"draws/{drawn}-{number + 1}.yaml", DRAWN.format(day=drawn, run=id, took=took)


def _batch(name: str, number: int) -> str:
    """Write a batch; what comes out of a kilogram holds a little more than its solids, and no two are quite alike."""
    dry_g = round(SOLIDS_G[name] * 1.02) + number % 3
    return BATCH.format(name=name, bought_g=1100, fresh_g=1000, dry_g=dry_g, jar_g=dry_g // CONTAINERS_A_BATCH)
