"""The format reference: every key of every file of a book, from the models that read them, and every closed word."""

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType, UnionType
from typing import Annotated, Union, get_args, get_origin, get_type_hints

from pydantic.fields import FieldInfo

from packlarder.book import (
    batch,
    bring_back,
    came_home,
    component,
    days,
    dish,
    draw,
    drying_run,
    fields,
    household,
    limits,
    names,
    part,
    person,
    step,
    stock,
    stop,
    trip,
)
from packlarder.book.base import BookModel
from packlarder.book.docstrings import said_of_fields
from packlarder.book.own_food import OwnFood
from packlarder.book.schema import as_written
from packlarder.figures.allergens import Allergen
from packlarder.figures.kinds import Kind
from packlarder.sheets import format_words as words
from packlarder.sheets.book_sheet import FormatSection, KeyRow
from packlarder.sheets.format_examples import WHOLE
from packlarder.sheets.format_keys import KEYS
from packlarder.sheets.format_lists import CLOSED_LISTS
from packlarder.sheets.words import opened

MODELS: Mapping[str, type[BookModel]] = MappingProxyType(
    {
        "book": household.Household,
        "stove": household.Stove,
        "pot": household.Pot,
        "dryer": stock.Dryer,
        "container": stock.ContainerSize,
        "larder": stock.LarderRules,
        "keeping": stock.KeepingRule,
        "margins": household.Margins,
        "usual-conditions": household.UsualConditions,
        "foods": OwnFood,
        "component": component.Component,
        "yields": component.Yield,
        "bring-back": bring_back.BringBack,
        "dish": dish.Dish,
        "part": part.PartDetail,
        "pack": dish.Pack,
        "step": step.Step,
        "lesson": dish.Lesson,
        "run": drying_run.DryingRun,
        "batch": batch.BatchDetail,
        "filled": batch.Filled,
        "draws": draw.Draws,
        "draw": draw.Draw,
        "trip": trip.Trip,
        "person": person.PersonDetail,
        "stop": stop.Stop,
        "meal-line": stop.MealDetail,
        "water-container": trip.WaterContainer,
        "cooler": trip.Cooler,
        "trip-margins": trip.TripMargins,
        "came-home": came_home.CameHome,
        "left": came_home.LeftDetail,
    }
)
"""The sections whose keys are those of a model."""

KINDS: tuple[tuple[object, str], ...] = (
    (fields.Text, "text"),
    (names.Texts, "texts"),
    (fields.Prose, "prose"),
    (fields.Id, "id"),
    (tuple[fields.Id, ...], "ids"),
    (fields.Day, "day"),
    (fields.YesNo, "yes or no"),
    (fields.Whole, "whole"),
    (fields.Weight, "weight"),
    (fields.Nutrient, "nutrient"),
    (fields.Volume, "volume"),
    (fields.VolumeOrNone, "volume"),
    (fields.Minutes, "minutes"),
    (fields.Degrees, "degrees"),
    (fields.Length, "length"),
    (fields.Share, "share"),
    (fields.Energy, "energy"),
    (fields.Power, "power"),
    (fields.Amount, "amount"),
    (part.TakeField, "take"),
    (fields.WeightOrCount, "weight or count"),
    (days.Moment, "moment"),
    (days.KeepFor, "span"),
    (draw.MarkField, "mark"),
    (draw.ShareField, "gone"),
    (draw.CountedField, "left"),
    (batch.Treatments, "treated"),
    (batch.Tests, "tests"),
    (bring_back.Water, "water"),
    (bring_back.GivenField, "given"),
    (names.FoodName, "food"),
    (names.PartNames, "components"),
    (names.ComponentNames, "components"),
    (tuple[component.Ingredient, ...], "ingredients"),
    (names.Allergens, "allergens"),
    (tuple[dish.PackItem, ...], "held"),
    (stop.DayNumber, "day of a trip"),
    (stop.TimeOfDay, "time of day"),
    (dict[dish.Meal, stop.TimeOfDay], "mealtimes"),
    (person.Age, "whole"),
    (trip.Burners, "whole"),
    (person.Avoided, "allergens"),
    (names.DishName, "dish"),
    (tuple[trip.OnTheMove, ...], "rations"),
    (limits.FuelWeights, "weights"),
)
"""The kinds of value that models ask for, by their words in the catalogue."""

CLOSED: tuple[tuple[object, str], ...] = (
    (Kind, "kinds"),
    (Allergen, "allergens"),
    (names.FuelName, "fuels"),
    (names.StoveKind, "stove-kinds"),
)
"""Closed lists with a section of their own that are too long to stand beside a key."""

LISTED: tuple[tuple[object, str], ...] = (
    (part.Part, "part"),
    (dish.Pack, "pack"),
    (dish.StepField, "step"),
    (dish.Lesson, "lesson"),
    (stock.KeepingRule, "keeping"),
    (batch.Batch, "batch"),
    (batch.Filled, "filled"),
    (draw.Draw, "draw"),
    (person.Person, "person"),
    (stop.Stop, "stop"),
    (stop.MealLine, "meal-line"),
    (came_home.Left, "left"),
)
"""What lists hold, by the section that tells of it."""


def format_sections() -> tuple[FormatSection, ...]:
    """Give the sections of the format reference in the order of the page."""
    return tuple(
        FormatSection(id=id, title=title, says=says, keys=_rows(id), example=WHOLE.get(id, "").rstrip("\n"))
        for id, (title, says) in words.SECTIONS.items()
    )


def _rows(id: str) -> tuple[KeyRow, ...]:
    if id in CLOSED_LISTS:
        return CLOSED_LISTS[id]()
    return model_rows(MODELS[id], key_examples(KEYS[id])) if id in MODELS else ()


def key_examples(text: str) -> Mapping[str, str]:
    """Part an example that holds every key once into the keys, each as it stands in the file."""
    found: dict[str, str] = {}
    key = ""
    for line in text.splitlines():
        if not line.startswith((" ", "-")):
            key = line.partition(":")[0]
        found[key] = f"{found[key]}\n{line}" if key in found else line
    return MappingProxyType(found)


def model_rows(model: type[BookModel], examples: Mapping[str, str]) -> tuple[KeyRow, ...]:
    """Give a row for each key of a model; a key without an example has none to show."""
    hints = get_type_hints(model, include_extras=True)
    return tuple(
        KeyRow(
            key=str(field.alias),
            takes=takes(hints[name]),
            required=field.is_required(),
            says=_says(said_of_fields(model).get(name, ""), field),
            example=examples.get(str(field.alias), ""),
        )
        for name, field in model.model_fields.items()
    )


def _says(docstring: str, field: FieldInfo) -> str:
    """Make sentences of a field's docstring and default."""
    text = opened(in_quotes(docstring))
    default = as_written(field.default)
    if default is None:
        return f"{text}."
    shown = ", ".join(default) if isinstance(default, list) else str(default)
    return f"{text}. {words.LEFT_OUT.format(default=shown)}"


def in_quotes(text: str) -> str:
    """Set what stands between backticks in quotes, as a page has no other mark for it."""
    pieces = text.split("`")
    return "".join(f"“{piece}”" if number % 2 else piece for number, piece in enumerate(pieces))


def takes(hint: object) -> str:
    """Say in plain words what a field of this type takes; nothing where the catalogue has no words for it."""
    if found := _known(CLOSED, hint):
        return words.WORD_OF.format(title=words.SECTIONS[found][0])
    if found := _known(KINDS, hint):
        return words.TAKES[found]
    origin, inner = get_origin(hint), get_args(hint)
    if origin is Annotated:
        return takes(inner[0])
    if origin in (Union, UnionType):
        [present] = [one for one in inner if one is not type(None)]
        return takes(present)
    if origin is dict:
        return words.FOR_EACH.format(one=takes(inner[1]))
    if origin is tuple and (found := _known(LISTED, inner[0])):
        return words.LIST_SEE.format(title=words.SECTIONS[found][0])
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return _one_of(hint)
    seen = [words.SECTIONS[id][0] for id, model in MODELS.items() if model is hint]
    return words.SEE.format(title=seen[0]) if seen else ""


def _one_of(closed: type[StrEnum]) -> str:
    every = [one.value for one in closed]
    return words.ONE_OF.format(words=", ".join(every)) if len(every) > 1 else every[0]


def _known(table: tuple[tuple[object, str], ...], hint: object) -> str | None:
    """Find a type in a table; one with more said of it (`Annotated[Whole, ...]`) is found by what it begins with."""
    if any(kind == hint for kind, _ in table):
        return next(word for kind, word in table if kind == hint)
    if get_origin(hint) is not Annotated:
        return None
    parts = get_args(hint)
    begun = [(len(get_args(kind)), word) for kind, word in table if _begins(parts, kind)]
    return max(begun)[1] if begun else None


def _begins(parts: tuple[object, ...], kind: object) -> bool:
    own = get_args(kind)
    return get_origin(kind) is Annotated and parts[: len(own)] == own
