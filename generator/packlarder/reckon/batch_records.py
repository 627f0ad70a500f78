"""What the sums of drying and storing hand on: a run, its batches, the containers they were put in.

Weights are in g, volumes in mL, temperatures in °C, times in hours, all unrounded.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property

from packlarder.book.batch import Batch, Filled
from packlarder.book.draw import Mark
from packlarder.book.drying_run import DryingRun
from packlarder.book.stock import ContainerSize, Dryer
from packlarder.faults import Gap, Place
from packlarder.figures.allergens import Allergen
from packlarder.reckon.drying import DRIED_AT_HOME, Dried, Verdict, verdict_by_test
from packlarder.reckon.records import ComponentSums


@dataclass(frozen=True, slots=True, kw_only=True)
class FilledContainer:
    """A container as it was filled: the `nth` of `of` from its batch, as its mark says too.

    `filled_on` is the day on which its batch was dry, or on which it was filled from another container.
    """

    mark: Mark
    nth: int
    of: int
    filled: Filled
    size: ContainerSize | None
    filled_on: date | None
    place: Place

    @property
    def dry_g(self) -> float:
        """Give the dry weight that was put in."""
        return self.filled.holds.base


@dataclass(frozen=True, kw_only=True)
class BatchSums:
    """A batch worked out. `fresh_g` is None where a count could not be weighed; `dried` where the food is not known.

    `grams_per` maps a measure's word (`mL`, or a noun) to dry grams, as this batch was weighed. `traces` are allergens
    that it may have picked up. `beside_raw` names what lay RAW in the dryer beside food that is not RAW.
    """

    run: str
    index: int
    model: Batch
    component: ComponentSums
    place: Place
    dryer: str
    loaded: datetime
    dried_on: date | None
    hours: float | None
    bought_g: float | None
    fresh_g: float | None
    dry_g: float | None
    dried: Dried | None
    grams_per: Mapping[str, float]
    containers: tuple[FilledContainer, ...]
    traces: frozenset[Allergen]
    beside_raw: tuple[str, ...]
    gaps: tuple[Gap, ...]

    @property
    def thrown_out(self) -> str:
        """Give why nothing of it was kept, "" where something was."""
        return self.model.detail.thrown_out

    @cached_property
    def verdict(self) -> Verdict | None:
        """Give what can be said of its dryness.

        None while it lies in the dryer, of what is not dried at home, and of what was thrown out.
        """
        if self.dry_g is None or self.thrown_out or self.component.model.dried not in DRIED_AT_HOME:
            return None
        return self.dried.verdict if self.dried else verdict_by_test(self.model.detail.tested)

    @property
    def removed_ml(self) -> float | None:
        """Give the water that was taken out."""
        return None if self.fresh_g is None or self.dry_g is None else self.fresh_g - self.dry_g

    @property
    def fresh_per_dry(self) -> float | None:
        """Give the fresh food that one dry gram stands for, as weighed."""
        return None if not self.fresh_g or not self.dry_g else self.fresh_g / self.dry_g

    @property
    def tray_g(self) -> float | None:
        """Give the fresh weight on one tray."""
        trays = self.model.detail.trays
        return None if self.fresh_g is None or trays is None else self.fresh_g / trays


@dataclass(frozen=True, kw_only=True)
class RunSums:
    """A drying run worked out; `dryer` is None where there was none, or the household has none of that name."""

    id: str
    model: DryingRun
    dryer: Dryer | None
    place: Place
    batches: tuple[BatchSums, ...]

    @cached_property
    def kept(self) -> Sequence[BatchSums]:
        """Give the batches that were not thrown out."""
        return [batch for batch in self.batches if not batch.thrown_out]

    @cached_property
    def fresh_g(self) -> float:
        """Give what lay on all trays together, as far as it is known."""
        return sum(batch.fresh_g or 0.0 for batch in self.batches)

    @cached_property
    def removed_ml(self) -> float:
        """Give the water that was taken out, as far as it is known."""
        return sum(batch.removed_ml or 0.0 for batch in self.batches)

    @property
    def hours(self) -> float | None:
        """Give how long it took."""
        return None if self.model.took is None else self.model.took.base / 60

    @property
    def containers(self) -> Sequence[FilledContainer]:
        """Give every container that was filled from it."""
        return [container for batch in self.batches for container in batch.containers]
