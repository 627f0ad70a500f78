"""The sheet of a whole book: its front, indexes, rules, figures, and the pages people wrote by hand."""

import dataclasses
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType

from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish_sheet import Caution, DishSheet
from packlarder.sheets.facts import Link
from packlarder.sheets.field_sheet import FieldOpening
from packlarder.sheets.label_sheet import LabelSet
from packlarder.sheets.printed import System
from packlarder.sheets.store_data import LarderData, RunData
from packlarder.sheets.store_sheet import LarderSheet, RunIndex, RunSheet
from packlarder.sheets.trip_data_records import TripData
from packlarder.sheets.trip_field_sheet import TripBook
from packlarder.sheets.trip_sheet import TripIndex, TripSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexEntry:
    """A line of an index: a dish or component with the figures one chooses by."""

    link: Link
    raw: bool
    figures: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexGroup:
    """A heading of an index and its lines; `raw` tells of a component that heads them."""

    heading: str
    entries: tuple[IndexEntry, ...]
    raw: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Index:
    """An index of the book: by meal, by cooking method, by component, by water to carry; `columns` head the figures."""

    id: str
    title: str
    columns: tuple[str, ...]
    groups: tuple[IndexGroup, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleRow:
    """A safety rule as the book's rules page lists it."""

    id: str
    severity: str
    title: str
    text: str
    source: str
    standing: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureRow:
    """A constant or table row with its source and standing."""

    name: str
    value: str
    source: str
    standing: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FigureGroup:
    """Figures of one kind under a heading."""

    heading: str
    rows: tuple[FigureRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class KeyRow:
    """A key of the file format: as written, what it takes, whether it must be there, what it says, an example."""

    key: str
    takes: str
    required: bool
    says: str
    example: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FormatSection:
    """One kind of file, or one nested mapping, with its keys and a whole example."""

    id: str
    title: str
    says: str
    keys: tuple[KeyRow, ...]
    example: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenPage:
    """A page that people wrote by hand in Markdown."""

    id: str
    title: str
    markdown: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Download:
    """A file that is written beside the site: what it is, and its address from the site's root."""

    label: str
    address: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DownloadGroup:
    """Files that are offered together: those of a trip, or of the whole book where `trip` is None."""

    trip: Link | None
    files: tuple[Download, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FieldBook:
    """What the booklet needs besides its openings; `on` is the day that `day` prints."""

    title: str
    language: str
    edition: str
    day: str
    on: date
    how_to_use: tuple[str, ...]
    general_cautions: tuple[Caution, ...]
    openings: Sequence[FieldOpening]
    component_index: tuple[tuple[str, tuple[str, ...]], ...]
    """Component names in order, each with the ids of the dishes that use it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BookTrips:
    """What is published of a book's trips. Mappings go by id; what stands in them is made when somebody asks for it.

    `sheets` are those of all trips, `data`, `booklets` and `labels` of those that are planned; all are empty in a
    process that has no sums of trips.
    """

    index: TripIndex
    sheets: Mapping[str, TripSheet] = dataclasses.field(compare=False, repr=False)
    data: Mapping[str, TripData] = dataclasses.field(compare=False, repr=False)
    booklets: Mapping[str, TripBook] = dataclasses.field(compare=False, repr=False)
    labels: Mapping[str, LabelSet] = dataclasses.field(compare=False, repr=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class BookSheet:
    """Everything that is published of a book. `edition` is a short digest; `day` is printed as in `1 June 2027`.

    `dish_links` name the dishes, `dishes` are their sheets at the usual servings, in the same order. `spread` gives a
    dish by its id at every number of servings that its page has; it may work a sheet out each time it is asked, so that
    a thousand of them never lie in memory together. `larder` and `run_index` are None for a book without drying runs;
    `runs` gives a run by its id, and `records` what other programs get of larder and runs, by the name of the file
    (`larder`, `batches/2026-10-17-eggs`). `trips` is None for a book without any. `downloads` are what lies beside the
    site.
    """

    title: str
    language: str
    address: str
    system: System
    edition: str
    day: str
    about: tuple[str, ...]
    dish_links: tuple[Link, ...]
    dishes: Sequence[DishSheet]
    components: tuple[ComponentSheet, ...]
    indexes: tuple[Index, ...]
    general_cautions: tuple[Caution, ...]
    rules: tuple[RuleRow, ...]
    figures: tuple[FigureGroup, ...]
    format: tuple[FormatSection, ...]
    pages: tuple[WrittenPage, ...]
    field: FieldBook
    spread: Mapping[str, DishSheet] = dataclasses.field(
        default_factory=lambda: MappingProxyType({}), compare=False, repr=False
    )
    larder: LarderSheet | None = None
    run_index: RunIndex | None = None
    runs: Mapping[str, RunSheet] = dataclasses.field(
        default_factory=lambda: MappingProxyType({}), compare=False, repr=False
    )
    records: Mapping[str, LarderData | RunData] = dataclasses.field(
        default_factory=lambda: MappingProxyType({}), compare=False, repr=False
    )
    trips: BookTrips | None = None
    photos: tuple[tuple[str, bytes], ...] = ()
    downloads: tuple[DownloadGroup, ...] = ()
