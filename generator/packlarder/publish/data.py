"""Data for other programs: each dish as a schema.org Recipe, and every sheet as it is."""

import dataclasses
import json
from pathlib import Path
from typing import TypeAlias

from packlarder.faults import Fault
from packlarder.sheets.book_sheet import BookSheet
from packlarder.sheets.dish_sheet import DishSheet, PartRow, StepRow
from packlarder.sheets.printed import NOTHING, Printed, System, plain

FOLDER = "data"
RECIPES, DISHES, COMPONENTS, BATCHES, TRIPS, BOOK = "recipes", "dishes", "components", "batches", "trips", "book.json"
AS_IT_IS = "as it is"
"""Where the yield of a part comes from that was not dried by the household."""
NO_BREAK = "\N{NO-BREAK SPACE}"

Data: TypeAlias = "str | list[Data] | dict[str, Data]"
"""What may stand in JSON-LD of ours."""


def build_data(sheet: BookSheet, *, out: Path) -> tuple[Fault, ...]:
    """Write `data/` into `out`. Finds nothing wrong.

    `recipes/<id>.jsonld` holds a dish as a schema.org Recipe at its usual servings, `dishes/<id>.json` and
    `components/<id>.json` the sheets, `book.json` what there is besides. Figures stand as they are printed; lists of
    them are for the servings that the sheet names. `larder.json` and `batches/<id>.json` are there where the book has
    drying runs, and say what `show larder` and `show batch` say; `trips/<id>.json` say what `show trip` says.
    """
    folder = out / FOLDER
    trips = {} if sheet.trips is None else sheet.trips.data
    also = (*((BATCHES,) if sheet.records else ()), *((TRIPS,) if trips else ()))
    for name in (RECIPES, DISHES, COMPONENTS, *also):
        (folder / name).mkdir(parents=True, exist_ok=True)
    for dish in sheet.dishes:
        _write(folder / RECIPES / f"{dish.id}.jsonld", recipe(dish, sheet))
        _write(folder / DISHES / f"{dish.id}.json", sheet.spread.get(dish.id) or dish)
    for component in sheet.components:
        _write(folder / COMPONENTS / f"{component.id}.json", component)
    for name, record in sheet.records.items():
        _write(folder / f"{name}.json", record)
    for id, trip in trips.items():
        _write(folder / TRIPS / f"{id}.json", trip)
    _write(folder / BOOK, _besides(sheet))
    return ()


def recipe(dish: DishSheet, book: BookSheet) -> dict[str, Data]:
    """Give a dish as a schema.org Recipe, in the book's system of units, with what must be told to whoever cooks it."""
    desk = _Desk(dish, book.system)
    address = f"{book.address.rstrip('/')}/" if book.address else ""
    known: dict[str, Data] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": dish.name,
        "description": dish.about,
        "inLanguage": book.language,
        "version": book.edition,
        "isPartOf": {"@type": "Book", "name": book.title},
        "url": address and f"{address}dishes/{dish.id}.html",
        "image": address and dish.photo and f"{address}photos/{dish.photo}",
        "recipeCategory": dish.meal,
        "cookingMethod": dish.method,
        "recipeYield": f"{dish.servings[dish.usual]} servings",
        "totalTime": desk.duration(),
        "recipeIngredient": [*map(desk.ingredient, dish.parts), *desk.water()],
        "recipeInstructions": [*desk.raw(), *map(desk.step, dish.steps), *desk.cautions()],
        "nutrition": desk.nutrition(),
    }
    return {key: value for key, value in known.items() if value}


@dataclasses.dataclass(frozen=True, slots=True)
class _Desk:
    """Sets one dish at its usual servings in one system."""

    dish: DishSheet
    system: System

    def said(self, figure: Printed) -> str:
        text = figure.text(self.system, self.dish.usual)
        return "" if text == NOTHING else text

    def ingredient(self, part: PartRow) -> Data:
        amounts = [text for text in (self.said(part.dry), self.said(part.measure)) if text]
        dried = ", dried" if part.yield_from not in ("", AS_IT_IS) else ""
        raw = " (raw: must be cooked to be safe)" if part.raw else ""
        return f"{' / '.join(dict.fromkeys(amounts))} {part.name.lower()}{dried}{raw}".strip()

    def water(self) -> list[Data]:
        total = self.said(self.dish.water_total)
        return [f"{total} water"] if total else []

    def raw(self) -> list[Data]:
        return [_tip(f"RAW: {plain(self.dish.raw, self.system, self.dish.usual)}")] if self.dish.raw_parts else []

    def step(self, row: StepRow) -> Data:
        text = plain(row.line, self.system, self.dish.usual)
        return {"@type": "HowToStep", "text": f"{row.verb.capitalize()}: {text}" if row.verb else text}

    def cautions(self) -> list[Data]:
        return [_tip(caution.text) for caution in self.dish.cautions]

    def duration(self) -> str:
        """Give the clock to the plate as an ISO 8601 duration."""
        clock = next((self.said(reading.figure) for reading in self.dish.strip if reading.key == "clock"), "")
        hours, _, minutes = clock.partition(":")
        return f"PT{int(hours)}H{int(minutes)}M" if minutes else ""

    def nutrition(self) -> dict[str, Data]:
        """Give the energy of a serving, where all of it is known."""
        known = [self.said(food.figure) for food in self.dish.feeds if food.complete]
        energy = next((text for text in known if text.endswith(f"{NO_BREAK}kcal")), "")
        return {"@type": "NutritionInformation", "servingSize": "1 serving", "calories": energy} if energy else {}


def _tip(text: str) -> Data:
    return {"@type": "HowToTip", "text": text}


def _besides(sheet: BookSheet) -> dict[str, object]:
    """Give what the book's sheet holds besides what has files of its own; no photos."""
    left_out = {"dishes", "dish_links", "components", "spread", "field", "photos", "format", "downloads"}
    left_out |= {"larder", "run_index", "runs", "records", "trips"}
    held = {one.name: getattr(sheet, one.name) for one in dataclasses.fields(sheet) if one.name not in left_out}
    ids = {"dishes": [one.id for one in sheet.dish_links], "components": [one.id for one in sheet.components]}
    return {**held, **ids}


def _write(path: Path, content: object) -> None:
    """Write a record as JSON, a line for each of its fields."""
    fields = content if isinstance(content, dict) else _fields(content)
    lines = (f"{_dumped(name)}: {_dumped(value)}" for name, value in fields.items())
    path.write_text("{\n" + ",\n".join(lines) + "\n}\n", encoding="utf-8")


def _dumped(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, default=_fields).replace(NO_BREAK, " ")


def _fields(record: object) -> dict[str, object]:
    """Give a record's fields, for JSON."""
    if not dataclasses.is_dataclass(record) or isinstance(record, type):
        raise TypeError(f"{record!r} is no record")
    return {one.name: getattr(record, one.name) for one in dataclasses.fields(record)}
