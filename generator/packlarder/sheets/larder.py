"""The sheet of the larder: what stands, until when, how much of each thing there is, and what runs short."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from types import MappingProxyType

from packlarder.measure import as_weighed, in_grams, in_ounces
from packlarder.reckon.larder import NOT_FOR_STORE
from packlarder.reckon.larder_records import InStore, LarderSums, Standing
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import store_words as words
from packlarder.sheets import words as common
from packlarder.sheets.dish import caution, day
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Line, Printed
from packlarder.sheets.shelf import Shelf, keeping, weight
from packlarder.sheets.store_sheet import Calendar, LarderSheet, LevelRow, Quarter, ShelfGroup, Stay

SOON = timedelta(weeks=4)
"""What is to be eaten within this time stands among what is to be eaten first."""
ROOM = timedelta(weeks=2)
"""Free days at both ends of the calendar, so that no mark is cut."""
YEAR_MONTHS, QUARTER_MONTHS = 12, 3
NOTHING_RESERVED: Mapping[str, float] = MappingProxyType({})


def larder_sheet(
    larder: LarderSums,
    findings: Sequence[Finding],
    shelf: Shelf | None = None,
    reserved_g: Mapping[str, float] = NOTHING_RESERVED,
) -> LarderSheet:
    """Build the sheet of the larder; a `shelf` of its day is shared with other sheets.

    `reserved_g` is what planned trips take of each component, by id.
    """
    shelf = shelf or Shelf(larder.on)
    urgent, later = _grouped(larder)
    return LarderSheet(
        day=day(larder.on),
        summary=_summary(larder),
        strip=tuple(_strip(larder)),
        containers=tuple(map(shelf.row, larder.standing)),
        first=tuple(_group(words.FIRST[name], held, shelf) for name, held in urgent.items()),
        later=tuple(_group(heading, held, shelf) for heading, held in later.items()),
        calendar=_calendar(larder),
        levels=tuple(
            level_row(one, larder.on, reserved_g.get(one.component.id, 0.0))
            for one in sorted(larder.in_store.values(), key=_short_first)
        ),
        emptied=tuple(map(shelf.row, larder.emptied)),
        emptied_shelf=shelf.lines(larder.emptied),
        cautions=tuple(caution(finding) for finding in on_the_page(findings)),
    )


def _summary(larder: LarderSums) -> Line:
    if not larder.standing:
        return (words.LARDER_EMPTY,)
    count = len(larder.standing)
    phrase = words.LARDER_SUMMARY_ONE if count == 1 else words.LARDER_SUMMARY
    held_g, fresh_g = _totals(larder)
    return common.set_line(
        phrase.replace("{containers}", str(count)), {"weight": _printed(held_g), "fresh": _printed(fresh_g)}
    )


def _printed(grams: float) -> Printed:
    return Printed((as_weighed(grams),), (in_ounces(grams),))


def _totals(larder: LarderSums) -> tuple[float, float]:
    return sum(one.left_g for one in larder.standing), sum(one.left_g * stands_for(one) for one in larder.standing)


def _strip(larder: LarderSums) -> Iterator[Fact]:
    """Give what the keeper of a larder looks for first."""
    held_g, fresh_g = _totals(larder)
    yield _count("containers", len(larder.standing))
    yield Fact(label=words.STRIP["dry"], metric=as_weighed(held_g), us=in_ounces(held_g))
    yield Fact(label=words.STRIP["fresh"], metric=in_grams(fresh_g), us=in_ounces(fresh_g))
    yield _count("open", sum(one.opened_on is not None for one in larder.standing))
    yield _count("past", sum(one.past(larder.on) for one in larder.standing))
    yield _count("short", sum(one.short for one in larder.in_store.values()))


def _count(name: str, number: int) -> Fact:
    return Fact(label=words.STRIP[name], metric=str(number), us=str(number))


def stands_for(one: Standing) -> float:
    """Give the fresh food that a gram of a container stands for: as its own batch was weighed, or its component's."""
    made = one.batch.component.yielded
    return one.batch.fresh_per_dry or (1.0 if made is None else made.fresh_g)


def _grouped(larder: LarderSums) -> tuple[dict[str, list[Standing]], dict[str, list[Standing]]]:
    """Part the containers into those that want a look, by why, and the others, by the month of their day."""
    urgent: dict[str, list[Standing]] = {name: [] for name in words.FIRST}
    later: dict[str, list[Standing]] = defaultdict(list)
    for one in larder.standing:
        why = _urgent(one, larder.on)
        if why:
            urgent[why].append(one)
        else:
            keeps = one.use_by
            later["" if keeps is None else f"{common.MONTHS[keeps.day.month - 1]} {keeps.day.year}"].append(one)
    dateless = later.pop("", None)
    if dateless:
        later[words.DATELESS] = dateless
    return {name: held for name, held in urgent.items() if held}, later


def _urgent(one: Standing, on: date) -> str:
    """Say why a container is to be looked at first; "" for one that has time."""
    if one.batch.verdict in NOT_FOR_STORE:
        return "wet"
    if one.past(on):
        return "past"
    if one.opened_on is not None:
        return "open"
    return "soon" if one.use_by is not None and one.use_by.day <= on + SOON else ""


def _group(heading: str, held: Sequence[Standing], shelf: Shelf) -> ShelfGroup:
    return ShelfGroup(
        heading=heading,
        count=len(held),
        holds=weight("", sum(one.left_g for one in held)),
        lines=shelf.lines(held),
    )


def _short_first(one: InStore) -> tuple[bool, str]:
    return not one.short, one.component.model.name.lower()


def level_row(store: InStore, on: date, reserved_g: float = 0.0) -> LevelRow:
    """Set what there is of a component, and what of it planned trips leave where they take some."""
    component = store.component
    first = store.standing[0] if store.standing else None
    return LevelRow(
        component=Link(kind="component", id=component.id, name=component.model.name),
        raw=component.raw,
        containers=len(store.standing),
        held=weight("", store.held_g),
        free=weight("", max(0.0, store.held_g - reserved_g)) if reserved_g else None,
        stands_for=weight("", sum(one.left_g * stands_for(one) for one in store.standing)),
        level=None if store.level_g is None else weight("", store.level_g),
        short=store.short,
        eat_first="" if first is None else str(first.mark),
        until="" if first is None else day(first.use_by.day) if first.use_by else keeping(first),
        past=first is not None and first.past(on),
        stays=_stays(store.standing, on),
        says=_says(store.standing),
    )


def _stays(standing: Sequence[Standing], on: date) -> tuple[Stay, ...]:
    days = Counter(
        (one.use_by.day.toordinal(), one.opened_on is not None, one.past(on))
        for one in standing
        if one.use_by is not None
    )
    return tuple(
        Stay(until=until, count=count, opened=opened, past=past)
        for (until, opened, past), count in sorted(days.items())
    )


def _says(standing: Sequence[Standing]) -> str:
    """Say in words what a picture of use-by days shows."""
    days = [one.use_by.day for one in standing if one.use_by is not None]
    if not days:
        return words.NO_DAYS
    opened = sum(one.opened_on is not None for one in standing)
    counts = ((words.PICTURE_OPEN, opened), (words.PICTURE_SEALED, len(standing) - opened))
    says = common.COMMA.join(phrase.format(count=count) for phrase, count in counts if count)
    phrase = words.PICTURE_DAY if min(days) == max(days) else words.PICTURE_DAYS
    return phrase.format(says=says, first=day(min(days)), last=day(max(days)))


def _calendar(larder: LarderSums) -> Calendar | None:
    """Give the days from the first use-by day, or today, to the last; None where nothing has a day."""
    days = [one.use_by.day for one in larder.standing if one.use_by is not None]
    if not days:
        return None
    first, last = min(larder.on, *days) - ROOM, max(larder.on, *days) + ROOM
    return Calendar(
        first=first.toordinal(),
        last=last.toordinal(),
        today=larder.on.toordinal(),
        quarters=tuple(_quarters(first, last)),
    )


def _quarters(first: date, last: date) -> Iterator[Quarter]:
    """Give the first days of quarters that lie between two days."""
    month = first.month - 1
    start = first.year * YEAR_MONTHS + month - month % QUARTER_MONTHS
    for months in range(start, (last.year + 1) * YEAR_MONTHS, QUARTER_MONTHS):
        on = date(months // YEAR_MONTHS, months % YEAR_MONTHS + 1, 1)
        if first <= on <= last:
            name = words.MONTHS[on.month - 1]
            yield Quarter(day=on.toordinal(), month=name, year=str(on.year) if on.month == 1 else "")
