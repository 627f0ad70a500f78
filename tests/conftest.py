"""What every test may ask for."""

from pathlib import Path

import pytest


@pytest.fixture(scope="session")
def checkout() -> Path:
    """Give the top folder of the checkout that is tested."""
    return Path(__file__).resolve().parents[1]
