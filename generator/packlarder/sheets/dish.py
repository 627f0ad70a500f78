"""The sheet of a dish, built from its plan, its sums for each number of servings, and what the safety rules found."""

from collections.abc import Iterable, Sequence
from datetime import date

from packlarder.book.step import Verb
from packlarder.figures.allergens import Allergen
from packlarder.figures.kinds import Cooking, doneness_of
from packlarder.figures.temperatures import cooking_temperature
from packlarder.figures.units import SALT_PER_SODIUM
from packlarder.figures.verbs import VERBS
from packlarder.measure import in_celsius, in_fahrenheit, in_kj
from packlarder.reckon.records import DishSums, Nutrients, PlannedPart
from packlarder.safety import Finding, on_the_page
from packlarder.sheets import series, words
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import Caution, DishSheet, FoodRow, Lesson, Reading
from packlarder.sheets.origins import condition_lines, origin_lines
from packlarder.sheets.part_rows import pack_rows, part_rows
from packlarder.sheets.printed import NOTHING, Line, Printed
from packlarder.sheets.step_rows import step_rows
from packlarder.sheets.water_rows import Carried, carried, heater_reading, water_rows
from packlarder.sheets.words import ended, joined, set_line


def dish_sheet(dish: DishSeries, findings: Sequence[Finding]) -> DishSheet:
    """Build the sheet of a dish."""
    plan, model = dish.plan, dish.plan.model
    water = carried(dish)
    return DishSheet(
        id=plan.id,
        name=model.name,
        meal=model.meal.value,
        method=method_of(dish),
        about=model.about,
        servings=tuple(sums.servings for sums in dish.sums),
        usual=dish.usual,
        strip=strip_of(dish, water),
        raw_parts=tuple(part.called for part in plan.parts if part.component.raw),
        raw=_raw(dish),
        done_when=done_when(dish),
        parts=part_rows(dish),
        packs=pack_rows(dish),
        steps=step_rows(dish),
        waters=water_rows(dish),
        water_total=water.carry,
        clock=_clock(dish),
        heat=_heat(dish),
        conditions=condition_lines(dish),
        cautions=tuple(caution(finding) for finding in on_the_page(findings)),
        feeds=_feeds(dish),
        allergens=_named(_held(dish)),
        traces=_traces(dish),
        origins=origin_lines(plan),
        missing=tuple(words.MISSING.format(what=gap.what, missing=gap.missing) for gap in dish.sums[dish.usual].gaps),
        tried=model.tried,
        learnt=tuple(Lesson(day=day(one.date), change=ended(one.change), why=ended(one.why)) for one in model.learnt),
        notes=model.notes,
        photo=model.photo,
    )


def caution(finding: Finding) -> Caution:
    """Set what a rule found as a caution."""
    return Caution(
        rule=finding.rule.id,
        severity=finding.severity.value,
        text=finding.text,
        source=finding.source,
        standing=finding.standing.value,
    )


def day(on: date) -> str:
    """Print a day: 1 June 2027."""
    return f"{on.day} {words.MONTHS[on.month - 1]} {on.year}"


def method_of(dish: DishSeries) -> str:
    """Give the cooking method a dish is found under: by the hottest thing that its steps do."""
    verbs = {step.verb for step in dish.plan.steps if not step.heater}
    ways = (
        ("bake", Verb.BAKE in verbs),
        ("fry", Verb.FRY in verbs),
        ("boil", bool(verbs & {Verb.BOIL, Verb.SIMMER})),
        ("heater", any(step.heater for step in dish.plan.steps)),
        ("warm", Verb.WARM in verbs),
        ("pour over", bool(dish.sums[0].water.hot_ml)),
        ("cold", any(one.offered_ml for one in dish.sums[0].parts)),
    )
    return words.METHODS[next((way for way, holds in ways if holds), "none")]


def done_when(dish: DishSeries) -> str:
    """Say how to tell that what must be cooked to be edible is done; what is RAW has a line of its own."""
    parts = [part for part in dish.plan.parts if _edible_once_cooked(part)]
    said = {part.index: _until(dish, part) for part in parts}
    kinds = sorted({kind for part in parts if not said[part.index] for kind in part.component.uncooked})
    told = [kind.rules.done_when for kind in kinds if kind.rules.uncooked is Cooking.TO_BE_EDIBLE]
    return _once([*said.values(), *told])


def _until(dish: DishSeries, part: PlannedPart) -> str:
    """Give the author's own sign for a part that is cooked without anything RAW: it is nearer than that of its kind."""
    parts = dish.plan.parts
    cooked = [step for step in dish.plan.steps if step.verb and VERBS[step.verb].cooks and part.index in step.parts]
    own = [step.until for step in cooked if not any(parts[index].component.raw for index in step.parts)]
    return own[-1] if own else ""


def _edible_once_cooked(part: PlannedPart) -> bool:
    return part.component.must_be_cooked is Cooking.TO_BE_EDIBLE


def _once(texts: Iterable[str]) -> str:
    """Join what is told, each sign of it once."""
    signs = [sign.strip() for text in texts for sign in text.split(";")]
    return "; ".join(dict.fromkeys(sign for sign in signs if sign))


def _traces(dish: DishSeries) -> tuple[str, ...]:
    """Give what the dish may hold traces of and does not hold anyway."""
    traces = frozenset[Allergen]().union(*[part.component.traces for part in dish.plan.parts])
    return _named(traces - _held(dish))


def _held(dish: DishSeries) -> frozenset[Allergen]:
    return frozenset[Allergen]().union(*[part.component.allergens for part in dish.plan.parts])


def _named(allergens: frozenset[Allergen]) -> tuple[str, ...]:
    return tuple(sorted([one.value for one in allergens]))


def strip_of(dish: DishSeries, water: Carried) -> tuple[Reading, ...]:
    """Give the few figures that people look for."""
    figures = {
        "water": water.carry,
        "hot": water.heated,
        "clock": series.clocks(tuple([sums.clock.minutes for sums in dish.sums])),
        "fuel": series.weights(tuple([sums.heat.fuel_g for sums in dish.sums])),
        "weight": series.total_weights(tuple([sums.weight_g for sums in dish.sums])),
    }
    readings = [Reading(key=key, label=label, figure=figures[key]) for key, label in words.STRIP.items()]
    return (*readings[:2], *heater_reading(dish), *readings[2:])


def _clock(dish: DishSeries) -> tuple[Reading, ...]:
    figures = {
        "minutes": series.whole_minutes(tuple([sums.clock.minutes for sums in dish.sums])),
        "soak": series.whole_minutes(tuple([sums.clock.soak_minutes for sums in dish.sums])),
        "heat": series.whole_minutes(tuple([sums.clock.heat_minutes for sums in dish.sums])),
    }
    return tuple(Reading(key=key, label=label, figure=figures[key]) for key, label in words.CLOCK.items())


def _heat(dish: DishSeries) -> tuple[Reading, ...]:
    heat = dish.sums[0].heat
    boils_c = heat.boiling_point_c
    count = dish.count
    figures = {
        "boils": Printed((in_celsius(boils_c, step=0.5),) * count, (in_fahrenheit(boils_c),) * count),
        "energy": series.alike([in_kj(sums.heat.energy_kj) if sums.heat.energy_kj else NOTHING for sums in dish.sums]),
        "fuel": series.weights(tuple([sums.heat.fuel_g for sums in dish.sums])),
        "longer": series.fixed(f"{heat.time_factor:.1f}" if heat.time_factor >= 1.05 else NOTHING, count),
    }
    readings = (Reading(key=key, label=label, figure=figures[key]) for key, label in words.HEAT.items())
    return tuple(reading for reading in readings if not reading.figure.empty)


def _raw(dish: DishSeries) -> Line:
    raw = [part for part in dish.plan.parts if part.component.raw]
    if not raw:
        return ()
    names = joined([(part.called.lower(),) for part in raw])
    return set_line(words.RAW, {"parts": _opened(names), "done": raw_done(dish, raw)})


def _opened(line: Line) -> Line:
    first = line[0]
    return (words.opened(first), *line[1:]) if isinstance(first, str) else line


def raw_done(dish: DishSeries, raw: Sequence[PlannedPart]) -> Line:
    """Give the sign that raw parts are done, and how hot inside, by the household's authority: the hottest asked."""
    told = _once(_tell(part) for part in raw)
    asked = [
        cooking_temperature(dish.household.authority, doneness).temp_c
        for part in raw
        for kind in part.component.uncooked
        if (doneness := doneness_of(kind, cooked_before=False)) is not None
    ]
    if not asked:
        return (told,)
    return set_line(words.RAW_TO, {"done": told, "degrees": series.degrees(max(asked), dish.count)})


def _tell(part: PlannedPart) -> str:
    return "; ".join(
        kind.rules.done_when for kind in sorted(part.component.uncooked) if kind.rules.uncooked is Cooking.TO_BE_SAFE
    )


def _feeds(dish: DishSeries) -> tuple[FoodRow, ...]:
    """Set what one serving feeds, at each number of servings (fixed parts make a difference)."""
    columns = dict(zip(Nutrients._fields, zip(*[sums.per_serving for sums in dish.sums], strict=True), strict=True))
    rows = [
        FoodRow(label=label, figure=_nutrient(name, columns[name]), complete=_complete(dish, name))
        for name, label in words.FEEDS.items()
    ]
    per_gram = [_energy_per_gram(sums) for sums in dish.sums]
    figure = series.alike([f"{value:.1f}\u00a0kcal/g" if value else NOTHING for value in per_gram])
    return (*rows, FoodRow(label=words.ENERGY_PER_GRAM, figure=figure, complete=_complete(dish, "energy_kcal")))


def _nutrient(name: str, values: tuple[float | None, ...]) -> Printed:
    if name == "energy_kcal":
        return series.energies(values)
    if name == "sodium_mg":
        return series.nutrients(
            tuple([None if value is None else value * SALT_PER_SODIUM.value / 1000 for value in values])
        )
    return series.nutrients(values)


def _complete(dish: DishSeries, name: str) -> bool:
    return name not in dish.sums[0].incomplete


def _energy_per_gram(sums: DishSums) -> float | None:
    energy = sums.per_serving.energy_kcal
    return energy * sums.servings / sums.weight_g if energy and sums.weight_g else None
