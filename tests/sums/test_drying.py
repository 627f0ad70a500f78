"""What the weights of a batch tell: solids, moisture with its uncertainty, the four verdicts."""

import math
from collections.abc import Mapping

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from tests.sums.store_of import Stored, run_of, store_of

from packlarder.book.batch import DrynessTest
from packlarder.faults import Severity
from packlarder.figures.dryness import DRYNESSES, Drying
from packlarder.figures.rows import read_rows
from packlarder.reckon.drying import Dried, Verdict, dried, least_dry_g, limit_of, moisture, solids_g
from packlarder.reckon.records import ComponentSums

PLAIN = store_of(
    pepper="was: bell pepper, green, raw\nwent in: raw\ncontains: []\ndried: freeze-dried\nform: dice",
    egg_crumbs="was: egg, whole, hard-boiled\nwent in: cooked\ncontains: [egg]\ndried: air-dried\nform: crumbs",
    stew='made of: [{"potato, peeled, boiled": 300 g}, {"ham, cured, extra lean, roasted": 100 g}]\nwent in: cooked\n'
    "contains: []\ndried: air-dried\nform: bark",
)
EGG, PEPPER, ONION = (PLAIN.component(id) for id in ("egg-powder", "pepper", "onion"))
TESTED, UNTESTED = (DrynessTest.NO_LIGHTER,), ()


def egg_batch(dry: str, more: str = "") -> Stored:
    """Work out 18 large eggs that came out at a weight."""
    return store_of(run_of(f"egg powder: {{fresh: 18 eggs, trays: 2, dry: {dry}{more}}}"), fails=None)


def held(component: ComponentSums, fresh_g: float, dry_g: float, *tests: DrynessTest) -> Dried:
    """Hold weights against a food whose water is known."""
    found = dried(component, fresh_g, dry_g, tests)
    assert found is not None
    return found


def test_eighteen_large_eggs() -> None:
    """900 g with 214.7 g of solids (SR28: 50 g an egg, 76.15 % water; worked out)."""
    batch = egg_batch("221 g").batch()
    assert batch.fresh_g == 18 * 50
    assert batch.dried is not None
    assert batch.dried.solids_g == pytest.approx(900 * (1 - 0.7615))  # 214.65
    assert batch.dried.solids_g == pytest.approx(214.7, abs=0.051)  # as it is printed, to one decimal
    assert batch.removed_ml == 900 - 221


def test_moisture_is_a_range() -> None:
    """221 g of egg read -1.2, 2.9 or 6.9 % at 75.15, 76.15 or 77.15 % water (numbers.md section 1; worked out)."""
    found = moisture(900, 221, 0.7615)
    # 1 - 900 x 0.2485 / 221, 1 - 900 x 0.2385 / 221, 1 - 900 x 0.2285 / 221
    assert found.low == pytest.approx(-0.012, abs=0.0005)
    assert found.by_the_table == pytest.approx(0.029, abs=0.0005)
    assert found.high == pytest.approx(0.069, abs=0.0005)


def test_wet_vegetables_are_hardly_known() -> None:
    """65 g from 1 kg of green pepper read anything from -9 to 21 % (SR28: 93.89 % water; worked out)."""
    found = held(PEPPER, 1000, 65).moisture
    assert found.low == pytest.approx(1 - 71.1 / 65, abs=0.001)  # at 92.89 %: 71.1 g of solids, -9 %
    assert found.high == pytest.approx(1 - 51.1 / 65, abs=0.001)  # at 94.89 %: 51.1 g, 21 %
    assert (round(found.low, 2), round(found.high, 2)) == (-0.09, 0.21)
    assert held(PEPPER, 1000, 65).verdict is Verdict.CAN_NOT_TELL


def test_130_g_are_impossible() -> None:
    """214.65 g of solids can not weigh 130 g (numbers.md section 1), whatever was tested; the arithmetic is shown."""
    for tested in ("", ", tested: [no lighter, snaps cold]"):
        found = egg_batch("130 g", tested)
        assert found.batch().verdict is Verdict.CAN_NOT_BE_RIGHT
        (fault,) = found.faults
        assert (fault.code, fault.marked, fault.severity) == ("batch-can-not-be-right", "130 g", Severity.ERROR)
        assert fault.message == "900\u00a0g at 76 % water hold 215\u00a0g of solids: 130\u00a0g dry can not be right"
        assert "weigh again" in fault.help


def test_260_g_hold_17_percent_water() -> None:
    """1 - 214.65 / 260 = 17.4 % (numbers.md section 1); freeze-dried food is wet above 5 %."""
    found = egg_batch("260 g", ", tested: no lighter")
    batch = found.batch()
    assert batch.dried is not None
    assert batch.dried.moisture.by_the_table == pytest.approx(0.174, abs=0.0005)
    assert batch.verdict is Verdict.NOT_DRY_YET
    (fault,) = found.faults
    assert (fault.code, fault.marked, fault.severity) == ("not-dry-yet", "260 g", Severity.WARNING)
    # at 75.15 %: 1 - 223.65 / 260 = 14 %; at 77.15 %: 1 - 205.65 / 260 = 21 %
    assert "260\u00a0g dry still hold 14\u00a0% to 21\u00a0% water, and at most 5\u00a0% is dry" in fault.message
    # 214.65 / 0.95 = 225.9 g: at most 225 on a scale that shows whole grams, 35 g less
    assert fault.help.startswith("dry it until it is 35\u00a0g lighter (225\u00a0g)")


def test_what_it_must_lose_and_what_is_left_add_up() -> None:
    """A tiny batch is weighed to a tenth of a gram: 10 g of egg hold 2.385 g, dry at 2.51; 2.5 g are 1.5 g less."""
    (fault,) = store_of(run_of("egg powder: {fresh: 10 g, trays: 1, dry: 4 g}"), fails=True).faults
    assert "until it is 1.5\u00a0g lighter (2.5\u00a0g)" in fault.help


def test_wet_food_in_jars_stops_a_build() -> None:
    """As long as it lies on the tray it may dry on; in a jar it is an error."""
    (fault,) = egg_batch("260 g", ", put in: [{in: jar, holds: 100 g}]").faults
    assert (fault.code, fault.severity) == ("not-dry-yet", Severity.ERROR)


@pytest.mark.parametrize(
    ("dry", "tested", "verdict"),
    [
        # impossible only below what the wettest egg gives: 900 g x (1 - 0.7715) = 205.65 g
        (205.0, TESTED, Verdict.CAN_NOT_BE_RIGHT),
        (206.0, TESTED, Verdict.DRY),
        (221.0, UNTESTED, Verdict.CAN_NOT_TELL),
        (221.0, (DrynessTest.SNAPS_COLD,), Verdict.CAN_NOT_TELL),
        (221.0, TESTED, Verdict.DRY),
        # surely wet only above what the driest egg gives: 900 g x (1 - 0.7515) / 0.95 = 235.4 g
        (235.0, TESTED, Verdict.DRY),
        (236.0, TESTED, Verdict.NOT_DRY_YET),
        (900.0, TESTED, Verdict.NOT_DRY_YET),
    ],
)
def test_verdicts(dry: float, tested: tuple[DrynessTest, ...], verdict: Verdict) -> None:
    """Weights refuse at both ends; between them only the scale, two hours later, says dry: a snap alone does not."""
    assert held(EGG, 900, dry, *tested).verdict is verdict


def test_what_is_lost_on_the_way_is_no_slip() -> None:
    """Of rather dry food one point of water is little: 100 g of walnut-dry food may miss 3 %, 2.9 of 96 g of solids."""
    assert least_dry_g(100, 0.04) == pytest.approx(96 * 0.97)  # 93.1 g, and 95 at a point more water
    assert least_dry_g(1000, 0.9389) == pytest.approx(51.1)  # a point more water: less than 61.1 x 0.97 = 59.3


grams = st.floats(0.5, 50_000, allow_nan=False)
tests_of_dryness = st.lists(st.sampled_from(DrynessTest), unique=True).map(tuple)


@given(st.sampled_from([EGG, PEPPER, ONION]), grams, st.floats(0.001, 1.0), tests_of_dryness)
@example(PEPPER, 1000.0, 0.0611, ())
def test_arithmetic_never_says_dry(
    component: ComponentSums, fresh_g: float, share: float, tests: tuple[DrynessTest, ...]
) -> None:
    """Whatever the weights: without the household's own weighing nothing is dry, and with it only if weights allow."""
    found = held(component, fresh_g, fresh_g * share, *tests)
    if DrynessTest.NO_LIGHTER not in tests:
        assert found.verdict is not Verdict.DRY
    if found.verdict is Verdict.DRY:
        assert found.moisture.low <= found.limit
        assert found.dry_g >= least_dry_g(fresh_g, found.fresh_water)


@given(st.sampled_from([EGG, PEPPER, ONION]), grams, st.floats(0.01, 1.0))
def test_what_loses_what_it_is_told_is_no_longer_wet(component: ComponentSums, fresh_g: float, share: float) -> None:
    """A batch that is not dry yet must get lighter, and once it is just so much lighter it is not called wet."""
    found = held(component, fresh_g, fresh_g * share)
    if found.verdict is Verdict.NOT_DRY_YET:
        assert found.lighter_g > 0
        after = held(component, fresh_g, found.dry_g - found.lighter_g)
        assert after.verdict is Verdict.CAN_NOT_TELL
        assert after.moisture.by_the_table == pytest.approx(found.limit)
        assert math.isclose(after.lighter_g, 0, abs_tol=1e-6)


@pytest.mark.parametrize("row", read_rows("drying_pairs.csv"), ids=lambda row: row["fresh"])
def test_pairs_of_the_food_table(row: Mapping[str, str]) -> None:
    """A kilogram of the fresh food at the weight of its dried twin holds the twin's water (USDA SR28, both rows)."""
    fresh_water, dry_water = float(row["water_fresh_percent"]) / 100, float(row["water_dried_percent"]) / 100
    dry_g = 1000 / float(row["fresh_per_dry"])
    assert solids_g(1000, fresh_water) == pytest.approx(1000 * (1 - fresh_water))
    # the pair's factor has two decimals: at 16.04 that is 0.03 %, at 2.60 it is 0.2 % of the solids
    assert moisture(1000, dry_g, fresh_water).by_the_table == pytest.approx(dry_water, abs=0.003)
    assert dry_g > least_dry_g(1000, fresh_water)


def test_pairs_are_ten() -> None:
    """The walk over the pairs is not blind."""
    assert len(list(read_rows("drying_pairs.csv"))) == 10


def test_limits_by_class() -> None:
    """Freeze-dried 5 %, air-dried onion 10, a whole meal of several foods 15; nothing for what is not dried here."""
    assert limit_of(EGG) == limit_of(PEPPER) == 0.05
    assert limit_of(ONION) == 0.10
    assert limit_of(PLAIN.component("stew")) == 0.15
    assert limit_of(PLAIN.component("milk-powder")) is None
    assert limit_of(PLAIN.component("salt")) is None


def test_food_that_is_no_food_for_its_dryer_has_the_strictest_limit() -> None:
    """Egg has no figure in warm air: the strictest of all, 7 % (nuts), and weights that can not be are found too."""
    crumbs = PLAIN.component("egg-crumbs")
    strictest = min(one.limit_percent for one in DRYNESSES.values() if one.drying is Drying.AIR_DRIED)
    assert limit_of(crumbs) == strictest / 100 == 0.07
    assert crumbs.fresh_water is not None
    impossible = solids_g(900, crumbs.fresh_water) / 2
    assert held(crumbs, 900, impossible, *TESTED).verdict is Verdict.CAN_NOT_BE_RIGHT


def test_nothing_is_estimated_of_what_is_not_dried_at_home() -> None:
    """Milk powder and salt are as they were bought."""
    assert dried(PLAIN.component("milk-powder"), 500, 500, TESTED) is None
    assert dried(PLAIN.component("salt"), 500, 500, ()) is None
