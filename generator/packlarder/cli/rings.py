"""When Python looks for rings of objects that nobody holds any more: of a book's million records hardly any is in one.

Not while a book is read, checked and its site is written, where the search only costs time; but where rings are made
(laying out paper), and in what runs on and on.
"""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

EVERY = 100_000
"""New objects between two searches."""


@contextmanager
def rings_left() -> Iterator[None]:
    """Look for no rings inside the block, unless `sweep_rings` is called there."""
    was_on, often = gc.isenabled(), gc.get_threshold()
    gc.disable()
    try:
        yield
    finally:
        gc.set_threshold(*often)
        if was_on:
            gc.enable()


def sweep_rings() -> None:
    """Look for rings from now on, now and then."""
    gc.set_threshold(EVERY)
    gc.enable()
