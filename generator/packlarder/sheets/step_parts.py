"""How a step names its parts: with their weights where they are first named, by packs in the booklet."""

from packlarder.book.step import Verb
from packlarder.reckon.plan import IN_POT
from packlarder.reckon.records import PlannedStep
from packlarder.sheets import words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.printed import EMPTY, Line, Printed, kept
from packlarder.sheets.words import filled, joined


def with_amounts(dish: DishSeries, step: PlannedStep) -> Line:
    """Name the parts with their weights; a part that was named by an earlier step is named alone."""
    named = {index for earlier in dish.plan.steps[: step.index] for index in earlier.parts}
    parts = _parts_of(dish, step)
    return joined([(dish.names[index],) if index in named else _with_amount(dish, index) for index in parts])


def by_pack(dish: DishSeries, step: PlannedStep) -> Line:
    """Name whole packs by their number where a step opens or drains them; parts that are out of their packs by name."""
    named = {index for earlier in dish.plan.steps[: step.index] for index in earlier.parts}
    wanted = list(_parts_of(dish, step))
    apart = set() if step.verb is Verb.DRAIN else named
    lines: list[Line] = []
    for pack in (one for outer in dish.plan.packs for one in (outer, *outer.inside)):
        whole = set(pack.all_parts)
        if whole and whole <= set(wanted) and not whole & apart:
            lines.append((words.PACK.format(number=pack.number),))
            wanted = [index for index in wanted if index not in whole]
    alone = [(dish.names[index],) if index in named else _out_of_pack(dish, index) for index in wanted]
    return joined([*lines, *alone])


def _out_of_pack(dish: DishSeries, index: int) -> Line:
    """Name a part that is taken out of a pack that holds more, with the pack it lies in."""
    packs = [one for outer in dish.plan.packs for one in (outer, *outer.inside)]
    number = next((pack.number for pack in packs if index in pack.parts), "")
    return _with_amount(dish, index, words.OF_PACK if number else words.OF, number)


def _with_amount(dish: DishSeries, index: int, phrase: str = words.OF, pack: str = "") -> Line:
    """Name a part with its weight; what is measured out at camp from its own tub, by the spoon."""
    measure, weight = dish.measures[index], dish.weights[index]
    if not measure.empty:
        metric = _exact(measure.metric, weight.metric) if index in dish.plan.loose else weight.metric
        weight = Printed(metric, _exact(measure.us, weight.us))
    return filled(phrase, {"name": dish.names[index], "weight": weight, "number": pack})


@kept
def _exact(measures: tuple[str, ...], weights: tuple[str, ...]) -> tuple[str, ...]:
    """Take measures, but weights where there is none, or where a count needs its true number behind it."""
    return tuple(
        [weight if one in EMPTY or one.endswith(")") else one for one, weight in zip(measures, weights, strict=True)]
    )


def _parts_of(dish: DishSeries, step: PlannedStep) -> tuple[int, ...]:
    """Give the parts of a step; a drain works on what was soaked and not yet drained, or else on the last pot's."""
    if step.verb is not Verb.DRAIN:
        return step.parts
    return soaking_before(dish, step) or _in_last_pot(dish, step)


def soaking_before(dish: DishSeries, step: PlannedStep) -> tuple[int, ...]:
    """Give the parts that were soaked and not yet drained when a step begins."""
    soaking: list[int] = []
    for earlier in dish.plan.steps[: step.index]:
        if earlier.verb is Verb.SOAK:
            soaking += earlier.parts
        elif earlier.verb is Verb.DRAIN:
            soaking.clear()
    return tuple(soaking)


def _in_last_pot(dish: DishSeries, step: PlannedStep) -> tuple[int, ...]:
    """Give what was put into the pot that was used last and takes up water there; salt goes with the water."""
    before = [one for one in dish.plan.steps[: step.index] if one.pot and one.verb in IN_POT]
    together = [index for one in before if one.pot == before[-1].pot for index in one.parts]
    wet = [index for index in together if dish.plan.way_of[index] is not None]
    return tuple(dict.fromkeys(wet or together))
