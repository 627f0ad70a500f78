"""The menu of a trip's booklet: each day against the clock, with the places in which it is cooked."""

from collections.abc import Iterator
from itertools import groupby

from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.trip_dish import is_tub
from packlarder.sheets.trip_field_clock import clock_of, first_move
from packlarder.sheets.trip_field_sheet import MenuDay, MenuLine, MenuPlace
from packlarder.sheets.trip_names import FOR, clock, day_called, short_date, stop_called
from packlarder.sheets.words import opened


def menu(trip: TripSums, ids: dict[int, str]) -> tuple[MenuDay, ...]:
    """Give the menu day by day, the spare day last; `ids` are those of the openings by the number of a meal."""
    days = dict.fromkeys((*range(1, trip.last_day + 1), *(meal.day for meal in trip.meals)))
    made = (
        MenuDay(
            heading=day_heading(trip, day),
            on_the_move=_on_the_move(trip, day),
            places=tuple(_places(trip, day, ids)),
        )
        for day in days
    )
    return tuple(day for day in made if day.places or day.on_the_move)


def day_heading(trip: TripSums, day: int) -> str:
    """Name a day with its date; the spare day has none."""
    called = day_called(trip, day)
    if day > trip.last_day:
        return called
    on = trip.model.starts.fromordinal(trip.model.starts.toordinal() + day - 1)
    return trip_words.MENU_OF_DAY.format(day=called, date=short_date(on))


def _on_the_move(trip: TripSums, day: int) -> str:
    """Give the marks of the packs that are eaten from all day; tubs stand with their dishes."""
    packs = [pack.mark for pack in trip.packs if pack.meal is None and pack.day == day and not is_tub(pack)]
    return trip_words.ALL_DAY.format(marks=words.COMMA.join(packs)) if packs else ""


def _places(trip: TripSums, day: int, ids: dict[int, str]) -> Iterator[MenuPlace]:
    """Give the places of a day in order, and at each its dishes in the order in which they are begun."""
    meals = sorted((meal for meal in trip.meals if meal.day == day), key=lambda meal: first_move(meal, trip))
    for stop, group in groupby(meals, key=lambda meal: meal.stop):
        place = "" if stop is None else opened(stop_called(trip, stop))
        yield MenuPlace(place=place, lines=tuple(_line(trip, meal, ids[meal.number]) for meal in group))


def _line(trip: TripSums, meal: TripMeal, opening: str) -> MenuLine:
    known = clock_of(meal, trip)
    everybody = len(meal.eaters) == len(trip.eaters)
    return MenuLine(
        number=str(meal.number),
        dish=meal.plan.model.name,
        raw=any(part.component.raw for part in meal.plan.parts),
        opening=opening,
        begins=clock(first_move(meal, trip), meal.on),
        eaten=clock(meal.eat_at if known is None else known.eat_at, meal.on),
        who="" if everybody else FOR.format(names=words.COMMA.join(meal.eaters)),
    )
