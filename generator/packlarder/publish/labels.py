"""Labels on paper: for jars, their lids and packs for a trip, as tagged PDF for one label sheet."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from hashlib import sha256
from pathlib import Path

from packlarder.faults import Fault, Place, Severity
from packlarder.publish import file_names, label_words
from packlarder.publish.label_fit import Fit, Ladders, box_fits, lid_fits, seek
from packlarder.publish.label_setting import Label, LabelRoom, Piece, fits_its_cell, pictures
from packlarder.publish.label_stock import LabelStock, Purpose, label_stock
from packlarder.publish.press import Press
from packlarder.sheets.label_sheet import JarLabel, LabelSet, TripPackLabel

BOOK = Place(file="book.yaml")


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelJob:
    """What to print on: labels for a purpose on a stock, from cell `first` of the first sheet on (half-used sheets).

    `name` is what the file's begins with, else its purpose is told.
    """

    purpose: Purpose
    stock: str
    first: int = 1
    name: str = ""

    @property
    def file(self) -> str:
        """Give the name of the file that it makes: `labels-jar-a4-8.pdf`, or `<name>-labels-a4-8.pdf`."""
        if self.name:
            return file_names.labels(self.name, self.stock)
        return f"labels-{self.purpose.value}-{self.stock}.pdf"


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelSheets:
    """What a job made: a PDF, b"" if there was nothing to print; `next_first` is the first cell that is still free."""

    job: LabelJob
    pdf: bytes = b""
    pages: int = 0
    printed: int = 0
    next_first: int = 1
    faults: tuple[Fault, ...] = ()


def build_labels(labels: LabelSet, jobs: Sequence[LabelJob], *, theme: Path, out: Path) -> tuple[LabelSheets, ...]:
    """Print each job and write its file, `job.file`, into `out`; a job that has nothing to print writes none."""
    out.mkdir(parents=True, exist_ok=True)
    done = tuple(print_labels(labels, job, theme=theme) for job in jobs)
    for sheets in done:
        if sheets.pdf:
            (out / sheets.job.file).write_bytes(sheets.pdf)
    return done


def print_labels(labels: LabelSet, job: LabelJob, *, theme: Path) -> LabelSheets:
    """Print the labels that a job asks for. `theme` holds `print/`.

    Errors: a stock that is not known or serves for something else, a first cell that it does not have. Warnings: a
    label that takes more than one cell, one that has no room at all. A note: labels without a code for want of room.
    """
    stock = label_stock(job.stock)
    if stock is None:
        return LabelSheets(job=job, faults=(_misuse(job, "unknown-label-sheet", label_words.unknown_stock(job.stock)),))
    if job.purpose not in stock.serves:
        return LabelSheets(job=job, faults=(_misuse(job, "label-purpose", label_words.serves_not(stock, job.purpose)),))
    if not 1 <= job.first <= stock.count:
        message, help = label_words.no_such_cell(job.first, stock), label_words.cells_of(stock)
        return LabelSheets(job=job, faults=(Fault(place=BOOK, code="label-cell", message=message, help=help),))
    wanted: Sequence[Label] = labels.packs if job.purpose is Purpose.PACK else labels.jars
    if not wanted:
        return LabelSheets(job=job, next_first=job.first)
    return _print(labels, wanted, stock, job, theme)


def _misuse(job: LabelJob, code: str, message: str) -> Fault:
    return Fault(place=BOOK, code=code, message=message, help=label_words.known_stocks(job.purpose))


def _print(labels: LabelSet, wanted: Sequence[Label], stock: LabelStock, job: LabelJob, theme: Path) -> LabelSheets:
    room = LabelRoom(theme / "print", labels, stock, job.purpose)
    ladders = tuple(_ladder(label, stock, job.purpose, with_code=labels.with_code) for label in wanted)
    every = [
        Piece(id="", label=one, fit=fit)
        for one, each in zip(wanted, ladders, strict=True)
        for ways in each
        for fit in ways
    ]
    press = Press(pictures(stock, every))
    chosen = choose(room, press, wanted, ladders)
    faults = tuple(_faults(wanted, chosen, ladders, stock))
    placed = place(wanted, chosen, stock, job.first)
    if not placed:
        return LabelSheets(job=job, next_first=job.first, faults=faults)
    laid = press.lay_out(*room.final(placed))
    if len(laid.pages) != len(placed):
        raise AssertionError(f"{len(placed)} sheets of {stock.id} came out as {len(laid.pages)} pages")
    identifier = sha256(f"{labels.title} {labels.edition} {job}".encode()).hexdigest()[:32]
    last = placed[-1][-1].cell
    return LabelSheets(
        job=job,
        pdf=press.write_pdf(laid, identifier=identifier),
        pages=len(placed),
        printed=sum(fit is not None for fit in chosen),
        next_first=(last.number if last else 0) % stock.count + 1,
        faults=faults,
    )


def _ladder(label: Label, stock: LabelStock, purpose: Purpose, *, with_code: bool) -> Ladders:
    """Give the ways to set a label, the best first."""
    if purpose is Purpose.LID and isinstance(label, JarLabel):
        return lid_fits(stock, raw=label.raw, days=bool(label.use_by) + bool(label.dried))
    fits = box_fits(stock, purpose, label.code_text if with_code else "")
    if isinstance(label, JarLabel):
        return fits
    blocks = _blocks_with_text(label)
    return tuple(tuple(fit for fit in ways if _suits(fit, blocks)) for ways in fits)


def _suits(fit: Fit, blocks: frozenset[str]) -> bool:
    """Tell whether a way to set a label prints all its text, and some of it in each cell."""
    cells = [blocks & {*piece.split()} for piece in fit.pieces]
    return all(cells) and frozenset().union(*cells) == blocks


def _blocks_with_text(label: TripPackLabel) -> frozenset[str]:
    """Name the blocks of a pack's label that have text, besides what stands at the head of each of its cells."""
    texts = {
        "open": (label.take_out, *label.not_for),
        "do": (label.water, label.minutes, label.done, label.fill_mark),
        "warn": (label.caution, label.contains, label.may_contain),
        "holds": label.holds,
    }
    return frozenset(block for block, told in texts.items() if any(told))


def choose(
    room: LabelRoom, press: Press, wanted: Sequence[Label], ladders: Sequence[Ladders]
) -> tuple[Fit | None, ...]:
    """Find the best way that fits for each label, all labels in one draft at a time; None where no way does."""
    chosen: list[Fit | None] = [None] * len(wanted)
    seekers = [seek(each) for each in ladders]
    tries = {number: next(seeker) for number, seeker in enumerate(seekers)}
    while tries:
        pieces = {number: _pieces(number, wanted[number], fit) for number, fit in tries.items()}
        drafted = press.lay_out(*room.draft([piece for each in pieces.values() for piece in each]))
        tries = {}
        for number, each in pieces.items():
            try:
                tries[number] = seekers[number].send(all(fits_its_cell(drafted, piece, room.stock) for piece in each))
            except StopIteration as found:
                chosen[number] = found.value
    return tuple(chosen)


def _pieces(number: int, label: Label, fit: Fit) -> tuple[Piece, ...]:
    return tuple(
        Piece(id=f"label-{number + 1}-{part + 1}", label=label, fit=fit, part=part) for part in range(len(fit.pieces))
    )


def place(
    wanted: Sequence[Label], chosen: Sequence[Fit | None], stock: LabelStock, first: int
) -> tuple[tuple[Piece, ...], ...]:
    """Deal the labels out to the cells of as many sheets as they take, from cell `first` on."""
    dealt = [
        piece
        for number, (label, fit) in enumerate(zip(wanted, chosen, strict=True))
        if fit
        for piece in _pieces(number, label, fit)
    ]
    cells, skipped = stock.cells, first - 1
    sheets: list[list[Piece]] = []
    for spot, piece in enumerate(dealt, skipped):
        page, cell = divmod(spot, len(cells))
        if page == len(sheets):
            sheets.append([])
        sheets[page].append(replace(piece, cell=cells[cell]))
    return tuple(tuple(sheet) for sheet in sheets)


def _faults(
    wanted: Sequence[Label], chosen: Sequence[Fit | None], ladders: Sequence[Ladders], stock: LabelStock
) -> Iterator[Fault]:
    """Say once for each name what did not fit."""
    told: dict[Fault, None] = {}
    for label, fit in zip(wanted, chosen, strict=True):
        if fit is None:
            told[_slip(label, "label-no-room", label_words.no_room(_name(label), stock), label_words.NO_ROOM_HELP)] = (
                None
            )
        elif len(fit.pieces) > 1:
            message = label_words.several_cells(_name(label), stock, len(fit.pieces))
            told[_slip(label, "label-several-cells", message, label_words.SEVERAL_CELLS_HELP)] = None
    yield from told
    bare = [
        _name(label)
        for label, fit, each in zip(wanted, chosen, ladders, strict=True)
        if fit and not fit.code and any(other.code for ways in each for other in ways)
    ]
    if bare:
        message = label_words.no_code(tuple(dict.fromkeys(bare)), stock)
        yield Fault(
            place=BOOK, code="label-no-code", message=message, help=label_words.NO_CODE_HELP, severity=Severity.NOTE
        )


def _slip(label: Label, code: str, message: str, help: str) -> Fault:
    return Fault(place=Place(file=label.file), code=code, message=message, help=help, severity=Severity.WARNING)


def _name(label: Label) -> str:
    return label.name if isinstance(label, JarLabel) else label.dish
