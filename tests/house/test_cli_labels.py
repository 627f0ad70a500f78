"""The command `labels`: what it prints of the demo, and what it refuses."""

from collections.abc import Callable
from pathlib import Path
from typing import TypeAlias

import pytest
from tests.paper.reading import words

from packlarder.cli import main

Say: TypeAlias = Callable[[str], tuple[int, str, str]]
"""Says a command line and gives what it ended with, its output and its errors."""


@pytest.fixture
def say(checkout: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Say:
    """Say a `labels` command about the demo book, written to a folder of its own."""

    def command(line: str) -> tuple[int, str, str]:
        ended = main(["labels", *line.split(), "--book", str(checkout / "recipes"), "--out", str(tmp_path)])
        told = capsys.readouterr()
        return ended, told.out, told.err

    return command


def test_one_command_prints_a_whole_run(say: Say, tmp_path: Path) -> None:
    """Three jars of eggs: three labels for them and three for their lids, each with the word and its own mark."""
    ended, out, err = say("batch 2027-04-10-eggs")
    assert (ended, err) == (0, "")
    assert out.count("3 labels on 1 page: ") == 2
    for name in ("labels-jar-a4-8.pdf", "labels-lid-a4-round-12.pdf"):
        (page,) = words(tmp_path / name)
        text = " ".join(word.text for word in page)
        assert text.count("RAW") == 3
        assert "1 of 3" in text.replace("\u00a0", " ")


def test_sheets_can_be_named_and_half_used(say: Say, tmp_path: Path) -> None:
    """From the fifth label on: what is left of the sheet is used, and the next free one is told."""
    ended, out, _ = say("component egg powder --sheets a4-10 a4-round-24 --first 5")
    assert ended == 0
    assert sorted(path.name for path in tmp_path.iterdir()) == ["labels-jar-a4-10.pdf", "labels-lid-a4-round-24.pdf"]
    jars, lids = out.splitlines()
    printed = int(jars.split(" ")[0])
    assert jars.endswith(f"the next free label is {(5 - 1 + printed) % 10 + 1}")
    assert lids.endswith(f"the next free label is {printed + 1}")


def test_a_dish_gives_a_label_for_each_pack(say: Say, tmp_path: Path) -> None:
    """Water and minutes of each pack stand on it, for the servings asked for."""
    ended, _, _ = say("dish beef-and-leek-noodles --servings 4")
    assert ended == 0
    (page,) = words(tmp_path / "labels-pack-a4-8.pdf")
    text = " ".join(word.text for word in page).replace("\u00a0", " ")
    assert text.count("pack 1 of") == 1
    assert "for 4" in text


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("all --sheets a4-9", "no label sheet for this is called"),
        ("dish beef-and-leek-noodles --sheets a4-round-12", "no label sheet for this is called"),
        ("all --sheets a4-8 --first 9", "has 8 labels on a sheet"),
        ("batch 2027-04-10-egs", "no batch is called"),
        ("component leek ring", "no component is called"),
        ("trip seven days", "no trip is called"),
        ("since yesterday", "is no day"),
        ("since 2099-01-01", "nothing stands there"),
        ("all egg", "egg"),
        ("jars", "kind"),
        ("batch", "ID"),
    ],
)
def test_what_can_not_be_is_misuse(say: Say, tmp_path: Path, line: str, says: str) -> None:
    """It ends with 2, says why, and writes nothing."""
    ended, out, err = say(line)
    assert (ended, out) == (2, "")
    assert says in err
    assert list(tmp_path.iterdir()) == []
