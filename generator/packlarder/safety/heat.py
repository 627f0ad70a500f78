"""How hot a component must get inside, by the household's authority."""

from functools import cache

from packlarder.figures.kinds import Cooking, Doneness, Group, Kind, doneness_of
from packlarder.figures.temperatures import DEFAULT_AUTHORITY, Authority, CookingTemperature, cooking_temperature
from packlarder.reckon.records import ComponentSums


def authority_called(name: str) -> Authority:
    """Give the authority of that name; the default for a name that is none (the reader says so)."""
    return _AUTHORITIES.get(name.casefold(), DEFAULT_AUTHORITY)


def raw_kinds(sums: ComponentSums) -> frozenset[Kind]:
    """Give the kinds in a component that are raw and must be cooked to be safe.

    Of a mix it is not known which of its foods were cooked: all that could be raw count.
    """
    return _must_be_safe(sums.kinds) if sums.raw else frozenset()


def temperature_of(sums: ComponentSums, authority: str) -> CookingTemperature | None:
    """Give the highest temperature that a component's foods ask for, raw or cooked before; None if none is known."""
    return _highest(sums.kinds, sums.raw, authority_called(authority))


def least_c(sums: ComponentSums, authority: str) -> float | None:
    """Give the temperature that a component must reach inside to be safe, in °C; None if none is published."""
    found = temperature_of(sums, authority)
    return None if found is None else found.temp_c


@cache
def groups_of(kinds: frozenset[Kind]) -> frozenset[Group]:
    """Give the groups of kinds."""
    return frozenset(kind.rules.group for kind in kinds)


@cache
def perishable(kinds: frozenset[Kind]) -> bool:
    """Tell whether the two-hour limit holds for any of the kinds once it is wet."""
    return any(kind.rules.perishable for kind in kinds)


@cache
def doneness_in(kinds: frozenset[Kind], raw: bool) -> frozenset[Doneness]:  # noqa: FBT001 - a cached function takes its arguments by place
    """Give the rows of the temperature table for the kinds of a component, raw or cooked before."""
    if raw:
        kinds = _must_be_safe(kinds)
    found = (doneness_of(kind, cooked_before=not raw) for kind in kinds)
    return frozenset(one for one in found if one is not None)


@cache
def _highest(kinds: frozenset[Kind], raw: bool, authority: Authority) -> CookingTemperature | None:  # noqa: FBT001 - as above
    found = (cooking_temperature(authority, one) for one in doneness_in(kinds, raw))
    return max(found, key=lambda one: one.temp_c, default=None)


@cache
def _must_be_safe(kinds: frozenset[Kind]) -> frozenset[Kind]:
    return frozenset(kind for kind in kinds if kind.rules.uncooked is Cooking.TO_BE_SAFE)


_AUTHORITIES = {one.casefold(): one for one in Authority}
