"""The rules and figures that everything rests on, as their pages list them."""

from packlarder.figures.constants import all_figures
from packlarder.figures.facts import FACTS
from packlarder.figures.foods import FOODS
from packlarder.figures.temperatures import TEMPERATURES
from packlarder.measure import NO_BREAK, in_celsius, in_fahrenheit
from packlarder.safety import RULES, Rule, general_cautions
from packlarder.sheets import words
from packlarder.sheets.book_sheet import FigureGroup, FigureRow, RuleRow
from packlarder.sheets.dish_sheet import Caution


def rule_rows() -> tuple[RuleRow, ...]:
    """Give every rule in the order in which rules are held against a book."""
    return tuple(
        RuleRow(
            id=rule.id,
            severity=rule.severity.value,
            title=rule.title,
            text=rule.text,
            source=rule.source,
            standing=rule.standing.value,
        )
        for rule in RULES
    )


def front_cautions() -> tuple[Caution, ...]:
    """Give the general cautions that stand once, at the front."""
    return tuple(_caution(rule) for rule in general_cautions())


def _caution(rule: Rule) -> Caution:
    return Caution(
        rule=rule.id,
        severity=rule.severity.value,
        text=rule.text,
        source=rule.source,
        standing=rule.standing.value,
    )


def figure_groups() -> tuple[FigureGroup, ...]:
    """Give every constant, cooking temperature, safety fact and food of the tables with its source."""
    return (
        FigureGroup(heading=words.FIGURES["constants"], rows=_constants()),
        FigureGroup(heading=words.FIGURES["temperatures"], rows=_temperatures()),
        FigureGroup(heading=words.FIGURES["facts"], rows=_facts()),
        FigureGroup(heading=words.FIGURES["foods"], rows=_foods()),
    )


def _constants() -> tuple[FigureRow, ...]:
    return tuple(
        FigureRow(
            name=figure.name,
            value=f"{figure.value:.10g}{NO_BREAK}{figure.unit}",
            source=figure.source,
            standing=figure.standing.value,
        )
        for figure in all_figures()
    )


def _temperatures() -> tuple[FigureRow, ...]:
    return tuple(
        FigureRow(
            name=f"{one.authority.value}, {words.ANYTHING if one.doneness is None else one.doneness.value}",
            value=f"{in_celsius(one.temp_c)} ({in_fahrenheit(one.temp_c)}){f', {one.hold}' if one.hold else ''}",
            source=FACTS[one.fact].source,
            standing=one.standing.value,
        )
        for one in TEMPERATURES.values()
    )


def _facts() -> tuple[FigureRow, ...]:
    return tuple(
        FigureRow(name=fact.text, value=fact.figures, source=fact.source, standing=fact.standing.value)
        for fact in FACTS.values()
    )


def _foods() -> tuple[FigureRow, ...]:
    rows: list[FigureRow] = []
    for food in sorted(FOODS.values(), key=lambda food: food.name):
        per_100 = food.nutrients
        water = words.UNKNOWN if per_100.water_g is None else f"{per_100.water_g:g}{NO_BREAK}g"
        energy = words.UNKNOWN if per_100.energy_kcal is None else f"{per_100.energy_kcal:g}{NO_BREAK}kcal"
        value = words.FOOD_VALUE.format(water=water, energy=energy)
        source = f"{food.source}, {food.ndb}: {food.source_name}"
        rows.append(FigureRow(name=food.name, value=value, source=source, standing=food.standing.value))
    return tuple(rows)
