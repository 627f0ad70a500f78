"""The indexes of a book: by meal, by cooking method, by component, by water to carry."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from packlarder.book.dish import Meal
from packlarder.reckon.records import ComponentSums
from packlarder.sheets import words
from packlarder.sheets.book_sheet import Index, IndexEntry, IndexGroup
from packlarder.sheets.dish import method_of, strip_of
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.facts import Link
from packlarder.sheets.printed import System
from packlarder.sheets.water_rows import carried

WATER_BANDS_ML = (0, 250, 500, 1000)
"""Upper bounds of the groups in the index by water to carry; the last group is open."""


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexedDish:
    """A dish as the indexes see it: its line, what it is found under, and its water at the usual servings."""

    entry: IndexEntry
    meal: str
    method: str
    carry_ml: int
    components: frozenset[str]


def indexed(dish: DishSeries, system: System) -> IndexedDish:
    """Take a dish, worked out for its usual servings, into the indexes."""
    plan, usual = dish.plan, dish.usual
    figures = {reading.key: reading.figure for reading in strip_of(dish, carried(dish))}
    return IndexedDish(
        entry=IndexEntry(
            link=Link(kind="dish", id=plan.id, name=plan.model.name),
            raw=any(part.component.raw for part in plan.parts),
            figures=tuple(figures[key].text(system, usual) for key in words.INDEX_COLUMNS),
        ),
        meal=plan.model.meal.value,
        method=method_of(dish),
        carry_ml=dish.sums[usual].water.carry_ml,
        components=frozenset(part.component.id for part in plan.parts),
    )


def all_indexes(dishes: Sequence[IndexedDish], components: Sequence[ComponentSums]) -> tuple[Index, ...]:
    """Give every index of dishes that stand in the order of their names."""
    return (
        _index("meals", dishes, [meal.value for meal in Meal], lambda dish: [dish.meal]),
        _index("methods", dishes, list(words.METHODS.values()), lambda dish: [dish.method]),
        _index("water", dishes, list(words.WATER_BANDS), lambda dish: [_band(dish.carry_ml)]),
        _by_component(dishes, components),
    )


def _band(carry_ml: int) -> str:
    at = next((at for at, bound in enumerate(WATER_BANDS_ML) if carry_ml <= bound), len(WATER_BANDS_ML))
    return words.WATER_BANDS[at]


def _by_component(dishes: Sequence[IndexedDish], components: Sequence[ComponentSums]) -> Index:
    names = {one.id: one.model.name for one in sorted(components, key=lambda one: one.model.name.lower())}
    index = _index(
        "components", dishes, list(names.values()), lambda dish: [names[component] for component in dish.components]
    )
    raw = {words.opened(one.model.name) for one in components if one.raw}
    return replace(index, groups=tuple(replace(group, raw=group.heading in raw) for group in index.groups))


def _index(
    id: str,
    dishes: Sequence[IndexedDish],
    headings: Sequence[str],
    headings_of: Callable[[IndexedDish], Iterable[str]],
) -> Index:
    found: dict[str, list[IndexEntry]] = {heading: [] for heading in headings}
    for dish in dishes:
        for heading in headings_of(dish):
            found[heading].append(dish.entry)
    return Index(
        id=id,
        title=words.INDEXES[id],
        columns=tuple(words.STRIP[key] for key in words.INDEX_COLUMNS),
        groups=tuple(
            IndexGroup(heading=words.opened(heading), entries=tuple(entries))
            for heading, entries in found.items()
            if entries
        ),
    )
