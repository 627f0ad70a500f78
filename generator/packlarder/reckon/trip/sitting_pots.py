"""Which pot each dish of a sitting is cooked in, so that two dishes want no pot at the same time.

A dish stands in its pot until it is eaten. What names no pot gets the smallest one along that takes it in one round and
that no other dish of the sitting has; what names its own keeps it, unless only a larger one takes it in one round.
Fried and baked food keeps its pan.
"""

from collections.abc import Mapping, Sequence
from itertools import groupby

from packlarder.book.household import Pot
from packlarder.reckon.trip.pot_use import Cook, PotUse, dry_heated
from packlarder.reckon.trip.records import TripMeal


def in_their_pots(meals: Sequence[TripMeal], line_pots: Mapping[int, str], cook: Cook) -> tuple[TripMeal, ...]:
    """Give meals in the pots that are free for them; `line_pots` are those that their lines name, by number."""
    pans = frozenset(step.pot for meal in meals for step in meal.plan.steps if dry_heated(step))
    found: list[TripMeal] = []
    for _, sitting in groupby(sorted(meals, key=lambda meal: meal.sitting), key=lambda meal: meal.sitting):
        dishes = [PotUse(meal, line_pots.get(meal.number, "")) for meal in sitting]
        if any(dish.on_stove for dish in dishes):
            _Sitting(dishes, pans, cook).share_out()
        found += [dish.meal for dish in dishes]
    return tuple(sorted(found, key=lambda meal: meal.number))


class _Sitting:
    """The dishes that are eaten together; `held` are the pots that each has for its food so far, `water` for water."""

    def __init__(self, dishes: Sequence[PotUse], pans: frozenset[str], cook: Cook) -> None:
        self.dishes = dishes
        self.pans = pans
        self.cook = cook
        self.held: dict[int, set[str]] = {
            dish.number: {pot for pot in dish.food_pots if dish.keeps(pot) or dish.names(pot)} for dish in dishes
        }
        self.water: dict[int, str] = {}

    def share_out(self) -> None:
        """Share pots out: to food that names none, the most of it first; to what needs a larger one; then to water."""
        moving = [(dish, pot) for dish in self.dishes for pot in dish.food_pots if not dish.keeps(pot)]
        for dish, pot in sorted(moving, key=lambda one: (one[0].names(one[1]), -one[0].filled_ml(one[1]))):
            self._place_food(dish, pot)
        for dish in self.dishes:
            if dish.only_water:
                self._place_water(dish)
        for dish in self.dishes:
            self._second_pot(dish)

    def _place_food(self, dish: PotUse, pot: str) -> None:
        """Move what lies in a pot, if that is better; what takes several rounds anywhere stays where it is."""
        least_ml = self._holds(dish, pot) if dish.names(pot) else 0.0
        others = [other for other in self._free(dish) if other == pot or other not in dish.food_pots]
        self.held[dish.number].discard(pot)
        for other in [other for other in others if self._holds(dish, other) > least_ml]:
            moved = dish.meal if other == pot else self.cook.moved(dish.meal, {pot: other})
            if PotUse(moved, dish.line_pot).rounds(other) == 1:
                dish.meal, pot = moved, other
                break
        self.held[dish.number].add(pot)

    def _place_water(self, dish: PotUse) -> None:
        """Choose a pot that no food has; one with another's water, which is poured out first, if there is no other."""
        own = dish.meal.plan.pot_name
        if not dish.names_for_water:
            fits = [pot for pot in self._free(dish) if dish.hot_ml <= dish.room_for_water_ml(pot)]
            own = next((pot for pot in fits if pot not in self.water.values()), next(iter(fits), own))
            if own != dish.meal.plan.pot_name:
                dish.meal = self.cook.moved(dish.meal, {step.pot: own for step in dish.meal.plan.steps if step.pot})
        self.water[dish.number] = own

    def _second_pot(self, dish: PotUse) -> None:
        """Let water that is wanted while a dish's own pot is full get hot in another one, where there is one."""
        steps = dish.poured_while_full
        free = [pot for pot in self._free(dish) if pot not in dish.food_pots]
        if not steps or not free:
            return
        fits = [pot for pot in free if dish.hot_ml <= dish.room_for_water_ml(pot)] or free[-1:]
        pot = next((pot for pot in fits if pot not in self.water.values()), fits[0])
        dish.meal = self.cook.with_water_in(dish.meal, pot, steps)

    def _free(self, dish: PotUse) -> list[str]:
        """Give the pots along for something wet that no other food has, the smallest first; pans after all of them."""
        taken = {pot for number, pots in self.held.items() if number != dish.number for pot in pots}
        pots = [name for name, pot in dish.meal.plan.pots.items() if name not in taken and self._for_wet(name, pot)]
        return sorted(pots, key=lambda name: (name in self.pans, self._holds(dish, name)))

    def _for_wet(self, name: str, pot: Pot) -> bool:
        """Tell whether a pot has a lid, or is no pan."""
        return pot.lid or name not in self.pans

    @staticmethod
    def _holds(dish: PotUse, pot: str) -> float:
        return dish.meal.plan.pots[pot].holds.base
