"""What the booklet says of itself: how to print it, from the theme's catalogue, and what is wrong with it."""

from collections.abc import Mapping
from pathlib import Path

from packlarder.publish.sizes import Bed, PageSize
from packlarder.publish.words import read_words

TOO_THICK_HELP = "print the plain file and bind it as single leaves, or take fewer dishes along"
TOO_LONG_HELP = "shorten its steps or cautions, or make two dishes of it"


def booklet_words(templates: Path, language: str) -> Mapping[str, str]:
    """Read the booklet's own words from the print templates' folder."""
    return read_words(templates / "words", language)


def how_to_print(words: Mapping[str, str], page: PageSize, bed: Bed) -> tuple[str, ...]:
    """Say how to print, cut, fold and staple the imposed booklet."""
    edge = words["long_edge"] if bed.turns_on_long_edge else words["short_edge"]
    trim = (words["trim"],) if bed.trims(page) else ()
    cut = {1: (), 2: (words["cut"],)}.get(bed.rows, (words["cuts"],))
    return (words["print"].format(sheet=bed.sheet.name, edge=edge), " ".join((*trim, *cut, words["fold"])))


def bodies(source: str) -> str:
    """Give who says it, each once, of a source such as `CDC: Backcountry guide; CDC: Filters; worked out`: here, `CDC`.

    What names no work is left out beside what does; alone it stays.
    """
    pieces = source.split(";")
    named = [piece for piece in pieces if ":" in piece] or pieces
    return "; ".join(dict.fromkeys(piece.partition(":")[0].strip() for piece in named))


def too_thick(page: PageSize, leaves: int, most: int) -> str:
    """Say that a booklet has more leaves than fold well."""
    return f"the {page.name} booklet has {leaves} leaves; more than {most} hardly fold or take a staple"


def too_long(name: str, page: PageSize, openings: int) -> str:
    """Say that a dish takes more than one opening."""
    return f'"{name}" takes {openings} openings of the {page.name} booklet, not one'


def unknown_size(size: str) -> str:
    """Say that nobody knows a page size."""
    return f'no booklet page is called "{size}"'


def known_sizes(sizes: tuple[str, ...]) -> str:
    """Say which page sizes there are."""
    return f"the booklet comes as {', '.join(sizes)}"
