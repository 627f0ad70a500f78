"""What the system lacks is installed where that is allowed, and otherwise named in one line."""

import io
from collections.abc import Callable
from dataclasses import dataclass, field

import pytest

from launch import system
from launch.system import NEEDS, Need

APT = "env DEBIAN_FRONTEND=noninteractive apt-get -qq -o DPkg::Lock::Timeout=300"
INSTALL = f"{APT} install --yes --no-install-recommends"


@dataclass(kw_only=True)
class Machine:
    """A machine that lacks two things, and what was run on it."""

    lacks: set[str] = field(default_factory=lambda: {"pango", "poppler"})
    apt_brings: bool = True
    ran: list[str] = field(default_factory=list)

    def need(self, name: str) -> Need:
        """Give a thing that this machine may lack; its package is called the same."""
        return Need(name.title(), lambda: name not in self.lacks, {"debian": name, "macos": name})

    def run(self, command: list[str]) -> bool:
        """Stand in for running a program: what apt installs is there from then on."""
        self.ran.append(" ".join(command))
        if self.apt_brings:
            self.lacks.discard(command[-1])
        return self.apt_brings


Place = Callable[..., Machine]


@pytest.fixture
def machine(monkeypatch: pytest.MonkeyPatch) -> Place:
    """Give a maker of machines: who starts there, with or without a terminal, and what it has of programs."""

    def make(*, root: bool, terminal: bool, programs: str = "apt-get sudo", apt_brings: bool = True) -> Machine:
        made = Machine(apt_brings=apt_brings)
        monkeypatch.setattr(system, "NEEDS", {"run": (made.need("pango"),), "test": (made.need("poppler"),)})
        monkeypatch.setattr(system, "is_root", lambda: root)
        monkeypatch.setattr(system, "on_a_terminal", lambda: terminal)
        monkeypatch.setattr(system, "run", made.run)
        monkeypatch.setattr("shutil.which", lambda name: name if name in programs.split() else None)
        monkeypatch.setattr("sys.platform", "linux")
        return made

    return make


def test_root_without_a_terminal_installs(machine: Place, capsys: pytest.CaptureFixture[str]) -> None:
    """In a container nobody can answer and root may: what is missing is installed, each thing by itself."""
    made = machine(root=True, terminal=False)
    system.supply("test", allowed=False)
    assert made.ran == [f"{APT} update", f"{INSTALL} pango", f"{INSTALL} poppler"]
    assert capsys.readouterr().err == "packlarder: installing through apt-get: Pango, Poppler.\n"


def test_a_run_does_not_need_what_tests_need(machine: Place) -> None:
    """A build asks the system for less than a test does."""
    made = machine(root=True, terminal=False)
    system.supply("run", allowed=False)
    assert made.ran == [f"{APT} update", f"{INSTALL} pango"]


def test_nothing_missing_runs_nothing(machine: Place) -> None:
    """A system that has all is left alone, even where we might install."""
    made = machine(root=True, terminal=False)
    made.lacks.clear()
    system.supply("test", allowed=True)
    assert made.ran == []


def test_option_installs_through_sudo(machine: Place) -> None:
    """With --system one who is not root installs, too, and sudo asks for the password."""
    made = machine(root=False, terminal=True)
    system.supply("run", allowed=True)
    assert made.ran == [f"sudo {APT} update", f"sudo {INSTALL} pango"]


@pytest.mark.parametrize(("answer", "installs"), [("\n", 2), ("y\n", 2), ("Yes\n", 2), ("n\n", 0), ("", 0)])
def test_terminal_is_asked_once(
    machine: Place, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], answer: str, installs: int
) -> None:
    """On a terminal there is one question for all that is missing; Enter means yes, an ended input means no."""
    made = machine(root=True, terminal=True)
    monkeypatch.setattr("sys.stdin", io.StringIO(answer))
    system.supply("test", allowed=False)
    assert sum("install" in command for command in made.ran) == installs
    said = capsys.readouterr().err
    assert said.count("[Y/n]") == 1
    assert ("To get it: sudo apt-get install pango poppler" in said) == (installs == 0)


@pytest.mark.parametrize(
    ("root", "terminal", "programs"),
    [
        (False, False, "apt-get sudo"),  # nobody to ask, and not ours to change
        (False, True, "apt-get"),  # no way to become root
        (True, False, "dnf"),  # no apt
        (True, False, ""),
    ],
)
def test_elsewhere_one_line_says_what_is_missing(
    machine: Place, capsys: pytest.CaptureFixture[str], root: bool, terminal: bool, programs: str
) -> None:
    """Where we may not install, or can not, nothing is run and one line says what is missing."""
    made = machine(root=root, terminal=terminal, programs=programs)
    system.supply("test", allowed=False)
    assert made.ran == []
    [line] = capsys.readouterr().err.splitlines()
    assert line.startswith("packlarder: missing: Pango, Poppler.")


def test_apt_that_fails_leaves_the_line(machine: Place, capsys: pytest.CaptureFixture[str]) -> None:
    """Where apt does not bring what is missing, one line says so, and the start goes on with what can be done."""
    machine(root=True, terminal=False, apt_brings=False)
    system.supply("run", allowed=False)
    said = capsys.readouterr().err.splitlines()
    assert said[1:] == ["packlarder: missing: Pango. To get it: sudo apt-get install pango"]


@pytest.mark.parametrize(
    ("family", "line"),
    [
        ("debian", "To get it: sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"),
        ("fedora", "To get it: sudo dnf install pango"),
        ("macos", "To get it: brew install pango"),
        ("windows", "pacman -S mingw-w64-ucrt-x86_64-pango"),
        ("", "missing: Pango (sets the pages of the booklet)."),
    ],
)
def test_line_for_each_family(family: str, line: str) -> None:
    """Each family of systems is told its own line; where we know none, what is missing is named all the same."""
    assert system.advice([NEEDS["run"][1]], family).endswith(line)


def test_each_need_has_its_debian_package() -> None:
    """Whatever a start may need, apt can be asked for it."""
    assert [need.name for kind in NEEDS.values() for need in kind if not need.packages.get("debian")] == []


@pytest.mark.parametrize(("platform", "family"), [("darwin", "macos"), ("win32", "windows")])
def test_families_that_are_told_by_name(monkeypatch: pytest.MonkeyPatch, platform: str, family: str) -> None:
    """Two systems, macOS and Windows, are known by Python's own name for them."""
    monkeypatch.setattr("sys.platform", platform)
    assert system.family() == family


def test_pango_is_seen_where_it_is_not(monkeypatch: pytest.MonkeyPatch) -> None:
    """The look for Pango really opens its libraries: under a name that no system has it finds none."""
    assert system._has_pango()
    monkeypatch.setattr(system, "LIBRARIES", {"linux": ("libpango-0.0.so.0",)})
    assert not system._has_pango()
