"""Sizes of units, held against pint and against the table of check values."""

import csv
import re
from pathlib import Path

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from packlarder.figures.units import LABEL_CUP
from packlarder.measure import UNITS, Dimension, Quantity, Unit, parse

DATA = Path(__file__).parent / "data"

PINT_NAMES = {
    "mL": "milliliter",
    "cL": "centiliter",
    "dL": "deciliter",
    "L": "liter",
    "tsp": "teaspoon",
    "tbsp": "tablespoon",
    "fl oz": "fluid_ounce",
    "pint": "pint",
    "quart": "quart",
    "gallon": "gallon",
    "°C": "degC",
    "°F": "degF",
    "in": "inch",
    "ft": "foot",
    "min": "minute",
    "h": "hour",
    "s": "second",
    "%": "percent",
    "kcal": "kilocalorie",
    "kJ": "kilojoule",
}
BASES = {
    Dimension.WEIGHT: "gram",
    Dimension.VOLUME: "milliliter",
    Dimension.TIME: "minute",
    Dimension.TEMPERATURE: "degC",
    Dimension.LENGTH: "meter",
    Dimension.SHARE: "dimensionless",
    Dimension.ENERGY: "kilocalorie",
    Dimension.POWER: "kilowatt",
}
WORDS = {
    "US gal": "gallon",
    "US pt": "pint",
    "US cup": "cup",
    "US fl oz": "fl oz",
    "US tbsp": "tbsp",
    "degF": "°F",
    "av": "",
}
NOT_UNITS_OF_OURS = {"1 Btu(IT)", "1 inHg", "1 psi"}

REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()


def rows(check: str) -> list[tuple[str, float]]:
    """The rows of one check: what goes in, and what is expected."""
    with (DATA / "physics_checks.csv").open(encoding="utf-8", newline="") as file:
        return [(row["inputs"], float(row["expected"])) for row in csv.DictReader(file) if row["check"] == check]


def base(text: str) -> float:
    """An amount in its base unit."""
    found = parse(text)
    assert isinstance(found, Quantity), found
    return found.base


def ours(text: str) -> str:
    """Say an amount of the table in our words."""
    for theirs, word in WORDS.items():
        text = text.replace(theirs, word)
    return text.strip()


@pytest.mark.parametrize("unit", UNITS, ids=lambda unit: unit.name)
@given(number=st.floats(min_value=0.01, max_value=1e6))
def test_every_unit_agrees_with_pint(unit: Unit, number: float) -> None:
    """A number of any unit of ours comes to the same base amount as in pint."""
    theirs = REGISTRY.Quantity(number, PINT_NAMES.get(unit.name, unit.name)).to(BASES[unit.dimension]).magnitude
    assert Quantity(number=number, unit=unit).base == pytest.approx(theirs, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("inputs", "expected"), [row for row in rows("unit_exact") if row[0] not in NOT_UNITS_OF_OURS], ids=str
)
def test_exact_sizes(inputs: str, expected: float) -> None:
    """Exact sizes of the table (NIST Handbook 44 by way of pint), to nine digits; feet are in metres there as here."""
    assert base(ours(inputs)) == pytest.approx(expected, rel=1e-6 if "degF" in inputs else 1e-9)


@pytest.mark.parametrize(("inputs", "expected"), rows("unit_nist_kitchen"), ids=str)
def test_kitchen_sizes(inputs: str, expected: float) -> None:
    """The rounded table for kitchens (NIST) is within 2 % of the exact sizes."""
    assert base(inputs) == pytest.approx(expected, rel=0.02)


def test_the_label_cup_is_not_our_cup() -> None:
    """21 CFR 101.9(b)(5)(viii) makes the cup of nutrition labels 240 mL; a cup of ours is 236.6."""
    label = dict(rows("unit_nutrition_label_US"))
    assert label["1 cup"] == LABEL_CUP.value
    assert base("1 cup") < LABEL_CUP.value


def test_the_table_has_rows_for_units() -> None:
    """The table was read: 12 exact sizes, 7 for kitchens, 4 of labels."""
    assert [len(rows(check)) for check in ("unit_exact", "unit_nist_kitchen", "unit_nutrition_label_US")] == [12, 7, 4]
    assert all(re.match(r"[0-9/]+ \S", inputs) for inputs, _ in rows("unit_exact"))
