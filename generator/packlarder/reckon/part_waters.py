"""The waters of the parts of a dish: offered, absorbed, drained, by the way that its steps give water."""

from collections.abc import Sequence

from packlarder.book.bring_back import Way
from packlarder.measure import rounded
from packlarder.reckon.kitchen import share_out
from packlarder.reckon.records import DishPlan, PartSums, PlannedPart, WaterPerGram


def part_sums(plan: DishPlan, scale: float) -> tuple[PartSums, ...]:
    """Work out every part of a dish whose servings are `scale` times those it is written for."""
    dry = [part.dry_g if part.fixed else part.dry_g * scale for part in plan.parts]
    given = _given(plan, dry, scale)
    return tuple([_one(plan, part, dry[part.index], given.get(part.index)) for part in plan.parts])


def poured_ml(water_ml: float) -> float:
    """Round a water to what a cook pours: whole mL below 15, 5 mL below 100, else 10 mL; never to nothing.

    All sums go on with what is poured, so that every printed water is the one that was counted.
    """
    step = 1 if water_ml < 15 else 5 if water_ml < 100 else 10
    return rounded(water_ml, step) or (float(step) if water_ml > 0 else 0.0)


def _given(plan: DishPlan, dry: Sequence[float], scale: float) -> dict[int, int]:
    """Share out the water that a step names for all its parts: whole mL that add up to what is poured.

    By what each would be offered or take up by itself; by dry weight where none of them has a water of its own.
    """
    shares: dict[int, int] = {}
    for step in plan.steps:
        if step.given_ml is None:
            continue
        wetted = [index for index in step.parts if plan.wetted_in[index] == step.index]
        own = [dry[index] * _wanted(plan.parts[index].component.water) for index in wetted]
        weights = own if any(own) else [dry[index] for index in wetted]
        if wetted:
            shares.update(zip(wetted, share_out(poured_ml(step.given_ml * scale), weights), strict=True))
    return shares


def _wanted(water: WaterPerGram | None) -> float:
    return 0.0 if water is None else water.offered_ml or water.takes_ml or 0.0


def _one(plan: DishPlan, part: PlannedPart, dry_g: float, given_ml: int | None) -> PartSums:
    made = part.component.yielded
    way = plan.way_of[part.index]
    exact, takes = _waters(part.component.water, way, dry_g, given_ml)
    offered = poured_ml(exact) if given_ml is None else exact
    drained = float(max(0, round(offered - takes))) if way is Way.SOAK and takes is not None else 0.0
    absorbed = takes if way is Way.IN_THE_POT else offered - drained
    return PartSums(
        dry_g=dry_g,
        fresh_g=dry_g * made.fresh_g if made is not None and made.lost_ml > 0 else None,
        way=way,
        offered_ml=offered,
        absorbed_ml=absorbed,
        drained_ml=drained,
    )


def _waters(
    water: WaterPerGram | None, way: Way | None, dry_g: float, given_ml: int | None
) -> tuple[float, float | None]:
    """Give offered and absorbed; absorbed is None where nobody has measured what the part takes up in the pot."""
    if way is None:
        return 0.0, 0.0
    if way is Way.IN_THE_POT:
        return 0.0, _taken_in_pot(water, dry_g)
    if given_ml is not None:
        takes = given_ml if water is None or water.takes_ml is None else water.takes_ml * dry_g
        return given_ml, min(takes, given_ml) if way is Way.SOAK else given_ml
    return (0.0, 0.0) if water is None else _by_way(water, way, dry_g)


def _taken_in_pot(water: WaterPerGram | None, dry_g: float) -> float | None:
    """Give what a part takes up in the pot; a powder that is mixed with water elsewhere only dissolves in it."""
    if water is None or water.takes_ml is None:
        return None
    return 0.0 if water.way is Way.MIX else water.takes_ml * dry_g


def _by_way(water: WaterPerGram, way: Way, dry_g: float) -> tuple[float, float]:
    """Take the component's own waters; where the dish gives water another way, what it takes up is what it gets."""
    takes = water.offered_ml if water.takes_ml is None else water.takes_ml
    if way is Way.SOAK:
        offered = water.offered_ml or takes
        return offered * dry_g, min(takes, offered) * dry_g
    same_way = way is water.way or (way is not Way.MOISTEN and water.way is not Way.SOAK)
    given = (water.offered_ml or takes) if same_way else takes
    return given * dry_g, given * dry_g
