"""The command `show dish`: one dish, worked out, as text or data."""

import json
import sys

from packlarder.book.book import Book, component_place, dish_place, spoken
from packlarder.cli import texts
from packlarder.cli.console import print_json, say, show_faults
from packlarder.cli.hints import meant_or_known
from packlarder.cli.options import Misuse, Options
from packlarder.cli.plain_sheet import plain_sheet
from packlarder.cli.stages import BookWorked, book_folder, edition_of, work_out
from packlarder.faults import Fault, has_errors
from packlarder.safety import DishCase, check_dish
from packlarder.sheets.book import dish_series
from packlarder.sheets.data import dish_data
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.dish import dish_sheet
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.printed import System


def show_dish(options: Options) -> int:
    """Print a dish; 1 if something in it is wrong, so that it can not be worked out or is not safe."""
    asked = dish_asked_for(options)
    if asked is None:
        return 1
    worked, dish, sheet = asked
    household = dish.household
    day = worked.read.day
    edition = edition_of(worked.read.files, day)
    if options.json:
        data = dish_data(dish, sheet, edition=edition, day=day.isoformat())
        print_json(json.dumps(data, ensure_ascii=False, indent=2))
    else:
        foot = texts.FOOT.format(title=household.title, edition=edition, day=printed_day(day))
        print(plain_sheet(sheet, System(household.units.value), foot), end="")
    return 0


def dish_asked_for(options: Options) -> tuple[BookWorked, DishSeries, DishSheet] | None:
    """Work out the dish that is asked for, with its sheet; None where it can not be, after saying why."""
    worked = work_out(book_folder(options), options.on)
    checked = worked.checked
    if checked is None:
        _tell(worked, worked.faults)
        return None
    id = _dish_id(options.name, worked, checked.book)
    own = _about(id, worked, checked.book)
    if has_errors(own) or id not in checked.dishes:
        _tell(worked, own)
        return None
    if not worked.sound:
        say(texts.OTHER_FAULTS)
    household = checked.book.household
    dish = dish_series(checked, id, (options.servings or household.servings,))
    return worked, dish, dish_sheet(dish, check_dish(DishCase(dish.plan, dish.sums[0], household)))


def _tell(worked: BookWorked, faults: tuple[Fault, ...]) -> None:
    show_faults(faults, worked.read.files.texts, worked.shown, sys.stderr)


def _dish_id(name: str, worked: BookWorked, book: Book) -> str:
    """Find a dish by id, name or former id; a dish whose file could not be read is found by id."""
    id = book.dish_ids.get(spoken(name))
    if id is not None:
        return id
    asked = spoken(name).replace(" ", "-")
    if dish_place(asked).file in worked.read.files.texts:
        return asked
    if not book.dishes:
        raise Misuse(texts.NO_DISHES)
    raise Misuse(texts.NO_DISH.format(name=name, hint=meant_or_known(asked, book.dishes, least=0.4)))


def _about(id: str, worked: BookWorked, book: Book) -> tuple[Fault, ...]:
    """Give the faults that concern a dish: in its file, and in the files of its components."""
    files = {dish_place(id).file}
    if id in book.dishes:
        for part in book.dishes[id].parts:
            component = book.component_id(part.name)
            unread = book.unread_components.get(spoken(part.name), "")
            files.add(component_place(component).file if component else unread)
    return tuple(fault for fault in worked.faults if {fault.place.file, *(also.file for also in fault.also)} & files)
