"""Where everything stands in a booklet, settled before it is printed.

A booklet is a row of *blocks*, each of which starts on a new page: such as front, contents, cautions, the two halves of
each dish, the index (`Blocks`). They are laid out once to see how many pages each takes (`Extent`); then page numbers,
pages of lines and the lines at the foot of each block follow by counting (`settle`).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from packlarder.publish.imposition import padded

LINE_MM = 8.0
"""From one line to write on to the next: handwriting with cold fingers."""

LEAST_LINES, MOST_LINES = 2, 4
"""Lines at the foot of a page of a dish (one alone would look like a rule). All other blocks, and pages of lines,
have as many as they hold."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Blocks:
    """What a booklet is made of, in order: the blocks before its dishes, its dishes by id, the blocks behind them.

    Dishes begin on a left page, and so do those `on_the_left`.
    """

    before: tuple[str, ...]
    dishes: tuple[str, ...]
    behind: tuple[str, ...]
    on_the_left: frozenset[str] = frozenset()

    @property
    def others(self) -> tuple[str, ...]:
        """Name the blocks that are no dishes."""
        return (*self.before, *self.behind)


def in_hand(dish: str) -> str:
    """Name the block of a dish that says what to take in hand."""
    return f"in-hand-{dish}"


def to_do(dish: str) -> str:
    """Name the block of a dish that says what to do."""
    return f"to-do-{dish}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """How many pages a block takes, and the height left on its last; `joins` if it starts on the last block's page."""

    pages: int
    room_mm: float
    joins: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How a dish is set to save room, never below the least sizes of type.

    `snug`: less air between lines. `small_right`: allergens and conditions stand below the cautions, not in hand.
    `run_on`: what to do follows what to take in hand on the same page.
    """

    snug: bool = False
    small_right: bool = False
    run_on: bool = False


AS_OTHERS = Fit()


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A block in the booklet: its first page, its pages, lines at its foot, and pages of lines that follow it."""

    page: int
    pages: int
    lines: int = 0
    lined_pages: int = 0

    @property
    def end(self) -> int:
        """Give the page after the block and its pages of lines."""
        return self.page + self.pages + self.lined_pages


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The whole booklet: its blocks by name, its pages; of each dish its first page and how many openings it takes.

    `fits` says how a dish is set that would not stand on one opening (or two) as others are.
    """

    blocks: Mapping[str, Placed]
    pages: int
    dish_pages: Mapping[str, int]
    openings: Mapping[str, int]
    fits: Mapping[str, Fit] = field(default_factory=dict)

    def longer_than(self, openings: int) -> tuple[str, ...]:
        """Name the dishes that take more than so many openings."""
        return tuple(dish for dish, taken in self.openings.items() if taken > openings)

    def fit_of(self, dish: str) -> Fit:
        """Tell how a dish is set."""
        return self.fits.get(dish, AS_OTHERS)

    def page_of(self, dish: str) -> int:
        """Give the page a dish starts on."""
        return self.dish_pages[dish]

    def goes_on(self) -> Iterator[int]:
        """Give the right-hand pages after which a dish goes on overleaf."""
        for dish, openings in self.openings.items():
            start, half = self.page_of(dish), self.blocks[to_do(dish)]
            last = half.page + half.pages - 1
            yield from (start + 2 * opening + 1 for opening in range(openings) if start + 2 * opening + 1 < last)


def halves(dishes: tuple[str, ...]) -> tuple[str, ...]:
    """Name the blocks of some dishes in order."""
    return tuple(name for dish in dishes for name in (in_hand(dish), to_do(dish)))


def draft(
    names: tuple[str, ...],
    *,
    dish_pages: Mapping[str, int] | None = None,
    fits: Mapping[str, Fit] | None = None,
) -> Plan:
    """Give some blocks a page each: something to measure with. Other blocks print `dish_pages`."""
    blocks = {name: Placed(page=number, pages=1) for number, name in enumerate(names, 1)}
    return Plan(blocks=blocks, pages=len(names), dish_pages=dish_pages or {}, openings={}, fits=fits or {})


def settle(made_of: Blocks, extents: Mapping[str, Extent], rows: int, fits: Mapping[str, Fit] | None = None) -> Plan:
    """Place every block: dishes on whole openings from a left page on, the booklet filled up to whole sheets."""
    blocks: dict[str, Placed] = {}
    dish_pages: dict[str, int] = {}
    openings: dict[str, int] = {}
    page = 1
    for name, after in zip(made_of.before, (*made_of.before[1:], ""), strict=True):
        left_next = not after or after in made_of.on_the_left
        blocks[name] = _place(page, extents[name], even_end=left_next, most=None)
        page = blocks[name].end
    for dish in made_of.dishes:
        left, right = in_hand(dish), to_do(dish)
        dish_pages[dish] = page
        joined = extents[right].joins
        blocks[left] = _place(page, extents[left], lined=not joined)
        blocks[right] = _place(blocks[left].end - joined, extents[right], even_end=True)
        openings[dish] = (blocks[right].end - page) // 2
        page = blocks[right].end
    written = page + sum(extents[name].pages for name in made_of.behind) - 1
    total = padded(written, rows)
    for name in made_of.behind:
        spare = total - written if name == made_of.behind[-1] else 0
        blocks[name] = _place(page, extents[name], lined_pages=spare, most=None)
        page = blocks[name].end
    return Plan(blocks=blocks, pages=total, dish_pages=dish_pages, openings=openings, fits=fits or {})


def _place(
    page: int,
    extent: Extent,
    *,
    lined: bool = True,
    even_end: bool = False,
    lined_pages: int = 0,
    most: int | None = MOST_LINES,
) -> Placed:
    """Place a block at a page; with `even_end`, a page of lines follows where the next would not be a left page."""
    odd = even_end and (page + extent.pages) % 2
    held = int(extent.room_mm // LINE_MM)
    lines = held if most is None else min(held, most)
    return Placed(
        page=page,
        pages=extent.pages,
        lines=lines if lined and lines >= LEAST_LINES else 0,
        lined_pages=1 if odd else lined_pages,
    )
