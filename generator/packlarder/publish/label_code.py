"""The QR code of a label: its text as it is, so that no network is needed to read it.

Standard: ISO/IEC 18004 (versions, level Q, a quiet zone of four modules). The module of 0.4 mm is common practice.
"""

from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO

import segno

LEVEL = "q"
QUIET = 4
"""Modules of white on every side."""

LEAST_MODULE_MM = 0.4
MOST_MODULE_MM = 0.6

BYTES_AT_Q = (
    11, 20, 32, 46, 60, 74, 86, 108, 130, 151, 177, 203, 241, 258, 292, 322, 364, 394, 442, 482,
    509, 565, 611, 661, 715, 751, 805, 868, 908, 982, 1030, 1112, 1168, 1228, 1283, 1351, 1423, 1499, 1579, 1663,
)  # fmt: skip  # read as a table
"""How many bytes versions 1 to 40 hold at level Q; ISO/IEC 18004, table 7."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Code:
    """A code as drawn: its text (shortened if need be), its side with the quiet zone, its SVG."""

    text: str
    side_mm: float
    module_mm: float
    svg: bytes

    @property
    def quiet_mm(self) -> float:
        """Give the width of its quiet zone."""
        return QUIET * self.module_mm


def fit_code(text: str, room_mm: float) -> Code | None:
    """Draw as many whole lines of a text, from the first on, as go into a square of `room_mm`; None if not one does."""
    version = _largest_version(room_mm)
    if version == 0:
        return None
    kept = _whole_lines(text.strip(), BYTES_AT_Q[version - 1])
    return _draw(kept, room_mm) if kept else None


def _modules(version: int) -> int:
    """Give the modules of a side, quiet zone included."""
    return 17 + 4 * version + 2 * QUIET


def _largest_version(room_mm: float) -> int:
    """Give the largest version whose modules are large enough in a room; 0 if none is."""
    fitting = (v for v in range(len(BYTES_AT_Q), 0, -1) if _modules(v) * LEAST_MODULE_MM <= room_mm + 1e-9)
    return next(fitting, 0)


def _whole_lines(text: str, most_bytes: int) -> str:
    """Keep the first lines of a text that fit into so many bytes."""
    lines = text.splitlines()
    for end in range(len(lines), 0, -1):
        kept = "\n".join(lines[:end]).strip()
        if len(kept.encode()) <= most_bytes:
            return kept
    return ""


@lru_cache(maxsize=512)
def _draw(text: str, room_mm: float) -> Code:
    # UTF-8 without a mark of its encoding is what readers in phones expect.
    made = segno.make(text, error=LEVEL, boost_error=False, micro=False, encoding="utf-8")
    modules = made.symbol_size(border=QUIET)[0]
    module_mm = min(MOST_MODULE_MM, room_mm / modules)
    drawn = BytesIO()
    made.save(drawn, kind="svg", border=QUIET, scale=module_mm, unit="mm", xmldecl=False, svgclass=None, lineclass=None)
    return Code(text=text, side_mm=modules * module_mm, module_mm=module_mm, svg=drawn.getvalue())
