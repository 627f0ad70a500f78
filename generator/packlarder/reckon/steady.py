"""What of the water of a dish does not hang on servings: how each step enters the ledger, and what is heated later."""

from collections.abc import Sequence

from packlarder.book.bring_back import Warmth, Way
from packlarder.book.step import Fate, Verb
from packlarder.figures.verbs import VERBS
from packlarder.reckon.ledger import GIVES_WATER, Entry, Steady, bowl_warmth
from packlarder.reckon.pots import largest_ml, room_ml
from packlarder.reckon.records import DishPlan, PlannedStep, WaterPerGram


def steady_of(plan: DishPlan, boil_off_ml: Sequence[float]) -> tuple[Steady, ...]:
    """Work out once what of each step's water every number of servings shares; `boil_off_ml[i]` is one round's."""
    entries = [_entry(step) for step in plan.steps]
    bowl_ml = largest_ml(plan)
    columns = zip(plan.steps, entries, boil_off_ml, _takes_up(plan, entries), strict=True)
    return tuple([_steady(plan, *column, bowl_ml) for column in columns])


def _steady(
    plan: DishPlan,
    step: PlannedStep,
    entry: Entry,
    boil_off_ml: float,
    takes_up: tuple[tuple[int, bool], ...],
    bowl_ml: float,
) -> Steady:
    cold = entry is Entry.GIVES and bowl_warmth(plan, step) is Warmth.COLD
    later = plan.steps[step.index + 1 :]
    return Steady(
        entry=entry,
        step=step,
        wets=plan.wetted_by(step),
        hot=entry in (Entry.GIVES, Entry.IN_THE_POT) and not cold,
        boil_off_ml=boil_off_ml,
        heats_food=cold and _cooks_later(step.parts, later),
        heats_drained=cold and _drained_to_cook(later),
        bowl_ml=bowl_ml,
        room_ml=room_ml(plan, step),
        dry_heat=step.verb is None or VERBS[step.verb].dry_heat,
        takes_up=takes_up,
    )


def _entry(step: PlannedStep) -> Entry:
    if step.verb is None or step.verb is Verb.WAIT:
        return Entry.NONE
    if step.verb is Verb.DRAIN:
        return Entry.DRAIN
    if step.heater:
        return Entry.HEATER
    return Entry.GIVES if step.verb in GIVES_WATER else Entry.IN_THE_POT


def _takes_up(plan: DishPlan, entries: Sequence[Entry]) -> list[tuple[tuple[int, bool], ...]]:
    """Give for each step the parts that take up water in its pot, and whether they must have it.

    Each does so in the first pot that it comes into, whatever that holds. What nobody has measured is left out.
    """
    waiting = {part.index for part in plan.parts if _drinks(part.component.water, plan.way_of[part.index])}
    found: list[tuple[tuple[int, bool], ...]] = []
    for step, entry in zip(plan.steps, entries, strict=True):
        here = dict.fromkeys(step.parts if entry is Entry.IN_THE_POT else ())
        found.append(tuple([(at, _must_have_it(plan.parts[at].component.water)) for at in here if at in waiting]))
        waiting.difference_update(here)
    return found


def _drinks(water: WaterPerGram | None, way: Way | None) -> bool:
    return way is Way.IN_THE_POT and water is not None and water.takes_ml is not None


def _must_have_it(water: WaterPerGram | None) -> bool:
    """Tell whether less water spoils a part: not so a powder, nor what only our rule of thumb is known for."""
    return water is not None and water.way in (Way.IN_THE_POT, Way.SOAK) and not water.assumed


def _cooks_later(parts: Sequence[int], later: Sequence[PlannedStep]) -> bool:
    """Tell whether one of the parts is heated in its water later on, by itself or with what it was stirred into."""
    stirred_into: set[str] = set()
    for step in later:
        shared = not set(parts).isdisjoint(step.parts)
        if step.verb is Verb.STIR_IN and shared:
            stirred_into.add(step.pot)
        elif _heats_water(step) and (shared or step.pot in stirred_into):
            return True
    return False


def _drained_to_cook(later: Sequence[PlannedStep]) -> bool:
    """Tell whether the next drain goes into a pot that is heated after it."""
    at = next((place for place, step in enumerate(later) if step.verb is Verb.DRAIN), None)
    if at is None or later[at].fate is not Fate.INTO_THE_POT:
        return False
    return any(_heats_water(step) for step in later[at:])


def _heats_water(step: PlannedStep) -> bool:
    if step.verb is None or step.heater:
        return False
    row = VERBS[step.verb]
    return row.on_stove and not row.dry_heat
