"""The option that writes the expected texts of this folder anew: `pytest tests/faults --update-goldens`."""

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option."""
    parser.addoption("--update-goldens", action="store_true", help="write the expected texts of tests/faults anew")


@pytest.fixture
def update_goldens(request: pytest.FixtureRequest) -> bool:
    """Tell whether expected texts are to be written; not known when pytest was started on more than this folder."""
    return bool(request.config.getoption("update_goldens", default=False))
