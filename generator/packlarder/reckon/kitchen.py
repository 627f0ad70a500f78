"""From millilitres to spoons and cups, from shares of an egg to halves, and pieces that add up to their total.

The measures people own: ⅛ ¼ ½ 1 tsp; 1 tbsp; ¼ ⅓ ½ ⅔ ¾ 1 cup (US customary). From 12 cups on, quarts of four cups.
"""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from operator import sub

from packlarder.measure import NO_BREAK, for_number, rounded, with_fraction
from packlarder.measure.printing import plain, remembered
from packlarder.measure.rounding import steps
from packlarder.measure.units import TEASPOON

CLOSE = 0.05
"""The largest error allowed, as a share of the volume."""
LEAST_ERROR_TSP = 1 / 16
"""An error that is always allowed: half of the smallest spoon."""

_TSP_PER_CUP = 48
_QUARTS_FROM_TSP = 11.875 * _TSP_PER_CUP
"""From here on a volume is nearer to 12 cups than to 11¾."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoons:
    """A volume as people measure it: the words, what they amount to, and the error as a share of the true volume.

    `less` says that the volume is less than half of the smallest spoon; the words say so too.
    """

    text: str
    volume_ml: float
    error: float
    less: bool = False


_NONE = Spoons(text=f"0{NO_BREAK}tsp", volume_ml=0.0, error=0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pieces:
    """A count as people count: the words (with the true number if it differs), and the number they amount to."""

    text: str
    number: float


@dataclass(frozen=True, slots=True, kw_only=True)
class _Measure:
    """One spoon or cup: its size in teaspoons, what is printed, how many are taken in a row, the trouble of each."""

    tsp: float
    part: float
    unit: str
    most: int = 1
    trouble: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Form:
    """A way to measure a volume, and its trouble: what the scoops and the change of spoon add up to."""

    tsp: float
    text: str
    trouble: float


_MEASURES = (
    _Measure(tsp=1 / 8, part=1 / 8, unit="tsp", most=3, trouble=2.0),
    _Measure(tsp=1 / 4, part=1 / 4, unit="tsp", most=3, trouble=1.5),
    _Measure(tsp=1 / 2, part=1 / 2, unit="tsp", most=5, trouble=1.25),
    _Measure(tsp=1, part=1, unit="tsp", most=5),
    _Measure(tsp=3, part=1, unit="tbsp", most=7),
)
_CUP_PARTS = (0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4)
_MOST_CUPS = 11
_FEW_TBSP = 2
_BESIDE_CUPS, _BESIDE_PARTS = 3, 4
"""At most so many spoons stand beside cups (1¾ cups + 2 tbsp, not 1½ cups + 6 tbsp), or beside a part of the first."""

_ANOTHER_MEASURE = 0.75
"""Trouble of reaching for another spoon; a scoop is 1, more for the smallest spoons."""
_WHOLE_AND_PART = 0.5
"""The same for a whole and a part of it: 1½ cups is said in one breath."""
_FULL_ERROR = 3.0
"""Trouble of an error as large as is allowed: as much as three scoops."""
_SMALL_TSP = 1.25
"""Below this the error allowed is LEAST_ERROR_TSP, above it CLOSE."""
_CELLS = 200
"""Volumes are looked up by cells (of 1/200 of their size; small ones of 1/16 tsp), so that each is worked out once."""


def in_spoons(volume_ml: float) -> Spoons:
    """Give a volume in at most two measures (some of one, some of a smaller one), at most 5 % or 1/16 tsp off.

    Only less than 1/16 tsp can not be met so, and the words say that it is less. ValueError for less than nothing.
    """
    if volume_ml == 0:
        return _NONE
    tsp = volume_ml / TEASPOON.size
    form = _form(tsp)
    less = tsp < LEAST_ERROR_TSP
    text = f"less than {form.text}" if less else form.text
    return Spoons(text=text, volume_ml=form.tsp * TEASPOON.size, error=form.tsp / tsp - 1, less=less)


@lru_cache(maxsize=4096)
def as_poured_ml(volume_ml: float) -> float:
    """Give what the words of `spoons` amount to. ValueError as in `in_spoons`."""
    return in_spoons(volume_ml).volume_ml


@remembered
def spoons(volume_ml: float) -> str:
    """Print a volume in spoons and cups: 1½ cups, 2 cups + 1 tbsp. ValueError as in `in_spoons`."""
    tsp = volume_ml / TEASPOON.size
    return _form(tsp).text if tsp >= LEAST_ERROR_TSP else in_spoons(volume_ml).text


def in_halves(number: float, noun: str) -> Pieces:
    """Count in halves (in wholes from 10 on), never nothing: 1.43 eggs are "1½ eggs (1.43)".

    `noun` is the one for one. The true number stands behind unless what is said is within 1 % of it. ValueError for
    zero and below.
    """
    if not 0 < number < math.inf:
        raise ValueError(f"{number} of {noun} can not be counted")
    step = 0.5 if number < 10 else 1.0
    counted = max(step, rounded(number, step))
    spoken = f"{with_fraction(counted)}{NO_BREAK}{for_number(noun, counted)}"
    told = abs(counted - number) <= 0.01 * number
    true = plain(max(number, 0.01)) if number < 10 else plain(rounded(number, 0.1))
    return Pieces(text=spoken if told else f"{spoken} ({true})", number=counted)


def share_out(total: float, parts: Sequence[float], step: int = 1) -> tuple[int, ...]:
    """Share a total out in proportion to the parts, in whole steps that add up exactly to the total so rounded.

    Largest remainder: each piece is its exact share rounded down or up to a step, up where most is cut off, the earlier
    of equals. ValueError for a part below zero, and where there is something to share and no part to take it.
    """
    whole = math.fsum(parts)
    count = steps(total, step)
    if not (count >= 0 and 0 <= whole < math.inf and min(parts, default=0) >= 0) or (count and not whole):
        raise ValueError(f"{total} can not be shared out to {list(parts)}")
    if not count:
        return (0,) * len(parts)
    exact = [count * part / whole for part in parts]
    pieces = list(map(math.floor, exact))
    left = count - sum(pieces)
    if left:
        cut_off = list(map(sub, pieces, exact))
        for at in sorted(range(len(cut_off)), key=cut_off.__getitem__)[:left]:
            pieces[at] += 1
    return tuple(pieces) if step == 1 else tuple([piece * step for piece in pieces])


def _form(tsp: float) -> _Form:
    if not 0 < tsp < math.inf:
        raise ValueError(f"{tsp} tsp has no spoon")
    if tsp >= _QUARTS_FROM_TSP:
        return _in_quarts(round(tsp / _TSP_PER_CUP))
    if tsp >= _SMALL_TSP:
        return _best_of_large(round(math.log(tsp) * _CELLS))
    return _best_of_small(math.floor(tsp / LEAST_ERROR_TSP))


@lru_cache(maxsize=1024)
def _in_quarts(cups: int) -> _Form:
    """Give whole cups as quarts and cups: at 12 cups, half a cup is 4 %."""
    quarts, rest = divmod(cups, 4)
    spoken = [_spoken(quarts, "quart"), *([_spoken(rest, "cup")] if rest else [])]
    return _Form(tsp=cups * _TSP_PER_CUP, text=" + ".join(spoken), trouble=quarts + rest)


@lru_cache(maxsize=32)
def _best_of_small(cell: int) -> _Form:
    return _best(max(cell, 1) * LEAST_ERROR_TSP, (max(cell, 1) + 1) * LEAST_ERROR_TSP)


@lru_cache(maxsize=2048)
def _best_of_large(cell: int) -> _Form:
    return _best(math.exp((cell - 0.5) / _CELLS), math.exp((cell + 0.5) / _CELLS))


def _best(low: float, high: float) -> _Form:
    """Choose the form of least trouble among those close enough for every volume from low to high."""
    first = bisect_left(_FORMS, high - _allowed(high), key=_tsp)
    beyond = bisect_right(_FORMS, low + _allowed(low), key=_tsp)
    return min(_FORMS[first:beyond], key=lambda form: _trouble(form, (low + high) / 2))


def _allowed(tsp: float) -> float:
    return max(CLOSE * tsp, LEAST_ERROR_TSP)


def _tsp(form: _Form) -> float:
    return form.tsp


def _trouble(form: _Form, tsp: float) -> float:
    return form.trouble + _FULL_ERROR * abs(form.tsp - tsp) / _allowed(tsp)


def _all_forms() -> Iterator[_Form]:
    """Give every n of one measure, alone and with some of a smaller one."""
    rows = [(measure, scoops) for measure in _MEASURES for scoops in range(1, measure.most + 1)]
    for measure, scoops in rows:
        one = _scooped(measure, scoops)
        yield one
        for other, more in rows:
            if other.tsp < measure.tsp:
                in_one_breath = measure.unit == other.unit and measure.part == 1
                yield _breath(measure, scoops, other, more) if in_one_breath else _with(one, other, more)
    for whole, part in product(range(_MOST_CUPS + 1), _CUP_PARTS):
        if not whole + part:
            continue
        one = _in_cups(whole, part)
        yield one
        beside = _BESIDE_CUPS if whole else _BESIDE_PARTS
        yield from (_beside(one, other, more) for other, more in rows if other.part == 1 and more <= beside)


def _scooped(measure: _Measure, scoops: int) -> _Form:
    text = _spoken(scoops * measure.part, measure.unit)
    return _Form(tsp=scoops * measure.tsp, text=text, trouble=scoops * measure.trouble)


def _in_cups(whole: int, part: float) -> _Form:
    trouble = whole + (1 if part else 0) + (_WHOLE_AND_PART if whole and part else 0)
    return _Form(tsp=(whole + part) * _TSP_PER_CUP, text=_spoken(whole + part, "cup"), trouble=trouble)


def _breath(measure: _Measure, scoops: int, other: _Measure, more: int) -> _Form:
    """Say a whole and a part of the same unit together: 1½ tsp."""
    return _Form(
        tsp=scoops * measure.tsp + more * other.tsp,
        text=_spoken(scoops + more * other.part, measure.unit),
        trouble=scoops * measure.trouble + more * other.trouble + _WHOLE_AND_PART,
    )


def _with(one: _Form, other: _Measure, more: int) -> _Form:
    """Add some of a smaller measure, with the trouble of changing to it."""
    added = _scooped(other, more)
    trouble = one.trouble + added.trouble + _ANOTHER_MEASURE
    return _Form(tsp=one.tsp + added.tsp, text=f"{one.text} + {added.text}", trouble=trouble)


def _beside(cups: _Form, other: _Measure, more: int) -> _Form:
    """Add a little beside cups; more than two tablespoons are easily miscounted."""
    both = _with(cups, other, more)
    many = max(0, more - _FEW_TBSP) if other.unit == "tbsp" else 0
    return replace(both, trouble=both.trouble + many)


def _spoken(number: float, unit: str) -> str:
    word = for_number(unit, number) if unit in ("cup", "quart") else unit
    return f"{with_fraction(number)}{NO_BREAK}{word}"


_FORMS = tuple(sorted(_all_forms(), key=_tsp))
