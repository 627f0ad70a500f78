"""`new batch`, `new stocktake` and `draw` through the real command line: new files, and never one that can not be."""

import json
import re
from pathlib import Path

import pytest
from tests.house.small_store import Shell, make_book, write

from packlarder.book.draw import Deed
from packlarder.cli import usage

TRIP = """date: 2027-05-05
drawn:
  - {from: 2027-04-10-eggs/a2, took: all}
  - {from: 2027-04-10-eggs/a3, took: 50 g}
"""


@pytest.fixture
def shell(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    """Give a shell that speaks to a small book of its own."""
    return Shell(make_book(tmp_path / "book"), capsys)


def test_a_new_batch_asks_for_the_weight_alone(shell: Shell) -> None:
    """What was done last time is filled in; the one fault is the weight, and with every blank written it is sound."""
    assert shell("new batch Egg powder")[0] == 0
    path = shell.book / "batches/2027-06-01-egg-powder.yaml"
    text = path.read_text("utf-8")
    for line in ("dryer: machine", "treated: frozen first", "trays: 2", "deep: 6 mm", "# expect dry, each tray: 113 g"):
        assert re.search(rf"^ *{line}( |$)", text, re.MULTILINE), line
    assert "last time 900 g on 2 trays" in text
    assert "[RAW]" in text
    ended, out, _ = shell("check")
    assert (ended, out.count("error["), "nothing stands after `fresh`" in out) == (1, 1, True)
    filled = text.replace("fresh:  ", "fresh: 900 g  ")
    path.write_text(filled, "utf-8")
    assert shell("check")[0] == 0
    for blank, value in (("took: ... h", "took: 35 h"), ("dry: ... g", "dry: 226 g"), ("holds: ... g", "holds: 75 g")):
        filled = filled.replace(blank, value)
    path.write_text(re.sub(r"# (took:|dry:|tested:|put in:|  - \{in)", r"\1", filled), "utf-8")
    assert shell("check")[1].endswith("nothing wrong.\n")
    assert shell.left("--on 2027-06-02")["2027-06-01-egg-powder/a1"] == (75, None)  # 35 h later
    assert "/2027-06-01-egg-powder-2.yaml: " in shell("new batch egg-powder")[1]


def test_several_components_make_one_batch(shell: Shell) -> None:
    """Each has its entry and its blank; what is not dried alike, or is not there, is refused and nothing is written."""
    shell("new batch egg powder, Leek rings --on 2027-06-02")
    text = (shell.book / "batches/2027-06-02-egg-powder-leek-rings.yaml").read_text("utf-8")
    assert re.findall(r"^  - (.*):$", text, re.MULTILINE) == ["egg powder", "leek rings"]
    assert len(re.findall(r"^      fresh: ", text, re.MULTILINE)) == 2
    before = shell.files()
    for name, says in (("egg powder, olive oil", "that takes two batches."), ("leek ring", 'mean "Leek rings"?')):
        ended, out, err = shell("new batch", name)
        assert (ended, out, says in err) == (2, "", True), err
    assert shell.files() == before


def test_a_stocktake_counts_nothing_by_itself(shell: Shell) -> None:
    """The larder stays until a # is taken away; a line taken as it is leaves a sealed jar sealed."""
    before = shell.left()
    assert len(before) == 3
    assert shell("new stocktake")[0] == 0
    path = shell.book / "draws/2027-06-01-stocktake.yaml"
    assert shell("check")[0] == 0
    assert {one: (left, day) for one, (left, day) in before.items()} == {
        one["mark"]: (one["left_g"], one["opened_on"])
        for one in json.loads(shell("show larder --json")[1])["containers"]
    }
    counted = path.read_text("utf-8").replace("#- {", "- {")
    path.write_text(counted, "utf-8")
    assert shell.left() == before
    path.write_text(counted.replace("eggs/a2, counted: 75 g", "eggs/a2, counted: 20 g"), "utf-8")
    assert shell.left() == before | {"2027-04-10-eggs/a2": (20, "2027-06-01")}


def test_a_stocktake_of_one_place(shell: Shell) -> None:
    """Only what stands there is listed; a place that there is not is misuse."""
    shell("new stocktake Cellar")
    text = (shell.book / "draws/2027-06-01-stocktake-cellar.yaml").read_text("utf-8")
    assert re.findall(r"^#- \{from: (\S+), counted: (.*)\}", text, re.MULTILINE) == [
        ("2027-04-10-eggs/a1", "75 g"),
        ("2027-04-10-eggs/a2", "75 g"),
    ]
    assert shell("new stocktake celar") == (
        2,
        "",
        'packlarder: nothing stands at "celar"; did you mean "cellar"?\n',
    )


@pytest.mark.parametrize(
    ("words", "left", "says"),
    [
        (("took", "60", "g", "--for", "hut walk: day 2"), 15, "took    60 g\nleft    15 g, open since 1 June 2027\n"),
        (("gave", "away", "1", "oz"), 46.65, "gave away  28 g\nleft       47 g"),
        (("threw out", "all", "--why", "it bent, at last"), 0, "threw out  75 g\nleft       0 g\n"),
        (("opened",), 75, "left    75 g, open since 1 June 2027\nuse by  29 June 2027; "),
        (("counted", "70 g"), 70, "counted  70 g; the book had 75 g\nleft     70 g"),
    ],
)
def test_a_draw_is_noted(shell: Shell, words: tuple[str, ...], left: float, says: str) -> None:
    """It says what is left, of 75 g, and writes a new file that is sound and that the larder counts."""
    before = shell.files()
    ended, out, err = shell("draw 2027-04-10-eggs/a1", *words)
    assert (ended, err) == (0, "")
    assert out.startswith(f"Egg powder [RAW], small jar, cellar: 2027-04-10-eggs/a1\n\n{says}")
    [path] = shell.files().keys() - before.keys()
    assert out.endswith(f"noted in {path}\n")
    assert path.name == ("2027-06-01-hut-walk-day-2.yaml" if "--for" in words else "2027-06-01-egg-powder.yaml")
    assert shell.left().get("2027-04-10-eggs/a1", (0, None))[0] == round(left)
    assert shell("check")[1].endswith("nothing wrong.\n")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("2027-04-10-eggs/a1 took 90 g", "90 g of 2027-04-10-eggs/a1, and only 75 g were left; "),
        (
            "2027-04-10-eggs/a4 took all",
            'no container bears the mark "2027-04-10-eggs/a4"; those of its run are a1 to a3',
        ),
        (
            "2027-04-10-egs/a1 took all",
            'no container bears the mark "2027-04-10-egs/a1"; did you mean 2027-04-10-eggs/a1? ',
        ),
        ("eggs took all", '"eggs" is not the mark of a container; '),
        ("2027-04-10-eggs/a1 took 5 min", "a weight is wanted here, min is a time; "),
        ("2027-04-10-eggs/a1 took all --on 2027-04-11", "2027-04-10-eggs/a1 was filled on 2027-04-12, after this; "),
        ("2027-04-10-eggs/a2 took all", "2027-04-10-eggs/a2 is empty. "),
        ("2027-04-10-eggs/a3 took 50 g --on 2027-05-01", "draws/trip.yaml would be wrong after it: 50 g of "),
    ],
)
def test_a_draw_that_can_not_be_is_refused(shell: Shell, words: str, says: str) -> None:
    """It ends with 2, in the words of the fault it would make, and nothing is written."""
    write(shell.book, "draws/trip.yaml", TRIP)
    before = shell.files()
    ended, out, err = shell(f"draw {words}")
    assert (ended, out) == (2, "")
    assert err.startswith(f"packlarder: {says}")
    assert err.endswith(" Nothing was written.\n")
    assert shell.files() == before


def test_what_is_past_its_day_is_noted_with_a_caution(shell: Shell) -> None:
    """Egg of April 2027 is past its 12 months in May 2028: who takes it is told, who throws it out is not."""
    ended, _, err = shell("draw 2027-04-10-eggs/a1 took 10 g --on 2028-05-01")
    assert ended == 0
    assert "2027-04-10-eggs/a1 is past its use-by day" in err
    ended, _, err = shell("draw 2027-04-10-eggs/a2 threw out all --on 2028-05-01")
    assert (ended, err) == (0, "")
    assert shell("draw 2027-04-10-eggs/a3 took 10 g")[2] == ""


def test_draws_of_one_day_count_in_their_order(shell: Shell) -> None:
    """75 g less 30 g, then 40 g counted, then 10 g taken are 30 g, whatever they were for."""
    for words in ("took 30 g --for zebra", "counted 40 g --for apple", "took 10 g --for apple"):
        assert shell(f"draw 2027-04-10-eggs/a1 {words}")[0] == 0
    assert shell.left()["2027-04-10-eggs/a1"] == (30, "2027-06-01")
    assert len(list((shell.book / "draws").iterdir())) == 3


def test_the_deeds_of_the_command_are_those_of_the_files() -> None:
    """The command line knows every deed without loading the models."""
    assert tuple(Deed) == usage.DEEDS
