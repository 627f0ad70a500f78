"""The command `draw`: what was taken, given away, thrown out, opened or counted, as a new file, if it can be true."""

from dataclasses import replace

from packlarder.book.book import DRAWS_FOLDER, HOUSEHOLD_FILE, draws_place, run_place
from packlarder.book.draw import Deed, Draw, Draws, Mark
from packlarder.book.read import read_book
from packlarder.cli import texts
from packlarder.cli.console import say
from packlarder.cli.larder_stage import LarderOpened, open_larder
from packlarder.cli.new_file import free_id, quoted, short_id, write_new
from packlarder.cli.options import Misuse, Options
from packlarder.cli.plain_store import plain_drawn
from packlarder.cli.stages import book_folder, read
from packlarder.faults import Fault, Severity, has_errors
from packlarder.measure import as_typed
from packlarder.reckon.larder import NOT_FOR_STORE, reckon_larder
from packlarder.reckon.larder_records import LarderSums
from packlarder.sheets.larder import larder_sheet
from packlarder.sheets.printed import System
from packlarder.sheets.shelf import container_row, weight

HEAD = "# yaml-language-server: $schema=../.schema/draws.json\n"


def draw(options: Options) -> int:
    """Work out what a draw leaves, write it, and say so. Raises Misuse for one that can not be, and writes nothing."""
    folder = book_folder(options)
    found = read(folder, options.on)
    if found.book is None:
        raise Misuse(texts.NO_BOOK.format(folder=folder, program=texts.PROGRAM))
    opened = open_larder(folder, found, found.book)
    text = draw_text(options, opened.day.isoformat())
    drawn = _understood(opened, text)
    id = _id(opened, options, drawn)
    larder = _worked_out(opened, drawn, id)
    says = _left(opened, larder, drawn.drawn[0].from_)
    file = draws_place(id).file
    write_new(folder, file, text)
    print(says)
    if caution := _caution(opened, drawn.drawn[0]):
        say(caution)
    print(texts.NOTED.format(path=folder / file))
    return 0


def _caution(opened: LarderOpened, drawn: Draw) -> str:
    """Warn of what goes to somebody's plate and is past its day, or not dry; "" where there is nothing to say."""
    one = opened.store.larder.by_mark[drawn.from_]
    if drawn.deed not in (Deed.TOOK, Deed.GAVE_AWAY):
        return ""
    if one.batch.verdict in NOT_FOR_STORE:
        return texts.TAKEN_WET.format(mark=one.mark)
    return texts.TAKEN_PAST.format(mark=one.mark) if one.past(opened.day) else ""


def draw_text(options: Options, day: str) -> str:
    """Write the file of a draw. Raises Misuse for a text that no file can hold."""
    for said in (options.mark, options.amount, options.what_for, options.why):
        if not said.isprintable():
            raise Misuse(texts.NOT_PRINTABLE.format(text=ascii(said)[1:-1]))
    lines = [f"date: {day}"]
    if options.what_for.strip():
        lines.append(f"for: {quoted(options.what_for.strip())}")
    lines += ["drawn:", f"  - from: {quoted(options.mark)}", f"    {options.deed}: {quoted(options.amount or 'yes')}"]
    if options.why.strip():
        lines.append(f"    why: {quoted(options.why.strip())}")
    return HEAD + "".join(f"{line}\n" for line in lines)


def _understood(opened: LarderOpened, text: str) -> Draws:
    """Read a draw as it would be read from its file. Raises Misuse in the words of the first fault."""
    file = draws_place("draw").file
    found = read_book({HOUSEHOLD_FILE: opened.read.files.texts[HOUSEHOLD_FILE], file: text.encode()})
    wrong = [fault for fault in found.faults if fault.place.file == file]
    if found.book is None or wrong:
        raise Misuse(_refused(wrong[0]))
    return found.book.draws["draw"]


def _id(opened: LarderOpened, options: Options, drawn: Draws) -> str:
    """Name the file after what it is for or what was drawn, so that it is read after all others of that container."""
    mark = drawn.drawn[0].from_
    run = opened.book.runs.get(mark.run)
    before = [
        id
        for id, draws in opened.book.draws.items()
        if draws.date == drawn.date and any(one.from_ == mark for one in draws.drawn)
    ]
    standing = opened.store.larder.by_mark.get(mark)
    what = mark.run if run is None or standing is None else standing.batch.component.id
    wanted = f"{drawn.date.isoformat()}-{short_id(options.what_for, what, texts.DRAW)}"
    return free_id(wanted, opened.ids_in(DRAWS_FOLDER), after=max(before, default=""))


def _worked_out(opened: LarderOpened, drawn: Draws, id: str) -> LarderSums:
    """Take stock with a draw in the book, and say what looks odd. Raises Misuse for what is wrong only with it."""
    book = opened.book
    mark = drawn.drawn[0].from_
    if mark not in _marks(opened) and has_errors(opened.about_run(mark.run)):
        raise Misuse(texts.MARK_GONE.format(mark=mark, file=run_place(mark.run).file, program=texts.PROGRAM))
    after = replace(book, draws={**book.draws, id: drawn})
    larder, faults = reckon_larder(after, opened.components.sums, opened.store.runs, opened.day)
    new = [fault for fault in faults if fault not in opened.faults]
    for fault in new:
        if fault.severity is Severity.ERROR:
            raise Misuse(_refused(fault, elsewhere=fault.place.file != draws_place(id).file))
    if opened.store.larder.by_mark[mark].empty and drawn.drawn[0].deed is not Deed.COUNTED:
        raise Misuse(texts.REFUSED.format(reason=texts.NOTHING_LEFT.format(mark=mark)))
    for fault in new:
        say(_sentence(fault))
    return larder


def _marks(opened: LarderOpened) -> set[Mark]:
    return {container.mark for run in opened.store.runs.values() for container in run.containers}


def _left(opened: LarderOpened, larder: LarderSums, mark: Mark) -> str:
    """Say what happened to a container, what is left in it, and what there is of its component in all."""
    one = larder.by_mark[mark]
    last, component = one.drawn[-1], one.batch.component
    levels = larder_sheet(larder, ()).levels
    return plain_drawn(
        container_row(one.container, one.batch, one, opened.day),
        last.deed.value,
        before=weight("", last.left_g + last.went_g),
        went=weight("", max(0.0, last.went_g)),
        level=next((row for row in levels if row.component.id == component.id), None),
        system=System(opened.book.household.units.value),
    )


def _refused(fault: Fault, *, elsewhere: bool = False) -> str:
    reason = _sentence(fault)
    return texts.REFUSED.format(
        reason=texts.CLASHES.format(file=fault.place.file, reason=reason) if elsewhere else reason
    )


def _sentence(fault: Fault) -> str:
    """Say a fault and its way out in a line, without a place: the file is not there."""
    text = as_typed("; ".join(filter(None, (fault.message, fault.help))))
    return text if text.endswith((".", "?")) else f"{text}."
