"""The steps of a dish, set against the clock: the long line of the page, and the short one of the booklet."""

from collections.abc import Callable, Sequence

from packlarder.book.step import Fate, Verb
from packlarder.figures.verbs import VERBS
from packlarder.reckon.clock import whole_minutes
from packlarder.reckon.ledger import bowl_warmth
from packlarder.reckon.records import PlannedStep
from packlarder.sheets import series, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import StepRow
from packlarder.sheets.printed import Line, Printed, Run, Strong, kept
from packlarder.sheets.step_parts import by_pack, soaking_before, with_amounts
from packlarder.sheets.vessels import drained_into, head_of, holds_all, in_rounds, rounds_shared
from packlarder.sheets.words import filled, opened, set_line

_PHRASES = {key: phrase + words.TAIL for key, phrase in words.STEPS.items()}


def step_rows(dish: DishSeries) -> tuple[StepRow, ...]:
    """Set every step of a dish."""
    return tuple([_row(dish, step) for step in dish.plan.steps])


def field_lines(dish: DishSeries) -> tuple[Line, ...]:
    """Set the short line of every step for the booklet, where it stands in one row with its verb."""
    return tuple(_behind_verb(_line(dish, step, by_pack), step) for step in dish.plan.steps)


def _row(dish: DishSeries, step: PlannedStep) -> StepRow:
    clock, minute = _starts(dish.steps[step.index].start_min)
    return StepRow(
        clock=clock,
        minute=minute,
        verb="" if step.verb is None else step.verb.value,
        line=_line(dish, step, with_amounts),
    )


@kept
def _starts(start_min: tuple[float, ...]) -> tuple[Printed, Printed]:
    """Print when a step starts, against the clock and as bare minutes."""
    starts = tuple([whole_minutes(minutes) for minutes in start_min])
    return series.clocks(starts), series.bare_minutes(starts)


def _line(dish: DishSeries, step: PlannedStep, name_parts: Callable[[DishSeries, PlannedStep], Line]) -> Line:
    if step.verb is None:
        return (step.sentence,)
    runs = _Runs(dish, step)
    runs["parts"] = (runs.all_in,) if runs.all_in else name_parts(dish, step)
    return _closed(_headed(runs.head, set_line(_PHRASES[_key(dish, step, step.verb)], runs)))


def _behind_verb(line: Line, step: PlannedStep) -> Line:
    """Begin a line small that stands in one row with its verb; a sentence has none."""
    if step.verb is None or not line:
        return line
    first, *rest = line
    if isinstance(first, Printed):
        return (Printed(tuple(map(_small, first.metric)), tuple(map(_small, first.us))), *rest)
    return (_small(first), *rest) if isinstance(first, str) else line


def _small(text: str) -> str:
    """Begin a text with a small letter, unless it begins with a word of capitals."""
    return text if text[1:2].isupper() else text[:1].lower() + text[1:]


def _key(dish: DishSeries, step: PlannedStep, verb: Verb) -> str:
    if verb is Verb.DRAIN:
        return (step.fate or Fate.AWAY).value
    if step.heater:
        return "heater"
    if verb in (Verb.BOIL, Verb.SIMMER):
        sums = dish.steps[step.index]
        return verb.value if any(sums.water_ml) or any(sums.from_drain_ml) else "cook on"
    return verb.value


class _Runs(dict[str, "Run | Line"]):
    """What stands in the places of a step's phrase, made when it is asked for."""

    def __init__(self, dish: DishSeries, step: PlannedStep) -> None:
        super().__init__()
        self.dish = dish
        self.step = step
        self.sums = dish.steps[step.index]
        self.all_in = self._all_in()
        self.head: str | Printed = "" if self.all_in else head_of(dish, step)

    def __missing__(self, place: str) -> "Run | Line":
        made: Run | Line = getattr(self, f"_{place}")()
        self[place] = made
        return made

    def _all_in(self) -> str:
        """Give the pot in place of single parts where they lie in it already."""
        plan, step = self.dish.plan, self.step
        if not holds_all(plan, step) or any(self.sums.water_ml):
            return ""
        return words.ALL_IN.format(pot=step.pot)

    def _water(self) -> Run:
        return series.pours(self.sums.heater_ml if self.step.heater else self.sums.water_ml)

    def _about(self) -> Run:
        return series.each_in(series.about(self.sums.drained_ml), words.ABOUT)

    def _pot(self) -> Run:
        """Set the water of a pot in one round: what is poured, and what was drained for it or soaks there."""
        poured = series.pours(self._each_round(self.sums.water_ml))
        fresh = series.each_in(poured, words.MORE_WATER if any(self.sums.standing_ml) else words.FRESH_WATER)
        drained = self._each_round(self.sums.from_drain_ml)
        if any(drained):
            soaks = not set(soaking_before(self.dish, self.step)).isdisjoint(self.step.parts)
            phrase = words.SOAKED_WATER if soaks else words.DRAINED_WATER
            fresh = series.both_of(fresh, series.each_in(series.about(drained), phrase))
        return fresh if all(fresh.metric) else series.or_else(fresh, words.WATER_THERE)

    def _each_round(self, amounts: tuple[float, ...]) -> tuple[float, ...]:
        if max(self.sums.rounds) == 1:
            return amounts
        return tuple([amount / rounds for amount, rounds in zip(amounts, self.sums.rounds, strict=True)])

    def _into(self) -> str:
        return drained_into(self.dish, self.step)

    def _warmth(self) -> str:
        return bowl_warmth(self.dish.plan, self.step).value

    def _minutes(self) -> Run:
        """Set the minutes of one round, or those it waits."""
        cooked = self._each_round(self.sums.cook_min)
        return series.minutes(tuple([cook or wait for cook, wait in zip(cooked, self.sums.wait_min, strict=True)]))

    def _wait(self) -> Line:
        return filled(words.WAIT, self) if any(self.sums.wait_min) else ()

    def _stir(self) -> Line:
        stir = [self.dish.plan.parts[part].component.water for part in self.step.parts]
        at = [water.stir_at_min for water in stir if water is not None and water.stir_at_min]
        return filled(words.STIR, {"minutes": series.minutes((max(at),) * self.dish.count)}) if at else ()

    def _cosy(self) -> str:
        waters = [self.dish.plan.parts[part].component.water for part in self.step.parts]
        return words.COSY if self.step.cosy or any(water is not None and water.cosy for water in waters) else ""

    def _lid(self) -> str:
        if self.step.verb is None or self.step.lid_on is VERBS[self.step.verb].lid_on:
            return ""
        return words.LID_ON if self.step.lid_on else words.LID_OFF

    def _rounds(self) -> Run:
        return in_rounds(self.dish, self.step, words.ROUNDS)

    def _lots(self) -> Run:
        return in_rounds(self.dish, self.step, words.LOTS)

    def _shared(self) -> Run:
        return rounds_shared(self.dish, self.step)

    def _until(self) -> Line:
        return filled(words.UNTIL, {"until": Strong(self.step.until)}) if self.step.until else ()

    def _to(self) -> Line:
        to_c = self.step.to_c
        return () if to_c is None else filled(words.TO, {"degrees": series.degrees(to_c, self.dish.count)})

    def _warms(self) -> str:
        return words.ONLY_WARMS if self.step.heater else ""

    def _say(self) -> str:
        return words.SAY.format(say=self.step.say) if self.step.say else ""


def _headed(head: str | Printed, line: Line) -> Line:
    """Set what a line begins with, with a capital at its start; `head` may be there at some servings only."""
    first = line[0]
    if isinstance(first, Strong):
        return line
    if isinstance(head, str):
        if isinstance(first, str):
            return (opened(head + first), *line[1:])
        return (opened(head), *line) if head else line
    texts = first if isinstance(first, Printed) else series.fixed(first, len(head.metric))
    return (Printed(_begun(head.metric, texts.metric), _begun(head.us, texts.us)), *line[1:])


def _begun(heads: Sequence[str], texts: Sequence[str]) -> tuple[str, ...]:
    return tuple([opened(f"{head}{text}") for head, text in zip(heads, texts, strict=True)])


def _closed(line: Line) -> Line:
    last = line[-1] if line else ""
    if isinstance(last, str) and last.endswith((".", "!", "?")):
        return line
    return (*line[:-1], last + words.END) if isinstance(last, str) else (*line, words.END)
