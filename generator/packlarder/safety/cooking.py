"""Cooking temperatures, food by food, as the household's authority has them."""

from collections.abc import Callable, Iterator

from packlarder.book.step import Verb
from packlarder.faults import Severity
from packlarder.figures.kinds import Cooking, Doneness, Kind
from packlarder.figures.temperatures import DEFAULT_AUTHORITY, CookingTemperature
from packlarder.figures.verbs import VERBS
from packlarder.reckon.records import PlannedPart
from packlarder.safety.case import DishCase
from packlarder.safety.food import least_minutes
from packlarder.safety.heat import hottest, raw_kinds, temperature_of
from packlarder.safety.hit import Hit
from packlarder.safety.journey import Why
from packlarder.safety.rule import DishRule, Shows
from packlarder.safety.wording import degrees, lasting


def egg_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw egg must get."""
    return _asks(case, Doneness.EGG)


def poultry_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw poultry must get."""
    return _asks(case, Doneness.POULTRY)


def ground_meat_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw ground meat must get."""
    return _asks(case, Doneness.GROUND_MEAT)


def whole_cut_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw meat in pieces must get."""
    return _asks(case, Doneness.WHOLE_CUT, Doneness.PORK_CUT, Doneness.RAW_HAM)


def game_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw game must get."""
    return _asks(case, Doneness.GAME, Doneness.GROUND_GAME, Doneness.GAME_BIRD)


def fish_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw fish must get."""
    return _asks(case, Doneness.FISH)


def shellfish_temperature(case: DishCase) -> Iterator[Hit]:
    """Say how hot raw shellfish must get."""
    return _asks(case, Doneness.SHELLFISH)


def ham_reheated(case: DishCase) -> Iterator[Hit]:
    """Say how hot home-dried ham must get."""
    return _asks(case, Doneness.COOKED_HAM)


def leftovers_reheated(case: DishCase) -> Iterator[Hit]:
    """Say how hot what was cooked before must get, where the stove heats it."""
    if Doneness.COOKED_BEFORE in case.asked and any(_heated_again(case, part) for part in case.plan.parts):
        yield from _asks(case, Doneness.COOKED_BEFORE)


def reheat_falls_short(case: DishCase) -> Iterator[Hit]:
    """Find poured-on water or a ration heater that leaves reheated food cooler than the authority asks for."""
    if case.sums is None or not _REHEATED & case.asked:
        return
    for step in case.plan.steps:
        ends_c = case.sums.steps[step.index].steeped_c
        if ends_c is None:
            continue
        rows = frozenset().union(*[case.rows[index] for index in step.parts])
        asked = hottest(rows & _REHEATED, case.household.authority)
        if asked is not None and ends_c < asked.temp_c:
            yield Hit(places=(case.step_place(step.index),), words={"end": degrees(ends_c), **_words(asked)})


_REHEATED = frozenset({Doneness.COOKED_BEFORE, Doneness.COOKED_HAM})


def step_too_cool(case: DishCase) -> Iterator[Hit]:
    """Find steps that state a temperature below the one that raw food asks for."""
    for part in case.raw:
        journey = case.journey(part)
        asked = temperature_of(part.component, case.household.authority)
        if journey.why is Why.TOO_COOL and journey.why_at is not None and asked is not None:
            given_c = case.plan.steps[journey.why_at].to_c or 0.0
            yield case.hit(part, journey.why_at, given=f"{given_c:.0f}\u00a0°C", **_words(asked))


def cooked_too_short(case: DishCase) -> Iterator[Hit]:
    """Find cooking steps so short that raw food stays raw inside."""
    for part in case.raw:
        journey = case.journey(part)
        if journey.why is not Why.TOO_SHORT or journey.why_at is None:
            continue
        step = case.plan.steps[journey.why_at]
        if step.verb is not None and step.minutes is not None:
            least = least_minutes(step, VERBS[step.verb], raw_kinds(part.component))
            yield case.hit(part, step.index, verb=str(step.verb), given=lasting(step.minutes), least=lasting(least))


def hard_food_not_cooked(case: DishCase) -> Iterator[Hit]:
    """Find food that is hard or starchy unless it is cooked, and is not."""
    for part in case.plan.parts:
        if part.component.must_be_cooked is Cooking.TO_BE_EDIBLE and not _HAVE_THEIR_OWN & part.component.kinds:
            journey = case.journey(part)
            if not journey.cooked:
                yield case.hit(part, journey.last)


_HAVE_THEIR_OWN = frozenset({Kind.DRY_BEAN, Kind.GREEN_BEAN})


def _asks(case: DishCase, *rows: Doneness) -> Iterator[Hit]:
    """Say how hot parts must get that one of the rows is for; the hottest of the rows counts."""
    asked = case.asked.intersection(rows)
    if not asked:
        return
    found = hottest(asked, case.household.authority)
    if found is not None:
        facts = () if found.authority is DEFAULT_AUTHORITY else (found.fact,)
        yield case.note(facts, **_words(found))


def _heated_again(case: DishCase, part: PlannedPart) -> bool:
    return Doneness.COOKED_BEFORE in case.rows[part.index] and any(case.steps_with(part.index, *_ON_STOVE))


_ON_STOVE = tuple(Verb(word) for word, does in VERBS.items() if does.on_stove)


def _words(asked: CookingTemperature) -> dict[str, str]:
    return {
        "degrees": f"{asked.temp_c:.0f}\u00a0°C ({asked.temp_f:.0f}\u00a0°F)",
        "metric": f"{asked.temp_c:.0f} °C",
        "hold": f", {asked.hold}" if asked.hold else "",
        "authority": str(asked.authority),
    }


def _temperature_rule(
    id: str, check: Callable[[DishCase], Iterator[Hit]], *facts: str, of_raw: bool = True
) -> DishRule:
    return DishRule(id=id, severity=Severity.NOTE, facts=facts, shows=Shows.FIELD, check=check, of_raw=of_raw)


RULES = (
    DishRule(id="step-too-cool", severity=Severity.ERROR, facts=("T1-25", "T1-22"), check=step_too_cool, of_raw=True),
    DishRule(
        id="cooked-too-short", severity=Severity.ERROR, facts=("T1-22", "T1-07"), check=cooked_too_short, of_raw=True
    ),
    _temperature_rule("egg-temperature", egg_temperature, "T1-06", "T1-07"),
    _temperature_rule("poultry-temperature", poultry_temperature, "T1-03"),
    _temperature_rule("ground-meat-temperature", ground_meat_temperature, "T1-02"),
    _temperature_rule("whole-cut-temperature", whole_cut_temperature, "T1-01", "T1-04"),
    _temperature_rule("game-temperature", game_temperature, "T1-14", "T4-07"),
    _temperature_rule("fish-temperature", fish_temperature, "T1-08", "T1-09"),
    _temperature_rule("shellfish-temperature", shellfish_temperature, "T1-08", "T1-09"),
    _temperature_rule("ham-reheated", ham_reheated, "T1-05", of_raw=False),
    _temperature_rule("leftovers-reheated", leftovers_reheated, "T1-11", of_raw=False),
    DishRule(
        id="reheat-falls-short",
        severity=Severity.NOTE,
        facts=("T1-11", "T1-10", "T10-09"),
        check=reheat_falls_short,
    ),
    DishRule(id="hard-food-not-cooked", severity=Severity.WARNING, facts=("T6-11",), check=hard_food_not_cooked),
)
