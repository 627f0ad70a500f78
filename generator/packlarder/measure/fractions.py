"""Fractions as cooks write them: ½, 1¾."""

FRACTIONS: tuple[tuple[float, str], ...] = (
    (1 / 8, "⅛"),
    (1 / 6, "⅙"),
    (1 / 5, "⅕"),
    (1 / 4, "¼"),
    (1 / 3, "⅓"),
    (3 / 8, "⅜"),
    (2 / 5, "⅖"),
    (1 / 2, "½"),
    (3 / 5, "⅗"),
    (5 / 8, "⅝"),
    (2 / 3, "⅔"),
    (3 / 4, "¾"),
    (4 / 5, "⅘"),
    (5 / 6, "⅚"),
    (7 / 8, "⅞"),
)
"""Every fraction that has a character of its own, with its value, smallest first."""

_PRINTED = "⅛¼⅓⅜½⅝⅔¾⅞"
"""Those that a kitchen measures in; fifths and sixths are read, and printed with a point."""
VALUES: dict[str, float] = {sign: value for value, sign in FRACTIONS}


def with_fraction(number: float) -> str | None:
    """Write a number as a whole and a fraction sign where it is just that, else None: 1.5 -> 1½, 0.3 -> None."""
    whole = int(number)
    if whole == number:
        return str(whole)
    for value, sign in FRACTIONS:
        if whole + value == number and sign in _PRINTED:
            return f"{whole}{sign}" if whole else sign
    return None
