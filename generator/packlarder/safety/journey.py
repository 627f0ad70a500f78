"""What following the food hands back: the journey of each part, and what became of the water of raw food."""

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from packlarder.book.step import Fate


class Why(StrEnum):
    """Why a raw part is not cooked at the end, the most telling reason first."""

    HEATED_DRY = "heated while dry"
    TOO_SHORT = "heated too short"
    TOO_COOL = "not heated to the temperature it asks for"
    ON_HEATER = "only warmed by a ration heater"
    STEEPED = "only steeped"
    STIRRED_IN_LATE = "stirred in after the last cooking step"
    NOT_HEATED = "never heated by a step that cooks"


class Journey(NamedTuple):
    """What became of one part. Numbers are indices into the plan's steps; None where it never happened.

    `wet_at` is the first step that wets it, `cooked_at` the last that cooked it, `last` the last that names it. `why`
    says why a raw part is not cooked, at step `why_at` (None if no step names it). `touched_by` is the raw part that
    made ready food unsafe at the end, through step `touched_at`.
    """

    wet_at: int | None
    cooked_at: int | None
    last: int | None
    why: Why | None = None
    why_at: int | None = None
    touched_by: int | None = None
    touched_at: int | None = None

    @property
    def cooked(self) -> bool:
        """Tell whether some step cooked it."""
        return self.cooked_at is not None


@dataclass(frozen=True, slots=True, kw_only=True)
class RawWater:
    """Water drained off raw food: the drain step, the raw part, and where the water went."""

    step: int
    part: int
    fate: Fate


@dataclass(frozen=True, slots=True, kw_only=True)
class Trail:
    """The journeys of all parts, and the waters of raw food that were drunk or went into a pot that never boils."""

    journeys: tuple[Journey, ...]
    bad_waters: tuple[RawWater, ...]
