"""Slips in how the household keeps its larder: rules and levels for what nobody knows."""

from collections.abc import Iterator

from packlarder.book.book import HOUSEHOLD_FILE, Book, spoken
from packlarder.book.meant import did_you_mean
from packlarder.faults import Fault, Place
from packlarder.figures.kinds import Group, Kind
from packlarder.reckon.batch_slips import unknown_component

_KINDS = tuple(dict.fromkeys(one.value for one in (*Kind, *Group)))


def stock_slips(book: Book) -> Iterator[Fault]:
    """Find a level of an unknown component, and a keeping rule for what is neither component nor kind of food."""
    place = Place(file=HOUSEHOLD_FILE, path=("larder",))
    for name in book.household.larder.at_least:
        if not _is_component(book, name):
            yield unknown_component(book, name, place.at("at least", name))
    for index, rule in enumerate(book.household.larder.keeping):
        if rule.what and spoken(rule.what) not in _KINDS and not _is_component(book, rule.what):
            components = [one.name.lower() for one in book.components.values()]
            message = f'no component, kind or group of food is called "{rule.what}"'
            help = f"{did_you_mean(rule.what, [*components, *_KINDS])}leave `what` out for anything"
            yield Fault(place=place.at("keeping", index, "what"), code="unknown-food", message=message, help=help)


def _is_component(book: Book, name: str) -> bool:
    return book.component_id(name) is not None or book.has_unread_component(name)
