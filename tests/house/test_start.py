"""`python3 generator ...`: from what was typed to the package, on a machine with only Python."""

import ast
import fcntl
import os
import shutil
import subprocess
import sys
import time
import venv
from pathlib import Path

import pytest

TOO_OLD = """
import runpy, sys
sys.version_info = (3, 4, 2)
runpy.run_path({generator!r}, run_name="__main__")
"""
PACKAGE = """
import sys, yaml
def main(argv):
    print("arguments:", argv, "yaml:", yaml.whose)
    return 42
"""
PIP = """
import os, sys
with open(os.environ["PIP_CALLS"], "a", encoding="utf-8") as calls:
    print(*sys.argv[1:], file=calls)
sys.exit(int(os.environ.get("PIP_ENDS", "0")))
"""
STAMP = """
from launch import environment
environment.STAMP.write_text(" ".join(map(environment.digest, ["run", "test"])))
"""


@pytest.fixture
def copy(checkout: Path, tmp_path: Path) -> Path:
    """Give a checkout of its own, with a package of a few lines and a `.venv` whose pip only writes down its calls."""
    top = tmp_path / "a folder"
    shutil.copytree(checkout / "requirements", top / "requirements")
    shutil.copytree(checkout / "generator" / "launch", top / "generator" / "launch")
    for name in ("pyproject.toml", "generator/__main__.py"):
        shutil.copy(checkout / name, top / name)
    (top / "generator" / "packlarder").mkdir()
    (top / "generator" / "packlarder" / "cli.py").write_text(PACKAGE, "utf-8")
    venv.create(top / ".venv", symlinks=True)
    [packages] = (top / ".venv" / "lib").glob("python3*/site-packages")
    (packages / "packlarder.pth").write_text(str(top / "generator"), "utf-8")
    (packages / "yaml.py").write_text("whose = 'ours'", "utf-8")
    (packages / "pip").mkdir()
    (packages / "pip" / "__init__.py").write_text("", "utf-8")
    (packages / "pip" / "__main__.py").write_text(PIP, "utf-8")
    return top


def stamp(copy: Path) -> None:
    """Mark the `.venv` of a copy as complete, as a start does when it has installed all."""
    subprocess.run([sys.executable, "-c", STAMP], cwd=copy / "generator", check=True)


def start(copy: Path, *words: str, folder: Path | None = None, **environment: str) -> subprocess.CompletedProcess[str]:
    """Start a copy as a user does, with nobody at the terminal."""
    return subprocess.run(
        [sys.executable, str(copy / "generator"), *words],
        cwd=folder or copy,
        env={**os.environ, "PIP_CALLS": str(copy / "calls.txt"), **environment},
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        check=False,
    )


def calls(copy: Path) -> list[str]:
    """What pip was asked to install, without the words that keep it quiet."""
    lines = (copy / "calls.txt").read_text("utf-8").splitlines()
    return [line.split("--no-input ")[1].replace(str(copy), "TOP") for line in lines]


def test_any_python_can_read_the_first_file(checkout: Path) -> None:
    """The first file holds only what Python 2.7 and 3.4 can read: imports, one `if`, calls, plain texts and numbers."""
    tree = ast.parse((checkout / "generator" / "__main__.py").read_text("utf-8"), feature_version=(3, 4))
    plain = set(
        "Module Import ImportFrom alias If Compare Lt Expr Call Attribute Name Load "
        "Subscript Slice Tuple Constant BinOp Mod".split()
    )
    assert {type(node).__name__ for node in ast.walk(tree)} <= plain


def test_too_old_a_python_is_told_so_in_one_sentence(copy: Path) -> None:
    """A Python before 3.11 gives one sentence with both versions, ends with 1 and makes nothing."""
    shutil.rmtree(copy / ".venv")
    code = TOO_OLD.format(generator=str(copy / "generator"))
    ended = subprocess.run([sys.executable, "-c", code], cwd=copy, capture_output=True, text=True, check=False)
    assert ended.stderr == "Packlarder needs Python 3.11 or newer; this is Python 3.4.\n"
    assert (ended.returncode, ended.stdout) == (1, "")
    assert not (copy / ".venv").exists()


def test_arguments_and_exit_code_pass_through(copy: Path) -> None:
    """The package gets the arguments as typed, but for --system, and its exit code and output are the start's own."""
    stamp(copy)
    ended = start(copy, "show", "dish", "a b", "--system", "--on", "")
    assert ended.stdout == "arguments: ['show', 'dish', 'a b', '--on', ''] yaml: ours\n"
    assert (ended.returncode, ended.stderr) == (42, "")


def test_second_start_is_quick(copy: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Where all is there a start hands over at once: it does not ask pip, and takes far less than an installation."""
    stamp(copy)
    began = time.perf_counter()
    start(copy, "check")
    took_s = time.perf_counter() - began
    with capsys.disabled():
        print(f" [second start: {took_s:.2f} s]", end="")
    assert not (copy / "calls.txt").exists()
    assert took_s < 5  # about 0.1 s on a machine with nothing else to do


def test_stray_modules_are_harmless(copy: Path, tmp_path: Path) -> None:
    """A yaml.py or launch.py in the current folder stands in for nothing, even where PYTHONPATH names that folder."""
    stamp(copy)
    stray = tmp_path / "stray"
    stray.mkdir()
    for name in ("yaml.py", "launch.py", "packlarder.py", "pip.py"):
        (stray / name).write_text("raise SystemExit('a stray module was read')", "utf-8")
    for environment in ({}, {"PYTHONPATH": ""}, {"PYTHONPATH": str(stray)}, {"PYTHONPATH": "."}):
        ended = start(copy, "check", folder=stray, **environment)
        assert (ended.returncode, ended.stderr) == (42, "")


def test_run_installs_the_run_lock_sealed(copy: Path) -> None:
    """A first start installs what is locked, with digests, then the project itself with nothing that is not locked."""
    assert start(copy, "build").returncode == 42
    assert calls(copy) == [
        "--require-hashes --requirement TOP/requirements/run.txt",
        "--no-deps --no-build-isolation --no-index --editable TOP",
    ]


def test_test_installs_the_test_locks(copy: Path) -> None:
    """A test installs the test's locks on top; a run after it finds all that it needs."""
    assert start(copy, "test").returncode == 42
    assert calls(copy) == [
        "--require-hashes --requirement TOP/requirements/test.txt",
        "--require-hashes --no-deps --no-build-isolation --use-pep517 --requirement TOP/requirements/test-source.txt",
        "--no-deps --no-build-isolation --no-index --editable TOP",
    ]
    start(copy, "build")
    assert len(calls(copy)) == 3


@pytest.mark.parametrize("name", ["pyproject.toml", "requirements/run.txt"])
def test_a_change_of_what_is_locked_installs_again(copy: Path, name: str) -> None:
    """A checkout that moved on brings its `.venv` along at the next start."""
    start(copy, "build")
    with (copy / name).open("a", encoding="utf-8") as file:
        file.write("# newer\n")
    start(copy, "build")
    assert len(calls(copy)) == 4  # two for each installation


def test_output_of_a_first_start_is_the_commands_own(copy: Path) -> None:
    """What is said about installing goes to standard error: standard output can be piped into another program."""
    ended = start(copy, "show")
    assert ended.stdout == "arguments: ['show'] yaml: ours\n"
    assert "installing into .venv" in ended.stderr


def test_half_made_environment_is_made_anew(copy: Path) -> None:
    """Where pip fails the start says so and ends with 1; the next one does not build on what was left half-made."""
    failed = start(copy, "build", PIP_ENDS="1")
    assert (failed.returncode, failed.stdout) == (1, "")
    assert "pip could not install what is locked" in failed.stderr
    mended = start(copy, "build", PIP_NO_INDEX="1", PIP_FIND_LINKS="")  # a real pip now, which has nowhere to look
    assert "making .venv anew" in mended.stderr
    assert mended.returncode == 1
    assert len(calls(copy)) == 1  # the pip that only writes down its calls is gone with the old .venv


def test_of_two_starts_one_installs(copy: Path) -> None:
    """A start that finds another one installing waits for it, and then finds all there."""
    with (copy / ".venv.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        with subprocess.Popen(
            [sys.executable, str(copy / "generator"), "build"],
            env={**os.environ, "PIP_CALLS": str(copy / "calls.txt")},
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE,
            text=True,
        ) as second:
            assert second.stderr is not None
            assert second.stderr.readline() == "packlarder: another start is installing; waiting for it.\n"
            stamp(copy)
            fcntl.flock(lock, fcntl.LOCK_UN)
            assert second.wait(timeout=30) == 42
    assert not (copy / "calls.txt").exists()
