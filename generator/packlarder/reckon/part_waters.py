"""The waters of the parts of a dish: offered, absorbed, drained, by the way that its steps give water.

What a gram of each part gets is settled once; for a number of servings it is multiplied, column by column.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from packlarder.book.bring_back import Way
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import DishPlan, PartSums, WaterPerGram, Yielded


class PartWaters(NamedTuple):
    """The parts' weights and waters for a number of servings; item i of every column is of part i.

    `absorbed_ml` is what a part takes up of its own water, None for those that go into the pot; `wanted_ml` is that, or
    what it takes up in the pot if there is enough, None where nobody has measured it.
    """

    dry_g: list[float]
    offered_ml: list[float]
    absorbed_ml: list[float | None]
    wanted_ml: list[float | None]
    drained_ml: list[float]


class Named(NamedTuple):
    """The water that a step names for all the parts it wets first, and what a gram of each would ask for by itself."""

    given_ml: float
    wetted: tuple[int, ...]
    asks: tuple[float, ...]


class PartRates(NamedTuple):
    """What of the parts does not hang on servings; item i of a column is of part i, all waters are for one dry gram.

    `written` has the dry grams as the dish is written, and whether they are fixed. `soaked` are the parts that may
    leave water to be drained, with what they take; `in_pot` those that go into the pot, with what they take up there,
    None where nobody has measured that.
    """

    written: tuple[tuple[float, bool], ...]
    ways: tuple[Way | None, ...]
    fresh: tuple[float | None, ...]
    offers: tuple[float, ...]
    soaked: tuple[tuple[int, float], ...]
    in_pot: tuple[tuple[int, float | None], ...]
    named: tuple[Named, ...]


def part_waters(rates: PartRates, scale: float) -> PartWaters:
    """Work out every part of a dish whose servings are `scale` times those it is written for."""
    dry = [dry_g if fixed else dry_g * scale for dry_g, fixed in rates.written]
    offered = [poured_ml(offers * dry_g) if offers else 0.0 for offers, dry_g in zip(rates.offers, dry, strict=True)]
    for named in rates.named:
        _share(named, dry, offered, scale)
    drained = [0.0] * len(dry)
    for index, takes in rates.soaked:
        drained[index] = float(max(0, round(offered[index] - takes * dry[index])))
    absorbed: list[float | None] = [gets - leaves for gets, leaves in zip(offered, drained, strict=True)]
    wanted = absorbed.copy()
    for index, takes_up in rates.in_pot:
        offered[index] = 0.0  # water that a later step names for it is not its own
        absorbed[index] = None
        wanted[index] = None if takes_up is None else takes_up * dry[index]
    return PartWaters(dry, offered, absorbed, wanted, drained)


def part_sums(rates: PartRates, waters: PartWaters, absorbed_ml: Sequence[float | None]) -> tuple[PartSums, ...]:
    """Put the columns together; what a part really took up in the pot is known when the water was followed."""
    dry = waters.dry_g
    fresh = [None if for_one is None else dry_g * for_one for for_one, dry_g in zip(rates.fresh, dry, strict=True)]
    columns = zip(dry, fresh, rates.ways, waters.offered_ml, absorbed_ml, waters.drained_ml, strict=True)
    return tuple(map(PartSums._make, columns))


def poured_ml(water_ml: float) -> float:
    """Round a water to what a cook pours: whole mL below 15, 5 mL below 100, else 10 mL; never to nothing.

    All sums go on with what is poured, so that every printed water is the one that was counted.
    """
    step = 1 if water_ml < 15 else 5 if water_ml < 100 else 10
    return math.floor(water_ml / step + 0.5) * step or (float(step) if water_ml > 0 else 0.0)


def _share(named: Named, dry: Sequence[float], offered: list[float], scale: float) -> None:
    """Share out the water that a step names for all its parts: whole mL that add up to what is poured.

    By what each would be offered or take up by itself; by dry weight where none of them has a water of its own.
    """
    asked = [dry[index] * asks for index, asks in zip(named.wetted, named.asks, strict=True)]
    weights = asked if any(asked) else [dry[index] for index in named.wetted]
    for index, share in zip(named.wetted, share_out(poured_ml(named.given_ml * scale), weights), strict=True):
        offered[index] = share


def part_rates(plan: DishPlan) -> PartRates:
    """Work out once what a gram of each part gets and takes."""
    named = _named(plan)
    shared = {index for one in named for index in one.wetted}
    ways = plan.way_of
    waters = [part.component.water for part in plan.parts]
    taken = [_soaked_up(water, named=at in shared) for at, water in enumerate(waters)]
    return PartRates(
        written=tuple([(part.dry_g, part.fixed) for part in plan.parts]),
        ways=ways,
        fresh=tuple([_fresh_g(part.component.yielded) for part in plan.parts]),
        offers=tuple(
            [
                0.0 if at in shared or water is None else _offered(water, way)
                for at, (water, way) in enumerate(zip(waters, ways, strict=True))
            ]
        ),
        soaked=tuple([(at, takes) for at, takes in enumerate(taken) if ways[at] is Way.SOAK and takes is not None]),
        in_pot=tuple([(at, _taken_in_pot(waters[at])) for at, way in enumerate(ways) if way is Way.IN_THE_POT]),
        named=named,
    )


def _named(plan: DishPlan) -> tuple[Named, ...]:
    steps: list[Named] = []
    for step in plan.steps:
        wetted = plan.wetted_by(step)
        if step.given_ml is not None and wetted:
            asks = tuple([_asks(plan.parts[index].component.water) for index in wetted])
            steps.append(Named(given_ml=step.given_ml, wetted=wetted, asks=asks))
    return tuple(steps)


def _asks(water: WaterPerGram | None) -> float:
    return 0.0 if water is None else water.offered_ml or water.takes_ml or 0.0


def _fresh_g(made: Yielded | None) -> float | None:
    return made.fresh_g if made is not None and made.lost_ml > 0 else None


def _taken_in_pot(water: WaterPerGram | None) -> float | None:
    """Give what a part takes up in the pot; a powder that is mixed with water elsewhere only dissolves in it."""
    if water is None or water.takes_ml is None:
        return None
    return 0.0 if water.way is Way.MIX else water.takes_ml


def _offered(water: WaterPerGram, way: Way | None) -> float:
    """Take the component's own water; where the dish gives water another way, it gets what it takes up."""
    if way is None or way is Way.IN_THE_POT:
        return 0.0
    takes = water.offered_ml if water.takes_ml is None else water.takes_ml
    same_way = way in (Way.SOAK, water.way) or (way is not Way.MOISTEN and water.way is not Way.SOAK)
    return (water.offered_ml or takes) if same_way else takes


def _soaked_up(water: WaterPerGram | None, *, named: bool) -> float | None:
    """Give what a part takes up in a soak, None where it is all that it gets.

    Of its own water never more than it is offered; of water that the step names, whatever that leaves.
    """
    if water is None or named:
        return None if water is None else water.takes_ml
    takes = water.offered_ml if water.takes_ml is None else water.takes_ml
    return min(takes, water.offered_ml or takes)
