"""The drying card of a component: how it was done last time, and what to expect next time."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from statistics import median

from packlarder.book.household import Household
from packlarder.book.stock import ContainerSize, Dryer
from packlarder.book.treatment import Treated
from packlarder.reckon.amounts import per_ml
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.learnt import counts
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.spread import Spread, spread_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Fills:
    """How many containers of one size an amount fills, the last one perhaps not to the brim."""

    size: str
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class FullLoad:
    """What a full dryer takes and gives; `bulk_ml` is what comes out, loosely filled, where it was ever weighed."""

    trays: int
    fresh_g: float
    dry_g: float
    bulk_ml: float | None
    fills: tuple[Fills, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DryingCard:
    """What past batches of a component say of the next one. `tray_g` is the fresh weight of a tray.

    What nobody wrote down is None. `last_hours` are those of the last run that says, `usual_hours` what the household
    says of the dryer. `full` needs a dryer, the weight of a tray and a yield.
    """

    dryer: str
    treated: tuple[Treated, ...]
    tray_g: float
    deep_m: float | None
    hours: Spread | None
    last_hours: float | None
    usual_hours: float | None
    dry_per_tray_g: float | None
    full: FullLoad | None
    notes: tuple[str, ...]


def drying_card(component: ComponentSums, batches: Sequence[BatchSums], household: Household) -> DryingCard | None:
    """Make the card from a component's batches, oldest first; without one that came out dry, from the dryer's own data.

    None for what no dryer of the household dries.
    """
    done = [batch for batch in batches if counts(batch)]
    last = done[-1] if done else None
    name, dryer = _dryer(component, household, last)
    trays = [batch.tray_g for batch in done if batch.tray_g is not None]
    if dryer is None:
        return None
    tray_g = median(trays) if trays else dryer.a_tray.base
    hours = [batch.hours for batch in done if batch.hours is not None]
    made = component.yielded
    depth = last.model.detail.deep if last is not None else dryer.deep
    return DryingCard(
        dryer=name,
        treated=() if last is None else last.model.detail.treated,
        tray_g=tray_g,
        deep_m=None if depth is None else depth.base,
        hours=spread_of(hours),
        last_hours=hours[-1] if hours else None,
        usual_hours=None if dryer.takes is None else dryer.takes.base / 60,
        dry_per_tray_g=None if made is None else tray_g / made.fresh_g,
        full=None if made is None else _full(component, dryer, tray_g, made.fresh_g, household),
        notes=() if last is None else last.model.detail.notes,
    )


def _dryer(component: ComponentSums, household: Household, last: BatchSums | None) -> tuple[str, Dryer | None]:
    """Take the dryer of the last batch, or else the first that dries so."""
    if last is not None and last.dryer in household.dryers:
        return last.dryer, household.dryers[last.dryer]
    fitting = ((name, dryer) for name, dryer in household.dryers.items() if dryer.dries is component.model.dried)
    return next(fitting, ("", None))


def _full(
    component: ComponentSums, dryer: Dryer, tray_g: float, fresh_per_dry: float, household: Household
) -> FullLoad:
    fresh_g = tray_g * dryer.trays
    dry_g = fresh_g / fresh_per_dry
    bulk_ml = bulk_of(component, dry_g)
    return FullLoad(
        trays=dryer.trays,
        fresh_g=fresh_g,
        dry_g=dry_g,
        bulk_ml=bulk_ml,
        fills=() if bulk_ml is None else fills(bulk_ml, household.containers),
    )


def bulk_of(component: ComponentSums, dry_g: float) -> float | None:
    """Give the room that a dry weight takes, loosely filled; None where it was never weighed by the cup."""
    grams = per_ml(component)
    return None if grams is None else dry_g / grams


def fills(bulk_ml: float, sizes: Mapping[str, ContainerSize]) -> tuple[Fills, ...]:
    """Give how many containers of each size something fills."""
    return tuple(Fills(size=name, count=math.ceil(bulk_ml / size.holds.base)) for name, size in sizes.items())
