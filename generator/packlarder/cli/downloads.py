"""The files that a build writes beside the site, as its front page offers them."""

from collections.abc import Iterator, Mapping

from packlarder.cli import texts
from packlarder.cli.label_sheets import usual_sheet
from packlarder.publish import data, ebook, file_names, single
from packlarder.publish.label_stock import Purpose
from packlarder.publish.sizes import bed, page_size
from packlarder.reckon.trip.records import TripSums
from packlarder.safety.whole import NO_TRIPS, CheckedTrip
from packlarder.sheets.book_sheet import Download, DownloadGroup
from packlarder.sheets.trips import trip_link

PRINT = "print"
"""The folder of the booklets."""


def downloads(sizes: tuple[str, ...], trips: Mapping[str, CheckedTrip] = NO_TRIPS.trips) -> tuple[DownloadGroup, ...]:
    """Name booklets, each to fold and plain, and the files to hand on; then, by trip, those of planned trips.

    Sizes that no booklet has are left out.
    """
    whole = (
        *_booklets(file_names.FIELD, sizes, texts.BOOKLET_TO_FOLD, texts.BOOKLET),
        Download(label=texts.POCKET, address=single.FILE),
        Download(label=texts.EBOOK, address=ebook.FILE),
        Download(label=texts.DATA, address=f"{data.FOLDER}/{data.BOOK}"),
    )
    planned = (trip.sums for trip in trips.values() if not trip.sums.gone)
    return (
        DownloadGroup(trip=None, files=whole),
        *(DownloadGroup(trip=trip_link(trip.id, trip.model), files=tuple(_of_trip(trip, sizes))) for trip in planned),
    )


def _booklets(name: str, sizes: tuple[str, ...], to_fold: str, plain: str) -> Iterator[Download]:
    for page in filter(None, map(page_size, sizes)):
        sheet = bed(page).sheet
        imposed = file_names.imposed(name, page.id, sheet.id)
        yield Download(label=to_fold.format(page=page.name, sheet=sheet.name), address=f"{PRINT}/{imposed}")
        yield Download(label=plain.format(page=page.name), address=f"{PRINT}/{file_names.booklet(name, page.id)}")


def _of_trip(trip: TripSums, sizes: tuple[str, ...]) -> Iterator[Download]:
    name = file_names.TRIP.format(id=trip.id)
    yield from _booklets(name, sizes, texts.TRIP_BOOKLET_TO_FOLD, texts.TRIP_BOOKLET)
    if any(pack.bought_at is None for pack in trip.packs):
        labels = file_names.labels(name, usual_sheet(sizes, Purpose.PACK))
        yield Download(label=texts.TRIP_LABELS, address=f"{PRINT}/{labels}")
    for says, file in (
        (texts.TRIP_PACKING, file_names.PACKING),
        (texts.TRIP_PLAN, file_names.PLAN),
        (texts.TRIP_CALENDAR, file_names.CALENDAR),
    ):
        yield Download(label=says, address=f"{file_names.TRIPS}/{file.format(id=trip.id)}")
