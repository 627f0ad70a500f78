"""A dish worked out for a row of servings: what the builders of its sheet share."""

from dataclasses import dataclass
from functools import cached_property

from packlarder.book.household import Household
from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import DishPlan, DishSums
from packlarder.sheets import series
from packlarder.sheets.columns import PartColumns, StepColumns, WaterColumns
from packlarder.sheets.ounces import Ounces, ounces_of
from packlarder.sheets.pots import pots_used
from packlarder.sheets.printed import NOTHING, Printed, kept
from packlarder.sheets.words import lowered


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
    def parts(self) -> tuple[PartColumns, ...]:
        """The sums of each part, turned so that a figure's row lies in one piece."""
        each = zip(*[sums.parts for sums in self.sums], strict=True)
        return tuple([PartColumns(*zip(*part, strict=True)) for part in each])

    @cached_property
    def steps(self) -> tuple[StepColumns, ...]:
        """The sums of each step, turned in the same way."""
        each = zip(*[sums.steps for sums in self.sums], strict=True)
        return tuple([StepColumns(*zip(*step, strict=True)) for step in each])

    @cached_property
    def water(self) -> WaterColumns:
        """The water to carry, turned in the same way."""
        return WaterColumns(*zip(*[sums.water for sums in self.sums], strict=True))

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The name of each part as it stands inside a sentence."""
        return tuple([lowered(part.called) for part in self.plan.parts])

    @cached_property
    def weights(self) -> tuple[Printed, ...]:
        """The dry weight of each part, printed."""
        return tuple([series.weights(part.dry_g) for part in self.parts])

    @cached_property
    def printed_g(self) -> tuple[tuple[float, ...], ...]:
        """The grams of each part as printed, which are what adds up."""
        return tuple([series.printed_grams(part.dry_g) for part in self.parts])

    @cached_property
    def measures(self) -> tuple[Printed, ...]:
        """Each part in spoons and cups where a measure of it was weighed, else in pieces, else nothing."""
        return tuple([self._measure(part.index) for part in self.plan.parts])

    @cached_property
    def ounces(self) -> Ounces:
        """The fluid ounces to carry."""
        return ounces_of(self.steps, self.water, heaters=self.sums[0].conditions.heater_water_carried)

    @cached_property
    def pots(self) -> tuple[str, ...]:
        """The pots and pans in order of use."""
        return pots_used(self.plan)

    def _measure(self, index: int) -> Printed:
        component, dry_g = self.plan.parts[index].component, self.parts[index].dry_g
        per_ml = component.grams_per.get(PER_ML)
        if per_ml:
            return series.measures(dry_g, per_ml)
        noun = next(iter(component.grams_per), None)
        if noun is None:
            return series.fixed(NOTHING, self.count)
        return _pieces(dry_g, component.grams_per[noun], noun)


@kept
def _pieces(grams: tuple[float, ...], one_g: float, noun: str) -> Printed:
    """Count a part in pieces where counts in halves say what is meant."""
    numbers = [dry_g / one_g for dry_g in grams]
    return series.counts(tuple([number if series.is_near_a_half(number) else None for number in numbers]), noun)
