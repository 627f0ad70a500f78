"""What somebody says of a trip that came home: what was left, what was not taken, what was learnt of a dish."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from pydantic_core import PydanticCustomError

from packlarder.book.book import Book, spoken
from packlarder.book.draw import Mark, read_mark
from packlarder.book.part import Part, read_take
from packlarder.cli import texts
from packlarder.cli.hints import meant_or_known
from packlarder.cli.options import Misuse
from packlarder.faults import KeyPath
from packlarder.measure import Dimension, Unreadable, as_typed, as_weighed, parse
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.home import came_along
from packlarder.reckon.trip.records import TripSums

ARROWS = ("->", "→")


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftSaid:
    """What came home of a component: its weight as it was said, and why."""

    component: ComponentSums
    weight: str
    grams: float
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LearntSaid:
    """A part of a dish that is to be more or less: where its amount stands in the dish's file, and what it is to be."""

    dish: str
    name: str
    part: str
    path: KeyPath
    former: str
    new: str
    why: str

    @property
    def change(self) -> str:
        """Say the change as a dish's file tells of it."""
        return f"{self.part} {self.former} -> {self.new}"


def left_said(said: Iterable[str], trip: TripSums, book: Book) -> tuple[LeftSaid, ...]:
    """Understand `COMPONENT: 40 g, why`, each. Raises Misuse for what can not be."""
    known = came_along(trip)
    need = {fill.component.id: fill.need_g for fill in trip.stores.fills}
    found = []
    for one in said:
        name, colon, rest = _parted(one, ":")
        weight, _, why = _parted(rest, ",")
        if not colon or not weight:
            raise Misuse(texts.LEFT_LIKE.format(said=one))
        component = known.get(book.component_id(name) or "")
        if component is None:
            raise Misuse(_not_known("component", name, [each.model.name for each in known.values()], texts.NOT_ALONG))
        grams = _grams(weight)
        most = need.get(component.id, grams)
        if grams > most:
            too_much = texts.LEFT_TOO_MUCH.format(
                left=as_weighed(grams), name=component.model.name, most=as_weighed(most)
            )
            raise Misuse(as_typed(too_much))
        found.append(LeftSaid(component=component, weight=weight, grams=grams, why=why))
    return tuple(found)


def _grams(text: str) -> float:
    quantity = parse(text, Dimension.WEIGHT)
    if isinstance(quantity, Unreadable):
        raise Misuse(f"{quantity.message}; {quantity.help}.")
    return quantity.base


def marks_said(said: Iterable[str], trip: TripSums) -> frozenset[Mark]:
    """Understand the marks of what was not taken. Raises Misuse for one from which nothing was to be taken."""
    to_take = {drawn.mark for fill in trip.stores.fills for drawn in fill.drawn}
    found = set()
    for one in said:
        try:
            mark = read_mark(one)
        except PydanticCustomError as error:
            raise Misuse(f"{error.message()}.") from None
        if mark not in to_take:
            raise Misuse(texts.NOT_TO_TAKE.format(mark=mark))
        found.add(mark)
    return frozenset(found)


def learnt_said(said: Iterable[str], book: Book) -> tuple[LearntSaid, ...]:
    """Understand `DISH: PART: 150 g -> 120 g, why`, each. Raises Misuse for what can not be."""
    return tuple(_learnt(one, book) for one in said)


def _learnt(said: str, book: Book) -> LearntSaid:
    name, _, rest = _parted(said, ":")
    part_name, _, change = _parted(rest, ":")
    arrow = next((one for one in ARROWS if one in change), "")
    former, _, after = _parted(change, arrow) if arrow else ("", "", "")
    new, _, why = _parted(after, ",")
    if not (name and part_name and former and new):
        raise Misuse(texts.LEARNT_LIKE.format(said=said))
    dish = book.dish_ids.get(spoken(name))
    if dish is None or dish not in book.dishes:
        raise Misuse(_not_known("dish", name, [one.name for one in book.dishes.values()], texts.NO_DISH))
    index, part = _part(part_name, book.dishes[dish].parts, book)
    _same_amount(name, part, former, new)
    return LearntSaid(
        dish=dish,
        name=book.dishes[dish].name,
        part=part.called,
        path=("parts", index, part.name),
        former=former,
        new=new,
        why=why,
    )


def _part(name: str, parts: Sequence[Part], book: Book) -> tuple[int, Part]:
    """Find a part by what steps call it, or else by its component."""
    by_name = [(index, one) for index, one in enumerate(parts) if spoken(one.called) == spoken(name)]
    component = book.component_id(name)
    same = [(index, one) for index, one in enumerate(parts) if component and book.component_id(one.name) == component]
    found = by_name or same
    if len(found) == 1:
        return found[0]
    names = [one.called for one in parts]
    raise Misuse(
        texts.WHICH_PART.format(name=name, parts=", ".join(names))
        if found
        else _not_known("part", name, names, texts.NO_PART)
    )


def _same_amount(dish: str, part: Part, former: str, new: str) -> None:
    """Raise Misuse where the dish does not say what somebody believes it says, or the new amount is none."""
    try:
        believed, _ = read_take(former), read_take(new)
    except PydanticCustomError as error:
        raise Misuse(f"{error.message()}; {(error.context or {}).get('help', '')}.") from None
    if believed != part.detail.take:
        now = str(part.detail.take).replace("\u00a0", " ")
        raise Misuse(texts.OTHER_AMOUNT.format(dish=dish, part=part.called, now=now, former=former, new=new))


def _parted(text: str, sign: str) -> tuple[str, str, str]:
    """Part a text at the first of a sign, without blanks around the pieces."""
    before, found, after = text.partition(sign)
    return " ".join(before.split()), found, " ".join(after.split())


def _not_known(what: str, name: str, known: Sequence[str], says: str) -> str:
    return says.format(what=what, name=name, hint=meant_or_known(name, known))


def printable(said: Iterable[str]) -> None:
    """Raise Misuse for a text that no file can hold."""
    for text in said:
        if not text.isprintable():
            raise Misuse(texts.NOT_PRINTABLE.format(text=ascii(text)[1:-1]))
