"""The waters of the parts of a dish: offered, absorbed, drained, by the way that its steps give water."""

from packlarder.book.bring_back import Way
from packlarder.measure import rounded
from packlarder.reckon.records import DishPlan, PartSums, PlannedPart, PlannedStep, WaterPerGram


def part_sums(plan: DishPlan, scale: float) -> tuple[PartSums, ...]:
    """Work out every part of a dish whose servings are `scale` times those it is written for."""
    return tuple(_one(plan, part, scale) for part in plan.parts)


def poured_ml(water_ml: float) -> float:
    """Round a water to what a cook pours: whole mL below 15, 5 mL below 100, else 10 mL; never to nothing.

    All sums go on with what is poured, so that every printed water is the one that was counted.
    """
    step = 1 if water_ml < 15 else 5 if water_ml < 100 else 10
    return rounded(water_ml, step) or (float(step) if water_ml > 0 else 0.0)


def wetting_step(plan: DishPlan, part: int) -> PlannedStep | None:
    """Give the step in which a part first gets water of its own, None where it gets none."""
    for step in plan.steps:
        if part in step.parts and step.verb is not None and step.verb.value == plan.way_of[part]:
            return step
    return None


def _one(plan: DishPlan, part: PlannedPart, scale: float) -> PartSums:
    dry_g = part.dry_g if part.fixed else part.dry_g * scale
    made = part.component.yielded
    fresh_g = dry_g * made.fresh_g if made is not None and made.lost_ml > 0 else None
    way = plan.way_of[part.index]
    exact, takes = _waters(plan, part, way, dry_g, scale)
    offered = poured_ml(exact)
    absorbed = takes if way is Way.IN_THE_POT else offered if takes is None or takes >= exact else min(takes, offered)
    drained = max(0.0, offered - absorbed) if way is Way.SOAK and absorbed is not None else 0.0
    return PartSums(
        dry_g=dry_g, fresh_g=fresh_g, way=way, offered_ml=offered, absorbed_ml=absorbed, drained_ml=drained
    )


def _waters(
    plan: DishPlan, part: PlannedPart, way: Way | None, dry_g: float, scale: float
) -> tuple[float, float | None]:
    """Give offered and absorbed; absorbed is None where the part takes what nobody has measured from the pot."""
    water = part.component.water
    if way is None:
        return 0.0, 0.0
    if way is Way.IN_THE_POT:
        return 0.0, None if water is None or water.takes_ml is None else water.takes_ml * dry_g
    step = wetting_step(plan, part.index)
    if step is not None and step.given_ml is not None:
        offered = step.given_ml * scale * _share(plan, step, part)
        takes = water.takes_ml * dry_g if water is not None and water.takes_ml is not None else offered
        return offered, min(takes, offered) if way is Way.SOAK else offered
    return (0.0, 0.0) if water is None else _by_way(water, way, dry_g)


def _by_way(water: WaterPerGram, way: Way, dry_g: float) -> tuple[float, float]:
    """Take the component's own waters; where the dish gives water another way, what it takes up is what it gets."""
    takes = water.offered_ml if water.takes_ml is None else water.takes_ml
    if way is Way.SOAK:
        offered = water.offered_ml or takes
        return offered * dry_g, min(takes, offered) * dry_g
    same_way = way is water.way or way is not Way.MOISTEN and water.way is not Way.SOAK
    given = (water.offered_ml or takes) if same_way else takes
    return given * dry_g, given * dry_g


def _share(plan: DishPlan, step: PlannedStep, part: PlannedPart) -> float:
    """Give a part's share of the water that a step names for all its parts, by dry weight."""
    return part.dry_g / sum(plan.parts[index].dry_g for index in step.parts)
