"""A new file of a trip: what the household has to cook with, its usual conditions and its dishes, to choose from."""

import json
from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from textwrap import wrap

from packlarder.book.book import TRIPS_FOLDER, Book, spoken, trip_place
from packlarder.book.dish import Meal
from packlarder.cli import texts
from packlarder.cli.larder_stage import LarderOpened
from packlarder.cli.new_file import EMPTY, id_of, quoted, skeleton
from packlarder.cli.options import Misuse
from packlarder.figures.kinds import Cooking, Kind
from packlarder.measure import as_typed, written
from packlarder.reckon.records import ComponentSums
from packlarder.sheets.trip_names import WEEKDAYS

SATURDAY = WEEKDAYS.index("Saturday")
LINE_COLUMNS = 118
A_DAY = (Meal.LUNCH, Meal.SUPPER, Meal.BREAKFAST)
"""The meals of a trip from its first noon on."""

OUT_OF_THE_HAND = frozenset({Kind.FRUIT, Kind.NUT, Kind.BREAD, Kind.SWEET})
"""Kinds of food that are eaten from the bag."""


def new_trip(opened: LarderOpened, name: str) -> tuple[str, str]:
    """Give the file of a new trip, and what stands in it. Raises Misuse for a name that can not be or is taken."""
    name = " ".join(name.split())
    id = opened.book.trip_ids.get(spoken(name)) or id_of(name)
    file = trip_place(id).file
    if id in opened.ids_in(TRIPS_FOLDER):
        raise Misuse(texts.TAKEN.format(name=name, path=opened.folder / file))
    return file, skeleton("trip", trip_facts(name, opened.book, opened.components.sums.values(), opened.day))


def trip_facts(name: str, book: Book, components: Iterable[ComponentSums], day: date) -> dict[str, str]:
    """Give what is known of a trip of this name that somebody plans on a day. Who goes, and where, nobody can know."""
    household = book.household
    starts = saturday_after(day)
    usual = household.usual_conditions
    dishes = {meal: [one.name.lower() for one in book.dishes.values() if one.meal is meal] for meal in Meal}
    of_the_day = [f"      # - {meal}: {quoted(dishes[meal][0])}" for meal in A_DAY if dishes[meal]]
    supper = next((names[0] for names in (dishes[Meal.SUPPER], *dishes.values()) if names), "leek noodles")
    drinks = dishes[Meal.DRINK]
    return {
        "name": quoted(name),
        "day": starts.isoformat(),
        "weekday": WEEKDAYS[starts.weekday()],
        "stoves": ", ".join(map(in_brackets, _first(usual.stove, household.stoves))),
        "pots": ", ".join(map(in_brackets, _first(usual.pot, household.pots))),
        "ration": f"#   - {quoted(_from_the_bag(components))}: 30 g each",
        "drinks": f"# drinks: [{in_brackets(drinks[0])}]  # made once a day for all" if drinks else EMPTY,
        "dish": quoted(supper),
        "conditions": "\n".join(
            f"    # {key}: {as_typed(written(value))}  # {texts.AS_USUAL_THERE}"
            for key, value in (("height", usual.height), ("air", usual.air), ("water", usual.water))
        ),
        "meals": "\n".join(of_the_day) or f"      # - supper: {quoted(supper)}",
        "dishes": "\n".join(line for meal, names in dishes.items() if names for line in _listed(meal, names)),
    }


def saturday_after(day: date) -> date:
    """Give the next Saturday after a day."""
    return day + timedelta(days=(SATURDAY - day.weekday() - 1) % 7 + 1)


def in_brackets(text: str) -> str:
    """Write a text so that it stays one in [ ]."""
    return json.dumps(text, ensure_ascii=False) if "," in text else quoted(text)


def _first(usual: str, names: Iterable[str]) -> list[str]:
    """Give names with the usual one before the others."""
    return sorted(names, key=lambda name: name != usual)


def _from_the_bag(components: Iterable[ComponentSums]) -> str:
    """Name something of theirs that people eat out of the hand."""
    ready = (one for one in components if one.must_be_cooked is Cooking.NO and one.kind in OUT_OF_THE_HAND)
    return next((one.model.name.lower() for one in ready), "almonds")


def _listed(meal: Meal, names: list[str]) -> Iterator[str]:
    more = len(names) - texts.MOST_WORDS
    said = ", ".join(names[: texts.MOST_WORDS]) + (texts.SO_MANY_MORE.format(more=f"{more:,}") if more > 0 else "")
    yield from wrap(f"{meal}: {said}", LINE_COLUMNS, initial_indent="#   ", subsequent_indent="#     ")
