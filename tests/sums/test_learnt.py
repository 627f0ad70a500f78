"""What the household's own batches teach: yields and weights of measures, which outrank statement and table."""

from collections.abc import Sequence
from datetime import date
from statistics import median

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.sums.store_of import Stored, run_of, store_of

from packlarder.measure.units import CUP
from packlarder.reckon.learnt import Learnt
from packlarder.reckon.records import YieldFrom
from packlarder.reckon.spread import Spread, spread_of

STATED = (
    "was: onion, raw\nwent in: raw\ncontains: []\ndried: air-dried\nform: rings\nyields: {from: 1 kg, gives: 125 g}\n"
    "weighs: {1 cup: 40 g}\nbring back: {soak: 100 g, with: 620 mL hot water, takes: 300 mL, wait: 20 min}"
)
SOUP = "made of: [{egg powder: 60 g}, {milk powder: 40 g}]\ncontains: [egg, milk]\nform: powder"


def egg(dry: int, tested: str = "no lighter", more: str = "") -> str:
    """Write a run of 900 g of egg that gave a dry weight."""
    test = f", tested: {tested}" if tested else ""
    return run_of(f"egg powder: {{fresh: 900 g, trays: 2, dry: {dry} g{test}{more}}}")


def taught(found: Stored, id: str = "egg-powder") -> Learnt:
    """Give what was learnt of a component."""
    return found.store.learnt.get(id, Learnt())


def test_median_spread_and_count() -> None:
    """900 / 218, 900 / 221 and 900 / 230: the middle one is taken, and least and most are told."""
    found = taught(store_of(egg(221), egg(230), egg(218))).fresh_per_dry
    assert found is not None
    assert (found.median, found.least, found.most, found.count) == (900 / 221, 900 / 230, 900 / 218, 3)


def test_two_batches_are_halved() -> None:
    """The median of two lies between them."""
    found = taught(store_of(egg(220), egg(225))).fresh_per_dry
    assert found is not None
    assert found.median == pytest.approx((900 / 220 + 900 / 225) / 2)  # 4.091 and 4.000


@given(st.lists(st.floats(0.1, 100), min_size=1, max_size=12))
def test_spread_in_any_order(found: Sequence[float]) -> None:
    """Spread does not ask for the order of batches, and the median lies within it."""
    spread = spread_of(found)
    assert spread == spread_of(list(reversed(found)))
    assert spread is not None
    assert spread.least <= spread.median <= spread.most
    assert (spread.median, spread.count) == (median(found), len(found))


def test_no_batch_teaches_nothing() -> None:
    """Nothing weighed gives no spread, and a component without batches is not among what was learnt."""
    assert spread_of([]) is None
    assert dict(store_of(egg(221, tested="")).store.learnt) == {}


@pytest.mark.parametrize(
    ("dry", "tested"),
    [
        (221, ""),  # can not tell
        (221, "snaps cold"),  # nor by its snap
        (260, "no lighter"),  # not dry yet: 17 % water
        (130, "no lighter"),  # can not be right
    ],
)
def test_only_batches_dry_by_our_own_test_count(dry: int, tested: str) -> None:
    """A batch that is not known to be dry moves no yield: the table's stays."""
    found = store_of(egg(dry, tested), fails=None)
    made = found.component("egg-powder").yielded
    assert made is not None
    assert (made.origin, made.batches) == (YieldFrom.TABLE, 0)
    assert taught(found).fresh_per_dry is None


def test_one_untested_batch_among_tested_ones() -> None:
    """Two tested ones count, the untested third does not."""
    found = taught(store_of(egg(221), egg(221), egg(210, tested=""))).fresh_per_dry
    assert found == Spread(median=900 / 221, least=900 / 221, most=900 / 221, count=2)


def test_batches_outrank_statement_and_table() -> None:
    """The statement says 8, SR28's mass balance 8.45; a weighed kilogram that gave 118 g says 8.47 and is believed."""
    run = run_of("onion rings: {fresh: 1 kg, trays: 4, dry: 118 g, tested: no lighter}", dryer="rack")
    before, after = (store_of(*runs, onion_rings=STATED).component("onion-rings") for runs in ((), (run,)))
    assert before.yielded is not None
    assert after.yielded is not None
    assert (before.yielded.fresh_g, before.yielded.origin) == (1000 / 125, YieldFrom.STATED)
    assert (after.yielded.fresh_g, after.yielded.origin) == (1000 / 118, YieldFrom.BATCHES)
    assert after.yielded.batches == 1
    assert after.yielded.table_fresh_g == pytest.approx(0.92 / 0.1089)  # 8 % left, 89.11 % before
    assert after.yielded.lost_ml == pytest.approx(1000 / 118 - 1)
    # 1 kg holds 108.9 g of solids: 1 - 108.9 / 118 = 7.7 % water left
    assert after.yielded.dry_water == pytest.approx(1 - 108.9 / 118)


def test_nutrients_follow() -> None:
    """A gram of powder holds what 900 / 230 = 3.91 g of egg held, not the table's 4.08 g (SR28: 1.43 kcal a gram)."""
    found = store_of(egg(230)).component("egg-powder").nutrients
    assert found.energy_kcal == pytest.approx(1.43 * 900 / 230)
    assert found.fat_g == pytest.approx(0.0951 * 900 / 230)


def test_mixes_follow() -> None:
    """60 g of the powder and 40 g of milk powder: the mix's energy and water move with the powder."""
    plain = store_of(soup=SOUP)
    found = store_of(egg(230), soup=SOUP)
    soup, powder, milk = (found.component(id) for id in ("soup", "egg-powder", "milk-powder"))
    assert powder.nutrients.energy_kcal is not None
    assert milk.nutrients.energy_kcal is not None
    mixed = 0.6 * powder.nutrients.energy_kcal + 0.4 * milk.nutrients.energy_kcal
    assert soup.nutrients.energy_kcal == pytest.approx(mixed)
    assert soup.nutrients.energy_kcal != plain.component("soup").nutrients.energy_kcal
    # 214.65 g of solids in 230: 6.7 % water; SR28 instant milk powder: 3.96 %
    assert soup.fresh_water == pytest.approx(0.6 * (1 - 214.65 / 230) + 0.4 * 0.0396)


def test_a_batch_of_a_mix_follows() -> None:
    """A bake of egg powder is held against the water that batches of the powder taught, not the food table's."""
    bake = "made of: [{egg powder: 100 g}]\nwent in: cooked\ncontains: [egg]\ndried: freeze-dried\nform: bark"
    run = run_of("bake: {fresh: 100 g, trays: 1, dry: 98 g}")
    before, after = (store_of(run, *more, bake=bake).batch().dried for more in ((), (egg(230),)))
    assert before is not None
    assert after is not None
    # 2.78 % by the component's own word; 214.65 g of solids in 230 g: 6.67 % by what was weighed
    assert before.fresh_water == pytest.approx(0.0278)
    assert after.fresh_water == pytest.approx(1 - 214.65 / 230)


def test_weighed_measures_outrank_the_statement() -> None:
    """The component says 80 g a cup; batches weighed 84, 90 and 88: the median is believed, also for its water."""
    weighed = (egg(221, more=f", weighs: {{1 cup: {grams} g}}") for grams in (84, 90, 88))
    found = store_of(*weighed)
    assert taught(found).grams_per["mL"] == Spread(
        median=88 / CUP.size, least=84 / CUP.size, most=90 / CUP.size, count=3
    )
    powder = found.component("egg-powder")
    assert powder.grams_per["mL"] == pytest.approx(88 / CUP.size)
    # the rule is a cup of water on a cup: 236.6 mL on 88 g
    assert powder.water is not None
    assert powder.water.offered_ml == pytest.approx(CUP.size / 88)


@pytest.mark.parametrize(("dry", "tested", "counts"), [(221, "", True), (260, "no lighter", False)])
def test_a_cup_is_weighed_before_the_test_but_not_wet(dry: int, tested: str, *, counts: bool) -> None:
    """What weights show to be wet weighs more a cup; what is only untested counts."""
    found = taught(store_of(egg(dry, tested, more=", weighs: {1 cup: 90 g}"), fails=None))
    assert ("mL" in found.grams_per) is counts


def test_a_mix_teaches_its_cup() -> None:
    """A mix made without a dryer has no yield to learn, but a weight of its cup."""
    run = run_of("soup: {dry: 100 g, weighs: {1 cup: 100 g}}", dryer="", took="")
    found = taught(store_of(run, soup=SOUP), "soup")
    assert found.fresh_per_dry is None
    assert found.grams_per["mL"].median == pytest.approx(100 / CUP.size)


def test_order_of_runs_does_not_matter() -> None:
    """The same batches under other names teach the same."""
    runs = (egg(221), egg(230), egg(218))
    assert taught(store_of(*runs)) == taught(store_of(*reversed(runs)))


def test_runs_stand_oldest_first() -> None:
    """Whatever their files are called."""
    found = store_of(egg(221), egg(221).replace("2027-03-12", "2026-11-02"), on=date(2027, 6, 1))
    assert list(found.store.runs) == ["run-2", "run"]


def test_what_was_bought_dry_has_no_yield_to_learn() -> None:
    """Pasta stands for itself, whatever a run says of it."""
    found = store_of(run_of("pasta: {fresh: 500 g, dry: 480 g, tested: no lighter}", dryer="", took=""))
    made = found.component("pasta").yielded
    assert made is not None
    assert (made.fresh_g, made.origin) == (1, YieldFrom.AS_IT_IS)
    assert taught(found, "pasta").fresh_per_dry is None
