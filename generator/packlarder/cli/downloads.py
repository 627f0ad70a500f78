"""The files that a build writes beside the site, as its front page offers them."""

from collections.abc import Iterator, Mapping

from packlarder.cli import texts
from packlarder.publish import data, ebook, single
from packlarder.publish.sizes import bed, page_size
from packlarder.safety.whole import NO_TRIPS, CheckedTrip
from packlarder.sheets.book_sheet import Download

PRINT = "print"
"""The folder of the booklets."""


def downloads(sizes: tuple[str, ...], trips: Mapping[str, CheckedTrip] = NO_TRIPS.trips) -> tuple[Download, ...]:
    """Name booklets, each plain and to fold, then the files to hand on, then those of planned trips.

    Sizes that no booklet has are left out.
    """
    return (
        *(one for size in sizes for one in _booklets(size)),
        Download(label=texts.POCKET, address=single.FILE),
        Download(label=texts.EBOOK, address=ebook.FILE),
        Download(label=texts.DATA, address=f"{data.FOLDER}/{data.BOOK}"),
        *(file for id, trip in trips.items() if not trip.sums.gone for file in _of_trip(id, trip.sums.model.name)),
    )


def _booklets(size: str) -> Iterator[Download]:
    page = page_size(size)
    if page is not None:
        sheet = bed(page).sheet
        file = f"{PRINT}/field-{page.id}"
        yield Download(
            label=texts.BOOKLET_TO_FOLD.format(page=page.name, sheet=sheet.name),
            address=f"{file}-imposed-{sheet.id}.pdf",
        )
        yield Download(label=texts.BOOKLET.format(page=page.name), address=f"{file}.pdf")


def _of_trip(id: str, name: str) -> Iterator[Download]:
    from packlarder.publish import trip_files  # its calendar is slow to load

    for says, file in (
        (texts.TRIP_PACKING, trip_files.PACKING),
        (texts.TRIP_PLAN, trip_files.PLAN),
        (texts.TRIP_CALENDAR, trip_files.CALENDAR),
    ):
        yield Download(label=says.format(trip=name), address=f"{trip_files.FOLDER}/{file.format(id=id)}")
