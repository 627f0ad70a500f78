"""A large site written by several processes at once: no page hangs on another."""

import multiprocessing
import os
from pathlib import Path

from packlarder.faults import Fault
from packlarder.publish.site import Progress, build_site
from packlarder.publish.site_pages import dish_addresses
from packlarder.sheets.book_sheet import BookSheet

LARGE = 200
"""Dishes from which a second process is worth its start."""
MOST = 4


def build_site_in_shares(
    sheet: BookSheet, *, theme: Path, out: Path, progress: Progress | None = None
) -> tuple[Fault, ...]:
    """Write the site of a book as `build_site` does; the dish pages of a large one are shared out to all processors.

    Where processes can not be forked, one process writes everything.
    """
    addresses = dish_addresses(sheet)
    workers = min(os.cpu_count() or 1, MOST) if len(addresses) >= LARGE else 1
    if workers < 2 or "fork" not in multiprocessing.get_all_start_methods():
        return build_site(sheet, theme=theme, out=out, progress=progress)
    fork = multiprocessing.get_context("fork")
    shares = [frozenset(addresses[at::workers]) for at in range(1, workers)]
    helpers = [
        fork.Process(target=build_site, args=(sheet,), kwargs={"theme": theme, "out": out, "only": share})
        for share in shares
    ]
    for helper in helpers:
        helper.start()
    faults = build_site(sheet, theme=theme, out=out, progress=progress, without=frozenset().union(*shares))
    for helper in helpers:
        helper.join()
        if helper.exitcode:
            raise RuntimeError(f"a process that writes pages ended with {helper.exitcode}")
    return faults
