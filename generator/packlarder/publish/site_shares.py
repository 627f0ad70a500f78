"""A large site written by several processes at once: no page hangs on another."""

from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path

from packlarder.faults import Fault
from packlarder.publish.site import Progress, build_site
from packlarder.publish.site_pages import address_of
from packlarder.sheets.book_sheet import BookSheet
from packlarder.sheets.facts import Link


@dataclass(frozen=True, slots=True, kw_only=True)
class PageShare:
    """The pages that one process writes: ids of dishes and of drying runs."""

    dishes: Collection[str]
    runs: Collection[str]

    @property
    def addresses(self) -> frozenset[str]:
        """Give the addresses of its pages."""
        links = (("dish", self.dishes), ("run", self.runs))
        return frozenset(address_of(Link(kind=kind, id=id, name="")) for kind, ids in links for id in ids)


def build_share(sheet: BookSheet, share: PageShare, *, theme: Path, out: Path) -> None:
    """Write nothing but some pages."""
    build_site(sheet, theme=theme, out=out, only=share.addresses)


def build_all_but(
    sheet: BookSheet, share: PageShare, *, theme: Path, out: Path, progress: Progress | None = None
) -> tuple[Fault, ...]:
    """Write the site as `build_site` does, but for pages that others write."""
    return build_site(sheet, theme=theme, out=out, progress=progress, without=share.addresses)
