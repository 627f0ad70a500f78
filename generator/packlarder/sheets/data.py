"""A dish as a record for other programs: what `show dish --json` prints. Its figures are those of the page."""

from typing import TypedDict

from packlarder.measure import NARROW, NO_BREAK, Dimension, Quantity, in_celsius, in_grams, in_kcal, in_kj, parse
from packlarder.reckon.records import DishSums, HeatSums, Nutrients, PartSums, PlannedPack, WaterSums
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import Caution, DishSheet, PartRow, StepRow
from packlarder.sheets.printed import NOTHING, Printed, System, plain


class Both(TypedDict):
    """A printed amount in both systems of units; None where there is none."""

    metric: str | None
    us: str | None


class PartWater(TypedDict):
    """The waters of a part; `absorbed_ml` is None where nobody has measured it, `way` where it takes none."""

    way: str | None
    offered_ml: float
    absorbed_ml: float | None
    drained_ml: float


class Part(TypedDict):
    """One part. `amount` is its weight as printed, `measure` the same in spoons, cups or pieces."""

    component: str
    name: str
    must_be_cooked: str
    dry_g: float
    amount: Both
    measure: Both
    fresh_equivalent_g: float | None
    yield_from: str | None
    water: PartWater


class Water(TypedDict):
    """The water to carry. Every drop stands in one field; all but `carry_ml` add up to it."""

    in_food_ml: int
    drained_away_ml: int
    pot_ml: int
    boiled_off_ml: int
    drink_ml: int
    heater_ml: int
    spare_ml: int
    carry_ml: int


class Conditions(TypedDict):
    """Where, in what weather and on what the dish is cooked."""

    height_m: float
    air_c: float
    water_c: float
    heater_water_carried: bool
    stove: str
    pot: str


class Heat(TypedDict):
    """What it takes of fire. `hot_water_ml` is the part of all water poured that is heated."""

    boiling_point_c: float
    fuel: str
    fuel_g: int | None
    energy_kj: float
    time_factor: float
    hot_water_ml: int


class Clock(TypedDict):
    """Minutes from the first move to the plate, and what of them is soaking and heating."""

    minutes: int
    soak_minutes: int
    heat_minutes: int


class Packed(TypedDict):
    """A pack with the components in it; `number` is None for what travels in a tub of its own."""

    number: str | None
    called: str
    parts: list[str]
    weight_g: float
    raw: bool
    sachet: bool
    inside: "list[Packed]"


class Step(TypedDict):
    """A step: its minute against the clock, its verb (None for a plain sentence), what to do in both systems."""

    start_minute: int
    verb: str | None
    text: Both


class Feeds(TypedDict):
    """What one serving feeds; None is unknown."""

    energy_kcal: float | None
    protein_g: float | None
    fat_g: float | None
    carbohydrate_g: float | None
    fibre_g: float | None
    sugars_g: float | None
    sodium_mg: float | None


class Note(TypedDict):
    """A safety note, where it comes from and how well that is known."""

    rule: str
    severity: str
    text: str
    source: str
    standing: str


class DishData(TypedDict):
    """A dish worked out for one number of servings."""

    dish: str
    name: str
    servings: int
    edition: str
    day: str
    parts: list[Part]
    water: Water
    conditions: Conditions
    heat: Heat
    clock: Clock
    weight_g: float
    energy_kcal_per_serving: float | None
    feeds_per_serving: Feeds
    incomplete: list[str]
    allergens: list[str]
    traces: list[str]
    packs: list[Packed]
    steps: list[Step]
    safety: list[Note]
    missing: list[str]


def dish_data(dish: DishSeries, sheet: DishSheet, *, at: int = 0, edition: str, day: str) -> DishData:
    """Give a dish as data for `sheet.servings[at]`; `sheet` must have been built from `dish`."""
    sums = dish.sums[at]
    per_serving = _feeds(sums.per_serving)
    return DishData(
        dish=sheet.id,
        name=sheet.name,
        servings=sums.servings,
        edition=edition,
        day=day,
        parts=[_part(row, part, at) for row, part in zip(sheet.parts, sums.parts, strict=True)],
        water=_water(sums.water),
        conditions=_conditions(dish, sums),
        heat=_heat(sums.heat, sums.water.hot_ml),
        clock=Clock(
            minutes=sums.clock.minutes, soak_minutes=sums.clock.soak_minutes, heat_minutes=sums.clock.heat_minutes
        ),
        weight_g=_grams(sums.weight_g),
        energy_kcal_per_serving=per_serving["energy_kcal"],
        feeds_per_serving=per_serving,
        incomplete=sorted(sums.incomplete),
        allergens=list(sheet.allergens),
        traces=list(sheet.traces),
        packs=[*(_pack(dish, sums, pack) for pack in dish.plan.packs), *_loose(dish, sums)],
        steps=[_step(row, at) for row in sheet.steps],
        safety=[_note(caution) for caution in sheet.cautions],
        missing=[_spoken(line) for line in sheet.missing],
    )


def _part(row: PartRow, sums: PartSums, at: int) -> Part:
    return Part(
        component=row.component,
        name=row.name,
        must_be_cooked=row.must_be_cooked,
        dry_g=_grams(sums.dry_g),
        amount=_both(row.dry, at),
        measure=_both(row.measure, at),
        fresh_equivalent_g=None if sums.fresh_g is None else _grams(sums.fresh_g),
        yield_from=row.yield_from or None,
        water=PartWater(
            way=row.way or None,
            offered_ml=_ml(row.offered, at),
            absorbed_ml=None if sums.absorbed_ml is None else _ml(row.absorbed, at),
            drained_ml=_ml(row.drained, at),
        ),
    )


def _water(sums: WaterSums) -> Water:
    return Water(
        in_food_ml=sums.in_food_ml,
        drained_away_ml=sums.drained_away_ml,
        pot_ml=sums.pot_ml,
        boiled_off_ml=sums.boiled_off_ml,
        drink_ml=sums.drink_ml,
        heater_ml=sums.heater_ml,
        spare_ml=sums.spare_ml,
        carry_ml=sums.carry_ml,
    )


def _conditions(dish: DishSeries, sums: DishSums) -> Conditions:
    return Conditions(
        height_m=_number(sums.conditions.height_m),
        air_c=_number(sums.conditions.air_c),
        water_c=_number(sums.conditions.water_c),
        heater_water_carried=sums.conditions.heater_water_carried,
        stove=dish.plan.stove_name,
        pot=dish.plan.pot_name,
    )


def _heat(sums: HeatSums, hot_ml: int) -> Heat:
    return Heat(
        boiling_point_c=_read(in_celsius(sums.boiling_point_c, step=0.5), Dimension.TEMPERATURE),
        fuel=sums.fuel,
        fuel_g=sums.fuel_g,
        energy_kj=_leading(in_kj(sums.energy_kj)),
        time_factor=_number(sums.time_factor, 1),
        hot_water_ml=hot_ml,
    )


def _pack(dish: DishSeries, sums: DishSums, pack: PlannedPack) -> Packed:
    parts = [dish.plan.parts[index].component for index in pack.all_parts]
    return Packed(
        number=pack.number or None,
        called=pack.called,
        parts=[dish.plan.parts[index].component.id for index in pack.parts],
        weight_g=_grams(sum(sums.parts[index].dry_g for index in pack.all_parts)),
        raw=any(part.raw for part in parts),
        sachet=pack.sachet or any(part.model.sachet for part in parts),
        inside=[_pack(dish, sums, inner) for inner in pack.inside],
    )


def _loose(dish: DishSeries, sums: DishSums) -> list[Packed]:
    loose = [(index, dish.plan.parts[index].component) for index in dish.plan.loose]
    return [
        Packed(
            number=None,
            called=component.model.carried_in,
            parts=[component.id],
            weight_g=_grams(sums.parts[index].dry_g),
            raw=component.raw,
            sachet=component.model.sachet,
            inside=[],
        )
        for index, component in loose
    ]


def _step(row: StepRow, at: int) -> Step:
    texts = Both(
        metric=_spoken(plain(row.line, System.METRIC, at)),
        us=_spoken(plain(row.line, System.US, at)),
    )
    return Step(start_minute=int(row.minute.metric[at]), verb=row.verb or None, text=texts)


def _note(caution: Caution) -> Note:
    return Note(
        rule=caution.rule,
        severity=caution.severity,
        text=_spoken(caution.text),
        source=caution.source,
        standing=caution.standing,
    )


def _feeds(nutrients: Nutrients) -> Feeds:
    energy = nutrients.energy_kcal
    return Feeds(
        energy_kcal=None if energy is None else _leading(in_kcal(energy)),
        protein_g=_known_grams(nutrients.protein_g),
        fat_g=_known_grams(nutrients.fat_g),
        carbohydrate_g=_known_grams(nutrients.carbohydrate_g),
        fibre_g=_known_grams(nutrients.fibre_g),
        sugars_g=_known_grams(nutrients.sugars_g),
        sodium_mg=None if nutrients.sodium_mg is None else _number(nutrients.sodium_mg),
    )


def _both(printed: Printed, at: int) -> Both:
    return Both(metric=_told(printed.metric[at]), us=_told(printed.us[at]))


def _told(text: str) -> str | None:
    return None if text in ("", NOTHING) else _spoken(text)


def _spoken(text: str) -> str:
    """Give a text with plain spaces, which other programs expect."""
    return text.replace(NO_BREAK, " ").replace(NARROW, " ")


def _known_grams(grams: float | None) -> float | None:
    return None if grams is None else _grams(grams)


def _grams(grams: float) -> float:
    """Round a weight as the page prints it."""
    return _read(in_grams(grams), Dimension.WEIGHT)


def _ml(printed: Printed, at: int) -> float:
    """Give a water as the page prints it."""
    text = printed.metric[at]
    return 0 if text in ("", NOTHING) else _read(text, Dimension.VOLUME)


def _read(text: str, dimension: Dimension) -> float:
    """Give the number behind a printed figure, so that data and page can not differ."""
    found = parse(text, (dimension,))
    if not isinstance(found, Quantity):
        return _leading(text)
    return _number(found.base, 2)


def _leading(text: str) -> float:
    return _number(float(text.partition(NO_BREAK)[0]), 2)


def _number(value: float, digits: int = 0) -> float:
    """Round, and write whole numbers without a point."""
    rounded = round(value, digits)
    return int(rounded) if rounded == int(rounded) else rounded
