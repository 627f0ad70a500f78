"""When Python looks for rings of objects: not for a command that ends when its work is done."""

import gc
import subprocess
import sys
from contextlib import suppress

from packlarder.cli.rings import rings_left

LEAVES_A_RING = """
from packlarder.cli.rings import rings_left
class Link:
    def __del__(self):
        print("found", flush=True)
with rings_left():
    link = Link()
    link.to = link
    del link
print("done", flush=True)
"""
"""A program that leaves a ring behind; the ring tells when it is found."""


def test_block_leaves_the_search_as_it_was() -> None:
    """Inside the block there is no search, behind it as many as before, even if something went wrong."""
    before = gc.isenabled(), gc.get_threshold()
    with suppress(ZeroDivisionError), rings_left():
        assert not gc.isenabled()
        raise ZeroDivisionError
    assert (gc.isenabled(), gc.get_threshold()) == before


def test_what_the_block_made_counts_as_old() -> None:
    """The next search, for rings among the young, does not go through what the block made; one of the old would."""
    with rings_left():
        with rings_left():  # here nothing is searched when it ends either
            ring: list[object] = []
            ring.append(ring)
        assert any(one is ring for one in gc.get_objects(generation=2))


def test_no_search_at_the_end_of_the_process() -> None:
    """A process that ends gives back all its memory at once, without looking for rings in it first."""
    ended = subprocess.run([sys.executable, "-c", LEAVES_A_RING], capture_output=True, text=True, check=True)
    assert ended.stdout == "done\n"
