"""What drying makes of a food: mass balance on its water, and the household's own weights before it.

    fresh / dry = (1 - w_dry) / (1 - w_fresh)        water lost = fresh - dry
"""

from packlarder.book.component import Component
from packlarder.figures.dryness import Drying, dryness_of
from packlarder.figures.kinds import Kind
from packlarder.reckon.records import Yielded, YieldFrom

WET_ABOVE = 0.25
"""A food with more water than this was not dry when it was bought: `bought dry` then means dried by its maker."""


def fresh_per_dry(fresh_water: float, dry_water: float) -> float:
    """Give the grams of fresh food that one dry gram stands for; both waters are shares of weight below 1."""
    return (1 - dry_water) / (1 - fresh_water)


def dry_water_from(fresh_water: float, fresh_per_dry_g: float) -> float:
    """Give the share of water left in the dry food, from its weighed yield."""
    return 1 - fresh_per_dry_g * (1 - fresh_water)


def yielded(component: Component, kind: Kind, fresh_water: float | None) -> Yielded | None:
    """Give what drying made of a component; None where neither a weight nor the table tells.

    Trust goes to the household's own statement first, then to the mass balance of the food table.
    """
    if not _was_dried(component, fresh_water):
        return Yielded(fresh_g=1, lost_ml=0, dry_water=fresh_water, origin=YieldFrom.AS_IT_IS)
    table = _from_table(component, kind, fresh_water)
    if component.yields is None:
        return table
    fresh_g = component.yields.from_.base / component.yields.gives.base
    return Yielded(
        fresh_g=fresh_g,
        lost_ml=fresh_g - 1,
        dry_water=None if fresh_water is None else max(0.0, dry_water_from(fresh_water, fresh_g)),
        origin=YieldFrom.STATED,
        table_fresh_g=None if table is None else table.fresh_g,
    )


def _was_dried(component: Component, fresh_water: float | None) -> bool:
    if component.dried in (Drying.FREEZE_DRIED, Drying.AIR_DRIED):
        return True
    return component.dried is Drying.BOUGHT_DRY and fresh_water is not None and fresh_water > WET_ABOVE


def _from_table(component: Component, kind: Kind, fresh_water: float | None) -> Yielded | None:
    if fresh_water is None or fresh_water >= 1:
        return None
    dry_water = component.dry_water.base if component.dry_water else _usual_dry_water(component, kind)
    if dry_water is None:
        return None
    if fresh_water <= dry_water:
        return Yielded(fresh_g=1, lost_ml=0, dry_water=fresh_water, origin=YieldFrom.AS_IT_IS)
    fresh_g = fresh_per_dry(fresh_water, dry_water)
    return Yielded(
        fresh_g=fresh_g, lost_ml=fresh_g - 1, dry_water=dry_water, origin=YieldFrom.TABLE, table_fresh_g=fresh_g
    )


def _usual_dry_water(component: Component, kind: Kind) -> float | None:
    """Give the share of water usually left; what its maker dried is taken as air-dried."""
    drying = Drying.FREEZE_DRIED if component.dried is Drying.FREEZE_DRIED else Drying.AIR_DRIED
    dryness = dryness_of(kind.rules.group, drying)
    return None if dryness is None else dryness.water.value / 100
