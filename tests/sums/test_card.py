"""The drying card of a component, and the chain from the shop to the jar."""

import pytest
from tests.sums.store_of import EGG, Stored, run_of, store_of

from packlarder.book.treatment import Treatment
from packlarder.measure.units import CUP
from packlarder.reckon.card import DryingCard, Fills, drying_card, fills
from packlarder.reckon.chain import Stage, chain
from packlarder.reckon.spread import Spread

AGAIN = (
    "egg powder: {fresh: 1 kg, treated: frozen first, trays: 2, deep: 9 mm, dry: 245 g, tested: no lighter, "
    "notes: Slow.}"
)


def card(found: Stored, id: str = "egg-powder") -> DryingCard | None:
    """Make the card of a component from all its batches."""
    batches = [one for run in found.store.runs.values() for one in run.batches if one.component.id == id]
    return drying_card(found.component(id), batches, found.book.household)


def known(found: Stored, id: str = "egg-powder") -> DryingCard:
    """Give a card that must be there."""
    made = card(found, id)
    assert made is not None
    return made


def test_eighteen_eggs_on_two_trays_in_a_day_and_a_half() -> None:
    """Common practice, no source: 18 eggs fill two trays of a medium freeze-dryer, and take 36 h.

    900 g are 450 a tray; 221 g of powder are 110.5 from each, and the next 450 g are expected to give as much.
    """
    found = known(store_of(run_of(EGG.replace("fresh: 900 g", "fresh: 18 eggs"))))
    assert (found.dryer, found.tray_g) == ("freezer", 900 / 2)
    assert found.dry_per_tray_g == pytest.approx(221 / 2)
    assert (found.last_hours, found.hours) == (36, Spread(median=36, least=36, most=36, count=1))


def test_a_full_load() -> None:
    """Five trays of 450 g: 2250 g of egg, and 2250 * 221 / 900 = 552.5 g of powder.

    At 80 g a cup they are 6.9 cups of 236.6 mL, 1634 mL: four jars of half a litre, one of two quarts, two of a litre.
    """
    full = known(store_of(run_of(EGG))).full
    assert full is not None
    assert (full.trays, full.fresh_g) == (5, 2250)
    assert full.dry_g == pytest.approx(552.5)
    assert full.bulk_ml == pytest.approx(552.5 / 80 * CUP.size)
    assert [(one.size, one.count) for one in full.fills] == [("jar", 4), ("two-quart jar", 1), ("pouch", 2), ("bag", 2)]


@pytest.mark.parametrize(("bulk_ml", "jars"), [(500, 1), (500.1, 2), (1000, 2)])
def test_the_last_container_need_not_be_full(bulk_ml: float, jars: int) -> None:
    """Half a litre fills a jar of half a litre, and a drop more asks for a second."""
    sizes = store_of().book.household.containers
    assert fills(bulk_ml, {"jar": sizes["jar"]}) == (Fills(size="jar", count=jars),)


def test_of_several_batches_the_median_and_the_last() -> None:
    """450 and 500 g a tray are 475; hours are spread, and treatment, depth and notes are those of the last batch."""
    found = known(store_of(run_of(AGAIN, loaded="2027-04-20", took="41 h"), run_of(EGG)))
    assert found.tray_g == (450 + 500) / 2
    assert (found.last_hours, found.hours) == (41, Spread(median=38.5, least=36, most=41, count=2))
    assert [one.treatment for one in found.treated] == [Treatment.FROZEN_FIRST]
    assert found.deep_m == pytest.approx(0.009)
    assert found.notes == ("Slow.",)


def test_without_a_batch_the_dryer_tells() -> None:
    """A freeze-dryer of the household, its kilogram a tray, its depth and its usual hours; nothing of a last run.

    A kilogram of egg holds 238.5 g of solids (SR28: 76.15 % water): at 2.78 % left, 245.3 g dry.
    """
    found = known(store_of())
    assert (found.dryer, found.tray_g, found.deep_m) == ("freezer", 1000, 0.015)
    assert (found.hours, found.last_hours, found.usual_hours) == (None, None, 36)
    assert found.dry_per_tray_g == pytest.approx(1000 * (1 - 0.7615) / (1 - 0.0278))
    assert (found.treated, found.notes) == ((), ())


def test_last_hours_are_no_usual_ones() -> None:
    """A batch whose run does not say how long it took leaves the last hours open, and the dryer's own as they are."""
    found = known(store_of(run_of(EGG, took="")))
    assert (found.last_hours, found.hours, found.usual_hours) == (None, None, 36)
    longer = known(store_of(run_of(EGG, took="41 h")))
    assert (longer.last_hours, longer.usual_hours) == (41, 36)


@pytest.mark.parametrize("tested", ["", "thrown out: it smelled, "])
def test_what_does_not_count_is_no_pattern(tested: str) -> None:
    """A batch that nobody tested, or that was thrown out, says nothing of the next."""
    batch = f"egg powder: {{fresh: 800 g, trays: 1, dry: 196 g, {tested}}}"
    assert known(store_of(run_of(batch, took="50 h"))) == known(store_of())


def test_no_card_of_what_no_dryer_dries() -> None:
    """Salt is carried as it is; and where the rack is gone, onion has no dryer."""
    assert card(store_of(), "salt") is None
    assert known(store_of(), "onion").dryer == "rack"


def test_bulk_of_what_nobody_weighed_by_the_cup() -> None:
    """Without a weight for a cup, how much comes out is known, and not what room it takes."""
    full = known(store_of(), "onion").full
    assert full is not None
    assert (full.bulk_ml, full.fills) == (None, ())


def stages(batch: str, dryer: str = "freezer") -> list[tuple[str, float, str, float | None]]:
    """Give the chain of a batch."""
    found = chain(store_of(run_of(batch, dryer=dryer)).batch())
    assert all(isinstance(one, Stage) for one in found)
    return [(one.name, one.weight_g, one.before, one.share) for one in found]


def test_the_chain_from_shop_to_jar() -> None:
    """Each weight with its share of the one before: 1.9 of 2 kg trimmed, 1.33 of 1.9 cooked, 1.3 of 1.33 loaded."""
    beef = "beef: {bought: 2 kg, trimmed: 1.9 kg, cooked: 1.33 kg, fresh: 1.3 kg, trays: 3, dry: 530 g}"
    assert stages(beef) == [
        ("bought", 2000, "", None),
        ("trimmed", 1900, "bought", 0.95),
        ("cooked", 1330, "trimmed", 0.7),
        ("fresh", 1300, "cooked", 1300 / 1330),
        ("dry", 530, "fresh", 530 / 1300),
    ]


def test_the_chain_leaves_out_what_was_not_weighed() -> None:
    """The share is that of the last weight before; 18 eggs are 900 g in the shop and on the trays."""
    assert stages("egg powder: {bought: 20 eggs, fresh: 18 eggs, trays: 2, dry: 221 g}") == [
        ("bought", 1000, "", None),
        ("fresh", 900, "bought", 0.9),
        ("dry", 221, "fresh", 221 / 900),
    ]


def test_what_was_cooked_may_have_grown() -> None:
    """400 g of rice are 1.02 kg when boiled, more than twice as much, and no slip."""
    rice = "rice: {bought: 400 g, cooked: 1.02 kg, fresh: 1 kg, trays: 2, dry: 325 g}"
    assert stages(rice)[1] == ("cooked", 1020, "bought", 2.55)
