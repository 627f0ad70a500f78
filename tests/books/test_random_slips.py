"""Whatever happens to the files of the demo book, it ends in faults with places, never in a traceback."""

from collections.abc import Callable
from pathlib import Path
from random import Random

import pytest
from tests.books.cases import BASE, FOLDER, checked, files_in

from packlarder.book.show_faults import as_records, render

SEEDS = range(100)
VALID = FOLDER / "valid/trip-with-every-key"
EVERY_KEY = "trips/over-the-ridge.yaml"
JUNK = ("", " ", "\t", "- ", ": ", "#", "[", "]", "{", "}", '"', "'", "|", ">", "&a", "*a", "!x", "%", "---", "0", "-1")
VALUES = ("", "0", "-5 g", "1e9 kg", "1:30", "yes", "[]", "{}", "[a, b]", "{a: b}", "99", "0 g", "1 mL", "2 cups")
"""What a value is changed to, beside what stands elsewhere in the same file."""


def _without_a_line(lines: list[str], dice: Random) -> None:
    del lines[dice.randrange(len(lines))]


def _another_value(lines: list[str], dice: Random) -> None:
    index = dice.randrange(len(lines))
    key, colon, _ = lines[index].partition(": ")
    others = [line.partition(": ")[2] for line in lines if ": " in line]
    lines[index] = f"{key}{colon or ': '}{dice.choice((*VALUES, *others))}"


def _another_number(lines: list[str], dice: Random) -> None:
    numbered = [index for index, line in enumerate(lines) if any(letter.isdecimal() for letter in line)]
    if numbered:
        index = dice.choice(numbered)
        figure = dice.choice([letter for letter in lines[index] if letter.isdecimal()])
        lines[index] = lines[index].replace(figure, dice.choice(("0", "00", "999999", "-1", "1/3", ".")), 1)


def _two_lines_swapped(lines: list[str], dice: Random) -> None:
    one, other = dice.randrange(len(lines)), dice.randrange(len(lines))
    lines[one], lines[other] = lines[other], lines[one]


def _junk_inside(lines: list[str], dice: Random) -> None:
    index = dice.randrange(len(lines))
    at = dice.randrange(len(lines[index]) + 1)
    lines[index] = lines[index][:at] + dice.choice(JUNK) + lines[index][at:]


def _a_word_of_another_line(lines: list[str], dice: Random) -> None:
    index = dice.randrange(len(lines))
    words = lines[index].split(" ")
    words[dice.randrange(len(words))] = dice.choice(" ".join(lines).split() or ["x"])
    lines[index] = " ".join(words)


SLIPS: tuple[Callable[[list[str], Random], None], ...] = (
    _without_a_line,
    _another_value,
    _another_number,
    _two_lines_swapped,
    _junk_inside,
    _a_word_of_another_line,
)


def _slipped(files: dict[str, bytes], dice: Random, *, among: str = "", most: int = 4) -> dict[str, bytes]:
    """Make one to three slips in each of some files whose paths begin so."""
    names = sorted(name for name in files if name.startswith(among))
    for name in dice.sample(names, k=min(most, len(names))):
        lines = files[name].decode().split("\n")
        for _ in range(dice.randint(1, 3)):
            dice.choice(SLIPS)(lines, dice)
            lines = lines or [""]
        files[name] = "\n".join(lines).encode()
    return files


@pytest.fixture(scope="module")
def demo(checkout: Path) -> dict[str, bytes]:
    """Give the files of the demo book."""
    return {name: data for name, data in files_in(checkout / "recipes").items() if name.endswith((".yaml", ".md"))}


@pytest.mark.parametrize("seed", SEEDS)
def test_slips_give_faults_with_places_and_no_traceback(seed: int, demo: dict[str, bytes]) -> None:
    """Every fault of a book with random slips names a file that is there, and a line and column inside it."""
    _told_in_place(_slipped(dict(demo), Random(seed)))  # noqa: S311 - slips, no secrets


@pytest.mark.parametrize("seed", SEEDS)
def test_slips_in_a_trip_give_faults_with_places_and_no_traceback(seed: int) -> None:
    """So it is with a trip alone, in a small book: most of its keys are met by one slip or another."""
    files = files_in(BASE) | {EVERY_KEY: (VALID / EVERY_KEY).read_bytes()}
    _told_in_place(_slipped(files, Random(seed), among="trips/"))  # noqa: S311 - as above


def _told_in_place(files: dict[str, bytes]) -> None:
    _, faults = checked(files)
    for record in as_records(faults, files):
        assert record["file"] in files
        lines = files[record["file"]].decode().split("\n")
        assert record["line"] is not None
        assert record["column"] is not None
        assert 1 <= record["line"] <= len(lines)
        assert 1 <= record["column"] <= len(lines[record["line"] - 1]) + 1
        assert record["message"]
    assert render(faults, files).count("\n") >= len(faults[:50])


def test_the_slips_are_slips(demo: dict[str, bytes]) -> None:
    """Most books with slips have an error, so that the test above sees more than sound books."""
    broken = [seed for seed in range(20) if checked(_slipped(dict(demo), Random(seed)))[1]]  # noqa: S311 - as above
    assert len(broken) > 15
