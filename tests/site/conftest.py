"""The sample book's site, built once."""

from pathlib import Path

import pytest
from tests.site.samples import BOOK

from packlarder.publish.site import build_site

THEME = Path(__file__).parents[2] / "theme"


@pytest.fixture(scope="session")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the site of the sample book and give its folder."""
    out = tmp_path_factory.mktemp("site")
    assert build_site(BOOK, theme=THEME, out=out) == ()
    return out
