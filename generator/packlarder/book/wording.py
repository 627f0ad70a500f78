"""What is wrong with a value, in the author's words: one table, by pydantic's types of error."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from packlarder.book.meant import closest

MANY = 24
"""More words than these are not listed in a help."""

LONG = 60
"""Characters of a value that a message still repeats."""

SHAPES: Mapping[str, str] = {
    "string_type": "one value",
    "list_type": "a list",
    "tuple_type": "a list",
    "set_type": "a list",
    "frozen_set_type": "a list",
    "iterable_type": "a list",
    "dict_type": "a group of `key: value`",
    "mapping_type": "a group of `key: value`",
    "model_type": "a group of `key: value`",
    "model_attributes_type": "a group of `key: value`",
    "dataclass_type": "a group of `key: value`",
}
"""What is wanted, for each type of error that says that something quite different stands there."""

WRITE_IT = "write its value behind the colon"

HOW_TO_WRITE: Mapping[str, str] = {
    "one value": "write it on the line of its key; a text that begins with `[` or `{` needs quotes",
    "a list": "put each item on a line of its own that begins with `- `, or all of them in [ ]",
    "a group of `key: value`": "write its `key: value` lines under it, indented",
}


@dataclass(frozen=True, slots=True)
class Words:
    """A fault's own words: code, message, help."""

    code: str
    message: str
    help: str = ""


@dataclass(frozen=True, slots=True)
class Said:
    """What a table entry may speak of: the value as it stands, and the bounds it broke."""

    value: object
    facts: Mapping[str, Any]  # Any: pydantic's facts are numbers, texts and more

    @property
    def quoted(self) -> str:
        """The value in quotes, its beginning if it is long."""
        if not isinstance(self.value, str):
            return "this"
        return f'"{self.value}"' if len(self.value) <= LONG else f'"{self.value[:LONG]}…"'


def shape_of(value: object) -> str:
    """Say what kind of thing stands in the file."""
    if value is None:
        return "nothing"
    if isinstance(value, Mapping):
        return "a group of `key: value`"
    return "one value" if isinstance(value, str) else "a list"


def wrong_shape(
    wanted: Sequence[str], value: object, inner_keys: Sequence[str] = (), *, may_be_left_out: bool = False
) -> Words:
    """Say that something quite different is wanted; `wanted` are words of SHAPES."""
    if value is None:
        help_ = WRITE_IT if set(wanted) == {"one value"} else f"write {_either(wanted)}"
        help_ += ", or leave the whole line out" if may_be_left_out else ""
        return Words("empty-value", "nothing stands here", help_ + ("; [] says: none" if "a list" in wanted else ""))
    help_ = HOW_TO_WRITE[wanted[0]] if len(set(wanted)) == 1 else ""
    if inner_keys and isinstance(value, str):
        help_ = "; ".join(filter(None, (help_, known(inner_keys))))
    return Words("wrong-shape", f"{_either(wanted)} is wanted here, not {shape_of(value)}", help_)


def missing_key(key: str) -> Words:
    """Say that a key is missing."""
    return Words("missing-key", f"`{key}` is missing", f"add `{key}: ` and its value")


def unknown_key(key: str, value: object, meant: str | None, others: Sequence[str]) -> Words:
    """Say that a key is not known; `meant` is the closest one that is, `others` are all."""
    message = f"`{key}` is not a key that is known here"
    if meant and key.startswith(f"{meant}:"):
        return Words("no-space", f"a space is missing after `{meant}:`", f"write `{key.replace(':', ': ', 1)}`")
    if meant:
        return Words("unknown-key", message, f"did you mean `{meant}`?")
    comma = "inside { } a text that holds a comma needs quotes" if value is None else ""
    return Words("unknown-key", message, "; ".join(filter(None, (comma, known(others)))))


def known(words: Sequence[str]) -> str:
    """List the words that are known, if they are few."""
    if not words or len(words) > MANY:
        return ""
    return "known here are: " + ", ".join(f"`{word}`" for word in words)


def _either(wanted: Sequence[str]) -> str:
    once = list(dict.fromkeys(wanted))
    return once[0] if len(once) == 1 else ", ".join(once[:-1]) + " or " + once[-1]


def in_plain_words(kind: str, said: Said) -> Words:
    """Say what is wrong with a value; `kind` is pydantic's type of error."""
    if kind in CHOICES:
        return _unknown_word(said)
    words = TABLE.get(kind)
    if words is None:
        return Words("does-not-fit", f"{said.quoted} does not fit here")
    facts = {name: _printed(fact) for name, fact in said.facts.items()}
    if isinstance(said.value, Mapping | Sequence):
        facts["length"] = f"{len(said.value):,}"
    message = words.message.format_map(_Facts(facts, value=said.quoted))
    return Words(words.code, message, words.help.format_map(_Facts(facts)))


class _Facts(dict[str, str]):
    """Facts for a sentence; one that pydantic does not give leaves a gap, not an error."""

    def __missing__(self, name: str) -> str:
        return "some"


def _printed(fact: object) -> str:
    if isinstance(fact, float):
        return f"{fact:g}"
    return f"{fact:,}" if isinstance(fact, int) else str(fact)


_WHOLE = Words("not-a-whole-number", "{value} is not a whole number", "write a number like 2")
_NUMBER = Words("not-a-number", "{value} is not a number", "write a number like 2.5")
_YES_NO = Words("not-yes-or-no", "{value} is neither yes nor no", "write yes or no")
_DAY = Words("not-a-day", "{value} is not a day as it is written here", "write year, month, day, like 2027-03-12")
_OWN = Words("does-not-fit", "{error}")

TABLE: Mapping[str, Words] = {
    "too_short": Words("too-few", "at least {min_length} must stand here, not {length}"),
    "too_long": Words(
        "too-many",
        "at most {max_length} can stand here, not {length}",
        "in a list, begin each item on a line of its own with `- `",
    ),
    "string_too_short": Words("too-short", "at least {min_length} characters must stand here"),
    "string_too_long": Words("too-long", "at most {max_length} characters fit here", "say it shorter"),
    "string_pattern_mismatch": Words("does-not-fit", "{value} is not written as it must be here"),
    "greater_than": Words("out-of-range", "{value} is out of range: more than {gt} is wanted here"),
    "greater_than_equal": Words("out-of-range", "{value} is out of range: at least {ge} is wanted here"),
    "less_than": Words("out-of-range", "{value} is out of range: less than {lt} is wanted here"),
    "less_than_equal": Words("out-of-range", "{value} is out of range: at most {le} is wanted here"),
    "int_type": _WHOLE,
    "int_parsing": _WHOLE,
    "int_parsing_size": _WHOLE,
    "int_from_float": _WHOLE,
    "float_type": _NUMBER,
    "float_parsing": _NUMBER,
    "finite_number": _NUMBER,
    "decimal_type": _NUMBER,
    "decimal_parsing": _NUMBER,
    "bool_type": _YES_NO,
    "bool_parsing": _YES_NO,
    "date_type": _DAY,
    "date_parsing": _DAY,
    "date_from_datetime_parsing": _DAY,
    "date_from_datetime_inexact": _DAY,
    "value_error": _OWN,
    "assertion_error": _OWN,
}
"""By pydantic's type of error: our code, and sentences with its facts and `{value}` left open."""

CHOICES = frozenset(("enum", "literal_error"))
"""What says that a word is none of a closed list."""

_CHOICE = re.compile(r"'([^']*)'|\"([^\"]*)\"")


def _unknown_word(said: Said) -> Words:
    words = [one or other for one, other in _CHOICE.findall(str(said.facts.get("expected", "")))]
    if not isinstance(said.value, str):
        return wrong_shape(["one value"], said.value)
    meant = closest(said.value, words)
    help_ = f"did you mean `{meant}`?" if meant else known(words)
    return Words("unknown-word", f"{said.quoted} is not one of the words for this", help_)
