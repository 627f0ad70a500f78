"""`show batch` and `show larder` through the real command line: a small book worked by hand, and the demo."""

import json
import re
import shutil
from pathlib import Path

import pytest
from tests.house.small_store import RUN, Shell, make_book, write

from packlarder.cli import texts


@pytest.fixture
def shell(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    """Give a shell that speaks to a small book of its own."""
    return Shell(make_book(tmp_path / "book"), capsys)


@pytest.fixture
def demo(tmp_path: Path, checkout: Path, capsys: pytest.CaptureFixture[str]) -> Shell:
    """Give a shell that speaks to a copy of the demo book."""
    return Shell(Path(shutil.copytree(checkout / "recipes", tmp_path / "demo")), capsys)


def test_a_batch_is_shown_with_its_sums(shell: Shell) -> None:
    """Weights, factors, verdict, containers and use-by day stand there: 225 / 900 = 25 %, dried on 12 April."""
    ended, out, err = shell("show batch 2027-04-10-eggs")
    assert (ended, err) == (0, "")
    assert out.startswith(
        "Egg powder, 10 April 2027\nbatch 2027-04-10-eggs [RAW]\n\n900 g fresh gave 225 g dry: 680 mL"
    )
    for words in (
        "\nEGG POWDER [RAW]\nVerdict: dry. ",
        "25 % of loaded",
        "1 g stands for         4 g",
        "12 April 2028",
    ):
        assert words in out


def test_text_and_data_agree_on_every_run_of_the_demo(demo: Shell) -> None:
    """Weights, verdicts and containers of the data stand in the text, which keeps to 80 columns and says RAW."""
    runs = sorted(path.stem for path in (demo.book / "batches").glob("*.yaml"))
    assert len(runs) >= 20
    for run in runs:
        ended, out, _ = demo(f"show batch {run}")
        assert ended == 0
        assert max(map(len, out.splitlines())) <= 80
        for batch in demo.data(f"show batch {run}")["components"]:
            raw = " [RAW]" if batch["must_be_cooked"] == "to be safe" else ""
            own = out.partition(f"\n\n{batch['name'].upper()}{raw}\n")[2]
            assert own.startswith(f"Verdict: {batch['verdict']}.")
            for stage, label in (("fresh_g", "loaded"), ("dry_g", "dry")):
                weight = batch[stage]
                assert weight is None or re.search(rf"\n{label} +{weight:g} g\b", own), (run, stage)
            for one in batch["containers"]:
                assert re.search(rf"\n +{one['left_g']:g} g  {one['mark']}\n", own), one


def test_text_and_data_agree_on_the_larder(demo: Shell) -> None:
    """Every container and every component stands in the text with its weight, RAW with its word, in the same order."""
    ended, out, _ = demo("show larder")
    data = demo.data("show larder")
    assert ended == 0
    assert max(map(len, out.splitlines())) <= 80
    shelf = out.partition("\nFIRST TO BE EATEN\n")[2].partition("\n\n")[0]
    what, printed = "", []
    for line in shelf.splitlines():
        weighed = re.fullmatch(r" {4,}([0-9.]+) g  (\S+)", line)
        what = what if weighed or not re.match(r"  \S", line) else line
        printed += [(weighed[1], weighed[2], "[RAW], " in what)] if weighed else []
    assert printed == [(f"{one['left_g']:g}", one["mark"], one["raw"]) for one in data["containers"]]
    assert {raw for _, _, raw in printed} == {True, False}
    levels = out.partition("\nWHAT THERE IS\n")[2]
    for one in data["components"]:
        raw = r" \[RAW\]" if one["must_be_cooked"] == "to be safe" else ""
        held_g = one["held_g"]
        assert not one["containers"] or re.search(rf"^{one['name']}{raw} +{held_g:g} g ", levels, re.MULTILINE), one
    short = out.partition("\nRUNS SHORT\n")[2].partition("\n\n")[0].splitlines()
    assert len(short) == sum(one["short"] for one in data["components"]) > 0


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("2027-04-10-egs", 'did you mean "2027-04-10-eggs"?'),
        ("egg powder", "did you mean: 2027-04-10-eggs?"),
        ("eggs", "did you mean: 2027-04-10-eggs?"),
        ("pasta", "the last were: 2027-04-10-eggs."),
    ],
)
def test_an_unknown_batch_is_misuse(shell: Shell, asked: str, says: str) -> None:
    """It ends with 2 and names the batches that may be meant."""
    assert shell("show batch", asked) == (2, "", f'packlarder: no batch is called "{asked}"; {says}\n')


def test_a_mark_leads_to_its_batch(shell: Shell) -> None:
    """Who stands with a jar in hand types what its label bears."""
    assert shell.data("show batch 2027-04-10-eggs/a2")["batch"] == "2027-04-10-eggs"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("show larder eggs", '"eggs" is nothing that can stand there.'),
        ("show batch x --servings 2", "--servings does not go with batch."),
        ("new batch", "NAME is missing."),
        ("draw 2027-04-10-eggs/a1", "DEED is missing."),
        ("draw 2027-04-10-eggs/a1 tok 5 g", 'no deed is called "tok"; did you mean "took"?'),
        ("draw 2027-04-10-eggs/a1 took", "took how much? Write a weight such as 60 g after it, or all."),
        ("draw 2027-04-10-eggs/a1 opened 5 g", '"5 g" is nothing that can stand there.'),
    ],
)
def test_what_can_not_be_understood_is_misuse(shell: Shell, words: str, says: str) -> None:
    """It ends with 2, says what is wrong and where the help is, and writes nothing."""
    before = shell.files()
    ended, out, err = shell(words)
    assert (ended, out) == (2, "")
    assert err.startswith(f"packlarder: {says} `{texts.PROGRAM} ")
    assert shell.files() == before


def test_a_batch_that_can_not_be_right_is_shown_as_such(shell: Shell) -> None:
    """180 g of 214.7 g of solids: the verdict is printed, the fault told with its arithmetic, and it ends with 1."""
    write(shell.book, "batches/2027-04-10-eggs.yaml", RUN.replace("dry: 225 g", "dry: 180 g"))
    ended, out, err = shell("show batch 2027-04-10-eggs --json")
    assert ended == 1
    assert json.loads(out)["components"][0]["verdict"] == "can not be right"
    assert "error[batch-can-not-be-right]: 900 g at 76 % water hold 215 g of solids" in err.replace("\u00a0", " ")


def test_only_what_concerns_it_stops_a_batch_or_the_larder(shell: Shell) -> None:
    """A run that can not be read stops itself and the larder; another run and a dish do not mind."""
    write(shell.book, "batches/2027-05-01-leeks.yaml", RUN.replace("dryer:", "dyer:"))
    assert shell("show batch 2027-04-10-eggs")[0] == 0
    for words in ("show batch 2027-05-01-leeks", "show larder"):
        ended, out, err = shell(words)
        assert (ended, out) == (1, "")
        assert "batches/2027-05-01-leeks.yaml:2:1: error[unknown-key]" in err
    (shell.book / "batches/2027-05-01-leeks.yaml").unlink()
    write(shell.book, "dishes/soup.yaml", "nam: Soup\n")
    ended, _, err = shell("show larder")
    assert (ended, err) == (0, f"packlarder: {texts.OTHER_FAULTS}\n")


def test_weights_are_said_in_the_households_units(shell: Shell) -> None:
    """A household that counts in ounces reads ounces: 225 g are 8 oz."""
    text = (shell.book / "book.yaml").read_text("utf-8")
    write(shell.book, "book.yaml", text.replace("units: metric", "units: us    "))
    assert re.search(r"\ndry +8 oz, 25 % of loaded\n", shell("show batch 2027-04-10-eggs")[1])
