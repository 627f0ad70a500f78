"""Steps whose water can not be meant as written: a pot that boils dry, a soak of what has had its water."""

from collections.abc import Sequence

from packlarder.book.bring_back import Way
from packlarder.book.step import Fate, Verb
from packlarder.faults import Fault, Place, Severity, Spot
from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import PlannedPart, PlannedStep, WaterPerGram

IN_WATER = frozenset({Verb.BOIL, Verb.SIMMER})


def check_waters(
    parts: Sequence[PlannedPart], steps: Sequence[PlannedStep], wetted_in: Sequence[int | None], place: Place
) -> list[Fault]:
    """Find the steps that have no water to work with."""
    faults: list[Fault] = []
    filled: set[str] = set()
    drained = soaking = False
    for step in steps:
        if step.verb is Verb.DRAIN:
            if not (soaking or filled):
                faults.append(_nothing_to_drain(_at(step, place)))
            drained, soaking = drained or step.fate is Fate.INTO_THE_POT, False
        elif step.verb in IN_WATER:
            wet = any(_is_wet(wetted_in[part], step) for part in step.parts)
            there = drained or step.pot in filled or (wet and soaking)
            if step.pot_ml is None and not there and not (wet and not _thirsty(step, parts, wetted_in)):
                faults.append(_no_water(step.verb, _at(step, place)))
            filled.add(step.pot)
        elif _has_had_it(step, wetted_in):
            faults.append(_wetted_twice(step, parts, _at(step, place)))
        soaking = soaking or step.verb is Verb.SOAK
    return faults


def must_have_water(water: WaterPerGram) -> bool:
    """Tell whether a part that takes its water in the pot needs it there: a powder only dissolves in what there is."""
    return water.way in (Way.IN_THE_POT, Way.SOAK)


def _thirsty(step: PlannedStep, parts: Sequence[PlannedPart], wetted_in: Sequence[int | None]) -> bool:
    """Tell whether a step has a part that is still dry and takes its water in the pot."""
    dry = (parts[index].component.water for index in step.parts if not _is_wet(wetted_in[index], step))
    return any(water is not None and must_have_water(water) for water in dry)


def _is_wet(wetted_in: int | None, step: PlannedStep) -> bool:
    return wetted_in is not None and wetted_in < step.index


def _has_had_it(step: PlannedStep, wetted_in: Sequence[int | None]) -> bool:
    """Tell whether a step gives water, names none, and all its parts got theirs in a step before."""
    if step.verb is None or VERBS[step.verb].on_stove or not VERBS[step.verb].gives_water or not step.parts:
        return False
    return step.given_ml is None and all(wetted_in[part] != step.index for part in step.parts)


def _at(step: PlannedStep, place: Place) -> Place:
    return place.at("steps", step.index, step.verb or "", spot=Spot.KEY)


def _nothing_to_drain(at: Place) -> Fault:
    return Fault(
        place=at,
        code="nothing-to-drain",
        message="no water stands around anything here: nothing was soaked or boiled since the last drain",
        help="leave the step out, or soak before it",
    )


def _no_water(verb: Verb | None, at: Place) -> Fault:
    return Fault(
        place=at,
        code="no-water",
        message=f"there is no water in the pot to {verb} in",
        help="say how much is in it when it starts: `in: 600 mL`",
    )


def _wetted_twice(step: PlannedStep, parts: Sequence[PlannedPart], at: Place) -> Fault:
    names = " and ".join(parts[index].called.lower() for index in step.parts)
    return Fault(
        place=at,
        code="wetted-twice",
        message=f"{names} got water in a step before, and this step does not say how much more",
        help="say how much: `with: 100 mL hot water`, or leave the step out",
        severity=Severity.WARNING,
    )
