"""How a dish uses pots: for food that stays in them, for water that is poured out; and dishes cooked in other pots."""

from collections.abc import Collection, Mapping
from dataclasses import replace

from packlarder.figures.trips import WATER_FILL
from packlarder.figures.verbs import VERBS
from packlarder.reckon.dish import work_out_each
from packlarder.reckon.records import PlannedStep
from packlarder.reckon.settled import Settled
from packlarder.reckon.trip.camp import heats_water, names_its_pot, on_flame, settled_at, wants_stove
from packlarder.reckon.trip.records import StopSums, TripMeal


def dry_heated(step: PlannedStep) -> bool:
    """Tell whether a step heats in a pan or oven."""
    return step.verb is not None and on_flame(step) and VERBS[step.verb].dry_heat


class PotUse:
    """A dish and its pots, while they are chosen; `line_pot` is the one that its line names, or ""."""

    def __init__(self, meal: TripMeal, line_pot: str) -> None:
        self.meal = meal
        self.line_pot = line_pot

    @property
    def number(self) -> int:
        """Give the number of the meal."""
        return self.meal.number

    @property
    def on_stove(self) -> bool:
        """Tell whether it wants the stove."""
        return wants_stove(self.meal.plan)

    @property
    def food_pots(self) -> tuple[str, ...]:
        """Give the pots in which its food is on the flame, in order of use."""
        return tuple(dict.fromkeys([step.pot for step in self.meal.plan.steps if on_flame(step)]))

    @property
    def only_water(self) -> bool:
        """Tell whether nothing but water gets hot in a pot."""
        return self.on_stove and not self.food_pots

    def keeps(self, pot: str) -> bool:
        """Tell whether its food stays in a pot: what is fried or baked, and what names a pot that takes it at once."""
        dry = any(dry_heated(step) for step in self._steps_in(pot))
        return dry or (self.names(pot) and self.rounds(pot) == 1)

    def names(self, pot: str) -> bool:
        """Tell whether line, dish or step says that its food wants a pot."""
        return self.line_pot == pot or any(names_its_pot(self.meal.plan, step) for step in self._steps_in(pot))

    def rounds(self, pot: str) -> int:
        """Give the rounds that its food takes in a pot."""
        return max([self.meal.sums.steps[step.index].rounds for step in self._steps_in(pot)], default=1)

    def filled_ml(self, pot: str) -> float:
        """Give the most water that its food has in a pot at one time."""
        sums = [self.meal.sums.steps[step.index] for step in self._steps_in(pot)]
        return max([step.water_ml + step.from_drain_ml + step.standing_ml for step in sums], default=0.0)

    @property
    def names_for_water(self) -> bool:
        """Tell whether line, dish or step says where its water gets hot."""
        plan = self.meal.plan
        hot = [step for step in plan.steps if heats_water(plan, step)]
        return plan.pot_name == self.line_pot or any(names_its_pot(plan, step) for step in hot)

    @property
    def hot_ml(self) -> float:
        """Give the most hot water that is poured at one time."""
        plan = self.meal.plan
        return max([self.meal.sums.steps[step.index].water_ml for step in plan.steps if heats_water(plan, step)])

    def room_for_water_ml(self, pot: str) -> float:
        """Give how much water is brought to the boil in a pot at one time."""
        return self.meal.plan.pots[pot].holds.base * WATER_FILL.value

    @property
    def poured_while_full(self) -> tuple[int, ...]:
        """Give the steps, by index, for which water gets hot while their own pot holds food."""
        plan = self.meal.plan
        return tuple(
            [
                step.index
                for step in plan.steps
                if heats_water(plan, step)
                and any(on_flame(earlier) and earlier.pot == step.pot for earlier in plan.steps[: step.index])
            ]
        )

    def _steps_in(self, pot: str) -> list[PlannedStep]:
        return [step for step in self.meal.plan.steps if on_flame(step) and step.pot == pot]


class Cook:
    """Works dishes out anew in other pots; those that are cooked alike only once."""

    def __init__(self, stops: Collection[StopSums], fuel_margin: float) -> None:
        self._stops = stops
        self._fuel_margin = fuel_margin
        self._known: dict[tuple[object, ...], Settled] = {}
        self._originals: list[Settled] = []

    def moved(self, meal: TripMeal, moves: Mapping[str, str]) -> TripMeal:
        """Give a meal with what is in some pots in others."""
        pots = tuple([moves.get(step.pot, step.pot) for step in meal.plan.steps])
        return self._in_pots(meal, pots, moves.get(meal.plan.pot_name, meal.plan.pot_name))

    def with_water_in(self, meal: TripMeal, pot: str, steps: Collection[int]) -> TripMeal:
        """Give a meal whose water for some steps gets hot in a second pot."""
        pots = tuple([pot if step.index in steps else step.pot for step in meal.plan.steps])
        return replace(self._in_pots(meal, pots, meal.plan.pot_name), water_pot=pot)

    def _in_pots(self, meal: TripMeal, pots: tuple[str, ...], pot_name: str) -> TripMeal:
        asked = id(meal.settled), pots, pot_name, meal.stop is None
        if asked not in self._known:
            self._originals.append(meal.settled)  # as long as it is kept, its id stands for nothing else
            steps = tuple([replace(step, pot=pot) for step, pot in zip(meal.plan.steps, pots, strict=True)])
            windy = any(stop.model.windy for stop in self._stops if meal.stop in (None, stop.index))
            plan = replace(meal.plan, steps=steps, pot_name=pot_name)
            self._known[asked] = settled_at(plan, meal.settled.conditions, windy=windy)
        settled = self._known[asked]
        (sums,) = work_out_each(settled, (meal.sums.servings,), self._fuel_margin)
        return replace(meal, plan=settled.plan, settled=settled, sums=sums)
