"""The parts of a dish: names found, amounts in grams."""

from collections.abc import Mapping, Sequence
from difflib import get_close_matches

from packlarder.book.book import COMPONENTS_FOLDER, Book, spoken
from packlarder.book.dish import Dish
from packlarder.book.part import Part
from packlarder.faults import Fault, Gap, Place, Spot
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
        at = place.at("parts", index, part.name, spot=Spot.KEY)
        component = _component(book, components, part.name, at, faults)
        if component is None:
            continue
        grams = _grams(book, dish, part, component, place.at("parts", index, part.name), faults)
        if grams is None:
            continue
        instead = [
            _component(book, components, name, place.at("parts", index, part.name, "instead"), faults)
            for name in part.detail.instead
        ]
        found.append(
            PlannedPart(
                index=index,
                called=part.detail.called or component.model.name,
                component=component,
                dry_g=grams,
                fixed=part.detail.fixed,
                eaten_share=_eaten_share(part, component, grams) or 1.0,
                instead=tuple(one for one in instead if one is not None),
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


def unknown_part(name: str, parts: Sequence[PlannedPart], place: Place) -> Fault:
    """Say that a step or pack names something that is no part of the dish."""
    close = get_close_matches(name.lower(), [part.called.lower() for part in parts], n=1, cutoff=0.5)
    return Fault(
        place=place,
        code="unknown-part",
        message=f'"{name}" is not among the parts of this dish',
        help=f'did you mean "{close[0]}"?' if close else "add it under `parts`, with its amount",
    )


def _component(
    book: Book, components: Mapping[str, ComponentSums], name: str, place: Place, faults: list[Fault]
) -> ComponentSums | None:
    id = book.component_id(name)
    if id is None and book.has_unread_component(name):
        return None
    if id is None:
        known = [one.name.lower() for one in book.components.values()]
        close = get_close_matches(name.lower(), known, n=1, cutoff=0.5)
        hint = f'did you mean "{close[0]}"? ' if close else ""
        message = f'no component is called "{name}"'
        help = f"{hint}components live in {COMPONENTS_FOLDER}/"
        faults.append(Fault(place=place, code="unknown-component", message=message, help=help))
        return None
    return components.get(id)


def _grams(
    book: Book, dish: Dish, part: Part, component: ComponentSums, place: Place, faults: list[Fault]
) -> float | None:
    take = part.detail.take
    grams = dry_grams(take, component, book.household)
    if isinstance(grams, Gap):
        faults.append(
            Fault(place=place, code="no-weight-known", message=f"nobody knows {grams.what}", help=grams.missing)
        )
        return None
    total = grams * dish.serves if take.each else grams
    if total / dish.serves > IMPOSSIBLE_G:
        message = f"this comes to {total / dish.serves / 1000:,.0f} kg for each"
        faults.append(Fault(place=place, code="impossible-amount", message=message, help="is the unit right?"))
        return None
    wrong = _wrong_share(part, component, grams)
    if wrong is not None:
        faults.append(Fault(place=place.at("stays in"), code=wrong[0], message=wrong[1], help=wrong[2]))
        return None
    return total


def _wrong_share(part: Part, component: ComponentSums, grams: float) -> tuple[str, str, str] | None:
    """Say what can not be meant by what stays in: code, message, help; None where all is well."""
    share = _eaten_share(part, component, grams)
    if share is None:
        name, help = component.model.name.lower(), "write it in the unit of `take`"
        return "no-weight-known", f"nobody knows what share of the {name} stays in", help
    return ("more-stays-in", "more stays in than is taken", "swap the two amounts?") if share > 1 else None


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
