"""When Python looks for rings of objects that nobody holds any more: of a book's million records hardly any is in one.

Not while a book is read, checked and its site is written, where the search only costs time, nor when all memory is
given back anyway; but where rings are made (laying out paper), and in what runs on and on.
"""

import atexit
import gc
from collections.abc import Iterator
from contextlib import contextmanager

EVERY = 100_000
"""New objects between two searches."""


@contextmanager
def rings_left() -> Iterator[None]:
    """Look for no rings inside the block, unless `sweep_rings` is called there, nor at the end of the process."""
    was_on, often = gc.isenabled(), gc.get_threshold()
    gc.disable()
    atexit.register(gc.freeze)  # Python would go through all that is left, for half a second after a large book
    try:
        yield
    finally:
        _age()
        gc.set_threshold(*often)
        if was_on:
            gc.enable()


def _age() -> None:
    """Count everything there is as old: the next search, which is for the young, would else go through all of it."""
    gc.freeze()
    gc.unfreeze()


def sweep_rings() -> None:
    """Look for rings from now on, now and then."""
    gc.set_threshold(EVERY)
    gc.enable()
