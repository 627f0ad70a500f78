"""Reads a page of the site back: its elements, their texts, the figures beside it."""

import json
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path

VOID = frozenset({"meta", "link", "img", "br", "hr", "input"})


@dataclass(slots=True, kw_only=True)
class Element:
    """An element with its attributes and everything written inside it."""

    tag: str
    attributes: dict[str, str]
    text: str = ""
    inside: "list[Element]" = field(default_factory=list)

    def all(self, tag: str, **attributes: str) -> "list[Element]":
        """Find elements inside by tag and attributes (`class_` for class)."""
        wanted = {name.rstrip("_").replace("_", "-"): text for name, text in attributes.items()}
        found = []
        for element in self.inside:
            if element.tag == tag and wanted.items() <= element.attributes.items():
                found.append(element)
            found.extend(element.all(tag, **attributes))
        return found

    def walk(self) -> "list[Element]":
        """Give every element inside, in the order of the page."""
        return [found for element in self.inside for found in (element, *element.walk())]


class _Reader(HTMLParser):
    """Builds the elements."""

    def __init__(self) -> None:
        super().__init__()
        self.open = [Element(tag="", attributes={})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Open an element."""
        element = Element(tag=tag, attributes={name: text or "" for name, text in attrs})
        self.open[-1].inside.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_endtag(self, tag: str) -> None:
        """Close an element; every one that is opened must be closed by name."""
        assert self.open.pop().tag == tag

    def handle_data(self, data: str) -> None:
        """Add text to everything that is open."""
        for element in self.open:
            element.text += data


def read_page(page: Path) -> Element:
    """Read a page."""
    reader = _Reader()
    reader.feed(page.read_text(encoding="utf-8"))
    reader.close()
    assert len(reader.open) == 1
    return reader.open[0]


@dataclass(frozen=True, slots=True, kw_only=True)
class Picks:
    """The figures a script may pick from, as they stand in a page."""

    servings: tuple[int, ...]
    usual: int
    system: str
    metric: tuple[tuple[str, ...], ...]
    us: tuple[tuple[str, ...], ...]


def read_picks(page: Element) -> Picks:
    """Read the figures of a page."""
    [script] = page.all("script", id="figures")
    known = json.loads(script.text)
    rows = [tuple(row.split("|")) if isinstance(row, str) else tuple(row) for row in known["rows"]]
    return Picks(
        servings=tuple(known["servings"]),
        usual=known["usual"],
        system=known["system"],
        metric=tuple(rows[number] for number in known["metric"]),
        us=tuple(rows[number] for number in known["us"]),
    )
