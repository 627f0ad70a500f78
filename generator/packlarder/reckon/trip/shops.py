"""What can be bought on the way, and where."""

from collections import defaultdict
from collections.abc import Callable

from packlarder.book.book import Book
from packlarder.reckon.drying import DRIED_AT_HOME
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import MoveRation, PlannedTrip, StopSums, TripMeal


class Shops:
    """Tells at which stop of a trip a component is bought for a meal: the last one on the way there that has it.

    What is dried at home is not bought, and what is in reserve for a spare day comes from home.
    """

    def __init__(self, trip: PlannedTrip, book: Book) -> None:
        """Look through the stops."""
        self._sold: dict[str, list[StopSums]] = defaultdict(list)
        for stop in trip.stops:
            for name in stop.model.to_buy:
                self._sold[book.component_id(name) or ""].append(stop)

    def for_meal(self, component: ComponentSums, meal: TripMeal) -> int | None:
        """Give the stop, by its index; None for what comes from home."""
        at = meal.stop
        return None if at is None else self._last(component, lambda stop: stop.index <= at)

    def for_ration(self, component: ComponentSums, ration: MoveRation) -> int | None:
        """Give the stop; it must have been reached the day before, for nobody knows at what hour of the day it is."""
        return None if ration.spare else self._last(component, lambda stop: stop.model.day < ration.day)

    def _last(self, component: ComponentSums, on_the_way: Callable[[StopSums], bool]) -> int | None:
        if component.model.dried in DRIED_AT_HOME or component.id not in self._sold:
            return None
        return max([stop.index for stop in self._sold[component.id] if on_the_way(stop)], default=None)
