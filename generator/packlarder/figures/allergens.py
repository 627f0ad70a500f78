"""Allergens: a closed vocabulary of what two laws list, and how lists of them are held against each other."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from packlarder.figures.figure import Standing
from packlarder.figures.rows import listed, read_rows


class Law(StrEnum):
    """The two lists that labels follow."""

    US_NINE = "US nine"
    """Major food allergens of the United States, with sesame since 2023."""
    EU_FOURTEEN = "EU fourteen"
    """Annex II of EU Regulation 1169/2011."""


class Allergen(StrEnum):
    """The words that `contains` and a person's `avoids` may list."""

    MILK = "milk"
    EGG = "egg"
    FISH = "fish"
    CRUSTACEANS = "crustaceans"
    MOLLUSCS = "molluscs"
    TREE_NUTS = "tree nuts"
    ALMOND = "almond"
    HAZELNUT = "hazelnut"
    WALNUT = "walnut"
    CASHEW = "cashew"
    PECAN = "pecan"
    BRAZIL_NUT = "brazil nut"
    PISTACHIO = "pistachio"
    MACADAMIA = "macadamia"
    PINE_NUT = "pine nut"
    PEANUT = "peanut"
    GLUTEN = "gluten"
    WHEAT = "wheat"
    SPELT = "spelt"
    RYE = "rye"
    BARLEY = "barley"
    OATS = "oats"
    SOYA = "soya"
    SESAME = "sesame"
    CELERY = "celery"
    MUSTARD = "mustard"
    LUPIN = "lupin"
    SULPHITES = "sulphites"


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenFacts:
    """One allergen: the wider one it is part of, the laws that list it, and plain words for a reader."""

    allergen: Allergen
    part_of: Allergen | None
    laws: frozenset[Law]
    plain: str
    also_called: tuple[str, ...]
    facts: tuple[str, ...]
    standing: Standing


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """A declared list held against what a food is known to carry.

    `missing` is carried and not declared at all. `named_broadly` is declared only by a wider word ("tree nuts" for
    almond). `beyond` is declared though the food does not carry it: no fault, an ingredient may have been added.
    """

    missing: tuple[Allergen, ...]
    named_broadly: tuple[Allergen, ...]
    beyond: tuple[Allergen, ...]


def allergens_meant(text: str) -> tuple[Allergen, ...]:
    """Read a word for an allergen: one answer is it, several mean "ask which", none means the word is unknown."""
    return _WORDS.get(" ".join(text.casefold().split()), ())


def wider(allergen: Allergen) -> tuple[Allergen, ...]:
    """Give what the allergen is part of, the nearest first: spelt -> wheat, gluten."""
    parent = ALLERGENS[allergen].part_of
    return () if parent is None else (parent, *wider(parent))


def with_wider(allergens: Iterable[Allergen]) -> tuple[Allergen, ...]:
    """Give the allergens and all that they imply, once each, in the order of the vocabulary."""
    whole = {one for allergen in allergens for one in (allergen, *wider(allergen))}
    return tuple(allergen for allergen in Allergen if allergen in whole)


def concerns(avoided: Allergen, contained: Iterable[Allergen]) -> tuple[Allergen, ...]:
    """Give those of the contained allergens that someone who avoids one must not eat.

    A wider word in the food counts too: who avoids almond can not eat what says only "tree nuts".
    """
    return tuple(one for one in contained if one is avoided or avoided in wider(one) or one in wider(avoided))


def listed_by(law: Law) -> tuple[Allergen, ...]:
    """Give the headings of a law's list: what it lists that is not part of another thing it lists."""
    named = [allergen for allergen in Allergen if law in ALLERGENS[allergen].laws]
    return tuple(allergen for allergen in named if not any(parent in named for parent in wider(allergen)))


def compare(declared: Iterable[Allergen], carried: Iterable[Allergen]) -> Comparison:
    """Hold a declared list against what a food carries by the table."""
    said, held = tuple(declared), tuple(carried)
    said_with_wider = with_wider(said)
    unnamed = [allergen for allergen in held if allergen not in said_with_wider]
    broadly = tuple(allergen for allergen in unnamed if any(parent in said for parent in wider(allergen)))
    return Comparison(
        missing=tuple(allergen for allergen in unnamed if allergen not in broadly),
        named_broadly=broadly,
        beyond=tuple(allergen for allergen in said if not concerns(allergen, held)),
    )


def _allergen_facts(row: Mapping[str, str]) -> AllergenFacts:
    return AllergenFacts(
        allergen=Allergen(row["allergen"]),
        part_of=Allergen(row["part_of"]) if row["part_of"] else None,
        laws=frozenset(map(Law, listed(row["laws"]))),
        plain=row["plain"],
        also_called=listed(row["also_called"]),
        facts=listed(row["facts"]),
        standing=Standing(row["standing"]),
    )


def _words() -> Mapping[str, tuple[Allergen, ...]]:
    words: dict[str, tuple[Allergen, ...]] = {}
    for facts in ALLERGENS.values():
        for word in (facts.allergen.value, *facts.also_called):
            words[word] = (*words.get(word, ()), facts.allergen)
    return MappingProxyType(words)


ALLERGENS: Mapping[Allergen, AllergenFacts] = MappingProxyType(
    {facts.allergen: facts for facts in map(_allergen_facts, read_rows("allergens.csv"))}
)
_WORDS = _words()
