"""Dishes of one sitting on one flame: in which order they are cooked, and how long each then stands ready.

Time is counted in whole minutes backwards from the meal, so that a set of minutes is one number: its bit 0 is the last
minute before people eat.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import permutations
from typing import NamedTuple

ALL_ORDERS_UP_TO = 5
"""Of more dishes than this only one order is tried: the longest soak is begun first, and drinks are made last."""


class Burning(NamedTuple):
    """A dish as the flame sees it: its minutes in all, what of them is soaking, and those in which it has the flame.

    Bit 0 of `flame` is its last minute, before it is ready. `drink` says that it is drunk, and gets cold first of all.
    """

    minutes: int
    soak_min: int
    flame: int
    drink: bool = False


class Turn(NamedTuple):
    """When a dish has its turn: how long it stands ready, and which dish (by its place) had the flame before it."""

    waits_min: int
    after: int | None


def flame_minutes(minutes: int, spans: Sequence[tuple[int, int]]) -> int:
    """Give the minutes on the flame as bits, from spans that are counted from a dish's start."""
    flame = 0
    for start, end in spans:
        flame |= ((1 << (end - start)) - 1) << (minutes - end)
    return flame


def turns(dishes: Sequence[Burning], burners: int) -> tuple[Turn, ...]:
    """Share the flame: hot drinks are made last, then least stands ready, then all begins as late as it can.

    While the flame is free because food soaks, another dish may have it.
    """
    cooked = [at for at, dish in enumerate(dishes) if dish.flame]
    if len(cooked) <= burners:
        return (Turn(0, None),) * len(dishes)
    tried = [_placed(dishes, order, burners) for order in _orders(dishes, cooked)]
    shifts = min(tried, key=lambda shifts: _trouble(dishes, shifts))
    waits = [shifts.get(at, 0) for at in range(len(dishes))]
    return tuple([Turn(waits[at], _before(dishes, waits, at)) for at in range(len(dishes))])


def _orders(dishes: Sequence[Burning], cooked: Sequence[int]) -> Iterator[tuple[int, ...]]:
    """Give the orders to try, each from the dish that is ready last back to the first."""
    if len(cooked) <= ALL_ORDERS_UP_TO:
        yield from permutations(reversed(cooked))
    else:
        yield tuple(sorted(cooked, key=lambda at: (not dishes[at].drink, dishes[at].soak_min, -at)))


def _placed(dishes: Sequence[Burning], order: Sequence[int], burners: int) -> dict[int, int]:
    """Place dishes one after another, each as late as the flame allows; give by how much each comes early."""
    taken = [0] * burners  # taken[n] has the minutes in which more than n burners are in use
    shifts: dict[int, int] = {}
    for at in order:
        flame = dishes[at].flame
        shift = 0
        while taken[-1] & flame << shift:
            shift += 1
        shifts[at] = shift
        for level in range(burners - 1, 0, -1):
            taken[level] |= taken[level - 1] & flame << shift
        taken[0] |= flame << shift
    return shifts


def _trouble(dishes: Sequence[Burning], shifts: Mapping[int, int]) -> tuple[int, int, int]:
    """Weigh an order: how long drinks and then all dishes stand ready, and how long before the meal it begins."""
    drinks = sum(shift for at, shift in shifts.items() if dishes[at].drink)
    begins = max(dishes[at].minutes + shift for at, shift in shifts.items())
    return drinks, sum(shifts.values()), begins


def _before(dishes: Sequence[Burning], waits: Sequence[int], at: int) -> int | None:
    """Give the dish that gave the flame up last before a dish first gets it; None for the first one."""
    first = (dishes[at].flame << waits[at]).bit_length()
    gave_up: dict[int, int] = {}
    for other, dish in enumerate(dishes):
        since = (dish.flame << waits[other]) >> (first - 1) if first else 0  # bit 0: still on the flame beside it
        if other != at and since and not since & 1:
            gave_up[other] = (since & -since).bit_length()
    return min(gave_up, key=gave_up.__getitem__, default=None)
