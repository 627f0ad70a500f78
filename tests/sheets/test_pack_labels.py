"""Labels of a dish's packs, held against the demo's dishes: their weights, their water once, RAW where it is so."""

from functools import cache

import pytest
from tests.sheets.demo import checked, demo

from packlarder.book.book import dish_place
from packlarder.book.step import Verb
from packlarder.measure import Dimension, Quantity, parse
from packlarder.sheets.label_sheet import TripPackLabel
from packlarder.sheets.pack_labels import pack_labels
from packlarder.sheets.printed import System

DISHES = sorted(checked().dishes)
RAW = "RAW"


@cache
def labels(id: str) -> tuple[TripPackLabel, ...]:
    """Give the labels of a dish of the demo, in metric units."""
    one = demo(id)
    return pack_labels(one.series, one.sheet, System.METRIC, dish_place(id))


def grams(text: str) -> float:
    """Read the weight that a text begins with."""
    number, unit, *_ = text.replace("\u00a0", " ").split(" ")
    found = parse(f"{number} {unit}", (Dimension.WEIGHT,))
    assert isinstance(found, Quantity)
    return found.base


@pytest.mark.parametrize("id", DISHES)
def test_every_pack_has_a_label_that_adds_up(id: str) -> None:
    """There is a label for each pack and each pack inside one; what a pack holds adds up to its net weight."""
    plan = demo(id).series.plan
    made = labels(id)
    assert len(made) == sum(1 + len(pack.inside) for pack in plan.packs)
    for label in made:
        if not any(one.startswith("pack ") for one in label.holds):
            assert sum(map(grams, label.holds)) == pytest.approx(grams(label.net))


@pytest.mark.parametrize("id", DISHES)
def test_raw_is_on_the_packs_that_hold_it_and_on_no_other(id: str) -> None:
    """A pack is RAW, on paper and in its code, exactly where something in it must be cooked to be safe."""
    plan = demo(id).series.plan
    packs = [one for pack in plan.packs for one in (pack, *pack.inside)]
    for pack, label in zip(packs, labels(id), strict=True):
        raw = any(plan.parts[index].component.raw for index in pack.all_parts)
        assert label.raw is raw
        assert (RAW in label.code_text.split("\n")) is raw
        assert label.done or not raw


@pytest.mark.parametrize("id", DISHES)
def test_water_that_several_packs_share_says_so(id: str) -> None:
    """Nobody pours the water of one step twice: each pack that shares it names the others."""
    told: dict[tuple[str, str], list[TripPackLabel]] = {}
    for label in labels(id):
        if label.water and "inside" not in label.number:
            told.setdefault((label.order, label.water.partition(", together")[0]), []).append(label)
    for sharing in told.values():
        if len(sharing) > 1:
            assert all("together with pack" in label.water for label in sharing)


def test_a_fill_mark_counts_the_food_too() -> None:
    """The stew's boiling water and 0.7 mL for each gram of it stand together, to the next 10 mL."""
    (label,) = [one for one in labels("squash-stew-supper") if one.fill_mark]
    series = demo("squash-stew-supper").series
    (step,) = [one for one in series.plan.steps if one.verb is Verb.POUR_OVER]
    sums = series.sums[series.usual]
    in_all_ml = sums.steps[step.index].water_ml + 0.7 * sum(sums.parts[index].dry_g for index in step.parts)
    found = parse(label.fill_mark.partition(",")[0].replace("\u00a0", " "), (Dimension.VOLUME,))
    assert isinstance(found, Quantity)
    assert found.base == pytest.approx(in_all_ml, abs=5)
    assert found.base % 10 == pytest.approx(0)
