"""A line of a list that is a name and its amount: `beef crumbles: 60 g`."""

from collections.abc import Callable
from typing import Annotated, TypeGuard, TypeVar

from pydantic import Field, GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from packlarder.book.base import BookModel, in_words, slip
from packlarder.faults import Spot

V = TypeVar("V")

EXAMPLES = {"dish": "supper", "detail": "Ada"}
"""What stands before the colon in an example, by what stands behind it; a component else."""
LONGEST = 40
"""Characters of a name that an example repeats."""
LONGEST_LINE = 100
"""Characters of a whole line that an example writes out."""
CODES = {"dish": "no-dish"}
"""The code where nothing stands behind a name, by what is wanted there; `no-amount` else."""


def pair_schema(
    names: object,
    values: object,
    handler: GetCoreSchemaHandler,
    *,
    make: Callable[[str, V], object],
    example: str,
    wants: str = "amount",
    alone: str = "",
) -> CoreSchema:
    """Give the schema of a mapping of one key, of which `make` makes the record.

    For faults, `wants` is the word for what stands behind the key, and `example` is one; `alone` is the key for which
    a value stands that is written alone.
    """
    inner = frozenset(map(in_words, values.model_fields)) if _is_model(values) else frozenset()
    one = Annotated[dict[names, values], Field(min_length=1, max_length=1)]  # type: ignore[valid-type]  # given at run time

    def look(value: object) -> object:
        _not_beside(value, inner, alone)
        return name_with_amount(value, example, wants)

    def made(entry: dict[str, V]) -> object:
        ((name, value),) = entry.items()
        return make(name, value)

    pair = core_schema.no_info_before_validator_function(look, handler.generate_schema(one))
    return core_schema.no_info_after_validator_function(made, pair)


def _is_model(values: object) -> TypeGuard[type[BookModel]]:
    return isinstance(values, type) and issubclass(values, BookModel)


def _not_beside(value: object, inner: frozenset[str], alone: str) -> None:
    """Raise slip(...) where keys that belong behind a name stand beside it, a line further down."""
    if not isinstance(value, dict) or len(value) < 2:
        return
    (name, first), *rest = value.items()
    if name in inner or not all(key in inner for key, _ in rest):
        return
    behind = first if isinstance(first, dict) else {alone: first} if alone and first is not None else {}
    line = f"- {name}: {_inline({**behind, **dict(rest)})}"
    if len(line) > LONGEST_LINE:
        line = f"- {name}: {{{', '.join(f'{key}: …' for key in (*behind, *dict(rest)))}}}"
    key = rest[0][0]
    raise slip(
        "two-in-one",
        f'`{key}` stands beside "{name}", and belongs behind it',
        f"write it in one line: `{line}`",
        at=(key,),
        spot=Spot.KEY,
    )


def _inline(value: object) -> str:
    """Write plain data as it stands in one line of a file."""
    if isinstance(value, dict):
        return f"{{{', '.join(f'{key}: {_inline(one)}' for key, one in value.items())}}}"
    return f"[{', '.join(map(_inline, value))}]" if isinstance(value, list) else str(value or "")


def name_with_amount(value: object, example: str, wants: str) -> object:
    """Let through a mapping of one key; raises slip(...) for what is nearly one."""
    code = CODES.get(wants, "no-amount")
    if isinstance(value, str):
        raise slip(code, f'"{value[:LONGEST]}" has no {wants}', f"write it like `{value[:LONGEST]}: {example}`")
    if value is None or isinstance(value, list):
        raise slip(
            code,
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
        raise slip(code, f'"{name}" has no {wants}', help, at=(name,), spot=Spot.KEY)
    return value


def not_all_bare(value: object, example: str) -> object:
    """Let through what is no list of bare names; raises slip(...) once for such a list."""
    if isinstance(value, list) and len(value) > 1 and all(isinstance(one, str) for one in value):
        help = f"write a line for each, with its amount: `- {value[0][:LONGEST]}: {example}`"
        raise slip("no-amount", "none of these has an amount", help)
    return value
