"""Data flows one way: a module imports only from its own floor and from those above it."""

import ast
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

FLOORS = (
    ("packlarder",),
    ("measure", "faults", "lazily", "figures"),
    ("book",),
    ("reckon",),
    ("safety",),
    ("sheets",),
    ("publish",),
    ("cli",),
    ("__main__",),
)
"""The rooms from the top floor down. `packlarder` is the package's own `__init__`. `disk` stands beside the floors."""

LEVEL = {room: level for level, rooms in enumerate(FLOORS) for room in rooms} | {"disk": 2}
"""A room may import what has its own level or less. `disk` may see no more than a book's reader may."""

READER = {f"book.{module}" for module in ("nodes", "read", "wording", "schema", "amend")}


def modules(package: Path) -> dict[str, Path]:
    """Name every module of the package without the package's own name: `book.read`; `packlarder` is its `__init__`."""
    found = {}
    for path in sorted(package.rglob("*.py")):
        parts = path.relative_to(package).with_suffix("").parts
        found[".".join(part for part in parts if part != "__init__") or "packlarder"] = path
    return found


def imported(name: str, path: Path, known: dict[str, Path]) -> set[str]:
    """Name what a module of ours imports of ours, wherever in it the import stands, type checking included."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            origin = ".".join(filter(None, (_anchor(name, path, node.level), node.module)))
            names.update(f"{origin}.{alias.name}" for alias in node.names)
    ours = {full.removeprefix("packlarder.") for full in names if full.split(".")[0] == "packlarder"}
    return {_module_of(target, known) for target in ours} - {name}


def _anchor(name: str, path: Path, level: int) -> str:
    """Give the package that a relative import of this level starts from."""
    if level == 0:
        return ""
    parts = [] if name == "packlarder" else name.split(".")
    package = ["packlarder", *(parts if path.stem == "__init__" else parts[:-1])]
    return ".".join(package[: len(package) - level + 1])


def _module_of(target: str, known: dict[str, Path]) -> str:
    """Cut what is imported back to the module that holds it; a name that the package itself holds is the package's."""
    parts = target.split(".")
    while parts and ".".join(parts) not in known:
        parts.pop()
    return ".".join(parts) or "packlarder"


def offences(package: Path) -> list[str]:
    """Say of each import that goes the wrong way, and of each room that no floor has, what is wrong."""
    known = modules(package)
    graph = {name: imported(name, path, known) for name, path in known.items()}
    wrong = [f"{name} stands on no floor" for name in known if name.split(".")[0] not in LEVEL]
    for name, targets in graph.items():
        room = name.split(".")[0]
        if room in LEVEL:
            wrong += [f"{name} imports {target}" for target in sorted(targets) if not _allowed(room, target)]
    try:
        TopologicalSorter(graph).prepare()
    except CycleError as cycle:
        wrong.append("a ring of imports: " + " <- ".join(cycle.args[1]))
    return wrong


def _allowed(room: str, target: str) -> bool:
    """Whether a module of this room may import that module."""
    other = target.split(".", maxsplit=1)[0]
    if other in (room, "packlarder"):
        return True
    if other == "disk":
        return room == "cli"
    if room == "publish":
        return other in ("sheets", "faults")
    if room == "reckon" and target in READER:
        return False
    return LEVEL.get(other, len(FLOORS)) <= LEVEL[room]


def test_every_import_goes_one_way(checkout: Path) -> None:
    """No module of the package imports from a floor below its own, and none stands outside the floors."""
    package = checkout / "generator" / "packlarder"
    assert len(modules(package)) >= 20, "the walk found hardly a module: it looks in the wrong place"
    assert offences(package) == []


def test_floors_see_each_other(checkout: Path) -> None:
    """The walk does see imports: the real package has some between rooms, so that no offence is not a blind eye."""
    package = checkout / "generator" / "packlarder"
    known = modules(package)
    between = [
        (name, target)
        for name, path in known.items()
        for target in imported(name, path, known)
        if target.split(".")[0] != name.split(".")[0]
    ]
    assert len(between) >= 10


@pytest.mark.parametrize(
    ("file", "line", "offence"),
    [
        ("book/dish.py", "import packlarder.reckon.water", "book.dish imports reckon.water"),
        ("book/dish.py", "from packlarder.reckon import water", "book.dish imports reckon.water"),
        ("book/dish.py", "from packlarder.reckon.water import carry_ml", "book.dish imports reckon.water"),
        ("book/dish.py", "from ..reckon.water import carry_ml", "book.dish imports reckon.water"),
        ("book/__init__.py", "from ..reckon import water", "book imports reckon.water"),
        ("book/dish.py", "if TYPE_CHECKING:\n    from packlarder.cli import main", "book.dish imports cli"),
        ("measure.py", "def late():\n    from packlarder.book import dish", "measure imports book.dish"),
        ("reckon/water.py", "from packlarder.book.read import book", "reckon.water imports book.read"),
        ("reckon/water.py", "from packlarder.book import amend", "reckon.water imports book.amend"),
        ("safety/rule.py", "from packlarder.sheets import dish", "safety.rule imports sheets.dish"),
        ("publish/site.py", "from packlarder import measure", "publish.site imports measure"),
        ("publish/site.py", "from packlarder.reckon.water import carry_ml", "publish.site imports reckon.water"),
        ("sheets/dish.py", "from packlarder.disk import files", "sheets.dish imports disk.files"),
        ("publish/site.py", "from packlarder.disk.files import read", "publish.site imports disk.files"),
        ("disk/files.py", "from packlarder.reckon import water", "disk.files imports reckon.water"),
        ("pantry/jar.py", "", "pantry.jar stands on no floor"),
    ],
)
def test_wrong_ways_are_seen(tmp_path: Path, file: str, line: str, offence: str) -> None:
    """An import that goes the wrong way is named, however it is written."""
    files = {
        "__init__.py": "",
        "measure.py": "from packlarder.faults import Gap",
        "faults.py": "",
        "book/__init__.py": "",
        "book/dish.py": "",
        "book/read.py": "from packlarder import measure",
        "book/amend.py": "",
        "reckon/water.py": "from packlarder.book.dish import Dish",
        "sheets/dish.py": "from packlarder.reckon.water import carry_ml",
        "publish/site.py": "from packlarder.sheets.dish import DishSheet\nfrom packlarder.faults import Fault",
        "disk/files.py": "from packlarder.faults import Fault",
        "cli.py": "from packlarder.disk import files\nfrom packlarder.publish import site",
    }
    _write(tmp_path, files)
    assert offences(tmp_path) == []
    _write(tmp_path, {file: line})
    assert offence in offences(tmp_path)


def test_a_ring_is_seen(tmp_path: Path) -> None:
    """Two modules of one floor that import each other are named, as neither could be read without the other."""
    _write(tmp_path, {"measure.py": "from packlarder.faults import Gap", "faults.py": ""})
    assert offences(tmp_path) == []
    _write(tmp_path, {"faults.py": "from packlarder import measure"})
    [offence] = offences(tmp_path)
    assert offence.startswith("a ring of imports: ")


def _write(package: Path, files: dict[str, str]) -> None:
    for name, text in files.items():
        (package / name).parent.mkdir(exist_ok=True)
        (package / name).write_text(text, "utf-8")
