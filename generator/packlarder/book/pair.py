"""A line of a list that is a name and its amount: `beef crumbles: 60 g`."""

from collections.abc import Callable
from typing import Annotated, TypeVar

from pydantic import Field, GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from packlarder.book.base import slip
from packlarder.faults import Spot

V = TypeVar("V")

EXAMPLES = {"dish": "supper", "detail": "Ada"}
"""What stands before the colon in an example, by what stands behind it; a component else."""
LONGEST = 40
"""Characters of a name that an example repeats."""


def pair_schema(
    names: object,
    values: object,
    handler: GetCoreSchemaHandler,
    *,
    make: Callable[[str, V], object],
    example: str,
    wants: str = "amount",
) -> CoreSchema:
    """Give the schema of a mapping of one key, of which `make` makes the record.

    For faults, `wants` is the word for what stands behind the key, and `example` is one.
    """
    one = Annotated[dict[names, values], Field(min_length=1, max_length=1)]  # type: ignore[valid-type]  # given at run time

    def look(value: object) -> object:
        return name_with_amount(value, example, wants)

    def made(entry: dict[str, V]) -> object:
        ((name, value),) = entry.items()
        return make(name, value)

    pair = core_schema.no_info_before_validator_function(look, handler.generate_schema(one))
    return core_schema.no_info_after_validator_function(made, pair)


def name_with_amount(value: object, example: str, wants: str) -> object:
    """Let through a mapping of one key; raises slip(...) for what is nearly one."""
    if isinstance(value, str):
        raise slip("no-amount", f'"{value[:LONGEST]}" has no {wants}', f"write it like `{value[:LONGEST]}: {example}`")
    if value is None or isinstance(value, list):
        raise slip(
            "no-amount",
            f"a name with its {wants} is wanted here",
            f"write it like `{EXAMPLES.get(wants, 'leek rings')}: {example}`",
        )
    if isinstance(value, dict) and len(value) > 1:
        first, second, *_ = value
        message = f'"{first}" and "{second}" stand in one item of the list'
        raise slip("two-in-one", message, "begin each on a line of its own with `- `", at=(second,), spot=Spot.KEY)
    if isinstance(value, dict) and None in value.values():
        (name,) = value
        help = f"write it like `{name}: {example}`"
        raise slip("no-amount", f'"{name}" has no {wants}', help, at=(name,), spot=Spot.KEY)
    return value


def not_all_bare(value: object, example: str) -> object:
    """Let through what is no list of bare names; raises slip(...) once for such a list."""
    if isinstance(value, list) and len(value) > 1 and all(isinstance(one, str) for one in value):
        help = f"write a line for each, with its amount: `- {value[0][:LONGEST]}: {example}`"
        raise slip("no-amount", "none of these has an amount", help)
    return value
