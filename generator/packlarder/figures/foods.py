"""The food table: water, energy, nutrients and household measures of 272 foods, with kind and allergens.

Figures are those of the USDA National Nutrient Database for Standard Reference, Release 28 (public domain). Names,
kinds and allergens are ours.
"""

import difflib
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from packlarder.figures.allergens import Allergen
from packlarder.figures.figure import Standing
from packlarder.figures.kinds import Kind, State
from packlarder.figures.rows import listed, number_or_unknown, read_rows

SUGGESTIONS = 3
_ALIKE, _SLIP = 0.6, 0.8
"""How alike two names must be to be suggested at all, and to be taken for a slip of the keys."""
# Other kitchens' words for words of our names, one of each thing, for suggestions only
_SAME_AS = {
    "courgette": "zucchini",
    "broth": "bouillon",
    "minced": "ground",
    "mince": "ground",
    "prawn": "shrimp",
    "stock": "bouillon",
    "yogurt": "yoghurt",
}


_WAYS_OF_COOKING = frozenset(
    "baked boiled braised broiled browned cooked fried grilled poached roasted simmered steamed stewed".split()
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Nutrients:
    """What 100 g of a food hold: g, but energy in kcal and sodium in mg. None is unknown, never nought."""

    water_g: float | None
    energy_kcal: float | None
    protein_g: float | None
    fat_g: float | None
    carbohydrate_g: float | None
    fibre_g: float | None
    sugars_g: float | None
    sodium_mg: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A household measure: `amount` of `unit` weighs `grams`. The unit is worded as the source prints it."""

    amount: float
    unit: str
    grams: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Food:
    """One food in one state.

    `source_name` and `ndb` are the source's own name and number. `allergens_known` is False where the source gives no
    recipe for something made of several things: then the food may carry more than `allergens` says.
    """

    id: str
    name: str
    source_name: str
    kind: Kind
    state: State
    nutrients: Nutrients
    measures: tuple[Measure, ...]
    allergens: tuple[Allergen, ...]
    allergens_known: bool
    ndb: str
    source: str
    standing: Standing


def find_food(text: str) -> Food | None:
    """Find a food of the table by its id or its name; capitals and spacing do not matter."""
    return _BY_WORD.get(_plain(text))


def closest_foods(text: str) -> tuple[str, ...]:
    """Give the names of at most three foods that a mistyped or half-remembered name may have meant.

    Names that hold all its words come first; then slips of the keys, names that share its first word (`beef, stewed`
    is beef), and names that are spelt a little alike.
    """
    wanted = words_meant(text)
    if not wanted:
        return ()
    holding = (food for food in FOODS.values() if wanted <= words_meant(f"{food.name} {food.source_name}"))
    head = _head(text)
    akin = (food for food in FOODS.values() if head & _head(food.name))
    found = [
        *_in_order(holding, wanted, head),
        *difflib.get_close_matches(_plain(text), _NAMES, n=SUGGESTIONS, cutoff=_SLIP),
        *_in_order(akin, wanted, head),
        *difflib.get_close_matches(_plain(text), _NAMES, n=SUGGESTIONS, cutoff=_ALIKE),
    ]
    return tuple(dict.fromkeys(found))[:SUGGESTIONS]


def words_meant(text: str) -> frozenset[str]:
    """Give the words of a name as they are compared: one of each thing (`eggs`: egg), and by our names for it."""
    return frozenset(_meant(word) for word in re.findall(r"[a-z0-9]+", text.casefold()))


def _meant(word: str) -> str:
    one = word
    if len(word) > len("peas") and word.endswith("ies"):
        one = f"{word[:-3]}y"
    elif len(word) > len("gas") and word.endswith("s") and not word.endswith("ss"):
        one = word[:-2] if word.endswith(("oes", "ches", "shes")) else word[:-1]
    return _SAME_AS.get(one, _SAME_AS.get(word, one))


def _head(name: str) -> frozenset[str]:
    """Give the first and the last word before a name's first comma: one of them says what the food is."""
    words = re.findall(r"[a-z]+", name.casefold().partition(",")[0])
    return words_meant(" ".join({*words[:1], *words[-1:]}))


def _in_order(foods: Iterable[Food], wanted: frozenset[str], head: frozenset[str]) -> list[str]:
    """Order names by how many words they share, by what the food is, by its state, and the shortest first.

    Raw comes before cooked unless a way of cooking was named: a suggestion must not make something raw pass for safe.
    """
    state = State.COOKED if wanted & _WAYS_OF_COOKING else State.RAW
    keyed = [
        (-len(wanted & words_meant(food.name)), head != _head(food.name), food.state is not state, len(food.name), food)
        for food in foods
    ]
    return [food.name for *_, food in sorted(keyed, key=lambda one: one[:4])]


def _plain(text: str) -> str:
    return " ".join(text.casefold().split())


def _nutrients(row: Mapping[str, str]) -> Nutrients:
    return Nutrients(
        water_g=number_or_unknown(row["water_g"]),
        energy_kcal=number_or_unknown(row["energy_kcal"]),
        protein_g=number_or_unknown(row["protein_g"]),
        fat_g=number_or_unknown(row["fat_g"]),
        carbohydrate_g=number_or_unknown(row["carbohydrate_g"]),
        fibre_g=number_or_unknown(row["fibre_g"]),
        sugars_g=number_or_unknown(row["sugars_g"]),
        sodium_mg=number_or_unknown(row["sodium_mg"]),
    )


def _measures() -> Mapping[str, tuple[Measure, ...]]:
    measures: dict[str, list[Measure]] = {}
    for row in read_rows("measures.csv"):
        measure = Measure(amount=float(row["amount"]), unit=row["unit"], grams=float(row["grams"]))
        measures.setdefault(row["food"], []).append(measure)
    return {food: tuple(found) for food, found in measures.items()}


def _foods() -> Mapping[str, Food]:
    measures = _measures()
    return MappingProxyType(
        {
            row["id"]: Food(
                id=row["id"],
                name=row["name"],
                source_name=row["source_name"],
                kind=Kind(row["kind"]),
                state=State(row["state"]),
                nutrients=_nutrients(row),
                measures=measures.get(row["id"], ()),
                allergens=tuple(map(Allergen, listed(row["allergens"]))),
                allergens_known=row["allergens_known"] == "yes",
                ndb=row["ndb"],
                source=row["source"],
                standing=Standing.PUBLISHED,
            )
            for row in read_rows("foods.csv")
        }
    )


FOODS: Mapping[str, Food] = _foods()
_BY_WORD = {word: food for food in FOODS.values() for word in (food.id, _plain(food.name))}
_NAMES = tuple(food.name for food in FOODS.values())
