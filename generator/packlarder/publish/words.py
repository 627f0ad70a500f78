"""The words of the interface, read from one catalogue per language."""

from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType

import yaml

FIRST_LANGUAGE = "en"


def read_words(folder: Path, language: str) -> Mapping[str, str]:
    """Read the catalogue of a language (`en`, `pt-BR`); a word it lacks comes from `pt`, then from English.

    Raises OSError when the English catalogue is not there, TypeError when one is no mapping of words: our own bugs.
    """
    words: dict[str, str] = {}
    for name in dict.fromkeys((FIRST_LANGUAGE, language.partition("-")[0], language)):
        file = folder / f"{name}.yaml"
        if name == FIRST_LANGUAGE or (name.isascii() and name.replace("-", "").isalpha() and file.is_file()):
            words.update(_catalogue(file))
    return MappingProxyType(words)


def _catalogue(file: Path) -> dict[str, str]:
    """Read one file of words."""
    # The loader in C is ten times as fast, but not every machine's PyYAML has it.
    loader = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    found: object = yaml.load(file.read_text(encoding="utf-8"), loader)  # noqa: S506 - a safe loader either way
    if not isinstance(found, dict):
        raise TypeError(f"{file.name} is no catalogue of words")
    strays = [key for key, text in found.items() if not (isinstance(key, str) and isinstance(text, str))]
    if strays:
        raise TypeError(f"{file.name} holds what is no word: {strays}")
    return found
