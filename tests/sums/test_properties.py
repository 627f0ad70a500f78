"""What holds for every dish: pieces add up, food scales, nothing is taken before it is ready, more need no less."""

import math
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st
from tests.sums.book_of import LARDER, Worked, dish_of

from packlarder.measure import in_grams, kitchen_grams, parse
from packlarder.measure.quantity import Quantity
from packlarder.reckon.records import DishPlan, DishSums

PIECES = ("in_food_ml", "drained_away_ml", "pot_ml", "boiled_off_ml", "drink_ml", "heater_ml", "spare_ml")
POURED_ML = 10
"""The coarsest step in which water is poured."""
PARTS = st.lists(st.sampled_from(sorted(LARDER)), min_size=1, max_size=6, unique=True)
GRAMS = st.integers(1, 400)
WATERS = st.integers(20, 3000)
MINUTES = st.integers(1, 40)
KINDS = ("give", "give so much", "cook", "cook on", "dry", "drain", "heater", "stir in", "wait")
WARMTHS = ("cold", "hot")
THOROUGH = settings(max_examples=80, deadline=None)


@st.composite
def steps_on(draw: st.DrawFn, parts: list[str]) -> str:
    """Write any one step on some of the parts."""
    names = ", ".join(draw(st.lists(st.sampled_from(parts), min_size=1, max_size=4, unique=True)))
    kind = draw(st.sampled_from(KINDS))
    verb = draw(st.sampled_from(["soak", "mix", "moisten"]))
    pot = draw(st.sampled_from(["pot", "little pot"]))
    wet = draw(st.sampled_from(["boil", "simmer"]))
    minutes = draw(MINUTES)
    return {
        "give": f"{verb}: [{names}]",
        "give so much": f"{{{verb}: [{names}], with: {draw(WATERS)} mL {draw(st.sampled_from(WARMTHS))} water}}",
        "cook": f"{{{wet}: [{names}], in: {draw(WATERS)} mL, for: {minutes} min, pot: {pot}}}",
        "cook on": f"{{{wet}: [{names}], for: {minutes} min, pot: {pot}}}",
        "dry": f"{{fry: [{names}], for: {minutes} min, pot: pan}}",
        "drain": f"drain: {draw(st.sampled_from(['away', 'drunk', 'into the pot']))}",
        "heater": f"{{warm: [{names}], on: ration heater}}",
        "stir in": f"stir in: [{names}]",
        "wait": f"wait: {minutes} min",
    }[kind]


@st.composite
def dishes(draw: st.DrawFn) -> Worked:
    """Make any dish of a few parts and steps, sensible or not."""
    parts = draw(PARTS)
    amounts = ", ".join(
        f"{{{name}: {{take: {draw(GRAMS)} g, fixed: {draw(st.sampled_from(['yes', 'no', 'no']))}}}}}" for name in parts
    )
    steps = draw(st.lists(steps_on(parts), min_size=1, max_size=6))
    return dish_of(amounts, *steps, serves=draw(st.integers(1, 4)), fails=None)


SERVINGS = st.integers(1, 12)
HEIGHTS = st.sampled_from([0.0, 1000.0, 4000.0])


@given(dish=dishes(), servings=SERVINGS, height_m=HEIGHTS, carried=st.booleans())
@THOROUGH
def test_pieces_of_water_add_up(dish: Worked, servings: int, height_m: float, carried: bool) -> None:
    """Each piece is nought or more, they add up to what is carried: what is poured, rounded up to 10 mL."""
    sums = dish.sums(servings, height_m=height_m, heater_water_carried=carried)
    pieces = {name: getattr(sums.water, name) for name in PIECES}
    assert min(pieces.values()) >= 0, pieces
    assert sum(pieces.values()) == sums.water.carry_ml
    assert sums.water.carry_ml % 10 == 0
    poured = math.fsum(step.water_ml + (step.heater_ml if carried else 0) for step in sums.steps)
    assert sums.water.carry_ml - sums.water.spare_ml == math.ceil(poured - 1e-5)
    assert 0 <= sums.water.hot_ml <= sums.water.carry_ml


@given(dish=dishes(), servings=SERVINGS)
@THOROUGH
def test_what_is_offered_is_absorbed_or_drained(dish: Worked, servings: int) -> None:
    """Offered is absorbed and drained together, in whole mL, so that the printed figures add up."""
    for part in dish.sums(servings).parts:
        if part.offered_ml:
            assert part.absorbed_ml is not None
            assert part.offered_ml == part.absorbed_ml + part.drained_ml
            assert part.offered_ml == int(part.offered_ml)
            assert part.drained_ml == int(part.drained_ml)


@given(dish=dishes(), servings=SERVINGS)
@THOROUGH
def test_food_scales_linearly_and_prints_within_its_bound(dish: Worked, servings: int) -> None:
    """Before rounding n servings are n times one; printed, a weight is half a step off at most."""
    one, many = dish.sums(1), dish.sums(servings)
    printed = 0.0
    for part, first, last in zip(dish.planned.parts, one.parts, many.parts, strict=True):
        assert math.isclose(last.dry_g, first.dry_g * (1 if part.fixed else servings))
        told = parse(in_grams(last.dry_g))
        assert isinstance(told, Quantity)
        assert math.isclose(told.base, kitchen_grams(last.dry_g))
        # half a step: 0.05 g below 1 g, 0.25 below 10, 0.5 below 100, 2.5 below 1 kg, 5 above
        halves = ((1, 0.05), (10, 0.25), (100, 0.5), (1000, 2.5), (math.inf, 5))
        bound = next(half for below, half in halves if last.dry_g < below)
        assert abs(told.base - last.dry_g) <= bound + 1e-9
        printed += told.base
    assert math.isclose(many.weight_g, printed)


def ready_before(plan: DishPlan, sums: DishSums, step: int) -> float:
    """Give the minute at which the parts of a step are ready from the steps before it."""
    wanted = set(plan.steps[step].parts)
    return max((sums.steps[one.index].end_min for one in plan.steps[:step] if wanted & set(one.parts)), default=0.0)


@given(dish=dishes(), servings=SERVINGS, height_m=HEIGHTS)
@THOROUGH
def test_nothing_is_taken_before_it_is_ready(dish: Worked, servings: int, height_m: float) -> None:
    """Steps start in their order, none before its parts are ready, and the dish takes as long as the last of them."""
    plan, sums = dish.planned, dish.sums(servings, height_m=height_m)
    starts = [step.start_min for step in sums.steps]
    assert starts == sorted(starts)
    for step in plan.steps:
        assert sums.steps[step.index].start_min >= ready_before(plan, sums, step.index) - 1e-9
        assert sums.clock.minutes >= sums.steps[step.index].end_min - 1e-5
    assert sums.clock.minutes < max(step.end_min for step in sums.steps) + 1
    assert 0 <= sums.clock.soak_minutes <= sums.clock.minutes
    assert 0 <= sums.clock.heat_minutes <= sums.clock.minutes


@given(dish=dishes(), height_m=HEIGHTS)
@THOROUGH
def test_more_people_never_need_less(dish: Worked, height_m: float) -> None:
    """From one serving to twelve, water, fuel and weight never fall (but for the step in which water is poured)."""
    each = dish.each(range(1, 13), height_m=height_m)
    slack_kj = POURED_ML / 1000 * 377  # a litre from 10 °C to the boil
    for fewer, more in pairwise(each):
        assert more.water.carry_ml >= fewer.water.carry_ml - POURED_ML
        assert more.heat.energy_kj >= fewer.heat.energy_kj - slack_kj
        assert more.weight_g >= fewer.weight_g
        assert all(last.rounds >= first.rounds for first, last in zip(fewer.steps, more.steps, strict=True))


@given(dish=dishes(), servings=SERVINGS)
@THOROUGH
def test_one_by_one_or_all_together(dish: Worked, servings: int) -> None:
    """A dish worked out among others is worked out alike alone."""
    assert dish.each((1, servings, 12))[1] == dish.sums(servings)
