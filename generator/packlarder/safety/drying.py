"""At the dryer: what may not be air-dried raw, what freeze-drying does not do, what can not be lowered."""

from collections.abc import Iterator

from packlarder.faults import Severity
from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Group, HomeDrying, Kind, WentIn
from packlarder.safety.case import ComponentCase
from packlarder.safety.heat import groups_of
from packlarder.safety.hit import Hit
from packlarder.safety.rule import ComponentRule

_MEAT_OR_FISH = frozenset({Group.MEAT, Group.FISH})
_EGG_OR_MILK = frozenset({Group.EGG, Group.MILK})
_GAME = frozenset({Kind.GAME, Kind.GROUND_GAME, Kind.PORK_CUT})


def air_dried_raw_meat(case: ComponentCase) -> Iterator[Hit]:
    """Find raw meat or fish that was air-dried without the heat step."""
    if _air_dried(case) and _MEAT_OR_FISH & groups_of(case.raw_kinds) and not case.model.heat_step:
        yield case.hit("dried")


def air_dried_raw_egg_or_milk(case: ComponentCase) -> Iterator[Hit]:
    """Find egg or milk that went raw into a warm-air dryer."""
    if _air_dried(case) and _not_cooked(case) and _EGG_OR_MILK & case.groups:
        yield case.hit("dried")


def air_dried_egg_or_milk(case: ComponentCase) -> Iterator[Hit]:
    """Find cooked egg or boiled milk by itself in a warm-air dryer."""
    alone = case.groups <= _EGG_OR_MILK
    if _air_dried(case) and not _not_cooked(case) and alone:
        yield case.hit("dried")


def not_for_freeze_drying(case: ComponentCase) -> Iterator[Hit]:
    """Find food that is mostly fat or sugar in a freeze-dryer."""
    unsuited = all(kind.rules.freeze_dry is HomeDrying.NO for kind in case.sums.kinds)
    if case.model.dried is Drying.FREEZE_DRIED and unsuited:
        yield case.hit("dried")


def must_be_cooked_lowered(case: ComponentCase) -> Iterator[Hit]:
    """Find a household's `must be cooked` that asks for less than food and state do."""
    stated, computed = case.model.must_be_cooked, case.sums.must_be_cooked
    if stated is not None and stated is not computed:  # the sums count what was raised
        yield case.hit("must be cooked", stated=stated.value, computed=computed.value)


def freeze_dried_raw(case: ComponentCase) -> Iterator[Hit]:
    """Say of raw freeze-dried food that it is still raw."""
    if case.model.dried is Drying.FREEZE_DRIED and case.sums.raw:
        yield case.hit("dried")


def mix_holds_raw(case: ComponentCase) -> Iterator[Hit]:
    """Say of a mix that holds something RAW that all of it is."""
    if case.model.made_of and case.sums.raw:
        yield case.hit("made of")


def whole_meal_dried(case: ComponentCase) -> Iterator[Hit]:
    """Say what is not known of drying whole meals."""
    home_dried = case.model.dried in (Drying.FREEZE_DRIED, Drying.AIR_DRIED)
    if home_dried and len(case.model.made_of) > 1:
        yield case.hit("dried")


def game_and_worms(case: ComponentCase) -> Iterator[Hit]:
    """Say of game and pork that went in raw what freezing and drying do not do."""
    if _GAME & case.raw_kinds:
        yield case.hit("went in")


def _air_dried(case: ComponentCase) -> bool:
    return case.model.dried is Drying.AIR_DRIED


def _not_cooked(case: ComponentCase) -> bool:
    return case.model.went_in is not WentIn.COOKED


RULES = (
    ComponentRule(id="air-dried-raw-meat", severity=Severity.ERROR, facts=("T4-01", "T4-03"), check=air_dried_raw_meat),
    ComponentRule(
        id="air-dried-raw-egg-or-milk", severity=Severity.ERROR, facts=("T4-27",), check=air_dried_raw_egg_or_milk
    ),
    ComponentRule(id="air-dried-egg-or-milk", severity=Severity.WARNING, facts=("T4-27",), check=air_dried_egg_or_milk),
    ComponentRule(id="must-be-cooked-lowered", severity=Severity.ERROR, facts=("T3-02",), check=must_be_cooked_lowered),
    ComponentRule(id="not-for-freeze-drying", severity=Severity.WARNING, facts=("T4-26",), check=not_for_freeze_drying),
    ComponentRule(
        id="freeze-dried-raw", severity=Severity.NOTE, facts=("T3-01", "T3-03", "T3-04"), check=freeze_dried_raw
    ),
    ComponentRule(id="mix-holds-raw", severity=Severity.NOTE, facts=("T3-10",), check=mix_holds_raw),
    ComponentRule(id="game-and-worms", severity=Severity.NOTE, facts=("T4-06", "T4-07"), check=game_and_worms),
    ComponentRule(id="whole-meal-dried", severity=Severity.NOTE, facts=("T4-10",), check=whole_meal_dried),
)
