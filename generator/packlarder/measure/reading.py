"""Text to quantity: 150 g, 1½ cups, 1 h 30 min, 2 tbsp + 1 tsp, 3 eggs."""

import re
from difflib import get_close_matches
from functools import lru_cache

from packlarder.figures.units import ABSOLUTE_ZERO
from packlarder.measure import wording
from packlarder.measure.fractions import VALUES
from packlarder.measure.nouns import singular
from packlarder.measure.printing import MINUS
from packlarder.measure.quantity import Quantity, Unreadable
from packlarder.measure.units import PIECE, UNITS, Dimension, Unit

LONGEST = 60
"""More characters than this are no amount."""

_ANYTHING = tuple(Dimension)
_LARGEST = 1e9
_SMALLEST = 1e-6
_CLOSE = 0.8
"""How alike (difflib) a noun must be to a unit's word to be taken for a slip of the pen."""
_NOUNS_LIKE_UNITS = frozenset({"bin", "dal", "keg", "mint", "mug", "pin", "pinch", "pot", "quarter", "tin"})
_MAY_BE_ZERO = (Dimension.TIME, Dimension.TEMPERATURE, Dimension.LENGTH, Dimension.SHARE)

_SIGNS = "".join(VALUES)
_TIDY = str.maketrans({MINUS: "-", "\u2044": "/", "\u00ba": "°", "\u2103": "°C", "\u2109": "°F", "\u2019": "'"})
_THOUSANDS = re.compile(r"(?<=[0-9])[\u00a0\u2009\u202f](?=[0-9]{3}(?![0-9/]))")
_PIECE = re.compile(
    rf"""(?P<sign>-?)
    (?: (?P<whole>[0-9]+)[ ](?P<of_whole>[0-9]+)/(?P<by_whole>[0-9]+)
      | (?P<over>[0-9]+)/(?P<under>[0-9]+)
      | (?P<before>[0-9]*)[ ]?(?P<fraction>[{_SIGNS}])
      | (?P<decimal>[0-9]+\.[0-9]+|\.[0-9]+|[0-9]+)
    )(?![0-9.,:/_])
    [ ]?(?P<word>[^\W\d_](?:[^\W\d_]|[ '-])*|%|°(?:\ ?[A-Za-z]+)?|\#)?""",
    re.VERBOSE,
)
_COMMA = re.compile(r"[0-9],[0-9]")
_THREE_AFTER_COMMA = re.compile(r",[0-9]{3}(?![0-9])")
_GAP = re.compile(r"(?<![0-9])[0-9]{1,3}( [0-9]{3})+(?![0-9/])")
_DOT_AFTER_WORD = re.compile(r"(?<=[^\W\d_])\.")
_COLON = re.compile(r"([0-9]+):([0-9]+)")
_RANGE = re.compile(rf"[0-9{_SIGNS}][^-–—+]*[-–—] ?[0-9{_SIGNS}]")
_JOIN = re.compile(r" ?\+ ?| ")
_BY_WORD: dict[str, Unit] = {word: unit for unit in UNITS for word in (unit.name, unit.plural, *unit.words) if word}
_BY_LOWER_WORD: dict[str, Unit] = {
    word.lower(): unit for word, unit in _BY_WORD.items() if word.lower() not in wording.UNCLEAR_WORDS
}


def parse(
    text: str,
    expect: Dimension | tuple[Dimension, ...] | None = None,
    *,
    zero: bool = False,
) -> Quantity | Unreadable:
    """Read an amount, or say why it can not be read.

    `expect` names what is wanted (None: anything); nouns are read as counts only where a count may stand. Sums
    (2 tbsp + 1 tsp, 1 h 30 min) come back in their smallest unit. Zero is read for times, lengths, shares and
    temperatures, for the rest only with `zero`. Cups and spoons are US customary.
    """
    dimensions = _ANYTHING if expect is None else (expect,) if isinstance(expect, Dimension) else expect
    return _parse(text, dimensions, zero=zero)


@lru_cache(maxsize=4096)
def _parse(text: str, expect: tuple[Dimension, ...], *, zero: bool) -> Quantity | Unreadable:
    if len(text) > LONGEST:
        return Unreadable(message=wording.TOO_LONG.format(length=len(text)), help=wording.TOO_LONG_HELP)
    tidy = _tidy(text)
    found = _unclear(tidy) or _pieces(tidy, expect)
    if isinstance(found, Unreadable):
        return found
    total = _total(tidy, found)
    if isinstance(total, Unreadable):
        return total
    return _possible(tidy, total, zero=zero) or total


def _tidy(text: str) -> str:
    """Bring every way of setting spaces, signs and shortening dots to one."""
    return " ".join(_DOT_AFTER_WORD.sub("", _THOUSANDS.sub("", text).translate(_TIDY)).split())


def _unclear(text: str) -> Unreadable | None:
    """Name a way of writing that people read in two ways."""
    if not text:
        return Unreadable(message=wording.EMPTY, help=wording.CAN_NOT_READ_HELP)
    if _COMMA.search(text):
        form = wording.COMMA_OR_THOUSANDS_HELP if _THREE_AFTER_COMMA.search(text) else wording.COMMA_HELP
        help_ = form.format(with_point=text.replace(",", "."), without=text.replace(",", ""))
        return Unreadable(message=wording.COMMA.format(text=text), help=help_)
    if gap := _GAP.search(text):
        whole = text.replace(gap[0], gap[0].replace(" ", ""))
        return Unreadable(message=wording.GAP.format(text=text), help=wording.GAP_HELP.format(without=whole))
    if colon := _COLON.search(text):
        return Unreadable(
            message=wording.COLON.format(text=text),
            help=wording.COLON_HELP.format(first=int(colon[1]), second=int(colon[2])),
        )
    if _RANGE.search(text):
        return Unreadable(message=wording.RANGE.format(text=text), help=wording.RANGE_HELP)
    return None


def _pieces(text: str, expect: tuple[Dimension, ...]) -> list[Quantity] | Unreadable:
    """Read number and unit, over and over, until the text is used up."""
    pieces: list[Quantity] = []
    at = 0
    while at < len(text):
        if pieces:
            join = _JOIN.match(text, at)
            at = join.end() if join else at
        match = _PIECE.match(text, at)
        if match is None:
            return _no_piece(text, at)
        piece = _piece(text, match, expect)
        if isinstance(piece, Unreadable):
            return piece
        pieces.append(piece)
        at = match.end()
    return pieces


def _no_piece(text: str, at: int) -> Unreadable:
    starts_with_number = at > 0 or text[0] in f"{_SIGNS}.-0123456789"
    message = wording.CAN_NOT_READ if starts_with_number else wording.NO_NUMBER
    return Unreadable(message=message.format(text=text), help=wording.CAN_NOT_READ_HELP)


def _piece(text: str, match: re.Match[str], expect: tuple[Dimension, ...]) -> Quantity | Unreadable:
    number = _number(text, match)
    if isinstance(number, Unreadable):
        return number
    word = (match["word"] or "").strip()
    if not word:
        return Unreadable(message=wording.NO_UNIT.format(text=text), help=wording.written_with(expect))
    named = _unit(text, word.replace("° ", "°"), expect)
    if isinstance(named, Unreadable):
        return named
    unit, noun = named
    if match["sign"] and unit.dimension is not Dimension.TEMPERATURE:
        return Unreadable(message=wording.NEGATIVE.format(text=text), help=wording.NEGATIVE_HELP)
    return Quantity(number=-number if match["sign"] else number, unit=unit, noun=noun)


def _number(text: str, match: re.Match[str]) -> float | Unreadable:
    if match["decimal"]:
        return float(match["decimal"])
    if match["fraction"]:
        return int(match["before"] or 0) + VALUES[match["fraction"]]
    over, under = int(match["over"] or match["of_whole"]), int(match["under"] or match["by_whole"])
    if under == 0:
        return Unreadable(message=wording.BY_NOTHING.format(text=text), help=wording.BY_NOTHING_HELP)
    if match["whole"] and over >= under:
        return Unreadable(message=wording.BAD_FRACTION.format(text=text), help=wording.BAD_FRACTION_HELP)
    return int(match["whole"] or 0) + over / under


def _unit(text: str, word: str, expect: tuple[Dimension, ...]) -> tuple[Unit, str] | Unreadable:
    """Find the unit that a word names and, for a count, its noun."""
    if word in wording.UNCLEAR_WORDS:
        return Unreadable(message=wording.UNKNOWN_UNIT.format(word=word), help=wording.UNCLEAR_WORDS[word])
    unit = _named(word)
    if unit is not None:
        return (unit, "") if unit.dimension in expect else _wrong_kind(unit, expect)
    first, _, more = word.partition(" ")
    if more and (_named(first) or first in wording.UNCLEAR_WORDS):
        return Unreadable(message=wording.WORDS_AFTER.format(text=text), help=wording.WORDS_AFTER_HELP)
    if Dimension.COUNT in expect and _is_noun(word):
        return PIECE, singular(word)
    return _unknown(word, expect)


def _named(word: str) -> Unit | None:
    lower = word.lower()
    return _BY_WORD.get(word) or _BY_LOWER_WORD.get(lower) or _BY_LOWER_WORD.get(singular(lower))


def _is_noun(word: str) -> bool:
    """Tell a thing to count from a unit with a slip of the pen."""
    if singular(word) in _NOUNS_LIKE_UNITS:
        return True
    turned = any(sorted(word.lower()) == sorted(unit) for unit in _BY_LOWER_WORD)
    return len(word) > 2 and not turned and not get_close_matches(word.lower(), _BY_LOWER_WORD, n=1, cutoff=_CLOSE)


def _wrong_kind(unit: Unit, expect: tuple[Dimension, ...]) -> Unreadable:
    hints = (wording.HINTS.get((unit.name, dimension)) for dimension in expect)
    kind = wording.WANTED[unit.dimension]
    message = wording.WRONG_KIND.format(wanted=wording.wanted(expect), unit=unit.name, kind=kind)
    return Unreadable(message=message, help=next((hint for hint in hints if hint), wording.written_with(expect)))


def _unknown(word: str, expect: tuple[Dimension, ...]) -> Unreadable:
    close = get_close_matches(word.lower(), wording.words_of(expect), n=1) or get_close_matches(
        word.lower(), _BY_LOWER_WORD, n=1
    )
    guess = wording.DID_YOU_MEAN.format(word=close[0]) if close else wording.written_with(expect)
    return Unreadable(message=wording.UNKNOWN_UNIT.format(word=word), help=guess)


def _total(text: str, pieces: list[Quantity]) -> Quantity | Unreadable:
    """Add pieces of one kind up, in their smallest unit."""
    if len(pieces) == 1:
        return pieces[0]
    first = pieces[0]
    if any(piece.dimension is not first.dimension or piece.noun != first.noun for piece in pieces):
        return Unreadable(message=wording.MIXED_KINDS.format(text=text), help=wording.MIXED_KINDS_HELP)
    if first.dimension is Dimension.TEMPERATURE:
        return Unreadable(message=wording.NO_SUMS_OF_DEGREES.format(text=text), help=wording.NO_SUMS_OF_DEGREES_HELP)
    smallest = min((piece.unit for piece in pieces), key=lambda unit: unit.size)
    number = sum(piece.number * round(piece.unit.size / smallest.size, 9) for piece in pieces)
    return Quantity(number=number, unit=smallest, noun=first.noun)


def _possible(text: str, quantity: Quantity, *, zero: bool) -> Unreadable | None:
    """Name what no kitchen can have: nothing, more than everything, colder than cold."""
    if abs(quantity.number) >= _LARGEST:
        return Unreadable(message=wording.TOO_LARGE.format(text=text), help=wording.TOO_LARGE_HELP)
    if quantity.dimension is Dimension.TEMPERATURE and quantity.base < ABSOLUTE_ZERO.value:
        return Unreadable(message=wording.TOO_COLD.format(text=text), help=wording.TOO_COLD_HELP)
    may_be_zero = zero or quantity.dimension in _MAY_BE_ZERO
    is_zero = quantity.number == 0
    if (is_zero and not may_be_zero) or 0 < abs(quantity.number) < _SMALLEST:
        return Unreadable(message=wording.ZERO.format(text=text), help=wording.ZERO_HELP)
    return None
