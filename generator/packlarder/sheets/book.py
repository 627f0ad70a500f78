"""The sheet of a whole book: everything that is published of it."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from types import MappingProxyType

from packlarder.lazily import Anew, Lazily
from packlarder.reckon.dish import work_out_each
from packlarder.safety import check_larger
from packlarder.safety.whole import CheckedBook
from packlarder.sheets import field_words, words
from packlarder.sheets.book_sheet import BookSheet, DownloadGroup, FieldBook, WrittenPage
from packlarder.sheets.component import component_sheet, links
from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish import day, dish_sheet
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.field import field_opening
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.format_reference import format_sections
from packlarder.sheets.indexes import IndexedDish, all_indexes, indexed
from packlarder.sheets.origins import usual_line
from packlarder.sheets.printed import System
from packlarder.sheets.sources import figure_groups, front_cautions, rule_rows
from packlarder.sheets.stored import StoredBook, stored_book
from packlarder.sheets.trips import TripsTaking, book_trips, trips_taking

SERVINGS = tuple(range(1, 13))
"""The numbers of servings that a page carries every figure for."""


def book_sheet(
    checked: CheckedBook,
    *,
    edition: str,
    on: date,
    photos: Mapping[str, bytes] | None = None,
    downloads: tuple[DownloadGroup, ...] = (),
    rows: Mapping[str, IndexedDish] | None = None,
) -> BookSheet:
    """Build the sheet of a book that has no errors.

    `photos` go by their file names; `downloads` are the files that will lie beside the site. `rows` are those of all
    dishes, by id, where somebody has made them already.
    """
    household = checked.book.household
    system = System(household.units.value)
    rows = rows or index_rows(checked, checked.dishes)
    ids = sorted(checked.dishes, key=lambda id: checked.book.dishes[id].name.lower())
    dishes = [rows[id] for id in ids]
    taking = trips_taking(checked)
    sheets = Lazily(ids, lambda id: _sheet(checked, usual_series(checked, id), taking))
    stored = stored_book(checked, edition, taking.reserved_g)
    openings = Lazily(ids, lambda id: _opening(checked, sheets[ids.index(id)], system))
    return BookSheet(
        title=household.title,
        language=household.language,
        address=household.address,
        system=system,
        edition=edition,
        day=day(on),
        about=household.about,
        dish_links=tuple(dish.entry.link for dish in dishes),
        dishes=sheets,
        components=_components(checked, dishes, stored, taking),
        indexes=all_indexes(dishes, list(checked.components.values())),
        general_cautions=front_cautions(),
        rules=rule_rows(),
        figures=figure_groups(),
        format=format_sections(),
        pages=tuple(_written_page(id, text) for id, text in checked.book.pages.items()),
        field=_field_book(checked, dishes, openings, edition, on),
        spread=Anew(ids, lambda id: _sheet(checked, dish_series(checked, id), taking)),
        larder=stored.larder,
        run_index=stored.run_index,
        runs=stored.runs,
        records=stored.records,
        trips=book_trips(checked, edition=edition, on=on) if checked.book.trips else None,
        photos=tuple((photos or {}).items()),
        downloads=downloads,
    )


def index_rows(checked: CheckedBook, ids: Iterable[str]) -> dict[str, IndexedDish]:
    """Take dishes into the indexes; they go by id."""
    system = System(checked.book.household.units.value)
    return {id: indexed(usual_series(checked, id), system) for id in ids}


def _sheet(checked: CheckedBook, dish: DishSeries, taking: TripsTaking) -> DishSheet:
    known = checked.dishes[dish.plan.id]
    sheet = dish_sheet(dish, (*known.findings, *check_larger(known.case, dish.sums)))
    eaten_on = taking.eaten_on.get(sheet.id)
    return replace(sheet, eaten_on=eaten_on) if eaten_on else sheet


def _opening(checked: CheckedBook, sheet: DishSheet, system: System) -> FieldOpening:
    return field_opening(usual_series(checked, sheet.id), sheet, checked.dishes[sheet.id].findings, system)


def usual_series(checked: CheckedBook, id: str) -> DishSeries:
    """Take a dish as it was worked out for the usual servings."""
    dish = checked.dishes[id]
    return DishSeries(plan=dish.plan, household=checked.book.household, sums=(dish.usual,), usual=0)


def dish_series(checked: CheckedBook, id: str, servings: Sequence[int] = SERVINGS) -> DishSeries:
    """Work out a dish for a row of servings under the household's usual conditions."""
    household = checked.book.household
    dish = checked.dishes[id]
    usual = household.servings if household.servings in servings else servings[0]
    return DishSeries(
        plan=dish.plan,
        household=household,
        sums=work_out_each(dish.settled, servings, household.margins.fuel.base),
        usual=servings.index(usual),
    )


def _components(
    checked: CheckedBook, dishes: Sequence[IndexedDish], stored: StoredBook, taking: TripsTaking
) -> tuple[ComponentSheet, ...]:
    used: dict[str, dict[str, str]] = {id: {} for id in checked.components}
    for dish in dishes:
        for component_id in dish.components:
            used[component_id][dish.entry.link.id] = dish.entry.link.name
    held: dict[str, dict[str, str]] = {id: {} for id in checked.components}
    for id, component in checked.components.items():
        for ingredient in component.model.made_of:
            inner = checked.book.component_id(ingredient.name)
            if inner in held:
                held[inner][id] = component.model.name
    ordered = sorted(checked.components.values(), key=lambda one: one.model.name.lower())
    return tuple(
        component_sheet(
            one,
            checked.component_findings[one.id],
            used_in=links(used[one.id], "dish"),
            held_in=links(held[one.id], "component"),
            stored=stored.stored.get(one.id),
            reserved=taking.reserved.get(one.id, ()),
        )
        for one in ordered
    )


def _written_page(id: str, text: str) -> WrittenPage:
    """Take a page's title from its first heading, or else from its id."""
    first, _, rest = text.lstrip().partition("\n")
    if first.startswith("# "):
        return WrittenPage(id=id, title=first[2:].strip(), markdown=rest)
    return WrittenPage(id=id, title=words.opened(id.replace("-", " ")), markdown=text)


def _field_book(
    checked: CheckedBook, dishes: Sequence[IndexedDish], openings: Sequence[FieldOpening], edition: str, on: date
) -> FieldBook:
    household = checked.book.household
    names = MappingProxyType({id: one.model.name for id, one in checked.components.items()})
    index = [
        (name, tuple(dish.entry.link.id for dish in dishes if id in dish.components))
        for id, name in sorted(names.items(), key=lambda pair: pair[1].lower())
    ]
    return FieldBook(
        title=household.title,
        language=household.language,
        edition=edition,
        day=day(on),
        on=on,
        how_to_use=tuple(line.format(conditions=usual_line(household)) for line in field_words.HOW_TO_USE),
        general_cautions=front_cautions(),
        openings=openings,
        component_index=tuple((name, ids) for name, ids in index if ids),
    )
