"""The catalogue of what the rules say: one TOML file a language, one table a rule.

A second language is a second file.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from types import MappingProxyType

FIRST_LANGUAGE = "en"
MOST_WORDS = 25
"""The words that a rule's text may have: what stands on a page must be read at a glance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleText:
    """What one rule says.

    `text` is the caution as it holds for every case, without slots. `here` says it of the case at hand, with slots such
    as `{part}` ("" if there is nothing to add); it is the message of a fault. `help` is the way out, with slots too.
    """

    title: str
    text: str
    here: str = ""
    help: str = ""


@cache
def texts_in(language: str) -> Mapping[str, RuleText]:
    """Give the texts of all rules by rule id, in the first language where there is no file in the one asked for."""
    file = files(__name__).joinpath(f"{language}.toml")
    if not file.is_file():
        return texts_in(FIRST_LANGUAGE)
    tables = tomllib.loads(file.read_text(encoding="utf-8"))
    return MappingProxyType({id: RuleText(**table) for id, table in tables.items()})
