"""Where the theme lies: templates, style sheets and scripts."""

from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[1]


def theme_folder(package: Path = PACKAGE) -> Path:
    """Find the theme: inside an installed package, or at the top of the checkout that the package is read from.

    A theme that is in neither place is a fault of the installation, and raises FileNotFoundError with both places.
    """
    places = (package / "theme", package.parents[1] / "theme")
    for place in places:
        if place.is_dir():
            return place
    raise FileNotFoundError(f"the theme is missing: neither {places[0]} nor {places[1]} is a folder")
