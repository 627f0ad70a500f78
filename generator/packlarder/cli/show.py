"""The command `show`: a dish, a trip, a drying run or the larder, as text or data."""

from collections.abc import Callable, Mapping
from importlib import import_module

from packlarder.cli.options import Options

MODULES: Mapping[str, str] = {"dish": "show_dish", "trip": "show_trip", "batch": "show_store", "larder": "show_store"}
"""Where what shows each kind is; it brings along what it needs, and no more is loaded."""


def show(options: Options) -> int:
    """Print what is asked for; 1 if something in it is wrong."""
    module = import_module(f"packlarder.cli.{MODULES[options.kind]}")
    shows: Callable[[Options], int] = getattr(module, f"show_{options.kind}")
    return shows(options)
