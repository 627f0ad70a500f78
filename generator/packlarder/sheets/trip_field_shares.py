"""How much of a dish is whose: from a common pot by volume, what is dry or baked by weight."""

from collections.abc import Iterator, Sequence

from packlarder.book.step import Fate, Verb
from packlarder.figures.hands import DRY_FOOD_ROOM
from packlarder.measure import rounded
from packlarder.reckon.trip.records import Eater, TripMeal, TripSums
from packlarder.sheets import series, words
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets.field_sheet import Share
from packlarder.sheets.ounces import OUNCE_ML
from packlarder.sheets.printed import System

ROUND_ML = 10
ROUND_G = 10
ON_A_DRY_PAN = frozenset({Verb.BAKE, Verb.FRY})
IN_A_POT = frozenset({Verb.BOIL, Verb.SIMMER, Verb.WARM})


def shares_told(meal: TripMeal, trip: TripSums, system: System) -> tuple[Share, ...]:
    """Say how much each eater gets, a line for what is in the pot and for each thing beside it; () for one eater."""
    eaters = [one for one in trip.eaters if one.name in meal.eaters]
    return tuple(_lines(meal, eaters, system)) if len(eaters) > 1 else ()


def _lines(meal: TripMeal, eaters: Sequence[Eater], system: System) -> Iterator[Share]:
    cooked = {index for step in meal.plan.steps if step.verb is not None for index in step.parts}
    water_ml = _stays_ml(meal)
    if cooked:
        dry_g = sum(meal.sums.parts[index].dry_g for index in cooked)
        if not water_ml or _is_solid(meal):
            told = _by_weight(dry_g + water_ml, eaters, system, ROUND_G if water_ml else 1)
        else:
            told = _by_volume(dry_g * DRY_FOOD_ROOM.value + water_ml, eaters, system)
        yield Share(what=trip_words.SHARE_OUT, each=told)
    for part in meal.plan.parts:
        if part.index not in cooked:
            told = _by_weight(meal.sums.parts[part.index].dry_g, eaters, system)
            yield Share(what=trip_words.SHARE_BESIDE.format(what=part.called), each=told)


def _stays_ml(meal: TripMeal) -> float:
    """Give the water that is eaten or drunk with a dish; what was drained to be drunk is no part of the pot."""
    water = meal.sums.water
    steps = zip(meal.plan.steps, meal.sums.steps, strict=True)
    drained_ml = sum(sums.drained_ml for step, sums in steps if step.fate is Fate.DRUNK)
    return max(0.0, water.in_food_ml + water.pot_ml + water.drink_ml - drained_ml)


def _is_solid(meal: TripMeal) -> bool:
    """Tell whether a dish is cut in pieces, not ladled: it comes from a dry pan and from no pot."""
    verbs = {step.verb for step in meal.plan.steps}
    return bool(verbs & ON_A_DRY_PAN) and not verbs & IN_A_POT


def _by_volume(volume_ml: float, eaters: Sequence[Eater], system: System) -> str:
    if system is System.US:
        return _told(eaters, [series.whole_ounces(round(each)) for each in _each(volume_ml / OUNCE_ML, eaters)])
    return _told(eaters, [series.whole_ml(rounded(each, ROUND_ML)) for each in _each(volume_ml, eaters)])


def _by_weight(grams: float, eaters: Sequence[Eater], system: System, step: int = 1) -> str:
    weights = [series.total_weights((rounded(each, step),)).text(system, 0) for each in _each(grams, eaters)]
    return _told(eaters, weights)


def _each(whole: float, eaters: Sequence[Eater]) -> list[float]:
    """Give what each eater gets of a whole; nobody measures it out, so it need not add up when it is rounded."""
    portions = sum(one.portion for one in eaters)
    return [whole * one.portion / portions for one in eaters]


def _told(eaters: Sequence[Eater], amounts: Sequence[str]) -> str:
    each = zip(eaters, amounts, strict=True)
    return words.COMMA.join(trip_words.SHARE_OF.format(name=one.name, amount=amount) for one, amount in each)
