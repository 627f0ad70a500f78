"""The jobs that are timed, each in a process of its own: `python -m tests.bench.jobs site FOLDER`.

FOLDER holds `book/` and is written to. Prints what the job has to tell beside its time, as JSON.
"""

import json
import shutil
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from packlarder.cli.rings import rings_left, sweep_rings

if TYPE_CHECKING:
    from packlarder.sheets.book_sheet import BookSheet

DAY = date(2027, 6, 1)
BOOKLET_DISHES = 40
"""Dishes of the booklet that is timed: pages of a longer one take as long each."""
FAULTY = "the book of the bench has faults"
Told = Mapping[str, float]


def check(folder: Path) -> Told:
    """Check the book as the command line does."""
    from packlarder.cli import main

    ended = main(["check", "--book", str(folder / "book")])
    if ended:
        raise RuntimeError(FAULTY)
    return {}


def site(folder: Path) -> Told:
    """Build the whole site, from the files on."""
    from packlarder.cli.crew import work_together
    from packlarder.disk.theme import theme_folder

    with work_together(folder / "book", DAY, writes=True) as (worked, crew):
        if crew is None or not worked.sound:
            raise RuntimeError(FAULTY)
        crew.write_site(crew.sheet(), theme=theme_folder(), out=folder / "site")
    return {"pages": float(sum(1 for _ in (folder / "site").rglob("*.html")))}


def write_markdown(folder: Path) -> Told:
    """Write every page of the site as Markdown; not timed."""
    from tests.bench.as_markdown import as_markdown

    pages = folder / "markdown"
    for page in (folder / "site").rglob("*.html"):
        path = (pages / page.relative_to(folder / "site")).with_suffix(".md")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(as_markdown(page.read_text(encoding="utf-8")), encoding="utf-8")
    return {}


def stock(folder: Path) -> Told:
    """Build the Markdown with MkDocs as it comes: its stock theme, its stock settings."""
    from mkdocs.commands.build import build
    from mkdocs.config.defaults import MkDocsConfig

    config = MkDocsConfig()
    settings: dict[str, object] = {
        "site_name": "The same text",
        "docs_dir": str(folder / "markdown"),
        "site_dir": str(folder / "stock"),
    }
    config.load_dict(settings)
    errors, _ = config.validate()
    if errors:
        raise RuntimeError(f"MkDocs refuses its configuration: {errors}")
    build(config)
    return {}


def booklet(folder: Path) -> Told:
    """Print the booklet of some dishes, plain and imposed."""
    from pypdf import PdfReader

    from packlarder.disk.theme import theme_folder
    from packlarder.publish.paper import build_booklets

    sweep_rings()
    field = _sheet(folder).field
    openings = field.openings[:BOOKLET_DISHES]
    taken = {opening.id for opening in openings}
    index = tuple((name, tuple(id for id in dishes if id in taken)) for name, dishes in field.component_index)
    field = replace(field, openings=openings, component_index=tuple(row for row in index if row[1]))
    out = folder / "print"
    build_booklets(field, sizes=("a6",), theme=theme_folder(), out=out)
    return {"pages": float(len(PdfReader(out / "field-a6.pdf").pages))}


def larder(folder: Path) -> Told:
    """Work out a book of many batches, and write its site, from the files on; loading our own modules is not timed."""
    import packlarder.publish.site_shares
    import packlarder.sheets.book  # noqa: F401 - see above
    from packlarder.cli.crew import work_together
    from packlarder.disk.theme import theme_folder

    start = time.perf_counter()
    with work_together(folder / "larder", DAY, writes=True) as (worked, crew):
        if crew is None or worked.faults:
            raise RuntimeError(FAULTY)
        sheet = crew.sheet()
        sums = time.perf_counter() - start
        crew.write_site(sheet, theme=theme_folder(), out=folder / "larder-site")
    pages = time.perf_counter() - start - sums
    written = float(sum(1 for _ in (folder / "larder-site").rglob("*.html")))
    shutil.rmtree(folder / "larder-site")
    return {"sums_s": sums, "pages_s": pages, "pages": written}


def trip(folder: Path) -> Told:
    """Show the long trip as the command line does."""
    from tests.bench.large_trip import ID

    from packlarder.cli import main

    ended = main(["show", "trip", ID, "--book", str(folder / "trip")])
    if ended:
        raise RuntimeError(FAULTY)
    return {}


JOBS: Mapping[str, Callable[[Path], Told]] = {
    "check": check,
    "site": site,
    "markdown": write_markdown,
    "stock": stock,
    "booklet": booklet,
    "larder": larder,
    "trip": trip,
}


def _sheet(folder: Path) -> "BookSheet":
    from packlarder.cli import stages

    worked = stages.work_out(folder / "book", DAY)
    if worked.checked is None or not worked.sound:
        raise RuntimeError(FAULTY)
    return stages.sheet_of(worked.read, worked.checked)


def main(job: str, folder: str) -> None:
    """Do a job, and print what it has to tell and the most memory that it held."""
    with rings_left():  # as the command line does, for MkDocs alike
        told = dict(JOBS[job](Path(folder)))
    if sys.platform != "win32":
        import resource

        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        told["peak_mib"] = peak / (2**20 if sys.platform == "darwin" else 2**10)
    print(json.dumps(told))


if __name__ == "__main__":
    main(*sys.argv[1:3])
