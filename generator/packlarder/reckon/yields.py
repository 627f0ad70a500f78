"""What drying makes of a food: mass balance on its water, and the household's own weights before it.

fresh / dry = (1 - w_dry) / (1 - w_fresh)        water lost = fresh - dry
"""

from packlarder.book.component import Component
from packlarder.figures.dryness import Drying, dryness_of
from packlarder.figures.kinds import Kind
from packlarder.reckon.drying import DRIED_AT_HOME, least_dry_g, solids_g
from packlarder.reckon.records import Yielded, YieldFrom
from packlarder.reckon.spread import Spread

WET_ABOVE = 0.25
"""A food with more water than this was not dry when it was bought: `bought dry` then means dried by its maker."""


def fresh_per_dry(fresh_water: float, dry_water: float) -> float:
    """Give the grams of fresh food that one dry gram stands for; both waters are shares of weight below 1."""
    return (1 - dry_water) / (1 - fresh_water)


def dry_water_from(fresh_water: float, fresh_per_dry_g: float) -> float:
    """Give the share of water left in the dry food, from its weighed yield."""
    return 1 - fresh_per_dry_g * (1 - fresh_water)


def yielded(
    component: Component, kind: Kind, fresh_water: float | None, learnt: Spread | None = None
) -> Yielded | None:
    """Give what drying made of a component; None where neither a weight nor the table tells.

    Trust goes to the household's weighed batches first, then to its own statement, then to the mass balance of the
    food table.
    """
    if not _was_dried(component, fresh_water):
        return Yielded(fresh_g=1, lost_ml=0, dry_water=fresh_water, origin=YieldFrom.AS_IT_IS)
    table = _from_table(component, kind, fresh_water)
    if learnt is not None:
        fresh_g, origin = learnt.median, YieldFrom.BATCHES
    elif component.yields is not None:
        fresh_g, origin = component.yields.from_.base / component.yields.gives.base, YieldFrom.STATED
    else:
        return table
    return Yielded(
        fresh_g=fresh_g,
        lost_ml=fresh_g - 1,
        dry_water=None if fresh_water is None else max(0.0, dry_water_from(fresh_water, fresh_g)),
        origin=origin,
        table_fresh_g=None if table is None else table.fresh_g,
        learnt=learnt,
    )


def _was_dried(component: Component, fresh_water: float | None) -> bool:
    if component.dried in DRIED_AT_HOME:
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


STILL_WET = 0.35
"""A dry component that holds more water than this by its own weights was not dry when it was weighed."""


def impossible_yield(component: Component, fresh_water: float | None) -> tuple[str, str] | None:
    """Say why a stated yield can not be true, with the arithmetic, and what to do; None where it can be."""
    if component.yields is None or fresh_water is None or component.dried not in DRIED_AT_HOME:
        return None
    fresh_g, dry_g = component.yields.from_.base, component.yields.gives.base
    held_g = solids_g(fresh_g, fresh_water)
    told = f"{fresh_g:g} g at {fresh_water * 100:.0f} % water hold {held_g:.0f} g of solids"
    if dry_g < least_dry_g(fresh_g, fresh_water):
        help = "weigh again: was some left on the trays, or the food drier?"
        return f"{told}: {dry_g:g} g dry can not be right", help
    water_left = 1 - held_g / dry_g
    if water_left > STILL_WET:
        return f"{told}: {dry_g:g} g dry would be {water_left * 100:.0f} % water", "dry it further, or weigh again"
    return None
