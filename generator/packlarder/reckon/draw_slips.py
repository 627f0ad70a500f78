"""Slips in what was drawn: a container that there is not, more than it held, a day before it was filled."""

from collections.abc import Iterator
from datetime import date
from pathlib import PurePosixPath

from packlarder.book.book import Book, run_place
from packlarder.book.draw import LETTERS, Draw, Mark
from packlarder.book.meant import closest
from packlarder.faults import Fault, Place, Severity
from packlarder.measure import as_weighed


def unknown_mark(book: Book, mark: Mark, place: Place) -> Iterator[Fault]:
    """Tell of a mark that no container bears, unless its run or its component could not be read: that is told there."""
    if any(PurePosixPath(file).stem == mark.run for file in book.unread):
        return
    run = book.runs.get(mark.run)
    message = f'no container bears the mark "{mark}"'
    if run is not None:
        filled = {letter: len(batch.detail.put_in) for letter, batch in zip(LETTERS, run.on_the_trays, strict=False)}
        if mark.number <= filled.get(mark.batch, 0):
            return
        known = ", ".join(_counted(letter, count) for letter, count in filled.items() if count)
        help = (
            f"those of its run are {known}" if known else f"write what was `put in` what in {run_place(mark.run).file}"
        )
    else:
        close = closest(mark.run, book.runs)
        help = f"did you mean {close}/{mark.in_run}?" if close else "its run would stand in batches/"
    yield Fault(place=place.at("from"), code="unknown-mark", message=message, help=help)


def _counted(letter: str, count: int) -> str:
    return f"{letter}1" if count == 1 else f"{letter}1 to {letter}{count}"


def before_it_was_filled(place: Place, draw: Draw, filled_on: date) -> Fault:
    """Tell of a draw from a container that was not filled yet."""
    return Fault(
        place=place.at("from"),
        code="drawn-before-filled",
        message=f"{draw.from_} was filled on {filled_on.isoformat()}, after this",
        help="is it another container, or another day?",
    )


def more_than_left(place: Place, draw: Draw, went_g: float, left_g: float) -> Fault:
    """Tell of a draw of more than was left."""
    return Fault(
        place=place.at(draw.deed.value),
        code="more-than-left",
        message=f"{as_weighed(went_g)} of {draw.from_}, and only {as_weighed(left_g)} were left",
        help="weigh what is in it and write `counted`, or is it another container?",
    )


def more_counted(place: Place, draw: Draw, counted_g: float, left_g: float) -> Fault:
    """Tell of a stocktake that finds more than there can be."""
    return Fault(
        place=place.at("counted"),
        code="more-counted",
        message=f"{as_weighed(counted_g)} are counted in {draw.from_}, and only {as_weighed(left_g)} were left",
        help="was the jar weighed with the food, or food put back?",
        severity=Severity.WARNING,
    )
