"""Which pages a book's site has, and what each is made from."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import TypeAlias

from packlarder.sheets.book_sheet import BookSheet, Index, WrittenPage
from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.facts import Link
from packlarder.sheets.store_sheet import LarderSheet, RunIndex, RunSheet
from packlarder.sheets.trip_sheet import TripIndex, TripSheet

PageSheet: TypeAlias = BookSheet | Link | ComponentSheet | Index | WrittenPage | LarderSheet | RunIndex | TripIndex
"""What a page is made from; of a dish, run or trip the link, since its sheet is only made when it is set."""

FOLDERS = {
    "dish": "dishes",
    "component": "components",
    "page": "pages",
    "list": "lists",
    "run": "batches",
    "trip": "trips",
}
"""The folder of each kind of page."""
LARDER, BATCHES = "larder", "batches"
"""Names of the pages of larder and drying runs, and of the section that both stand in (the first)."""
TRIPS = "trips"
"""Name of the page of all trips, and of the section that each trip stands in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SitePage:
    """A page: its address below the site's root (`dishes/egg-pan.html`), template, title, section, sheet."""

    address: str
    template: str
    title: str
    section: str
    sheet: PageSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """An entry of the navigation; `section` is the word that pages carry which belong to it."""

    section: str
    label: str
    address: str


def address_of(link: Link) -> str:
    """Give the address of what a link names."""
    return f"{FOLDERS[link.kind]}/{link.id}.html"


def linked_sheet(book: BookSheet, link: Link) -> DishSheet | RunSheet | TripSheet:
    """Make the sheet of a page that is made from a link."""
    if link.kind == "trip" and book.trips is not None:
        return book.trips.sheets[link.id]
    return book.runs[link.id] if link.kind == "run" else book.spread[link.id]


def pages_of(book: BookSheet, words: Mapping[str, str]) -> tuple[SitePage, ...]:
    """List every page of a book's site, the front page first."""
    return (
        SitePage(address="index.html", template="front.html", title=book.title, section="front", sheet=book),
        *_whole_pages(book, words),
        *(
            SitePage(
                address=f"lists/{index.id}.html", template="list.html", title=index.title, section="dishes", sheet=index
            )
            for index in book.indexes
        ),
        *(
            SitePage(
                address=f"pages/{page.id}.html", template="written.html", title=page.title, section=page.id, sheet=page
            )
            for page in book.pages
        ),
        *_store_pages(book, words),
        *_trip_pages(book, words),
        *(
            SitePage(
                address=f"components/{part.id}.html",
                template="component.html",
                title=part.name,
                section="components",
                sheet=part,
            )
            for part in book.components
        ),
        *(
            SitePage(address=address_of(link), template="dish.html", title=link.name, section="dishes", sheet=link)
            for link in book.dish_links
        ),
    )


def _whole_pages(book: BookSheet, words: Mapping[str, str]) -> tuple[SitePage, ...]:
    """List the pages that show the whole book from one side."""
    return tuple(
        SitePage(address=f"{name}.html", template=f"{name}.html", title=words[title], section=name, sheet=book)
        for name, title in (
            ("components", "components"),
            ("safety", "safety"),
            ("figures", "figures_title"),
            ("format", "format_title"),
        )
    )


def _store_pages(book: BookSheet, words: Mapping[str, str]) -> Iterator[SitePage]:
    """List the pages of what is dried and stored: larder, drying runs, and each run."""
    for name, title, sheet in ((LARDER, words["larder"], book.larder), (BATCHES, words["batches"], book.run_index)):
        if sheet is not None:
            yield SitePage(address=f"{name}.html", template=f"{name}.html", title=title, section=LARDER, sheet=sheet)
    for year in () if book.run_index is None else book.run_index.years:
        for entry in year.entries:
            title = f"{entry.link.name}, {entry.day}"
            yield SitePage(
                address=address_of(entry.link), template="run.html", title=title, section=LARDER, sheet=entry.link
            )


def _trip_pages(book: BookSheet, words: Mapping[str, str]) -> Iterator[SitePage]:
    """List the pages of trips: that of all, and each."""
    if book.trips is None:
        return
    index = book.trips.index
    yield SitePage(address=f"{TRIPS}.html", template="trips.html", title=words["trips"], section=TRIPS, sheet=index)
    for entry in (*index.planned, *index.gone):
        yield SitePage(
            address=address_of(entry.link),
            template="trip.html",
            title=entry.link.name,
            section=TRIPS,
            sheet=entry.link,
        )


def main_ways(book: BookSheet, words: Mapping[str, str]) -> tuple[Way, ...]:
    """List what stands at the head of every page; larder and trips only where there are such."""
    dishes = f"lists/{book.indexes[0].id}.html" if book.indexes else "index.html"
    larder = () if book.larder is None else (Way(section=LARDER, label=words["larder"], address=f"{LARDER}.html"),)
    trips = () if book.trips is None else (Way(section=TRIPS, label=words["trips"], address=f"{TRIPS}.html"),)
    return (
        Way(section="dishes", label=words["dishes"], address=dishes),
        Way(section="components", label=words["components"], address="components.html"),
        *larder,
        *trips,
        Way(section="safety", label=words["safety"], address="safety.html"),
    )


def more_ways(book: BookSheet, words: Mapping[str, str]) -> tuple[Way, ...]:
    """List what stands at the foot of every page: pages written by hand, figures, the format."""
    return (
        *(Way(section=page.id, label=page.title, address=f"pages/{page.id}.html") for page in book.pages),
        Way(section="figures", label=words["figures_title"], address="figures.html"),
        Way(section="format", label=words["format_title"], address="format.html"),
    )


def changed_pages(before: BookSheet, after: BookSheet, words: Mapping[str, str]) -> frozenset[str]:
    """Give the addresses whose pages differ between two states of a book, for `build_site(only=...)`.

    A page's foot names the edition, which every edit changes: that alone does not count, so a preview's foot may lag.
    """
    now = pages_of(after, words)
    if _frame(before, words) != _frame(after, words):
        return frozenset(page.address for page in now)
    then = {page.address: page for page in pages_of(before, words)}
    return frozenset(
        page.address
        for page in now
        if then.get(page.address) != page
        or (isinstance(page.sheet, Link) and linked_sheet(before, page.sheet) != linked_sheet(after, page.sheet))
    )


def _frame(book: BookSheet, words: Mapping[str, str]) -> tuple[object, ...]:
    """Gather what every page shows or links to besides its own sheet."""
    return (
        book.title,
        book.language,
        book.system,
        main_ways(book, words),
        more_ways(book, words),
        tuple((index.id, index.title) for index in book.indexes),
        {page.address for page in pages_of(book, words)},
        {rule.id for rule in book.rules},
        {name for name, _ in book.photos},
    )
