"""Slips in a trip: dishes, people, stoves and pots that there are not, meals out of order, people on two trips."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from packlarder.book.book import DISHES_FOLDER, Book, spoken
from packlarder.book.meant import did_you_mean
from packlarder.book.stop import Fills, Stop, WaterTreatment
from packlarder.book.trip import Trip
from packlarder.faults import Fault, Place, Severity, Spot
from packlarder.reckon.batch_slips import unknown_component


def unknown_dish(book: Book, name: str, place: Place) -> list[Fault]:
    """Say that no dish is called so; nothing of one whose file could not be read: that is told there."""
    if spoken(name) in book.unread_dishes:
        return []
    hint = did_you_mean(name, [one.name.lower() for one in book.dishes.values()])
    message = f'no dish is called "{name}"'
    return [Fault(place=place, code="unknown-dish", message=message, help=f"{hint}dishes live in {DISHES_FOLDER}/")]


def unknown_person(name: str, trip: Trip, place: Place) -> Fault:
    """Say that nobody who comes along is called so."""
    known = [person.name for person in trip.people]
    message = f'nobody on this trip is called "{name}"'
    return Fault(
        place=place, code="unknown-person", message=message, help=f"{did_you_mean(name, known)}{_along(known)}"
    )


def unknown_kit(what: str, name: str, known: Iterable[str], place: Place) -> Fault:
    """Say that the household has no such stove or pot."""
    names = list(known)
    message = f'no {what} is called "{name}"'
    help = f"{did_you_mean(name, names)}book.yaml knows: {', '.join(names)}"
    return Fault(place=place, code=f"unknown-{what}", message=message, help=help)


def nothing_to_cook_on(dish: str, trip: Trip, place: Place) -> list[Fault]:
    """Say that no stove, or no pot, comes along for a dish that wants one; nothing where both do."""
    return _no_heat(
        f"nothing to cook it on: {dish} wants a flame or hot water",
        "take a dish that wants neither",
        trip,
        place,
    )


def nothing_to_heat_water_on(stop: Stop, trip: Trip, place: Place) -> list[Fault]:
    """Say that no stove, or no pot, comes along where the water of a stop is boiled or melted."""
    if stop.fills is Fills.SNOW:
        return _no_heat(f"snow is melted at {stop.place}", "carry water there", trip, place.at("fills"))
    if stop.treatment is WaterTreatment.BOILING:
        other = "treat it in another way"
        return _no_heat(f"water is boiled at {stop.place}", other, trip, place.at("treated by"))
    return []


def _no_heat(what: str, otherwise: str, trip: Trip, place: Place) -> list[Fault]:
    lacks = "stove" if not trip.stoves else "pot" if not trip.pots else ""
    if not lacks:
        return []
    message = f"{what}, and no {lacks} comes along"
    help = f"name one of yours under `{lacks}s:`, or {otherwise}"
    return [Fault(place=place, code=f"no-{lacks}", message=message, help=help)]


def left_at_home(what: str, name: str, dish: str, along: Iterable[str], key: str, place: Place) -> Fault:
    """Say that a dish wants a stove or a pot that does not come along."""
    return Fault(
        place=place,
        code=f"{what}-at-home",
        message=f'{dish} wants the {what} "{name}", which does not come along',
        help=f"add it to `{key}`, or name another with `{what}:` in this line; along are: {', '.join(along)}",
    )


def unknown_components(book: Book, trip: Trip, place: Place) -> Iterator[Fault]:
    """Say which components that are bought on the way, or came home, there are not."""
    shops = (
        (name, place.at("stops", index, "to buy")) for index, stop in enumerate(trip.stops) for name in stop.to_buy
    )
    home = trip.came_home.left if trip.came_home else ()
    left = ((one.name, place.at("came home", "left", index, one.name, spot=Spot.KEY)) for index, one in enumerate(home))
    for name, at in (*shops, *left):
        if book.component_id(name) is None and not book.has_unread_component(name):
            yield unknown_component(book, name, at)


def comes_after(place: Place, day: int, next_place: str, next_day: int) -> Fault:
    """Say that the meals of a stop reach beyond the day on which the next one is reached."""
    return Fault(
        place=place,
        code="out-of-order",
        message=f"this meal falls on day {day}, and {next_place} is reached on day {next_day}",
        help="a breakfast after a supper is the next morning's: order the meals, or move the next stop's `day`",
    )


def comes_before(place: Place, meal: str, day: int, above: str) -> Fault:
    """Say that a meal lies before one that was eaten at the stop above."""
    return Fault(
        place=place,
        code="out-of-order",
        message=f"this {meal} comes before the last meal at {above}, which is on day {day}",
        help="move this stop's `day`, or the meal to the stop where it is eaten",
    )


def nobody_eats(place: Place) -> Fault:
    """Say that a dish is for people who eat nothing."""
    return Fault(
        place=place,
        code="nobody-eats",
        message="nobody who has any appetite eats this: it is left out",
        help="say `for:` whom it is, or take the line out",
        severity=Severity.WARNING,
    )


def cooked_on_the_move(name: str, place: Place) -> Fault:
    """Say that food must be cooked and is eaten from the bag."""
    return Fault(
        place=place,
        code="not-ready",
        message=f"{name} must be cooked, and is eaten from the bag here",
        help="take something that is ready to eat, or make it a meal at a stop",
    )


def dry_from_the_bag(name: str, place: Place) -> Fault:
    """Say that food wants water before it is eaten, and is eaten from the bag."""
    return Fault(
        place=place,
        code="not-ready",
        message=f"{name} wants water, and is eaten dry from the bag here",
        help="make it a meal at a stop, or take something that is ready to eat",
        severity=Severity.WARNING,
    )


def not_weighed(what: str, missing: str, place: Place) -> Fault:
    """Say that an amount can not be turned into grams."""
    return Fault(place=place, code="not-convertible", message=f"{what} is not known", help=missing)


def overlaps(place: Place, other: Trip, other_place: Place, people: Sequence[str], last: date) -> Fault:
    """Say that people are still on another trip, until a day, when this one starts."""
    are = "is" if len(people) == 1 else "are"
    return Fault(
        place=place.at("starts"),
        code="trips-overlap",
        message=f"{', '.join(people)} {are} on another trip until {last.isoformat()}: {other.name}",
        help=f"move one of them, take them out of one, or write `stands: gone` in {other_place.file}",
        severity=Severity.WARNING,
    )


def _along(known: Iterable[str]) -> str:
    return f"along are: {', '.join(known)}"
