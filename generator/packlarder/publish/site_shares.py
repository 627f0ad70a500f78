"""A large site written by several processes at once: no page hangs on another."""

from collections.abc import Collection
from pathlib import Path

from packlarder.faults import Fault
from packlarder.publish.site import Progress, build_site
from packlarder.publish.site_pages import address_of
from packlarder.sheets.book_sheet import BookSheet


def build_dish_pages(sheet: BookSheet, ids: Collection[str], *, theme: Path, out: Path) -> None:
    """Write nothing but the pages of some dishes."""
    build_site(sheet, theme=theme, out=out, only=_addresses(sheet, ids))


def build_all_but(
    sheet: BookSheet, ids: Collection[str], *, theme: Path, out: Path, progress: Progress | None = None
) -> tuple[Fault, ...]:
    """Write the site as `build_site` does, but for the pages of dishes that others write."""
    return build_site(sheet, theme=theme, out=out, progress=progress, without=_addresses(sheet, ids))


def _addresses(sheet: BookSheet, ids: Collection[str]) -> frozenset[str]:
    wanted = frozenset(ids)
    return frozenset(address_of(link) for link in sheet.dish_links if link.id in wanted)
