"""What in a book would only be missed when an output is written: sizes of booklets, photos. Told with all the rest."""

from collections.abc import Iterator, Mapping

from packlarder.book.book import HOUSEHOLD_FILE, PHOTOS_FOLDER, Book, dish_place
from packlarder.book.meant import closest
from packlarder.cli import texts
from packlarder.faults import Fault, Place, Severity
from packlarder.publish.paper_words import known_sizes, unknown_size
from packlarder.publish.sizes import PAGES, page_size


def loose_ends(book: Book, photos: Mapping[str, bytes]) -> Iterator[Fault]:
    """Find sizes that no booklet has and photos that are not there."""
    for index, name in enumerate(book.household.print):
        if page_size(name) is None:
            yield Fault(
                place=Place(file=HOUSEHOLD_FILE).at("print", index),
                code="unknown-print-size",
                message=unknown_size(name),
                help=known_sizes(tuple(page.id for page in PAGES)),
            )
    for id, dish in book.dishes.items():
        if dish.photo and dish.photo not in photos:
            close = closest(dish.photo, photos)
            hint = f"{texts.DID_YOU_MEAN.format(word=close)} " if close else ""
            yield Fault(
                place=dish_place(id).at("photo"),
                code="unknown-photo",
                message=texts.NO_PHOTO.format(name=dish.photo),
                help=f"{hint}{texts.PHOTOS_LIVE.format(folder=PHOTOS_FOLDER)}",
                severity=Severity.WARNING,
            )
