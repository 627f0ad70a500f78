"""What a rule about a trip is shown: who goes, what they eat where, and what comes along."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from packlarder.book.household import Household
from packlarder.faults import Place
from packlarder.reckon.records import ComponentSums, DishPlan
from packlarder.reckon.trip.records import Eater, MoveRation, TripMeal, TripSums
from packlarder.safety.case import DishCase, listed
from packlarder.safety.hit import Hit

ON_THE_MOVE = "food on the move"
"""What stands for a dish where food is eaten from the bag."""
SPARE_DAY = "the spare day"


@dataclass(frozen=True, slots=True, kw_only=True)
class Eaten:
    """A component that is eaten: in a meal, or from the bag (then `meal` is None). `dish` is what it is eaten as."""

    dish: str
    component: ComponentSums
    day: int
    on: date
    line: Place
    meal: TripMeal | None = None


class TripCase:
    """A trip that is held against the rules; `eaten_before` are dishes, by id, of trips that are gone."""

    def __init__(self, sums: TripSums, household: Household, eaten_before: frozenset[str] = frozenset()) -> None:
        self.sums = sums
        self.household = household
        self.eaten_before = eaten_before
        self._dish_cases: dict[tuple[object, ...], DishCase] = {}

    @cached_property
    def eaters(self) -> list[Eater]:
        """Give those who eat: an infant without appetite eats nothing."""
        return [one for one in self.sums.eaters if one.portion > 0]

    @cached_property
    def eaten(self) -> list[Eaten]:
        """Give all that anybody eats, in the forms in which it is cooked: meals in order, then what is in the bag."""
        return [*self._of_meals(), *map(_of_the_bag, self.sums.on_the_move)]

    def _of_meals(self) -> Iterator[Eaten]:
        for meal in self.sums.meals:
            for part in as_cooked(meal).parts:
                yield Eaten(
                    dish=meal.plan.model.name,
                    component=part.component,
                    day=meal.day,
                    on=meal.on,
                    line=meal.line,
                    meal=meal,
                )

    def eaten_by(self, eater: Eater) -> list[Eaten]:
        """Give what one person eats."""
        return [one for one in self.eaten if one.meal is None or eater.name in one.meal.eaters]

    def dish_case(self, meal: TripMeal) -> DishCase:
        """Give a meal's dish as the rules about dishes see it, at its stop; once for meals that are cooked alike."""
        plan = as_cooked(meal)
        forms = tuple([part.component.id for part in plan.parts])
        pots = tuple([step.pot for step in plan.steps])
        key = plan.id, forms, plan.stove_name, pots, meal.settled.efficiency, meal.sums.conditions, meal.portions
        if key not in self._dish_cases:
            self._dish_cases[key] = DishCase(plan, meal.sums, self.household)
        return self._dish_cases[key]

    def where(self, meal: TripMeal) -> str:
        """Give the place where a meal is cooked."""
        return SPARE_DAY if meal.stop is None else self.sums.stops[meal.stop].model.place

    def places(self, stops: Iterable[int]) -> str:
        """Give the places of stops as a list to read."""
        return listed(self.sums.stops[index].model.place for index in stops)

    def at_meal(self, meal: TripMeal, *also: Place, **words: str) -> Hit:
        """Make a hit at the line of a meal."""
        return Hit(places=(meal.line, *also), words={"dish": meal.plan.model.name, **words})

    def at_lines(self, lines: Iterable[Place], **words: str) -> Hit:
        """Make a hit at several lines, each once; the first is the one to mend."""
        return Hit(places=tuple(dict.fromkeys(lines)), words=words)

    def hit(self, *keys: str | int, **words: str) -> Hit:
        """Make a hit at a key of the trip's file."""
        return Hit(places=(self.sums.place.at(*keys),), words=words)


def eaten_on(trips: Iterable[TripSums]) -> frozenset[str]:
    """Give the dishes, by id, that were eaten on those of some trips that are gone; a spare day came home again."""
    return frozenset(meal.dish for trip in trips if trip.gone for meal in trip.meals if not meal.spare)


def as_cooked(meal: TripMeal) -> DishPlan:
    """Give the plan of a meal with the forms that stand in for its own."""
    other = {at: one for at, one in meal.instead.items() if meal.plan.parts[at].component.id != one.id}
    if not other:
        return meal.plan
    parts = [replace(part, component=other.get(part.index, part.component)) for part in meal.plan.parts]
    return replace(meal.plan, parts=tuple(parts))


def _of_the_bag(ration: MoveRation) -> Eaten:
    return Eaten(dish=ON_THE_MOVE, component=ration.component, day=ration.day, on=ration.on, line=ration.line)
