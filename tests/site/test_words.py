"""The words of the interface: one catalogue, whole, and nothing in it that nobody uses."""

import re
from pathlib import Path

import pytest
from tests.site.conftest import THEME

from packlarder.publish.words import read_words

FOLDER = THEME / "site" / "words"
CODE = Path(__file__).parents[2] / "generator" / "packlarder" / "publish"


def _used() -> set[str]:
    """Find the words that templates and code name."""
    templates = "".join(file.read_text() for file in (THEME / "site" / "templates").glob("*.html"))
    code = "".join(file.read_text() for file in CODE.glob("site*.py"))
    columns = {"measure", "dry", "fresh", "offered", "absorbed", "drained"}
    severities = {"severity_error", "severity_warning", "severity_note"}
    named = set(re.findall(r"\bw\.([a-z_]+)", templates)) | set(re.findall(r'words\["([a-z_]+)"\]', code))
    return named | columns | severities | {"components", "safety", "figures_title", "format_title"}


def test_every_word_that_is_used_is_in_the_catalogue_and_the_other_way_round() -> None:
    """A template that names a word we lack would fail in building; a word that nobody names is left over."""
    assert _used() == set(read_words(FOLDER, "en"))


def test_a_second_language_needs_a_file_only(tmp_path: Path) -> None:
    """A word comes from the language, else from the language without its region, else from English."""
    (tmp_path / "en.yaml").write_text("parts: Parts\nsteps: Steps\npacks: Packs\n")
    (tmp_path / "pt.yaml").write_text("parts: Partes\nsteps: Passos\n")
    (tmp_path / "pt-BR.yaml").write_text("steps: Etapas\n")
    assert read_words(tmp_path, "pt-BR") == {"parts": "Partes", "steps": "Etapas", "packs": "Packs"}
    assert read_words(tmp_path, "fi") == {"parts": "Parts", "steps": "Steps", "packs": "Packs"}


def test_a_language_is_no_path(tmp_path: Path) -> None:
    """A language that is written like a path reads no file outside the catalogue."""
    folder = tmp_path / "words"
    folder.mkdir()
    (folder / "en.yaml").write_text("parts: Parts\n")
    (tmp_path / "evil.yaml").write_text("parts: Evil\n")
    assert read_words(folder, "../evil") == {"parts": "Parts"}


def test_a_word_that_yaml_reads_as_no_word_is_told(tmp_path: Path) -> None:
    """YAML reads a bare `yes` as true; the catalogue refuses it."""
    (tmp_path / "en.yaml").write_text("required_yes: yes\n")
    with pytest.raises(TypeError, match="required_yes"):
        read_words(tmp_path, "en")
