"""Our words for what pydantic finds."""

import re
from typing import Any, get_args

import pytest
from pydantic import BaseModel, TypeAdapter
from pydantic_core import PydanticCustomError, PydanticKnownError, core_schema
from tests.faults.cases import CASES
from tests.faults.sample import Jar

from packlarder.book.meant import closest
from packlarder.book.validate import validate
from packlarder.book.wording import SHAPES, TABLE, Said, in_plain_words, wrong_shape
from packlarder.faults import Fault, Place, Spot

PYTHON = re.compile(
    r"\bNone\b|\b(?i:str|string|dict|dictionary|int|integer|float|bool|boolean|null|tuple|input|instance|object|"
    r"mapping|sequence|scalar|parsing|parse|token|anchor|alias|node|stream|block|flow|validator?|schema|union|tag|"
    r"literal|enum|field|extra|forbidden|pydantic|yaml|traceback)\b"
)
"""Words of Python, pydantic and PyYAML that an author should never meet."""

FACTS: dict[str, Any] = {  # Any: pydantic's facts are numbers, texts and more
    "gt": 1, "ge": 1, "lt": 12, "le": 12.5, "min_length": 1, "max_length": 3, "actual_length": 4, "pattern": "x",
    "error": "it can not be so", "expected": "'raw', 'cooked' or \"it's dry\"",
}  # fmt: skip


@pytest.mark.parametrize("value", ["leek", None, ["leek"], {"leek": "x"}])
def test_no_error_speaks_python(value: object) -> None:
    """Whatever type of error pydantic has, what we say of it holds no word of Python's and no open gap."""
    kinds = get_args(core_schema.ErrorType)
    assert len(kinds) > 80
    for kind in kinds:
        words = wrong_shape((SHAPES[kind],), value) if kind in SHAPES else in_plain_words(kind, Said(value, FACTS))
        for text in (words.message, words.help):
            assert not PYTHON.search(text), text
            assert not set("{}") & set(text.replace("{ }", "").replace("`{`", "")), text
        assert words.message
        assert re.fullmatch(r"[a-z]+(-[a-z]+)*", words.code)


CONTEXTS: dict[core_schema.ErrorType, dict[str, Any]] = {  # Any: as above
    "too_short": {"field_type": "List", "min_length": 1, "actual_length": 0},
    "too_long": {"field_type": "List", "max_length": 1, "actual_length": 2},
    "string_too_short": {"min_length": 1},
    "string_too_long": {"max_length": 1},
    "greater_than": {"gt": 1},
    "greater_than_equal": {"ge": 1},
    "less_than": {"lt": 1},
    "less_than_equal": {"le": 1},
    "value_error": {"error": ValueError("it can not be so")},
    "assertion_error": {"error": "it can not be so"},
}
"""What pydantic tells with its types of error; it refuses to make one with less."""


def test_every_gap_in_the_table_is_filled_by_pydantic() -> None:
    """The sentences of the table use only facts that pydantic gives with that type of error."""
    contexts: dict[str, dict[str, Any]] = {}  # Any: as above
    for kind, facts in CONTEXTS.items():
        contexts[kind] = PydanticKnownError(kind, facts).context or {}
    for name, words in TABLE.items():
        gaps = set(re.findall(r"{(\w+)}", words.message + words.help)) - {"value", "length"}
        assert gaps <= set(contexts.get(name, {})), name


def test_no_expected_text_speaks_python() -> None:
    """The messages that the files of this folder give hold no word of Python's, pydantic's or PyYAML's."""
    for case in CASES:
        for line in case.golden.read_text(encoding="utf-8").splitlines():
            said = line.partition("]: ")[2] if "]: " in line and line.startswith("recipes/") else ""
            said += line.removeprefix("  help: ") if line.startswith("  help: ") else ""
            assert not PYTHON.search(re.sub(r"`[^`]*`|\"[^\"]*\"", "", said)), f"{case.name}: {said}"


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("nmae", "name"),
        ("Went_In", "went in"),
        ("went-in", "went in"),
        ("SERVES", "serves"),
        ("colour", None),
        ("", None),
    ],
)
def test_the_closest_key_is_found(word: str, meant: str | None) -> None:
    """Letter case, hyphens and underscores do not count; what is too far off gives nothing."""
    assert closest(word, ["name", "went in", "serves"]) == meant


def test_a_value_of_a_mile_is_cut() -> None:
    """A message repeats no more than the beginning of a long value."""
    assert len(in_plain_words("enum", Said("x" * 5_000, {"expected": "'raw'"})).message) < 120


class Plain(BaseModel):
    """A model of pydantic's own kinds of value, without our fields."""

    number: int = 0
    share: float = 0
    flag: bool = False


def test_pydantics_own_kinds_are_told_in_our_words() -> None:
    """A model that uses plain types still speaks to the author."""
    made = validate(Plain, "plain.yaml", {"number": "two", "share": "half", "flag": "perhaps"})
    assert isinstance(made, tuple)
    assert [fault.message for fault in made] == [
        '"two" is not a whole number',
        '"half" is not a number',
        '"perhaps" is neither yes nor no',
    ]


def test_a_model_is_made_of_what_is_right() -> None:
    """A sound mapping becomes the model, its keys in words."""
    made = validate(
        Jar, "jar.yaml", {"name": "Leek", "went in": "raw", "contains": [], "x-shelf": "top", "serves": "3"}
    )
    assert made == Jar(name="Leek", went_in="raw", contains=(), serves=3)


def test_a_fault_knows_its_keys() -> None:
    """A key that is wrong is pointed at by its key, a value by its value; what a rule says more is kept."""
    made = validate(Jar, "jar.yaml", {"nmae": "x", "contains": [], "loaded": {"fresh": "90 g", "dry": "1 kg"}})
    assert made == (
        Fault(
            place=Place(file="jar.yaml", path=("nmae",), spot=Spot.KEY),
            code="unknown-key",
            message="`nmae` is not a key that is known here",
            help="did you mean `name`?",
        ),
        Fault(
            place=Place(file="jar.yaml", path=("loaded", "dry")),
            code="not-lighter",
            message="it can not weigh more dry than fresh",
            help="weigh again",
            also=(Place(file="jar.yaml", path=("loaded", "fresh")),),
        ),
    )


def test_an_error_of_any_validator_is_taken_as_it_is() -> None:
    """A code of a validator's own, with a sentence and a help, becomes a fault with the same words."""

    def refuse(value: object) -> object:
        raise PydanticCustomError("too-salty", "{what} is too salty", {"what": value, "help": "rinse it"})

    kind = TypeAdapter(dict[str, str])
    assert kind.validate_python({"a": "b"}) == {"a": "b"}

    class Salty(BaseModel):
        part: str

        @classmethod
        def __get_pydantic_core_schema__(cls, source: Any, handler: Any) -> core_schema.CoreSchema:  # noqa: ANN401 - pydantic's own signature
            return core_schema.no_info_before_validator_function(refuse, handler(source))

    made = validate(Salty, "a.yaml", "ham")
    assert made == (Fault(place=Place(file="a.yaml"), code="too-salty", message="ham is too salty", help="rinse it"),)
