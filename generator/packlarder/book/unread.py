"""What a component or dish that could not be read is called, so that whoever names it is not blamed for it."""

import re
from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches
from pathlib import PurePosixPath

from packlarder.book.book import spoken
from packlarder.book.nodes import Node, read_yaml
from packlarder.book.strict.source import readable

SUFFIXES = frozenset({".yaml", ".yml"})
ALIKE = 0.75
"""How alike a mistyped key must be: `nmae` is name, `form` is not formerly."""
_NAME_LINE = re.compile(r"^name:[ \t]*[\"']?(?P<name>[^\"'#\r\n]+)", re.MULTILINE)


def unread_names(
    folder: str, files: Mapping[str, bytes], lost: Iterable[str], misplaced: Iterable[str], sound: Iterable[str]
) -> dict[str, str]:
    """Give the file for each word, as it is compared, that something of a folder answers to whose file was not read.

    `lost` are files that could not even be opened, `misplaced` those that lie in another folder; `sound` are the ids
    of what was read of this one.
    """
    misplaced = frozenset(misplaced)
    read = {f"{folder}/{id}.yaml" for id in sound}
    words: dict[str, str] = {}
    for file in sorted({*files, *lost} - read):
        path = PurePosixPath(file)
        belongs = path.parent.name == folder and path.suffix.lower() in SUFFIXES
        if belongs or file in misplaced:
            words |= {spoken(word): file for word in (path.stem, *_called(file, files.get(file, b"")))}
    return words


def _called(file: str, data: bytes) -> Iterator[str]:
    """Find the name and former ids in a file, whatever else is wrong with it; a mistyped `name` still tells."""
    value = read_yaml(file, data).value
    if value is None:
        yield from (found["name"] for found in _NAME_LINE.finditer(readable(data)))
        return
    for key, said in value.items():
        if get_close_matches(key.lower(), ("name", "formerly"), cutoff=ALIKE):
            yield from _texts(said)


def _texts(said: Node) -> Iterator[str]:
    yield from (one for one in (said if isinstance(said, list) else [said]) if isinstance(one, str))
