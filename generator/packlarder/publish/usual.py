"""What the pocket file and the e-book share: figures at the usual servings, words, templates, pages written by hand."""

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from html import escape
from pathlib import Path
from types import SimpleNamespace

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from packlarder.publish.site_pages import pages_of
from packlarder.publish.site_written import set_written
from packlarder.publish.words import read_words
from packlarder.sheets.book_sheet import BookSheet, Index, IndexGroup
from packlarder.sheets.dish_sheet import DishSheet, PartRow
from packlarder.sheets.facts import Fact
from packlarder.sheets.printed import NOTHING, Line, Printed, Strong, System
from packlarder.sheets.trip_sheet import TripSheet

SHARED = "pocket"
"""The folder of the theme with the templates that both are set with, and the words they have beside the site's."""

To = Callable[[str, str], str]
"""Gives the address of a `dish`, `component`, `page` or `trip` by its id."""


@dataclass(frozen=True, slots=True)
class Figures:
    """Sets figures for one number of servings in one system of units."""

    system: System
    at: int = 0

    def show(self, figure: Printed) -> str:
        """Set a figure; nothing where it does not apply."""
        text = figure.text(self.system, self.at)
        return "" if text == NOTHING else text

    def every(self, figure: Printed) -> tuple[str, ...]:
        """Set a figure for every number of servings."""
        return figure.us if self.system is System.US else figure.metric

    def fact(self, fact: Fact) -> str:
        """Set the figure of a fact."""
        return fact.us if self.system is System.US else fact.metric

    def line(self, line: Line) -> Markup:
        """Set a line: plain words, strong words, figures."""
        return Markup("").join(
            Markup("<strong>{}</strong>").format(run.text)
            if isinstance(run, Strong)
            else run.text(self.system, self.at)
            if isinstance(run, Printed)
            else run
            for run in line
        )

    def waters(self, part: PartRow, words: SimpleNamespace) -> str:
        """Say in one line how a part takes its water."""
        named = ((words.offered, part.offered), (words.absorbed, part.absorbed), (words.drained, part.drained))
        said = [f"{label.lower()} {self.show(figure)}" for label, figure in named if self.show(figure)]
        return ", ".join(filter(None, (part.way, *said)))


@dataclass(frozen=True, slots=True, kw_only=True)
class SetPage:
    """A page that people wrote by hand, set as HTML."""

    id: str
    title: str
    html: Markup


def make_templates(theme: Path, *folders: str) -> Environment:
    """Open the templates in folders of the theme: everything that is set is escaped, no word may be missing."""
    loader = FileSystemLoader([theme / folder for folder in folders])
    return Environment(loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)


def words_of(theme: Path, language: str) -> Mapping[str, str]:
    """Read the words: the site's, and those that only the pocket file and the e-book have."""
    site = read_words(theme / "site" / "words", language)
    return {**site, **read_words(theme / SHARED / "words", language)}


def shared_context(book: BookSheet, words: Mapping[str, str], pages: tuple[SetPage, ...], to: To) -> dict[str, object]:
    """Give what the templates of both name; there, `to` gives nothing for what the book does not have."""
    planned = {sheet.id: sheet for sheet in planned_trips(book)}
    known = {
        "dish": {sheet.id for sheet in book.dishes},
        "component": {sheet.id for sheet in book.components},
        "page": {page.id for page in pages},
        "trip": set(planned),
    }
    return {
        "book": book,
        "w": SimpleNamespace(**words),
        "groups": contents_of(book.indexes, book.dishes),
        "pages": pages,
        "trips": tuple(planned.values()),
        "figures_of": lambda sheet: Figures(book.system, sheet.usual),
        "plain_figures": Figures(book.system),
        "to": lambda kind, id: to(kind, id) if id in known[kind] else "",
    }


def contents_of(indexes: tuple[Index, ...], dishes: Sequence[DishSheet]) -> tuple[IndexGroup, ...]:
    """Give the groups of the first index, of dishes that there are."""
    known = {dish.id for dish in dishes}
    groups = indexes[0].groups if indexes else ()
    return tuple(
        IndexGroup(heading=group.heading, entries=tuple(entry for entry in group.entries if entry.link.id in known))
        for group in groups
    )


def in_order(book: BookSheet) -> Iterator[DishSheet]:
    """Give the dishes with all numbers of servings, one after the other in the order of the contents."""
    by_id = {dish.id: dish for dish in book.dishes}
    listed = [entry.link.id for group in contents_of(book.indexes, book.dishes) for entry in group.entries]
    for id in dict.fromkeys((*listed, *by_id)):
        yield book.spread.get(id) or by_id[id]


def planned_trips(book: BookSheet) -> Iterator[TripSheet]:
    """Give the planned trips that were worked out, the first to start first; of those that are gone nobody cooks."""
    if book.trips is None:
        return
    for entry in book.trips.index.planned:
        if entry.link.id in book.trips.sheets:
            yield book.trips.sheets[entry.link.id]


_LINK = re.compile(r' href="\.\./(?P<address>[^"#]+)\.html(?:#[^"]*)?"')
_PICTURE = re.compile(r' src="\.\./photos/')
_ID_OR_MARK = re.compile(r' (?:id|href)="#?[^":/]*"')
_HEADING = re.compile(r"<(?P<close>/?)h(?P<level>[2-5])>")
_VOID = re.compile(r"<(?P<tag>br|hr|img)(?P<rest>[^>]*?)\s*/?>")
_KINDS = {"dishes": "dish", "components": "component", "pages": "page"}


def set_pages(
    book: BookSheet, words: Mapping[str, str], to: To, photos: frozenset[str], *, safety: str
) -> tuple[SetPage, ...]:
    """Set the pages written by hand, as XML too; links lead to dishes, components, pages and `safety`, or nowhere.

    What is wrong with them the site has told.
    """
    addresses = frozenset(page.address for page in pages_of(book, words))

    def led(link: "re.Match[str]") -> str:
        folder, _, id = link["address"].rpartition("/")
        if link["address"] == "safety":
            return f' href="{safety}"'
        return f' href="{escape(to(_KINDS[folder], id))}"' if folder in _KINDS else ""

    def html_of(html: str) -> Markup:
        html = _ID_OR_MARK.sub("", html)  # several pages in one file: their marks would meet
        html = _PICTURE.sub(' src="photos/', _LINK.sub(led, html))
        html = _HEADING.sub(lambda found: f"<{found['close']}h{int(found['level']) + 1}>", html)
        return Markup(_VOID.sub(r"<\g<tag>\g<rest>/>", html))  # noqa: S704 - set and escaped by site_written

    written = ((page, set_written(page, addresses=addresses, photos=photos, words=words)) for page in book.pages)
    return tuple(SetPage(id=page.id, title=page.title, html=html_of(done.html)) for page, done in written)
