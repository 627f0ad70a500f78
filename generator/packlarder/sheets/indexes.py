"""The indexes of a book: by meal, by cooking method, by component, by water to carry."""

from collections.abc import Callable, Iterable, Sequence

from packlarder.book.dish import Meal
from packlarder.reckon.records import ComponentSums
from packlarder.sheets import words
from packlarder.sheets.book_sheet import Index, IndexEntry, IndexGroup
from packlarder.sheets.component_sheet import Link
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.printed import System

WATER_BANDS_ML = (0, 250, 500, 1000)
"""Upper bounds of the groups in the index by water to carry; the last group is open."""


def all_indexes(
    dishes: Sequence[DishSheet], components: Sequence[ComponentSums], carry_ml: Sequence[int], system: System
) -> tuple[Index, ...]:
    """Give every index. `carry_ml[i]` is the water to carry for dish i at the usual servings."""
    water_of = dict(zip([dish.id for dish in dishes], carry_ml, strict=True))
    return (
        _index("meals", dishes, [meal.value for meal in Meal], lambda dish: dish.meal, system),
        _index("methods", dishes, list(words.METHODS.values()), lambda dish: dish.method, system),
        _index("water", dishes, list(words.WATER_BANDS), lambda dish: _band(water_of[dish.id]), system),
        _by_component(dishes, components, system),
    )


def _band(carry_ml: int) -> str:
    at = next((at for at, bound in enumerate(WATER_BANDS_ML) if carry_ml <= bound), len(WATER_BANDS_ML))
    return words.WATER_BANDS[at]


def _index(
    id: str,
    dishes: Sequence[DishSheet],
    headings: Sequence[str],
    heading_of: Callable[[DishSheet], str],
    system: System,
) -> Index:
    found: dict[str, list[DishSheet]] = {heading: [] for heading in headings}
    for dish in dishes:
        found[heading_of(dish)].append(dish)
    groups = [
        IndexGroup(heading=words.opened(heading), entries=_entries(held, system)) for heading, held in found.items()
    ]
    return Index(
        id=id,
        title=words.INDEXES[id],
        columns=tuple(words.STRIP[key] for key in words.INDEX_COLUMNS),
        groups=tuple(group for group in groups if group.entries),
    )


def _by_component(dishes: Sequence[DishSheet], components: Sequence[ComponentSums], system: System) -> Index:
    used: dict[str, dict[str, DishSheet]] = {}
    for dish in dishes:
        for row in dish.parts:
            used.setdefault(row.component, {})[dish.id] = dish
    groups = [
        IndexGroup(heading=component.model.name, entries=_entries(used.get(component.id, {}).values(), system))
        for component in sorted(components, key=lambda one: one.model.name.lower())
    ]
    return Index(
        id="components",
        title=words.INDEXES["components"],
        columns=tuple(words.STRIP[key] for key in words.INDEX_COLUMNS),
        groups=tuple(group for group in groups if group.entries),
    )


def _entries(dishes: Iterable[DishSheet], system: System) -> tuple[IndexEntry, ...]:
    return tuple(entry_of(dish, system) for dish in sorted(dishes, key=lambda dish: dish.name.lower()))


def entry_of(dish: DishSheet, system: System) -> IndexEntry:
    """Give a dish as a line of an index, at its usual servings."""
    figures = {reading.key: reading.figure for reading in dish.strip}
    return IndexEntry(
        link=Link(kind="dish", id=dish.id, name=dish.name),
        raw=bool(dish.raw_parts),
        figures=tuple(figures[key].text(system, dish.usual) for key in words.INDEX_COLUMNS),
    )
