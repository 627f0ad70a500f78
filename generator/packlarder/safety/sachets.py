"""Oxygen absorbers and desiccants: out before the water goes in, and not with oily food."""

from collections.abc import Iterator

from packlarder.faults import Severity
from packlarder.figures.kinds import Group, Kind
from packlarder.reckon.records import ComponentSums
from packlarder.safety.case import ComponentCase, DishCase, listed
from packlarder.safety.heat import groups_of
from packlarder.safety.hit import Hit
from packlarder.safety.limits import OILY_ABOVE
from packlarder.safety.rule import ComponentRule, DishRule, Rule, Shows

_OILY = frozenset({Group.EGG, Group.NUT, Group.FAT})


def sachet_in_jar(case: ComponentCase) -> Iterator[Hit]:
    """Find a sachet in a component's container."""
    if case.model.sachet:
        yield case.hit("sachet")


def sachet_with_oily_food(case: ComponentCase) -> Iterator[Hit]:
    """Find a sachet with food that does not keep in an oxygen-free pack."""
    if case.model.sachet and oily(case.sums):
        yield case.hit("sachet")


def oily(sums: ComponentSums) -> bool:
    """Tell whether a component holds too much fat for a pack without oxygen: by its figure, or by what is in it."""
    fat = sums.nutrients.fat_g
    too_fat = fat is not None and fat > OILY_ABOVE.value
    return too_fat or Kind.CHEESE in sums.kinds or bool(_OILY & groups_of(sums.kinds))


def sachet_in_pack(case: DishCase) -> Iterator[Hit]:
    """Find sachets that travel in a pack, or come along from a component's container."""
    packs = [pack for pack in case.packs() if pack.sachet]
    parts = [part for part in case.plan.parts if part.component.model.sachet]
    if packs or parts:
        names = (*(f"pack {pack.number}" for pack in packs), *(part.called for part in parts))
        places = (*map(case.pack_place, packs), *map(case.part_place, parts))
        yield Hit(places=places, words={"where": listed(names)})


RULES: tuple[Rule, ...] = (
    DishRule(id="sachet-in-pack", severity=Severity.NOTE, facts=("T5-08",), shows=Shows.FIELD, check=sachet_in_pack),
    ComponentRule(id="sachet-in-jar", severity=Severity.NOTE, facts=("T5-08",), shows=Shows.FIELD, check=sachet_in_jar),
    ComponentRule(
        id="sachet-with-oily-food", severity=Severity.NOTE, facts=("T5-08", "T5-09"), check=sachet_with_oily_food
    ),
)
