"""How hot a component must get inside, by the household's authority."""

from functools import cache

from packlarder.figures.kinds import Cooking, Doneness, Group, Kind, WentIn, doneness_of
from packlarder.figures.temperatures import Authority, CookingTemperature, cooking_temperature
from packlarder.reckon.records import ComponentSums


def raw_kinds(sums: ComponentSums) -> frozenset[Kind]:
    """Give the kinds in a component that are raw and must be cooked to be safe."""
    return _must_be_safe(sums.uncooked) if sums.raw else frozenset()


def rows_asked(sums: ComponentSums) -> frozenset[Doneness]:
    """Give the rows of the temperature table that a component is heated by.

    Raw food has rows of its own. What was cooked before it was dried is heated like leftovers if it is of an animal, or
    a whole meal; home-dried ham has its own row.
    """
    if sums.raw:
        return _raw_rows(sums.uncooked)
    whole_meal = len(sums.model.made_of) > 1 and sums.model.went_in is WentIn.COOKED
    return _cooked_rows(sums.kinds) | (_LEFTOVERS if whole_meal else frozenset())


def temperature_of(sums: ComponentSums, authority: Authority) -> CookingTemperature | None:
    """Give the highest temperature that a component's foods ask for, raw or cooked before; None if none is known."""
    return hottest(rows_asked(sums), authority)


@cache
def hottest(rows: frozenset[Doneness], authority: Authority) -> CookingTemperature | None:
    """Give the highest temperature that any of the rows asks for; None if there is no row."""
    found = (cooking_temperature(authority, row) for row in sorted(rows))
    return max(found, key=lambda one: one.temp_c, default=None)


@cache
def groups_of(kinds: frozenset[Kind]) -> frozenset[Group]:
    """Give the groups of kinds."""
    return frozenset(kind.rules.group for kind in kinds)


@cache
def perishable(kinds: frozenset[Kind]) -> bool:
    """Tell whether the two-hour limit holds for any of the kinds once it is wet."""
    return any(kind.rules.perishable for kind in kinds)


@cache
def _raw_rows(kinds: frozenset[Kind]) -> frozenset[Doneness]:
    found = (doneness_of(kind, cooked_before=False) for kind in _must_be_safe(kinds))
    return frozenset(row for row in found if row is not None)


@cache
def _cooked_rows(kinds: frozenset[Kind]) -> frozenset[Doneness]:
    found = (doneness_of(kind, cooked_before=True) for kind in _must_be_safe(kinds) if kind.rules.animal)
    return frozenset(row for row in found if row is not None)


@cache
def _must_be_safe(kinds: frozenset[Kind]) -> frozenset[Kind]:
    return frozenset(kind for kind in kinds if kind.rules.uncooked is Cooking.TO_BE_SAFE)


_LEFTOVERS = frozenset({Doneness.COOKED_BEFORE})
