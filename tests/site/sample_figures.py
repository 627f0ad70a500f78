"""Figures for the site's tests, printed for 1 to 12 servings. Invented: what is tested is how they are set."""

from collections.abc import Callable
from fractions import Fraction

from packlarder.sheets.printed import NOTHING, Printed, same

SERVINGS = tuple(range(1, 13))
COUNT = len(SERVINGS)
GAP = "\N{NO-BREAK SPACE}"
NONE = same(NOTHING, COUNT)


def each_count(metric: Callable[[int], str], us: Callable[[int], str]) -> Printed:
    """Print a text for each number of servings."""
    return Printed(tuple(metric(count) for count in SERVINGS), tuple(us(count) for count in SERVINGS))


def grams(each: float) -> Printed:
    """Print a weight that grows with servings."""
    return each_count(lambda n: f"{each * n:.0f}{GAP}g", lambda n: f"{each * n / 28.35:.1f}{GAP}oz")


def millilitres(each: float, *, steady: float = 0) -> Printed:
    """Print a volume of water: a part that grows with servings, and one that does not."""
    return each_count(
        lambda n: f"{round((steady + each * n) / 10) * 10}{GAP}mL",
        lambda n: f"{(steady + each * n) / 236.6:.1f}{GAP}cups",
    )


def cups(each: Fraction) -> Printed:
    """Print a measure in cups, to the nearest quarter."""

    def text(count: int) -> str:
        whole, quarter = divmod(max(1, round(each * count * 4)), 4)
        return f"{whole or ''}{('', '¼', '½', '¾')[quarter]}{GAP}cup{'s' if whole > 1 else ''}"

    return each_count(text, text)


def clock(minutes: int, *, each: int = 0) -> tuple[Printed, Printed]:
    """Print a moment as clock and as minutes."""
    moments = tuple(minutes + each * count for count in SERVINGS)
    hours = tuple(f"{moment // 60}:{moment % 60:02d}" for moment in moments)
    bare = tuple(str(moment) for moment in moments)
    return Printed(hours, hours), Printed(bare, bare)
