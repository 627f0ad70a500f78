"""The steps of a dish: parts found, pots known, waters and minutes in plain numbers."""

from collections.abc import Sequence
from difflib import get_close_matches

from packlarder.book.dish import Dish
from packlarder.book.household import Household
from packlarder.book.step import HeatedOn, Lid, Sentence, Step, Verb
from packlarder.faults import Fault, Place, Spot
from packlarder.figures.verbs import VERBS
from packlarder.reckon.parts import PartNames
from packlarder.reckon.records import PlannedStep

NEEDS_MINUTES = frozenset({Verb.BOIL, Verb.SIMMER, Verb.FRY, Verb.BAKE, Verb.WARM})


def plan_steps(
    dish: Dish, household: Household, names: PartNames, place: Place, faults: list[Fault]
) -> tuple[PlannedStep, ...]:
    """Resolve the steps of a dish. Adds to `faults`."""
    desk = _Desk(dish, household, names, place, faults)
    return tuple(desk.planned(index, step) for index, step in enumerate(dish.steps))


class _Desk:
    """What every step of one dish is resolved with."""

    def __init__(self, dish: Dish, household: Household, names: PartNames, place: Place, faults: list[Fault]) -> None:
        self.dish = dish
        self.household = household
        self.names = names
        self.place = place
        self.faults = faults

    def planned(self, index: int, step: Step | Sentence) -> PlannedStep:
        """Resolve one step."""
        if isinstance(step, Sentence):
            return _sentence(index, step.sentence)
        verb = step.verb
        if verb in NEEDS_MINUTES and step.for_ is None and step.on is HeatedOn.STOVE:
            at = self.place.at("steps", index, verb, spot=Spot.KEY)
            self._fault(at, "no-minutes", f"`{verb}` does not say how long", "add `for: 8 min`")
        minutes = step.wait or step.for_
        return PlannedStep(
            index=index,
            verb=verb,
            sentence="",
            parts=self.names.find_each(enumerate(step.parts), self.place, ("steps", index, verb), self.faults),
            fate=step.drain,
            pot_ml=step.in_.base if step.in_ else None,
            warmth=step.with_.warmth if step.with_ else None,
            given_ml=step.with_.quantity.base if step.with_ and step.with_.quantity else None,
            minutes=minutes.base if minutes else None,
            until=step.until,
            to_c=step.to.base if step.to else None,
            heater=step.on is HeatedOn.HEATER,
            pot=self._pot(step, index),
            lid_on=VERBS[verb].lid_on if step.lid is None else step.lid is Lid.ON,
            cosy=step.cosy,
            say=step.say,
        )

    def _pot(self, step: Step, index: int) -> str:
        wanted = step.pot or self.dish.pot or self.household.usual_conditions.pot
        if wanted in self.household.pots:
            return wanted
        if step.pot:
            self.faults.append(unknown_pot(wanted, self.household, self.place.at("steps", index, "pot")))
        return next(iter(self.household.pots))

    def _fault(self, place: Place, code: str, message: str, help: str) -> None:
        self.faults.append(Fault(place=place, code=code, message=message, help=help))


def unknown_pot(wanted: str, household: Household, place: Place) -> Fault:
    """Say that a dish or step names a pot that the household has not."""
    known = _known(wanted, tuple(household.pots))
    return Fault(place=place, code="unknown-pot", message=f'no pot is called "{wanted}"', help=known)


def _known(wanted: str, names: Sequence[str]) -> str:
    close = get_close_matches(wanted, names, n=1, cutoff=0.5)
    return f"{f'did you mean `{close[0]}`? ' if close else ''}book.yaml knows: {', '.join(names)}"


def _sentence(index: int, sentence: str) -> PlannedStep:
    return PlannedStep(
        index=index,
        verb=None,
        sentence=sentence,
        parts=(),
        fate=None,
        pot_ml=None,
        warmth=None,
        given_ml=None,
        minutes=None,
        until="",
        to_c=None,
        heater=False,
        pot="",
        lid_on=False,
        cosy=False,
        say="",
    )
