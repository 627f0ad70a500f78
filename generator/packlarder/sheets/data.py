"""A dish as a record for other programs: what `show dish --json` prints. Its figures are those of the page."""

from packlarder.measure import Dimension, as_typed, in_celsius, in_kcal, in_kj
from packlarder.reckon.records import DishSums, HeatSums, Nutrients, PartSums, PlannedPack, WaterSums
from packlarder.sheets.data_figures import grams, known_grams, leading, number, read
from packlarder.sheets.data_records import (
    Both,
    Clock,
    Conditions,
    DishData,
    Feeds,
    Heat,
    Note,
    Packed,
    Part,
    PartWater,
    Step,
    Water,
)
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import Caution, DishSheet, PartRow, StepRow
from packlarder.sheets.printed import NOTHING, Printed, System, plain


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
        weight_g=grams(sums.weight_g),
        energy_kcal_per_serving=per_serving["energy_kcal"],
        feeds_per_serving=per_serving,
        incomplete=sorted(sums.incomplete),
        allergens=list(sheet.allergens),
        traces=list(sheet.traces),
        packs=[*(_pack(dish, at, pack) for pack in dish.plan.packs), *_loose(dish, at)],
        steps=[_step(row, at) for row in sheet.steps],
        safety=[_note(caution) for caution in sheet.cautions],
        missing=[as_typed(line) for line in sheet.missing],
    )


def _part(row: PartRow, sums: PartSums, at: int) -> Part:
    return Part(
        component=row.component,
        name=row.name,
        must_be_cooked=row.must_be_cooked,
        dry_g=grams(sums.dry_g),
        amount=_both(row.dry, at),
        measure=_both(row.measure, at),
        fresh_equivalent_g=None if sums.fresh_g is None else grams(sums.fresh_g),
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
        height_m=number(sums.conditions.height_m),
        air_c=number(sums.conditions.air_c),
        water_c=number(sums.conditions.water_c),
        heater_water_carried=sums.conditions.heater_water_carried,
        stove=dish.plan.stove_name,
        pot=dish.plan.pot_name,
    )


def _heat(sums: HeatSums, hot_ml: int) -> Heat:
    return Heat(
        boiling_point_c=read(in_celsius(sums.boiling_point_c, step=0.5), Dimension.TEMPERATURE),
        fuel=sums.fuel,
        fuel_g=sums.fuel_g,
        energy_kj=leading(in_kj(sums.energy_kj)),
        time_factor=number(sums.time_factor, 1),
        hot_water_ml=hot_ml,
    )


def _pack(dish: DishSeries, at: int, pack: PlannedPack) -> Packed:
    parts = [dish.plan.parts[index].component for index in pack.all_parts]
    return Packed(
        number=pack.number or None,
        called=pack.called,
        parts=[dish.plan.parts[index].component.id for index in pack.parts],
        weight_g=number(sum(dish.printed_g[index][at] for index in pack.all_parts), 1),
        raw=any(part.raw for part in parts),
        sachet=pack.sachet or any(part.model.sachet for part in parts),
        inside=[_pack(dish, at, inner) for inner in pack.inside],
    )


def _loose(dish: DishSeries, at: int) -> list[Packed]:
    loose = [(index, dish.plan.parts[index].component) for index in dish.plan.loose]
    return [
        Packed(
            number=None,
            called=component.model.carried_in,
            parts=[component.id],
            weight_g=number(dish.printed_g[index][at], 1),
            raw=component.raw,
            sachet=component.model.sachet,
            inside=[],
        )
        for index, component in loose
    ]


def _step(row: StepRow, at: int) -> Step:
    texts = Both(
        metric=as_typed(plain(row.line, System.METRIC, at)),
        us=as_typed(plain(row.line, System.US, at)),
    )
    return Step(start_minute=int(row.minute.metric[at]), verb=row.verb or None, text=texts)


def _note(caution: Caution) -> Note:
    return Note(
        rule=caution.rule,
        severity=caution.severity,
        text=as_typed(caution.text),
        source=caution.source,
        standing=caution.standing,
    )


def _feeds(nutrients: Nutrients) -> Feeds:
    energy = nutrients.energy_kcal
    return Feeds(
        energy_kcal=None if energy is None else leading(in_kcal(energy)),
        protein_g=known_grams(nutrients.protein_g),
        fat_g=known_grams(nutrients.fat_g),
        carbohydrate_g=known_grams(nutrients.carbohydrate_g),
        fibre_g=known_grams(nutrients.fibre_g),
        sugars_g=known_grams(nutrients.sugars_g),
        sodium_mg=None if nutrients.sodium_mg is None else number(nutrients.sodium_mg),
    )


def _both(printed: Printed, at: int) -> Both:
    return Both(metric=_told(printed.metric[at]), us=_told(printed.us[at]))


def _told(text: str) -> str | None:
    return None if text in ("", NOTHING) else as_typed(text)


def _ml(printed: Printed, at: int) -> float:
    """Give a water as the page prints it."""
    text = printed.metric[at]
    return 0 if text in ("", NOTHING) else read(text, Dimension.VOLUME)
