"""What every test may ask for, and the option that writes expected texts anew."""

import signal
from pathlib import Path

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    """Add the option `--update-goldens`."""
    parser.addoption("--update-goldens", action="store_true", help="write the expected texts of faults and books anew")


def pytest_configure() -> None:
    """Let Ctrl-C reach the commands that tests start, also where a shell runs the tests in its background."""
    if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
        signal.signal(signal.SIGINT, signal.default_int_handler)


@pytest.fixture
def update_goldens(request: pytest.FixtureRequest) -> bool:
    """Tell whether expected texts are to be written."""
    return bool(request.config.getoption("update_goldens"))


@pytest.fixture(scope="session")
def checkout() -> Path:
    """Give the top folder of the checkout that is tested."""
    return Path(__file__).resolve().parents[1]
