"""The parts of a dish: names found, amounts in grams."""

from collections.abc import Iterable, Mapping, Sequence
from difflib import get_close_matches
from typing import NamedTuple

from packlarder.book.book import COMPONENTS_FOLDER, Book, spoken
from packlarder.book.dish import Dish
from packlarder.book.part import Part
from packlarder.faults import Fault, Gap, Key, Place, Spot
from packlarder.measure import Dimension
from packlarder.reckon.amounts import dry_grams
from packlarder.reckon.measures import in_grams
from packlarder.reckon.records import ComponentSums, PlannedPart

IMPOSSIBLE_G = 20_000
"""No part of a household's dish weighs as much for one."""


def plan_parts(
    book: Book, components: Mapping[str, ComponentSums], dish: Dish, place: Place, faults: list[Fault]
) -> tuple[PlannedPart, ...] | None:
    """Resolve the parts of a dish; None where one of them has no component or no weight. Adds to `faults`."""
    found: list[PlannedPart] = []
    for index, part in enumerate(dish.parts):
        component = _component(book, components, part.name)
        if component is None:
            faults += _unknown_component(book, part.name, place.at("parts", index, part.name, spot=Spot.KEY))
            continue
        grams = _grams(book, dish, part, component)
        if isinstance(grams, _Slip):
            at = place.at("parts", index, part.name, *grams.keys)
            faults.append(Fault(place=at, code=grams.code, message=grams.message, help=grams.help))
            continue
        found.append(
            PlannedPart(
                index=index,
                called=part.detail.called or component.model.name,
                component=component,
                dry_g=grams,
                fixed=part.detail.fixed,
                eaten_share=_eaten_share(part, component, grams) or 1.0,
                instead=_instead(book, components, index, part, place, faults) if part.detail.instead else (),
            )
        )
    faults += _called_twice(dish, found, place)
    return tuple(found) if len(found) == len(dish.parts) else None


class PartNames:
    """How the steps and packs of a dish speak of its parts: by a part's own name, by its component's name or id."""

    def __init__(self, dish: Dish, parts: Sequence[PlannedPart]) -> None:
        """Take in all names; where two parts claim one, the more particular wins, then the first."""
        self.parts = parts
        self._indexes: dict[str, int] = {}
        by_own = [(part.called, part.index) for part in parts]
        by_component = [(name, part.index) for part in parts for name in (part.component.model.name, part.component.id)]
        as_written = [(part.name, index) for index, part in enumerate(dish.parts)]
        for name, index in (*by_own, *by_component, *as_written):
            self._indexes.setdefault(spoken(name), index)

    def find(self, name: str) -> int | None:
        """Find the part that is meant, None if it is none of them."""
        return self._indexes.get(spoken(name))

    def find_each(
        self, names: Iterable[tuple[int, str]], place: Place, keys: tuple[Key, ...], faults: list[Fault]
    ) -> tuple[int, ...]:
        """Find the parts that a step or pack names, each with its position below `keys`. Adds to `faults`."""
        found: list[int] = []
        for position, name in names:
            index = self.find(name)
            if index is None:
                faults.append(_unknown_part(name, self.parts, place.at(*keys, position)))
            else:
                found.append(index)
        return tuple(found)


class _Slip(NamedTuple):
    """What is wrong with the amount of a part; `keys` lead from the part to it."""

    code: str
    message: str
    help: str
    keys: tuple[str, ...] = ()


def _unknown_part(name: str, parts: Sequence[PlannedPart], place: Place) -> Fault:
    """Say that a step or pack names something that is no part of the dish."""
    close = get_close_matches(name.lower(), [part.called.lower() for part in parts], n=1, cutoff=0.5)
    return Fault(
        place=place,
        code="unknown-part",
        message=f'"{name}" is not among the parts of this dish',
        help=f'did you mean "{close[0]}"?' if close else "add it under `parts`, with its amount",
    )


def _component(book: Book, components: Mapping[str, ComponentSums], name: str) -> ComponentSums | None:
    """Give the component that is called so, None where there is none, or none that could be worked out."""
    id = book.component_id(name)
    return None if id is None else components.get(id)


def _unknown_component(book: Book, name: str, place: Place) -> list[Fault]:
    """Say that no component is called so; nothing of one that could not be read or worked out: that is told of it."""
    if book.component_id(name) is not None or book.has_unread_component(name):
        return []
    known = [one.name.lower() for one in book.components.values()]
    close = get_close_matches(name.lower(), known, n=1, cutoff=0.5)
    hint = f'did you mean "{close[0]}"? ' if close else ""
    message = f'no component is called "{name}"'
    help = f"{hint}components live in {COMPONENTS_FOLDER}/"
    return [Fault(place=place, code="unknown-component", message=message, help=help)]


def _instead(
    book: Book, components: Mapping[str, ComponentSums], index: int, part: Part, place: Place, faults: list[Fault]
) -> tuple[ComponentSums, ...]:
    """Find what may stand in for a part. Adds to `faults`."""
    found: list[ComponentSums] = []
    for name in part.detail.instead:
        component = _component(book, components, name)
        if component is None:
            faults += _unknown_component(book, name, place.at("parts", index, part.name, "instead"))
        else:
            found.append(component)
    return tuple(found)


def _grams(book: Book, dish: Dish, part: Part, component: ComponentSums) -> float | _Slip:
    """Give the dry grams of a part for all the servings that a dish is written for, or what is wrong with them."""
    take = part.detail.take
    grams = dry_grams(take, component, book.household)
    if isinstance(grams, Gap):
        return _Slip("no-weight-known", f"nobody knows {grams.what}", grams.missing)
    total = grams * dish.serves if take.each else grams
    if total / dish.serves > IMPOSSIBLE_G:
        message = f"this comes to {total / dish.serves / 1000:,.0f} kg for each"
        return _Slip("impossible-amount", message, "is the unit right?")
    return _wrong_share(part, component, grams) or total


def _wrong_share(part: Part, component: ComponentSums, grams: float) -> _Slip | None:
    """Say what can not be meant by what stays in, None where all is well."""
    share = _eaten_share(part, component, grams)
    if share is None:
        message = f"nobody knows what share of the {component.model.name.lower()} stays in"
        return _Slip("no-weight-known", message, "write it in the unit of `take`", ("stays in",))
    if share > 1:
        return _Slip("more-stays-in", "more stays in than is taken", "swap the two amounts?", ("stays in",))
    return None


def _eaten_share(part: Part, component: ComponentSums, grams: float) -> float | None:
    """Give what share of a part is eaten: all, or what stays in of oil to fry in; None where no weight tells."""
    stays, take = part.detail.stays_in, part.detail.take
    if stays is None:
        return 1.0
    if stays.dimension is take.quantity.dimension is not Dimension.COUNT:
        return stays.base / take.quantity.base
    stays_g = in_grams(stays, component.grams_per)
    return None if stays_g is None else stays_g / grams


def _called_twice(dish: Dish, parts: Sequence[PlannedPart], place: Place) -> list[Fault]:
    """Find parts of one name, however the author wrote it: by name or by id."""
    seen: dict[str, int] = {}
    faults: list[Fault] = []
    for part in parts:
        first = seen.setdefault(spoken(part.called), part.index)
        if first != part.index:
            faults.append(
                Fault(
                    place=place.at("parts", part.index, dish.parts[part.index].name, spot=Spot.KEY),
                    code="part-twice",
                    message=f'two parts are called "{part.called}", so steps and packs can not tell them apart',
                    help="give one a name of its own: `{take: 20 g, called: topping}`",
                    also=(place.at("parts", first, dish.parts[first].name, spot=Spot.KEY),),
                )
            )
    return faults
