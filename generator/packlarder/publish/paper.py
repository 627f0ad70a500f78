"""The field booklet on paper."""

from pathlib import Path

from packlarder.faults import Fault, Place
from packlarder.publish import file_names
from packlarder.publish.paper_binding import BOOK, write_booklets
from packlarder.publish.paper_plan import Blocks
from packlarder.publish.paper_setting import Copy
from packlarder.sheets.book_sheet import FieldBook

FRONT = ("front", "contents", "cautions")
INDEX = "index"


def build_booklets(field: FieldBook, *, sizes: tuple[str, ...], theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `field-<size>.pdf` and `field-<size>-imposed-<sheet>.pdf` into `out` for each size.

    Faults are those of `write_booklets`.
    """
    return write_booklets(field_copy(field), file_names.FIELD, sizes=sizes, theme=theme, out=out)


def field_copy(field: FieldBook) -> Copy:
    """Give what there is to set of a field booklet."""
    names = {opening.id: opening.name for opening in field.openings}
    return Copy(
        template="booklet",
        blocks=Blocks(before=FRONT, dishes=tuple(names), behind=(INDEX,)),
        given={"field": field},
        title=field.title,
        edition=field.edition,
        language=field.language,
        on=field.on,
        place=BOOK,
        names=names,
        places={id: Place(file=f"dishes/{id}.yaml") for id in names},
    )
