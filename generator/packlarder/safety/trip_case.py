"""What a rule about a trip is shown: who goes, what they eat where, and what comes along."""

from packlarder.book.household import Household
from packlarder.faults import Place
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.safety.hit import Hit


class TripCase:
    """A trip that is held against the rules."""

    def __init__(self, sums: TripSums, household: Household) -> None:
        self.sums = sums
        self.household = household

    def at_meal(self, meal: TripMeal, *also: Place, **words: str) -> Hit:
        """Make a hit at the line of a meal."""
        return Hit(places=(meal.line, *also), words={"dish": meal.plan.model.name, **words})

    def hit(self, *keys: str | int, **words: str) -> Hit:
        """Make a hit at a key of the trip's file."""
        return Hit(places=(self.sums.place.at(*keys),), words=words)
