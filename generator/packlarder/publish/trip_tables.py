"""The packing list and the plan of a trip as tables: CSV by RFC 4180, that spreadsheets open as they are meant."""

import csv
from collections.abc import Iterable, Iterator
from io import StringIO
from typing import TypeAlias

from packlarder.publish import trip_file_words as words
from packlarder.sheets.trip_data_records import MealData, TripData
from packlarder.sheets.trip_names import BETWEEN_FOODS, ON_THE_MOVE, SPARE_DAY
from packlarder.sheets.trip_store_records import FoodData, ItemData, PackData, TaskData
from packlarder.sheets.words import COMMA

BYTE_ORDER_MARK = "\N{ZERO WIDTH NO-BREAK SPACE}"
"""Stands before everything: some spreadsheets take a table for UTF-8 only then."""
READ_AS_FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What a spreadsheet takes for the beginning of a formula (common practice)."""
QUOTE = "'"
"""Before such a text, tells a spreadsheet that it is one."""

Cell: TypeAlias = "str | int | float | None"


def packing_table(trip: TripData) -> str:
    """Give the packing list, a line for each component in each pack, in the order in which packs are opened."""
    meals = {meal["number"]: (meal, stop["place"]) for stop in trip["stops"] for meal in stop["meals"]}
    meals |= {meal["number"]: (meal, "") for meal in trip["spare_day"]}
    lines = (_packed(pack, item, meals) for pack in trip["packs"] for item in pack["items"])
    return _table(words.PACKING_HEAD, lines)


def _packed(pack: PackData, item: ItemData, meals: dict[int, tuple[MealData, str]]) -> tuple[Cell, ...]:
    meal, place = ON_THE_MOVE, ""
    if item["meal"] is not None:
        eaten, place = meals[item["meal"]]
        meal = words.MEAL.format(meal=eaten["meal"], dish=eaten["name"])
    return (
        SPARE_DAY.lower() if pack["spare"] else pack["day"],
        pack["date"],
        pack["mark"],
        pack["inside"],
        pack["bearer"],
        item["name"],
        words.RAW if item["raw"] else "",
        item["grams"],
        meal,
        place,
    )


def plan_table(trip: TripData) -> str:
    """Give what is to be done before a trip, a line for each task, in the order of the plan."""
    return _table(words.PLAN_HEAD, map(_planned, trip["plan"]))


def _planned(task: TaskData) -> tuple[Cell, ...]:
    date, _, time = task["starts"].partition("T")
    return (
        date,
        time,
        task["ends"].replace("T", " "),
        task["what"],
        foods_named(task["components"]),
        task["grams"],
        task["load"],
        ingredients_named(task),
    )


def foods_named(foods: Iterable[FoodData]) -> str:
    """Name components in one text, with the word RAW where it belongs."""
    return COMMA.join(words.RAW_NAME.format(name=one["name"]) if one["raw"] else one["name"] for one in foods)


def ingredients_named(task: TaskData) -> str:
    """Name the foods that are bought or mixed for what is made of several, with their weights; "" for one food."""
    weighed = ((one["name"], words.GRAMS.format(grams=one["grams"])) for one in task["foods"])
    return BETWEEN_FOODS.join(words.OF_ONE.format(name=name, grams=grams) for name, grams in weighed)


def _table(head: tuple[str, ...], lines: Iterable[tuple[Cell, ...]]) -> str:
    out = StringIO(newline="")
    csv.writer(out, lineterminator="\r\n").writerows(_safe_lines(head, lines))
    return BYTE_ORDER_MARK + out.getvalue()


def _safe_lines(head: tuple[str, ...], lines: Iterable[tuple[Cell, ...]]) -> Iterator[list[Cell]]:
    yield list(head)
    for line in lines:
        yield [_safe(cell) for cell in line]


def _safe(cell: Cell) -> Cell:
    """Let no text of a household's be taken for a formula."""
    return f"{QUOTE}{cell}" if isinstance(cell, str) and cell.startswith(READ_AS_FORMULA) else cell
