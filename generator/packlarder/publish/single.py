"""The pocket file: the whole book in one HTML file that asks for nothing, to be searched by the browser's own find.

It leaves out photos, and the figures and file format that the site shows. Of a planned trip it has what one needs
on the way; one that is gone is only named.
"""

import base64
import hashlib
from pathlib import Path

from markupsafe import Markup

from packlarder.faults import Fault
from packlarder.publish.usual import SHARED, in_order, make_templates, set_pages, shared_context, words_of
from packlarder.sheets.book_sheet import BookSheet

FILE = "pocket.html"


def build_single(sheet: BookSheet, *, theme: Path, out: Path) -> tuple[Fault, ...]:
    """Write `pocket.html` into `out`. Finds nothing wrong that the site has not told."""
    words = words_of(theme, sheet.language)
    style = (theme / SHARED / "pocket.css").read_text(encoding="utf-8")
    pages = set_pages(sheet, words, _address, frozenset(), safety="#safety")
    html = (
        make_templates(theme, SHARED)
        .get_template("pocket.html")
        .render(
            shared_context(sheet, words, pages, _address),
            dishes=in_order(sheet),
            style=Markup(style),  # noqa: S704 - our own style sheet
            policy=_policy(style),
        )
    )
    (out / FILE).write_text(html, encoding="utf-8")
    return ()


def _address(kind: str, id: str) -> str:
    return f"#{kind}-{id}"


def _policy(style: str) -> str:
    """Allow the style sheet that stands in the file, by its digest, and nothing else: no script, no fetch."""
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; img-src data:; base-uri 'none'; form-action 'none'"
