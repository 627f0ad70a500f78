"""Set a booklet's pages on sheets for duplex printing, folding and stapling: whole pages, placed, never redrawn."""

from io import BytesIO

from pypdf import PageObject, PdfReader, PdfWriter
from pypdf.generic import (
    ArrayObject,
    DecodedStreamObject,
    DictionaryObject,
    FloatObject,
    IndirectObject,
    NameObject,
)

from packlarder.publish.imposition import Leaf, Spread, creep_mm, cut_and_stack
from packlarder.publish.sizes import Bed, PageSize

PT_PER_MM = 72 / 25.4
TICK_MM = 6.0
"""Length of a fold tick from the edge of a page; it stays in the margin."""
STAPLE_MM = 10.0


def impose(booklet: bytes, page: PageSize, bed: Bed) -> bytes:
    """Give the sheets of a booklet, front and back in turn. Raises ValueError unless its pages fill whole sheets."""
    reader = PdfReader(BytesIO(booklet))
    writer = PdfWriter()
    placed = [_form(writer, source) for source in reader.pages]
    for sheet in cut_and_stack(len(placed), bed.rows):
        for side in ("front", "back"):
            target = writer.add_blank_page(width=bed.width_mm * PT_PER_MM, height=bed.height_mm * PT_PER_MM)
            _fill(writer, target, _side(sheet.leaves, side, page, bed), placed)
    writer.metadata = {"/Title": reader.metadata.title or ""} if reader.metadata else None
    for stream in writer.pages:
        stream.compress_content_streams()
    written = BytesIO()
    writer.write(written)
    return written.getvalue()


def _form(writer: PdfWriter, source: PageObject) -> IndirectObject:
    """Keep a page as a form that can be placed: its own drawing, its own resources, cut at its edges."""
    form = DecodedStreamObject()
    content = source.get_contents()
    form.set_data(content.get_data() if content is not None else b"")
    form[NameObject("/Type")] = NameObject("/XObject")
    form[NameObject("/Subtype")] = NameObject("/Form")
    form[NameObject("/BBox")] = ArrayObject(FloatObject(edge) for edge in source.mediabox)
    form[NameObject("/Resources")] = source["/Resources"].clone(writer)
    return writer._add_object(form.flate_encode())  # noqa: SLF001 - pypdf has no public way to add a form


def _side(leaves: tuple[Leaf, ...], side: str, page: PageSize, bed: Bed) -> str:
    """Write the drawing of one side: the pages of each leaf, then the marks."""
    pieces = []
    for row, leaf in enumerate(leaves):
        spread = leaf.front if side == "front" else leaf.back
        foot_mm = _foot_mm(row, page, bed)
        pieces.append(_spread(spread, creep_mm(leaf, bed.sheet.paper_mm), foot_mm, page, bed))
        if side == "front":
            pieces.append(_fold(foot_mm, page, bed))
            pieces.append(_trim(foot_mm, page, bed))
            pieces.append(_staples(foot_mm, page, bed) if leaf.depth == 0 else "")
    if side == "front":
        pieces.append(_cuts(bed))
    return "\n".join(piece for piece in pieces if piece)


def _foot_mm(row: int, page: PageSize, bed: Bed) -> float:
    """Tell how high above the sheet's foot a row of pages stands: in the middle of its band, rows from the top down."""
    return (bed.rows - 1 - row) * bed.band_mm + (bed.band_mm - page.height_mm) / 2


def _spread(spread: Spread, creep: float, foot_mm: float, page: PageSize, bed: Bed) -> str:
    spine_mm = bed.width_mm / 2
    left, right = spread
    return "\n".join(
        f"q 1 0 0 1 {_pt(x_mm)} {_pt(foot_mm)} cm /P{number} Do Q"
        for number, x_mm in ((left, spine_mm - page.width_mm + creep), (right, spine_mm - creep))
    )


def _fold(foot_mm: float, page: PageSize, bed: Bed) -> str:
    """Tick the fold at head and foot of a spread."""
    spine_mm, head_mm = bed.width_mm / 2, foot_mm + page.height_mm
    return _line(spine_mm, foot_mm, spine_mm, foot_mm + TICK_MM) + _line(spine_mm, head_mm - TICK_MM, spine_mm, head_mm)


def _staples(foot_mm: float, page: PageSize, bed: Bed) -> str:
    """Mark where two staples go, a quarter from head and foot."""
    spine_mm = bed.width_mm / 2
    middles = (foot_mm + page.height_mm / 4, foot_mm + page.height_mm * 3 / 4)
    return "".join(_line(spine_mm, middle - STAPLE_MM / 2, spine_mm, middle + STAPLE_MM / 2) for middle in middles)


def _trim(foot_mm: float, page: PageSize, bed: Bed) -> str:
    """Draw the edges of a spread to cut along, where the sheet is larger than its spreads."""
    if not bed.trims(page):
        return ""
    left_mm, right_mm = bed.width_mm / 2 - page.width_mm, bed.width_mm / 2 + page.width_mm
    head_mm = foot_mm + page.height_mm
    upright = "".join(_line(x_mm, 0, x_mm, bed.height_mm, dashed=True) for x_mm in (left_mm, right_mm))
    across = "".join(_line(0, y_mm, bed.width_mm, y_mm, dashed=True) for y_mm in (foot_mm, head_mm))
    return upright + across


def _cuts(bed: Bed) -> str:
    """Draw the cuts between rows, right across."""
    heights = (bed.band_mm * row for row in range(1, bed.rows))
    return "".join(_line(0, height, bed.width_mm, height, dashed=True) for height in heights)


def _line(x1: float, y1: float, x2: float, y2: float, *, dashed: bool = False) -> str:
    dash = "[4 3] 0 d " if dashed else ""
    return f"q 0 G 0.4 w {dash}{_pt(x1)} {_pt(y1)} m {_pt(x2)} {_pt(y2)} l S Q\n"


def _pt(length_mm: float) -> str:
    return f"{length_mm * PT_PER_MM:.3f}"


def _fill(writer: PdfWriter, target: PageObject, drawing: str, placed: list[IndirectObject]) -> None:
    content = DecodedStreamObject()
    content.set_data(drawing.encode("ascii"))
    forms = DictionaryObject(
        {NameObject(f"/P{number}"): form for number, form in enumerate(placed, 1) if f"/P{number} Do" in drawing}
    )
    target[NameObject("/Contents")] = writer._add_object(content)  # noqa: SLF001 - as above
    target[NameObject("/Resources")] = DictionaryObject({NameObject("/XObject"): forms})
