"""The rows of a dish's parts and packs."""

from collections.abc import Sequence

from packlarder.reckon.measures import PER_ML
from packlarder.reckon.records import ComponentSums, PlannedPack
from packlarder.sheets import series
from packlarder.sheets.dish_series import DishSeries
from packlarder.sheets.dish_sheet import PackItem, PackRow, PartRow
from packlarder.sheets.origins import yield_from
from packlarder.sheets.printed import Printed, kept


def part_rows(dish: DishSeries) -> tuple[PartRow, ...]:
    """Set every part with its amounts and waters."""
    return tuple([_row(dish, index) for index in range(len(dish.plan.parts))])


def pack_rows(dish: DishSeries) -> tuple[PackRow, ...]:
    """Set the packs in their order of opening, then what travels in its own tub."""
    packed = [_pack(dish, pack) for pack in dish.plan.packs]
    return (*packed, *[_loose(dish, index) for index in dish.plan.loose])


def _row(dish: DishSeries, index: int) -> PartRow:
    part, sums = dish.plan.parts[index], dish.parts[index]
    component = part.component
    way = dish.plan.way_of[index]
    return PartRow(
        name=part.called,
        component=component.id,
        raw=component.raw,
        must_be_cooked=component.must_be_cooked.value,
        way="" if way is None else way.value,
        measure=dish.measures[index],
        dry=dish.weights[index],
        fresh=_fresh(dish, index),
        offered=series.pours(sums.offered_ml),
        absorbed=series.waters(sums.absorbed_ml),
        drained=series.waters(sums.drained_ml),
        yield_from="" if component.yielded is None else yield_from(component.yielded),
        instead=tuple([one.model.name for one in part.instead]),
    )


def _fresh(dish: DishSeries, index: int) -> Printed:
    component, fresh_g = dish.plan.parts[index].component, dish.parts[index].fresh_g
    if not component.fresh_grams_per:
        return series.weights(fresh_g)
    return _weighed_or_counted(fresh_g, *_counted(component))


@kept
def _weighed_or_counted(fresh_g: tuple[float | None, ...], noun: str, weight: float) -> Printed:
    """Print fresh grams, or the count of them where counts in halves say what is meant."""
    if not noun:
        return series.weights(fresh_g)
    many = [grams is not None and series.is_near_a_half(grams / weight) for grams in fresh_g]
    counts = series.counts(tuple([None if grams is None else grams / weight for grams in fresh_g]), noun)
    if all(many):
        return counts
    weights = series.weights(fresh_g)
    return Printed(_either(many, counts.metric, weights.metric), _either(many, counts.us, weights.us))


def _either(first: Sequence[bool], ones: Sequence[str], others: Sequence[str]) -> tuple[str, ...]:
    return tuple([one if take else other for take, one, other in zip(first, ones, others, strict=True)])


def _counted(component: ComponentSums) -> tuple[str, float]:
    """Give the noun that people count it by when fresh, and what one weighs."""
    return next(((noun, grams) for noun, grams in component.fresh_grams_per.items() if noun != PER_ML), ("", 1.0))


def _item(dish: DishSeries, index: int) -> PackItem:
    part = dish.plan.parts[index]
    return PackItem(
        name=part.called,
        component=part.component.id,
        raw=part.component.raw,
        weight=dish.weights[index],
    )


def _pack(dish: DishSeries, pack: PlannedPack) -> PackRow:
    held = pack.all_parts
    components = [dish.plan.parts[index].component for index in held]
    return PackRow(
        number=pack.number,
        items=tuple([_item(dish, index) for index in pack.parts]),
        weight=_total(dish, held),
        raw=any(component.raw for component in components),
        sachet=pack.sachet or any(component.model.sachet for component in components),
        where=pack.called,
        inside=tuple([_pack(dish, inner) for inner in pack.inside]),
    )


def _total(dish: DishSeries, parts: Sequence[int]) -> Printed:
    held = [dish.printed_g[index] for index in parts]
    return series.total_weights(tuple(map(sum, zip(*held, strict=True))) or (0.0,) * dish.count)


def _loose(dish: DishSeries, index: int) -> PackRow:
    component = dish.plan.parts[index].component
    return PackRow(
        number="",
        items=(_item(dish, index),),
        weight=dish.weights[index],
        raw=component.raw,
        sachet=component.model.sachet,
        where=component.model.carried_in,
    )
