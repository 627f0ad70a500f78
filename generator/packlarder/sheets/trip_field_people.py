"""Who must not eat a dish: everybody on the trip who avoids what is in it or may be, whoever it is cooked for."""

from collections.abc import Iterable, Sequence

from packlarder.figures.allergens import Allergen, concerns
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.trip.records import TripMeal, TripSums
from packlarder.safety.trip_case import as_cooked
from packlarder.sheets import trip_field_words as trip_words
from packlarder.sheets import words
from packlarder.sheets.field_sheet import NotFor


def components_of(meal: TripMeal) -> tuple[ComponentSums, ...]:
    """Give what a meal is made of, with the forms that stand in for its own."""
    return tuple(part.component for part in as_cooked(meal).parts)


def not_for(components: Iterable[ComponentSums], trip: TripSums) -> tuple[NotFor, ...]:
    """Give everybody on the trip who must not eat some components, and why."""
    held = tuple(components)
    told = ((one.name, _why(one.model.avoided, held)) for one in trip.eaters)
    return tuple(NotFor(name=trip_words.NOT_FOR.format(name=name).upper(), why=why) for name, why in told if why)


def holds_of(avoided: Sequence[Allergen], components: Sequence[ComponentSums]) -> str:
    """Say what of the avoided some components contain, and of what they may hold traces; "" for nothing."""
    held, traces = _held(components)
    told = ((trip_words.CONTAINS, held), (trip_words.MAY_CONTAIN, traces))
    return words.COMMA.join(
        phrase.format(allergens=words.COMMA.join(met)) for phrase, there in told if (met := _met(avoided, there))
    )


def _why(avoided: Sequence[Allergen], components: Sequence[ComponentSums]) -> str:
    """Say of each avoided thing what of it is there: `tree nuts: holds almond`; traces only where there is no more."""
    held, traces = _held(components)
    told: list[str] = []
    for one in avoided:
        phrase, met = trip_words.HOLDS, _met((one,), held)
        if not met:
            phrase, met = trip_words.MAY_HOLD, _met((one,), traces)
        if met:
            holds = phrase.format(allergens=words.COMMA.join(met))
            told.append(holds if met == [one.value] else trip_words.OF.format(avoided=one.value, holds=holds))
    return "; ".join(told)


def _held(components: Sequence[ComponentSums]) -> tuple[frozenset[Allergen], frozenset[Allergen]]:
    """Give what some components contain, and what else they may hold traces of."""
    held = frozenset[Allergen]().union(*[one.allergens for one in components])
    return held, frozenset[Allergen]().union(*[one.traces for one in components]) - held


def _met(avoided: Sequence[Allergen], there: frozenset[Allergen]) -> list[str]:
    return sorted({one.value for word in avoided for one in concerns(word, there)})
