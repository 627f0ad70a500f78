"""What many sheets are made of: a figure with its label, and a link to another page."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A label and what is known, in both systems of units, and where it comes from."""

    label: str
    metric: str
    us: str
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """A page of the book by kind (`dish`, `component`, `run`, `page`) and id, and how it is called."""

    kind: str
    id: str
    name: str
