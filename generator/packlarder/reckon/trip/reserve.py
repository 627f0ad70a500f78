"""A trip takes from the larder: in the order of days on which things are eaten, in other forms where it must be."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date

from packlarder.reckon.dish import printed_g
from packlarder.reckon.trip.chain_back import is_mix
from packlarder.reckon.trip.pantry import Pantry
from packlarder.reckon.trip.records import MoveRation, PlannedTrip, TripMeal
from packlarder.reckon.trip.shelf import tidy
from packlarder.reckon.trip.shops import Shops
from packlarder.reckon.trip.stand_in import with_stand_ins
from packlarder.reckon.trip.wants import Taken, Want, want_of_ration, wants_of_meal


def reserve(trip: PlannedTrip, shops: Shops, pantry: Pantry) -> tuple[PlannedTrip, tuple[Taken, ...]]:
    """Take what a trip wants; give it with its meals in the forms that were taken, and what was taken or is short."""
    meals: dict[int, TripMeal] = {}
    taken: list[Taken] = []
    for eaten in _as_eaten(trip):
        if isinstance(eaten, MoveRation):
            taken.append(take(want_of_ration(eaten, shops), pantry))
        else:
            meal = meals[eaten.number] = with_stand_ins(eaten, trip, shops, pantry)
            taken += [take(want, pantry) for want in wants_of_meal(meal, shops)]
    if any(meal.instead for meal in meals.values()):
        changed = tuple([meals[meal.number] for meal in trip.meals])
        gaps = dict.fromkeys(gap for meal in changed for gap in meal.sums.gaps)
        trip = replace(trip, meals=changed, gaps=tuple(gaps))
    return trip, (*taken, *_for_mixes(taken, pantry))


def take(want: Want, pantry: Pantry) -> Taken:
    """Take what is wanted from the larder, as far as it goes; nothing for what is bought on the way."""
    if want.bought_at is not None:
        return Taken(want=want, drawn=(), short_g=0.0)
    drawn = pantry.shelf.take(want.component.id, want.grams, want.on)
    short_g = tidy(want.grams - sum(one.grams for one in drawn))
    return Taken(want=want, drawn=drawn, short_g=short_g)


def _as_eaten(trip: PlannedTrip) -> Sequence[TripMeal | MoveRation]:
    """Give all that is eaten in the order of days; food on the move is the first of its day."""
    eaten: list[TripMeal | MoveRation] = [*trip.on_the_move, *trip.meals]
    return sorted(eaten, key=lambda one: (one.on, one.number if isinstance(one, TripMeal) else 0))


def _for_mixes(taken: Sequence[Taken], pantry: Pantry) -> Iterator[Taken]:
    """Take what goes into mixes that are short, and into mixes that those are made of."""
    lacking = _lacking(taken)
    while lacking:
        made = [take(want, pantry) for want in _ingredients(lacking, pantry)]
        yield from made
        lacking = _lacking(made)


def _lacking(taken: Sequence[Taken]) -> Sequence[Want]:
    """Give what is short of each mix, all of it made at one time, and so to be eaten until its last day."""
    by_mix: dict[str, list[Taken]] = defaultdict(list)
    for one in taken:
        if one.short_g > 0 and is_mix(one.want.component):
            by_mix[one.want.component.id].append(one)
    return [
        replace(short[0].want, grams=tidy(sum(one.short_g for one in short)), on=_last_day(short))
        for short in by_mix.values()
    ]


def _last_day(short: Sequence[Taken]) -> date:
    return max(one.want.on for one in short)


def _ingredients(mixes: Sequence[Want], pantry: Pantry) -> Iterator[Want]:
    """Give the components that go into mixes; ingredients that are foods stand in nobody's larder."""
    for mix in mixes:
        made_of = mix.component.model.made_of
        whole_g = sum(one.weight.base for one in made_of)
        for one in made_of:
            component = pantry.components.get(pantry.book.component_id(one.name) or "")
            if component is not None:
                grams = printed_g(mix.grams * one.weight.base / whole_g)
                yield replace(mix, component=component, grams=grams, for_mix=True)
