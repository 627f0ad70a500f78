"""The files with faults in this folder, and how they are read and shown."""

import json
from dataclasses import dataclass
from pathlib import Path

from tests.faults.sample import Jar

from packlarder.book.nodes import read_yaml
from packlarder.book.show_faults import render
from packlarder.book.validate import validate
from packlarder.faults import Fault, has_errors

FOLDER = Path(__file__).parent
GOLDEN = ".faults.txt"


@dataclass(frozen=True, slots=True)
class Case:
    """One file and the text of its faults."""

    path: Path

    @property
    def name(self) -> str:
        """Give its name, as shown by pytest."""
        return self.path.relative_to(FOLDER).with_suffix("").as_posix()

    @property
    def golden(self) -> Path:
        """Give the file with the expected text."""
        return self.path.with_suffix(GOLDEN)


CASES = [Case(path) for path in sorted(FOLDER.rglob("*.yaml"))]


def faults_of(file: str, data: bytes) -> tuple[Fault, ...]:
    """Read a file as a jar, and give all its faults."""
    read = read_yaml(file, data)
    made = validate(Jar, file, read.value) if read.value is not None else ()
    return (*read.faults, *(made if isinstance(made, tuple) else ()))


def shown(case: Case) -> str:
    """Give what a case looks like: its faults, and what was read where nothing is an error."""
    file, data = f"{case.path.stem}.yaml", case.path.read_bytes()
    faults = faults_of(file, data)
    text = render(faults, {file: data}, "recipes")
    if has_errors(faults):
        return text
    return text + "read as: " + json.dumps(read_yaml(file, data).value, ensure_ascii=False, indent=2) + "\n"
