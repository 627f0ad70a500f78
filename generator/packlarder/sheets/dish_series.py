"""A dish worked out for a row of servings: what the builders of its sheet share."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from packlarder.book.household import Household
from packlarder.measure import kitchen_grams
from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import DishPlan, DishSums, PartSums, StepSums
from packlarder.sheets import series
from packlarder.sheets.ounces import Ounces, ounces_of
from packlarder.sheets.pots import pots_used
from packlarder.sheets.printed import NOTHING, Printed


@dataclass(frozen=True, kw_only=True)
class DishSeries:
    """A plan and its sums for each of several servings; `usual` is the index of the usual servings."""

    plan: DishPlan
    household: Household
    sums: tuple[DishSums, ...]
    usual: int

    @property
    def count(self) -> int:
        """How many numbers of servings there are."""
        return len(self.sums)

    @cached_property
    def weights(self) -> tuple[Printed, ...]:
        """The dry weight of each part, printed."""
        return tuple(series.weights([sums.parts[part.index].dry_g for sums in self.sums]) for part in self.plan.parts)

    @cached_property
    def printed_g(self) -> tuple[list[float], ...]:
        """The grams of each part as printed, which are what adds up."""
        return tuple([kitchen_grams(sums.parts[part.index].dry_g) for sums in self.sums] for part in self.plan.parts)

    @cached_property
    def measures(self) -> tuple[Printed, ...]:
        """Each part in spoons and cups where a measure of it was weighed, else in pieces, else nothing."""
        return tuple(self._measure(part.index) for part in self.plan.parts)

    @cached_property
    def ounces(self) -> tuple[Ounces, ...]:
        """The fluid ounces to carry."""
        return tuple(ounces_of(sums) for sums in self.sums)

    @cached_property
    def pots(self) -> tuple[str, ...]:
        """The pots and pans in order of use."""
        return pots_used(self.plan)

    def of_part(self, index: int, value: Callable[[PartSums], float | None]) -> list[float | None]:
        """Give a figure of one part for each number of servings."""
        return [value(sums.parts[index]) for sums in self.sums]

    def of_step(self, index: int, value: Callable[[StepSums], float]) -> list[float]:
        """Give a figure of one step for each number of servings."""
        return [value(sums.steps[index]) for sums in self.sums]

    def _measure(self, index: int) -> Printed:
        component = self.plan.parts[index].component
        per_ml = component.grams_per.get(PER_ML)
        if per_ml:
            return series.measures([sums.parts[index].dry_g / per_ml for sums in self.sums])
        noun = next(iter(component.grams_per), None)
        if noun is None:
            return series.fixed(NOTHING, self.count)
        numbers = [sums.parts[index].dry_g / component.grams_per[noun] for sums in self.sums]
        return series.counts([number if series.is_near_a_half(number) else None for number in numbers], noun)
