"""Food that was thrown out stays in the book as history, and counts for nothing."""

import pytest
from tests.sums.store_of import EGG, RICE, RUN, refused, run_of, store_of

from packlarder.figures.allergens import Allergen

THROWN_OUT = "egg powder: {fresh: 900 g, trays: 2, dry: 120 g, weighs: {1 cup: 90 g}, thrown out: the tray fell}"


def test_what_was_thrown_out_is_history_and_nothing_else() -> None:
    """120 g can not be right for 900 g of egg: thrown out, it is no slip, has no verdict and teaches no cup."""
    found = store_of(run_of(THROWN_OUT, RICE))
    batch = found.batch()
    assert (batch.thrown_out, batch.verdict, batch.dried, batch.containers) == ("the tray fell", None, None, ())
    assert (batch.fresh_g, batch.dry_g) == (900, 120)
    assert "egg-powder" not in found.store.learnt
    assert [one.component.id for one in found.store.runs[RUN].kept] == ["rice"]
    assert store_of(run_of(THROWN_OUT.replace(", thrown out: the tray fell", "")), fails=True).codes == [
        "batch-can-not-be-right"
    ]


@pytest.mark.parametrize(
    ("batch", "dryer", "code"),
    [
        ("egg powder: {fresh: 100 g, trays: 2, dry: 900 g}", "freezer", "grown"),
        ("egg powder: {fresh: 900 g, trays: 2, dry: 221 g}", "rack", "other-drying"),
        ("rice: {fresh: 3 pans, trays: 2, dry: 221 g}", "freezer", "can-not-weigh"),
        ("rice: {fresh: 4 kg, trays: 2}", "freezer", "overloaded-tray"),
    ],
)
def test_no_slip_of_what_was_thrown_out(batch: str, dryer: str, code: str) -> None:
    """What can not be true of it any more has nobody to mend it."""
    assert store_of(run_of(batch, dryer=dryer), fails=True).codes == [code]
    assert store_of(run_of(batch.replace("}", ", thrown out: mouldy}"), dryer=dryer)).faults == ()


def test_what_was_thrown_out_lay_beside_the_rest_all_the_same() -> None:
    """Its egg may be in the rice, and it was RAW there."""
    rice = store_of(run_of(THROWN_OUT, RICE)).batch(1)
    assert (set(rice.traces), rice.beside_raw) == ({Allergen.EGG}, ("Egg powder",))


def test_nothing_is_filled_from_what_was_thrown_out() -> None:
    """Either the jars or the reason is a slip."""
    fault = refused(run_of(EGG.replace("put in", "thrown out: spilt, put in")))
    assert (fault.code, fault.message) == ("thrown-out-in-jars", "it was thrown out, and yet jars are filled")
