"""What a published number looks like in this project: never bare, always with where it comes from."""

from dataclasses import dataclass
from enum import StrEnum


class Standing(StrEnum):
    """How well a figure is known."""

    PUBLISHED = "published"
    """Read in the source named."""
    COMPUTED = "computed"
    """Worked out with the library or from the figures named; a test can run it again."""
    COPY = "copy"
    """Read on a copy; the body's own page was not read."""
    FROM_MEMORY = "from memory"
    """Not checked."""
    COMMON_PRACTICE = "common practice"
    """A rule of thumb of the trade, or our own choice, without a published source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One number with its unit, its source and how well it is known.

    `low` and `high` bound what was found where sources or circumstances spread; both or neither.
    """

    name: str
    value: float
    unit: str
    source: str
    standing: Standing
    low: float | None = None
    high: float | None = None
