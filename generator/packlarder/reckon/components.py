"""A component worked out: its foods, yield, nutrients, waters, allergens, and whether it must be cooked."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from types import MappingProxyType

from packlarder.book.book import FOODS_FILE, Book, component_place
from packlarder.book.component import Component
from packlarder.faults import Fault, Gap, Spot
from packlarder.figures.allergens import Allergen
from packlarder.figures.foods import Food, closest_foods
from packlarder.figures.kinds import Cooking, Kind, WentIn, must_be_cooked
from packlarder.reckon import nutrients
from packlarder.reckon.foods import food_of
from packlarder.reckon.learnt import NOTHING_LEARNT, Learnt
from packlarder.reckon.measures import grams_per
from packlarder.reckon.records import ComponentSums, Nutrients, WaterPerGram, Yielded
from packlarder.reckon.water_ways import water_per_gram
from packlarder.reckon.went_in import cooked_in_words_only
from packlarder.reckon.yields import impossible_yield, yielded

WHERE_FOODS_ARE = "your own live in foods.yaml; all others stand on your site's page `Figures and their sources`"
_STRICTEST = (Cooking.TO_BE_SAFE, Cooking.TO_BE_EDIBLE, Cooking.NO)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Origin:
    """What a component is of, per gram as it was loaded or bought. `kind` is that of the heaviest food in it."""

    kind: Kind
    kinds: frozenset[Kind]
    uncooked: frozenset[Kind]
    water: float | None
    nutrients: Nutrients
    cooking: Cooking
    allergens: frozenset[Allergen]
    traces: frozenset[Allergen]
    measures: tuple[tuple[str, float], ...] = ()


def reckon_components(
    book: Book, learnt: Mapping[str, Learnt] = MappingProxyType({})
) -> tuple[Mapping[str, ComponentSums], tuple[Fault, ...]]:
    """Work out every component of a book; one that names an unknown food is left out and gives a fault.

    `learnt` is what the household's batches have shown, by component.
    """
    desk = _Desk(book, learnt)
    for id in book.components:
        desk.sums(id)
    return MappingProxyType(desk.done), tuple(desk.faults)


class _Desk:
    """Works out components that may be made of other components, each once."""

    def __init__(self, book: Book, learnt: Mapping[str, Learnt]) -> None:
        self.book = book
        self.learnt = learnt
        self.done: dict[str, ComponentSums] = {}
        self.faults: list[Fault] = []
        self._failed: set[str] = set()
        self._open: list[str] = []

    def sums(self, id: str) -> ComponentSums | None:
        """Give the sums of one component, None where it can not be worked out."""
        if id not in self.done and id not in self._failed:
            self._open.append(id)
            origin = self._origin(id, self.book.components[id])
            self._open.pop()
            if origin is None:
                self._failed.add(id)
            else:
                self._hold_against_the_table(id, self.book.components[id], origin)
                learnt = self.learnt.get(id, NOTHING_LEARNT)
                self.done[id] = _component_sums(id, self.book.components[id], origin, learnt)
        return self.done.get(id)

    def _hold_against_the_table(self, id: str, component: Component, origin: _Origin) -> None:
        clash = cooked_in_words_only(self.book, id)
        if clash is not None:
            self.faults.append(clash)
        wrong = impossible_yield(component, origin.water)
        if wrong is not None:
            place = component_place(id).at("yields", "gives")
            self.faults.append(Fault(place=place, code="impossible-yield", message=wrong[0], help=wrong[1]))

    def _origin(self, id: str, component: Component) -> _Origin | None:
        if component.was is not None:
            food = food_of(self.book, component.was)
            if food is None:
                self._unknown(id, component.was, "was")
                return None
            return _of_food(food, component.went_in)
        pieces = [self._piece(id, index, one.name) for index, one in enumerate(component.made_of)]
        found = [piece for piece in pieces if piece is not None]
        if len(found) < len(pieces):
            return None
        weights = [ingredient.weight.base for ingredient in component.made_of]
        return _of_several(found, weights, component.went_in)

    def _piece(self, id: str, index: int, name: str) -> _Origin | None:
        inner = self.book.component_id(name)
        if inner in self._open:
            place = component_place(id).at("made of", index, name, spot=Spot.KEY)
            self.faults.append(Fault(place=place, code="made-of-itself", message=f'"{name}" is made of itself'))
            return None
        if inner is not None:
            sums = self.sums(inner)
            return None if sums is None else _of_component(sums)
        food = food_of(self.book, name)
        if food is None:
            self._unknown(id, name, "made of", index, name)
            return None
        return _of_food(food, self.book.components[id].went_in)

    def _unknown(self, id: str, name: str, *keys: str | int) -> None:
        if FOODS_FILE in self.book.unread or self.book.has_unread_component(name):
            return
        ours = [one.name for one in self.book.foods.values()]
        close = (*get_close_matches(name, ours, n=1, cutoff=0.8), *closest_foods(name))
        meant = " or ".join(f'"{one}"' for one in close[:2])
        self.faults.append(
            Fault(
                place=component_place(id).at(*keys, spot=Spot.KEY if keys[0] == "made of" else Spot.VALUE),
                code="unknown-food",
                message=f'no food is called "{name}"',
                help=f"{f'did you mean {meant}? ' if meant else ''}{WHERE_FOODS_ARE}",
            )
        )


def _of_food(food: Food, went_in: WentIn | None) -> _Origin:
    water = food.nutrients.water_g
    cooking = must_be_cooked(food.kind, food.state, went_in)
    return _Origin(
        kind=food.kind,
        kinds=frozenset({food.kind}),
        uncooked=frozenset() if cooking is Cooking.NO else frozenset({food.kind}),
        water=None if water is None else water / 100,
        nutrients=nutrients.per_gram(food.nutrients),
        cooking=cooking,
        allergens=frozenset(food.allergens),
        traces=frozenset(),
        measures=tuple((f"{one.amount:g} {one.unit}", one.grams) for one in food.measures),
    )


def _of_component(sums: ComponentSums) -> _Origin:
    """Take a component as an ingredient of a mix: as it is carried, per gram dry."""
    return _Origin(
        kind=min(sums.kinds),
        kinds=sums.kinds,
        uncooked=sums.uncooked,
        water=sums.yielded.dry_water if sums.yielded else None,
        nutrients=sums.nutrients,
        cooking=sums.must_be_cooked,
        allergens=sums.allergens,
        traces=sums.traces,
    )


def _of_several(pieces: list[_Origin], weights: list[float], went_in: WentIn | None) -> _Origin:
    total = sum(weights)
    waters = [piece.water for piece in pieces]
    weighed = [(water or 0.0) * weight for water, weight in zip(waters, weights, strict=True)]
    cooked = went_in is WentIn.COOKED
    return _Origin(
        kind=pieces[weights.index(max(weights))].kind,
        kinds=frozenset().union(*(piece.kinds for piece in pieces)),
        uncooked=frozenset() if cooked else frozenset().union(*(piece.uncooked for piece in pieces)),
        water=None if None in waters else sum(weighed) / total,
        nutrients=nutrients.blended([piece.nutrients for piece in pieces], [weight / total for weight in weights]),
        cooking=Cooking.NO if cooked else strictest(piece.cooking for piece in pieces),
        allergens=frozenset().union(*(piece.allergens for piece in pieces)),
        traces=frozenset().union(*(piece.traces for piece in pieces)),
    )


def strictest(cookings: Iterable[Cooking]) -> Cooking:
    """Give the strictest of several answers to whether a food must be cooked."""
    return min(cookings, key=_STRICTEST.index)


def _component_sums(id: str, model: Component, origin: _Origin, learnt: Learnt) -> ComponentSums:
    made = yielded(model, origin.kind, origin.water, learnt.fresh_per_dry)
    per_dry = nutrients.scaled(origin.nutrients, made.fresh_g if made else None)
    as_it_is = made is not None and made.lost_ml == 0
    own = tuple((key, weight.base) for key, weight in model.weighs.items())
    weighed = {word: spread.median for word, spread in learnt.grams_per.items()}
    per = {**grams_per((*own, *(origin.measures if as_it_is else ()))), **weighed}
    water, gaps = _water(model, made, per)
    allergens = origin.allergens | frozenset(model.contains)
    own_traces = (origin.traces | frozenset(model.may_contain)) - allergens
    if made is None:
        gaps = (*gaps, Gap(what="its yield", missing="weigh it before and after drying and write `yields`"))
    return ComponentSums(
        id=id,
        model=model,
        kind=origin.kind,
        kinds=origin.kinds,
        uncooked=origin.uncooked or (origin.kinds if model.must_be_cooked else frozenset()),
        must_be_cooked=strictest((origin.cooking, model.must_be_cooked or Cooking.NO)),
        allergens=allergens,
        traces=own_traces | (learnt.traces - allergens),
        own_traces=own_traces,
        fresh_water=origin.water,
        yielded=made,
        nutrients=per_dry,
        water=water,
        grams_per=MappingProxyType(per),
        fresh_grams_per=grams_per((key, weight.base) for key, weight in model.counts.items()),
        gaps=gaps,
    )


def _water(
    model: Component, made: Yielded | None, per: Mapping[str, float]
) -> tuple[WaterPerGram | None, tuple[Gap, ...]]:
    if model.bring_back is None:
        return None, ()
    found = water_per_gram(model.bring_back, model.dried, made, per)
    return (None, (found,)) if isinstance(found, Gap) else (found, ())
