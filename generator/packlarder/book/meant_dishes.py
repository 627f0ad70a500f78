"""Which files of dishes the trips of a book can mean, told without reading them: a large book has many more."""

import re
from collections.abc import Mapping
from pathlib import PurePosixPath

from packlarder.book.book import DISHES_FOLDER, TRIPS_FOLDER, spoken

_NAME_LINE = re.compile(rb"^name:[ \t]*[\"']?(?P<name>[^\"'#\r\n]+)", re.MULTILINE)
_FORMER = b"formerly"


def without_dishes_not_meant(files: Mapping[str, bytes]) -> Mapping[str, bytes]:
    """Leave out the dishes of which neither id nor name stands anywhere in the files of trips.

    A dish whose words can not be told so, or that has former ids, stays. A name that is written in an odd way (escaped,
    or over several lines) can be missed: then a trip names a dish that there is not, and all files are to be read.
    """
    trips = b"\n".join(text for file, text in files.items() if file.startswith(f"{TRIPS_FOLDER}/"))
    told = _compared(trips)
    return {file: text for file, text in files.items() if not _is_dish(file) or _may_be_meant(file, text, told)}


def _is_dish(file: str) -> bool:
    return file.startswith(f"{DISHES_FOLDER}/")


def _may_be_meant(file: str, text: bytes, told: str) -> bool:
    names = [found["name"] for found in _NAME_LINE.finditer(text)]
    if len(names) != 1 or _FORMER in text:
        return True
    return any(word in told for word in (spoken(PurePosixPath(file).stem), _compared(names[0])))


def _compared(text: bytes) -> str:
    return spoken(text.decode("utf-8", errors="replace"))
