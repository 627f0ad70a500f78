"""The opening of a dish in the field booklet, from its sheet: one number of servings, one system of units."""

from collections.abc import Sequence

from packlarder.book.step import Verb
from packlarder.measure import UP, for_number, in_fluid_ounces, rounded, with_fraction
from packlarder.measure.printing import amount
from packlarder.measure.units import FLUID_OUNCE
from packlarder.reckon.clock import whole_minutes
from packlarder.safety import Finding, in_the_booklet
from packlarder.sheets import field_words, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import DishSheet, PackRow
from packlarder.sheets.field_sheet import FieldFigure, FieldOpening, FieldPack, FieldStep, Span
from packlarder.sheets.printed import Line, Printed, Strong, System
from packlarder.sheets.series import bare_minutes_up, whole_ml, whole_ounces
from packlarder.sheets.step_rows import field_lines
from packlarder.sheets.vessels import is_heated
from packlarder.sheets.words import lowered, opened

SAID_ELSEWHERE = frozenset({"allergens", "traces"})
"""Rules whose words stand on the left page anyway."""
ROUND_ML = 50
"""Water in the booklet is rounded up to this, unless the household has a mug of its own."""
QUARTER = 0.25


def field_opening(dish: DishSeries, sheet: DishSheet, findings: Sequence[Finding], system: System) -> FieldOpening:
    """Give the opening of a dish at its usual servings."""
    setter = _Setter(system, sheet.usual)
    told = [finding for finding in findings if finding.rule.id not in SAID_ELSEWHERE]
    return FieldOpening(
        id=sheet.id,
        name=sheet.name,
        heading=_heading(sheet),
        packs=tuple(pack for row in sheet.packs for pack in setter.packs(row)),
        figures=_figures(dish, sheet, system),
        raw=setter.spans(sheet.raw),
        done_when=sheet.done_when,
        steps=tuple(
            FieldStep(minute=setter.text(row.minute), verb=opened(row.verb), line=setter.spans(line))
            for row, line in zip(sheet.steps, field_lines(dish), strict=True)
        ),
        cautions=tuple(finding.text for finding in in_the_booklet(told)),
        allergens=_allergens(sheet),
        conditions=_conditions(dish),
        components=tuple(row.component for row in sheet.parts),
    )


class _Setter:
    """Sets figures and lines at one number of servings in one system."""

    def __init__(self, system: System, index: int) -> None:
        self.system = system
        self.index = index

    def text(self, figure: Printed) -> str:
        """Set a figure."""
        return figure.text(self.system, self.index)

    def spans(self, line: Line) -> tuple[Span, ...]:
        """Set a line; neighbouring plain words become one span."""
        spans: list[Span] = []
        for run in line:
            strong = isinstance(run, Strong)
            text = run if isinstance(run, str) else run.text if isinstance(run, Strong) else self.text(run)
            if spans and not strong and not spans[-1].strong:
                spans[-1] = Span(spans[-1].text + text)
            else:
                spans.append(Span(text, strong=strong))
        return tuple(spans)

    def packs(self, row: PackRow, *, is_inside: bool = False) -> tuple[FieldPack, ...]:
        """Set a pack and the packs inside it."""
        inside = tuple(pack for inner in row.inside for pack in self.packs(inner, is_inside=True))
        holds = ", ".join(item.name for item in row.items)
        if not row.number and row.where:
            holds = field_words.FROM.format(name=holds, where=row.where)
        elif row.where and row.where.lower() != holds.lower():
            holds = field_words.CALLED.format(called=row.where, holds=holds)
        own = FieldPack(
            number=row.number,
            holds=holds,
            weight=self.text(row.weight),
            raw=any(item.raw for item in row.items) or (row.raw and not row.items),
            sachet=row.sachet,
            is_inside=is_inside,
        )
        return (own, *inside)


def _figures(dish: DishSeries, sheet: DishSheet, system: System) -> tuple[FieldFigure, ...]:
    """Give the water, how much of it is heated, and the minutes; what soaks first and for how long."""
    sums = dish.sums[dish.usual]
    water = _told_water(dish, sums.water.carry_ml, dish.ounces.carry[dish.usual], system)
    figures = [FieldFigure(label=field_words.FIELD["water"], figure=water)]
    if sums.water.hot_ml > 0:
        heated = _told_water(dish, sums.water.hot_ml, dish.ounces.heated[dish.usual], system)
        figures.append(FieldFigure(label=field_words.FIELD["hot"], figure=heated, part_of=True))
    figures += [
        FieldFigure(label=lowered(one.label), figure=one.figure.text(system, dish.usual), part_of=True)
        for one in sheet.strip
        if one.key == "heater"
    ]
    figures.append(FieldFigure(label=field_words.FIELD["minutes"], figure=_minutes(sums.clock.minutes)))
    soaks = [sums.steps[step.index] for step in dish.plan.steps if step.verb is Verb.SOAK]
    if soaks:
        longest = max(soaks, key=lambda step: step.wait_min)
        label = field_words.FIELD["soak"].format(
            minutes=_minutes(sums.clock.minutes - whole_minutes(longest.start_min))
        )
        figures.append(FieldFigure(label=label, figure=bare_minutes_up(longest.wait_min), part_of=True))
    return tuple(figures)


def _minutes(minutes: int) -> str:
    """Give bare minutes, as the right page counts them."""
    return amount(minutes, "min")


def _heading(sheet: DishSheet) -> str:
    servings = sheet.servings[sheet.usual]
    return field_words.HEADING.format(meal=opened(sheet.meal), method=sheet.method, servings=servings)


def _told_water(dish: DishSeries, water_ml: float, ounces: int, system: System) -> str:
    """Print a water rounded up: to 50 mL, to fl oz, or to quarters of the household's own mug with what they hold."""
    if water_ml <= 0:
        return field_words.NO_WATER
    household = dish.household
    mug = household.measures.get(household.booklet_measure)
    if mug is None:
        return whole_ounces(ounces) if system is System.US else whole_ml(rounded(water_ml, ROUND_ML, UP))
    needed_ml = ounces * FLUID_OUNCE.size if system is System.US else water_ml
    quarters = rounded(needed_ml / mug.base, QUARTER, UP)
    held_ml = quarters * mug.base
    held = in_fluid_ounces(held_ml) if system is System.US else whole_ml(held_ml)
    mugs = amount(with_fraction(quarters) or "", for_number(household.booklet_measure, quarters))
    return field_words.MUGS.format(mugs=mugs, water=held)


def _conditions(dish: DishSeries) -> str:
    if not is_heated(dish):
        return ""
    pots = words.COMMA.join(dish.pots)
    return field_words.FIELD_CONDITIONS.format(stove=dish.plan.stove_name, pots=pots)


def _allergens(sheet: DishSheet) -> str:
    """Say what it holds, and what it may hold traces of."""
    told = ((words.CONTAINS, sheet.allergens), (words.MAY_CONTAIN, sheet.traces))
    return " ".join(phrase.format(allergens=", ".join(held)) for phrase, held in told if held)
