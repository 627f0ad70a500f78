"""The theme is found in an installed package and in a checkout."""

from pathlib import Path

import pytest

from packlarder.disk.theme import theme_folder


def test_checkout_reads_its_live_theme(checkout: Path) -> None:
    """From a checkout the theme is the folder at its top, so that an edit shows at once."""
    assert theme_folder() == checkout / "theme"


def test_installed_package_comes_first(tmp_path: Path) -> None:
    """A package that carries its theme uses it, even where a folder of that name lies beside."""
    package = tmp_path / "generator" / "packlarder"
    (tmp_path / "theme").mkdir()
    (package / "theme").mkdir(parents=True)
    assert theme_folder(package) == package / "theme"


def test_missing_theme_names_both_places(tmp_path: Path) -> None:
    """A package without a theme is broken, and says where it looked."""
    package = tmp_path / "generator" / "packlarder"
    with pytest.raises(FileNotFoundError) as missing:
        theme_folder(package)
    assert str(package / "theme") in str(missing.value)
    assert str(tmp_path / "theme") in str(missing.value)
