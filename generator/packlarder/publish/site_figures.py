"""The figures of one page: the usual one in the text, all of them beside it for the script to pick from."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from html import escape as escape_anew
from operator import attrgetter
from typing import TypeVar

from markupsafe import Markup

from packlarder.sheets.dish_sheet import DishSheet, PartRow, StepRow
from packlarder.sheets.facts import Fact
from packlarder.sheets.printed import Line, Printed, Strong, System, kept

BETWEEN = "|"
"""Parts the texts of a row; a row with a text that holds it is written as a list."""
UNIT_SPACE = "\N{NO-BREAK SPACE}"

CELL_BREAK = "\n"
NO_FIGURE = ' class="no"'

Row = tuple[str, ...]
Shown = TypeVar("Shown")
"""A row of a list of the sheet: a reading, a piece of water, a part."""

escape = lru_cache(maxsize=32_768)(escape_anew)
"""Remembered: the pages of a book show the same few thousand texts again and again."""

_encode = json.JSONEncoder(ensure_ascii=False, separators=(",", ":")).encode


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of the parts table: a field of the part's row, its label, and how a cell of it begins."""

    name: str
    label: str
    cell: str


class PageFigures:
    """Sets figures as HTML and gathers those that change with servings or units.

    A figure that never changes is plain text. One that does is `<span data-f="7">`, where 7 is its number in `picks()`:
    every text of it, once, by row; the script shows one of them and works out nothing.
    """

    def __init__(self, *, system: System, usual: int = 0, servings: tuple[float, ...] = (1,)) -> None:
        """Start a page that shows `servings[usual]` in one system of units."""
        self._us = system is System.US
        self._system = system
        self._usual = usual
        self._servings = servings
        self._rows: dict[Row, int] = {}
        self._pairs: dict[tuple[int, int], int] = {}

    def show(self, figure: Printed) -> Markup:
        """Set a figure within a line."""
        return _safe(self._set(figure))

    def each(self, rows: Iterable[Shown], name: str) -> list[tuple[Shown, Markup]]:
        """Give each row of a list with its figure of that name, set: one call from a template, not one a row."""
        return [(row, _safe(self._set(getattr(row, name)))) for row in rows]

    def parts(self, parts: Iterable[PartRow], columns: tuple[Column, ...]) -> list[tuple[PartRow, Markup]]:
        """Give each part with its figures, set as cells of its row."""
        return [(part, self._cells(part, columns)) for part in parts]

    def every(self, rows: Iterable[Shown], name: str) -> list[tuple[Shown, Markup]]:
        """Give each row with its figure of that name for every number of servings, set as cells.

        They are in the system the page is written in; a figure calls its texts by the name of their system.
        """
        texts = attrgetter(f"{name}.{self._system}")
        return [(row, _in_cells(texts(row))) for row in rows]

    def large(self, figure: Printed) -> Markup:
        """Set a figure with its unit small beside it."""
        text, number = self._gather(figure.metric, figure.us)
        count, space, unit = text.rpartition(UNIT_SPACE)
        inside = f"{escape(count)}{space}<small>{escape(unit)}</small>" if space else f"{escape(text)}<small></small>"
        return _safe(f"<span>{inside}</span>" if number is None else f'<span data-f="{number}">{inside}</span>')

    def fact(self, fact: Fact) -> Markup:
        """Set the figure of a fact, which knows no servings."""
        return _safe(self._fact(fact))

    def ledger(self, facts: Iterable[Fact]) -> Markup:
        """Set facts as the rows of a ledger, each with where it comes from."""
        return _safe(
            "".join(
                f"<div><dt>{escape(fact.label)}{f' <small>{escape(fact.source)}</small>' if fact.source else ''}</dt>"
                f"<dd>{self._fact(fact)}</dd></div>\n"
                for fact in facts
            )
        )

    def facts(self, facts: Iterable[Fact]) -> list[tuple[Fact, Markup]]:
        """Give each fact with its figure, set with its unit small beside it."""
        return [(fact, self.large(Printed((fact.metric,), (fact.us,)))) for fact in facts]

    def drawn(self, fact: Fact) -> Markup:
        """Set the figure of a fact as text of a picture, where HTML has no place."""
        return _safe(self._fact(fact, "tspan"))

    def column(self, figure: Printed) -> Markup:
        """Set a figure as text of a picture."""
        return _safe(self._fact(_as_fact(figure), "tspan"))

    def described(self, figure: Printed, id: str) -> Markup:
        """Set what a picture says as its description."""
        metric, us = figure.metric, figure.us
        place = "" if metric == us else f' data-f="{self._number(metric, us)}"'
        return _safe(f'<desc id="{escape(id)}"{place}>{escape((us if self._us else metric)[0])}</desc>')

    def line(self, line: Line) -> Markup:
        """Set a line: plain words, strong words, figures."""
        return _safe(
            "".join(
                escape(run)
                if isinstance(run, str)
                else f"<strong>{escape(run.text)}</strong>"
                if isinstance(run, Strong)
                else self._set(run)
                for run in line
            )
        )

    def steps(self, steps: Iterable[StepRow]) -> list[tuple[StepRow, Markup, Markup]]:
        """Give each step with its clock and its line, set."""
        return [(step, self.show(step.clock), self.line(step.line)) for step in steps]

    def picks(self) -> Markup:
        """Set all that was gathered as JSON that may stand inside a `script` element."""
        written = {
            "system": _json(self._system),
            "usual": _json(self._usual),
            "servings": _json(self._servings),
            "rows": f"[{','.join(map(_written, self._rows))}]",
            "metric": _json([metric for metric, _ in self._pairs]),
            "us": _json([us for _, us in self._pairs]),
        }
        return _safe("{" + ",".join(f'"{name}":{value}' for name, value in written.items()) + "}")

    def _cells(self, part: PartRow, columns: tuple[Column, ...]) -> Markup:
        """Set the figures of a part; a cell with none is marked: narrow pages leave it out."""
        figures = [getattr(part, column.name) for column in columns]
        cells = [
            f"{column.cell}{NO_FIGURE if figure.empty else ''}>{self._set(figure)}</td>"
            for column, figure in zip(columns, figures, strict=True)
        ]
        return _safe("".join(cells))

    def _set(self, figure: Printed) -> str:
        """Set a figure as HTML."""
        text, number = self._gather(figure.metric, figure.us)
        return escape(text) if number is None else f'<span data-f="{number}">{escape(text)}</span>'

    def _fact(self, fact: Fact, tag: str = "span") -> str:
        """Set the figure of a fact; only the system of units can change it."""
        metric, us = fact.metric, fact.us
        if metric == us:
            return escape(metric)
        return f'<{tag} data-f="{self._number((metric,), (us,))}">{escape(us if self._us else metric)}</{tag}>'

    def _gather(self, metric: Row, us: Row) -> tuple[str, int | None]:
        """Give the usual text and the figure's number, which is none where nothing ever changes."""
        if not (_is_steady(metric) and _is_steady(us)):
            text = (us if self._us else metric)[self._usual]
        elif metric[0] == us[0]:
            return metric[0], None
        else:
            metric, us = metric[:1], us[:1]
            text = (us if self._us else metric)[0]
        return text, self._number(metric, us)

    def _number(self, metric: Row, us: Row) -> int:
        """Give the number of a pair of rows in `picks()`."""
        rows, pairs = self._rows, self._pairs
        pair = rows.setdefault(metric, len(rows)), rows.setdefault(us, len(rows))
        return pairs.setdefault(pair, len(pairs))


@kept
def counts(servings: tuple[float, ...], *, one: str, many: str) -> Printed:
    """Print the number of servings in words: `for 1 serving`, `for {n} servings`."""
    texts = tuple(one if count == 1 else many.replace("{n}", str(count)) for count in servings)
    return Printed(texts, texts)


def all_columns(words: Mapping[str, str]) -> tuple[Column, ...]:
    """Give the columns that the parts table of any dish may have."""
    return tuple(
        Column(name=name, label=words[name], cell=f'<td data-l="{escape(words[name])}"')
        for name in ("measure", "dry", "fresh", "offered", "absorbed", "drained")
    )


def used_columns(dish: DishSheet, columns: tuple[Column, ...]) -> tuple[Column, ...]:
    """Give those of the columns that hold something in at least one row."""
    return tuple(column for column in columns if any(not getattr(part, column.name).empty for part in dish.parts))


def _as_fact(figure: Printed) -> Fact:
    return Fact(label="", metric=figure.metric[0], us=figure.us[0])


def _is_steady(row: Row) -> bool:
    """Tell whether all texts are alike; the ends of a row that is not mostly differ, and are the quicker to hold."""
    return row[0] == row[-1] and row.count(row[0]) == len(row)


def _safe(html: str) -> Markup:
    """Mark HTML that was put together here, every text in it escaped, as fit to be set.

    Made as the text it is: a call of Markup looks first whether it is given something that sets itself.
    """
    return str.__new__(Markup, html)


@kept
def _in_cells(row: Row) -> Markup:
    """Set the texts of a row as cells."""
    return _safe(f"<td>{escape(CELL_BREAK.join(row)).replace(CELL_BREAK, '</td><td>')}</td>")


@kept
def _written(row: Row) -> str:
    """Write a row as one text, or as a list where a text holds the parting sign."""
    joined = BETWEEN.join(row)
    return _json(joined if joined.count(BETWEEN) == len(row) - 1 else row)


def _json(value: object) -> str:
    """Write a value as JSON that can not end a `script` element."""
    return _encode(value).replace("<", "\\u003c")
