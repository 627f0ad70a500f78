"""How files refer to each other: by id or by name, one or several."""

from collections.abc import Iterable
from typing import Annotated

from pydantic import BeforeValidator, WithJsonSchema

from packlarder.book.base import slip
from packlarder.book.fields import Text, Written
from packlarder.book.meant import did_you_mean
from packlarder.figures.allergens import Allergen, allergens_meant
from packlarder.figures.fuels import FUELS
from packlarder.figures.stoves import STOVES


def as_list(value: object) -> object:
    """Take one value for a list of one, so that authors need no brackets."""
    return [value] if isinstance(value, str) else value


def _one_or_many(names_of: str) -> WithJsonSchema:
    name = {"type": "string", "x-names": names_of}
    return WithJsonSchema({"anyOf": [name, {"type": "array", "items": name, "minItems": 1}]})


FoodName = Annotated[Text, WithJsonSchema({"type": "string", "x-names": "food"})]
"""A food of the table or of foods.yaml, by id or name."""
ComponentName = Annotated[Text, WithJsonSchema({"type": "string", "x-names": "component"})]
"""A component of the book, by id or name."""
DishName = Annotated[Text, WithJsonSchema({"type": "string", "x-names": "dish"})]
"""A dish of the book, by id or name."""
PartNames = Annotated[tuple[Text, ...], BeforeValidator(as_list), _one_or_many("component")]
"""One part of the dish, or several in brackets."""
ComponentNames = Annotated[tuple[Text, ...], BeforeValidator(as_list), _one_or_many("component")]
"""One component of the book, or several in brackets."""
Texts = Annotated[
    tuple[Text, ...],
    BeforeValidator(as_list),
    WithJsonSchema({"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}),
]
"""One line of text, or several."""


IN_WORDS_NONE = frozenset({"none", "no", "nothing", "no allergens", "-"})


def _allergen(text: str) -> Allergen:
    if text.casefold() in IN_WORDS_NONE:
        raise slip("unknown-allergen", f'"{text}" is no allergen', "for none write `[]`: none, we looked")
    meant = allergens_meant(text)
    if len(meant) == 1:
        return meant[0]
    if meant:
        raise slip("which-allergen", f'"{text}" can mean several things', f"write which: {' or '.join(meant)}")
    hint = did_you_mean(text, list(Allergen))
    raise slip("unknown-allergen", f'no allergen is called "{text}"', f"{hint}the words are: {', '.join(Allergen)}")


AllergenWord = Annotated[Allergen, Written(_allergen, Allergen, {"type": "string", "x-names": "allergen"})]
"""An allergen in a plain word."""
Allergens = Annotated[tuple[AllergenWord, ...], BeforeValidator(as_list), _one_or_many("allergen")]
"""Allergens; `[]` says: none, we looked."""


def one_of(names: Iterable[str], code: str, what: str) -> Written:
    """Give the kind of a name from a closed list of ours; `what` is the word for one of them."""
    known = tuple(names)

    def read(text: str) -> str:
        if text in known:
            return text
        hint = did_you_mean(text, known, least=0.5)
        raise slip(code, f'no {what} is called "{text}"', f"{hint}known are: {', '.join(known)}")

    return Written(read, str, {"type": "string", "enum": list(known)})


FuelName = Annotated[str, one_of(FUELS, "unknown-fuel", "fuel")]
"""A fuel of the table."""
StoveKind = Annotated[str, one_of(STOVES, "unknown-stove-kind", "type of stove")]
"""A type of stove of the table."""
