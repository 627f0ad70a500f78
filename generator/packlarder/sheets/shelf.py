"""Containers as lines of a table: those of one batch that are alike stand on one line."""

from collections.abc import Iterable, Sequence
from datetime import date

from packlarder.book.draw import Mark
from packlarder.measure import as_weighed, in_ounces
from packlarder.reckon.batch_records import BatchSums, FilledContainer
from packlarder.reckon.larder_records import Standing
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.dish import day
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.store_sheet import ContainerRow, ShelfLine


class Shelf:
    """The containers of a larder on a day as rows and lines; each row is set once, however often it is shown."""

    def __init__(self, on: date) -> None:
        """Begin without any row."""
        self.on = on
        self._rows: dict[Mark, ContainerRow] = {}

    def row(self, one: Standing) -> ContainerRow:
        """Set a container."""
        if one.mark not in self._rows:
            self._rows[one.mark] = container_row(one.container, one.batch, one, self.on)
        return self._rows[one.mark]

    def lines(self, standing: Iterable[Standing]) -> tuple[ShelfLine, ...]:
        """Set containers as lines, in the order in which the first of each line comes."""
        alike: dict[tuple[str, ...], list[Standing]] = {}
        for one in standing:
            row = self.row(one)
            key = (one.mark.run, one.mark.batch, row.size, row.stands, row.state, row.use_by, row.keeping)
            alike.setdefault(key, []).append(one)
        return tuple(_line(held, self.row(held[0])) for held in alike.values())


def _line(standing: Sequence[Standing], first: ContainerRow) -> ShelfLine:
    run, batch = standing[0].mark.run, standing[0].mark.batch
    marks = f"{run}/{in_spans(batch, sorted(one.mark.number for one in standing))}"
    return ShelfLine(
        first=first,
        count=len(standing),
        run=Link(kind="run", id=run, name=marks),
        holds=weight("", sum(one.left_g for one in standing)),
    )


def in_spans(batch: str, ordered: Sequence[int]) -> str:
    """Write a batch's numbers in their order, with what lies between left out: a1 to a4, a7."""
    spans: list[list[int]] = []
    for number in ordered:
        if spans and number == spans[-1][-1] + 1:
            spans[-1].append(number)
        else:
            spans.append([number])
    ends = [(f"{batch}{span[0]}", f"{batch}{span[-1]}") for span in spans]
    return common.COMMA.join(one if one == last else words.SPAN.format(first=one, last=last) for one, last in ends)


def container_row(container: FilledContainer, batch: BatchSums, standing: Standing | None, on: date) -> ContainerRow:
    """Set a container as it stands on a day; `standing` is None before it was filled."""
    filled, component = container.filled, batch.component
    left_g = container.dry_g if standing is None else standing.left_g
    keeps = None if standing is None or standing.empty else standing.use_by
    return ContainerRow(
        mark=str(container.mark),
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        size=filled.in_,
        holds=weight("", left_g),
        stands=filled.stands,
        state=container_state(container, standing),
        use_by="" if keeps is None else day(keeps.day),
        keeping="" if standing is not None and standing.empty else keeping(standing),
        past=standing is not None and standing.past(on) and not standing.empty,
    )


def container_state(container: FilledContainer, standing: Standing | None) -> str:
    """Say what became of a container."""
    filled = container.filled
    if standing is not None and standing.empty:
        return words.EMPTY
    state = words.VACUUM if filled.vacuum else words.SEALED
    if standing is not None and standing.opened_on is not None:
        state = words.OPEN_SINCE.format(day=day(standing.opened_on))
    return words.WITH_SACHET.format(state=state, sachet=filled.sachet.value) if filled.sachet else state


def keeping(standing: Standing | None) -> str:
    """Say why a use-by day is what it is."""
    keeps = None if standing is None else standing.use_by
    if standing is None or keeps is None:
        return words.NO_DAY
    if keeps.untested:
        return words.UNTESTED
    if keeps.own:
        return words.OWN_RULE_WHY.format(why=keeps.says) if keeps.says else words.OWN_RULE
    return keeps.says or words.OWN_PACK


def weight(label: str, grams: float) -> Fact:
    """Set a weight in both systems."""
    return Fact(label=label, metric=as_weighed(grams), us=in_ounces(grams))
