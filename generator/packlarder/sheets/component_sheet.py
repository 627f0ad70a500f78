"""The sheet of a component: what it is, how it is dried, how it comes back, where it is used."""

from dataclasses import dataclass

from packlarder.sheets.dish_sheet import Caution
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.store_sheet import Stored
from packlarder.sheets.trip_stores_sheet import Reserved


@dataclass(frozen=True, slots=True, kw_only=True)
class ComponentSheet:
    """A component as its page shows it.

    `state` is the word a label bears: `RAW` (must be cooked to be safe), `cook before eating`, or `ready`. `stored` is
    None for what is neither dried nor stored, `reserved` what planned trips take of it from the larder.
    """

    id: str
    name: str
    raw: bool
    state: str
    about: str
    facts: tuple[Fact, ...]
    allergens: tuple[str, ...]
    traces: tuple[str, ...]
    yields: tuple[Fact, ...]
    yield_notes: tuple[str, ...]
    weighs: tuple[Fact, ...]
    bring_back: str
    waters: tuple[Fact, ...]
    to_dry: tuple[str, ...]
    made_of: tuple[Fact, ...]
    feeds: tuple[Fact, ...]
    cautions: tuple[Caution, ...]
    used_in: tuple[Link, ...]
    held_in: tuple[Link, ...]
    missing: tuple[str, ...]
    notes: tuple[str, ...]
    stored: Stored | None = None
    reserved: tuple[Reserved, ...] = ()
