"""The command `serve`: a live preview of the site, for this machine alone."""

import signal
import sys
import tempfile
from pathlib import Path

from watchfiles import Change, watch

from packlarder.cli import texts
from packlarder.cli.console import say, show_faults
from packlarder.cli.options import Options
from packlarder.cli.preview import Preview
from packlarder.cli.preview_server import serving
from packlarder.cli.rings import sweep_rings
from packlarder.cli.stages import BookWorked, book_folder
from packlarder.disk.reading import SUFFIXES, TOP_FILES
from packlarder.disk.theme import theme_folder
from packlarder.faults import Fault

QUIET_MS = 50
"""Changes that follow each other faster than this belong together: an editor saves in several steps."""
FIRST_LOOK_MS = 500
"""So long after the watch began the book is looked at once more: it may have changed before."""


def serve(options: Options) -> int:
    """Show the site and keep it up to date, until stopped."""
    sweep_rings()
    folder, theme = book_folder(options), theme_folder()
    signal.signal(signal.SIGTERM, signal.default_int_handler)  # so that the folder of the preview goes away
    try:
        with tempfile.TemporaryDirectory(prefix="packlarder-") as made:
            preview = Preview(options, folder, theme=theme, out=Path(made))
            teller = _Teller()
            teller.tell(preview.refresh(anew=True))
            with serving(preview, options.port) as address:
                say(texts.SERVING.format(address=address))
                _follow(preview, theme, teller)
    except KeyboardInterrupt:
        return 0
    return 0


def _follow(preview: Preview, theme: Path, teller: "_Teller") -> None:
    """Bring the preview up to date after every change of the book or the theme."""
    folder = preview.folder.resolve()

    def belongs(_change: Change, path: str) -> bool:
        place = Path(path)
        if place.is_relative_to(theme):
            return True
        parts = place.relative_to(folder).parts if place.is_relative_to(folder) else ()
        return len(parts) > 0 and (parts[0] in SUFFIXES or parts[0] in TOP_FILES) and not parts[-1].startswith(".")

    first = True
    changes = watch(
        folder, theme, watch_filter=belongs, step=QUIET_MS, rust_timeout=FIRST_LOOK_MS, yield_on_timeout=True
    )
    for changed in changes:
        if changed or first:
            first = False
            of_theme = any(Path(path).is_relative_to(theme) for _, path in changed)
            teller.tell(preview.refresh(anew=of_theme))


class _Teller:
    """Says how the book is after each change; faults that were told and are still there are not told again."""

    def __init__(self) -> None:
        self._told: tuple[Fault, ...] = ()

    def tell(self, worked: BookWorked | None) -> None:
        """Say how the book is; None where nothing changed."""
        if worked is None:
            return
        if worked.faults and worked.faults != self._told:
            show_faults(worked.faults, worked.read.files.texts, worked.shown, sys.stderr)
        self._told = worked.faults
        if worked.checked is not None and worked.sound:
            book = worked.checked.book
            say(texts.SHOWN.format(counts=texts.counts(len(book.dishes), len(book.components))))
