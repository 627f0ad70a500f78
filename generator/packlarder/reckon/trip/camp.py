"""A dish as it is cooked on a trip: on the stove and in the pots that come along, at the stop's height and weather."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from packlarder.book.bring_back import Warmth
from packlarder.book.household import Household, Pot, Stove
from packlarder.book.step import Step
from packlarder.book.stop import Fills, MealDetail, Stop
from packlarder.book.trip import Trip
from packlarder.faults import Fault, Place
from packlarder.figures.stoves import STOVES
from packlarder.figures.verbs import VERBS
from packlarder.reckon.ledger import bowl_warmth
from packlarder.reckon.records import Conditions, DishPlan, PlannedStep
from packlarder.reckon.settled import Settled, settle
from packlarder.reckon.trip.slips import left_at_home, unknown_kit

MELTED_C = 0.0
"""How warm water is that snow has just become."""


def conditions_at(stop: Stop, household: Household) -> Conditions:
    """Give the conditions of a stop; what it does not say is as in the household's usual ones."""
    usual = household.usual_conditions
    water = stop.water or usual.water
    return Conditions(
        height_m=(stop.height or usual.height).base,
        air_c=(stop.air or usual.air).base,
        water_c=MELTED_C if stop.fills is Fills.SNOW and stop.water is None else water.base,
        heater_water_carried=stop.other_water is None,
    )


def hardest(conditions: Sequence[Conditions]) -> Conditions:
    """Give the worst of several conditions together: the highest, the coldest, all water carried."""
    return Conditions(
        height_m=max(one.height_m for one in conditions),
        air_c=min(one.air_c for one in conditions),
        water_c=min(one.water_c for one in conditions),
        heater_water_carried=True,
    )


def at_camp(
    plan: DishPlan, trip: Trip, detail: MealDetail, household: Household, place: Place
) -> tuple[DishPlan, tuple[Fault, ...]]:
    """Give a dish on a stove and in pots that come along, and what of them stays at home and can not be spared.

    The line of the meal decides, then the dish, then the first of those along.
    """
    faults: list[Fault] = []
    stove = _stove(plan, trip, detail, household, place, faults)
    pots = MappingProxyType({name: household.pots[name] for name in trip.pots if name in household.pots})
    if not pots:
        return plan, tuple(faults)
    misnamed = bool(detail.pot) and detail.pot not in pots
    sure = not misnamed and len(pots) == len(trip.pots)
    if misnamed:
        faults += _not_along("pot", detail.pot, plan, trip.pots, household.pots, place)
    wanted = detail.pot or plan.pot_name
    moved = [_in_a_pot(step, plan, pots, detail.pot, place) for step in plan.steps]
    faults += [fault for _, fault in moved if fault is not None and sure]
    there = replace(
        plan,
        stove_name=stove,
        stove=household.stoves[stove],
        steps=tuple([step for step, _ in moved]),
        pot_name=wanted if wanted in pots else next(iter(pots)),
        pots=pots,
    )
    return there, tuple(dict.fromkeys(faults))


def wants_stove(plan: DishPlan) -> bool:
    """Tell whether a dish wants the stove, for food or for hot water."""
    return any(on_flame(step) or heats_water(plan, step) for step in plan.steps)


def on_flame(step: PlannedStep) -> bool:
    """Tell whether a step has its food on the stove, in a pot or pan."""
    return step.verb is not None and VERBS[step.verb].on_stove and not step.heater


def heats_water(plan: DishPlan, step: PlannedStep) -> bool:
    """Tell whether a step pours hot water over food that is in no pot."""
    if step.verb is None or step.heater:
        return False
    return VERBS[step.verb].gives_water and not VERBS[step.verb].on_stove and bowl_warmth(plan, step) is not Warmth.COLD


def _stove(
    plan: DishPlan, trip: Trip, detail: MealDetail, household: Household, place: Place, faults: list[Fault]
) -> str:
    along = [name for name in trip.stoves if name in household.stoves]
    if detail.stove and detail.stove not in along:
        faults += _not_along("stove", detail.stove, plan, trip.stoves, household.stoves, place)
    for wanted in (detail.stove, plan.model.stove):
        if wanted in along:
            return wanted
    return along[0] if along else plan.stove_name


def _not_along(
    what: str, name: str, plan: DishPlan, along: Sequence[str], ours: Iterable[str], place: Place
) -> list[Fault]:
    """Say of a stove or pot that a meal's line names: it stays at home, or there is none.

    It may be one of those along that is misspelt there: then that is told, and this not.
    """
    at = place.at(what)
    if name not in ours:
        return [unknown_kit(what, name, ours, at)]
    sound = bool(along) and all(one in ours for one in along)
    return [left_at_home(what, name, plan.model.name, along, f"{what}s", at)] if sound else []


def _in_a_pot(
    step: PlannedStep, plan: DishPlan, pots: Mapping[str, Pot], instead: str, place: Place
) -> tuple[PlannedStep, Fault | None]:
    """Put a step into a pot that comes along; it is missed only where the dish names it, for what is on the flame."""
    if step.pot in pots:
        return step, None
    if instead in pots:
        return replace(step, pot=instead), None
    moved = replace(step, pot=next(iter(pots)))
    if on_flame(step) and names_its_pot(plan, step):
        return moved, left_at_home("pot", step.pot, plan.model.name, pots, "pots", place)
    return moved, None


def names_its_pot(plan: DishPlan, step: PlannedStep) -> bool:
    """Tell whether dish or step says which pot it wants; otherwise any will do."""
    written = plan.model.steps[step.index]
    return bool(plan.model.pot or (isinstance(written, Step) and written.pot))


def settled_at(plan: DishPlan, conditions: Conditions, *, windy: bool) -> Settled:
    """Work out what of a dish does not hang on who eats it; in wind less of the heat reaches the pot."""
    settled = settle(plan, conditions)
    if not windy:
        return settled
    return settled._replace(efficiency=in_wind(settled.efficiency, plan.stove))


def in_wind(efficiency: float, stove: Stove) -> float:
    """Give what share of a stove's heat reaches the pot in wind, from the share out of it.

    How much less is the spread of the table of stoves: the least that was found of a type, beside its usual figure.
    """
    figure = STOVES[stove.kind].efficiency
    least = figure.value if figure.low is None else figure.low
    return efficiency * least / figure.value
