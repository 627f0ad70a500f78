"""What public bodies and studies say on safe food, water, stoves and heaters, each with its figures and its source.

A number in `figures` is the source's own; where it stands in two units, one may be our conversion.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from packlarder.figures.figure import Figure, Standing
from packlarder.figures.rows import read_rows

_ID = re.compile(r"\bT[0-9]+-[0-9]+\b")
"""How a fact names the facts it was worked out from."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One fact: what it says in our words, its figures ("" if it has none), who says so and where.

    `page` is the address where it was read, "" where only a copy was read or the fact is from memory.
    """

    id: str
    topic: str
    text: str
    figures: str
    body: str
    document: str
    page: str
    standing: Standing

    @property
    def source(self) -> str:
        """Who says so, and in what, as one phrase; of what was worked out, who said what it was worked out from."""
        ids = _ID.findall(self.body)
        if ids:
            return f"worked out from {'; '.join(dict.fromkeys(FACTS[id].body for id in _whole_range(self.body, ids)))}"
        return f"{self.body}: {self.document}" if self.document else self.body


def _whole_range(body: str, ids: list[str]) -> list[str]:
    """Give the ids that a body names, with those between where it says `T4-18 to T4-21`."""
    if " to " not in body or len(ids) != 2:
        return ids
    (topic, first), (_, last) = (id.split("-") for id in ids)
    return [f"{topic}-{number:02}" for number in range(int(first), int(last) + 1)]


def _fact(row: Mapping[str, str]) -> Fact:
    return Fact(
        id=row["id"],
        topic=row["topic"],
        text=row["text"],
        figures=row["figures"],
        body=row["body"],
        document=row["document"],
        page=row["page"],
        standing=Standing(row["standing"]),
    )


FACTS: Mapping[str, Fact] = MappingProxyType({row["id"]: _fact(row) for row in read_rows("facts.csv")})


def from_fact(name: str, value: float, unit: str, fact: str) -> Figure:
    """Make a figure of ours of what a fact says; its source and standing are the fact's."""
    found = FACTS[fact]
    return Figure(name=name, value=value, unit=unit, source=found.source, standing=found.standing)
