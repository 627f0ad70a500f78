"""What is wrong with labels, and what to do about it."""

from collections.abc import Sequence

from packlarder.publish.label_stock import LabelStock, Purpose, stocks_for

NO_ROOM_HELP = "print it on a larger stock, or shorten its texts"
SEVERAL_CELLS_HELP = "stick them on side by side, or print it on a larger stock"
NO_CODE_HELP = "print on a larger stock, or ask for no codes"


def unknown_stock(id: str) -> str:
    """Say that nobody knows a label sheet."""
    return f'no label sheet is called "{id}"'


def serves_not(stock: LabelStock, purpose: Purpose) -> str:
    """Say that a sheet is for something else."""
    return f"{stock.id} ({stock.name}) is not for a {purpose.value}"


def known_stocks(purpose: Purpose) -> str:
    """Say which sheets there are for something."""
    return f"for a {purpose.value} there are {', '.join(stock.id for stock in stocks_for(purpose))}"


def no_such_cell(first: int, stock: LabelStock) -> str:
    """Say that a sheet has no such label."""
    return f"there is no label {first} to start at: {stock.id} has {stock.count} on a page"


def cells_of(stock: LabelStock) -> str:
    """Say which labels a sheet has."""
    return f"start at a label between 1 and {stock.count}, counted row by row from the upper left"


def no_room(name: str, stock: LabelStock) -> str:
    """Say that a label was left out."""
    return f'the label of "{name}" is not printed: at the least type it has no room on {stock.name}'


def several_cells(name: str, stock: LabelStock, cells: int) -> str:
    """Say that a label takes more than one cell."""
    return (
        f'the label of "{name}" takes {cells} labels of {stock.name}: at the least type one has no room for all of it'
    )


def no_code(names: Sequence[str], stock: LabelStock) -> str:
    """Say which labels have no code."""
    named = ", ".join(f'"{name}"' for name in names)
    return f"no room for a QR code beside the text on {stock.name}: {named}"
