"""What each template is given besides the frame: a page's sheet, its figures, and what all pages share."""

from collections.abc import Mapping

from markupsafe import Markup, escape

from packlarder.faults import Fault, Severity
from packlarder.publish.pictures import plot, strips
from packlarder.publish.site_figures import PageFigures, all_columns, counts, used_columns
from packlarder.publish.site_pages import SitePage, address_of, linked_sheet, main_ways, more_ways, pages_of
from packlarder.publish.site_written import set_written
from packlarder.publish.trip_pictures import energy_columns, water_bars, weight_columns
from packlarder.sheets.book_sheet import BookSheet, WrittenPage
from packlarder.sheets.component_sheet import ComponentSheet
from packlarder.sheets.dish_sheet import DishSheet
from packlarder.sheets.facts import Link
from packlarder.sheets.store_sheet import LarderSheet, RunIndex, RunSheet
from packlarder.sheets.trip_sheet import TripIndex, TripSheet


class Links:
    """Sets links to pages of the book, as seen from one page."""

    def __init__(self, addresses: frozenset[str], root: str) -> None:
        """Keep the addresses that there are, and what leads to the site's root."""
        self._addresses = addresses
        self._root = root

    def to(self, link: Link) -> Markup:
        """Set a link; its name alone where the book has no such page."""
        address, name = address_of(link), escape(link.name)
        linked = f'<a href="{self._root}{escape(address)}">{name}</a>' if address in self._addresses else name
        return Markup(linked)  # noqa: S704 - put together here, every text in it escaped


class SiteContext:
    """Makes the context of one page after the other; all names here are names in the templates."""

    def __init__(self, book: BookSheet, *, words: Mapping[str, str], scripts: tuple[str, ...], policy: str) -> None:
        """Prepare what every page shares. `scripts` are ours and are set as they are."""
        self._addresses = frozenset(page.address for page in pages_of(book, words))
        self._photos = frozenset(name for name, _ in book.photos)
        self.words = words
        self._book = book
        self._columns = all_columns(words)
        self._faults: list[Fault] = []
        self._shared: dict[str, object] = {
            "book": book,
            "scripts": tuple(Markup(script) for script in scripts),  # noqa: S704 - our own, not a book's
            "policy": policy,
            "main_ways": main_ways(book, words),
            "more_ways": more_ways(book, words),
            "addresses": self._addresses,
            "components": frozenset(part.id for part in book.components),
            "photos": self._photos,
            "rules": frozenset(rule.id for rule in book.rules),
            "address_of": address_of,
            "severities": {severity: words[f"severity_{severity}"] for severity in Severity},
        }

    def of(self, page: SitePage) -> dict[str, object]:
        """Give the context of a page; `root` leads from it to the site's root."""
        sheet = linked_sheet(self._book, page.sheet) if isinstance(page.sheet, Link) else page.sheet
        root = "../" * page.address.count("/")
        context = self._shared | {
            "title": page.title,
            "section": page.section,
            "root": root,
            "links": Links(self._addresses, root),
            "address": page.address,
            "sheet": sheet,
        }
        if isinstance(sheet, DishSheet):
            context |= self._dish(sheet)
        elif isinstance(sheet, ComponentSheet | LarderSheet | RunSheet | RunIndex):
            context |= self._stored(sheet)
        elif isinstance(sheet, TripSheet | TripIndex):
            context |= self._trip(sheet)
        elif isinstance(sheet, WrittenPage):
            context["html"] = self._written(sheet)
        return context

    def faults(self) -> tuple[Fault, ...]:
        """Give what was found wrong in pages written by hand."""
        return tuple(self._faults)

    def _dish(self, dish: DishSheet) -> dict[str, object]:
        """Give what only a dish page needs."""
        words = self.words
        return {
            "figures": PageFigures(system=self._book.system, usual=dish.usual, servings=dish.servings),
            "for_servings": counts(dish.servings, one=words["serving_one"], many=words["serving_many"]),
            "columns": used_columns(dish, self._columns),
        }

    def _stored(self, sheet: ComponentSheet | LarderSheet | RunSheet | RunIndex) -> dict[str, object]:
        """Give what a page of food that is dried or stored needs: figures without servings, and its pictures."""
        context: dict[str, object] = {"figures": PageFigures(system=self._book.system)}
        if isinstance(sheet, ComponentSheet):
            history = None if sheet.stored is None else sheet.stored.history
            context["plot"] = None if history is None else plot(history)
        elif isinstance(sheet, LarderSheet):
            context["strips"] = None if sheet.calendar is None else strips(sheet.calendar)
        return context

    def _trip(self, sheet: TripSheet | TripIndex) -> dict[str, object]:
        """Give what pages of trips need: figures without servings, and a trip's pictures."""
        context: dict[str, object] = {"figures": PageFigures(system=self._book.system)}
        if isinstance(sheet, TripSheet):
            context["waters"] = water_bars(sheet)
            context["weights"] = weight_columns(sheet.days)
            context["energies"] = energy_columns(sheet)
        return context

    def _written(self, page: WrittenPage) -> Markup:
        """Set a page written by hand and keep its faults."""
        written = set_written(page, addresses=self._addresses, photos=self._photos, words=self.words)
        self._faults.extend(written.faults)
        return written.html
