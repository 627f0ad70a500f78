"""What the larder's sums hand on: containers as they stand on a day, and what there is of each component."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from packlarder.book.draw import Deed, Mark
from packlarder.reckon.batch_records import BatchSums, FilledContainer
from packlarder.reckon.records import ComponentSums
from packlarder.reckon.use_by import UseBy


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """One thing that happened to a container: when, what, how much went, and what was left after it."""

    day: date
    deed: Deed
    went_g: float
    left_g: float
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A container as it stands on a day. `use_by` is None for food that is not known to be dry enough to keep."""

    container: FilledContainer
    batch: BatchSums
    left_g: float
    opened_on: date | None
    use_by: UseBy | None
    drawn: tuple[Drawn, ...]

    @property
    def mark(self) -> Mark:
        """Give what its label bears."""
        return self.container.mark

    @property
    def empty(self) -> bool:
        """Tell whether nothing is left in it."""
        return self.left_g <= 0

    def past(self, day: date) -> bool:
        """Tell whether its use-by day lies before a day."""
        return self.use_by is not None and self.use_by.day < day


@dataclass(frozen=True, slots=True, kw_only=True)
class InStore:
    """All there is of one component. `level_g` is what the household wants to have, None where it named none.

    `good_g` leaves out what is past its use-by day; `standing` has what is to be eaten first at its head.
    """

    component: ComponentSums
    standing: tuple[Standing, ...]
    held_g: float
    good_g: float
    level_g: float | None

    @property
    def short(self) -> bool:
        """Tell whether there is less than the household wants to have."""
        return self.level_g is not None and self.good_g < self.level_g


@dataclass(frozen=True, kw_only=True)
class LarderSums:
    """The larder on a day: containers that hold something, first to be eaten first, empty ones, and each component."""

    on: date
    standing: tuple[Standing, ...]
    emptied: tuple[Standing, ...]
    in_store: Mapping[str, InStore]

    @cached_property
    def by_mark(self) -> Mapping[Mark, Standing]:
        """Give every container that was filled by then, by its mark."""
        return {one.mark: one for one in (*self.standing, *self.emptied)}
