"""What a preview shows: the site in a folder of its own, kept up to date, or what is wrong with the book."""

import base64
import hashlib
import time
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from threading import Condition
from urllib.parse import unquote

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from packlarder.book.book import FOODS_FILE, HOUSEHOLD_FILE, component_place, dish_place
from packlarder.book.show_faults import render
from packlarder.cli import texts
from packlarder.cli.downloads import PRINT
from packlarder.cli.options import Options
from packlarder.cli.schemas import write_schemas
from packlarder.cli.stages import BookWorked, edition_of, sheet_of, work_out
from packlarder.faults import Fault, Severity
from packlarder.publish import data, ebook, single
from packlarder.publish.site import build_site
from packlarder.publish.site_pages import changed_pages, pages_of
from packlarder.publish.words import read_words
from packlarder.safety.whole import CheckedBook
from packlarder.sheets.book_sheet import BookSheet

FORMER = "former"
"""The query that asks for a page as it was before something went wrong."""
ONLY_BUILT = (f"{PRINT}/", single.FILE, ebook.FILE, f"{data.FOLDER}/")
"""What lies beside the site of a build, and not beside that of a preview."""
BUILT_KINDS = (".csv", ".ics")
"""How tables and calendars of trips end, which lie among the pages of a build."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A state of the book that the site shows."""

    checked: CheckedBook
    sheet: BookSheet
    texts: Mapping[str, bytes]


class Preview:
    """Builds the site into a folder and rewrites the pages that an edit changes.

    `faults` is a page about what is wrong, empty while nothing is. `changed_ms` is when something last changed, by the
    clock that browsers on this machine read too.
    """

    def __init__(self, options: Options, folder: Path, *, theme: Path, out: Path) -> None:
        """Keep where everything is; nothing is built yet."""
        self.options = options
        self.folder = folder
        self.theme = theme
        self.out = out
        self.script = (theme / "preview" / "preview.js").read_text(encoding="utf-8")
        self.faults = ""
        self.changed_ms = 0
        self._news = Condition()
        self._shown: Shown | None = None
        self._seen = ""

    def refresh(self, *, anew: bool = False) -> BookWorked | None:
        """Look at the book; where it changed, or `anew`, bring the site up to date and give how the book is."""
        worked = work_out(self.folder, self.options.on)
        seen = edition_of(worked.read.files, date.min)
        if seen == self._seen and not anew:
            return None
        self._seen = seen
        if worked.checked is not None and worked.sound:
            found = self._build(worked, worked.checked, anew=anew)
            worked = replace(worked, faults=(*worked.faults, *found))
            self.faults = ""
        else:
            self.faults = self._fault_page(worked)
        with self._news:
            self.changed_ms = time.time_ns() // 1_000_000
            self._news.notify_all()
        return worked

    def wait(self, since_ms: int, most_s: float) -> None:
        """Wait until something changes after `since_ms`, but not longer than `most_s`."""
        with self._news:
            self._news.wait_for(lambda: self.changed_ms != since_ms, most_s)

    def _build(self, worked: BookWorked, checked: CheckedBook, *, anew: bool) -> tuple[Fault, ...]:
        sheet = sheet_of(worked.read, checked)
        before, self._shown = self._shown, Shown(checked=checked, sheet=sheet, texts=worked.read.files.texts)
        only = None if anew or before is None else self._changed(before, self._shown)
        write_schemas(self.folder, checked.book)
        return build_site(sheet, theme=self.theme, out=self.out, only=only, preview=self.script)

    def _changed(self, before: Shown, after: Shown) -> frozenset[str] | None:
        """Give the addresses of pages to write again, None for all and what they share; take away those that went."""
        words = read_words(self.theme / "site" / "words", after.sheet.language)
        now = {page.address for page in pages_of(after.sheet, words)}
        for gone in {page.address for page in pages_of(before.sheet, words)} - now:
            (self.out / gone).unlink(missing_ok=True)
        if before.sheet.photos != after.sheet.photos:
            return None
        # What the usual servings do not show may still differ at others.
        touched = {f"dishes/{id}.html" for id in after.checked.dishes if _differs(id, before, after)}
        return changed_pages(before.sheet, after.sheet, words) | (touched & now)

    def no_page(self, path: str) -> str:
        """Give the page for an address that is not there; `path` begins with `/`. What only a build makes is told."""
        only_built = path.lstrip("/").startswith(ONLY_BUILT) or path.endswith(BUILT_KINDS)
        says = texts.PREVIEW_ONLY_BUILT if only_built else texts.PREVIEW_NO_PAGE_SAYS
        return self._page(
            title=texts.PREVIEW_NO_PAGE,
            says=says.format(path=unquote(path)),
            links=(("/", texts.PREVIEW_HOME),),
        )

    def _fault_page(self, worked: BookWorked) -> str:
        errors = [fault for fault in worked.faults if fault.severity is Severity.ERROR]
        return self._page(
            title=texts.PREVIEW_FAULTS,
            says=texts.PREVIEW_SAYS,
            faults=render(errors, worked.read.files.texts, worked.shown),
            links=((f"?{FORMER}", texts.PREVIEW_FORMER),) if self._shown else (),
        )

    def _page(self, *, title: str, says: str, links: tuple[tuple[str, str], ...], faults: str = "") -> str:
        """Set a page of the preview's own; `links` are addresses and their words."""
        folder = self.theme / "preview"
        style = (folder / "page.css").read_text(encoding="utf-8")
        templates = Environment(loader=FileSystemLoader(folder), autoescape=True, undefined=StrictUndefined)
        return templates.get_template("page.html").render(
            policy=_policy(style, self.script),
            style=Markup(style),  # noqa: S704 - our own
            script=Markup(self.script),  # noqa: S704 - our own
            title=title,
            faults=faults,
            says=says,
            links=links,
        )


def _differs(id: str, before: Shown, after: Shown) -> bool:
    """Tell whether the file of a dish, of a component in it, or what holds for all dishes is not what it was."""
    parts = (component_place(part.component.id).file for part in after.checked.dishes[id].plan.parts)
    files = (HOUSEHOLD_FILE, FOODS_FILE, dish_place(id).file, *parts)
    return any(before.texts.get(file) != after.texts.get(file) for file in files)


def _policy(style: str, script: str) -> str:
    """Allow what stands in the page, by digest, and asking the preview for news."""
    digests = [base64.b64encode(hashlib.sha256(text.encode()).digest()).decode() for text in (style, script)]
    return (
        f"default-src 'none'; style-src 'sha256-{digests[0]}'; script-src 'sha256-{digests[1]}'; "
        "connect-src 'self'; img-src data:; base-uri 'none'; form-action 'none'"
    )
