"""What a rule's check hands back each time the rule applies."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from packlarder.faults import Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Hit:
    """Where a rule applies, the place to mend first, and the words that fill its detail.

    `facts` outrank the rule's own where they are not empty: the household's chosen authority says so.
    """

    places: tuple[Place, ...]
    words: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    facts: tuple[str, ...] = ()
