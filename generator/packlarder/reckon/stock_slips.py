"""Slips in how the household keeps its larder: rules and levels for what nobody knows."""

from collections.abc import Iterator

from packlarder.book.book import HOUSEHOLD_FILE, Book, spoken
from packlarder.book.wording import closest
from packlarder.faults import Fault, Place, Spot
from packlarder.figures.kinds import Group, Kind

_KINDS = (*Kind, *(group for group in Group if group.value not in {kind.value for kind in Kind}))


def stock_slips(book: Book) -> Iterator[Fault]:
    """Find a level of an unknown component, and a keeping rule for what is neither component nor kind of food."""
    place = Place(file=HOUSEHOLD_FILE, path=("larder",))
    components = [one.name.lower() for one in book.components.values()]
    for name in book.household.larder.at_least:
        if not _is_component(book, name):
            help = f"{_meant(name, components)}components live in components/"
            at = place.at("at least", name, spot=Spot.KEY)
            yield Fault(place=at, code="unknown-component", message=f'no component is called "{name}"', help=help)
    for index, rule in enumerate(book.household.larder.keeping):
        if rule.what and spoken(rule.what) not in _KINDS and not _is_component(book, rule.what):
            message = f'no component, kind or group of food is called "{rule.what}"'
            help = f"{_meant(rule.what, [*components, *_KINDS])}leave `what` out for anything"
            yield Fault(place=place.at("keeping", index, "what"), code="unknown-food", message=message, help=help)


def _is_component(book: Book, name: str) -> bool:
    return book.component_id(name) is not None or book.has_unread_component(name)


def _meant(name: str, known: list[str]) -> str:
    close = closest(name, known)
    return f'did you mean "{close}"? ' if close else ""
