"""What the weights of a batch tell of its dryness: solids, an estimate of moisture, a verdict.

solids = fresh * (1 - w_fresh)        moisture = 1 - solids / dry        dry at a moisture m: solids / (1 - m)

The water of fresh food is known to a point of a hundred at best, so the estimate is a range: for a wet vegetable a wide
one.
Arithmetic can show that a weight is impossible, or that food is wet still. It never shows that food is dry.
"""

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum

from packlarder.book.batch import DrynessTest
from packlarder.figures.dryness import DRYNESSES, Drying, dryness_of
from packlarder.figures.kinds import Group
from packlarder.figures.margins import FOOD_WATER
from packlarder.reckon.records import ComponentSums

DRIED_AT_HOME = frozenset({Drying.FREEZE_DRIED, Drying.AIR_DRIED})
_STRICTEST_PERCENT = {
    drying: min(one.limit_percent for one in DRYNESSES.values() if one.drying is drying) for drying in DRIED_AT_HOME
}
SLACK = 0.03
"""A scale and a tray lose a little: a dry weight that misses up to this of the solids may be, whatever the water."""


class Verdict(StrEnum):
    """What can be said of a batch's dryness."""

    CAN_NOT_BE_RIGHT = "can not be right"
    NOT_DRY_YET = "not dry yet"
    CAN_NOT_TELL = "can not tell"
    DRY = "dry"


@dataclass(frozen=True, slots=True, kw_only=True)
class Moisture:
    """Water left, as shares of the dry weight: by the food table, and if the food was drier or wetter than that.

    `low` may lie below nought: then the fresh food was wetter than the table has it.
    """

    by_the_table: float
    low: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Dried:
    """The weights of a batch held against the solids of its food.

    `limit` is the share of water above which its class of food is not dry. `goal_g` is the weight at that limit.
    """

    fresh_g: float
    dry_g: float
    fresh_water: float
    solids_g: float
    moisture: Moisture
    limit: float
    goal_g: float
    verdict: Verdict

    @property
    def lighter_g(self) -> float:
        """Give how much lighter it must get at least; nought where the limit is kept."""
        return max(0.0, self.dry_g - self.goal_g)


def solids_g(fresh_g: float, fresh_water: float) -> float:
    """Give what is left of a food without its water."""
    return fresh_g * (1 - fresh_water)


def least_dry_g(fresh_g: float, fresh_water: float) -> float:
    """Give the least that a food can weigh when dry: if it was wetter than the table has it, or a little was lost."""
    wettest = min(1.0, fresh_water + FOOD_WATER.value)
    return min(solids_g(fresh_g, wettest), solids_g(fresh_g, fresh_water) * (1 - SLACK))


def moisture(fresh_g: float, dry_g: float, fresh_water: float) -> Moisture:
    """Estimate the water left in a batch."""
    spread = FOOD_WATER.value
    by_table, low, high = (
        1 - solids_g(fresh_g, min(1.0, max(0.0, water))) / dry_g
        for water in (fresh_water, fresh_water - spread, fresh_water + spread)
    )
    return Moisture(by_the_table=by_table, low=low, high=high)


def limit_of(component: ComponentSums) -> float | None:
    """Give the share of water above which a component is not dry; None for what is not dried at home.

    For food that is not dried so by rights, such as egg in warm air, the strictest limit of its dryer holds.
    """
    drying = component.model.dried
    if drying is None or drying not in DRIED_AT_HOME:
        return None
    dryness = dryness_of(Group.MEAL if len(component.model.made_of) > 1 else component.kind.rules.group, drying)
    return (_STRICTEST_PERCENT[drying] if dryness is None else dryness.limit_percent) / 100


def dried(component: ComponentSums, fresh_g: float, dry_g: float, tests: Collection[DrynessTest]) -> Dried | None:
    """Hold a batch's weights against its food; None where the food's water is not known, or it is not dried at home."""
    water, limit = component.fresh_water, limit_of(component)
    if water is None or limit is None or water >= 1:
        return None
    estimate = moisture(fresh_g, dry_g, water)
    return Dried(
        fresh_g=fresh_g,
        dry_g=dry_g,
        fresh_water=water,
        solids_g=solids_g(fresh_g, water),
        moisture=estimate,
        limit=limit,
        goal_g=solids_g(fresh_g, water) / (1 - limit),
        verdict=Verdict.CAN_NOT_BE_RIGHT if dry_g < least_dry_g(fresh_g, water) else _verdict(estimate, limit, tests),
    )


def _verdict(estimate: Moisture, limit: float, tests: Collection[DrynessTest]) -> Verdict:
    """Judge; weights that show it wet outweigh the household's test, and only that test says `dry`."""
    if estimate.low > limit:
        return Verdict.NOT_DRY_YET
    return verdict_by_test(tests)


def verdict_by_test(tests: Collection[DrynessTest]) -> Verdict:
    """Judge by the household's own test alone; a snap tells little of thick pieces, the scale tells."""
    return Verdict.DRY if DrynessTest.NO_LIGHTER in tests else Verdict.CAN_NOT_TELL
