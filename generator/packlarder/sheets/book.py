"""The sheet of a whole book: everything that is published of it."""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from types import MappingProxyType

from packlarder.reckon.dish import usual_conditions, work_out_each
from packlarder.safety.whole import CheckedBook
from packlarder.sheets import words
from packlarder.sheets.book_sheet import BookSheet, FieldBook, WrittenPage
from packlarder.sheets.component import component_sheet, links
from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish import day, dish_sheet
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.field import field_opening
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.format_reference import format_sections
from packlarder.sheets.indexes import all_indexes
from packlarder.sheets.origins import usual_line
from packlarder.sheets.printed import System
from packlarder.sheets.sources import figure_groups, front_cautions, rule_rows

SERVINGS = tuple(range(1, 13))
"""The numbers of servings that a page carries every figure for."""


def book_sheet(checked: CheckedBook, *, edition: str, on: date, photos: Mapping[str, bytes] | None = None) -> BookSheet:
    """Build the sheet of a book that has no errors. `photos` go by their file names."""
    household = checked.book.household
    system = System(household.units.value)
    series = [dish_series(checked, id, (household.servings,)) for id in _by_name(checked)]
    sheets = [dish_sheet(one, checked.dish_findings[one.plan.id]) for one in series]
    openings = [
        field_opening(one, sheet, checked.dish_findings[sheet.id], system)
        for one, sheet in zip(series, sheets, strict=True)
    ]
    carry_ml = [checked.usual[sheet.id].water.carry_ml for sheet in sheets]
    return BookSheet(
        title=household.title,
        language=household.language,
        address=household.address,
        system=system,
        edition=edition,
        day=day(on),
        about=household.about,
        dishes=tuple(sheets),
        components=_components(checked),
        indexes=all_indexes(sheets, list(checked.components.values()), carry_ml, system),
        general_cautions=front_cautions(),
        rules=rule_rows(),
        figures=figure_groups(),
        format=format_sections(),
        pages=tuple(_written_page(id, text) for id, text in checked.book.pages.items()),
        field=_field_book(checked, openings, edition, on),
        spread=DishSpread(checked),
        photos=tuple((photos or {}).items()),
    )


class DishSpread(Mapping[str, DishSheet]):
    """The dishes of a book by id, each worked out for every number of servings when it is asked for."""

    def __init__(self, checked: CheckedBook) -> None:
        """Keep the book; nothing is worked out yet."""
        self._checked = checked

    def __getitem__(self, id: str) -> DishSheet:
        """Work out one dish; KeyError for an id that the book has not."""
        return dish_sheet(dish_series(self._checked, id), self._checked.dish_findings[id])

    def __iter__(self) -> Iterator[str]:
        """Give the ids."""
        return iter(self._checked.plans)

    def __len__(self) -> int:
        """Count the dishes."""
        return len(self._checked.plans)


def _by_name(checked: CheckedBook) -> list[str]:
    return sorted(checked.plans, key=lambda id: checked.book.dishes[id].name.lower())


def dish_series(checked: CheckedBook, id: str, servings: Sequence[int] = SERVINGS) -> DishSeries:
    """Work out a dish for a row of servings under the household's usual conditions."""
    household = checked.book.household
    conditions = usual_conditions(household)
    usual = household.servings if household.servings in servings else servings[0]
    return DishSeries(
        plan=checked.plans[id],
        household=household,
        sums=work_out_each(checked.plans[id], servings, conditions, household.margins.fuel.base),
        usual=servings.index(usual),
    )


def _components(checked: CheckedBook) -> tuple[ComponentSheet, ...]:
    used: dict[str, dict[str, str]] = {id: {} for id in checked.components}
    for id, plan in checked.plans.items():
        for part in plan.parts:
            used[part.component.id][id] = plan.model.name
    held: dict[str, dict[str, str]] = {id: {} for id in checked.components}
    for id, component in checked.components.items():
        for ingredient in component.model.made_of:
            inner = checked.book.component_id(ingredient.name)
            if inner in held:
                held[inner][id] = component.model.name
    ordered = sorted(checked.components.values(), key=lambda one: one.model.name.lower())
    return tuple(
        component_sheet(
            one, checked.component_findings[one.id], links(used[one.id], "dish"), links(held[one.id], "component")
        )
        for one in ordered
    )


def _written_page(id: str, text: str) -> WrittenPage:
    """Take a page's title from its first heading, or else from its id."""
    first, _, rest = text.lstrip().partition("\n")
    if first.startswith("# "):
        return WrittenPage(id=id, title=first[2:].strip(), markdown=rest)
    return WrittenPage(id=id, title=words.opened(id.replace("-", " ")), markdown=text)


def _field_book(checked: CheckedBook, openings: Sequence[FieldOpening], edition: str, on: date) -> FieldBook:
    household = checked.book.household
    names = MappingProxyType({id: one.model.name for id, one in checked.components.items()})
    index = [
        (name, tuple(opening.id for opening in openings if id in opening.components))
        for id, name in sorted(names.items(), key=lambda pair: pair[1].lower())
    ]
    return FieldBook(
        title=household.title,
        language=household.language,
        edition=edition,
        day=day(on),
        on=on,
        how_to_use=tuple(line.format(conditions=usual_line(household)) for line in words.HOW_TO_USE),
        general_cautions=front_cautions(),
        openings=tuple(openings),
        component_index=tuple((name, ids) for name, ids in index if ids),
    )
