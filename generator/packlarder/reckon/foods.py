"""Foods as the sums see them: the table's and the household's own in one record."""

from collections.abc import Iterator

from packlarder.book.book import Book, spoken
from packlarder.book.own_food import OwnFood
from packlarder.figures.figure import Standing
from packlarder.figures.foods import Food, Measure, find_food
from packlarder.figures.foods import Nutrients as Per100
from packlarder.measure import Quantity
from packlarder.reckon.measures import read_measure


def food_of(book: Book, name: str) -> Food | None:
    """Find a food by id or name: the household's own first, then the table's."""
    for id, own in book.foods.items():
        if spoken(name) in (spoken(id), spoken(own.name)):
            return _as_food(id, own)
    return find_food(name)


def _as_food(id: str, own: OwnFood) -> Food:
    return Food(
        id=id,
        name=own.name,
        source_name=own.name,
        kind=own.kind,
        state=own.state,
        nutrients=_per_100(own),
        measures=tuple(_measures(own)),
        allergens=own.contains,
        allergens_known=True,
        ndb="",
        source=own.source,
        standing=Standing.COPY,
    )


def _measures(own: OwnFood) -> Iterator[Measure]:
    for text, weight in own.weighs.items():
        quantity = read_measure(text)
        if quantity is not None and quantity.number > 0:
            unit = quantity.noun or quantity.unit.name
            yield Measure(amount=quantity.number, unit=unit, grams=weight.base)


def _per_100(own: OwnFood) -> Per100:
    sodium_g = _grams(own.sodium)
    return Per100(
        water_g=own.water.base * 100,
        energy_kcal=own.energy.base,
        protein_g=_grams(own.protein),
        fat_g=_grams(own.fat),
        carbohydrate_g=_grams(own.carbohydrate),
        fibre_g=_grams(own.fibre),
        sugars_g=_grams(own.sugars),
        sodium_mg=None if sodium_g is None else sodium_g * 1000,
    )


def _grams(weight: Quantity | None) -> float | None:
    return None if weight is None else weight.base
