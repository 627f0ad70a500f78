"""The chain backwards: from what is short, dry, to what is loaded into the dryer, its trays, and what is bought.

dry * fresh per dry = loaded        loaded * bought per loaded = bought        loaded / a tray = trays, rounded up
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from packlarder.figures.dryness import Drying
from packlarder.figures.kinds import Group, WentIn
from packlarder.figures.margins import COOKED_AT_HOME
from packlarder.measure import UP, in_percent, kitchen_grams
from packlarder.reckon.batch_records import BatchSums
from packlarder.reckon.card import DryingCard, drying_card
from packlarder.reckon.chain import chain
from packlarder.reckon.drying import DRIED_AT_HOME
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.pantry import Pantry

OUR_BATCHES = "{batches}: {factor:.2f} g bought for 1 g loaded"
TRIMMED_ONLY = "{batches}: {factor:.2f} g trimmed for 1 g loaded; what is trimmed away comes on top"
ONE_BATCH = "one of our batches"
SEVERAL = "the median of {count} of our batches"
COOKED = "meat cooked at home, taken as {share} of what was bought; bone and trimmings come on top"
AS_LOADED = "as it is loaded; what is peeled, boned or cooked away comes on top"
JUST_OVER = 1e-9
"""Keeps a tray that is exactly full from needing a second one by an error of the arithmetic."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ToDry:
    """What is dried of one component for a trip. `fresh_g` and `bought_g` are None without a yield.

    `card` is None where no dryer of the household dries it; then nobody knows the trays.
    """

    component: ComponentSums
    dry_g: float
    fresh_g: float | None
    bought_g: float | None
    bought_as: str
    card: DryingCard | None
    trays: int | None

    @property
    def drying(self) -> Drying:
        """Give how it is dried."""
        return self.component.model.dried or Drying.AIR_DRIED


def dried_at_home(component: ComponentSums) -> bool:
    """Tell whether the household dries it."""
    return component.model.dried in DRIED_AT_HOME


def is_mix(component: ComponentSums) -> bool:
    """Tell whether the household mixes it, of what is dry already."""
    return bool(component.model.made_of) and component.model.dried is None


def made_at_home(component: ComponentSums) -> bool:
    """Tell whether the household dries or mixes it."""
    return dried_at_home(component) or is_mix(component)


def to_dry(component: ComponentSums, dry_g: float, pantry: Pantry) -> ToDry:
    """Work out what it takes to have a dry weight of a component; weights to load and to buy are rounded up."""
    batches = pantry.batches_of(component)
    card = drying_card(component, batches, pantry.book.household)
    factor, bought_as = _bought_per_loaded(component, batches)
    made = component.yielded
    fresh_g = None if made is None else kitchen_grams(dry_g * made.fresh_g, UP)
    return ToDry(
        component=component,
        dry_g=dry_g,
        fresh_g=fresh_g,
        bought_g=None if fresh_g is None else kitchen_grams(fresh_g * factor, UP),
        bought_as=bought_as,
        card=card,
        trays=None if fresh_g is None or card is None else math.ceil(fresh_g / card.tray_g - JUST_OVER),
    )


def _bought_per_loaded(component: ComponentSums, batches: Sequence[BatchSums]) -> tuple[float, str]:
    """Give what is bought for a gram that is loaded, and what that rests on: our own scale, or else a figure."""
    for stage, says in (("bought", OUR_BATCHES), ("trimmed", TRIMMED_ONLY)):
        weighed = [factor for batch in batches if (factor := _per_loaded(batch, stage)) is not None]
        if weighed:
            return median(weighed), says.format(factor=median(weighed), batches=_batches(len(weighed)))
    if _cooked_meat(component):
        share = COOKED_AT_HOME.value if COOKED_AT_HOME.low is None else COOKED_AT_HOME.low
        return 1 / share, COOKED.format(share=in_percent(share))
    return 1.0, AS_LOADED


def _per_loaded(batch: BatchSums, stage: str) -> float | None:
    """Give the weight at a stage of the chain for a gram loaded; None where either was not weighed."""
    weighed = {one.name: one.weight_g for one in chain(batch)}
    loaded_g = weighed.get("fresh")
    return weighed[stage] / loaded_g if loaded_g and stage in weighed else None


def _cooked_meat(component: ComponentSums) -> bool:
    one_food = component.model.was is not None
    return one_food and component.model.went_in is WentIn.COOKED and component.kind.rules.group is Group.MEAT


def _batches(count: int) -> str:
    return ONE_BATCH if count == 1 else SEVERAL.format(count=count)
