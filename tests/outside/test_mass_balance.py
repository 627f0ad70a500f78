"""The food table's water against figures that others worked out or weighed: pairs, recipe cards, egg."""

import pytest

from packlarder.figures.dryness import Drying
from packlarder.figures.foods import FOODS
from packlarder.figures.soaking import DRYING_PAIRS, SOAKINGS, UPTAKES, WEIGHED_SOAKS, DryingPair, WeighedSoak
from packlarder.figures.units import CUP


def water(food_id: str) -> float:
    """Give the share of water of a food of the table, 0 to 1."""
    water_g = FOODS[food_id].nutrients.water_g
    assert water_g is not None
    return water_g / 100


def fresh_per_dry(fresh: str, dried: str) -> float:
    """Give g of fresh food per g dry: what is not water stays."""
    return (1 - water(dried)) / (1 - water(fresh))


def test_all_pairs_are_there() -> None:
    """Ten pairs: egg, two milks, pepper, onion, carrot, apple, potato, rice, beans."""
    assert len(DRYING_PAIRS) == 10


@pytest.mark.parametrize("pair", DRYING_PAIRS, ids=lambda pair: pair.dried)
def test_pair(pair: DryingPair) -> None:
    """The ratio printed for a pair follows from the table's own water, and its water is the table's."""
    assert 100 * water(pair.fresh) == pytest.approx(pair.water_fresh_percent)
    assert 100 * water(pair.dried) == pytest.approx(pair.water_dried_percent)
    assert fresh_per_dry(pair.fresh, pair.dried) == pytest.approx(pair.fresh_per_dry, abs=0.006)  # two decimals printed
    assert pair.fresh_per_dry - 1 == pytest.approx(pair.water_per_dry)


@pytest.mark.parametrize("pair", DRYING_PAIRS, ids=lambda pair: pair.dried)
def test_energy_tells_the_same_ratio(pair: DryingPair) -> None:
    """Energy per 100 g grows by the same ratio as the solids; drying takes none away."""
    fresh, dried = FOODS[pair.fresh].nutrients.energy_kcal, FOODS[pair.dried].nutrients.energy_kcal
    assert fresh is not None
    assert dried is not None
    assert dried / fresh == pytest.approx(pair.fresh_per_dry, rel=0.07)  # SR28 rounds to whole kcal: onion 341/40 = 8.5


def test_egg_powder_by_weight() -> None:
    """One large egg is 12.3 g of powder and 37.7 g of water, and an independent factor agrees within 5 %."""
    ratio = fresh_per_dry("egg-whole-raw", "egg-whole-dried")
    assert 50 / ratio == pytest.approx(12.3, abs=0.05)  # 50 g x (1 - 0.7615) / (1 - 0.0278) = 12.27
    assert 50 - 50 / ratio == pytest.approx(37.7, abs=0.05)
    assert ratio - 1 == pytest.approx(2.95, rel=0.05)  # American Egg Board, nutrients factor: 1 : 2.95


def test_a_quart_of_skim_milk() -> None:
    """93.5 g of instant powder and 886 g of water make a US quart of skim milk, as the US DoD card A-10 has it."""
    ratio = fresh_per_dry("milk-skim-fluid", "milk-nonfat-dry-instant")
    quart_g = 4 * 245  # SR28: a cup of skim milk weighs 245 g
    assert quart_g / ratio == pytest.approx(93.5, abs=0.1)  # 980 / 10.48
    water_cups = (quart_g - quart_g / ratio) / CUP.value
    assert water_cups == pytest.approx(3.75, abs=0.01)  # the card prints 3 3/4 cups


@pytest.mark.parametrize("soak", WEIGHED_SOAKS, ids=lambda soak: soak.fresh)
def test_the_recipe_card_adds_up(soak: WeighedSoak) -> None:
    """Drained, a food weighs itself and what it absorbed; it never absorbs what was not offered."""
    assert soak.drained_weight == pytest.approx(1 + soak.absorbed)  # onion 1 + 3.0 = 4.0, pepper 1 + 5.5 = 6.5
    assert soak.absorbed < soak.offered


@pytest.mark.parametrize("soak", WEIGHED_SOAKS, ids=lambda soak: soak.fresh)
def test_the_recipe_card_against_mass_balance(soak: WeighedSoak) -> None:
    """The fresh weight on card A-11 agrees with the table within a tenth: onion 8 for 8.8, pepper 15 to 16 for 16.0."""
    pair = next(pair for pair in DRYING_PAIRS if pair.fresh == soak.fresh)
    assert soak.stands_for_low * 0.9 <= pair.fresh_per_dry <= soak.stands_for_high * 1.11


def test_air_dried_uptake_is_what_the_card_weighed() -> None:
    """The uptake of air-dried food spans the card's onion and pepper: water absorbed as a share of water lost."""
    lost = {pair.fresh: pair.water_per_dry for pair in DRYING_PAIRS}
    shares = sorted(soak.absorbed / lost[soak.fresh] for soak in WEIGHED_SOAKS)
    uptake = UPTAKES[Drying.AIR_DRIED]
    assert [uptake.low, uptake.high] == pytest.approx(shares)  # 5.5 / 15.04 = 0.366; 3.0 / 7.82 = 0.384
    assert uptake.value == pytest.approx(sum(shares) / 2, abs=0.001)
    assert UPTAKES[Drying.FREEZE_DRIED].value == 0.90  # J. Food Eng. 72 (2006) 16-23


def test_carrots_are_offered_what_they_lost() -> None:
    """2 1/4 cups of water on a cup of dried carrot, 74 g, is 7.2 mL/g, and 7.2 g/g is what they lost."""
    cup_g = next(measure.grams for measure in FOODS["carrot-dehydrated"].measures if measure.unit == "cup")
    offered = SOAKINGS["carrots"].cups_per_cup * CUP.value / cup_g
    assert offered == pytest.approx(7.2, abs=0.05)  # 2.25 x 236.6 / 74 = 7.19
    assert offered == pytest.approx(fresh_per_dry("carrot-raw", "carrot-dehydrated") - 1, rel=0.01)
