"""The command `show`: a dish, a drying run or the larder, as text or data."""

from packlarder.cli.options import Options
from packlarder.cli.show_dish import show_dish
from packlarder.cli.show_store import show_batch, show_larder

KINDS = {"dish": show_dish, "batch": show_batch, "larder": show_larder}


def show(options: Options) -> int:
    """Print what is asked for; 1 if something in it is wrong."""
    return KINDS[options.kind](options)
