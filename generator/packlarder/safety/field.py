"""Stove, heater, camp: what burns, what scalds, what cleans, who else is hungry."""

from collections.abc import Callable, Iterator

from packlarder.book.step import Verb
from packlarder.faults import Severity
from packlarder.figures.dryness import Drying
from packlarder.figures.fuels import COLD_CARTRIDGE, FUELS, WOOD
from packlarder.figures.kinds import Group
from packlarder.figures.stoves import WOOD_FIRE
from packlarder.figures.verbs import VERBS
from packlarder.safety.case import DishCase
from packlarder.safety.heat import groups_of
from packlarder.safety.hit import Hit
from packlarder.safety.limits import COOK_LONGER_ABOVE
from packlarder.safety.rule import DishRule, Shows

_DIRTIES = frozenset(Verb(word) for word, does in VERBS.items() if does.on_stove or does.gives_water)
_HOME_DRIED = frozenset({Drying.FREEZE_DRIED, Drying.AIR_DRIED})
_NO_SMELL = frozenset({Group.DRINK})


def carbon_monoxide(case: DishCase) -> Iterator[Hit]:
    """Keep flames out of tents, for dishes that want a stove."""
    if case.on_stove:
        yield case.here


def carbon_monoxide_signs(case: DishCase) -> Iterator[Hit]:
    """Say how carbon monoxide makes itself felt, for dishes that want a stove."""
    if case.on_stove:
        yield case.here


def embers(case: DishCase) -> Iterator[Hit]:
    """Keep embers out of tents, for dishes on a wood fire."""
    if case.on_stove and (case.plan.stove.fuel == WOOD.name or case.plan.stove.kind == WOOD_FIRE.name):
        yield case.here


def burns(case: DishCase) -> Iterator[Hit]:
    """Warn of scalds, for dishes with hot water or a stove."""
    if case.on_stove:
        yield case.here


def heater_hydrogen(case: DishCase) -> Iterator[Hit]:
    """Warn of the hydrogen and steam of ration heaters."""
    if case.heater_steps:
        yield Hit(places=tuple(case.step_place(step.index) for step in case.heater_steps))


def no_flying(case: DishCase) -> Iterator[Hit]:
    """Keep fuel and ration heaters out of aircraft, for dishes that want either."""
    if case.heater_steps or (case.on_stove and case.plan.stove.fuel != WOOD.name):
        yield case.here


def cold_cartridge(case: DishCase) -> Iterator[Hit]:
    """Say how a cold gas cartridge may be warmed."""
    fuel = FUELS.get(case.plan.stove.fuel)
    gas = fuel is not None and fuel.boils_at is not None
    if gas and case.air_c < COLD_CARTRIDGE.value and case.on_stove:
        yield case.here


def cooking_at_height(case: DishCase) -> Iterator[Hit]:
    """Ask to cook RAW longer where water boils cooler."""
    if case.raw and case.height_m > COOK_LONGER_ABOVE.value:
        yield case.here


def washing_up(case: DishCase) -> Iterator[Hit]:
    """Say where to wash up, for dishes that leave something to wash."""
    if not _DIRTIES.isdisjoint(case.verbs):
        yield case.here


def clean_hands(case: DishCase) -> Iterator[Hit]:
    """Ask for clean hands, for dishes with food on which germs grow."""
    if case.perishable:
        yield case.here


def animals(case: DishCase) -> Iterator[Hit]:
    """Keep food from animals, for dishes that smell of food."""
    if any(groups_of(part.component.kinds) != _NO_SMELL for part in case.plan.parts):
        yield case.here


def spoilt_packs(case: DishCase) -> Iterator[Hit]:
    """Say which packs are thrown away, for dishes with dried food."""
    if any(part.component.model.dried is not Drying.NOT_DRIED for part in case.plan.parts):
        yield case.here


def local_law(case: DishCase) -> Iterator[Hit]:
    """Defer to local codes, for dishes with home-dried food."""
    if any(part.component.model.dried in _HOME_DRIED for part in case.plan.parts):
        yield case.here


def _front(id: str, check: Callable[[DishCase], Iterator[Hit]], *facts: str) -> DishRule:
    return DishRule(id=id, severity=Severity.NOTE, facts=facts, shows=Shows.FRONT, check=check)


RULES = (
    DishRule(
        id="heater-hydrogen",
        severity=Severity.NOTE,
        facts=("T10-04", "T10-08", "T10-10"),
        shows=Shows.FIELD,
        check=heater_hydrogen,
    ),
    DishRule(
        id="cooking-at-height",
        severity=Severity.NOTE,
        facts=("T14-01", "T14-09"),
        shows=Shows.FIELD,
        check=cooking_at_height,
        of_raw=True,
    ),
    DishRule(id="cold-cartridge", severity=Severity.NOTE, facts=("T9-12",), check=cold_cartridge),
    _front("carbon-monoxide", carbon_monoxide, "T9-05", "T9-03", "T9-02"),
    _front("carbon-monoxide-signs", carbon_monoxide_signs, "T9-08"),
    _front("embers", embers, "T9-04", "T9-02"),
    _front("burns", burns, "T9-14"),
    _front("no-flying", no_flying, "T9-13", "T10-06"),
    _front("clean-hands", clean_hands, "T13-01", "T13-02"),
    _front("washing-up", washing_up, "T13-03", "T8-14"),
    _front("animals", animals, "T13-11", "T13-12"),
    _front("spoilt-packs", spoilt_packs, "T5-23", "T5-24", "T5-25"),
    _front("local-law", local_law, "T2-04", "T2-09"),
)
