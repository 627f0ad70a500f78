"""A file's bytes as text, and what may not stand in it whatever it says."""

import re
import unicodedata

from packlarder.faults import Fault, Place

SIZE_CAP = 1 << 20
"""Bytes in one file; a book of 2,000 files stays small, and a mistake in choosing a file is found at once."""

BYTE_ORDER_MARK = "\ufeff"
ODD_SPACES = "\u00a0\u2000-\u200a\u202f\u205f\u3000"
"""Blanks that look like a space and are none to YAML, for use inside a character class."""

_LINE_END = re.compile(r"\r\n|\n|\r")
_UNWELCOME = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u00ad\u200b\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\uffff\ud800-\udfff]"
)
_LINE_BREAKS = "\x85\u2028\u2029"
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")


def text_of(file: str, data: bytes) -> str | Fault:
    """Read a file's bytes as text without byte order mark, or say why that can not be."""
    if len(data) > SIZE_CAP:
        return Fault(
            place=Place(file=file, line=1, column=1),
            code="too-large",
            message=f"this file holds more than the {SIZE_CAP:,} bytes that are read of one",
            help="is it the right file? otherwise make several of it",
        )
    if data.startswith(_UTF_16):
        return _other_encoding(file, 1, 1)
    if b"\0" in data:
        line, column = _spot(data[: data.index(b"\0")])
        return Fault(
            place=Place(file=file, line=line, column=column),
            code="not-text",
            message="this is no text file: it holds a zero byte",
            help="is it the right file? photos belong into photos/",
        )
    try:
        text = data.decode()
    except UnicodeDecodeError as error:
        return _other_encoding(file, *_spot(data[: error.start]))
    text = text.removeprefix(BYTE_ORDER_MARK)
    return unwelcome(file, text) or text


def unwelcome(file: str, text: str) -> Fault | None:
    """Find the first character that no one can see, or that no printer can print."""
    found = _UNWELCOME.search(text)
    if found is None:
        return None
    lines = lines_of(text[: found.start()])
    return Fault(
        place=Place(file=file, line=len(lines), column=len(lines[-1]) + 1),
        code="unwelcome-character",
        message=f"{what_is(found.group())} stands here",
        help="delete it and what you do not see around it, and type the passage anew",
    )


def first_unwelcome(text: str) -> str | None:
    """Give the first character in a value that may not stand in a book."""
    found = _UNWELCOME.search(text)
    return found.group() if found else None


def what_is(character: str) -> str:
    """Say what an invisible character is: `an invisible character (zero width space, U+200B)`."""
    number = f"U+{ord(character):04X}"
    name = unicodedata.name(character, "").lower()
    if character in _LINE_BREAKS:
        return f"an invisible line break ({number})"
    return f"an invisible character ({name}, {number})" if name else f"a control character ({number})"


def lines_of(text: str) -> list[str]:
    """Split a text into its lines, without their ends; an empty text is one empty line."""
    return _LINE_END.split(text)


def readable(data: bytes) -> str:
    """Give any bytes as text that can be shown, as far as they can be read."""
    return data[:SIZE_CAP].decode(errors="replace").removeprefix(BYTE_ORDER_MARK)


def _spot(before: bytes) -> tuple[int, int]:
    lines = lines_of(readable(before))
    return len(lines), len(lines[-1]) + 1


def _other_encoding(file: str, line: int, column: int) -> Fault:
    return Fault(
        place=Place(file=file, line=line, column=column),
        code="not-utf-8",
        message="this file is not saved as UTF-8, so its letters can not be told",
        help="save it again from your editor with the encoding UTF-8",
    )
