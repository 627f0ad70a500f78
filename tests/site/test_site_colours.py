"""Inks and papers keep their contrast: WCAG 2.2, 1.4.3 and 1.4.6."""

import re

import pytest
from tests.site.conftest import THEME

CSS = (THEME / "site" / "static" / "assets" / "site.css").read_text()
PALETTES = re.findall(r"--paper: (#\w{6});\s*--ink: (#\w{6});\s*--quiet: (#\w{6});", CSS)


def luminance(colour: str) -> float:
    """The relative luminance of a colour, by the formula of WCAG 2.2."""
    parts = [int(colour[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The contrast of two colours, 1 to 21."""
    darker, lighter = sorted((luminance(one), luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def test_the_formula() -> None:
    """White on black is 21 to 1; pure red on black is 0.2126 / 0.05 + 1 = 5.25 to 1."""
    assert contrast("#ffffff", "#000000") == pytest.approx(21)
    assert contrast("#ff0000", "#000000") == pytest.approx(5.252, abs=0.001)


def test_there_are_four_palettes() -> None:
    """Light, dark, night and print each name paper, ink and the quieter ink."""
    assert len(PALETTES) == 4


@pytest.mark.parametrize("palette", PALETTES, ids=("light", "dark", "night", "print"))
def test_words_can_be_read(palette: tuple[str, str, str]) -> None:
    """Light, dark and print reach 7 to 1; night, which must be dim and red, the 4.5 to 1 of level AA."""
    paper, ink, quiet = palette
    least = 4.5 if paper == "#000000" else 7
    assert contrast(ink, paper) >= least
    assert contrast(quiet, paper) >= least


def test_night_is_red_alone() -> None:
    """No green and no blue shines at night."""
    [rule] = re.findall(r":root\.night \{([^}]*)\}", CSS.split("@media print")[0])
    assert all(colour.endswith("0000") for colour in re.findall(r"#\w{6}", rule))


def test_every_colour_has_a_name() -> None:
    """Outside the palettes only the night's picture names a colour, so that no mode is forgotten."""
    outside = re.sub(r":root[^{]*\{[^}]*\}", "", CSS)
    assert re.findall(r"#[0-9a-f]{3,8}\b", outside) == ["#f00000"]
