"""A large book in several hands: the same book, the same pages, and nobody left behind."""

import multiprocessing
import os
import signal
import subprocess
import sys
from collections.abc import Callable, Iterable
from pathlib import Path

import pytest
from tests.bench.large_book import files
from tests.bench.run import write_larder

from packlarder.cli import crew, entry, main, stages
from packlarder.cli.crew import check_together, work_together
from packlarder.disk.theme import theme_folder
from packlarder.publish import site_shares
from packlarder.publish.site import build_site
from packlarder.safety import whole
from packlarder.safety.whole import CheckedComponents, CheckedDishes, check_dishes

# The command line has one thread when it forks; what runs tests on several processors has more.
pytestmark = pytest.mark.filterwarnings("ignore:.*multi-threaded.*fork:DeprecationWarning")
DISHES, HANDS = 150, 3

BUSY = f"""
import os, sys, time
from pathlib import Path
from packlarder.cli import crew
crew.LARGE, crew.os.cpu_count = {DISHES}, lambda: {HANDS}
started, check_dishes = os.getpid(), crew.check_dishes
def check(components, ids):
    if os.getpid() != started:
        print("at work", flush=True)
        time.sleep(60)
    return check_dishes(components, ids)
crew.check_dishes = check
crew.check_together(Path(sys.argv[1]))
"""
"""A program that waits for busy mates; each of them that still runs holds its standard output open."""


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give a book that counts as large here and goes to three processes."""
    monkeypatch.setattr(crew, "LARGE", DISHES)
    monkeypatch.setattr(os, "cpu_count", lambda: HANDS)
    for name, content in files(DISHES).items():
        path = tmp_path / "book" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return tmp_path / "book"


def spoil(book: Path, every: int, old: str, new: str) -> None:
    """Change every so many dishes of a book."""
    for path in sorted((book / "dishes").iterdir())[::every]:
        text = path.read_text("utf-8")
        assert old in text
        path.write_text(text.replace(old, new), "utf-8")


def in_each_mate(monkeypatch: pytest.MonkeyPatch, do: Callable[[], object]) -> None:
    """Let something happen in every mate when it is to check its share."""
    started = os.getpid()

    def check(components: CheckedComponents, ids: Iterable[str]) -> CheckedDishes:
        if os.getpid() != started:
            do()
        return check_dishes(components, ids)

    monkeypatch.setattr(crew, "check_dishes", check)


def fail() -> None:
    """Fail as only a slip of ours does."""
    raise KeyError("leek")


def contents(folder: Path) -> dict[str, bytes]:
    """Read all files below a folder."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_every_dish_is_in_one_share(book: Path) -> None:
    """150 dishes and 45 components are 195 pages, 65 for each of three; the first has 45 of components and 20 more."""
    found = stages.read(book).book
    assert found is not None
    shares = [dishes for dishes, _ in crew._dealt(found, writes=False)]
    assert [len(share) for share in shares] == [20, 65, 65]
    assert sorted(id for share in shares for id in share) == sorted(found.dishes)


def test_every_run_is_in_one_share(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Pages of 200 runs and one dish are shared out where they are written: 245 with the components, 81 for each."""
    monkeypatch.setattr(os, "cpu_count", lambda: HANDS)
    write_larder(tmp_path, 400)
    found = stages.read(tmp_path / "larder").book
    assert found is not None
    shares = [runs for _, runs in crew._dealt(found, writes=True)]
    assert [len(share) for share in shares] == [36, 82, 82]  # 81 less 45 of components
    assert sorted(id for share in shares for id in share) == sorted(found.runs)
    assert [runs for _, runs in crew._dealt(found, writes=False)] == [()]


def test_the_site_of_a_large_larder_is_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every page of a run is as one process writes it."""
    monkeypatch.setattr(os, "cpu_count", lambda: HANDS)
    write_larder(tmp_path, 400)
    with work_together(tmp_path / "larder", writes=True) as (_, together):
        assert together is not None
        together.write_site(together.sheet(), theme=theme_folder(), out=tmp_path / "together")
    worked = stages.work_out(tmp_path / "larder")
    assert worked.checked is not None
    build_site(stages.sheet_of(worked.read, worked.checked), theme=theme_folder(), out=tmp_path / "alone")
    assert len(list((tmp_path / "alone" / "batches").iterdir())) == 200
    assert contents(tmp_path / "together") == contents(tmp_path / "alone")


def test_a_smaller_book_is_not_dealt_out(book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Under the size from which it is worth while, all is done in one process."""
    monkeypatch.setattr(crew, "LARGE", DISHES + 1)
    found = stages.read(book).book
    assert found is not None
    assert crew._dealt(found, writes=True) == [(tuple(found.dishes), ())]
    with work_together(book) as (worked, _):
        assert multiprocessing.active_children() == []
        assert worked.sound


def test_faults_are_the_same_in_the_same_order(book: Path) -> None:
    """Faults of plans, of sums and against rules, and dishes without a plan, are as one process finds them."""
    spoil(book, 3, "in: 900 mL", "in: 90 mL")
    spoil(book, 4, "onion rings]\n  - drain", "onion rings]\n    for: 5 h\n  - drain")
    spoil(book, 7, "parts:\n", "parts:\n  - moon dust: 5 g\n")
    together, alone = check_together(book), stages.work_out(book)
    assert {fault.code for fault in alone.faults} >= {"pot-too-dry", "long-soak", "unknown-component"}
    assert together.faults == alone.faults
    assert together.checked is not None
    assert alone.checked is not None
    assert list(together.checked.dishes) == list(alone.checked.dishes)


def test_the_site_is_the_same(book: Path, tmp_path: Path) -> None:
    """Every file is as one process writes it."""
    with work_together(book, writes=True) as (_, together):
        assert together is not None
        together.write_site(together.sheet(), theme=theme_folder(), out=tmp_path / "together")
    worked = stages.work_out(book)
    assert worked.checked is not None
    build_site(stages.sheet_of(worked.read, worked.checked), theme=theme_folder(), out=tmp_path / "alone")
    assert len(contents(tmp_path / "alone")) > DISHES
    assert contents(tmp_path / "together") == contents(tmp_path / "alone")


def test_a_dish_of_another_share_is_made_when_asked_for(book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The first process checks its own 20 dishes; each of the others is worked out at the first asking, and kept."""
    checked: list[str] = []

    def check(components: CheckedComponents, ids: Iterable[str]) -> CheckedDishes:
        checked.extend(ids)
        return check_dishes(components, ids)

    monkeypatch.setattr(crew, "check_dishes", check)
    monkeypatch.setattr(whole, "check_dishes", check)
    worked = check_together(book)
    assert worked.checked is not None
    assert len(worked.checked.dishes) == DISHES
    assert len(checked) == 20
    [other, *_] = set(worked.checked.dishes) - set(checked)
    assert worked.checked.dishes[other] is worked.checked.dishes[other]
    assert checked[20:] == [other]


@pytest.mark.parametrize("wrong", [RuntimeError, KeyboardInterrupt, BrokenPipeError])
def test_no_mate_outlives_the_block(book: Path, wrong: type[BaseException]) -> None:
    """Whatever ends it, the mates have ended after it."""

    def work() -> None:
        with work_together(book):
            assert len(multiprocessing.active_children()) == HANDS - 1
            raise wrong

    with pytest.raises(wrong):
        work()
    assert multiprocessing.active_children() == []


def test_no_mate_outlives_a_check(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A sound book needs them no longer, nor does one with errors, of which nothing is written."""
    assert main(["check", "--book", str(book)]) == 0
    assert multiprocessing.active_children() == []
    spoil(book, 7, "parts:\n", "parts:\n  - moon dust: 5 g\n")
    assert main(["build", "--book", str(book), "--out", str(book.parent / "out")]) == 1
    assert multiprocessing.active_children() == []
    assert "moon dust" in capsys.readouterr().err


def test_none_writes_after_a_failed_site(book: Path, tmp_path: Path) -> None:
    """Where the site fails in the first process, the others have ended before the folder is cleared away."""

    def progress(done: int, of: int) -> None:
        raise OSError(f"{done} of {of}")

    with work_together(book, writes=True) as (_, together):
        assert together is not None
        sheet = together.sheet()
        with pytest.raises(OSError, match="1 of"):
            together.write_site(sheet, theme=theme_folder(), out=tmp_path / "site", progress=progress)
        assert multiprocessing.active_children() == []


def test_a_slip_of_ours_in_a_mate_is_told(
    book: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """What a mate fails with is told as a slip of ours, with its words and where it was."""
    in_each_mate(monkeypatch, fail)
    with pytest.raises(RuntimeError, match="KeyError: 'leek'") as failed:
        check_together(book)
    assert "in fail" in failed.value.__notes__[0]
    assert main(["check", "--book", str(book)]) == entry.FAULTY
    assert "RuntimeError: KeyError: 'leek'" in capsys.readouterr().err
    assert multiprocessing.active_children() == []


def test_a_mate_that_is_gone_is_missed(book: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One that the system ended, for want of memory perhaps, is not waited for."""
    in_each_mate(monkeypatch, lambda: os.kill(os.getpid(), signal.SIGKILL))
    with pytest.raises(RuntimeError, match="ended with -9"):
        check_together(book)
    assert multiprocessing.active_children() == []


def test_a_mate_that_fails_late_is_told(book: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Nor does it matter when it fails: here in its pages."""
    monkeypatch.setattr(site_shares, "build_share", lambda *_, **__: fail())
    with work_together(book, writes=True) as (_, together):
        assert together is not None
        sheet = together.sheet()
        with pytest.raises(RuntimeError, match="KeyError: 'leek'"):
            together.write_site(sheet, theme=theme_folder(), out=tmp_path / "site")
    assert multiprocessing.active_children() == []


@pytest.mark.parametrize("told", [signal.SIGINT, signal.SIGTERM, signal.SIGKILL])
def test_nobody_is_left_behind(book: Path, told: signal.Signals) -> None:
    """A command that is stopped, or killed without a word, takes its mates along; Ctrl-C reaches all three at once."""
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    command = [sys.executable, "-c", BUSY, str(book)]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment, start_new_session=True
    ) as started:
        assert started.stdout is not None
        assert [started.stdout.readline() for _ in range(HANDS - 1)] == ["at work\n"] * (HANDS - 1)
        if told is signal.SIGINT:
            os.killpg(started.pid, told)
        else:
            started.send_signal(told)
        _, errors = started.communicate(timeout=30)  # ends when nobody holds the pipes any more
    assert started.returncode != 0
    assert errors.count("Traceback") == (told is signal.SIGINT)  # the program's own; a mate says nothing
