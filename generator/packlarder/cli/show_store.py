"""The commands `show batch` and `show larder`: what was dried, and what is left of it, as text or data."""

import json
import sys
from collections.abc import Sequence
from pathlib import Path

from packlarder.book.book import Book, run_place
from packlarder.book.drying_run import DryingRun
from packlarder.book.meant import closest
from packlarder.cli import texts
from packlarder.cli.console import print_json, say, show_faults
from packlarder.cli.larder_stage import LarderOpened, open_larder
from packlarder.cli.options import Misuse, Options
from packlarder.cli.plain_store import plain_larder, plain_run
from packlarder.cli.stages import BookRead, book_folder, edition_of, read, shown
from packlarder.faults import Fault, has_errors
from packlarder.sheets.dish import day as printed_day
from packlarder.sheets.larder import larder_sheet
from packlarder.sheets.printed import System
from packlarder.sheets.run import run_sheet
from packlarder.sheets.store_data import LarderData, RunData, larder_data, run_data

LAST = 5
"""Runs that are named to somebody who asked for one that there is not."""


def show_batch(options: Options) -> int:
    """Print a drying run; 1 if something in it is wrong.

    A run whose weights can not be right, or that is not dry yet, is printed all the same: its verdict says so.
    """
    opened = larder_asked_for(options)
    if opened is None:
        return 1
    id = run_id(options.name, opened)
    own = opened.about_run(id)
    run = opened.store.runs.get(id)
    if run is None or len(run.batches) < len(run.model.on_the_trays):
        return faulty(opened.read, own, opened.folder)
    store = opened.store
    sheet = run_sheet(run, store.run_findings[id], store.larder.by_mark, opened.day)
    if options.json:
        _give(run_data(run, sheet, store.larder, edition=edition_of(opened.read.files, opened.day)))
    else:
        print(plain_run(sheet, _system(opened.book), foot(opened)), end="")
    if has_errors(own):
        return faulty(opened.read, own, opened.folder)
    _mention_others(opened)
    return 0


def show_larder(options: Options) -> int:
    """Print what stands in the larder; 1 if a run or a draw is wrong, so that it might not be true."""
    opened = larder_asked_for(options)
    if opened is None:
        return 1
    own = opened.about_larder()
    if has_errors(own):
        return faulty(opened.read, own, opened.folder)
    _mention_others(opened)
    if options.json:
        _give(larder_data(opened.store.larder, edition=edition_of(opened.read.files, opened.day)))
    else:
        sheet = larder_sheet(opened.store.larder, opened.store.larder_findings)
        print(plain_larder(sheet, _system(opened.book), foot(opened)), end="")
    return 0


def run_id(name: str, opened: LarderOpened) -> str:
    """Find a run by its id, or by the mark of a container of it; one whose file could not be read is found too.

    Raises Misuse, with the runs that may have been meant.
    """
    id = name.partition("/")[0].strip().lower().replace(" ", "-")
    if id in opened.book.runs or run_place(id).file in opened.read.files.texts:
        return id
    runs = sorted(opened.book.runs.items(), key=lambda run: run[1].loaded, reverse=True)
    if not runs:
        raise Misuse(texts.NO_RUNS)
    component = opened.book.component_id(name)
    meant = [run for run, model in runs if id in run or component in _components(model, opened.book)]
    close = closest(id, opened.book.runs, least=0.7)
    if id and meant:
        hint = texts.MEANT_RUNS.format(runs=_few(meant))
    elif close:
        hint = texts.DID_YOU_MEAN.format(word=close)
    else:
        hint = texts.LAST_RUNS.format(runs=_few([run for run, _ in runs]))
    raise Misuse(texts.NO_RUN.format(name=name, hint=hint))


def _components(run: DryingRun, book: Book) -> set[str]:
    return {id for batch in run.on_the_trays if (id := book.component_id(batch.name))}


def _few(runs: Sequence[str]) -> str:
    return ", ".join(runs[:LAST])


def foot(opened: LarderOpened) -> str:
    """Say which book, which edition of it and which day something was printed from."""
    edition = edition_of(opened.read.files, opened.day)
    return texts.FOOT.format(title=opened.book.household.title, edition=edition, day=printed_day(opened.day))


def _system(book: Book) -> System:
    return System(book.household.units.value)


def _give(data: RunData | LarderData) -> None:
    print_json(json.dumps(data, ensure_ascii=False, indent=2))


def _mention_others(opened: LarderOpened) -> None:
    if has_errors(opened.faults):
        say(texts.OTHER_FAULTS)


def larder_asked_for(options: Options) -> LarderOpened | None:
    """Open the larder of a book; without a sound book.yaml, say what is wrong there and give None."""
    folder = book_folder(options)
    found = read(folder, options.on)
    if found.book is None:
        faulty(found, found.faults, folder)
        return None
    return open_larder(folder, found, found.book)


def faulty(found: BookRead, faults: tuple[Fault, ...], folder: Path) -> int:
    """Say what is wrong, and give what a command then ends with."""
    show_faults(faults, found.files.texts, shown(folder), sys.stderr)
    return 1
