"""From a dish as written to a plan: names resolved, amounts in grams, ways of water known, packs worked out."""

import re
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from packlarder.book.book import Book, dish_place
from packlarder.book.bring_back import Way
from packlarder.book.dish import Dish
from packlarder.book.household import Household
from packlarder.book.step import Verb
from packlarder.faults import Fault, Place, Severity, Spot
from packlarder.reckon.packs import plan_packs
from packlarder.reckon.parts import PartNames, plan_parts
from packlarder.reckon.plan_steps import plan_steps, unknown_pot
from packlarder.reckon.plan_waters import check_waters
from packlarder.reckon.records import ComponentSums, DishPlan, PlannedPart, PlannedStep

GIVES_WATER: Mapping[Verb, Way] = MappingProxyType(
    {Verb.SOAK: Way.SOAK, Verb.MIX: Way.MIX, Verb.MOISTEN: Way.MOISTEN, Verb.POUR_OVER: Way.POUR_OVER}
)
"""Verbs that give a part water of its own."""
MISNAMED = frozenset({"unknown-part", "part-twice"})
"""Slips after which nothing more can be said of a dish."""
FOLLOWS = frozenset({"not-packed", "packed-twice"})
"""What only follows from them."""
IN_POT = frozenset({Verb.BOIL, Verb.SIMMER, Verb.STIR_IN, Verb.WARM})
"""Verbs in which a part that is still dry takes its water in the pot."""


def plan_dish(
    book: Book, components: Mapping[str, ComponentSums], id: str
) -> tuple[DishPlan | None, tuple[Fault, ...]]:
    """Resolve everything of a dish that does not change with servings; None where it can not be understood."""
    dish, place = book.dishes[id], dish_place(id)
    faults: list[Fault] = []
    parts = plan_parts(book, components, dish, place, faults)
    if parts is None:
        return None, tuple(faults)
    names = PartNames(dish, parts)
    steps = plan_steps(dish, book.household, names, place, faults)
    ways = tuple([way_of(part, steps) for part in parts])
    packs = plan_packs(dish, names, steps, place, faults)
    if any(fault.code in MISNAMED for fault in faults):
        return None, tuple(fault for fault in faults if fault.code not in FOLLOWS)
    packed = {index for pack in packs for index in pack.all_parts}
    stove = _stove(dish, book.household, place, faults)
    wetted_in = _wetted_in(parts, steps)
    faults += check_waters(parts, steps, wetted_in, place)
    faults += _unused(parts, steps, place)
    plan = DishPlan(
        id=id,
        model=dish,
        parts=parts,
        steps=steps,
        packs=packs,
        loose=tuple([part.index for part in parts if part.index not in packed]),
        way_of=ways,
        wetted_in=wetted_in,
        stove_name=stove,
        stove=book.household.stoves[stove],
        pot_name=_pot(dish, book.household, place, faults),
        pots=MappingProxyType(book.household.pots),
    )
    return plan, tuple(faults)


def way_of(part: PlannedPart, steps: Sequence[PlannedStep]) -> Way | None:
    """Give the way of water that the steps give a part: the first of them that wets it decides."""
    for step in steps:
        if part.index not in step.parts or step.verb is None:
            continue
        if step.verb in GIVES_WATER:
            return GIVES_WATER[step.verb]
        if step.verb in IN_POT and part.component.water is not None:
            return Way.IN_THE_POT
    return None


def _wetted_in(parts: Sequence[PlannedPart], steps: Sequence[PlannedStep]) -> tuple[int | None, ...]:
    """Give for each part the first step that gives it water of its own."""
    first: dict[int, int] = {}
    for step in steps:
        if step.verb in GIVES_WATER:
            for part in step.parts:
                first.setdefault(part, step.index)
    return tuple([first.get(part.index) for part in parts])


def _stove(dish: Dish, household: Household, place: Place, faults: list[Fault]) -> str:
    wanted = dish.stove or household.usual_conditions.stove
    if wanted in household.stoves:
        return wanted
    if dish.stove:
        known = f"book.yaml knows: {', '.join(household.stoves)}"
        message = f'no stove is called "{wanted}"'
        faults.append(Fault(place=place.at("stove"), code="unknown-stove", message=message, help=known))
    return next(iter(household.stoves))


def _pot(dish: Dish, household: Household, place: Place, faults: list[Fault]) -> str:
    wanted = dish.pot or household.usual_conditions.pot
    if wanted in household.pots:
        return wanted
    if dish.pot:
        faults.append(unknown_pot(wanted, household, place.at("pot")))
    return next(iter(household.pots))


def _unused(parts: Sequence[PlannedPart], steps: Sequence[PlannedStep], place: Place) -> list[Fault]:
    used = {index for step in steps for index in step.parts}
    told = " ".join(step.sentence.lower() for step in steps)
    return [
        Fault(
            place=place.at("parts", part.index, spot=Spot.KEY),
            code="part-not-used",
            message=f"no step says what becomes of {part.called.lower()}",
            help="name it in a step, or take it out of the parts",
            severity=Severity.WARNING,
        )
        for part in parts
        if part.index not in used and not is_told(part, told)
    ]


def is_told(part: PlannedPart, told: str) -> bool:
    """Tell whether a sentence names a part: as words of their own, so that "boil it" names no oil."""
    names = {part.called.lower(), part.component.model.name.lower()}
    return any(re.search(rf"(?<!\w){re.escape(name)}(?!\w)", told) for name in names)
