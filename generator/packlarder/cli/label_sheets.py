"""The label sheets that are taken unless others are named."""

from collections.abc import Sequence

from packlarder.publish.label_stock import Purpose
from packlarder.publish.sizes import page_size

LETTER = "letter"
USUAL = {
    "a4": {Purpose.JAR: "a4-8", Purpose.LID: "a4-round-12", Purpose.PACK: "a4-8"},
    LETTER: {Purpose.JAR: "letter-6", Purpose.LID: "letter-round-12", Purpose.PACK: "letter-6"},
}
"""Label sheets by the paper of the household's booklets and by what they are for."""


def usual_sheet(sizes: Sequence[str], purpose: Purpose) -> str:
    """Give the label sheet that fits the paper on which a household prints booklets of these sizes."""
    first = page_size(sizes[0]) if sizes else None
    return USUAL[LETTER if first is not None and first.sheet == LETTER else "a4"][purpose]
