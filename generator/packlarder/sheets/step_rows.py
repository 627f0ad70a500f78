"""The steps of a dish, set against the clock: the long line of the page and the short one of the booklet."""

from collections.abc import Sequence

from packlarder.book.step import Fate, Verb
from packlarder.figures.verbs import VERBS
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.ledger import bowl_warmth
from packlarder.reckon.plan import IN_POT
from packlarder.reckon.records import PlannedStep
from packlarder.sheets import series, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import StepRow
from packlarder.sheets.printed import Line, Printed, Run, Strong
from packlarder.sheets.words import joined, lowered, opened, set_line


def step_rows(dish: DishSeries) -> tuple[StepRow, ...]:
    """Set every step of a dish."""
    return tuple(_row(dish, step) for step in dish.plan.steps)


def _row(dish: DishSeries, step: PlannedStep) -> StepRow:
    starts = [whole_minutes(sums.steps[step.index].start_min) for sums in dish.sums]
    runs, phrase = _Runs(dish, step), _phrase(dish, step)
    return StepRow(
        clock=series.clocks(starts),
        minute=series.bare_minutes(starts),
        verb="" if step.verb is None else step.verb.value,
        line=_line(phrase, runs, _with_amounts(dish, step)),
        field_line=_line(phrase, runs, _by_pack(dish, step)),
    )


def _line(phrase: str, runs: "_Runs", parts: Line) -> Line:
    if not phrase:
        return (runs.step.sentence,)
    runs["parts"] = parts
    return _closed(_opened_line(set_line(phrase, runs)))


def _phrase(dish: DishSeries, step: PlannedStep) -> str:
    """Give the phrase for a step, empty for a sentence."""
    return "" if step.verb is None else words.STEPS[_key(dish, step, step.verb)] + words.TAIL


def _key(dish: DishSeries, step: PlannedStep, verb: Verb) -> str:
    if verb is Verb.DRAIN:
        return (step.fate or Fate.AWAY).value
    if step.heater:
        return "heater"
    if verb in (Verb.BOIL, Verb.SIMMER):
        gets_water = any(dish.of_step(step.index, lambda sums: sums.water_ml or sums.from_drain_ml))
        return verb.value if gets_water else "cook on"
    return verb.value


class _Runs(dict[str, "Run | Line"]):
    """What stands in the places of a step's phrase, made when it is asked for and kept for the other line."""

    def __init__(self, dish: DishSeries, step: PlannedStep) -> None:
        super().__init__()
        self.dish = dish
        self.step = step

    def __missing__(self, place: str) -> "Run | Line":
        made: Run | Line = getattr(self, f"_{place}")()
        self[place] = made
        return made

    def _water(self) -> Run:
        if self.step.heater:
            return series.pours(self.dish.of_step(self.step.index, lambda sums: sums.heater_ml))
        return series.pours(self.dish.of_step(self.step.index, lambda sums: sums.water_ml))

    def _about(self) -> Run:
        drained = series.about(self.dish.of_step(self.step.index, lambda sums: sums.drained_ml))
        return series.each_in(drained, words.ABOUT)

    def _pot(self) -> Run:
        """Set the water of a pot: what is poured, and what was drained for it."""
        index = self.step.index
        standing = any(self.dish.of_step(index, lambda sums: sums.standing_ml))
        poured = series.pours(self.dish.of_step(index, lambda sums: sums.water_ml))
        fresh = series.each_in(poured, words.MORE_WATER if standing else words.FRESH_WATER)
        drained = self.dish.of_step(index, lambda sums: sums.from_drain_ml)
        if any(drained):
            fresh = series.both_of(fresh, series.each_in(series.about(drained), words.DRAINED_WATER))
        return fresh if all(fresh.metric) else series.or_else(fresh, words.WATER_THERE)

    def _warmth(self) -> str:
        return bowl_warmth(self.dish.plan, self.step).value

    def _minutes(self) -> Run:
        """Set the minutes of one round, or those it waits."""
        return series.minutes(
            self.dish.of_step(self.step.index, lambda sums: sums.cook_min / sums.rounds or sums.wait_min)
        )

    def _wait(self) -> Line:
        waits = self.dish.of_step(self.step.index, lambda sums: sums.wait_min)
        return set_line(words.WAIT, self) if any(waits) else ()

    def _stir(self) -> Line:
        stir = [self.dish.plan.parts[part].component.water for part in self.step.parts]
        at = [water.stir_at_min for water in stir if water is not None and water.stir_at_min]
        return set_line(words.STIR, {"minutes": series.minutes([max(at)] * self.dish.count)}) if at else ()

    def _cosy(self) -> str:
        waters = [self.dish.plan.parts[part].component.water for part in self.step.parts]
        return words.COSY if self.step.cosy or any(water is not None and water.cosy for water in waters) else ""

    def _lid(self) -> str:
        if self.step.verb is None or self.step.lid_on is VERBS[self.step.verb].lid_on:
            return ""
        return words.LID_ON if self.step.lid_on else words.LID_OFF

    def _rounds(self) -> Run:
        rounds = self.dish.of_step(self.step.index, lambda sums: sums.rounds)
        return _in_rounds(rounds) if max(rounds) > 1 else ""

    def _until(self) -> Line:
        return set_line(words.UNTIL, {"until": Strong(self.step.until)}) if self.step.until else ()

    def _to(self) -> Line:
        to_c = self.step.to_c
        return () if to_c is None else set_line(words.TO, {"degrees": series.degrees(to_c, self.dish.count)})

    def _warms(self) -> str:
        return words.ONLY_WARMS if self.step.heater else ""

    def _say(self) -> str:
        return words.SAY.format(say=self.step.say) if self.step.say else ""


def _in_rounds(rounds: Sequence[float]) -> Printed:
    texts = tuple(words.ROUNDS.format(rounds=int(number)) if number > 1 else "" for number in rounds)
    return Printed(texts, texts)


def _with_amounts(dish: DishSeries, step: PlannedStep) -> Line:
    """Name the parts with their weights; a part that was named by an earlier step is named alone."""
    named = {index for earlier in dish.plan.steps[: step.index] for index in earlier.parts}
    parts = _parts_of(dish, step)
    return joined([(_name(dish, index),) if index in named else _with_amount(dish, index) for index in parts])


def _name(dish: DishSeries, index: int) -> str:
    return lowered(dish.plan.parts[index].called)


def _by_pack(dish: DishSeries, step: PlannedStep) -> Line:
    """Name whole packs by their number where a step opens them; parts that are out of their packs by name."""
    named = {index for earlier in dish.plan.steps[: step.index] for index in earlier.parts}
    wanted = list(_parts_of(dish, step))
    lines: list[Line] = []
    for pack in (one for outer in dish.plan.packs for one in (outer, *outer.inside)):
        whole = set(pack.all_parts)
        if whole and whole <= set(wanted) and not whole & named:
            lines.append((words.PACK.format(number=pack.number),))
            wanted = [index for index in wanted if index not in whole]
    alone = [(_name(dish, index),) if index in named else _out_of_pack(dish, index) for index in wanted]
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
        weight = measure if index in dish.plan.loose else Printed(weight.metric, measure.us)
    return set_line(phrase, {"name": _name(dish, index), "weight": weight, "number": pack})


def _parts_of(dish: DishSeries, step: PlannedStep) -> tuple[int, ...]:
    """Give the parts of a step; a drain works on what was soaked and not yet drained, or else on the last pot's."""
    if step.verb is not Verb.DRAIN:
        return step.parts
    soaking: list[int] = []
    for earlier in dish.plan.steps[: step.index]:
        if earlier.verb is Verb.SOAK:
            soaking += earlier.parts
        elif earlier.verb is Verb.DRAIN:
            soaking.clear()
    return tuple(soaking) or _in_last_pot(dish, step)


def _in_last_pot(dish: DishSeries, step: PlannedStep) -> tuple[int, ...]:
    """Give what was put into the pot that was used last and takes up water there; salt goes with the water."""
    before = [one for one in dish.plan.steps[: step.index] if one.pot and one.verb in IN_POT]
    together = [index for one in before if one.pot == before[-1].pot for index in one.parts]
    wet = [index for index in together if dish.plan.way_of[index] is not None]
    return tuple(dict.fromkeys(wet or together))


def _opened_line(line: Line) -> Line:
    return (opened(line[0]), *line[1:]) if line and isinstance(line[0], str) else line


def _closed(line: Line) -> Line:
    last = line[-1] if line else ""
    if isinstance(last, str) and last.endswith((".", "!", "?")):
        return line
    return (*line[:-1], last + words.END) if isinstance(last, str) else (*line, words.END)
