"""The site: one page per sheet, set by our own templates and written by MkDocs. Nothing structured is Markdown."""

import logging
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from jinja2 import Environment
from mkdocs.commands.build import build
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.plugins import BasePlugin
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page
from mkdocs.utils.templates import TemplateContext

from packlarder.faults import Fault
from packlarder.publish.site_assets import fonts, policy
from packlarder.publish.site_context import SiteContext
from packlarder.publish.site_pages import SitePage, pages_of
from packlarder.publish.site_templates import SiteTemplates
from packlarder.publish.words import read_words
from packlarder.sheets.book_sheet import BookSheet

Progress = Callable[[int, int], None]
"""Called with the number of pages written and of all pages."""


def build_site(
    sheet: BookSheet,
    *,
    theme: Path,
    out: Path,
    progress: Progress | None = None,
    only: frozenset[str] | None = None,
    without: frozenset[str] = frozenset(),
    preview: str = "",
) -> tuple[Fault, ...]:
    """Write the site of a book under `out` and give what is wrong with the pages people wrote by hand.

    Nothing under `out` is removed. With `only`, a set of addresses (`dishes/egg-pan.html`), just those pages are
    written and no font or photo; those in `without` are left to somebody else. `preview` is a script that every page
    then runs too, free to talk to where it came from.
    """
    site = theme / "site"
    words = read_words(site / "words", sheet.language)
    wanted = (page for page in pages_of(sheet, words) if only is None or page.address in only)
    pages = tuple(page for page in wanted if page.address not in without)
    scripts = tuple(script for script in ((site / "site.js").read_text(encoding="utf-8"), preview) if script)
    context = SiteContext(sheet, words=words, scripts=scripts, policy=policy(scripts, talks=bool(preview)))
    statics = {} if only is not None else fonts() | {f"photos/{name}": content for name, content in sheet.photos}
    config = _config(sheet, site=site, out=out)
    config.plugins["packlarder"] = _Publisher(pages=pages, context=context, statics=statics, progress=progress)
    with _silent():
        # A build that MkDocs calls dirty removes nothing; generated pages count as new, so all of them are written.
        build(config, dirty=True)
    return context.faults()


class _SheetPage(Page):
    """A page without text of its own; for any other, MkDocs sets up a Markdown converter (0.3 ms a page)."""

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - as MkDocs calls it
        """Have no source."""
        self.markdown = ""

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - as MkDocs calls it
        """Have no content; the template sets the sheet."""
        self.content = ""


class _Publisher(BasePlugin):  # type: ignore[no-untyped-call, type-arg]  # a plugin without settings of its own
    """Hands MkDocs the pages as generated files, and each page its sheet."""

    def __init__(
        self,
        *,
        pages: tuple[SitePage, ...],
        context: SiteContext,
        statics: Mapping[str, bytes],
        progress: Progress | None,
    ) -> None:
        """Keep what is to be written."""
        self._pages = {page.address.removesuffix(".html") + ".md": page for page in pages}
        self._context = context
        self._statics = statics
        self._progress = progress
        self._written = 0

    def on_config(self, config: MkDocsConfig) -> None:
        """Leave out what MkDocs would add by itself: extensions, and a site map with the day of the build in it."""
        config["markdown_extensions"] = []
        config.theme.dirs = config.theme.dirs[:1]
        config.theme.static_templates = set()

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Add the pages, fonts and photos."""
        for source in self._pages:
            file = File.generated(config, source, content="", inclusion=InclusionLevel.NOT_IN_NAV)
            _SheetPage(None, file, config)
            files.append(file)
        for name, content in self._statics.items():
            files.append(File.generated(config, name, content=content))
        return files

    def on_env(self, env: Environment, **_: object) -> Environment:
        """Set pages by our own kind of templates; they lie where MkDocs looks for its own."""
        return SiteTemplates(env.loader, self._context.words)

    def on_page_markdown(self, markdown: str, *, page: Page, **_: object) -> str:
        """Name the template of a page, which others read from its text."""
        page.meta = {"template": self._pages[page.file.src_uri].template}
        return markdown

    def on_page_context(self, context: TemplateContext, *, page: Page, **_: object) -> TemplateContext:
        """Give the template the page's sheet."""
        # MkDocs types its context as closed; the names added here are ours.
        context.update(self._context.of(self._pages[page.file.src_uri]))  # type: ignore[typeddict-item]  # see above
        return context

    def on_post_page(self, output: str, **_: object) -> str:
        """Count."""
        self._written += 1
        if self._progress is not None:
            self._progress(self._written, len(self._pages))
        return output


def _config(sheet: BookSheet, *, site: Path, out: Path) -> MkDocsConfig:
    """Make MkDocs's configuration in memory; no file is read for it, so no hook or foreign plugin can come along."""
    config = MkDocsConfig()
    config.load_dict(
        {
            "site_name": sheet.title,
            "docs_dir": str((site / "static").resolve()),
            "site_dir": str(out.resolve()),
            "theme": {"name": None, "custom_dir": str((site / "templates").resolve())},
            "use_directory_urls": False,
            "plugins": [],
        }
    )
    errors, _ = config.validate()
    if errors:
        raise ValueError(f"MkDocs refuses our configuration: {errors}")
    return config


@contextmanager
def _silent() -> Iterator[None]:
    """Keep MkDocs's own log from the terminal; what a reader must know is a fault or an exception."""
    log = logging.getLogger("mkdocs")
    level = log.level
    log.setLevel(logging.CRITICAL)
    try:
        yield
    finally:
        log.setLevel(level)
