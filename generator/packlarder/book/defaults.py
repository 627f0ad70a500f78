"""Values that stand where a file says nothing."""

from packlarder.measure import Quantity, Unreadable, parse


def known(text: str) -> Quantity:
    """Read a quantity that we wrote ourselves; raises ValueError where it can not be read, which is our own bug."""
    found = parse(text, zero=True)
    if isinstance(found, Unreadable):
        raise ValueError(f"{text}: {found.message}")  # noqa: TRY004 - the value is wrong, not its type
    return found
