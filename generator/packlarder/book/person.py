"""Who goes on a trip: appetite, age, what they avoid, what they carry."""

from typing import Annotated

from pydantic import BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler, WithJsonSchema
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from packlarder.book.base import BookModel, slip
from packlarder.book.defaults import known
from packlarder.book.fields import Text, Written, YesNo, whole_between
from packlarder.book.limits import Appetite, Burden, DayWater
from packlarder.book.meant import did_you_mean
from packlarder.book.names import as_list
from packlarder.book.pair import pair_schema
from packlarder.faults import Spot
from packlarder.figures.allergens import Allergen, allergens_meant

OLDEST = 120
INFANT_BELOW_YEARS = 1
"""Below this age a person is an infant, counted in whole years."""


def _avoided(text: str) -> tuple[Allergen, ...]:
    """Read what somebody avoids; a word that can mean several allergens means all of them."""
    meant = allergens_meant(text)
    if meant:
        return meant
    hint = did_you_mean(text, list(Allergen))
    raise slip("unknown-allergen", f'no allergen is called "{text}"', f"{hint}the words are: {', '.join(Allergen)}")


_WORD = {"type": "string", "x-names": "avoided"}
AvoidedWord = Annotated[tuple[Allergen, ...], Written(_avoided, tuple, _WORD)]
"""An allergen in a plain word, and all that the word can mean."""
Avoided = Annotated[
    tuple[AvoidedWord, ...],
    BeforeValidator(as_list),
    WithJsonSchema({"anyOf": [_WORD, {"type": "array", "items": _WORD}]}),
]
"""One allergen that somebody avoids, or several in brackets."""
Age = Annotated[int, whole_between(0, OLDEST, help="write whole years; 0 for an infant")]
"""Whole years; 0 for an infant."""


class PersonDetail(BookModel):
    """What matters of somebody who comes along."""

    appetite: Appetite = known("100 %")
    """how much of a serving they eat: `120 %`; an infant on milk alone `0 %`"""
    age: Age | None = None
    """their age in whole years, 0 for an infant; left out, grown up"""
    avoids: Avoided = ()
    """allergens they must not eat: `[tree nuts, peanut]`"""
    at_risk: YesNo = False
    """whether germs harm them more than others: pregnant, old, very young, with a weak immune system"""
    carries: Burden | None = None
    """their share of the load, beside 100 % for others; left out, 100 %, and nothing for the youngest"""
    drinks: DayWater | None = None
    """what they drink in a day, if not what the trip says; an infant on milk alone `0 L`"""

    @property
    def infant(self) -> bool:
        """Tell whether it is an infant."""
        return self.age is not None and self.age < INFANT_BELOW_YEARS

    @property
    def unsaid(self) -> tuple[str, ...]:
        """Give the keys that say how much somebody eats and drinks, and are left out."""
        drinks = ("drinks",) if self.drinks is None else ()
        return drinks if "appetite" in self.model_fields_set else ("appetite", *drinks)

    @property
    def avoided(self) -> tuple[Allergen, ...]:
        """Give every allergen they avoid, once each."""
        return tuple(dict.fromkeys(one for meant in self.avoids for one in meant))


class Person:
    """Somebody who comes along; `name` is as the author wrote it."""

    __slots__ = ("detail", "name")

    def __init__(self, name: str, detail: PersonDetail) -> None:
        self.name = name
        self.detail = detail

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read a bare name, or `name: {...}`, one to an item."""
        return pair_schema(Text, PersonDetail, handler, make=cls, example="{appetite: 120 %}", wants="detail")

    @classmethod
    def __get_pydantic_json_schema__(cls, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        """Let an editor take the name alone too."""
        return {"anyOf": [{"type": "string", "minLength": 1}, handler(schema)]}


def with_bare_names(value: object) -> object:
    """Take a name alone in a list of people for somebody of whom there is nothing to say."""
    if not isinstance(value, list):
        return value
    for index, one in enumerate(value):
        if isinstance(one, dict) and len(one) == 1 and None in one.values():
            [name] = one
            help = f"take the colon away, or write what matters: `{name}: {{appetite: 120 %}}`"
            raise slip("empty-value", f'nothing stands after "{name}"', help, at=(index, name), spot=Spot.KEY)
    return [{one: {}} if isinstance(one, str) else one for one in value]
