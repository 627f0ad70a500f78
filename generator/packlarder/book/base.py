"""What every model of a book's file has in common."""

from collections.abc import Sequence
from typing import ClassVar

from pydantic import BaseModel, ConfigDict
from pydantic_core import PydanticCustomError

from packlarder.faults import Key, Spot

CARRIED_THROUGH = "x-"
"""Keys that begin so belong to the household: they are accepted everywhere and never looked at."""


def in_words(name: str) -> str:
    """Give the key that stands in a file for a field: `went_in` is `went in`, `for_` is `for`."""
    return name.rstrip("_").replace("_", " ")


class BookModel(BaseModel):
    """A frozen record of one mapping in a file; a key it does not know is a fault.

    Code makes one by field names (`went_in=`); a file by words (`went in:`), through `validate.validate`.
    """

    may_stand_empty: ClassVar[frozenset[str]] = frozenset()
    """Keys that may have nothing behind them; behind any other that is a slip."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=in_words,
        validate_by_name=True,
        validate_by_alias=True,
        json_schema_extra={"patternProperties": {f"^{CARRIED_THROUGH}": {}}},
    )


def slip(
    code: str,
    message: str,
    help: str = "",
    *,
    at: Sequence[Key] = (),
    spot: Spot = Spot.VALUE,
    also: Sequence[Sequence[Key]] = (),
) -> PydanticCustomError:
    """Make what a validator raises for an author's mistake; `validate.validate` turns it into a Fault.

    `at` and `also` are keys, as they stand in the file, that lead on from the value that is being validated.
    """
    facts = {"message": message, "help": help, "at": tuple(at), "spot": spot, "also": tuple(map(tuple, also))}
    return PydanticCustomError(code, "{message}", facts)
