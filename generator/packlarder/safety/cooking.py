"""Cooking temperatures, food by food, as the household's authority has them."""

from collections.abc import Callable, Iterator

from packlarder.faults import Severity
from packlarder.figures.kinds import Cooking, Doneness, Kind
from packlarder.figures.temperatures import DEFAULT_AUTHORITY, CookingTemperature, cooking_temperature
from packlarder.figures.verbs import VERBS, Heats
from packlarder.safety.case import DishCase
from packlarder.safety.heat import authority_called, temperature_of
from packlarder.safety.hit import Hit
from packlarder.safety.journey import Why
from packlarder.safety.rule import DishRule, Shows


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
    return _asks(case, Doneness.COOKED_HAM, raw=False)


def leftovers_reheated(case: DishCase) -> Iterator[Hit]:
    """Say how hot what was cooked before must get, where a step heats it."""
    heated = any(VERBS[verb].heats is not Heats.NOT for verb in case.verbs)
    return _asks(case, Doneness.COOKED_BEFORE, raw=False) if heated else iter(())


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
        least = VERBS[step.verb].least if step.verb else None
        if least is not None:
            yield case.hit(part, step.index, verb=str(step.verb), minutes=f"{step.minutes:g}", least=f"{least.value:g}")


def hard_food_not_cooked(case: DishCase) -> Iterator[Hit]:
    """Find food that is hard or starchy unless it is cooked, and is not."""
    for part in case.plan.parts:
        if part.component.must_be_cooked is Cooking.TO_BE_EDIBLE and not _HAVE_THEIR_OWN & part.component.kinds:
            journey = case.journey(part)
            if not journey.cooked:
                yield case.hit(part, journey.last)


_HAVE_THEIR_OWN = frozenset({Kind.DRY_BEAN, Kind.GREEN_BEAN})


def _asks(case: DishCase, *rows: Doneness, raw: bool = True) -> Iterator[Hit]:
    """Say how hot parts must get that one of the rows is for; the hottest of the rows counts."""
    asked = [row for row in rows if (row, raw) in case.doneness]
    if asked:
        authority = authority_called(case.household.authority)
        hottest = max((cooking_temperature(authority, row) for row in asked), key=lambda one: one.temp_c)
        facts = () if authority is DEFAULT_AUTHORITY else (hottest.fact,)
        yield Hit(places=(case.place,), words=_words(hottest), facts=facts)


def _words(asked: CookingTemperature) -> dict[str, str]:
    return {
        "degrees": f"{asked.temp_c:.0f}\u00a0°C ({asked.temp_f:.0f}\u00a0°F)",
        "metric": f"{asked.temp_c:.0f} °C",
        "hold": f", {asked.hold}" if asked.hold else "",
        "authority": str(asked.authority),
    }


def _temperature_rule(id: str, check: Callable[[DishCase], Iterator[Hit]], *facts: str) -> DishRule:
    return DishRule(id=id, severity=Severity.NOTE, facts=facts, shows=Shows.FIELD, check=check)


RULES = (
    DishRule(id="step-too-cool", severity=Severity.ERROR, facts=("T1-25", "T1-22"), check=step_too_cool),
    DishRule(id="cooked-too-short", severity=Severity.ERROR, facts=("T1-22", "T1-07"), check=cooked_too_short),
    _temperature_rule("egg-temperature", egg_temperature, "T1-06", "T1-07"),
    _temperature_rule("poultry-temperature", poultry_temperature, "T1-03"),
    _temperature_rule("ground-meat-temperature", ground_meat_temperature, "T1-02"),
    _temperature_rule("whole-cut-temperature", whole_cut_temperature, "T1-01", "T1-04"),
    _temperature_rule("game-temperature", game_temperature, "T1-14", "T4-07"),
    _temperature_rule("fish-temperature", fish_temperature, "T1-08", "T1-09"),
    _temperature_rule("shellfish-temperature", shellfish_temperature, "T1-08", "T1-09"),
    _temperature_rule("ham-reheated", ham_reheated, "T1-05"),
    _temperature_rule("leftovers-reheated", leftovers_reheated, "T1-11"),
    DishRule(id="hard-food-not-cooked", severity=Severity.WARNING, facts=("T6-11",), check=hard_food_not_cooked),
)
