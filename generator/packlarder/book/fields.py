"""The kinds of value that models ask for, each read from the text that stands in the file."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from typing import Annotated

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, PydanticKnownError, core_schema

from packlarder.book.base import slip
from packlarder.measure import Dimension, Quantity, Unreadable, parse

TEXT_CAP = 200
PROSE_CAP = 4_000
ID_CAP = 80
WHOLE_CAP = 9_999
FIRST_YEAR, LAST_YEAR = 1900, 2199
"""Days outside these years are slips of the pen, and sums with days must not run out of calendar."""

YES_NO = {"yes": True, "true": True, "on": True, "no": False, "false": False, "off": False}

_ID = re.compile(r"[a-z0-9-]+")
_DAY = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_LOOSE_DAY = re.compile(r"([0-9]{4})[-/. ]([0-9]{1,2})[-/. ]([0-9]{1,2})")
_WHOLE = re.compile(r"\+?[0-9]{1,9}")
_PARAGRAPH_BREAK = re.compile(r"\n[ \t]*\n")


@dataclass(frozen=True, slots=True, eq=False)
class Written:
    """How one kind of value is read from its text, and what the JSON Schema says of it.

    `read` takes the text, without blanks around it, and raises `slip(...)` when it can not be read.
    A value of type `kind` that is no text passes as it is, so that code can make a model without writing text.
    """

    read: Callable[[str], object]
    kind: type
    schema: JsonSchemaValue

    def take(self, value: object) -> object:
        """Read one value, as pydantic hands it over."""
        if isinstance(value, str):
            return self.read(value.strip())
        if isinstance(value, self.kind):
            return value
        raise PydanticKnownError("string_type")

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Tell pydantic to leave the whole reading to `take`."""
        return core_schema.no_info_plain_validator_function(self.take)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        """Say what an editor should offer and accept."""
        return {"type": "string", **self.schema}


def _text(text: str) -> str:
    if not text:
        raise slip("empty-text", "there is nothing in these quotes", "write the text, or leave the whole line out")
    if "\n" in text:
        raise slip("more-than-one-line", "this runs over several paragraphs; one line is wanted here", "say it shorter")
    return _capped(text, TEXT_CAP)


def _prose(text: str) -> tuple[str, ...]:
    if not text:
        raise slip("empty-text", "there is nothing in these quotes", "write the text, or leave the whole line out")
    return tuple(" ".join(part.split()) for part in _PARAGRAPH_BREAK.split(_capped(text, PROSE_CAP)))


def _capped(text: str, cap: int) -> str:
    if len(text) > cap:
        raise slip("too-long", f"this is {len(text):,} characters long; at most {cap:,} fit here", "say it shorter")
    return text


def _id(text: str) -> str:
    if not _ID.fullmatch(text):
        raise slip(
            "not-an-id",
            f'"{text}" can not be an id: only the letters a to z, figures and hyphens can stand in it',
            f"write it like `{_nearest_id(text)}`",
        )
    return _capped(text, ID_CAP)


def _nearest_id(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-")[:ID_CAP] or "leek-rings"


def read_day(text: str) -> date:
    """Read a day written 2027-03-12; raises slip(...) for what is none."""
    parts = _DAY.fullmatch(text)
    if not parts:
        raise slip("not-a-day", f'"{text}" is not a day as it is written here', _day_help(text))
    year, month, day = map(int, parts.groups())
    if not FIRST_YEAR <= year <= LAST_YEAR:
        raise slip("not-a-day", f"the year {year} can not be meant", "write year, month, day, like 2027-03-12")
    try:
        return date(year, month, day)
    except ValueError:
        raise slip("no-such-day", f"there is no day {text} in the calendar", "write year, month, day") from None


def _day_help(text: str) -> str:
    loose = _LOOSE_DAY.fullmatch(text)
    if loose:
        year, month, day = map(int, loose.groups())
        return f"write it as {year:04}-{month:02}-{day:02}"
    return "write year, month, day, like 2027-03-12"


def _yes_or_no(text: str) -> bool:
    answer = YES_NO.get(text.lower())
    if answer is None:
        raise slip("not-yes-or-no", f'"{text}" is neither yes nor no', "write yes or no")
    return answer


def whole_between(low: int, high: int) -> Written:
    """Give the kind of a whole number within bounds.

    For use as `Annotated[int, whole_between(1, 12)]`.
    """

    def read(text: str) -> int:
        if not _WHOLE.fullmatch(text):
            raise slip("not-a-whole-number", f'"{text}" is not a whole number', f"write a number like {max(low, 2)}")
        number = int(text)
        if not low <= number <= high:
            raise slip("out-of-range", f"{number:,} is out of range: from {low:,} to {high:,} fits here")
        return number

    return Written(read, int, {"type": ["integer", "string"], "minimum": low, "maximum": high})


def quantity_of(*dimensions: Dimension, like: str, below_zero: bool = False, nought: bool = False) -> Written:
    """Give the kind of a quantity in one of these dimensions; `like` is an example for the JSON Schema."""

    def read(text: str) -> Quantity:
        found = parse(text, dimensions, zero=nought)
        if isinstance(found, Unreadable):
            raise slip("unreadable-quantity", found.message, found.help)
        if found.number < 0 and not below_zero:
            raise slip("below-zero", f'"{text}" is less than nothing', f"write it like {like}")
        return found

    return Written(read, Quantity, {"type": ["string", "number"], "examples": [like]})


Text = Annotated[str, Written(_text, str, {"minLength": 1, "maxLength": TEXT_CAP})]
"""One line of text."""
Prose = Annotated[tuple[str, ...], Written(_prose, tuple, {"minLength": 1, "maxLength": PROSE_CAP})]
"""Paragraphs, one text each; in the file an empty line parts them."""
Id = Annotated[str, Written(_id, str, {"pattern": f"^{_ID.pattern}$", "maxLength": ID_CAP})]
"""What files are called by: small letters, figures and hyphens."""
Day = Annotated[date, Written(read_day, date, {"format": "date", "examples": ["2027-03-12"]})]
"""A day of the calendar, written 2027-03-12."""
YesNo = Annotated[bool, Written(_yes_or_no, bool, {"type": ["boolean", "string"], "examples": ["yes", "no"]})]
"""Yes or no (also true, false, on and off, since editors like to put them)."""
Whole = Annotated[int, whole_between(1, WHOLE_CAP)]
"""A whole number, at least 1."""

Weight = Annotated[Quantity, quantity_of(Dimension.WEIGHT, like="60 g")]
Volume = Annotated[Quantity, quantity_of(Dimension.VOLUME, like="300 mL")]
Count = Annotated[Quantity, quantity_of(Dimension.COUNT, like="2 eggs")]
Minutes = Annotated[Quantity, quantity_of(Dimension.TIME, like="10 min")]
Degrees = Annotated[Quantity, quantity_of(Dimension.TEMPERATURE, like="74 °C", below_zero=True)]
Length = Annotated[Quantity, quantity_of(Dimension.LENGTH, like="1200 m")]
Share = Annotated[Quantity, quantity_of(Dimension.SHARE, like="15 %")]
Energy = Annotated[Quantity, quantity_of(Dimension.ENERGY, like="350 kcal", nought=True)]
Nutrient = Annotated[Quantity, quantity_of(Dimension.WEIGHT, like="5 g", nought=True)]
"""Grams of a nutrient as a label prints them; 0 g is an answer."""
Power = Annotated[Quantity, quantity_of(Dimension.POWER, like="2 kW")]
Amount = Annotated[Quantity, quantity_of(Dimension.WEIGHT, Dimension.VOLUME, Dimension.COUNT, like="60 g")]
"""How much of a food: a weight, a volume or a count."""
WeightOrCount = Annotated[Quantity, quantity_of(Dimension.WEIGHT, Dimension.COUNT, like="900 g")]
"""How much of a fresh food: a weight, or a count of what is known to weigh something."""
