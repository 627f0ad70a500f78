"""A larder and drying runs made by hand for the site's tests; their figures are invented."""

from datetime import date

from tests.site.sample_dishes import EGG
from tests.site.sample_figures import GAP

from packlarder.sheets import words
from packlarder.sheets.facts import Fact, Link
from packlarder.sheets.printed import Printed
from packlarder.sheets.store_sheet import (
    BatchRow,
    Calendar,
    ContainerRow,
    History,
    LarderSheet,
    LevelRow,
    Quarter,
    RunEntry,
    RunIndex,
    RunSheet,
    RunYear,
    ShelfGroup,
    ShelfLine,
    StageRow,
    Stay,
    Stored,
    Tray,
    YieldPoint,
)

EGGS = Link(kind="component", id="egg-powder", name="Egg powder")
LEEKS = Link(kind="component", id="leek-rings", name="Leek rings")
RUN = "2026-10-17-eggs-and-leeks"


def weight(grams: int, ounces: str, label: str = "") -> Fact:
    """Print a weight in both systems."""
    return Fact(label=label, metric=f"{grams}{GAP}g", us=f"{ounces}{GAP}oz")


def container(number: int, component: Link, *, until: str, state: str = "sealed", past: bool = False) -> ContainerRow:
    """Set a jar of 74 g."""
    return ContainerRow(
        mark=f"{RUN}/a{number}",
        component=component,
        raw=component is EGGS,
        size="quarter-litre jar",
        holds=weight(74, "2½"),
        stands="lowest shelf",
        state=state,
        use_by=until,
        keeping="our own rule: nearly half of it is fat, and fat does not wait" if until else "no day",
        past=past,
    )


def line(first: ContainerRow, count: int = 1) -> ShelfLine:
    """Set jars that are alike as a line."""
    number = int(first.mark.rpartition("/a")[2])
    marks = f"{RUN}/a{number} to a{number + count - 1}" if count > 1 else first.mark
    return ShelfLine(first=first, count=count, run=Link(kind="run", id=RUN, name=marks), holds=weight(74 * count, "5¼"))


def group(heading: str, *lines: ShelfLine) -> ShelfGroup:
    """Set lines below a heading."""
    count = sum(one.count for one in lines)
    return ShelfGroup(heading=heading, count=count, holds=weight(74 * count, "5¼"), lines=lines)


PAST = container(1, EGGS, until="10 May 2027", past=True)
OPEN = container(2, LEEKS, until="20 June 2027", state="open since 23 May 2027")
SEALED = container(3, EGGS, until="19 October 2027", state="sealed, with oxygen absorber")
EMPTY = container(6, EGGS, until="", state="empty")
MONTHS = tuple(
    group(f"{month} 2028", line(container(number, LEEKS, until=f"1 {month} 2028")))
    for number, month in enumerate(words.MONTHS, 7)
)


def level(component: Link, *, short: bool, stays: tuple[Stay, ...], past: bool = False) -> LevelRow:
    """Set what there is of a component."""
    return LevelRow(
        component=component,
        raw=component is EGGS,
        containers=sum(stay.count for stay in stays),
        held=weight(148, "5¼"),
        stands_for=weight(600, "21"),
        level=weight(300, "10½") if short else None,
        short=short,
        eat_first=f"{RUN}/a1",
        until="10 May 2027",
        past=past,
        stays=stays,
        says="1 open, 2 sealed: 10 May 2027 to 19 October 2027",
    )


def _stay(on: date, count: int = 1, *, opened: bool = False, past: bool = False) -> Stay:
    return Stay(until=on.toordinal(), count=count, opened=opened, past=past)


EGG_LEVEL = level(
    EGGS, short=True, stays=(_stay(date(2027, 5, 10), past=True), _stay(date(2027, 10, 19), 3)), past=True
)
LEEK_LEVEL = level(LEEKS, short=False, stays=(_stay(date(2027, 6, 20), opened=True),))
LARDER = LarderSheet(
    day="1 June 2027",
    summary=("16 containers with ", Printed((f"1184{GAP}g",), (f"42{GAP}oz",)), " of dry food."),
    strip=(
        Fact(label="Containers", metric="16", us="16"),
        weight(1184, "42", "Dry food"),
        Fact(label="Past their day", metric="1", us="1"),
    ),
    containers=(PAST, OPEN, SEALED),
    first=(group("Past its day", line(PAST)), group("Open", line(OPEN))),
    later=(group("October 2027", line(SEALED, 3)), *MONTHS),
    calendar=Calendar(
        first=date(2027, 4, 26).toordinal(),
        last=date(2028, 12, 10).toordinal(),
        today=date(2027, 6, 1).toordinal(),
        quarters=(
            Quarter(day=date(2027, 7, 1).toordinal(), month="July", year=""),
            Quarter(day=date(2027, 10, 1).toordinal(), month="Oct", year=""),
            Quarter(day=date(2028, 1, 1).toordinal(), month="Jan", year="2028"),
        ),
    ),
    levels=(EGG_LEVEL, LEEK_LEVEL),
    emptied=(EMPTY,),
    emptied_shelf=(line(EMPTY),),
    cautions=(EGG,),
)


def batch(
    component: Link, *, verdict: str, shelf: tuple[ShelfLine, ...], beside_raw: tuple[Link, ...] = ()
) -> BatchRow:
    """Set a batch of a kilogram."""
    return BatchRow(
        component=component,
        raw=component is EGGS,
        state="RAW" if component is EGGS else "ready",
        verdict=verdict,
        verdict_says=("It must get ", Printed((f"94{GAP}g",), (f"3¼{GAP}oz",)), " lighter."),
        chain=(
            StageRow(label="loaded", metric=f"900{GAP}g", us=f"31½{GAP}oz", factor=""),
            StageRow(label="dry", metric=f"221{GAP}g", us=f"7¾{GAP}oz", factor=f"25{GAP}% of loaded"),
        ),
        facts=(Fact(label="water left, estimated", metric="3 %", us="3 %", source="by the food table"),),
        shelf=shelf,
        containers=tuple(one.first for one in shelf),
        traces=("milk",),
        beside_raw=beside_raw,
        notes=("No egg ran off.",),
        missing=("fresh weight: 18 eggs could not be weighed.",) if component is LEEKS else (),
    )


RUN_SHEET = RunSheet(
    id=RUN,
    title="Egg powder, Leek rings, 17 October 2026",
    day="17 October 2026",
    dryer="freeze-dryer",
    summary=(Printed((f"900{GAP}g",), (f"31½{GAP}oz",)), " fresh gave dry food."),
    facts=(Fact(label="took", metric=f"36{GAP}h", us=f"36{GAP}h"),),
    batches=(
        batch(EGGS, verdict="dry", shelf=(line(PAST), line(SEALED, 3))),
        batch(LEEKS, verdict="not dry yet", shelf=(line(OPEN),), beside_raw=(EGGS,)),
    ),
    cautions=(EGG,),
    notes=("Cooled the machine first.",),
)
RUN_INDEX = RunIndex(
    years=(
        RunYear(
            year="2026",
            entries=(
                RunEntry(
                    link=Link(kind="run", id=RUN, name="Egg powder, Leek rings"),
                    trays=(
                        Tray(name="Egg powder", raw=True, verdict="dry"),
                        Tray(name="Leek rings", raw=False, verdict="not dry yet"),
                    ),
                    day="17 October 2026",
                    dryer="freeze-dryer",
                    fresh=weight(1800, "63"),
                    dry=None,
                ),
            ),
        ),
        RunYear(year="2025", entries=()),
    )
)


def point(day: date, dry_per_kg: int, *, counted: bool = True) -> YieldPoint:
    """Set a batch in a plot."""
    return YieldPoint(
        run=Link(kind="run", id=RUN, name=f"{day:%-d %B %Y}"),
        day=day.toordinal(),
        day_text=f"{day:%-d %B %Y}",
        dry_per_kg=dry_per_kg,
        gave=weight(dry_per_kg, "8½"),
        verdict="dry" if counted else "can not tell",
        counted=counted,
    )


EGG_STORED = Stored(
    history=History(
        points=(
            point(date(2026, 10, 17), 247),
            point(date(2027, 1, 30), 210, counted=False),
            point(date(2027, 4, 10), 260),
        ),
        median=252.5,
        says=("The median of 2 batches: 1 kg fresh gives ", Printed((f"250{GAP}g",), (f"8¾{GAP}oz",)), " dry."),
        card=(weight(450, "16", "fresh on each tray"), Fact(label="hours last time", metric="36 h", us="36 h")),
        card_notes=("Sieve the eggs.",),
    ),
    level=EGG_LEVEL,
    shelf=(line(PAST), line(SEALED, 3)),
)
