"""New files of a book: their names, their skeletons, and how a text is written so that YAML reads just that."""

import json
import re
import unicodedata
from collections.abc import Collection, Mapping
from importlib.resources import files
from itertools import count
from pathlib import Path
from string import Template

from packlarder.cli import texts
from packlarder.cli.options import Misuse
from packlarder.disk.writing import NotWritten, create_file

LONGEST = 80
SHORT = 48
"""Letters of a name that comes from a sentence."""
_PLAIN = re.compile(r"[^\W_][\w ,.'()/&+-]*")
"""A text that YAML reads as it stands."""
EMPTY = "-empty-"
"""Stands where a line has nothing to say; the line is left out."""
COMMENT_COLUMN = 26


def id_of(name: str) -> str:
    """Make an id from a name: leek-rings. Raises Misuse where no letter of it can stand in one."""
    id = "-".join(_words(name))
    if not id or len(id) > LONGEST or not name.isprintable():
        raise Misuse(texts.NO_ID.format(name=name))
    return id


def short_id(*wanted: str) -> str:
    """Make an id from the first of several texts of which one can be made, cut at a word where it is long."""
    words = next(words for text in wanted if (words := _words(text)))
    while len(words) > 1 and len("-".join(words)) > SHORT:
        words.pop()
    return "-".join(words)[:SHORT]


def _words(text: str) -> list[str]:
    letters = unicodedata.normalize("NFKD", text.casefold()).encode("ascii", "ignore").decode()
    return re.findall(r"[a-z0-9]+", letters.replace("'", ""))


def free_id(wanted: str, taken: Collection[str], after: str = "") -> str:
    """Give an id that is free: the one wanted, or with a number behind it; else one that is sorted behind `after`."""
    bases = (wanted, re.sub(r"-[0-9]+$", "", after), after)
    return next(free for base in bases if (free := _free(base, taken)) > after)


def _free(wanted: str, taken: Collection[str]) -> str:
    numbered = (f"{wanted}-{number}" for number in count(2))
    return wanted if wanted not in taken else next(id for id in numbered if id not in taken)


def skeleton(kind: str, known: Mapping[str, str], column: int = COMMENT_COLUMN) -> str:
    """Fill what is known into the skeleton of a kind of file; comments keep their columns where they can."""
    template = Template((files("packlarder") / "starter" / "new" / f"{kind}.yaml").read_text(encoding="utf-8"))
    lines = (line for line in template.substitute(known).split("\n") if line != EMPTY)
    return "\n".join(_aligned(line, column) for line in lines)


def _aligned(line: str, column: int) -> str:
    if line.startswith("#"):
        return line
    indent = len(line) - len(line.lstrip(" #"))
    words, mark, comment = line[indent:].partition("  #")
    return f"{line[:indent] + words.rstrip():<{column - 2}}  #{comment}" if mark else line


def quoted(text: str) -> str:
    """Write a text so that YAML reads just that."""
    return text if _PLAIN.fullmatch(text) else json.dumps(text, ensure_ascii=False)


def write_new(folder: Path, file: str, text: str) -> None:
    """Write a file of a book that is not there yet. Raises NotWritten for whatever the system says."""
    path = folder / file
    try:
        create_file(path, text.encode())
    except OSError as error:
        raise NotWritten(f"{path} can not be written: {(error.strerror or str(error)).lower()}") from error
