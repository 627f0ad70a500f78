"""The command `labels`: labels for jars, lids and packs as PDF, on label sheets or on paper to cut apart."""

import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from packlarder.book.book import dish_place
from packlarder.book.household import Household
from packlarder.book.meant import ALIKE
from packlarder.cli import texts
from packlarder.cli.console import show_faults
from packlarder.cli.hints import meant_or_known
from packlarder.cli.label_sheets import usual_sheet
from packlarder.cli.larder_stage import LarderOpened
from packlarder.cli.new_store import component_named
from packlarder.cli.options import Misuse, Options, as_day
from packlarder.cli.show_dish import dish_asked_for
from packlarder.cli.show_store import faulty, larder_asked_for, run_id
from packlarder.cli.stages import BookRead, edition_of, shown
from packlarder.cli.trip_asked import trip_asked_for
from packlarder.disk.theme import theme_folder
from packlarder.faults import has_errors
from packlarder.publish.label_stock import STOCKS, Purpose, label_stock
from packlarder.publish.labels import LabelJob, LabelSheets, build_labels
from packlarder.reckon.larder_records import Standing
from packlarder.sheets.jar_labels import jar_labels
from packlarder.sheets.label_sheet import LabelSet
from packlarder.sheets.pack_labels import pack_labels
from packlarder.sheets.printed import System
from packlarder.sheets.trip_labels import trip_labels

DEFAULT_OUT = Path("labels")


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """Labels to print, what they are for, and the book they come from."""

    labels: LabelSet
    purposes: tuple[Purpose, ...]
    household: Household
    read: BookRead
    folder: str


def labels(options: Options) -> int:
    """Print the labels that are asked for; 1 if what they would say is wrong. Raises Misuse where there are none."""
    asked = {"dish": _of_a_dish, "trip": _of_a_trip}
    wanted = asked.get(options.kind, _of_the_larder)(options)
    if wanted is None:
        return 1
    out = options.out or DEFAULT_OUT
    done = build_labels(wanted.labels, _jobs(options, wanted), theme=theme_folder(), out=out)
    faults = tuple(fault for sheets in done for fault in sheets.faults)
    if faults:
        show_faults(faults, wanted.read.files.texts, wanted.folder, sys.stderr)
    for sheets in done:
        if sheets.pdf:
            print(_told(sheets, out))
    return int(has_errors(faults))


def _jobs(options: Options, wanted: Wanted) -> list[LabelJob]:
    """Take the sheets that are named, each for what it serves, or else the usual ones."""
    if not options.sheets:
        return [_job(usual_sheet(wanted.household.print, one), (one,), first=options.first) for one in wanted.purposes]
    return [
        _job(name, wanted.purposes, first=options.first if nth == 0 else 1) for nth, name in enumerate(options.sheets)
    ]


def _job(name: str, purposes: Sequence[Purpose], *, first: int) -> LabelJob:
    """Print on a sheet what it serves for. Raises Misuse where it serves for nothing of it, or has no such label."""
    stock = label_stock(name)
    fitting = [one.id for one in STOCKS if set(one.serves) & set(purposes)]
    if stock is None or name not in fitting:
        raise Misuse(texts.NO_SHEET.format(name=name, hint=meant_or_known(name, fitting, least=ALIKE)))
    if first > stock.count:
        raise Misuse(texts.NO_SUCH_LABEL.format(name=name, count=stock.count, first=first))
    return LabelJob(purpose=next(one for one in purposes if one in stock.serves), stock=name, first=first)


def _of_a_dish(options: Options) -> Wanted | None:
    asked = dish_asked_for(options)
    if asked is None:
        return None
    worked, dish, sheet = asked
    household = dish.household
    packs = pack_labels(dish, sheet, System(household.units.value), dish_place(sheet.id))
    if not packs:
        raise Misuse(texts.NO_PACKS.format(name=sheet.name))
    edition = edition_of(worked.read.files, worked.read.day)
    made = LabelSet(
        title=texts.LABELS_OF.format(what=sheet.name),
        language=household.language,
        edition=edition,
        packs=packs,
        with_code=household.larder.code_on_labels,
    )
    return Wanted(labels=made, purposes=(Purpose.PACK,), household=household, read=worked.read, folder=worked.shown)


def _of_a_trip(options: Options) -> Wanted | None:
    asked = trip_asked_for(options)
    if asked is None:
        return None
    opened, trip = asked
    household, name = opened.book.household, trip.sums.model.name
    edition = edition_of(opened.read.files, opened.day)
    made = trip_labels(trip.sums, household, edition=edition, title=texts.LABELS_OF.format(what=name))
    if not made.packs:
        raise Misuse(texts.NO_PACKS.format(name=name))
    return Wanted(
        labels=made,
        purposes=(Purpose.PACK,),
        household=household,
        read=opened.read,
        folder=shown(opened.folder),
    )


def _of_the_larder(options: Options) -> Wanted | None:
    opened = larder_asked_for(options)
    if opened is None:
        return None
    id = run_id(options.name, opened) if options.kind == "batch" else ""
    own = opened.about_run(id) if id else opened.about_larder()
    if has_errors(own):
        faulty(opened.read, own, opened.folder)
        return None
    chosen = _chosen(options, opened, id)
    if not chosen:
        raise Misuse(texts.NOTHING_TO_LABEL)
    title = texts.LABELS_OF.format(what=id or options.name or opened.book.household.title)
    household = opened.book.household
    made = jar_labels(chosen, household, edition_of(opened.read.files, opened.day), title)
    return Wanted(
        labels=made,
        purposes=(Purpose.JAR, Purpose.LID),
        household=household,
        read=opened.read,
        folder=shown(opened.folder),
    )


def _chosen(options: Options, opened: LarderOpened, run: str) -> list[Standing]:
    """Give the containers that are asked for, in the order in which they were filled.

    What is empty needs no label.
    """
    larder = opened.store.larder
    every = sorted(larder.by_mark.values(), key=lambda one: (one.batch.loaded, str(one.mark)))
    held = [one for one in every if not one.empty]
    if run:
        return [one for one in held if one.mark.run == run]
    if options.kind == "component":
        component = component_named(opened, options.name)
        return [one for one in held if one.batch.component.id == component.id]
    if options.kind == "since":
        since = as_day(options.name)
        return [one for one in held if one.batch.dried_on is not None and one.batch.dried_on >= since]
    return held


def _told(sheets: LabelSheets, out: Path) -> str:
    return texts.LABELLED.format(
        labels=texts.counted(sheets.printed, "label"),
        pages=texts.counted(sheets.pages, "page"),
        path=out / sheets.job.file,
        next=sheets.next_first,
    )
