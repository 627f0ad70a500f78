"""A dish's sheet as plain text of 80 columns, for a terminal."""

from collections.abc import Iterator, Sequence
from textwrap import wrap

from packlarder.cli import sheet_words as words
from packlarder.cli.plain import COLUMNS, GAP, columns, listed, page, paragraph, section
from packlarder.sheets.dish_sheet import DishSheet, PackRow, PartRow, Reading
from packlarder.sheets.printed import NOTHING, Printed, System, plain


def plain_sheet(sheet: DishSheet, system: System, foot: str, at: int | None = None) -> str:
    """Set a sheet for one of its numbers of servings (the usual one by default), and `foot` below it."""
    return page(_Page(sheet, system, sheet.usual if at is None else at).lines(), foot)


class _Page:
    """Sets one sheet, section by section."""

    def __init__(self, sheet: DishSheet, system: System, at: int) -> None:
        self.sheet = sheet
        self.system = system
        self.at = at

    def lines(self) -> Iterator[str]:
        sheet = self.sheet
        yield from self._title()
        yield from section(words.MISSING, listed(sheet.missing))
        yield from section(words.PARTS, self._parts())
        yield from section(words.PACKS, (line for row in sheet.packs for line in self._pack(row, "")))
        yield from section(words.STEPS, self._steps())
        yield from section(words.DONE_WHEN, paragraph(sheet.done_when))
        yield from section(words.CAUTIONS, listed(f"{one.text} ({one.source})" for one in sheet.cautions))
        yield from section(words.WATER, self._waters())
        yield from section(words.CLOCK_AND_HEAT, self._readings((*sheet.clock, *sheet.heat)))
        yield from section(words.FEEDS, self._feeds())
        yield from section(words.ALLERGENS, self._allergens())
        yield from section(words.ORIGINS, listed((*sheet.origins, *sheet.conditions)))
        yield from section(words.LEARNT, self._learnt())
        yield from section(words.NOTES, (line for note in sheet.notes for line in paragraph(note)))

    def _title(self) -> Iterator[str]:
        sheet = self.sheet
        yield from wrap(sheet.name, COLUMNS)
        servings = words.SERVINGS.format(servings=sheet.servings[self.at])
        yield from wrap(" · ".join(filter(None, (sheet.meal, sheet.method, servings))), COLUMNS)
        if sheet.about:
            yield from ("", *paragraph(sheet.about))
        yield from ("", *self._readings(sheet.strip))
        if sheet.raw_parts:
            yield from ("", *wrap(f"{words.RAW} {plain(sheet.raw, self.system, self.at)}", COLUMNS))

    def _said(self, printed: Printed) -> str:
        text = printed.text(self.system, self.at)
        return "" if text == NOTHING else text

    def _parts(self) -> Iterator[str]:
        rows = [
            (self._name(row), self._said(row.dry), self._said(row.measure), self._fresh(row))
            for row in self.sheet.parts
        ]
        for row, line in zip(self.sheet.parts, columns(rows), strict=True):
            yield line
            waters = words.COMMA.join(self._part_waters(row))
            yield from wrap(waters, COLUMNS, initial_indent="    ", subsequent_indent="    ")

    def _name(self, row: PartRow) -> str:
        return f"{row.name} {words.RAW}" if row.raw else row.name

    def _fresh(self, row: PartRow) -> str:
        fresh = self._said(row.fresh)
        return words.WORTH.format(fresh=fresh) if fresh else ""

    def _part_waters(self, row: PartRow) -> Iterator[str]:
        if row.way:
            yield row.way
        for printed, says in (
            (row.offered, words.OFFERED),
            (row.absorbed, words.ABSORBED),
            (row.drained, words.DRAINED),
        ):
            water = self._said(printed)
            if water:
                yield says.format(water=water)
        if row.instead:
            yield words.INSTEAD.format(names=words.COMMA.join(row.instead))

    def _pack(self, row: PackRow, indent: str) -> Iterator[str]:
        items = [f"{item.name}{f' {words.RAW}' if item.raw else ''} {self._said(item.weight)}" for item in row.items]
        told = [words.COMMA.join(items), row.where, words.SACHET if row.sachet else ""]
        number = f"{indent}{row.number or '·':<4}"
        text = "; ".join(filter(None, told))
        yield from wrap(text, COLUMNS, initial_indent=number, subsequent_indent=" " * len(number))
        for inner in row.inside:
            yield from self._pack(inner, indent + GAP)

    def _steps(self) -> Iterator[str]:
        for step in self.sheet.steps:
            head = f"{self._said(step.clock) or '0:00':>5}{GAP}{step.verb:<10}"
            text = plain(step.line, self.system, self.at)
            yield from wrap(text, COLUMNS, initial_indent=head, subsequent_indent=" " * len(head))

    def _waters(self) -> Iterator[str]:
        rows = [(row.label, self._said(row.figure)) for row in self.sheet.waters if self._said(row.figure)]
        if rows:
            yield from columns([*rows, (words.IN_ALL, self._said(self.sheet.water_total))])

    def _readings(self, readings: Sequence[Reading]) -> Iterator[str]:
        yield from columns([(one.label, self._said(one.figure)) for one in readings if self._said(one.figure)])

    def _feeds(self) -> Iterator[str]:
        rows = [
            (food.label, f"{'' if food.complete else words.AT_LEAST}{self._said(food.figure)}")
            for food in self.sheet.feeds
            if self._said(food.figure)
        ]
        yield from columns(rows)

    def _allergens(self) -> Iterator[str]:
        sheet = self.sheet
        yield from wrap(words.CONTAINS.format(names=words.COMMA.join(sheet.allergens) or words.NONE), COLUMNS)
        if sheet.traces:
            yield from wrap(words.TRACES.format(names=words.COMMA.join(sheet.traces)), COLUMNS)

    def _learnt(self) -> Iterator[str]:
        yield from listed(self.sheet.tried)
        yield from listed(": ".join(filter(None, (one.day, one.change, one.why))) for one in self.sheet.learnt)
